package sheet

import (
	"testing"

	"firstdrop/hanging"
)

// The layouts are those of planning-model 5: on a wall of 1,975 mm started from
// a drop's edge at its left end, drop 4 has 385 mm left there and wraps 12 mm; at an
// outside corner it goes round with the other 145 mm.
func TestTurned(t *testing.T) {
	tests := []struct {
		run         string
		wall        int
		left, right string
	}{
		{"A 1975x2400 | B 1000x2400", 0, "", "4 turns 12 mm"},
		{"A 1975x2400 | B 1000x2400", 1, "", ""},
		{"A 1975x2400 > B 1000x2400", 0, "", "4 goes on: 145 mm on B"},
		{"A 1975x2400 > B 1000x2400", 1, "4 goes on: 385 mm on A", ""},
		{"A 1060x2400 | B 1000x2400", 0, "", ""}, // ends in the corner
		// A lean is no wrap: the paper reaches the corner's farthest point and 12 mm beyond.
		{"A 1975x2400 |8,0 B 1000x2400", 0, "", "4 turns 12 mm"},
	}
	for _, tt := range tests {
		e := begun(t, tt.run, tt.wall)
		if got := e.turned(hanging.Left); got != tt.left {
			t.Errorf("%s, wall %d, left: %q, want %q", tt.run, tt.wall, got, tt.left)
		}
		if got := e.turned(hanging.Right); got != tt.right {
			t.Errorf("%s, wall %d, right: %q, want %q", tt.run, tt.wall, got, tt.right)
		}
	}
}

func TestTurnsAreDrawnOutside(t *testing.T) {
	e := begun(t, "A 1975x2400 > B 1000x2400", 1)
	e.turns()
	items := e.scene.Layer("turns").Items
	if len(items) != 2 {
		t.Fatalf("%d items, want a strip and its words", len(items))
	}
	if b := items[0].Box(); b.X.Hi > 0 || b.X.Lo < -gutter {
		t.Errorf("the strip lies at %v", b)
	}
}
