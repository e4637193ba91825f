package room

import (
	"testing"

	"firstdrop/geom"
)

// Stairs are told by a floor that rises by a step or two, from either end; a sill out of
// level and a sloping ceiling are none.
func TestIsStair(t *testing.T) {
	for _, tt := range []struct {
		what        string
		left, right int
		want        bool
	}{
		{"a level floor", 0, 0, false},
		{"a floor out of level", 0, 20, false},
		{"stairs that rise to the right", 0, 1900, true},
		{"stairs that rise to the left", 1900, 0, true},
		{"two steps", 0, 300, true},
	} {
		w := shaped("W", 3600, [2]int{0, tt.left}, [2]int{3600, tt.right}, [2]int{3600, 4900}, [2]int{0, 2500})
		if got := w.IsStair(); got != tt.want {
			t.Errorf("%s: %v", tt.what, got)
		}
	}
	arch := &Wall{Name: "level under a gable", Width: 4000 * mm, Outline: geom.Ring{{}, {X: 4000 * mm}, {X: 2000 * mm, Y: 3000 * mm}}}
	if arch.IsStair() {
		t.Error("a gable is taken for stairs")
	}
}
