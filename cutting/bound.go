package cutting

import "math"

// LowerBound returns a number of rolls that cannot be undercut: the bound of
// the certificate, without a search. It is what Solve reports unless a search
// lifts it, which is rare. With Stock it counts rolls to buy.
func LowerBound(p *Problem) int {
	if len(p.kinds) == 0 {
		return 0
	}
	w := newWork(p, DefaultSteps)
	defer w.free()
	switch {
	case p.spec.InOrder && !p.isMixed():
		return len(p.breaks())
	case p.isMixed():
		x := &w.mixed
		x.price(p)
		w.improveMixed()
		return int((x.bound + x.top - 1) / x.top)
	}
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
		if w.lower.rolls() >= target {
			return
		}
		w.begin(w.lower.demand, d)
		w.improve(w.lower.demand, d, target, sharp)
	}
}

const (
	fewKinds = 12 // of pieces: the catalogue is worth a try at once
	maxKinds = 60 // of pieces: it is worth a try when dives have not closed the gap
)

// proveListed raises the bound by the exact prices of rolls that serve all
// starts, if there are no more kinds than given and their catalogue can be
// made, and dives again with these prices.
func (w *work) proveListed(kinds int) {
	if !w.open() || w.listed || len(w.n.safe) == 1 || w.n.coarse || w.m > kinds {
		return
	}
	if w.listed = w.catalogue(); !w.listed {
		return
	}
	w.lower.sharp = false
	w.begin(w.lower.demand, listed)
	w.improve(w.lower.demand, listed, w.best.rolls(), false)
	if kinds > fewKinds && w.open() {
		w.dive()
	}
}

// sharpen looks for the weights that come nearest to proving one roll more.
func (w *work) sharpen() {
	if w.lower.sharp {
		return
	}
	w.lower.sharp = true
	if !w.listed {
		w.raise(math.MaxInt32, true)
		return
	}
	w.begin(w.lower.demand, listed)
	w.improve(w.lower.demand, listed, math.MaxInt32, true)
}

// Prove returns a certificate that weights give by themselves, without a plan: of rolls that
// begin with one phase, so AllStarts is not set; and whether as many rolls are enough, so
// that [Solve] proves no more. It is empty where nothing is asked for, with several kinds of
// roll, and for pieces cut in order.
func Prove(p *Problem) (c Certificate, enough bool) {
	if len(p.kinds) == 0 || p.spec.InOrder || p.isMixed() {
		return c, false
	}
	w := newWork(p, DefaultSteps)
	defer w.free()
	w.trial.reset()
	w.demandLeft()
	w.fillAll(factors[0])
	w.keep()
	w.prove()
	return w.certificate(), !w.open()
}
