package cutting

// The rest is a question with one kind of roll.
//
// Take from a plan the rolls in hand, and all others there are few of: what is
// left comes from rolls of which there is any number, and if they are of a
// single kind that is the question of solve.go, with its dives and its search:
//
//	in hand   |==|=|==|   |===|==|      stay as they are
//	new       |==|==|~|   |==|~~~| …    cut anew, perhaps from fewer
//
// Filling alone wastes a roll here and there in a hotel; this does not.

// cutRest cuts the pieces on rolls of the one kind without limit anew.
func (w *work) cutRest() {
	at := w.endless()
	if at < 0 {
		return
	}
	stock := w.p.stock[at]
	stock.Pack = 0
	spec := Spec{Repeat: w.p.spec.Repeat, Lead: w.p.spec.Lead, Loss: w.p.spec.Loss, Stock: []Stock{stock}}
	var kinds []int16
	w.trial.reset()
	for r, b := range w.best.stock {
		seq := w.best.roll(r)
		if int(b) != at {
			w.trial.addFrom(int(b), seq)
			continue
		}
		for _, j := range seq {
			k := &w.p.kinds[j]
			spec.Pieces = append(spec.Pieces, Piece{k.Length, k.Phase})
			kinds = append(kinds, j)
		}
	}
	p, err := NewProblem(spec)
	if err != nil {
		return // cut in an order that cannot be had again
	}
	s := Solve(p, Options{Steps: (w.limit-w.steps)/2 + 1})
	w.steps += s.Steps
	for _, r := range s.Rolls {
		w.seq = w.seq[:0]
		for _, c := range r.Orders[0].Cuts {
			w.seq = append(w.seq, kinds[c.Piece])
		}
		w.trial.addFrom(at, w.seq)
	}
	w.keepMixed()
}

// endless is the number of the one kind of roll without limit; -1 if there are
// none or several.
func (w *work) endless() int {
	at := -1
	for b, n := range w.mixed.count {
		if n >= 0 {
			continue
		}
		if at >= 0 {
			return -1
		}
		at = b
	}
	return at
}
