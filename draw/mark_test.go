package draw_test

import (
	"math"
	"testing"

	"firstdrop/draw"
	"firstdrop/measure"
)

func TestMarkHoldsItsText(t *testing.T) {
	for _, text := range []string{"1", "12", "88", "13b"} {
		m := draw.Mark{At: pt(10, 20), Text: text, Size: 5 * mm, Width: mm / 4}
		words := m.Parts()[1].Box()
		if !m.Box().Contains(words) {
			t.Errorf("%s: text %v stands out of %v", text, words, m.Box())
		}
		if got := m.Parts()[0].Box(); got != m.Box() {
			t.Errorf("%s: ring %v, box %v", text, got, m.Box())
		}
	}
}

func TestDiscIsRound(t *testing.T) {
	for _, p := range draw.Disc(pt(3, 4), 5*mm) {
		if r := math.Hypot(float64(p.X-3*mm), float64(p.Y-4*mm)); math.Abs(r-float64(5*mm)) > 1 {
			t.Errorf("corner %v lies %v from the middle", p, measure.Length(r))
		}
	}
}
