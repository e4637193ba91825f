package cutting

// Filling rolls of several kinds.
//
// Rolls that cost nothing come first, shortest first; of the others the next
// roll is the one with most value for its cost, unless a cheaper one takes all
// that is left. Values are corrected after each round as in dive.go.

// fillMixed looks for cheaper plans with the given values of the pieces.
func (w *work) fillMixed(value []int64) {
	x := &w.mixed
	copy(w.value, value)
	for round := 0; round < corrections && !w.spent(); round++ {
		w.trial.reset()
		w.demandLeft()
		x.left = append(x.left[:0], x.count...)
		for !w.nothingLeft() {
			b := w.nextRoll()
			if b < 0 {
				w.leaveOut()
				break
			}
			if x.left[b] > 0 {
				x.left[b]--
			}
			w.trial.addFrom(b, x.keep)
			for _, j := range x.keep {
				w.left[j]--
			}
			w.choose(b)
			w.revalue(x.keep, round)
		}
		w.keepMixed()
	}
	w.choose(0)
}

// nextRoll chooses the kind of the next roll and leaves its pieces in
// w.mixed.keep; -1 if no roll there is takes a piece.
func (w *work) nextRoll() int {
	x := &w.mixed
	wanted := int64(0)
	for j, n := range w.left {
		wanted += int64(n) * w.value[j]
	}
	pick, most := -1, int64(0)
	for b := range x.cost {
		if x.left[b] == 0 {
			continue
		}
		w.choose(b)
		if w.bestRoll(); len(w.seq) == 0 {
			continue
		}
		value := int64(0)
		for _, j := range w.seq {
			value += w.value[j]
		}
		if pick >= 0 && !x.better(b, value, pick, most, w.n.roll, w.p.nets[pick].roll, wanted) {
			continue
		}
		pick, most = b, value
		x.keep = append(x.keep[:0], w.seq...)
	}
	return pick
}

// better says whether a roll of kind a with value va is to be preferred to one
// of kind b.
func (x *mixed) better(a int, va int64, b int, vb, lengthA, lengthB, wanted int64) bool {
	ca, cb := x.cost[a], x.cost[b]
	switch {
	case ca == 0 || cb == 0:
		return ca == 0 && (cb != 0 || lengthA < lengthB)
	case va == wanted && ca <= cb:
		return vb != wanted || ca < cb
	case vb == wanted && cb <= ca:
		return false
	}
	return float64(va)*float64(cb) > float64(vb)*float64(ca)
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
		if b >= 0 && w.mixed.cost[b] > 0 {
			n++
		}
	}
	return n
}
