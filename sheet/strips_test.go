package sheet

import (
	"testing"

	"pgregory.net/rapid"

	"firstdrop/geom"
	"firstdrop/measure"
)

// What lies within a stretch has the area of the stretch's cells, which geom
// works out another way.
func TestWithinHasTheAreaOfItsCells(t *testing.T) {
	shapes := []geom.Ring{
		{{X: 0, Y: 0}, {X: 4000, Y: 0}, {X: 4000, Y: 2400}, {X: 0, Y: 2400}},
		{{X: 0, Y: 0}, {X: 4000, Y: 0}, {X: 4000, Y: 1200}, {X: 2000, Y: 2600}, {X: 0, Y: 1200}},
		{{X: 0, Y: 0}, {X: 1500, Y: 0}, {X: 1500, Y: 600}, {X: 4000, Y: 600}, {X: 4000, Y: 2400}, {X: 0, Y: 2400}},
		{{X: -8, Y: 2400}, {X: 0, Y: 0}, {X: 2600, Y: 0}, {X: 2606, Y: 2400}},
		{{X: 0, Y: 0}, {X: 3000, Y: -1500}, {X: 3000, Y: 900}, {X: 0, Y: 2400}}, // a stair wall
	}
	rapid.Check(t, func(t *rapid.T) {
		r := shapes[rapid.IntRange(0, len(shapes)-1).Draw(t, "shape")]
		lo := measure.Length(rapid.IntRange(-100, 4000).Draw(t, "lo"))
		x := geom.Interval{Lo: lo * mm, Hi: (lo + measure.Length(rapid.IntRange(1, 900).Draw(t, "wide"))) * mm}
		on := make(geom.Ring, len(r))
		for i, p := range r {
			on[i] = geom.Point{X: p.X * mm, Y: p.Y * mm}
		}
		want := geom.AreaOf(geom.Polygon{Outline: on}.Cells(x))
		got := measure.Area(0)
		if strip := within(on, x); len(strip) > 2 {
			got = geom.Polygon{Outline: strip}.Area()
		}
		if d := got - want; d > 100 || d < -100 { // 1 mm²: points are rounded to a nanometre
			t.Fatalf("area within %v is %v, want %v", x, got, want)
		}
	})
}
