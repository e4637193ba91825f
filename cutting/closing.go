package cutting

import "slices"

// Closing the last gap.
//
// Where a plan is one roll above the bound, weights chosen once for the whole
// demand no longer tell good branches from bad ones. So here every branch
// solves the linear program of what it leaves, over the listed rolls alone:
//
//	left ── LP: 1.0 A + 0.6 B + 0.4 C …   new weights, new waste allowed
//	  │         └ rolls that waste more are struck off
//	  ├─ take A ── LP of the rest …       most used rolls of a scarce kind first
//	  ├─ never A, take B ── LP …
//	  └─ never A or B … LP > rolls left: no plan
//
// A branch differs from the one above by a roll taken or struck off, so its
// program is reached from there by a few steps (reprogram.go). Its prices, cut
// down to whole numbers, bound the rest: the heaviest roll still listed is the
// capacity. Only that bound ends a branch, never the floating point. As every
// plan of so many rolls consists of listed rolls, a search that ends without
// one proves that there is none.
type closing struct {
	prog   reprogram
	live   []int32 // stack of lists of columns not struck off
	weight []int64 // of the kinds, at the present branch
	count  []int32 // scratch: of the columns that hold each kind
	chosen []int32 // columns taken
	waste  []int64 // scratch: weight of each live column
}

// tryClosing searches for a plan of k listed rolls.
func (w *work) tryClosing(k int) verdict {
	w.demandLeft()
	v := w.closeLeft(k)
	if v == possible {
		w.trial.reset()
		w.addClosing()
		w.keep()
	}
	return v
}

// closeLeft searches for k listed rolls that carry what is left. That stays as
// it was where there are none, but not where the steps have run out.
func (w *work) closeLeft(k int) verdict {
	c := &w.closing
	c.prog.load(&w.states)
	c.live, c.chosen = c.live[:0], c.chosen[:0]
	c.weight = grow(c.weight, w.m)
	c.count = grow(c.count, w.m)
	for col := range c.prog.columns() {
		c.live = append(c.live, int32(col))
	}
	return w.closeFrom(0, k)
}

// addClosing adds the rolls chosen to the trial.
func (w *work) addClosing() {
	for _, col := range w.closing.chosen {
		w.seq = w.states.sequence(w.seq[:0], w.closing.prog.set[col])
		w.trial.add(w.seq)
	}
}

// closeFrom tries to cut what is left from the given number of rolls out of
// the columns in c.live from base on.
func (w *work) closeFrom(base, rolls int) verdict {
	if w.nothingLeft() {
		return possible
	}
	if rolls == 0 {
		return impossible
	}
	c := &w.closing
	bottom := len(c.live)
	defer func() { c.live = c.live[:bottom] }()
	c.live = c.prog.narrow(c.live, base, w.left)
	for {
		if w.steps += 1 + (len(c.live)-bottom)/256; w.spent() {
			return undecided
		}
		w.steps += c.prog.solve(c.live[bottom:], w.left, float64(rolls))
		if !w.strike(bottom, rolls) {
			return impossible
		}
		col := w.nextColumn(bottom)
		if col < 0 {
			return impossible
		}
		mark := c.prog.save()
		w.takeColumn(col, 1)
		v := w.closeFrom(bottom, rolls-1)
		if v != impossible {
			return v
		}
		w.takeColumn(col, -1)
		c.prog.restore(mark)
		at := bottom + slices.Index(c.live[bottom:], col)
		c.live = slices.Delete(c.live, at, at+1)
	}
}

func (w *work) takeColumn(col int32, by int32) {
	c := &w.closing
	c.prog.take(col, w.left, by)
	if by > 0 {
		c.chosen = append(c.chosen, col)
	} else {
		c.chosen = c.chosen[:len(c.chosen)-1]
	}
}

// strike strikes off the columns that waste too much by the weights of this
// branch. It returns false if the rolls cannot carry what is left.
func (w *work) strike(base, rolls int) bool {
	c := &w.closing
	capacity := int64(0)
	for j, y := range c.prog.price {
		c.weight[j] = int64(max(y, 0) * float64(one))
	}
	c.waste = grow(c.waste, len(c.live)-base)
	for i, col := range c.live[base:] {
		c.waste[i] = c.prog.weigh(col, c.weight)
		capacity = max(capacity, c.waste[i])
	}
	slack := int64(rolls)*capacity - dot(w.left, c.weight)
	if slack < 0 {
		return false
	}
	n := base
	for i, col := range c.live[base:] {
		if capacity-c.waste[i] <= slack {
			c.live[n] = col
			n++
		}
	}
	c.live = c.live[:n]
	return true
}

// nextColumn picks the column to be tried next: the one used most by the linear
// program; -1 if some kind left is held by none.
func (w *work) nextColumn(base int) int32 {
	c := &w.closing
	clear(c.count)
	for _, col := range c.live[base:] {
		kinds, _ := c.prog.column(col)
		for _, j := range kinds {
			c.count[j]++
		}
	}
	for j, n := range w.left {
		if n > 0 && c.count[j] == 0 {
			return -1
		}
	}
	best, most := c.live[base], -1.0
	for r, b := range c.prog.basis {
		if b < 0 || !c.prog.live[b] {
			continue
		}
		if x := c.prog.x[r]; x > most+1e-9 || x > most-1e-9 && b < best {
			best, most = b, x
		}
	}
	return best
}
