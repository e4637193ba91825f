package cutting

import "slices"

// Goals with several kinds of roll.
//
// What is wanted most is settled first and then held: a sum of money, a number
// of stretches (one more than the changes of roll), a length to be left over.
// Each further goal is a question to a search under what is held so far:
//
//	rolls, left-over, changes     money held → longest left-over → fewest stretches
//	rolls, changes, left-over     money held → fewest stretches → longest left-over
//	changes, rolls, left-over     fewest stretches → least money → longest left-over
//
// Right after the money, the left-over is sought among the sets that a roll can
// hold, longest left-over first, as in leftover.go (mixedleft.go). Every other
// question goes to the search in mixedhang.go. What a search excludes is proven
// and moves the bound; where it does not end within its steps the bound stays.
//
// Where pieces are missing, or positions had to be rounded, or there are more
// pieces than a house has, goals are only measured.
const maxHung = 400

// held is what a plan must keep to.
type held struct {
	money     int64
	stretches int
	keep      int64 // left-over that some roll must have; 0 if none
}

// pursueMixed rearranges the best plan for the goals, as far as they are
// pursued, and returns the bounds in their order.
func (w *work) pursueMixed(goals []Goal) (bounds []int64, pl *placing) {
	x := &w.mixed
	if len(goals) == 1 || !w.canPursueMixed() {
		return nil, w.place(true)
	}
	limit := w.limit
	w.limit = min(limit, w.steps+changeSteps)
	defer func() { w.limit = limit; w.choose(0) }()
	x.rank(x.capacity)
	w.beginHung()
	now := held{money: x.dear - x.unit, stretches: len(w.p.kindOf)}
	for i, g := range goals {
		bound := x.bound
		switch {
		case i == 0 && g == FewestRolls:
			now.money = x.bestCost
		case g == FewestRolls:
			bound = w.leastMoney(&now)
		case g == FewestChanges:
			bound = w.leastStretches(&now, i == 0) - 1
		case i == 1:
			bound = w.longestMixed(&now)
		default:
			bound = w.longestHung(&now)
		}
		bounds = append(bounds, bound)
	}
	pl = &placing{rollOf: slices.Clone(w.hung.best)}
	pl.sortRolls(w.best.stock)
	return bounds, pl
}

func (w *work) canPursueMixed() bool {
	return !w.isCoarse() && len(w.p.kindOf) <= maxHung && !slices.Contains(w.best.stock, -1)
}

// leastMoney lowers the cost with the stretches held.
func (w *work) leastMoney(now *held) int64 {
	x := &w.mixed
	for x.bestCost > x.bound {
		now.money = x.bestCost - x.unit
		v := w.hangAllMixed(*now)
		if v == impossible {
			now.money = x.bestCost
			return x.bestCost
		}
		if v == undecided {
			break
		}
		w.adoptHung()
	}
	now.money = x.bestCost
	return x.bound
}

// leastStretches lowers the number of stretches with the money held, and
// returns one that cannot be undercut. A plan that fills roll after roll comes
// first, in any order of cutting on each.
func (w *work) leastStretches(now *held, first bool) int64 {
	h := &w.hung
	bound := int(h.least[0])
	if now.keep == 0 {
		w.offerInOrder(first, now.money)
	}
	have := int(countChanges(h.best)) + 1
	for ; bound < have; bound++ {
		now.stretches = bound
		v := w.hangAllMixed(*now)
		if v == possible {
			w.adoptHung()
			return int64(bound)
		}
		if v == undecided {
			break
		}
	}
	now.stretches = have
	return int64(min(bound, have))
}

// offerInOrder makes the plan that fills roll after roll the best if it costs
// no more than money and changes rolls less often.
func (w *work) offerInOrder(first bool, money int64) {
	goals := []Goal{FewestRolls, FewestChanges}
	if first {
		goals = []Goal{FewestChanges, FewestRolls}
	}
	o := newOrderly(w, goals)
	last := o.solve()
	cost := last.value[o.rank[FewestRolls]]
	if last.value[0] > 0 || cost > money || last.value[o.rank[FewestChanges]] > countChanges(w.hung.best) {
		return
	}
	h := &w.hung
	h.rolls = h.rolls[:0]
	for l := last; l.prev >= 0; l = o.labels[l.prev] {
		for i := l.from; i < l.end; i++ {
			h.rollOf[i] = int32(len(h.rolls))
		}
		h.begin(int(l.stock))
		r := &h.rolls[len(h.rolls)-1]
		for _, j := range w.p.kindOf[l.from:l.end] {
			r.set = append(r.set, int16(j))
		}
	}
	w.adoptHung()
}

// longestHung raises the left-over with all else held, and returns one that
// cannot be exceeded. It halves in on the lengths that single rolls can leave.
func (w *work) longestHung(now *held) int64 {
	have := w.leftOfBest()
	list, complete := w.listLeft(now.money, have)
	if !complete || w.hung.unsure {
		now.keep = have
		return w.leftOfAny()
	}
	lefts := []int64{have}
	for _, c := range slices.Backward(list) {
		if c.left > lefts[len(lefts)-1] {
			lefts = append(lefts, c.left)
		}
	}
	lo, hi := 0, len(lefts)-1 // lefts[lo] is had, more than lefts[hi] impossible
	for lo < hi {
		at := lo + (hi-lo+1)/2
		now.keep = lefts[at]
		v := w.hangAllMixed(*now)
		if v == undecided {
			break
		}
		if v == impossible {
			hi = at - 1
			continue
		}
		w.adoptHung()
		reached, _ := slices.BinarySearch(lefts, w.leftOfBest())
		lo = min(max(at, reached), hi)
	}
	now.keep = lefts[lo]
	return lefts[hi]
}

// leftOver is what is left behind the kinds in seq on a roll of kind b, at the
// worst start.
func (w *work) leftOver(b int, seq []int16) int64 {
	w.choose(b)
	if !w.n.anyOrder() && !w.sort.load(seq) {
		w.hung.unsure = true
	}
	return max(w.p.leftBehind(b, w.use(seq)-w.p.loss), 0)
}

// leftOfBest is the longest left-over of the best plan.
func (w *work) leftOfBest() int64 {
	left := int64(0)
	for r := range w.best.rolls() {
		left = max(left, w.leftOver(int(w.best.stock[r]), w.best.roll(r)))
	}
	return left
}

// leftOfAny is the longest left-over that any roll with a piece has.
func (w *work) leftOfAny() int64 {
	left := int64(0)
	for b := range w.p.stock {
		w.choose(b)
		for j := range w.m {
			if seq := []int16{int16(j)}; w.fits(seq) {
				left = max(left, w.leftOver(b, seq))
			}
		}
	}
	return left
}
