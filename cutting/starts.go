package cutting

// All starts at once.
//
// A roll nobody has opened may begin anywhere in the repeat. Draw the repeat
// as a circle and mark the phases of the pieces on one roll:
//
//	        a
//	    .       .        From a start anywhere in (b, a] the first piece to
//	  .           .      come up is a: the end of the best order stands still
//	 c             b     there, while the end of the roll moves with the start.
//	    .       .        So the worst start of the stretch lies just past b,
//	        .            and one look per stretch settles all starts.
//
// An order that begins at phase q and needs the length C from there is good
// for every start from which q comes up within R - C. If that is a whole
// repeat the one order serves all starts: the roll is "safe". Otherwise such
// stretches have to cover the circle, and the cutter picks the order when the
// roll is opened and its first motif measured.

// stretch is an order together with the starts it is good for.
type stretch struct {
	phase int64 // the phase it begins at
	reach int64 // good for starts in [phase-reach, phase]
	seq   []int16
}

// fits says whether the set of kinds in seq can be cut from one roll, whatever
// start must be provided for. seq may be in any order. For sets of too many
// different kinds it may say no although an order exists.
func (w *work) fits(seq []int16) bool {
	g := &w.n.plan
	if len(w.n.safe) == 1 {
		l := w.n.safe[0]
		if g.walk(l.from, seq) <= l.last {
			return true
		}
		return !w.n.anyOrder() && w.sort.load(seq) && w.sort.earliest(g, l.from) <= l.last
	}
	if len(seq) == 0 {
		return true
	}
	if l := w.n.safe[w.p.phaseOf[seq[0]]]; g.walk(l.from, seq) <= l.last {
		return true
	}
	return w.sort.load(seq) && w.guaranteed()
}

// guaranteed says whether the set loaded in the sorter is good for all starts,
// in one order or several.
func (w *work) guaranteed() bool {
	g, s := &w.n.plan, &w.sort
	last := int32(-1)
	for _, j := range s.kind {
		last = max(last, w.p.phaseOf[j])
	}
	prev := w.p.phases[last] - w.p.repeat
	for d := int32(0); d <= last; d++ {
		if !w.has(d) {
			continue
		}
		end := s.earliest(g, w.n.exact[d].from)
		if end <= w.n.safe[d].last {
			return true
		}
		if g.at[end] > prev+1-w.n.lead+w.n.roll {
			return false
		}
		prev = w.p.phases[d]
	}
	return true
}

// has says whether a loaded kind has phase number d.
func (w *work) has(d int32) bool {
	for _, j := range w.sort.kind {
		if w.p.phaseOf[j] == d {
			return true
		}
	}
	return false
}

// stretches lists, for the set of kinds in seq, the best order from each of
// its phases with the starts it is good for if it is to use no more than the
// given length. A set the sorter declines keeps the order it has, which is
// then safe.
func (w *work) stretches(seq []int16, length int64) []stretch {
	g := &w.n.plan
	if !w.sort.load(seq) {
		return []stretch{{phase: w.p.phase[seq[0]], reach: w.p.repeat - 1, seq: append([]int16(nil), seq...)}}
	}
	var all []stretch
	for d, q := range w.p.phases {
		if !w.has(int32(d)) {
			continue
		}
		end := w.sort.earliest(g, w.n.exact[d].from)
		reach := length - w.n.lead - (g.at[end] - q)
		if reach < 0 {
			continue
		}
		order := w.sort.order(g)
		if w.p.phase[order[0]] != q {
			continue // it waits for another phase, whose own stretch covers this one
		}
		all = append(all, stretch{q, min(reach, w.p.repeat-1), append([]int16(nil), order...)})
	}
	return all
}

// cover picks as few stretches as possible that together are good for every
// start, in the order in which the circle meets them. It is the classic cover
// of a circle by arcs: from each arc in turn, go on with the arc that reaches
// farthest, and keep the shortest round. It returns nil if there is none.
func cover(all []stretch, repeat int64) []stretch {
	var best []stretch
	for i := range all {
		if all[i].reach >= repeat-1 {
			return all[i : i+1]
		}
		round := []stretch{all[i]}
		covered := all[i].reach + 1 // of the circle, downwards from all[i].phase
		for covered < repeat {
			next, far := -1, covered
			for k := range all {
				// The stretch k begins at distance d below the first one's phase.
				d := mod(all[i].phase-all[k].phase, repeat)
				if d <= covered && d+all[k].reach+1 > far {
					next, far = k, d+all[k].reach+1
				}
			}
			if next < 0 {
				round = nil
				break
			}
			round, covered = append(round, all[next]), far
		}
		if round != nil && (best == nil || len(round) < len(best)) {
			best = round
		}
	}
	return best
}
