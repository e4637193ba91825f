package cutting

import (
	"math"
	"slices"
)

// Filling roll after roll.
//
// The quickest plan: from where the knife stands, take of the pieces that
// still fit the one with the least cost factor·wait - length, and go on until
// nothing fits.
//
//	|=== long ===|.|=== long ===|.....|= short =|~~ left over ~~|
//
// Factor 0 takes the longest piece first; higher factors avoid waits for the
// phase. All are tried. On a roll of unknown start the wait for the first
// piece is taken at its worst, and every first phase is tried.
//
// As long as there are pieces for it the next roll is filled like the
// last, so that a hotel is filled as quickly as a room of as many kinds.

var factors = [...]int64{0, 1, 3}

// greedy fills the best plan from nothing and returns its rolls.
func (w *work) greedy() int {
	for _, f := range factors {
		w.trial.reset()
		w.demandLeft()
		w.fillAll(f)
		w.keep()
		if len(w.n.safe) == 1 && w.m == 1 {
			break
		}
	}
	return w.best.rolls()
}

// fillAll completes the trial plan roll by roll.
func (w *work) fillAll(factor int64) {
	for !w.nothingLeft() {
		w.fillOne(factor)
		w.takeOften(w.seq)
	}
}

// takeOften adds as many rolls of the pieces of seq to the trial plan as there
// are pieces left for, and returns their number.
func (w *work) takeOften(seq []int16) int {
	times := w.timesLeft(seq)
	for range times {
		w.take(seq)
	}
	return times
}

// timesLeft is how often seq can be cut from the pieces left.
func (w *work) timesLeft(seq []int16) int {
	times := math.MaxInt
	for i, j := range seq {
		if slices.Contains(seq[:i], j) {
			continue
		}
		each := 1
		for _, k := range seq[i+1:] {
			if k == j {
				each++
			}
		}
		times = min(times, int(w.left[j])/each)
	}
	return times
}

// fillOne leaves in w.seq the pieces for one roll out of those left: of the
// fillings for each safe start, the one that uses most length.
func (w *work) fillOne(factor int64) {
	best := int64(-1)
	scratch := w.deep.scratch[:0]
	for i := range w.n.safe {
		l := &w.n.safe[i]
		lo := len(scratch)
		var used int64
		scratch, used = w.fill(scratch, l, factor)
		if used > best {
			best = used
			w.seq = append(w.seq[:0], scratch[lo:]...)
		}
		scratch = scratch[:lo]
	}
	w.deep.scratch = scratch
}

// fill appends the pieces of one roll begun by lane l to dst and returns
// their length. It leaves w.left as it was.
func (w *work) fill(dst []int16, l *lane, factor int64) ([]int16, int64) {
	g := &w.n.plan
	lo, used := len(dst), int64(0)
	for v := l.from; ; {
		pick, least := -1, int64(faraway)
		row := g.row(v)
		for j, to := range row {
			if to > l.last || w.left[j] == 0 {
				continue
			}
			length := w.p.length[j]
			if cost := factor*(g.at[to]-g.at[v]-length) - length; cost < least {
				pick, least = j, cost
			}
		}
		if pick < 0 {
			break
		}
		dst = append(dst, int16(pick))
		w.left[pick]--
		used += w.p.length[pick]
		v = row[pick]
	}
	for _, j := range dst[lo:] {
		w.left[j]++
	}
	return dst, used
}
