package cutting

import (
	"slices"
	"testing"
	"time"
)

func TestDbg(t *testing.T) {
	var ns, mx []int
	var tm []time.Duration
	for seed := range 2000 {
		spec := anyStart(randomRoom(seed))
		if spec.Repeat == 0 {
			continue
		}
		p := newProblem(t, spec)
		w := newWork(p, DefaultSteps)
		for j := range w.weight {
			w.weight[j] = 1
		}
		w.lanePass(0)
		t0 := time.Now()
		w.listRolls(0, 1)
		d := time.Since(t0)
		alive, max := 0, 0
		for i := range w.states.info {
			s := &w.states.info[i]
			if !s.dead {
				alive++
				if s.size > 0 && s.from == s.to {
					max++
				}
			}
		}
		ns = append(ns, alive)
		tm = append(tm, d)
		mx = append(mx, max)
	}
	slices.Sort(ns)
	slices.Sort(tm)
	slices.Sort(mx)
	n := len(ns)
	t.Logf("sets %d %d %d %d %d; time %v %v %v %v; maximal %v %v %v %v", ns[n/2], ns[n*9/10], ns[n*99/100], ns[n*999/1000], ns[n-1], tm[n/2], tm[n*9/10], tm[n*99/100], tm[n-1], mx[n/2], mx[n*9/10], mx[n*99/100], mx[n-1])
}
