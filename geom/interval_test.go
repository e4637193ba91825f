package geom_test

import (
	"testing"

	"pgregory.net/rapid"

	"firstdrop/geom"
	"firstdrop/measure"
)

func iv(lo, hi measure.Length) geom.Interval { return geom.Interval{Lo: lo, Hi: hi} }

func TestIntervalMeasures(t *testing.T) {
	for _, c := range []struct {
		i      geom.Interval
		length measure.Length
		empty  bool
	}{
		{iv(0, 10), 10, false},
		{iv(-4, 3), 7, false},
		{iv(5, 5), 0, false},
		{iv(5, 4), -1, true},
		{geom.Interval{}, 0, false},
	} {
		if got := c.i.Length(); got != c.length {
			t.Errorf("%v.Length() = %d, want %d", c.i, got, c.length)
		}
		if got := c.i.IsEmpty(); got != c.empty {
			t.Errorf("%v.IsEmpty() = %v, want %v", c.i, got, c.empty)
		}
	}
}

func TestIntervalPairs(t *testing.T) {
	empty := iv(1, 0)
	for _, c := range []struct {
		name     string
		a, b     geom.Interval
		shared   geom.Interval // compared only when not empty
		union    geom.Interval
		overlaps bool
	}{
		{"apart", iv(0, 3), iv(5, 9), empty, iv(0, 9), false},
		{"touching", iv(0, 5), iv(5, 9), iv(5, 5), iv(0, 9), false},
		{"overlapping", iv(0, 6), iv(5, 9), iv(5, 6), iv(0, 9), true},
		{"one in the other", iv(0, 9), iv(2, 3), iv(2, 3), iv(0, 9), true},
		{"a position inside", iv(0, 9), iv(4, 4), iv(4, 4), iv(0, 9), false},
		{"empty and full", iv(7, 2), iv(0, 9), empty, iv(0, 9), false},
		{"both empty", iv(7, 2), iv(3, 1), empty, iv(3, 1), false},
	} {
		t.Run(c.name, func(t *testing.T) {
			for _, pair := range [][2]geom.Interval{{c.a, c.b}, {c.b, c.a}} {
				a, b := pair[0], pair[1]
				shared := a.Intersection(b)
				if shared.IsEmpty() != c.shared.IsEmpty() || !shared.IsEmpty() && shared != c.shared {
					t.Errorf("%v.Intersection(%v) = %v, want %v", a, b, shared, c.shared)
				}
				union := a.Union(b)
				if union.IsEmpty() != c.union.IsEmpty() || !union.IsEmpty() && union != c.union {
					t.Errorf("%v.Union(%v) = %v, want %v", a, b, union, c.union)
				}
				if got := a.Overlaps(b); got != c.overlaps {
					t.Errorf("%v.Overlaps(%v) = %v, want %v", a, b, got, c.overlaps)
				}
			}
		})
	}
}

// anInterval draws short intervals round 0, some of them empty.
var anInterval = rapid.Custom(func(t *rapid.T) geom.Interval {
	lo := measure.Length(rapid.IntRange(-20, 20).Draw(t, "lo"))
	return iv(lo, lo+measure.Length(rapid.IntRange(-2, 12).Draw(t, "length")))
})

// The operations mean what they mean for the positions they hold.
func TestIntervalAgreesWithItsPositions(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := anInterval.Draw(t, "a"), anInterval.Draw(t, "b")
		d := measure.Length(rapid.IntRange(-9, 9).Draw(t, "d"))
		for x := measure.Length(-50); x <= 50; x++ {
			if got := a.Intersection(b).Contains(x); got != (a.Contains(x) && b.Contains(x)) {
				t.Fatalf("intersection contains %d: %v", x, got)
			}
			if (a.Contains(x) || b.Contains(x)) && !a.Union(b).Contains(x) {
				t.Fatalf("union lacks %d", x)
			}
			if a.Shifted(d).Contains(x+d) != a.Contains(x) {
				t.Fatalf("shifted by %d differs at %d", d, x)
			}
			if a.Mirrored().Contains(-x) != a.Contains(x) {
				t.Fatalf("mirrored differs at %d", x)
			}
		}
	})
}
