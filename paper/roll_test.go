package paper

import (
	"slices"
	"testing"

	"firstdrop/measure"
)

// A roll in three lengths of 2, 3 and 4 m has joints at 2 and 5 m.
func TestJoints(t *testing.T) {
	const m = measure.Metre
	r := Roll{Parts: []RollPart{{Length: 2 * m}, {Length: 3 * m}, {Length: 4 * m}}}
	if got := r.Joints(); !slices.Equal(got, []measure.Length{2 * m, 5 * m}) || r.Total() != 9*m {
		t.Errorf("joints %v of %v", got, r.Total())
	}
	if whole := (&Roll{Length: m}); whole.Joints() != nil {
		t.Error("a whole roll has a joint")
	}
}
