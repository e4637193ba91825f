package audit

import (
	"firstdrop/cutting"
	"firstdrop/plan"
)

// Goods that shade come off the rolls in the order in which they hang: each
// roll gives consecutive pieces and is finished before the next is begun.
//
//	pieces  0 1 2 3 | 4 5 6 | 7 8 9
//	breaks  ^         ^       ^          no roll holds 0 to 4, none 4 to 7
//
// With one kind of roll, breaks prove how many are needed: where no roll holds
// the pieces from one break to the next, both included, each break lies on a
// roll of its own. With several kinds the least cost is found here anew, from
// the first piece on: for each piece, and each way to have used up what is
// scarce, what it cost to come so far. A roll is filled as far as it goes; to
// stop short never helps, for what the next roll would then begin with only
// makes its stretch longer.

// judgeInOrder: pieces come off the rolls in their own order.
func (r *rolls) judgeInOrder() {
	next := 0
	for i := range r.s.Rolls {
		orders := r.s.Rolls[i].Orders
		if len(orders) == 0 || len(orders[0].Cuts) == 0 {
			continue
		}
		first := orders[0].Cuts[0].Piece
		if first < next {
			r.note(InOrder, Place{Roll: i + 1}, "first piece", figure(next+1)+" or later", first+1)
		}
		for o := range orders {
			for k, c := range orders[o].Cuts {
				r.same(InOrder, Place{Roll: i + 1, Order: o + 1, Cut: k + 1}, "piece", first+k+1, c.Piece+1)
			}
		}
		next = max(next, first+len(orders[0].Cuts))
	}
}

// judgeBreaks: with one kind of roll, each break needs a roll of its own.
func (r *rolls) judgeBreaks() {
	breaks := r.s.Certificate.Breaks
	r.same(Bound, Place{}, "lower bound", len(breaks), r.s.LowerBound)
	for i, at := range breaks {
		if at < 0 || at >= len(r.spec.Pieces) || i > 0 && at <= breaks[i-1] {
			r.note(Certificate, Place{}, "break "+figure(i+1), "a piece behind the one before", at)
			return
		}
		if i > 0 && r.reach(&r.wares[0], breaks[i-1]) > at {
			r.note(Certificate, Place{Piece: at + 1}, "pieces from one break to the next", "more than a roll holds", "on one roll")
		}
	}
}

// reach returns the piece behind the last that a roll holds, whatever it begins
// with, if it gives the pieces from one on in their order. A start just past
// the first one's phase waits longest for it; what follows it then stands as it
// would on any roll.
func (r *rolls) reach(w *ware, piece int) int {
	tracts, x := w.from(r.phase(piece)+1-r.lead), int64(0)
	for ; piece < len(r.spec.Pieces); piece++ {
		k := kind{length: r.size(piece) + r.loss, phase: r.phase(piece)}
		end, ok := r.after(tracts, x, &k)
		if !ok {
			break
		}
		x = end
	}
	return piece
}

// judgeByOrder: with several kinds of roll, the bound is no more than the least
// that cutting in order costs; where there are too many ways it is on trust.
func (r *rolls) judgeByOrder(t *tariff) {
	c := &r.s.Certificate
	r.same(Bound, Place{}, "bound on the cost", int(c.ByOrder), int(r.s.CostBound))
	if least, whole := r.leastInOrder(t); whole && c.ByOrder > least {
		r.note(Certificate, Place{}, "least cost of cutting in order", figure(int(least)), int(c.ByOrder))
	}
}

// fewestInOrder counts rolls of one kind, each filled as far as it goes; false
// when there is a piece that it does not give.
func (r *rolls) fewestInOrder() (fewest int, possible bool) {
	for i := 0; i < len(r.spec.Pieces); fewest++ {
		next := r.reach(&r.wares[0], i)
		if next == i {
			return 0, false
		}
		i = next
	}
	return fewest, true
}

// mostWays is how many ways to have come so far are followed.
const mostWays = 20_000

// spent says how much is used of what is scarce: rolls of each counted kind, of
// others those used of an open pack.
type spent string

// leastInOrder returns the least cost of cutting the pieces in their order; not
// whole when there were too many ways to tell.
func (r *rolls) leastInOrder(t *tariff) (cost int64, whole bool) {
	reach := make([][]int, len(r.wares))
	for k := range r.wares {
		for i := range r.spec.Pieces {
			reach[k] = append(reach[k], r.reach(&r.wares[k], i))
		}
	}
	n := len(r.spec.Pieces)
	at := make([]map[spent]int64, n+1)
	for i := range at {
		at[i] = map[spent]int64{}
	}
	at[0][spent(make([]byte, 2*len(r.wares)))] = 0
	come := func(i int, s spent, cost int64) {
		if was, known := at[i][s]; !known || cost < was {
			at[i][s] = cost
		}
	}
	ways := 0
	for i := range n {
		if ways += len(at[i]); ways > mostWays {
			return 0, false
		}
		for s, cost := range at[i] {
			come(i+1, s, cost+t.missing)
			for k := range r.wares {
				if reach[k][i] == i {
					continue
				}
				if next, price, ok := r.use(t, s, k); ok {
					come(reach[k][i], next, cost+price)
				}
			}
		}
	}
	return least(at[n]), true
}

// fewestRolls is the fewest rolls of all plans in order that cost as little as
// this one, which must be the least; 0 where that cannot be told. Each roll counts
// as the smallest part of the unit of money.
func (r *rolls) fewestRolls() int64 {
	t, part := r.tariff(), int64(len(r.spec.Pieces)+1)
	if t.missing > most/part/part {
		return 0
	}
	for k := range t.pack {
		t.pack[k] *= part
	}
	t.missing *= part
	t.each = 1
	if least, whole := r.leastInOrder(&t); whole && least/part == r.s.Cost {
		return least % part
	}
	return 0
}

func least(costs map[spent]int64) int64 {
	lowest := most
	for _, c := range costs {
		lowest = min(lowest, c)
	}
	return lowest
}

// use takes one more roll of a kind: what is used then, and what it costs; false
// when there is none left.
func (r *rolls) use(t *tariff, s spent, k int) (next spent, price int64, ok bool) {
	w, n := &r.wares[k], len(r.spec.Pieces)
	used := int(s[2*k])<<8 + int(s[2*k+1])
	if used%t.size[k] == 0 {
		price = t.pack[k]
	}
	price += t.each
	used++
	switch {
	case w.count > 0 && used > w.count:
		return s, 0, false
	case w.count == 0 || w.count >= n: // no more are used than there are pieces
		used %= t.size[k]
	}
	b := []byte(s)
	b[2*k], b[2*k+1] = byte(used>>8), byte(used)
	return spent(b), price, true
}

// inOrderRolls returns the fewest rolls to buy when the pieces of a batch are
// cut one by one in the order in which they hang; exact says that the fewest are
// also what costs least. It is false when there is no such way, or too many.
func (b *batch) inOrderRolls() (fewest int, exact, possible, whole bool) {
	r := asked(b.Cutting)
	r.spec.Pieces = make([]cutting.Piece, 0, len(b.refs))
	for _, ref := range b.refs {
		r.spec.Pieces = append(r.spec.Pieces, b.piece(ref))
	}
	if !r.mixed() {
		fewest, possible = r.fewestInOrder()
		return fewest, true, possible, true
	}
	t := r.tariff()
	exact = true
	for k := range r.wares {
		exact = exact && (r.wares[k].inHand || t.pack[k] == t.unit && t.size[k] == 1)
		if t.size[k] = 1; !r.wares[k].inHand {
			t.pack[k] = 1
		}
	}
	t.missing = int64(len(r.spec.Pieces)) + 1
	count, whole := r.leastInOrder(&t)
	return int(count), exact, count < t.missing, whole
}

// judgeInOrderRolls: the count for cutting in hanging order is that of an own
// reckoning, or no less where prices decide.
func judgeInOrderRolls(b *book, p *plan.Plan, i int) {
	pp := &p.Papers[i]
	total, exact := 0, true
	for k := range pp.Batches {
		judged := newBatch(b, p, i, k)
		fewest, all, possible, whole := judged.inOrderRolls()
		switch {
		case !whole:
			return
		case !possible:
			b.same(InOrderCount, Place{}, "rolls to buy for an order that does not give every piece", 0, pp.InOrderRolls)
			return
		}
		total, exact = total+fewest, exact && all
	}
	if pp.InOrderRolls < total || exact && pp.InOrderRolls != total {
		b.note(InOrderCount, Place{}, "rolls to buy if cut in hanging order", total, pp.InOrderRolls)
	}
}
