package draw_test

import (
	"testing"

	"firstdrop/draw"
	"firstdrop/geom"
	"firstdrop/measure"
)

func TestDimensionParts(t *testing.T) {
	tests := []struct {
		name string
		d    draw.Dimension
		turn draw.Turn
		// side tells on which side of the line the text's box must lie.
		side func(draw.Box) bool
	}{
		{"level", draw.Dimension{From: pt(0, 0), To: pt(40, 0)}, draw.Level, func(b draw.Box) bool { return b.Y.Lo > 0 }},
		{"level below", draw.Dimension{From: pt(0, 0), To: pt(40, 0), Below: true}, draw.Level, func(b draw.Box) bool { return b.Y.Hi < 0 }},
		{"upright", draw.Dimension{From: pt(0, 0), To: pt(0, 40)}, draw.Upwards, func(b draw.Box) bool { return b.X.Hi < 0 }},
		{"upright right", draw.Dimension{From: pt(0, 0), To: pt(0, 40), Below: true}, draw.Upwards, func(b draw.Box) bool { return b.X.Lo > 0 }},
	}
	for _, tt := range tests {
		tt.d.Text, tt.d.Size, tt.d.Pen = "2400 mm", 5*mm, pen
		parts := tt.d.Parts()
		text := parts[len(parts)-1].(draw.Text)
		if text.Turn != tt.turn || !tt.side(text.Box()) {
			t.Errorf("%s: text turned %d at %v", tt.name, text.Turn, text.Box())
		}
		if mid := text.Box().Middle(); tt.turn == draw.Level && mid.X != 20*mm || tt.turn == draw.Upwards && mid.Y != 20*mm {
			t.Errorf("%s: text is not in the middle: %v", tt.name, mid)
		}
		for i, at := range []geom.Point{tt.d.From, tt.d.To} {
			if tick := parts[1+i].Box(); tick.Middle() != at || tick.X.Length() != tick.Y.Length() {
				t.Errorf("%s: tick %v does not slant through %v", tt.name, tick, at)
			}
		}
	}
}

func TestDimensionWithoutText(t *testing.T) {
	if n := len(draw.Dimension{From: pt(0, 0), To: pt(9, 0), Size: mm, Pen: pen}.Parts()); n != 3 {
		t.Errorf("%d parts, want a line and two ticks", n)
	}
}

func TestDimensionInBothSystems(t *testing.T) {
	d := draw.Dimension{From: pt(0, 0), To: pt(60, 0), Size: 3 * mm, Pen: pen}
	for first, want := range map[measure.System][2]string{
		measure.Metric:   {"1237 mm", "≈ 4' 0 11/16\""},
		measure.Imperial: {"≈ 4' 0 11/16\"", "1237 mm"},
	} {
		both := d.InBoth(1237*mm, first)
		if both.Text != want[0] || both.Second != want[1] {
			t.Errorf("%v first: %q and %q, want %q", first, both.Text, both.Second, want)
		}
		parts := both.Parts()
		above, below := parts[3].(draw.Text), parts[4].(draw.Text)
		if above.Box().Y.Lo < 0 || below.Box().Y.Hi > 0 || above.Text != want[0] || below.Text != want[1] {
			t.Errorf("%v first: %q at %v, %q at %v", first, above.Text, above.Box(), below.Text, below.Box())
		}
	}
}
