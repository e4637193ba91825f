package cutting

// Changes of roll first, then rolls.
//
// Whoever would rather open a roll more than fetch one twice fills roll after
// roll in the order of the pieces, each as far as it reaches. That needs fewest
// stretches, for a stretch that reaches farther is never worse:
//
//	pieces   0 1 2 3 | 4 5 | 6 7 8 | 9 10        S stretches, S-1 changes
//	roll        A       B      C       D         S rolls
//	or          A       B      A       C         one return, one roll less
//
// Now stretches may share a roll: R rolls with S-R returns make no more
// changes. R is tried from the bound upwards, with the searches of changes.go and
// hangbranch.go, and the first that is possible is the fewest.

// pursueChanges plans for few changes, then few rolls, then for a left-over if
// asked, which is the order of goals.
func (w *work) pursueChanges(goals []Goal) ([]Result, *placing) {
	changes, sure := w.fillInOrder()
	least := w.lower.rolls()
	bound := changes
	if !sure {
		bound = min(changes, int64(least-1))
	}
	least = w.shareRolls(int(changes)+1, least)
	w.settled = true
	results := []Result{{FewestChanges, changes, bound, changes == bound}, w.resultOfRolls(least)}
	if len(goals) > 2 {
		left, most := w.leftoverAfterChanges(changes)
		results = append(results, Result{LongestLeftover, left, most, left == most})
	}
	return results, w.placeHanging()
}

// fillInOrder makes the best plan one that fills roll after roll, and returns
// its changes of roll, and whether there cannot be fewer.
func (w *work) fillInOrder() (changes int64, sure bool) {
	h := &w.hang
	sure = !w.n.coarse
	rolls := int32(0)
	var set []int16
	w.trial.reset()
	h.best, h.rollOf = grow(h.best, len(w.p.kindOf)), grow(h.rollOf, len(w.p.kindOf))
	for i, j := range w.p.kindOf {
		set = append(set, int16(j))
		if len(set) > 1 && !w.fits(set) {
			if !w.n.anyOrder() && !w.sort.load(set) {
				sure = false
			}
			w.trial.add(set[:len(set)-1])
			set = append(set[:0], int16(j))
			rolls++
		}
		h.best[i] = rolls
	}
	w.trial.add(set)
	w.best.copyFrom(&w.trial)
	return int64(rolls), sure
}

// shareRolls looks for a plan with so many stretches on fewer rolls than the
// best, least being a bound. It returns the bound raised as far as it can be.
func (w *work) shareRolls(stretches, least int) int {
	h := &w.hang
	if w.n.coarse || least >= w.best.rolls() {
		return min(least, w.best.rolls())
	}
	w.sharpen()
	w.prepareHanging()
	open := false
	for rolls := least; rolls < w.best.rolls() && !w.spent(); rolls++ {
		h.rolls, h.returns = rolls, stretches-rolls
		switch w.hangWithin(stretches) {
		case possible:
			return least
		case undecided:
			open = true
		case impossible:
			if !open {
				least = rolls + 1
			}
		}
	}
	return least
}
