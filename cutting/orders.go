package cutting

import (
	"slices"

	"firstdrop/measure"
)

// From pieces on rolls to cuts from–to.
//
// Cuts run in the order of the pieces where that fits, so that the list reads
// in hanging order; on the roll with the longest free end, only where it costs
// nothing of that end. Otherwise they run in the order that ends earliest.

// write lays out the cuts of every roll, and lists the pieces left out. With
// frugal the roll that uses least is not allowed more than that for the sake
// of fewer orders.
func (w *work) write(pl *placing, frugal bool) (rolls []RollPlan, missing []int) {
	missing = pl.withdraw()
	rolls = make([]RollPlan, len(pl.stock))
	slab := make([]Cut, 0, len(w.p.kindOf))
	one := make([]Order, 0, len(rolls))
	spare, spareAt := measure.Length(-1), 0
	short := w.shortRoll(pl, frugal)
	var known ordersKnown
	if len(rolls) >= manyRolls && !w.p.isMixed() {
		known = make(ordersKnown)
	}
	for r := range rolls {
		w.choose(int(pl.stock[r]))
		rolls[r].Stock = int(pl.stock[r])
		var orders []Order
		switch {
		case w.n.known:
			slab, one = w.writeKnown(pl.roll(r), known, slab, one)
			orders = one[len(one)-1:]
		case r == short:
			orders = w.writeAny(pl.roll(r), w.use(w.kindsOf(pl.roll(r))))
		default:
			orders = w.writeAny(pl.roll(r), w.n.roll)
		}
		rolls[r].Orders = orders[:len(orders):len(orders)]
		if free := rolls[r].leftover(w.p); free > spare {
			spare, spareAt = free, r
		}
	}
	for r := range rolls {
		if w.choose(int(pl.stock[r])); w.n.known {
			w.lineUp(pl.roll(r), &rolls[r].Orders[0], r == spareAt)
		}
	}
	w.choose(0)
	return rolls, missing
}

// shortRoll returns the number of the roll that uses least if the start is
// unknown and its length matters, -1 otherwise.
func (w *work) shortRoll(pl *placing, frugal bool) int {
	if w.p.isMixed() && frugal {
		return w.shortMixed(pl)
	}
	if !frugal || w.n.known {
		return -1
	}
	at, least := 0, w.n.roll+1
	for r := range w.best.rolls() {
		if u := w.use(w.kindsOf(pl.roll(r))); u < least {
			at, least = r, u
		}
	}
	return at
}

// shortMixed returns, where there are several kinds of roll, the number of the
// one of unknown start that leaves most; -1 if there is none.
func (w *work) shortMixed(pl *placing) int {
	at, most := -1, int64(-1)
	for r, b := range pl.stock {
		if w.choose(int(b)); w.n.known {
			continue
		}
		if left := w.leftOver(int(b), w.kindsOf(pl.roll(r))); left > most {
			at, most = r, left
		}
	}
	w.choose(0)
	return at
}

// ordersKnown remembers, for one kind of roll, in which order kinds of piece
// that come in some order are cut. In a hotel the same rolls come again and
// again.
type ordersKnown map[[longestKnown]int16][]int16

const (
	longestKnown = 8   // pieces that are remembered
	manyRolls    = 100 // from which it pays
)

// earliestOrder is the earliest-ending order for a roll of known start.
func (w *work) earliestOrder(seq []int16, known ordersKnown) []int16 {
	if w.n.anyOrder() {
		return seq
	}
	var key [longestKnown]int16 // kinds from 1 on
	keep := known != nil && len(seq) <= longestKnown
	if keep {
		for i, j := range seq {
			key[i] = j + 1
		}
		if order, ok := known[key]; ok {
			return order
		}
	}
	l, g := &w.n.safe[0], &w.n.plan
	switch {
	case len(seq) > 1 && w.sort.load(seq) && w.sort.earliest(g, l.from) <= l.last:
		w.seq = append(w.seq[:0], w.sort.order(g)...)
		seq = w.seq
	case g.walk(l.from, seq) > l.last:
		seq = w.ownOrder(seq)
	}
	if keep {
		known[key] = slices.Clone(seq)
	}
	return seq
}

// writeKnown appends the earliest-ending order for a roll of known start.
func (w *work) writeKnown(pieces []int32, known ordersKnown, slab []Cut, one []Order) ([]Cut, []Order) {
	seq, l := w.earliestOrder(w.kindsOf(pieces), known), &w.n.safe[0]
	lo := len(slab)
	slab = w.cuts(slab, pieces, seq, l.begin)
	at := w.p.stock[w.at].startPhase(w.p.spec.Repeat)
	return slab, append(one, Order{After: at, UpTo: at, At: at, Cuts: slab[lo:len(slab):len(slab)]})
}

// ownOrder finds the order in which the plan holds these kinds, for sets too
// large to be sorted.
func (w *work) ownOrder(seq []int16) []int16 {
	w.deep.load = grow(w.deep.load, w.m)
	for r := range w.best.rolls() {
		clear(w.deep.load)
		for _, j := range seq {
			w.deep.load[j]++
		}
		roll := w.best.roll(r)
		for _, j := range roll {
			w.deep.load[j]--
		}
		same := true
		for _, n := range w.deep.load {
			same = same && n == 0
		}
		if same {
			return roll
		}
	}
	return seq
}

// lineUp puts the cuts of a roll in the order of the pieces where that fits;
// on the roll with the longest free end, where it costs nothing of it.
func (w *work) lineUp(pieces []int32, order *Order, spare bool) {
	l := &w.n.safe[0]
	x := l.first
	for _, i := range pieces {
		x = w.n.after(w.p, x, int(w.p.kindOf[i]))
	}
	limit := l.limit
	if spare {
		limit = l.begin + int64(order.Cuts[len(order.Cuts)-1].To) + w.p.loss
	}
	if x <= limit {
		order.Cuts = w.cuts(order.Cuts[:0], pieces, w.kindsOf(pieces), l.begin)
	}
}

// writeAny returns the orders that together serve every start and use no more
// than the given length of the roll.
func (w *work) writeAny(pieces []int32, length int64) []Order {
	seq := w.kindsOf(pieces)
	arcs := w.stretches(seq, length)
	if one, ok := w.hangingOrder(seq, length); ok {
		arcs = []stretch{one}
	} else if len(arcs) > 0 && !w.sort.load(seq) {
		arcs[0].seq = append(arcs[0].seq[:0], w.ownOrder(seq)...)
		arcs[0].phase = w.p.phase[arcs[0].seq[0]]
	}
	chosen := cover(arcs, w.p.repeat)
	orders := make([]Order, 0, len(chosen))
	for i, a := range chosen {
		// Each order serves the starts from just past the next one's phase.
		below := chosen[(i+1)%len(chosen)].phase
		if mod(a.phase-below-1, w.p.repeat) > a.reach {
			below = mod(a.phase-a.reach-1, w.p.repeat)
		}
		at := mod(below+1-w.n.lead, w.p.repeat)
		orders = append(orders, Order{
			After: measure.Length(mod(below-w.n.lead, w.p.repeat)), At: measure.Length(at),
			UpTo: measure.Length(mod(a.phase-w.n.lead, w.p.repeat)),
			Cuts: w.cuts(nil, pieces, a.seq, at),
		})
	}
	return orders
}

// hangingOrder returns the pieces' own order if it serves every start.
func (w *work) hangingOrder(seq []int16, length int64) (stretch, bool) {
	q := w.p.phase[seq[0]]
	x := q
	for _, j := range seq {
		x = w.p.after(x, int(j))
	}
	ok := w.n.lead+x-q+w.p.repeat-1 <= length
	return stretch{phase: q, reach: w.p.repeat - 1, seq: seq}, ok
}

// cuts appends the cuts of a roll that begins at the given phase, in the order
// of seq. Pieces of a kind are cut lowest first.
func (w *work) cuts(dst []Cut, pieces []int32, seq []int16, begin int64) []Cut {
	lo, x := len(dst), begin+w.n.lead
	for _, j := range seq {
		x = w.n.after(w.p, x, int(j))
		to := measure.Length(x - begin - w.p.loss)
		dst = append(dst, Cut{Piece: -1, From: to - w.p.kinds[j].Length, To: to})
		for _, i := range pieces {
			if w.p.kindOf[i] == int32(j) && !used(dst[lo:], int(i)) {
				dst[len(dst)-1].Piece = int(i)
				break
			}
		}
	}
	return dst
}

func used(cuts []Cut, piece int) bool {
	for _, c := range cuts {
		if c.Piece == piece {
			return true
		}
	}
	return false
}

// kindsOf returns the kinds of the pieces, in their order.
func (w *work) kindsOf(pieces []int32) []int16 {
	w.deep.path = w.deep.path[:0]
	for _, i := range pieces {
		w.deep.path = append(w.deep.path, int16(w.p.kindOf[i]))
	}
	return w.deep.path
}
