package cutting

import "slices"

// Prices where there are several kinds of roll.
//
// The linear program of columns.go, with what each roll costs, and one more row
// for each kind of which there are only so many: its price is what another one
// of them would save. A roll improves the program if its pieces are worth more
// than it costs and saves:
//
//	             new A   new B   left-over …
//	kind 1         2       1        1          ≥ demand 1
//	kind 2         .       3        .          ≥ demand 2
//	left-overs     .       .       −1          ≥ −4
//	cost          1.0     0.6       0          → least
//
// For a room every kind of roll is asked for its best in each round, and what
// they carry at the prices is a bound at once. In a hotel the first roll that
// improves is taken, and only where none does on the way all are asked: at prices
// near the optimum, the ones that prove something. Rolls that must serve every
// start are sought in the widest gaps too, as in gaps.go.

const (
	listedMet   = 4       // sets met for each first kind
	listedSteps = 500_000 // for all lists
)

// improveMixed solves the linear program, and offers prices on the way as bound.
// In a hotel it solves the one for a single start of each kind of roll first,
// for weights to lean on.
func (w *work) improveMixed() {
	w.demandLeft()
	if !w.isLarge() {
		w.rounds(everyStart, w.askAll)
		return
	}
	w.offerLengths()
	w.rounds(0, w.askLanes)
	if w.mixed.open() && w.anyUnknown() {
		w.meetAgain()
		w.mixed.listing = listedSteps
		w.rounds(everyStart, w.askFirst)
	}
}

// rounds runs rounds of pricing, by asking in the given way, until the optimum of
// the linear program is reached.
func (w *work) rounds(view int, ask func() (best int, gain float64)) {
	s, x := &w.master, &w.mixed
	w.beginMixed(view)
	for range 400*s.m + 200 {
		s.reprice()
		w.steps += s.m * s.m / cellsInStep
		if j := s.surplusWorthwhile(); j >= 0 {
			s.surplusColumn(j)
			if !s.pivot(int32(-1-j), x.rhs) {
				return
			}
			continue
		}
		w.leanMixed(0)
		best, gain := ask()
		if gain <= tiny || w.spent() || !x.open() {
			return
		}
		row := int32(-1)
		if best >= 0 {
			row = x.row[best]
		}
		if !s.pivot(s.enter(best, w.seq, x.charge(best), row), x.rhs) {
			return
		}
	}
}

// anyUnknown says whether some kind of roll must be planned for several starts.
func (w *work) anyUnknown() bool {
	return slices.ContainsFunc(w.p.nets, func(n network) bool { return len(n.safe) > 1 })
}

// askLanes finds the kind of roll and the roll, left in w.seq, that gain most on
// the start of each that carried least by length, and offers the prices as bound.
func (w *work) askLanes() (best int, gain float64) {
	x := &w.mixed
	defer w.choose(0)
	x.keep = x.keep[:0]
	for b := range x.cost {
		w.choose(b)
		x.now[b] = x.sole[b]
		x.load[b] = w.heaviestOn(x.sole[b])
		best, gain = w.better(b, best, gain)
	}
	best, gain = w.betterLeftOut(best, gain)
	w.offerMixed()
	return best, gain
}

// offerLengths offers the lengths of pieces as weights, and notes the start of
// each kind of roll that carries least by them.
func (w *work) offerLengths() {
	x, longest := &w.mixed, float64(w.p.length[0])
	for j, l := range w.p.length {
		w.weight[j] = int64(float64(l) / longest * float64(x.scale))
	}
	for b := range x.cost {
		w.choose(b)
		x.now[b], x.load[b] = w.lightest()
	}
	w.choose(0)
	x.sole = append(x.sole[:0], x.now...)
	w.offerMixed()
}

// charge is the cost of a kind of roll, or of leaving a piece out (-1), with
// the dearest roll at 1. As [grow] it is not inlined.
//
//go:noinline
func (x *mixed) charge(b int) float64 {
	if b < 0 {
		return float64(x.dear) / float64(x.top)
	}
	return float64(x.cost[b]) / float64(x.top) / float64(x.parts)
}

// beginMixed makes the basis of rolls with pieces of one kind, and of pieces
// left out of which none is to be had in any number.
func (w *work) beginMixed(view int) {
	s, x := &w.master, &w.mixed
	s.reset(len(x.rhs))
	for j := range w.m {
		b, n := w.cheapestAlone(j, view)
		w.seq = w.seq[:0]
		for range n {
			w.seq = append(w.seq, int16(j))
		}
		s.startColumn(j, s.add(b, w.seq, x.charge(b), -1), n, float64(w.p.demand[j]))
	}
	for r := w.m; r < len(x.rhs); r++ {
		s.startSurplus(r, float64(-x.rhs[r]))
	}
}

// cheapestAlone is the kind of roll there is any number of that gives pieces of
// kind j most cheaply, and how many; -1 and 1 if none gives any.
func (w *work) cheapestAlone(j, view int) (b, n int) {
	x := &w.mixed
	defer w.choose(0)
	b, n = -1, 1
	for at, row := range x.row {
		if row >= 0 {
			continue
		}
		w.choose(at)
		lane := view
		if view >= 0 {
			lane = x.sole[at]
		}
		if many := w.copies(j, lane); float64(n)*x.charge(at) < float64(many)*x.charge(b) {
			b, n = at, many
		}
	}
	return b, n
}

// askAll finds the kind of roll and the roll, left in w.seq, that gain most at
// the present prices, and offers these as bound.
func (w *work) askAll() (best int, gain float64) {
	x := &w.mixed
	defer w.choose(0)
	x.keep = x.keep[:0]
	for b := range x.cost {
		w.choose(b)
		x.load[b], x.now[b] = w.loadOf()
		if len(w.n.safe) > 1 || w.n.coarse {
			w.heaviestBeyond(w.worthOf(b))
		}
		best, gain = w.better(b, best, gain)
	}
	best, gain = w.betterLeftOut(best, gain)
	w.offerMixed()
	return best, gain
}

// askFirst finds a kind of roll and a roll, left in w.seq, that gain at the
// present prices, if it can: the best of those met before, or else of new ones.
// These are sought by prices that lean on the best bound, by the prices
// themselves, around the widest gaps, and among all that are heavy enough; each
// search keeps all it meets.
func (w *work) askFirst() (best int, gain float64) {
	defer w.choose(0)
	best, gain = w.bestMet()
	for _, part := range [2]float64{leaning, 0} {
		for _, sweep := range [2]func(){w.sweepSafe, w.sweepExact} {
			if gain > tiny || w.spent() {
				return best, gain
			}
			w.leanMixed(part)
			sweep()
			best, gain = w.bestMet()
		}
	}
	if best, gain = w.betterLeftOut(best, gain); gain > tiny {
		return best, gain
	}
	for _, sweep := range [2]func(){w.sweepGaps, w.sweepListed} {
		sweep()
		if best, gain = w.bestMet(); gain > tiny {
			break
		}
	}
	return best, gain
}

// meetAgain begins with those columns of the program that serve every start.
func (w *work) meetAgain() {
	col, met := &w.master.col, &w.mixed.met
	met.reset()
	for id, b := range col.stock {
		if b < 0 {
			continue
		}
		if w.choose(int(b)); w.fits(col.roll(id)) {
			met.addFrom(int(b), col.roll(id))
		}
	}
	w.choose(0)
}

// bestMet is the roll that gains most of those met.
func (w *work) bestMet() (best int, gain float64) {
	x := &w.mixed
	pick := -1
	for i, b := range x.met.stock {
		if sum := w.gainOf(int(b), x.met.roll(i)); sum > gain {
			pick, gain = i, sum
		}
	}
	if pick < 0 {
		return 0, 0
	}
	w.seq = append(w.seq[:0], x.met.roll(pick)...)
	return int(x.met.stock[pick]), gain
}

// meet keeps the roll in w.seq of the kind chosen if it gains.
func (w *work) meet() {
	if w.gainOf(w.at, w.seq) > tiny {
		w.mixed.met.addFrom(w.at, w.seq)
	}
}

// sweepSafe meets the heaviest roll of each safe lane of each kind by w.weight.
func (w *work) sweepSafe() {
	for b := range w.mixed.cost {
		w.choose(b)
		for i := range w.n.safe {
			l := &w.n.safe[i]
			w.steps++
			if w.n.plan.pass(l.from, l.last, w.weight, w.gain) > 0 {
				w.seq = w.n.plan.path(w.seq[:0], l.from, w.weight, w.gain)
				w.meet()
			}
		}
	}
}

// sweepExact meets the heaviest roll of each exact lane of each kind by w.weight,
// if it happens to be good for all, and offers the weights as bound.
func (w *work) sweepExact() {
	x := &w.mixed
	for b := range x.cost {
		w.choose(b)
		x.load[b] = faraway
		for d := range w.n.exact {
			load := w.heaviestOn(d)
			if load < x.load[b] {
				x.load[b], x.now[b] = load, d
			}
			if len(w.n.safe) > 1 && w.gainOf(b, w.seq) > tiny && w.sort.load(w.seq) && w.guaranteed() {
				w.meet()
			}
		}
	}
	w.offerMixed()
}

// sweepGaps meets a roll of each kind around a gap before each phase.
func (w *work) sweepGaps() {
	x := &w.mixed
	for b := range x.cost {
		w.choose(b)
		for next := range w.p.phases {
			if len(w.n.safe) > 1 && w.seekBefore(next, w.worthOf(b)+x.scale>>20) {
				w.meet()
			}
		}
	}
}

// sweepListed meets the heaviest rolls of each kind that gain and are good for
// all starts, if those that may be can be listed, and offers what that proves.
func (w *work) sweepListed() {
	x := &w.mixed
	for b := range x.cost {
		w.choose(b)
		x.now[b], x.load[b] = w.lightest()
		least := w.worthOf(b) + x.scale>>20 + 1
		if len(w.n.safe) == 1 || x.load[b] < least || x.listing < 0 {
			continue
		}
		before := w.steps
		if w.listAbove(x.now[b], least) {
			x.load[b], x.only = least-1, true
			for _, id := range w.states.list {
				x.load[b] = max(x.load[b], w.states.info[id].weight)
			}
		}
		x.listing -= w.steps - before
		w.meetListed()
	}
	w.offerMixed()
	x.only = false
}

// meetListed meets the listed sets, a few for each first kind.
func (w *work) meetListed() {
	s := &w.states
	for j := range w.m {
		lo, hi := s.start[j], s.start[j+1]
		for _, id := range s.list[lo:min(hi, lo+listedMet)] {
			w.seq = s.sequence(w.seq[:0], id)
			w.meet()
		}
	}
}

// leanMixed leaves in w.weight the prices drawn towards the weights of the best
// bound, as lean does.
func (w *work) leanMixed(part float64) {
	x := &w.mixed
	for j, y := range w.master.price[:w.m] {
		known := float64(x.weight[j]) * x.rate
		w.weight[j] = int64((part*known + (1-part)*max(y, 0)) * float64(x.scale))
	}
}

// worthOf is the weight of a roll of a kind that gains nothing at the present
// prices.
func (w *work) worthOf(b int) int64 {
	x := &w.mixed
	cost := x.charge(b)
	if x.row[b] >= 0 {
		cost += w.master.price[x.row[b]]
	}
	return int64(cost * float64(x.scale))
}

// better compares the roll of kind b in w.seq with what gains most so far, and
// leaves the better one in w.seq.
func (w *work) better(b, best int, gain float64) (int, float64) {
	x := &w.mixed
	if sum := w.gainOf(b, w.seq); sum > gain {
		best, gain = b, sum
		x.keep = append(x.keep[:0], w.seq...)
	}
	w.seq = append(w.seq[:0], x.keep...)
	return best, gain
}

// gainOf is what a roll of kind b saves by its pieces beyond what it costs, at the
// present prices.
func (w *work) gainOf(b int, seq []int16) float64 {
	s, x := &w.master, &w.mixed
	sum := -x.charge(b)
	if x.row[b] >= 0 {
		sum -= s.price[x.row[b]]
	}
	for _, j := range seq {
		sum += s.price[j]
	}
	return sum
}

// betterLeftOut does so with each piece left out.
func (w *work) betterLeftOut(best int, gain float64) (int, float64) {
	x := &w.mixed
	for j := range w.m {
		if sum := w.master.price[j] - x.charge(-1); sum > gain {
			best, gain = -1, sum
			w.seq = append(w.seq[:0], int16(j))
		}
	}
	return best, gain
}

// loadOf returns a capacity of the kind of roll looked at under w.weight, with
// the lane that shows it, and leaves the heaviest roll of the first lane in w.seq.
func (w *work) loadOf() (load int64, lane int) {
	load = w.heaviestOn(0)
	for d := 1; d < len(w.n.exact); d++ {
		if v := w.lanePass(d); v < load {
			load, lane = v, d
		}
	}
	return load, lane
}
