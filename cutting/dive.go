package cutting

import "math"

// From fractions to whole rolls.
//
// The linear program says "2.7 times roll A, 1.3 times roll B". The dive takes
// the whole parts, solves the small rest anew, and when nothing whole is left
// rounds one column up:
//
//	demand ──LP──> 2.7 A + 1.3 B ──take 2 A + 1 B──> rest ──LP──> 0.9 C …
//
// At every rest a sequence of single heaviest rolls tries to finish the plan:
// the value of a piece falls where rolls were filled well and rises where they
// were filled badly (sequential value correction; E. A. Mukhacheva and others,
// as used in G. Belov and G. Scheithauer, EJOR 171(1), 2006). When a dive ends
// above the bound the next one rounds another column up at its first choice.
type descent struct {
	scratch []int16
	path    []int16 // of the search for one roll
	bestVal int64
	budget  int
	rest    []int32
	load    []int32
}

const (
	dives       = 12
	corrections = 6
	rollBudget  = 600 // nodes for one heaviest roll out of what is left
)

// dive looks for a plan with fewer rolls than the best.
func (w *work) dive() {
	for turn := 0; turn < dives && w.open() && !w.spent(); turn++ {
		w.trial.reset()
		w.demandLeft()
		w.diveOnce(turn)
	}
}

// open says whether there is a gap between plan and bound.
func (w *work) open() bool { return w.best.rolls() > w.lower.rolls() }

func (w *work) diveOnce(turn int) {
	for w.open() && !w.spent() && !w.nothingLeft() && w.trial.rolls() < w.best.rolls()-1 {
		w.deep.rest = append(w.deep.rest[:0], w.left...)
		view := everyStart
		switch {
		case w.listed:
			view = listed
		case w.priced:
			view = singly
		}
		w.begin(w.deep.rest, view)
		w.improve(w.deep.rest, view, math.MaxInt32, false)
		if w.hopeless() {
			return
		}
		taken := w.takeWhole()
		w.correct()
		if !w.open() {
			return
		}
		if taken == 0 {
			w.roundUp(turn)
			turn = 0
		}
	}
	if w.nothingLeft() {
		w.keep()
	}
}

// hopeless says that what is left needs too many rolls by the weights of the
// certificate.
func (w *work) hopeless() bool {
	return w.trial.rolls()+ceilDiv(dot(w.left, w.lower.weight), w.lower.capacity) >= w.best.rolls()
}

// takeWhole takes the whole part of every column and returns the rolls taken.
func (w *work) takeWhole() int {
	s, taken := &w.master, 0
	for r, b := range s.basis {
		if b < 0 {
			continue
		}
		for n := int(s.x[r] + 1e-6); n > 0; n-- {
			if w.trim(s.col.roll(int(b))); len(w.seq) == 0 {
				break
			}
			w.take(w.seq)
			taken++
		}
	}
	return taken
}

// roundUp takes one roll of the column with the largest fraction, or with the
// next larger ones in later turns, filled up as well as what is left allows.
func (w *work) roundUp(turn int) {
	s := &w.master
	pick := -1
	for range turn + 1 {
		next := -1
		for r, b := range s.basis {
			if b < 0 || s.x[r] <= 1e-6 {
				continue
			}
			if (next < 0 || s.x[r] > s.x[next]) && (pick < 0 || s.x[r] < s.x[pick] || (s.x[r] == s.x[pick] && r > pick)) {
				next = r
			}
		}
		if next < 0 {
			break
		}
		pick = next
	}
	if pick < 0 {
		w.fillOne(0)
		w.take(w.seq)
		return
	}
	col := s.col.roll(int(s.basis[pick]))
	if w.trim(col); len(w.seq) < len(col) {
		for j, y := range s.price {
			w.value[j] = int64(max(y, 0) * float64(one))
		}
		w.bestRoll()
	}
	if len(w.seq) == 0 {
		w.fillOne(0)
	}
	w.take(w.seq)
}

// trim leaves in w.seq as much of the roll as is still wanted.
func (w *work) trim(roll []int16) {
	w.deep.load = grow(w.deep.load, w.m)
	copy(w.deep.load, w.left)
	w.seq = w.seq[:0]
	for _, j := range roll {
		if w.deep.load[j] > 0 {
			w.deep.load[j]--
			w.seq = append(w.seq, j)
		}
	}
}

// correct tries to finish the trial plan by sequential value correction. It
// keeps the plan if it is better and returns the trial to where it was.
func (w *work) correct() {
	done := w.trial.rolls()
	if w.finish(w.best.rolls() - 1) {
		w.keep()
	}
	w.trial.truncate(done)
	copy(w.left, w.deep.rest)
}

// finish tries to complete the trial plan with at most that many rolls in all
// and says whether it did. What was left before is in w.deep.rest.
func (w *work) finish(most int) bool {
	done := w.trial.rolls()
	w.deep.rest = append(w.deep.rest[:0], w.left...)
	copy(w.value, w.p.length)
	for round := 0; round < corrections && !w.spent(); round++ {
		for !w.nothingLeft() && w.trial.rolls() < most {
			w.bestRoll()
			w.take(w.seq)
			w.revalue(w.seq, round)
		}
		if w.nothingLeft() {
			return true
		}
		w.trial.truncate(done)
		copy(w.left, w.deep.rest)
	}
	return false
}

// revalue moves the values of the pieces on a roll towards their length times
// the inverse of how well the roll is filled; pieces used later weigh more.
func (w *work) revalue(seq []int16, round int) {
	used := int64(0)
	for _, j := range seq {
		used += w.p.length[j]
	}
	fill := float64(w.n.roll) / float64(max(used, 1))
	keep := int64(1 + round%3)
	for i, j := range seq {
		if i > 0 && seq[i-1] == j {
			continue
		}
		aim := int64(float64(w.p.length[j]) * fill)
		w.value[j] = (keep*w.value[j] + aim) / (keep + 1)
	}
}

// bestRoll leaves in w.seq the most valuable roll out of the pieces left, by
// w.value: exact unless the node budget runs out.
func (w *work) bestRoll() {
	if w.listed {
		w.bestListed()
		return
	}
	d := &w.deep
	d.bestVal, d.budget = 0, rollBudget
	w.seq = w.seq[:0]
	w.gains = grow(w.gains, len(w.n.safe))
	for i := range w.n.safe {
		l := &w.n.safe[i]
		w.gains[i] = grow(w.gains[i], len(w.n.plan.at))
		w.steps++
		w.n.plan.pass(l.from, l.last, w.maskedValue(), w.gains[i])
		d.path = d.path[:0]
		w.descend(w.gains[i], l.from, l.last, 0)
	}
	w.steps += (rollBudget - d.budget) / 8
	if len(w.seq) == 0 {
		w.fillOne(0)
	}
}

// maskedValue is w.value with 0 for kinds of which nothing is left.
func (w *work) maskedValue() []int64 {
	for j, v := range w.value[:w.m] {
		w.weight[j] = v
		if w.left[j] == 0 {
			w.weight[j] = 0
		}
	}
	return w.weight
}

// descend extends the roll in w.deep.path at node v, whose pieces are worth
// val, by every piece left that may still lead to more than the best.
func (w *work) descend(gain []int64, v, last int32, val int64) {
	d := &w.deep
	if val > d.bestVal {
		d.bestVal = val
		w.seq = append(w.seq[:0], d.path...)
	}
	if d.budget--; d.budget < 0 {
		return
	}
	for j, to := range w.n.plan.row(v) {
		if to > last || w.left[j] == 0 || val+w.weight[j]+gain[to] <= d.bestVal {
			continue
		}
		w.left[j]--
		d.path = append(d.path, int16(j))
		w.descend(gain, to, last, val+w.weight[j])
		d.path = d.path[:len(d.path)-1]
		w.left[j]++
	}
}
