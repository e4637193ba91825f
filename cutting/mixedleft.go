package cutting

import (
	"cmp"
	"slices"
)

// The best left-over with several kinds of roll.
//
// As in leftover.go one roll shall keep it, but that may be of any kind. The
// sets that each kind can hold and that leave more than the plan does are
// tried, most left first, whether the rest can be cut for the money that is
// left; sets too light for that are not even listed.
type leftCandidate struct {
	left, weight int64
	stock, id    int32
}

// longestMixed raises the left-over with the money held, and returns one that
// cannot be exceeded.
func (w *work) longestMixed(now *held) int64 {
	x := &w.mixed
	have := w.leftOfBest()
	now.keep = have
	list, complete := w.listLeft(now.money, have)
	bound, slack := have, int64(-1)
	if !complete || w.hung.unsure {
		bound = w.leftOfAny()
	}
	for _, c := range list {
		switch w.tryLeft(c, now.money, &slack) {
		case undecided:
			bound = max(bound, c.left)
		case possible:
			w.trial.reset()
			w.addPicked()
			w.seq = x.short[c.stock].sequence(w.seq[:0], c.id)
			w.trial.addFrom(int(c.stock), w.seq)
			w.best.copyFrom(&w.trial)
			w.hung.best = append(w.hung.best[:0], w.place(true).rollOf...)
			w.hung.renumber(w)
			now.keep = c.left
			return max(bound, c.left)
		}
		if w.spent() {
			break
		}
	}
	if w.spent() && len(list) > 0 {
		bound = max(bound, list[0].left)
	}
	return bound
}

// listLeft lists the sets that leave more than so much, most first. It returns
// false if they are not all.
func (w *work) listLeft(money, more int64) (list []leftCandidate, complete bool) {
	x := &w.mixed
	x.leaveAll()
	total := dot(w.p.demand, x.weight)
	copy(w.weight, x.weight)
	for len(x.short) < len(x.cost) {
		x.short = append(x.short, states{})
	}
	complete = true
	for b := range x.cost {
		price := x.priceNow(b)
		if price > money {
			continue
		}
		x.spend(b, 1)
		least := total - x.carried(money-price, x.left)
		x.spend(b, -1)
		w.choose(b)
		s, lane := &x.short[b], x.lane[b]
		if !w.listRolls(s, lane, w.n.exact[lane].last, max(least, 0)) {
			complete = false
			continue
		}
		for _, id := range s.list {
			w.seq = s.sequence(w.seq[:0], id)
			if left := w.leftOver(b, w.seq); left > more {
				list = append(list, leftCandidate{left, s.info[id].weight, int32(b), id})
			}
		}
	}
	slices.SortFunc(list, func(a, b leftCandidate) int {
		return cmp.Or(cmp.Compare(b.left, a.left), cmp.Compare(b.weight, a.weight), cmp.Compare(a.stock, b.stock), cmp.Compare(a.id, b.id))
	})
	return list, complete
}

// tryLeft decides whether what is left beside the candidate can be cut for the
// money. slack is what the rolls listed at present allow for.
func (w *work) tryLeft(c leftCandidate, money int64, slack *int64) verdict {
	x := &w.mixed
	x.leaveAll()
	money -= x.priceNow(int(c.stock))
	x.spend(int(c.stock), 1)
	for j, n := range x.short[c.stock].counts(int(c.id)) {
		x.left[j] -= int32(n)
	}
	weight := dot(w.p.demand, x.weight) - c.weight
	spare := x.carried(money, x.left) - weight
	if spare < 0 {
		return impossible
	}
	if spare > *slack {
		kept := slices.Clone(x.left)
		*slack = spare
		if !w.listSlack(spare) {
			*slack = -1
			return undecided
		}
		copy(x.left, kept)
	}
	limit := w.limit
	w.limit = min(limit, w.steps+spareSteps)
	defer func() { w.limit = limit }()
	x.chosen = x.chosen[:0]
	return w.branchMixed(money, weight, -1, 0)
}
