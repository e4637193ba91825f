package cutting

import "slices"

// One goal after the other.
//
// With the rolls settled and the first goal reached, the second may only
// choose among plans as good by the first. Both orders of the two goals need
// one search, that of changes.go with one roll more closely bound:
//
//	roll A   |=====|====|===|~|
//	roll B   |==|==|~~~~~~~~~~~|    the short one: may use so much, no more
//	roll C   |====|======|===|
//
// Few changes after the longest left-over: the short roll may use what it does
// in the plan with that left-over, and changes are counted upwards. The
// longest left-over after the fewest changes: the changes are given, and what
// the short roll may use is halved in on. What the search excludes is proven,
// where it ends within its steps; what it does not reach stays open.

// hangAll searches from the beginning for the returns allowed.
func (w *work) hangAll() verdict {
	h := &w.hang
	clear(h.failed)
	h.load, h.open, h.short = h.load[:0], h.open[:0], -1
	carry := int64(h.rolls) * w.lower.capacity
	if h.limit > 0 {
		h.most = w.mostWithin(h.limit)
		carry += h.most - w.lower.capacity
	}
	v := w.hangFrom(0, -1, carry)
	if v == impossible && h.unsure {
		return undecided
	}
	return v
}

// mostWithin is the most that a roll can carry, by the weights of the
// certificate, if it uses no more than a length whatever its start.
func (w *work) mostWithin(length int64) int64 {
	least := w.lower.capacity
	w.gain = grow(w.gain, len(w.n.plan.at))
	for d := range w.n.exact {
		l := &w.n.exact[d]
		w.steps++
		last := min(l.last, w.n.plan.atOrBefore(l.begin+length))
		if last < l.from {
			return 0
		}
		least = min(least, w.n.plan.pass(l.from, last, w.lower.weight, w.gain))
	}
	return least
}

// canFollow says that a second goal can be pursued: the rolls are settled, and
// positions exact.
func (w *work) canFollow() bool { return (w.settled || !w.open()) && !w.n.coarse }

// changesAfterLeftover rearranges the best plan, which has the left-over
// wanted, for few changes. It returns whether it did, the changes, and a
// number that no plan with as long a left-over undercuts.
func (w *work) changesAfterLeftover(pl *placing) (better bool, changes, bound int64) {
	h := &w.hang
	changes, bound = countChanges(pl.rollOf), int64(w.best.rolls()-1)
	if changes == bound || !w.canFollow() {
		return false, changes, bound
	}
	h.rollOf = grow(h.rollOf, len(pl.rollOf))
	h.best = append(h.best[:0], pl.rollOf...)
	have, bound := w.fewerChanges(changes, bound, w.mostFor(w.shortest()))
	return have < changes, have, bound
}

// adoptPlacing makes the rolls as the pieces are placed in w.hang the best
// plan: they may have been filled in order since.
func (w *work) adoptPlacing() {
	rolls := make([][]int16, w.best.rolls())
	for i, r := range w.hang.best {
		rolls[r] = append(rolls[r], int16(w.p.kindOf[i]))
	}
	w.trial.reset()
	for _, seq := range rolls {
		w.trial.add(seq)
	}
	w.best.copyFrom(&w.trial)
}

// leftoverAfterChanges rearranges the plan in w.hang for a longer left-over
// with no more changes. It returns the left-over and one that no plan with as
// few changes exceeds.
func (w *work) leftoverAfterChanges(changes int64) (left, bound int64) {
	w.adoptPlacing()
	used, open := w.shortest(), w.leastUse() // nothing below open is possible
	if !w.canFollow() {
		return w.leftFor(used), w.leftFor(min(open, used))
	}
	h := &w.hang
	if len(w.n.safe) > 1 && !w.listed {
		w.listed = w.catalogue()
		w.lower.sharp = w.lower.sharp && !w.listed
	}
	w.sharpen()
	w.prepareHanging()
	h.returns = int(changes) - (w.best.rolls() - 1)
	uses, known := w.shortUses(used)
	for open < used {
		h.limit = open + (used-open)/2
		if known {
			lo, hi := at(uses, open), at(uses, used)
			if lo == hi {
				open = used
				break
			}
			h.limit = uses[(lo+hi)/2]
		}
		v := w.hangWithin(int(changes) + 1)
		if v == undecided {
			break
		}
		if v == impossible {
			open = h.limit + 1
			continue
		}
		used = w.shortest()
	}
	return w.leftFor(used), w.leftFor(min(open, used))
}

// shortUses lists what single rolls may use that is less than used and leaves
// no more to the other rolls than they can carry. It returns false if those are
// too many.
func (w *work) shortUses(used int64) (uses []int64, ok bool) {
	others := int64(w.best.rolls()-1) * w.lower.capacity
	if !w.listShort(used, dot(w.p.demand, w.lower.weight)-others) {
		return nil, false
	}
	for _, c := range w.short.list {
		uses = append(uses, c.used)
	}
	return slices.Compact(uses), true
}

// at is the number of the lengths, which ascend, that are less than x.
func at(lengths []int64, x int64) int {
	n, _ := slices.BinarySearch(lengths, x)
	return n
}

// hangWithin decides whether so many stretches suffice under h.limit, and if
// they do makes that the plan.
func (w *work) hangWithin(stretches int) verdict {
	h, until := &w.hang, w.limit
	w.limit = min(until, w.steps+briefChanges)
	v := w.hangAll()
	w.limit = until
	if v == possible {
		w.adoptHanging()
	}
	if v != undecided {
		return v
	}
	have, least := w.hangByPrices(h.rolls, stretches+1, h.limit)
	switch {
	case have <= stretches:
		return possible
	case least > stretches:
		return impossible
	}
	return undecided
}
