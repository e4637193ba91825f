package cutting

import "slices"

// Few changes, by prices and branches.
//
// The linear program of hanglp.go bounds the stretches from below, and nearly
// always it is reached. Where its optimum is made of parts of rolls, some piece
// is taken in more than one way: by the roll at hand and by one fetched, or
// from rolls that hold different things. The search tries both:
//
//	all ways ── piece 7 from the roll at hand ── …
//	         ── piece 7 from one fetched ─────── piece 12 … ── whole rolls: a plan
//
// To forbid a way is to forbid arcs of the network; if every piece has one way
// only, the rolls are whole. A branch ends where the prices, as whole numbers,
// show that it needs as many stretches as the best plan.
type pricedHanging struct {
	sets  rollSets
	net   hangNet
	lp    hangLP
	price []int64
	part  []float64 // scratch: share of each arc
	most  int       // stretches of the best plan
	k     int
	rolls [][]int32 // pieces on each roll of the best plan found

	root  []int64 // the prices that prove most while nothing is forbidden
	shown int     // what they prove
}

// branchSteps is what the search may spend on one question.
const branchSteps = 800_000

// hangByPrices looks for a plan of k rolls with fewer stretches than most, one of
// which uses no more than limit unless that is 0. It returns the stretches of
// the plan left in w.hang, most if it found none, and a number that no such
// plan undercuts.
func (w *work) hangByPrices(k, most int, limit int64) (stretches, least int) {
	h := &w.hang.priced
	until := w.limit
	w.limit = min(until, w.steps+branchSteps)
	defer func() { w.limit = until }()
	if !w.beginPriced(k, most, limit) {
		return most, 0
	}
	least = w.branchHanging(0)
	if len(h.rolls) == 0 {
		return most, min(least, most)
	}
	if !w.adoptPriced() {
		return most, min(least, h.most)
	}
	return h.most, min(least, h.most)
}

// beginPriced lays the question out, with no columns and nothing forbidden. It
// returns false if it would be too large.
func (w *work) beginPriced(k, most int, limit int64) bool {
	h := &w.hang.priced
	h.root, h.shown = h.root[:0], 0
	if !h.sets.load(w, k, limit) || !h.net.load(w, &h.sets) {
		return false
	}
	h.most, h.k, h.rolls = most, k, h.rolls[:0]
	short := 0
	if h.sets.limited {
		short = 1
	}
	h.lp.load(len(w.p.kindOf), k-short, short, float64(most))
	return true
}

// branchHanging looks for plans with fewer stretches than h.most along what is
// not forbidden, least being needed. It returns what is needed at least, or
// h.most.
func (w *work) branchHanging(least int) int {
	h := &w.hang.priced
	least = max(least, w.boundHanging(least))
	if least >= h.most || w.spent() {
		return min(least, h.most)
	}
	h.share()
	piece, wanted := h.split()
	if piece < 0 {
		h.keepWhole()
		return min(least, h.most)
	}
	open := h.most
	for _, want := range [2]bool{true, false} {
		mark := len(h.net.pruned)
		h.net.forbid(piece, func(arc int32) bool { return wanted(arc) == want })
		h.lp.strike(&h.net)
		open = min(open, w.branchHanging(least))
		h.net.allow(mark)
		h.lp.strike(&h.net)
	}
	return min(max(least, open), h.most)
}

// boundHanging solves the linear program along what is not forbidden, and
// returns what is needed at least.
func (w *work) boundHanging(least int) int {
	h := &w.hang.priced
	q, g := &h.lp, &h.net
	h.price = grow(h.price, q.pieces)
	for !w.spent() {
		value, steps := q.solve()
		w.steps += steps + len(g.piece)/256
		least = max(least, h.proven())
		if least >= h.most {
			break
		}
		wanting := q.isWanting()
		if !wanting && value <= float64(least)+1e-6 {
			break
		}
		if h.addColumns() {
			continue
		}
		if !wanting || q.dear >= dearestWant {
			break
		}
		q.dear *= 8
	}
	return least
}

// proven is what the prices, as whole numbers, prove to be needed.
func (h *pricedHanging) proven() int {
	sum := int64(0)
	for i := range h.price {
		h.price[i] = int64(max(h.lp.price[i], 0) * float64(priceOfStretch))
		sum += h.price[i]
	}
	h.net.price(h.price)
	for sort, n := range h.lp.count {
		if n > 0 {
			sum -= int64(n) * h.net.earned(sort)
		}
	}
	least := ceilDiv(max(sum, 0), priceOfStretch)
	if len(h.net.pruned) == 0 && least > h.shown {
		h.shown, h.root = least, append(h.root[:0], h.price...)
	}
	return least
}

// addColumns adds the rolls that earn more than they cost, the best that begins
// at each piece, and says whether there are any.
func (h *pricedHanging) addColumns() bool {
	q, g := &h.lp, &h.net
	any := false
	for sort, n := range q.count {
		last := int32(-1)
		for i := 0; n > 0 && i < q.pieces; i++ {
			at := g.begin[sort][i]
			for at != theEnd && g.worth[at] == g.worth[g.left[at/2]] {
				at = g.left[at/2]
			}
			if at == last || at == theEnd {
				continue
			}
			last = at
			q.arcs = g.trace(q.arcs, at)
			if id := q.add(g, int8(sort)); q.reduced(id) > -1e-6 {
				q.drop()
			} else {
				any = true
			}
		}
	}
	return any
}

// share finds how much of each arc is used.
func (h *pricedHanging) share() {
	q := &h.lp
	h.part = grow(h.part, 2*len(h.net.piece))
	clear(h.part)
	for r, id := range q.basis {
		if id >= 0 && q.x[r] > 1e-7 {
			for _, a := range q.column(id) {
				h.part[a] += q.x[r]
			}
		}
	}
}

// split picks a piece that is taken in more than one way, and ways to be tried
// first: from the roll at hand or from others if both occur somewhere, as
// nearly half as any; else by one node. The piece is -1 if there is none.
func (h *pricedHanging) split() (piece int32, wanted func(arc int32) bool) {
	q, g := &h.lp, &h.net
	hand := make([]float64, q.pieces)
	best, node := 0.5-1e-6, int32(-1)
	far, one := 0.5-1e-6, int32(-1)
	for v := range int32(len(g.piece)) {
		if v < 2 {
			continue
		}
		hand[g.piece[v]] += h.part[2*v+atHand]
		for a := 2 * v; a < 2*v+2; a++ {
			if d := abs(h.part[a] - 0.5); d < far {
				far, one = d, a
			}
		}
	}
	for i, y := range hand {
		if d := abs(y - 0.5); d < best {
			best, node = d, int32(i)
		}
	}
	switch {
	case node >= 0:
		mode := int32(0)
		if hand[node] > 0.5 {
			mode = atHand
		}
		return node, func(arc int32) bool { return arc&1 == mode }
	case one >= 0:
		return g.piece[one/2], func(arc int32) bool { return arc == one }
	}
	return -1, nil
}

// keepWhole keeps the rolls of the program, all of which are whole, if they
// have fewer stretches than the best plan. What is on two rolls is trimmed: a
// stretch is kept to its end, then one goes on that holds the next piece.
func (h *pricedHanging) keepWhole() {
	whole := h.whole()
	rollOf, stretches, at := make([]int, h.lp.pieces), 0, -1
	for i := range rollOf {
		holds := func(pieces []int32) bool { return slices.Contains(pieces, int32(i)) }
		if at < 0 || !holds(whole[at]) {
			at = slices.IndexFunc(whole, holds)
			stretches++
		}
		if at < 0 {
			return
		}
		rollOf[i] = at
	}
	if stretches >= h.most {
		return
	}
	h.most, h.rolls = stretches, make([][]int32, len(whole))
	for i, r := range rollOf {
		h.rolls[r] = append(h.rolls[r], int32(i))
	}
}

// whole puts the arcs used together to rolls: of two that come to the same node
// either may take either way on.
func (h *pricedHanging) whole() [][]int32 {
	q, g := &h.lp, &h.net
	var at []int32
	for sort, n := range q.count {
		for range int(n) {
			at = append(at, g.begin[sort][0])
		}
	}
	whole := make([][]int32, len(at))
	for v := int32(len(g.piece)) - 1; v >= 2; v-- {
		for a := 2 * v; a < 2*v+2; a++ {
			for range int(h.part[a] + 0.5) {
				for r := range at {
					for at[r] != theEnd && g.piece[at[r]/2] < g.piece[v] {
						at[r] = g.left[at[r]/2]
					}
					if at[r] == a {
						whole[r], at[r] = append(whole[r], g.piece[v]), g.taken[a&1][v]
						break
					}
				}
			}
		}
	}
	return whole
}

// adoptPriced makes the plan found the best. It returns false if it has fewer
// rolls than k, or one too manifold to be put in order.
func (w *work) adoptPriced() bool {
	h := &w.hang.priced
	rolls := slices.DeleteFunc(slices.Clone(h.rolls), func(p []int32) bool { return len(p) == 0 })
	slices.SortFunc(rolls, func(a, b []int32) int { return int(a[0] - b[0]) })
	if len(rolls) != h.k {
		return false
	}
	w.trial.reset()
	w.hang.rollOf = grow(w.hang.rollOf, len(w.p.kindOf))
	for r, pieces := range rolls {
		var set []int16
		for _, i := range pieces {
			set = append(set, int16(w.p.kindOf[i]))
			w.hang.rollOf[i] = int32(r)
		}
		if len(set) > 1 && !w.fits(set) {
			return false
		}
		w.trial.add(set)
	}
	w.best.copyFrom(&w.trial)
	w.hang.best = append(w.hang.best[:0], w.hang.rollOf...)
	return true
}
