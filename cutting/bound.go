package cutting

import "math"

// LowerBound returns a number of rolls that cannot be undercut: the bound of
// the certificate, without a search. It is what Solve reports unless a search
// lifts it, which is rare.
func LowerBound(p *Problem) int {
	if len(p.kinds) == 0 {
		return 0
	}
	w := newWork(p, DefaultSteps)
	defer w.free()
	w.raise(math.MaxInt32, false)
	return w.lower.rolls()
}

// prove raises the bound as far as prices can, or to the best plan.
func (w *work) prove() {
	w.raise(w.best.rolls(), false)
}

// raise offers the prices of each start by itself: what no roll of that start
// can carry, no roll that must serve all starts can. It stops at the target,
// and, unless the sharpest weights are wanted, where no more can be proven.
func (w *work) raise(target int, sharp bool) {
	for d := range w.n.exact {
		w.begin(w.p.demand, d)
		w.improve(w.p.demand, d, target, sharp)
		if w.lower.rolls() >= target {
			return
		}
	}
}
