package plan

import (
	"slices"
	"testing"

	"firstdrop/hanging"
	"firstdrop/internal/roomtext"
)

// A wall without paper is passed over, in weighing as in what is told: it changes
// no batch, whichever its zone was given.
func TestChangesPassOverBareWalls(t *testing.T) {
	run := roomtext.Run("A 1590x2400 | B 1000x2400 furniture(0+1000 0+2400) | C 1590x2400 | D 1060x2400")
	h, err := hanging.New(run, pattern(), hanging.DefaultRules())
	if err != nil {
		t.Fatal(err)
	}
	l, err := h.Layout(hanging.Choice{NewDrop: []int{0, 1, 2}})
	if err != nil {
		t.Fatal(err)
	}
	for _, tt := range []struct{ lot, want []int }{
		{[]int{0, 0, 0, 0}, nil},
		{[]int{0, 1, 0, 0}, nil},
		{[]int{0, 0, 1, 1}, []int{1}},
		{[]int{0, 1, 1, 0}, []int{1, 2}},
	} {
		if got := changesOf(l, []int{0, 1, 2, 3}, tt.lot); !slices.Equal(got, tt.want) {
			t.Errorf("zones hung from %v: the batch changes in corners %v, want %v", tt.lot, got, tt.want)
		}
	}
}
