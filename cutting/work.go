package cutting

import "sync"

// one is the weight of a whole roll in the integer arithmetic of bounds: a
// price of 1.0 in the linear program.
const one = int64(1) << 30

// work is the memory of one call to Solve. It is kept for the next call, so
// that planning many rooms in a row allocates little.
type work struct {
	p     *Problem
	n     *network   // of the kind of roll looked at
	at    int        // its number
	m     int        // kinds
	limit int        // steps allowed
	given *Catalogue // sets listed before; nil: none
	steps int        // steps taken: network passes, partial rolls looked at, search nodes
	best  plan       // best plan so far

	progress func(Progress) bool
	report   int  // steps at which to call it next
	stopped  bool // it said so

	trial plan  // plan being built
	lower bound // best bound so far
	other bound // put aside while w.lower is about a part of the pieces

	left   []int32 // demand not yet cut in the plan being built
	seq    []int16 // result of the last pass or search for one roll
	gain   []int64 // per node: best weight still to come
	gains  [][]int64
	weight []int64
	value  []int64
	masked []int64 // w.weight without some kinds, see gaps.go
	turn   int     // lane on which prices are sought first
	enough int64   // weight above one for which other lanes are not looked at
	every  []int16 // all kinds

	sort    sorter
	master  master
	states  states
	priced  bool // dives price rolls that serve every start exactly
	listed  bool // the states hold the catalogue of all sets good for every start
	search  search
	deep    descent
	short   shortRolls
	mixed   mixed
	hang    hanging
	closing closing
	pooled  pooled
	hung    hungPlan

	settled bool // the number of rolls is, though fewer would be possible
}

var pool = sync.Pool{New: func() any { return new(work) }}

func newWork(p *Problem, limit int) *work {
	w := pool.Get().(*work)
	w.p, w.m = p, len(p.kinds)
	w.choose(0)
	w.limit, w.steps, w.listed, w.priced, w.settled = limit, 0, false, false, false
	w.given, w.progress, w.report, w.stopped = nil, nil, ReportSteps, false
	w.turn, w.enough = 0, one
	w.best.reset()
	w.trial.reset()
	w.lower.reset(p.demand)
	w.left = grow(w.left, w.m)
	w.weight = grow(w.weight, w.m)
	w.value = grow(w.value, w.m)
	return w
}

func (w *work) free() {
	w.p, w.n, w.given, w.progress = nil, nil, nil, nil
	w.hang.priced.sets.last.of = nil
	pool.Put(w)
}

// choose turns to the kind of roll with the given number.
func (w *work) choose(at int) {
	w.at, w.n = at, &w.p.nets[at]
	w.gain = grow(w.gain, len(w.n.plan.at))
}

// spent says whether the steps allowed are used up, or the caller has had
// enough.
func (w *work) spent() bool {
	if w.progress != nil && w.steps >= w.report && !w.stopped {
		w.report = w.steps + ReportSteps
		w.stopped = !w.progress(w.state())
	}
	return w.stopped || w.steps >= w.limit
}

func (w *work) state() Progress {
	if w.p.isMixed() {
		return Progress{w.steps, w.mixed.bestCost, w.mixed.bound}
	}
	return Progress{w.steps, int64(w.best.rolls()), int64(w.lower.rolls())}
}

// grow returns s with length n, keeping its memory where it suffices. The
// contents are unspecified. Like others that are called from many places, it is not inlined:
// what browsers load is smaller by that, and nothing is slower.
//
//go:noinline
func grow[T any](s []T, n int) []T {
	if cap(s) < n {
		return make([]T, n, n+n/2)
	}
	return s[:n]
}

// plan is a list of rolls, each a list of kinds in cutting order.
type plan struct {
	seq   []int16
	end   []int32 // end of each roll in seq
	stock []int32 // kind of roll of each
}

// reset leaves no rolls. As [grow] it is not inlined.
//
//go:noinline
func (p *plan) reset()     { p.seq, p.end, p.stock = p.seq[:0], p.end[:0], p.stock[:0] }
func (p *plan) rolls() int { return len(p.end) }

// roll returns the kinds of a roll in cutting order. As [grow] it is not inlined.
//
//go:noinline
func (p *plan) roll(i int) []int16 {
	lo := int32(0)
	if i > 0 {
		lo = p.end[i-1]
	}
	return p.seq[lo:p.end[i]]
}

// add adds a roll of the first kind of stock.
func (p *plan) add(seq []int16) { p.addFrom(0, seq) }

// addFrom adds a roll of the given kind of stock.
//
//go:noinline
func (p *plan) addFrom(stock int, seq []int16) {
	p.seq = append(p.seq, seq...)
	p.end = append(p.end, int32(len(p.seq)))
	p.stock = append(p.stock, int32(stock))
}

// truncate drops the rolls from number n on.
func (p *plan) truncate(n int) {
	p.end, p.stock = p.end[:n], p.stock[:n]
	p.seq = p.seq[:0]
	if n > 0 {
		p.seq = p.seq[:p.end[n-1]]
	}
}

//go:noinline
func (p *plan) copyFrom(q *plan) {
	p.seq = append(p.seq[:0], q.seq...)
	p.end = append(p.end[:0], q.end...)
	p.stock = append(p.stock[:0], q.stock...)
}

// keep makes the trial plan the best one if it needs fewer rolls.
func (w *work) keep() {
	if w.best.rolls() == 0 || w.trial.rolls() < w.best.rolls() {
		w.best.copyFrom(&w.trial)
	}
}

func (w *work) demandLeft() {
	copy(w.left, w.p.demand)
}

// take adds the pieces of seq to the trial plan as one roll.
func (w *work) take(seq []int16) {
	w.trial.add(seq)
	for _, j := range seq {
		w.left[j]--
	}
}

func (w *work) nothingLeft() bool {
	for _, n := range w.left {
		if n > 0 {
			return false
		}
	}
	return true
}
