package cutting

import (
	"slices"
)

// Search to exhaustion.
//
// For K rolls, K being the bound: the longest piece left must lie on some
// roll; try every listed roll that holds it and nothing longer, heaviest
// first, and go on with what is left and one roll fewer:
//
//	left ── roll 1 holds the longest ── left' ── roll 2 … ── nothing left: plan
//	     \─ another roll with it ── …
//
// A branch ends when what is left weighs more than the rolls that remain can
// carry. Rolls that leave out a piece that would still fit are skipped (the
// fuller roll is tried too), equal choices are made in list order only, and
// what has failed once is remembered. If nothing is found, K rolls are
// impossible and the bound is K+1.
type search struct {
	chosen []int32 // sets, by roll
	failed []fail  // open addressing
	filled int
	counts []int32
}

type fail struct {
	hash  uint64
	at    int32 // of its counts, plus one; 0 is empty
	rolls int64 // that were not enough; or the money
	from  int32 // with choices for the longest piece from here on
}

const maxFails = 1 << 17

type verdict int

const (
	impossible verdict = iota
	possible
	undecided
)

// briefly tries a complete search before the dives where these are slow,
// because there are many kinds, and next to nothing may be wasted, so that few
// rolls come into question.
func (w *work) briefly() {
	if !w.open() || w.m < manyPieceKinds || len(w.n.safe) > 1 || w.n.coarse {
		return
	}
	w.sharpen()
	slack := int64(w.lower.rolls())*w.lower.capacity - dot(w.p.demand, w.lower.weight)
	if slack > w.lower.capacity>>10 {
		return
	}
	limit := w.limit
	w.limit = min(limit, w.steps+briefSearch)
	w.exhaust()
	w.limit = limit
}

// briefSearch is the number of steps that may take.
const briefSearch = 400_000

// exhaust closes the gap between bound and plan as far as the steps allow.
func (w *work) exhaust() {
	if w.n.coarse {
		return
	}
	w.sharpen()
	for w.open() && !w.spent() {
		switch w.tryRolls(w.lower.rolls()) {
		case possible:
			return
		case undecided:
			return
		}
		w.lower.exhausted++
	}
}

// tryRolls decides whether k rolls are enough, under the certificate's weights.
func (w *work) tryRolls(k int) verdict {
	copy(w.weight, w.lower.weight)
	slack := int64(k)*w.lower.capacity - dot(w.p.demand, w.weight)
	if slack < 0 {
		return impossible
	}
	if w.m >= manyPieceKinds && w.isTight(k) {
		if !w.listTight(k) {
			return undecided
		}
		return w.tryClosing(k)
	}
	if !w.listHeavy(slack) {
		return undecided
	}
	v := undecided
	if w.m < manyPieceKinds {
		limit := w.limit
		w.limit = min(limit, w.steps+plainSteps)
		v = w.tryPlainly(k, slack)
		w.limit = limit
	}
	if v == undecided && !w.spent() {
		v = w.tryClosing(k)
	}
	return v
}

// tryPlainly searches for a plan of k listed rolls with one set of weights.
func (w *work) tryPlainly(k int, slack int64) verdict {
	w.demandLeft()
	w.search.chosen = w.search.chosen[:0]
	v := w.branch(k, slack, -1, 0)
	if v == possible {
		w.trial.reset()
		w.addChosen()
		w.keep()
	}
	return v
}

const (
	manyPieceKinds = 17      // from which on every branch gets weights of its own
	plainSteps     = 100_000 // after which it does with fewer kinds too
)

// listHeavy lists in w.states the rolls that waste no more than slack under
// the weights of the certificate, and forgets what has failed before. It
// returns false if there are too many.
func (w *work) listHeavy(slack int64) bool {
	w.search.reset()
	copy(w.weight, w.lower.weight)
	least := w.lower.capacity - slack
	if w.listed {
		w.weigh()
		w.states.least = least
		w.states.link(w.p.demand)
		return true
	}
	lane := w.lower.lane
	if lane == singly {
		lane, _ = w.lightest()
	}
	return w.listRolls(&w.states, lane, w.n.exact[lane].last, least)
}

// isTight says that k rolls hardly suffice by length alone.
func (w *work) isTight(k int) bool {
	spare := int64(k)*w.n.roll - dot(w.p.demand, w.p.length)
	return len(w.n.safe) == 1 && !w.listed && spare < w.n.roll/16
}

// listTight lists in w.states the rolls that waste no more than k rolls may, by
// the weights of the certificate and by length taken together: where several
// sets of weights prove as much, the linear program may have come upon one that
// gives no weight at all to many pieces, and what is short of length tells
// more.
func (w *work) listTight(k int) bool {
	for j, l := range w.p.length {
		w.weight[j] = w.lower.weight[j] + int64(float64(l)/float64(w.n.roll)*float64(one))
	}
	capacity := w.lanePass(0)
	slack := int64(k)*capacity - dot(w.p.demand, w.weight)
	return w.listRolls(&w.states, 0, w.n.exact[0].last, capacity-slack)
}

// addChosen adds the rolls found by branch to the trial plan.
func (w *work) addChosen() {
	for _, id := range w.search.chosen {
		w.seq = w.states.sequence(w.seq[:0], id)
		w.trial.add(w.seq)
	}
}

// branch tries to cut what is left from the given number of rolls, wasting at
// most slack. If the longest piece left is of the kind before, only choices
// from number from on are tried.
func (w *work) branch(rolls int, slack int64, before, from int) verdict {
	s := &w.states
	kind := 0
	for kind < w.m && w.left[kind] == 0 {
		kind++
	}
	if kind == w.m {
		return possible
	}
	if rolls == 0 {
		return impossible
	}
	if w.steps++; w.spent() {
		return undecided
	}
	if kind != before || from < int(s.start[kind]) {
		from = int(s.start[kind])
	}
	hash := w.states.hash(w.left)
	if w.search.hasFailed(w.left, hash, int64(rolls), from) {
		return impossible
	}
	for at := from; at < int(s.start[kind+1]); at++ {
		id := s.list[at]
		st := &s.info[id]
		waste := w.lower.capacity - st.weight
		if waste > slack {
			break
		}
		if !s.usable(id, w.left) {
			continue
		}
		w.search.chosen = append(w.search.chosen, id)
		w.change(id, -1)
		v := w.branch(rolls-1, slack-waste, kind, at)
		if v != impossible {
			return v
		}
		w.change(id, 1)
		w.search.chosen = w.search.chosen[:len(w.search.chosen)-1]
	}
	w.search.remember(w.left, hash, int64(rolls), from)
	return impossible
}

// usable says whether the set is among the pieces left and could take none of
// the others.
func (s *states) usable(id int32, left []int32) bool {
	counts := s.counts(int(id))
	for j, n := range counts {
		if int32(n) > left[j] {
			return false
		}
	}
	st := &s.info[id]
	for _, j := range s.larger[st.from:st.to] {
		if left[j] > int32(counts[j]) {
			return false
		}
	}
	return true
}

func (w *work) change(id int32, by int32) {
	for j, n := range w.states.counts(int(id)) {
		w.left[j] += by * int32(n)
	}
}

func (s *search) reset() {
	s.chosen, s.counts, s.filled = s.chosen[:0], s.counts[:0], 0
	if len(s.failed) == 0 {
		s.failed = make([]fail, 1<<8)
	}
	clear(s.failed)
}

// slot finds the entry of what is left, or the empty one where it belongs.
func (s *search) slot(left []int32, hash uint64) *fail {
	mask := len(s.failed) - 1
	for i := int(hash) & mask; ; i = (i + 1) & mask {
		f := &s.failed[i]
		if f.at == 0 || f.hash == hash && s.same(f, left) {
			return f
		}
	}
}

func (s *search) same(f *fail, left []int32) bool {
	lo := int(f.at-1) * len(left)
	return slices.Equal(s.counts[lo:lo+len(left)], left)
}

func (s *search) hasFailed(left []int32, hash uint64, rolls int64, from int) bool {
	f := s.slot(left, hash)
	return f.at != 0 && f.rolls >= rolls && int(f.from) <= from
}

func (s *search) remember(left []int32, hash uint64, rolls int64, from int) {
	f := s.slot(left, hash)
	if f.at != 0 {
		if f.rolls <= rolls && int(f.from) >= from {
			f.rolls, f.from = rolls, int32(from)
		}
		return
	}
	if s.filled >= maxFails {
		return
	}
	s.counts = append(s.counts, left...)
	s.filled++
	*f = fail{hash: hash, at: int32(s.filled), rolls: rolls, from: int32(from)}
	if 2*s.filled <= len(s.failed) {
		return
	}
	old := s.failed
	s.failed = make([]fail, 2*len(old))
	mask := len(s.failed) - 1
	for _, f := range old {
		if f.at == 0 {
			continue
		}
		i := int(f.hash) & mask
		for s.failed[i].at != 0 {
			i = (i + 1) & mask
		}
		s.failed[i] = f
	}
}
