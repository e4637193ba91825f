package room

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"firstdrop/geom"
	"firstdrop/measure"
)

func TestFace(t *testing.T) {
	plain := func() *Run {
		r := &Run{Walls: []Wall{
			{Width: 1000, Outline: Rectangle(1000, 100)},
			{Width: 500, Outline: Rectangle(500, 100)},
		}, Corners: make([]Corner, 1)}
		return r
	}
	for _, c := range []struct {
		name    string
		change  func(*Run)
		wall    int
		outline geom.Ring
		holes   []geom.Ring
	}{
		{"plumb", func(*Run) {}, 0, Rectangle(1000, 100), nil},
		{
			"the left end leans to the right",
			func(r *Run) { r.Ends.Left.LeanRight = 8 },
			0,
			geom.Ring{{X: 0, Y: 0}, {X: 1000, Y: 0}, {X: 1000, Y: 100}, {X: 8, Y: 100}},
			nil,
		},
		{
			"the left end's other side is nobody's",
			func(r *Run) { r.Ends.Left.LeanLeft = 8 },
			0, Rectangle(1000, 100), nil,
		},
		{
			"the corner makes the left wall wider at the head",
			func(r *Run) { r.Corners[0].LeanLeft = 8 },
			0,
			geom.Ring{{X: 0, Y: 0}, {X: 1000, Y: 0}, {X: 1008, Y: 100}, {X: 0, Y: 100}},
			nil,
		},
		{
			"and the right wall narrower",
			func(r *Run) { r.Corners[0].LeanRight = 8 },
			1,
			geom.Ring{{X: 0, Y: 0}, {X: 500, Y: 0}, {X: 500, Y: 100}, {X: 8, Y: 100}},
			nil,
		},
		{
			"the right end leans to the left",
			func(r *Run) { r.Ends.Right.LeanLeft = -5 },
			1,
			geom.Ring{{X: 0, Y: 0}, {X: 500, Y: 0}, {X: 495, Y: 100}, {X: 0, Y: 100}},
			nil,
		},
		{
			"in proportion to the height, halves away from zero",
			func(r *Run) {
				r.Ends.Left.LeanRight = -3
				r.Walls[0].Outline = geom.Ring{{X: 0, Y: 0}, {X: 1000, Y: 0}, {X: 1000, Y: 100}, {X: 0, Y: 100}, {X: 0, Y: 50}}
			},
			0,
			geom.Ring{{X: 0, Y: 0}, {X: 1000, Y: 0}, {X: 1000, Y: 100}, {X: -3, Y: 100}, {X: -2, Y: 50}},
			nil,
		},
		{
			"foot and head are those of the higher neighbour",
			func(r *Run) {
				r.Corners[0].LeanRight = 8
				r.Walls[0].Outline = Rect(0, -100, 1000, 400)
			},
			1,
			geom.Ring{{X: 2, Y: 0}, {X: 500, Y: 0}, {X: 500, Y: 100}, {X: 4, Y: 100}},
			nil,
		},
		{
			"a gable's point has no height to lean over",
			func(r *Run) {
				r.Ends.Left.LeanRight = 8
				r.Walls[0].Outline = geom.Ring{{X: 0, Y: 50}, {X: 1000, Y: 0}, {X: 1000, Y: 100}}
			},
			0,
			geom.Ring{{X: 0, Y: 50}, {X: 1000, Y: 0}, {X: 1000, Y: 100}},
			nil,
		},
		{
			"openings stand where they were measured, in the corner too",
			func(r *Run) {
				r.Ends.Left.LeanRight = -10
				r.Walls[0].Openings = []Opening{{Outline: Rect(0, 0, 60, 50)}, {Outline: Rect(60, 60, 60, 30)}}
			},
			0,
			geom.Ring{{X: 0, Y: 0}, {X: 1000, Y: 0}, {X: 1000, Y: 100}, {X: -10, Y: 100}},
			[]geom.Ring{Rect(0, 0, 60, 50), Rect(60, 60, 60, 30)},
		},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := plain()
			c.change(r)
			if diff := cmp.Diff(geom.Polygon{Outline: c.outline, Holes: c.holes}, r.Face(c.wall)); diff != "" {
				t.Errorf("(-want +got)\n%s", diff)
			}
		})
	}
}

func TestFaceRoundAClosedRun(t *testing.T) {
	r := box(4000, 3000, 100)
	r.Corners[3] = Corner{LeanLeft: 7, LeanRight: -9}
	if left, right := r.LeanAt(0); left != -9 || right != 0 {
		t.Errorf("North leans by %v and %v", left, right)
	}
	if left, right := r.LeanAt(3); left != 0 || right != 7 {
		t.Errorf("West leans by %v and %v", left, right)
	}
	want := geom.Ring{{X: 0, Y: 0}, {X: 4000, Y: 0}, {X: 4000, Y: 100}, {X: -9, Y: 100}}
	if diff := cmp.Diff(want, r.Face(0).Outline); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
}

func TestFaceDoesNotTouchTheRun(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := aRun.Draw(t, "run")
		before := r.Mirrored().Mirrored()
		for i := range r.Walls {
			_ = r.Face(i)
		}
		if diff := cmp.Diff(before, r); diff != "" {
			t.Fatal(diff)
		}
	})
}

func TestMirroredTwiceIsTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := aRun.Draw(t, "run")
		if diff := cmp.Diff(r, r.Mirrored().Mirrored()); diff != "" {
			t.Fatal(diff)
		}
	})
}

// A mirror turns faces into mirrored faces: the same area, and the same cells
// when each is mirrored.
func TestMirroredFaces(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := aRun.Draw(t, "run")
		m := r.Mirrored()
		if r.Check() != nil || m.Check() != nil {
			t.Fatalf("refused: %v; mirrored: %v", r.Check(), m.Check())
		}
		for i, w := range r.Walls {
			j := len(r.Walls) - 1 - i
			there, back := r.Face(i), m.Face(j).Mirrored(w.Width)
			if a, b := there.Area(), back.Area(); a != b {
				t.Fatalf("wall %d: %v and %v", i, a, b)
			}
			if diff := cmp.Diff(there, back); diff != "" {
				t.Fatalf("wall %d:\n%s", i, diff)
			}
		}
	})
}

func TestMirroredCornersKeepTheirWalls(t *testing.T) {
	r := box(4000*mm, 3000*mm, 2400*mm)
	for i := range r.Corners {
		r.Corners[i] = Corner{Angle: measure.Angle(80+i) * deg, LeanLeft: measure.Length(i + 1), LeanRight: measure.Length(10 * (i + 1))}
	}
	want := map[string]Corner{}
	for i, c := range r.Corners {
		want[r.Walls[(i+1)%4].Name+"|"+r.Walls[i].Name] = Corner{Angle: c.Angle, LeanLeft: -c.LeanRight, LeanRight: -c.LeanLeft}
	}
	got := map[string]Corner{}
	m := r.Mirrored()
	for i, c := range m.Corners {
		got[m.CornerName(i)] = c
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
}

func TestMirroredOpening(t *testing.T) {
	r := &Run{Walls: []Wall{{
		Width: 1000, Outline: Rectangle(1000, 100),
		Openings: []Opening{{Outline: Rect(100, 0, 200, 50), Sides: Sides{Left: true, Head: true}}},
		Fittings: []Fitting{{At: geom.Point{X: 10, Y: 20}}},
	}}}
	w := r.Mirrored().Walls[0]
	if x, _ := w.Openings[0].Outline.Bounds(); x != (geom.Interval{Lo: 700, Hi: 900}) {
		t.Errorf("opening at %v", x)
	}
	if w.Openings[0].Sides != (Sides{Right: true, Head: true}) {
		t.Errorf("sides %+v", w.Openings[0].Sides)
	}
	if w.Fittings[0].At != (geom.Point{X: 990, Y: 20}) {
		t.Errorf("fitting at %v", w.Fittings[0].At)
	}
	if r.Walls[0].Fittings[0].At.X != 10 {
		t.Error("the run itself was changed")
	}
}

func TestReach(t *testing.T) {
	// A step in height at the corner: foot and head are those of the higher wall.
	r := &Run{
		Walls: []Wall{
			{Name: "A", Width: 2000 * mm, Outline: Rectangle(2000*mm, 2400*mm)},
			{Name: "B", Width: 1000 * mm, Outline: geom.Ring{{X: 0, Y: -100 * mm}, {X: 1000 * mm, Y: -100 * mm}, {X: 1000 * mm, Y: 2000 * mm}, {X: 0, Y: 2100 * mm}}},
		},
		Corners: []Corner{{}},
	}
	left, right := r.Reach(0)
	if left != (geom.Interval{Lo: 0, Hi: 2400 * mm}) || right != (geom.Interval{Lo: -100 * mm, Hi: 2400 * mm}) {
		t.Errorf("wall A reaches %v and %v", left, right)
	}
	left, right = r.Reach(1)
	if left != (geom.Interval{Lo: -100 * mm, Hi: 2400 * mm}) || right != (geom.Interval{Lo: -100 * mm, Hi: 2000 * mm}) {
		t.Errorf("wall B reaches %v and %v", left, right)
	}
}
