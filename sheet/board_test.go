package sheet

import (
	"testing"

	"firstdrop/draw"
)

func TestBoard(t *testing.T) {
	var b board
	box := draw.BoxAt(0, 0, 10*mm, 5*mm)
	if !b.isFree(box) {
		t.Error("an empty board is taken")
	}
	b.take(box)
	tests := []struct {
		box  draw.Box
		free bool
	}{
		{box, false},
		{draw.BoxAt(2*mm, 2*mm, mm, mm), false},
		{draw.BoxAt(10*mm, 0, mm, mm), false},     // not even side by side
		{draw.BoxAt(10*mm+mm/2, 0, mm, mm), true}, // but with half a millimetre of air
		{draw.BoxAt(0, 6*mm, 10*mm, mm), true},
	}
	for _, tt := range tests {
		if got := b.isFree(tt.box); got != tt.free {
			t.Errorf("isFree(%v) = %v", tt.box, got)
		}
	}
}
