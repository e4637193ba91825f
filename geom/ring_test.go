package geom

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"firstdrop/measure"
)

func TestRingContains(t *testing.T) {
	// Corners above, beside and below one another, so that a line straight up
	// from a point runs through corners.
	room := "0,0 4,0 4,2 6,2 6,0 8,0 8,6 4,8 0,6"
	for _, c := range []struct {
		at   Point
		want int
	}{
		{Point{2, 3}, 1},
		{Point{4, 3}, 1},  // a corner straight above and one below
		{Point{4, 1}, 0},  // on an upright edge
		{Point{5, 1}, -1}, // in the notch
		{Point{5, 2}, 0},
		{Point{6, 3}, 1},
		{Point{0, 0}, 0},
		{Point{0, 3}, 0},
		{Point{4, 8}, 0},
		{Point{2, 7}, 0}, // on the slope
		{Point{1, 7}, -1},
		{Point{4, 9}, -1},
		{Point{4, -1}, -1},
		{Point{-1, 3}, -1},
		{Point{9, 3}, -1},
		{Point{8, 7}, -1},
	} {
		r := parseRing(t, room)
		if got := r.side(c.at); got != c.want {
			t.Errorf("side of %v = %d, want %d", c.at, got, c.want)
		}
		if got := r.Contains(c.at); got != (c.want >= 0) {
			t.Errorf("Contains(%v) = %v", c.at, got)
		}
	}
}

func TestPolygonContains(t *testing.T) {
	p := parsePolygon(t, "0,0..8,5 - 2,0..4,3 - 3,2..6,4")
	for _, c := range []struct {
		name string
		at   Point
		want bool
	}{
		{"on the wall", Point{1, 1}, true},
		{"outside", Point{9, 1}, false},
		{"on the outline", Point{8, 1}, true},
		{"in a hole", Point{5, 3}, false},
		{"in both holes", Point{3, 2}, false},
		{"on the edge of a hole", Point{6, 3}, true},
		{"on the edge of one hole, inside the other", Point{4, 3}, false},
		{"on the threshold", Point{3, 0}, true},
	} {
		if got := p.Contains(c.at); got != c.want {
			t.Errorf("%s: Contains(%v) = %v", c.name, c.at, got)
		}
	}
}

func TestBounds(t *testing.T) {
	x, y := parsePolygon(t, "1,-2 7,0 4,9 - 0,0..1,1").Bounds()
	if x != (Interval{1, 7}) || y != (Interval{-2, 9}) {
		t.Errorf("bounds %v, %v", x, y)
	}
	x, y = Ring(nil).Bounds()
	if !x.IsEmpty() || !y.IsEmpty() {
		t.Errorf("bounds of nothing: %v, %v", x, y)
	}
	if got := (&Sweep{}).Bounds(); !got.IsEmpty() {
		t.Errorf("bounds of no cells: %v", got)
	}
}

func TestMirroredRing(t *testing.T) {
	got := parseRing(t, "0,0 6,0 6,4 2,4").Mirrored(6)
	want := parseRing(t, "4,4 0,4 0,0 6,0")
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
}

func TestMirrorsAndShiftsUndoThemselves(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := aSlantedPolygon.Draw(t, "polygon")
		width := measure.Length(rapid.Int64Range(-9e9, 9e9).Draw(t, "width"))
		d := Point{width, measure.Length(rapid.Int64Range(-9e9, 9e9).Draw(t, "up"))}
		if diff := cmp.Diff(p.each(func(r Ring) Ring { return r }), p.Mirrored(width).Mirrored(width)); diff != "" {
			t.Fatalf("mirrored twice:\n%s", diff)
		}
		there := p.Shifted(d)
		if p.Contains(p.Outline[0]) != there.Contains(Point{p.Outline[0].X + d.X, p.Outline[0].Y + d.Y}) {
			t.Fatal("shifted polygon holds another corner")
		}
		if diff := cmp.Diff(p.each(func(r Ring) Ring { return r }), there.Shifted(Point{-d.X, -d.Y})); diff != "" {
			t.Fatalf("shifted there and back:\n%s", diff)
		}
	})
}

func TestCell(t *testing.T) {
	c := Cell{X: Interval{0, 4}, Left: Interval{0, 2}, Right: Interval{1, 6}}
	if got := c.Y(); got != (Interval{0, 6}) {
		t.Errorf("Y = %v", got)
	}
	for _, at := range []struct {
		x    measure.Length
		want Interval
	}{
		{0, Interval{0, 2}},
		{1, Interval{0, 3}}, // 0.25 and 3
		{2, Interval{1, 4}}, // 0.5 and 4: halves up
		{4, Interval{1, 6}},
	} {
		if got := c.At(at.x); got != at.want {
			t.Errorf("At(%d) = %v, want %v", at.x, got, at.want)
		}
	}
	for _, x := range []measure.Length{-1, 5} {
		if got := c.At(x); !got.IsEmpty() {
			t.Errorf("At(%d) = %v, want nothing", x, got)
		}
	}
	for _, p := range []struct {
		at   Point
		want bool
	}{
		{Point{0, 0}, true},
		{Point{1, 0}, false}, // the foot stands at 0.25
		{Point{1, 3}, true},
		{Point{1, 4}, false},
		{Point{4, 6}, true},
		{Point{5, 3}, false},
		{Point{-1, 1}, false},
	} {
		if got := c.Contains(p.at); got != p.want {
			t.Errorf("Contains(%v) = %v", p.at, got)
		}
	}
}
