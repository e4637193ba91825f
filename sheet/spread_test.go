package sheet

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"firstdrop/draw"
	"firstdrop/geom"
	"firstdrop/measure"
)

// Whatever the places, figures keep apart and no leader runs through one.
func TestSpread(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		raw := rapid.SliceOfNDistinct(rapid.IntRange(0, 1400), 1, 14, rapid.ID).Draw(t, "xs")
		slices.Sort(raw)
		xs := make([]measure.Length, len(raw))
		widths := make([]measure.Length, len(raw))
		for i, x := range raw {
			xs[i] = measure.Length(x) * mm / 10
			widths[i] = measure.Length(rapid.IntRange(20, 300).Draw(t, "width")) * mm / 10
		}
		slots := spread(xs, widths, geom.Interval{Lo: -20 * mm, Hi: 160 * mm})
		for i, a := range slots {
			if a.span.Length() != widths[i] {
				t.Fatalf("figure %d has %v for %v", i, a.span, widths[i])
			}
			if near := a.span.Union(geom.Interval{Lo: xs[i], Hi: xs[i]}).Length(); near > widths[i]+beside {
				t.Fatalf("figure %d stands off its leader at %v: %v", i, xs[i], a.span)
			}
			for j, b := range slots {
				switch {
				case i == j:
				case a.row == b.row && a.span.Overlaps(b.span):
					t.Fatalf("%d covers %d: %v %v", i, j, a, b)
				case a.row < b.row && a.span.Contains(xs[j]):
					t.Fatalf("the leader of %d at %v runs through %d: %v", j, xs[j], i, a)
				}
			}
		}
	})
}

func TestSpreadKeepsOneRowWhereItCan(t *testing.T) {
	xs := []measure.Length{0, 20 * mm, 40 * mm}
	for _, s := range spread(xs, []measure.Length{10 * mm, 10 * mm, 10 * mm}, geom.Interval{Lo: -9 * mm, Hi: 60 * mm}) {
		if s.row != 0 || s.anchor != draw.Middle {
			t.Errorf("%v, want the first row", s)
		}
	}
}
