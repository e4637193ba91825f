package room

import (
	"errors"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"firstdrop/geom"
	"firstdrop/measure"
)

// Each case spoils one thing in a sound room of 4 by 3 m, 2.4 m high.
func TestCheck(t *testing.T) {
	for _, c := range []struct {
		name  string
		spoil func(*Run)
		want  string // "" when it is to be let pass
	}{
		{"nothing", func(*Run) {}, ""},
		{"no walls", func(r *Run) { *r = Run{Name: "Study"} }, "Study: there is no wall to paper; give at least one"},
		{
			"two walls that close",
			func(r *Run) { r.Walls, r.Corners = r.Walls[:2], r.Corners[:2] },
			"Study: 2 walls cannot close a room; give the others, or make it an open run",
		},
		{"a corner too few", func(r *Run) { r.Corners = r.Corners[:3] }, "Study: 3 corners for 4 walls, where 4 are needed; look at each corner again"},
		{"an open run with the corners of a closed one", func(r *Run) { r.Closed = false }, "Study: 4 corners for 4 walls, where 3 are needed; look at each corner again"},
		{"no width", func(r *Run) { r.Walls[1].Width = 0 }, "Study: East: its width is 0 mm; measure it along the level line"},
		{"a negative width, no name", func(r *Run) { r.Walls[1].Width, r.Walls[1].Name = -5*mm, "" }, "Study: wall 2: its width is -5 mm; measure it along the level line"},
		{"a width beyond all reach", func(r *Run) { r.Walls[0].Width = 2 * measure.MaxLength }, "Study: North: its width of 2000000 mm is more than 1000000 mm; measure it again"},
		{
			"an outline that crosses itself",
			func(r *Run) { o := r.Walls[0].Outline; o[0], o[1] = o[1], o[0] },
			"Study: North: the edge from corner 2 meets the edge from corner 4; measure its corners again",
		},
		{"no outline", func(r *Run) { r.Walls[0].Outline = nil }, "Study: North: an outline needs at least three corners; measure its corners again"},
		{
			"an outline beyond the width",
			func(r *Run) { r.Walls[0].Width -= 100 * mm },
			"Study: North: its outline runs from 0 mm to 4000 mm across, but the wall is 3900 mm wide; measure its width and its slopes again",
		},
		{
			"an outline that begins before the wall",
			func(r *Run) { r.Walls[0].Outline[3].X = -10 * mm },
			"Study: North: its outline runs from -10 mm to 4000 mm across, but the wall is 4000 mm wide; measure its width and its slopes again",
		},
		{"an outline that ends before the corner", func(r *Run) { r.Walls[0].Outline = Rectangle(3000*mm, 2400*mm) }, ""},
		{"a door on the floor", open(Rect(500*mm, 0, 800*mm, 2000*mm)), ""},
		{"a door below the paper", open(Rect(500*mm, -100*mm, 800*mm, 2000*mm)), ""},
		{"a door as wide as the wall", open(Rect(0, 0, 4000*mm, 2000*mm)), ""},
		{
			"a door wider than the wall",
			open(Rect(0, 0, 4001*mm, 2000*mm)),
			"Study: North: door 1: it is 4001 mm wide, but the wall is only 4000 mm wide; measure both again",
		},
		{
			"a door before the left corner",
			open(Rect(-30*mm, 0, 800*mm, 2000*mm)),
			"Study: North: door 1: it begins 30 mm before the wall's left corner; measure its distance from there again",
		},
		{
			"a door beyond the right corner",
			open(Rect(3500*mm, 0, 800*mm, 2000*mm)),
			"Study: North: door 1: it ends 300 mm beyond the wall's right corner; measure its width and its distance from the left corner again",
		},
		{
			"a door above the wall",
			open(Rect(500*mm, 2400*mm, 800*mm, 2000*mm)),
			"Study: North: door 1: it lies above or below all of the wall; measure the heights of its head and foot again",
		},
		{
			"a door without width",
			open(Rect(500*mm, 0, 0, 2000*mm)),
			"Study: North: door 1: corners 1 and 2 are at the same place; measure its corners again",
		},
		{"two doors that touch", open(Rect(500*mm, 0, 800*mm, 2000*mm), Rect(1300*mm, 0, 800*mm, 2000*mm)), ""},
		{"a window above a door", open(Rect(500*mm, 0, 800*mm, 1800*mm), Rect(500*mm, 1800*mm, 800*mm, 300*mm)), ""},
		{
			"two doors that overlap by a millimetre",
			open(Rect(500*mm, 0, 801*mm, 2000*mm), Rect(1300*mm, 0, 800*mm, 2000*mm)),
			"Study: North: door 2: it overlaps door 1; measure the distance of both from the wall's left corner again",
		},
		{
			"three that overlap, in the order of the list",
			open(Rect(1400*mm, 0, 500*mm, 900*mm), Rect(1000*mm, 0, 500*mm, 900*mm), Rect(1100*mm, 0, 500*mm, 900*mm)),
			`Study: North: door 3: it overlaps door 1; measure the distance of both from the wall's left corner again
Study: North: door 3: it overlaps door 2; measure the distance of both from the wall's left corner again`,
		},
		{
			"two slanted ones whose boxes overlap",
			open(geom.Ring{{X: 0, Y: 0}, {X: 900 * mm, Y: 0}, {X: 0, Y: 900 * mm}}, geom.Ring{{X: 901 * mm, Y: 0}, {X: 901 * mm, Y: 900 * mm}, {X: 1 * mm, Y: 900 * mm}}),
			"",
		},
		{
			"a reveal that comes out of the wall",
			func(r *Run) {
				r.Walls[0].Openings = []Opening{{Name: "Bay", Kind: Window, Outline: Rect(0, 0, 90*mm, 90*mm), Depth: -80 * mm}}
			},
			"Study: North: Bay: its depth is -80 mm; measure how far it goes back from the wall's face",
		},
		{
			"a fitting of negative size",
			func(r *Run) {
				r.Walls[3].Fittings = []Fitting{{Kind: Switch, Size: geom.Point{X: 80 * mm, Y: -80 * mm}}}
			},
			"Study: West: switch 1: its size is 80 mm by -80 mm; measure it again",
		},
		{"an angle all round", func(r *Run) { r.Corners[0].Angle = 360 * deg }, "Study: corner North|East: its angle of 360° is none between 0° and 360°; measure it through the room"},
		{"a negative angle", func(r *Run) { r.Corners[3].Angle = -deg }, "Study: corner West|North: its angle of -1° is none between 0° and 360°; measure it through the room"},
		{"a straight corner", func(r *Run) { r.Corners[0].Angle = 180 * deg }, "Study: corner North|East: 180° is no corner; make the two walls one, or measure the angle again"},
		{
			"an inside corner that measures 270°",
			func(r *Run) { r.Corners[0].Angle = 270 * deg },
			"Study: corner North|East: it is said to be an inside corner, but measures 270° through the room; look whether it points towards you, and measure the angle again",
		},
		{
			"an outside corner that measures 90°",
			func(r *Run) { r.Corners[1].Angle, r.Corners[1].Kind = 90*deg, Outside },
			"Study: corner East|South: it is said to be an outside corner, but measures 90° through the room; look whether it points towards you, and measure the angle again",
		},
		{"a bay's corner", func(r *Run) { r.Corners[0].Angle = 135 * deg }, ""},
		{"an outside corner that was not measured", func(r *Run) { r.Corners[0].Kind = Outside }, ""},
		{
			"a lean of more than the wall",
			func(r *Run) { r.Corners[0].LeanRight = 3000 * mm },
			"Study: East: a corner leans by 3000 mm, but the wall is only 3000 mm wide; measure the lean with a plumb line again",
		},
		{
			"leans that cross",
			func(r *Run) { r.Corners[3].LeanRight, r.Corners[0].LeanLeft = 2500*mm, -2500*mm },
			"Study: North: its corners lean by 2500 mm and -2500 mm, so that they cross; measure both leans with a plumb line again",
		},
		{
			"several, in the order of the run",
			func(r *Run) { r.Walls[2].Width, r.Corners[0].Angle, r.Walls[1].Outline = 0, -1, nil },
			`Study: corner North|East: its angle of -0.000001° is none between 0° and 360°; measure it through the room
Study: East: an outline needs at least three corners; measure its corners again
Study: South: its width is 0 mm; measure it along the level line`,
		},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := box(4000*mm, 3000*mm, 2400*mm)
			c.spoil(r)
			got := ""
			if err := r.Check(); err != nil {
				got = err.Error()
			}
			if got != c.want {
				t.Errorf("got\n%s\nwant\n%s", got, c.want)
			}
		})
	}
}

// open returns a change that cuts openings into the first wall.
func open(outlines ...geom.Ring) func(*Run) {
	return func(r *Run) {
		for _, o := range outlines {
			r.Walls[0].Openings = append(r.Walls[0].Openings, Opening{Outline: o})
		}
	}
}

func TestErrorHasWhatProgramsNeed(t *testing.T) {
	r := box(4000*mm, 3000*mm, 2400*mm)
	open(Rect(0, 0, 800*mm, 2000*mm), Rect(3500*mm, 0, 800*mm, 2000*mm))(r)
	r.Walls[2].Outline = nil
	err := r.Check()
	var one *Error
	if !errors.As(err, &one) {
		t.Fatalf("%T has no *Error in it", err)
	}
	if one.Rule != RuleOpeningPlace || one.Wall != 0 || one.Opening != 1 || one.Corner != -1 || one.Fitting != -1 ||
		one.Got != 4300*mm || one.Limit != 4000*mm || one.Place.Opening != "door 2" {
		t.Errorf("%+v", one)
	}
	var ring *geom.RingError
	if !errors.As(err, &ring) || ring.Fault != geom.TooFewCorners {
		t.Errorf("the cause of the second is %v", ring)
	}
	var all Errors
	if !errors.As(err, &all) || len(all) != 2 {
		t.Errorf("%d errors", len(all))
	}
}

// Ten thousand walls, and ten thousand openings in one wall, are looked at in
// good time.
func TestCheckManyWalls(t *testing.T) {
	r := &Run{Closed: true}
	for range 10_000 {
		r.Walls = append(r.Walls, Wall{Width: measure.Metre, Outline: Rectangle(measure.Metre, 2*measure.Metre)})
		r.Corners = append(r.Corners, Corner{Angle: 179 * deg})
	}
	r.Walls[0].Width, r.Walls[0].Outline = 100*measure.Metre, Rectangle(100*measure.Metre, 2*measure.Metre)
	for i := range measure.Length(10_000) {
		r.Walls[0].Openings = append(r.Walls[0].Openings, Opening{Outline: Rect(i*10*mm, 0, 10*mm, measure.Metre)})
	}
	if err := r.Check(); err != nil {
		t.Fatal(err.Error()[:200])
	}
	for i := range r.Walls[0].Openings {
		r.Walls[0].Openings[i].Outline = Rect(0, 0, 10*mm, measure.Metre)
	}
	var all Errors
	if errors.As(r.Check(), &all); len(all) != 9_999 {
		t.Errorf("%d errors of 10,000 doors in one place", len(all))
	}
	if fs := r.Findings(); len(fs) == 0 {
		t.Error("ten thousand walls that turn by a degree each should not close")
	}
}

// Whatever is thrown at it, Check answers, and what passes has faces, findings
// and a mirror image that passes too.
func FuzzCheck(f *testing.F) {
	f.Add([]byte{4, 0, 10, 20, 30, 40, 50, 60, 70, 80, 90, 100}, false)
	f.Add([]byte{2, 1, 90, 0, 60, 1, 10, 0, 20, 50, 2}, false)
	f.Add([]byte{1, 255, 128, 127, 0, 0, 0, 1, 1, 1, 2, 2, 2}, true)
	f.Add([]byte(strings.Repeat("wall and corner ", 20)), true)
	f.Fuzz(func(t *testing.T, data []byte, closed bool) {
		r := runOf(data, closed)
		if r.Check() != nil {
			_ = r.Mirrored()
			return
		}
		for i := range r.Walls {
			if r.Face(i).Area() < 0 {
				t.Error("a face of negative area")
			}
		}
		_ = r.Findings()
		if err := r.Mirrored().Check(); err != nil {
			t.Errorf("passes, but not mirrored: %v", err)
		}
	})
}

// runOf makes a run of any bytes: small lengths, and some as large as can be.
func runOf(data []byte, closed bool) *Run {
	next := func() measure.Length {
		if len(data) == 0 {
			return 0
		}
		b := int8(data[0])
		data = data[1:]
		return measure.Length(b)
	}
	unit := measure.Nanometre
	if next()&1 == 0 {
		unit = 37*mm + 1
	}
	long := func() measure.Length {
		l := next()
		if l == 100 {
			return 1<<63 - 1
		}
		return l * unit
	}
	ring := func(n measure.Length) (r geom.Ring) {
		for range n & 7 {
			r = append(r, geom.Point{X: long(), Y: long()})
		}
		return r
	}
	corner := func() Corner {
		return Corner{Kind: CornerKind(next() & 1), Angle: measure.Angle(next()) * 3 * deg, LeanLeft: long(), LeanRight: long()}
	}
	r := &Run{Closed: closed}
	for range next() & 7 {
		w := Wall{Width: long(), Outline: ring(next())}
		if next()&1 == 0 {
			w.Outline = Rectangle(w.Width, long())
		}
		for range next() & 3 {
			w.Openings = append(w.Openings, Opening{Outline: Rect(long(), long(), long(), long()), Depth: long()})
		}
		w.Fittings = append(w.Fittings, Fitting{At: geom.Point{X: long(), Y: long()}})
		r.Walls, r.Corners = append(r.Walls, w), append(r.Corners, corner())
	}
	if !closed && len(r.Corners) > 0 {
		r.Corners = r.Corners[:len(r.Corners)-1]
	}
	r.Ends.Left, r.Ends.Right = corner(), corner()
	return r
}

func TestCheckPassesSoundRuns(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		if err := aRun.Draw(t, "run").Check(); err != nil {
			t.Fatal(err)
		}
	})
}
