package cutting

import "math"

// Filling rolls of several kinds.
//
// Rolls that cost nothing come first, shortest first; of the others the next
// roll is the one with most value for its cost, unless a cheaper one takes all
// that is left. Values are corrected after each round as in dive.go. A roll
// sold in a pack costs its share in one round, the whole pack in the next, and
// nothing while a pack is open.

// fillMixed looks for cheaper plans with the given values of the pieces.
func (w *work) fillMixed(value []int64) {
	x := &w.mixed
	copy(w.value, value)
	for round := 0; round < corrections && !w.spent(); round++ {
		w.trial.reset()
		w.demandLeft()
		x.left = append(x.left[:0], x.count...)
		x.used = grow(x.used, len(x.pack))
		clear(x.used)
		for !w.nothingLeft() {
			b := w.nextRoll(round)
			if b < 0 {
				w.leaveOut()
				break
			}
			for range w.repeats(b) {
				w.takeFrom(b)
			}
			w.choose(b)
			w.revalue(x.keep, round)
		}
		w.keepMixed()
	}
	w.choose(0)
}

// repeats is how many rolls of kind b are cut alike, into the pieces in
// w.mixed.keep: half of those that could be, so that a hotel takes few looks, and
// a room still one for each roll.
func (w *work) repeats(b int) int32 {
	x := &w.mixed
	counts := grow(w.deep.load, w.m)
	clear(counts)
	w.deep.load = counts
	for _, j := range x.keep {
		counts[j]++
	}
	most := int32(math.MaxInt32)
	for _, j := range x.keep {
		most = min(most, w.left[j]/counts[j])
	}
	if x.left[b] > 0 {
		most = min(most, x.left[b])
	}
	return max(most/2, 1)
}

// takeFrom cuts the pieces in w.mixed.keep from a roll of kind b.
func (w *work) takeFrom(b int) {
	x := &w.mixed
	if x.left[b] > 0 {
		x.left[b]--
	}
	x.used[b]++
	w.trial.addFrom(b, x.keep)
	for _, j := range x.keep {
		w.left[j]--
	}
}

// nextRoll chooses the kind of the next roll and leaves its pieces in
// w.mixed.keep; -1 if no roll there is takes a piece.
func (w *work) nextRoll(round int) int {
	x := &w.mixed
	wanted := int64(0)
	for j, n := range w.left {
		wanted += int64(n) * w.value[j]
	}
	pick, best := -1, bid{}
	for b := range x.cost {
		if x.left[b] == 0 {
			continue
		}
		w.choose(b)
		if w.bestRoll(); len(w.seq) == 0 {
			continue
		}
		now := x.bid(b, round)
		now.length = w.n.roll
		for _, j := range w.seq {
			now.value += w.value[j]
		}
		if pick >= 0 && !now.better(best, wanted) {
			continue
		}
		pick, best = b, now
		x.keep = append(x.keep[:0], w.seq...)
	}
	return pick
}

// bid is a roll that might be the next: what it costs, what its pieces are
// worth, how long it is.
type bid struct {
	cost, money   int64 // cost is in parts; money what has to be paid for it now
	value, length int64
}

// bid says what the next roll of a kind costs.
func (x *mixed) bid(b, round int) bid {
	switch {
	case x.used[b]%x.pack[b] != 0:
		return bid{}
	case round%2 == 1:
		return bid{cost: x.paid[b] * x.parts, money: x.paid[b]}
	}
	return bid{cost: x.cost[b], money: x.paid[b]}
}

// better says whether a roll is to be preferred to another one, where pieces
// worth so much are left.
func (a bid) better(b bid, wanted int64) bool {
	switch {
	case a.cost == 0 || b.cost == 0:
		return a.cost == 0 && (b.cost != 0 || a.length < b.length)
	case a.value == wanted && a.money <= b.money:
		return b.value != wanted || a.money < b.money
	case b.value == wanted && b.money <= a.money:
		return false
	}
	return float64(a.value)*float64(b.cost) > float64(b.value)*float64(a.cost)
}

// leaveOut gives up all pieces left.
func (w *work) leaveOut() {
	for j := range w.left {
		for ; w.left[j] > 0; w.left[j]-- {
			w.trial.addFrom(-1, []int16{int16(j)})
		}
	}
}

// bought counts the rolls of a plan that have to be paid for.
func (w *work) bought(p *plan) int {
	n := 0
	for _, b := range p.stock {
		if b >= 0 && w.mixed.paid[b] > 0 {
			n++
		}
	}
	return n
}
