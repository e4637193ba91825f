package cutting

// The widest gap.
//
// Draw the phases of the pieces on one roll on the circle of the repeat. If the
// roll is to serve every start it must serve the one just past each phase,
// from where the knife waits for the next phase of the set:
//
//	     a                 from just past c the first piece to come up
//	 .       .             is a: the wait is the whole gap from c to a, and
//	c         .            all pieces must fit what is left of the roll
//	 .   gap .
//
// For the widest gap of the set that says most. So each pair of phases makes a
// lane: begin at the second after a wait from the first, with no kind whose
// phase lies between them. A set good for every start fits the lane of its own
// widest gap, whether it needs one order or several. So where many kinds leave
// too many sets to list, rolls worth their price are sought around the heaviest
// path of each such lane.
type gapLane struct {
	prev, next int   // phases at its ends, as numbers
	last       int32 // no piece may end beyond this node
}

// gapBudget is the number of sets looked at on each lane.
const gapBudget = 300

// seekInGaps looks for a roll good for every start and heavier than known by
// w.weight, leaves the best on the first lane that has one in w.seq, and says
// whether there is one. It begins after the lane that had one last.
func (w *work) seekInGaps(known int64) bool {
	d := len(w.p.phases)
	for i := range d {
		next := (w.turn + i) % d
		if w.seekBefore(next, known) {
			w.turn = next + 1
			return true
		}
	}
	return false
}

// seekBefore looks at the gaps that end at phase number next, narrow ones first.
func (w *work) seekBefore(next int, known int64) bool {
	d := len(w.p.phases)
	for back := 1; back <= d; back++ {
		found, room := w.seekOn(w.gapLane((next-back+d)%d, next), known)
		if found {
			return true
		}
		if !room || w.spent() {
			break // wider gaps leave less room and fewer kinds
		}
	}
	return false
}

// gapLane is the lane that begins at phase number next after a wait from just
// past phase number prev; if they are the same, for a whole repeat.
func (w *work) gapLane(prev, next int) gapLane {
	q, gap := w.p.phases[next], mod(w.p.phases[next]-w.p.phases[prev]-1, w.p.repeat)+1
	return gapLane{prev, next, w.n.plan.atOrBefore(q - gap + 1 - w.n.lead + w.n.roll)}
}

// seekOn looks on one lane. room says that the lane carries more than known.
func (w *work) seekOn(l gapLane, known int64) (found, room bool) {
	from := w.n.exact[l.next].from
	if l.last < from {
		return false, false
	}
	w.maskGap(l)
	w.steps++
	if w.n.plan.pass(from, l.last, w.masked, w.gain) <= known {
		return false, false
	}
	d := &w.deep
	d.bestVal, d.budget, d.path = known, gapBudget, d.path[:0]
	w.stroll(from, l.last, 0)
	w.steps += (gapBudget - max(d.budget, 0)) / 8
	return d.bestVal > known, true
}

// maskGap copies w.weight to w.masked without the kinds in the gap.
func (w *work) maskGap(l gapLane) {
	w.masked = grow(w.masked, w.m)
	d := len(w.p.phases)
	width := (l.next-l.prev-1+d)%d + 1
	for j, x := range w.weight[:w.m] {
		w.masked[j] = x
		if past := (int(w.p.phaseOf[j]) - l.prev + d) % d; past > 0 && past < width {
			w.masked[j] = -one << 20
		}
	}
}

// stroll extends the roll in w.deep.path at node v, whose pieces weigh val, as
// long as it stays good for every start and may become heavier than the best.
func (w *work) stroll(v, last int32, val int64) {
	d := &w.deep
	if val > d.bestVal {
		d.bestVal = val
		w.seq = append(w.seq[:0], d.path...)
	}
	for j, to := range w.n.plan.row(v) {
		if to > last || w.left[j] == 0 || val+w.masked[j]+w.gain[to] <= d.bestVal {
			continue
		}
		if d.budget--; d.budget < 0 {
			return
		}
		w.left[j]--
		d.path = append(d.path, int16(j))
		if w.fits(d.path) {
			w.stroll(to, last, val+w.masked[j])
		}
		d.path = d.path[:len(d.path)-1]
		w.left[j]++
	}
}
