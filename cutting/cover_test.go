package cutting

import (
	"testing"

	"pgregory.net/rapid"
)

// TestBothSearchesAgree asks both complete searches whether k rolls are
// enough, for every k up to one more than needed, and compares with brute
// force. Solve itself uses the second only where there are many kinds.
func TestBothSearchesAgree(t *testing.T) {
	asked := 0
	manyTimes(t, func(rt *rapid.T) {
		spec := tinySpec(8).Draw(rt, "spec")
		p, err := NewProblem(spec)
		if err != nil {
			rt.Fatal(err)
		}
		want := newBrute(spec).rolls()
		w := newWork(p, DefaultSteps)
		defer w.free()
		w.prove()
		w.sharpen()
		for k := 1; k <= want+1; k++ {
			slack := int64(k)*w.lower.capacity - dot(p.demand, w.lower.weight)
			if slack < 0 {
				continue
			}
			if !w.listHeavy(slack) {
				rt.Fatal("too many rolls")
			}
			enough := impossible
			if want <= k {
				enough = possible
			}
			w.demandLeft()
			w.search.chosen = w.search.chosen[:0]
			if v := w.branch(k, slack, -1, 0); v != enough {
				rt.Errorf("longest piece first: %d rolls: %d, brute force %d", k, v, want)
			}
			w.demandLeft()
			w.search.chosen = w.search.chosen[:0]
			if v := w.coverFrom(w.states.list, k, slack); v != enough {
				rt.Errorf("scarcest kind first: %d rolls: %d, brute force %d", k, v, want)
			}
			asked++
		}
	})
	t.Logf("asked %d times", asked)
}
