package cutting

import (
	"math"
	"testing"
)

// What single pricing proves must be what the catalogue of all sets proves: on
// random rooms the same bound, by two roads.
func TestPricedAsListed(t *testing.T) {
	compared, raised := 0, 0
	for seed := range 400 {
		p := newProblem(t, anyStart(randomRoom(50_000+seed)))
		if len(p.nets[0].safe) == 1 || p.nets[0].coarse {
			continue
		}
		singles := LowerBound(p)
		a := newWork(p, DefaultSteps)
		if !a.catalogue() {
			a.free()
			continue
		}
		a.listed = true
		a.begin(p.demand, listed)
		a.improve(p.demand, listed, math.MaxInt32, false)
		want := a.lower.rolls()
		a.free()

		b := newWork(p, DefaultSteps)
		b.begin(p.demand, singly)
		b.improve(p.demand, singly, math.MaxInt32, false)
		if got := b.lower.rolls(); got != want {
			t.Errorf("room %d: single pricing proves %d, the catalogue %d", seed, got, want)
		}
		if want > singles {
			raised++
		}
		copy(b.weight, b.lower.weight)
		if err := b.checkPriced(b.lower.capacity); err != nil {
			t.Errorf("room %d: %v", seed, err)
		}
		if err := b.checkPriced(b.lower.capacity/2 - 1); err == nil {
			t.Errorf("room %d: half the capacity passes", seed)
		}
		compared++
		b.free()
	}
	t.Logf("%d rooms compared, in %d a single start proves less", compared, raised)
	if compared < 200 || raised == 0 {
		t.Errorf("only %d rooms compared, %d of them raised", compared, raised)
	}
}
