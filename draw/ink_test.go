package draw_test

import (
	"testing"

	"firstdrop/draw"
)

func TestInk(t *testing.T) {
	tests := []struct {
		ink  draw.Ink
		want string
		luma int
	}{
		{0, "none", 0},
		{draw.RGB(0), "#000000", 0},
		{draw.RGB(0xffffff), "#ffffff", 255},
		{draw.RGB(0x00ff00), "#00ff00", 149}, // 0.587 × 255 = 149.685; the weights are from memory
		{draw.RGB(0x1234567), "#234567", (299*0x23 + 587*0x45 + 114*0x67) / 1000},
	}
	for _, tt := range tests {
		if got := tt.ink.String(); got != tt.want {
			t.Errorf("%#x.String() = %q, want %q", uint32(tt.ink), got, tt.want)
		}
		if got := tt.ink.Luma(); got != tt.luma {
			t.Errorf("%v.Luma() = %d, want %d", tt.ink, got, tt.luma)
		}
	}
}

func TestPenIsNone(t *testing.T) {
	for _, p := range []draw.Pen{{}, {Ink: draw.RGB(0)}, {Width: mm}, {Ink: draw.RGB(0), Width: -mm}} {
		if !p.IsNone() {
			t.Errorf("%v draws", p)
		}
	}
	if pen.IsNone() {
		t.Errorf("%v draws nothing", pen)
	}
}
