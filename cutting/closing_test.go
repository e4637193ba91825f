package cutting

import (
	"testing"

	"pgregory.net/rapid"
)

// TestBothSearchesAgree asks both complete searches whether k rolls are
// enough, for every k up to one more than needed, and compares with brute
// force. Solve uses the second where there are many kinds, or the first takes long.
func TestBothSearchesAgree(t *testing.T) {
	asked, refused := 0, 0
	manyTimes(t, func(rt *rapid.T) {
		spec := tinySpec(8).Draw(rt, "spec")
		p, err := NewProblem(spec)
		if err != nil {
			rt.Fatal(err)
		}
		want := newBrute(spec).rolls()
		w := newWork(p, DefaultSteps)
		defer w.free()
		w.greedy()
		copy(w.weight, p.length) // weights that prove little leave the more to the search
		w.lower.lane, w.lower.sharp = 0, true
		w.lower.capacity = w.lanePass(0)
		copy(w.lower.weight, p.length)
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
			if v := w.tryPlainly(k, slack); v != enough {
				rt.Errorf("longest piece first: %d rolls: %d, brute force %d", k, v, want)
			}
			if v := w.tryClosing(k); v != enough {
				rt.Errorf("new weights at every branch: %d rolls: %d, brute force %d", k, v, want)
			}
			asked++
			if enough == impossible {
				refused++
			}
		}
	})
	t.Logf("asked %d times, %d times in vain", asked, refused)
	if refused == 0 {
		t.Error("too tame: no search had to exclude anything")
	}
}
