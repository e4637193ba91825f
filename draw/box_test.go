package draw_test

import (
	"testing"

	"pgregory.net/rapid"

	"firstdrop/draw"
	"firstdrop/geom"
	"firstdrop/measure"
)

func anyBox(t *rapid.T, name string) draw.Box {
	n := func(part string) measure.Length {
		return measure.Length(rapid.IntRange(-5, 5).Draw(t, name+part))
	}
	return draw.Box{X: geom.Interval{Lo: n("x0"), Hi: n("x1")}, Y: geom.Interval{Lo: n("y0"), Hi: n("y1")}}
}

// Each answer is held against what the points say.
func TestBoxAgainstItsPoints(t *testing.T) {
	inside := func(b draw.Box, x, y measure.Length) bool { return b.X.Contains(x) && b.Y.Contains(y) }
	rapid.Check(t, func(t *rapid.T) {
		a, b := anyBox(t, "a"), anyBox(t, "b")
		shared, missing, all := 0, 0, 0
		for x := measure.Length(-5); x <= 5; x++ {
			for y := measure.Length(-5); y <= 5; y++ {
				if inside(b, x, y) {
					all++
					if !inside(a, x, y) {
						missing++
					}
				}
				if (inside(a, x, y) || inside(b, x, y)) && !inside(a.Union(b), x, y) {
					t.Fatalf("%v ∪ %v lacks %d, %d", a, b, x, y)
				}
				// Two unit cells' middles: more than an edge in common.
				if a.X.Lo <= x && x < a.X.Hi && b.X.Lo <= x && x < b.X.Hi && a.Y.Lo <= y && y < a.Y.Hi && b.Y.Lo <= y && y < b.Y.Hi {
					shared++
				}
			}
		}
		if got := a.Overlaps(b); got != (shared > 0) {
			t.Fatalf("%v overlaps %v: %v, want %v", a, b, got, shared > 0)
		}
		if all > 0 && a.Contains(b) != (missing == 0) {
			t.Fatalf("%v contains %v: %v, want %v", a, b, a.Contains(b), missing == 0)
		}
		if b.IsEmpty() != (all == 0) {
			t.Fatalf("%v is empty: %v", b, b.IsEmpty())
		}
	})
}

func TestBoxMoves(t *testing.T) {
	b := draw.BoxAt(1, 2, 10, 20)
	if got, want := b.Grown(2), draw.BoxAt(-1, 0, 14, 24); got != want {
		t.Errorf("Grown = %v, want %v", got, want)
	}
	if got, want := b.Shifted(geom.Point{X: -1, Y: 3}), draw.BoxAt(0, 5, 10, 20); got != want {
		t.Errorf("Shifted = %v, want %v", got, want)
	}
	if got, want := b.Middle(), (geom.Point{X: 6, Y: 12}); got != want {
		t.Errorf("Middle = %v, want %v", got, want)
	}
	if got := draw.BoxOf(b.Ring()); got != b {
		t.Errorf("box of the ring = %v, want %v", got, b)
	}
	if got := draw.NoBox.Union(b); got != b {
		t.Errorf("NoBox.Union = %v, want %v", got, b)
	}
}
