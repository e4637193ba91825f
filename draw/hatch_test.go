package draw_test

import (
	"testing"

	"pgregory.net/rapid"

	"firstdrop/draw"
	"firstdrop/geom"
	"firstdrop/measure"
)

// Cavalieri's principle: the heights of the hatch lines times their gap are the
// area, as the gap goes to nothing. At a gap of g the sum over lines is off by
// less than one line for every side.
func TestHatchCoversTheArea(t *testing.T) {
	shapes := []struct {
		name  string
		shape geom.Polygon
		area  int64 // mm², by hand
		sides int64
	}{
		{"square", geom.Polygon{Outline: square(0, 0, 100)}, 10_000, 4},
		{"square off the grid", geom.Polygon{Outline: square(-37, 11, 100)}, 10_000, 4},
		{"triangle", geom.Polygon{Outline: geom.Ring{pt(0, 0), pt(100, 0), pt(0, 100)}}, 5_000, 3},
		{"with a hole", geom.Polygon{Outline: square(0, 0, 100), Holes: []geom.Ring{square(20, 30, 40)}}, 8_400, 8},
		{"a step", geom.Polygon{Outline: geom.Ring{pt(0, 0), pt(80, 0), pt(80, 40), pt(30, 40), pt(30, 90), pt(0, 90)}}, 80*40 + 30*50, 6},
	}
	const gap = mm / 4
	for _, tt := range shapes {
		for _, slope := range []draw.Slope{draw.Rising, draw.Falling} {
			sum := measure.Length(0)
			for _, it := range (draw.Hatch{Shape: tt.shape, Slope: slope, Gap: gap, Pen: pen}).Parts() {
				l := it.(draw.Line)
				if dx, dy := l.Points[1].X-l.Points[0].X, (l.Points[1].Y - l.Points[0].Y).Abs(); (dx - dy).Abs() > 2 {
					t.Errorf("%s: line %v is not at 45°", tt.name, l.Points)
				}
				sum += (l.Points[1].Y - l.Points[0].Y).Abs()
			}
			got := int64(sum / mm * gap / mm) // mm²
			if off := got - tt.area; off > 100*tt.sides/4 || off < -100*tt.sides/4 {
				t.Errorf("%s, slope %d: the lines cover %d mm², want %d", tt.name, slope, got, tt.area)
			}
		}
	}
}

func TestHatchStaysInside(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := func(name string, lo, hi int) measure.Length {
			return measure.Length(rapid.IntRange(lo, hi).Draw(t, name))
		}
		p := geom.Polygon{Outline: square(n("x", -50, 50), n("y", -50, 50), n("side", 10, 90))}
		b := draw.Area{Shape: p}.Box()
		p.Holes = []geom.Ring{draw.BoxAt(b.X.Lo+n("hx", 1, 4)*mm, b.Y.Lo+n("hy", 1, 4)*mm, 3*mm, 4*mm).Ring()}
		slope := draw.Slope(rapid.IntRange(0, 1).Draw(t, "slope"))
		for _, it := range (draw.Hatch{Shape: p, Slope: slope, Gap: n("gap", 1, 9) * mm, Pen: pen}).Parts() {
			l := it.(draw.Line)
			mid := geom.Point{X: (l.Points[0].X + l.Points[1].X) / 2, Y: (l.Points[0].Y + l.Points[1].Y) / 2}
			if !p.Contains(mid) {
				t.Fatalf("line %v runs outside %v", l.Points, p)
			}
		}
	})
}

func TestHatchWithoutGap(t *testing.T) {
	if items := (draw.Hatch{Shape: geom.Polygon{Outline: square(0, 0, 9)}}).Parts(); items != nil {
		t.Errorf("a gap of 0 draws %d lines", len(items))
	}
	if items := (draw.Hatch{Gap: mm}).Parts(); items != nil {
		t.Errorf("no shape draws %d lines", len(items))
	}
}
