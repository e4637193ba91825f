package cutting

import "slices"

// The heaviest roll that serves every start, without a list of all of them.
//
// Where the sets good for all starts are too many for a catalogue, only those
// heavier than what is known already are looked for, along the lane on which
// the least can be carried:
//
//	           known                  lane
//	weight ------|----------------------|---------->
//	             [ sets in between are  ]   none can be heavier
//	             [ grown and tried      ]
//
// The better the prices, the narrower the gap and the fewer the sets. If none
// in it is good for all starts, the heaviest known one is the heaviest there
// is: a price, a capacity, and a proof.

const (
	pricedSteps = 500_000 // for all of it
	pricedSets  = 60_000  // for the sets between two weights

	// manyLaneKinds is the number of kinds above which a price is sought on one
	// lane after the other until one will do, and dives do without proofs.
	manyLaneKinds = 60
)

// provePriced raises the bound where there are too many sets to list, and
// dives with the rolls found by it.
func (w *work) provePriced() {
	if !w.open() || w.listed || len(w.n.safe) == 1 || w.n.coarse {
		return
	}
	limit := w.limit
	w.limit = min(limit, w.steps+pricedSteps)
	w.lower.sharp = false
	w.demandLeft()
	w.begin(w.lower.demand, singly)
	w.improve(w.lower.demand, singly, w.best.rolls(), false)
	if w.open() {
		w.priced = true
		w.dive()
		w.priced = false
	}
	w.limit = limit
}

// lightest returns the exact lane that carries the least by w.weight, and how
// much.
func (w *work) lightest() (lane int, most int64) {
	for d := range w.n.exact {
		if v := w.lanePass(d); d == 0 || v < most {
			lane, most = d, v
		}
	}
	return lane, most
}

// heaviestPriced leaves in w.seq a roll that serves every start worth more
// than one, if there is one, and returns a capacity for such rolls; 0 if none
// was sought or it could not be decided.
func (w *work) heaviestPriced() int64 {
	w.heaviest()
	known := w.weightOf(w.seq)
	if known > one+one>>10 {
		return 0
	}
	lane, most := w.lightest()
	least := max(known, one+one>>20) + 1
	if most < least {
		return most
	}
	if w.isLarge() && w.seekInGaps(least-1) || w.m > manyLaneKinds && w.priced {
		return 0
	}
	kept := slices.Clone(w.seq)
	decided := w.listAbove(lane, least)
	w.seq = append(w.seq[:0], kept...)
	best := int64(0)
	for _, id := range w.states.list {
		if st := &w.states.info[id]; st.weight > best {
			best = st.weight
			w.seq = w.states.sequence(w.seq[:0], id)
		}
	}
	switch {
	case !decided:
		return 0
	case best == 0:
		return least - 1
	}
	return best
}

// listAbove lists the sets good for all starts that weigh at least so much by
// w.weight. If it returns false the list is not complete.
func (w *work) listAbove(lane int, least int64) bool {
	limit := w.limit
	defer func() { w.limit = limit }()
	w.limit = min(limit, w.steps+pricedSets)
	if w.listRolls(&w.states, lane, w.n.exact[lane].last, least) {
		return true
	}
	w.states.link(w.p.demand)
	return false
}

func (w *work) weightOf(seq []int16) int64 {
	sum := int64(0)
	for _, j := range seq {
		sum += w.weight[j]
	}
	return sum
}

// checkPriced recomputes that no set good for all starts weighs more than the
// capacity by w.weight.
func (w *work) checkPriced(capacity int64) error {
	lane, most := w.lightest()
	switch {
	case most <= capacity:
		return nil
	case !w.listRolls(&w.states, lane, w.n.exact[lane].last, capacity+1):
		return errTooMany
	case len(w.states.list) > 0:
		return errTooHeavy
	}
	return nil
}
