package draw_test

import (
	"testing"

	"firstdrop/draw"
	"firstdrop/measure"
)

// The line is as long as the longer of both scales; the last ticks stand at 100 mm
// and at 4 in from the first, whatever the letters' size.
func TestRulerIsTrue(t *testing.T) {
	r := draw.Ruler{At: pt(13, 7), Size: 3 * mm, Pen: pen, Text: "measure"}
	above, below := measure.Length(0), measure.Length(0)
	for _, it := range r.Parts() {
		l, ok := it.(draw.Line)
		if !ok || l.Points[0].X != l.Points[1].X {
			continue
		}
		if x := l.Points[0].X - 13*mm; l.Points[1].Y > 7*mm {
			above = max(above, x)
		} else {
			below = max(below, x)
		}
	}
	if above != 100*mm || below != 4*measure.Inch {
		t.Errorf("ticks reach %v and %v", above, below)
	}
	figures := map[string]bool{}
	for _, it := range r.Parts() {
		if text, ok := it.(draw.Text); ok {
			figures[text.Text] = true
		}
	}
	for _, want := range []string{"0", "20", "80", "100 mm", "1", "3", "4 in", "measure"} {
		if !figures[want] {
			t.Errorf("lacks %q", want)
		}
	}
}
