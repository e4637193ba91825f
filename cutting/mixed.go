package cutting

import (
	"math"
	"math/bits"
	"slices"
)

// Several kinds of roll.
//
// Rolls of different length and price, some of which there are only a few,
// left-overs in hand that cost nothing: least money instead of fewest rolls.
// The weights of pieces stay, but each kind of roll now has a capacity of its
// own, and the bound is a small sum:
//
//	in hand   |====|            weighs at most 0.4, costs 0, one of them
//	short     |======|          weighs at most 0.6, costs 7, any number
//	long      |===========|     weighs at most 1.1, costs 10, any number
//
//	total weight 3.0  =  0.4 free  +  2.6 at 10 per 1.1  →  at least 23.6
//
// Carry the whole weight on the cheapest capacity first: no plan costs less.
// Rounded up to what sums of prices can make, that is the bound. A roll sold in
// a pack counts with its share of the pack's price there; a plan pays for packs
// whole, and the rolls left in an open pack are as good as in hand.
//
// A piece for which no roll is left over costs more than all rolls together,
// so that the plan leaves out no more than it must.
type mixed struct {
	paid  []int64 // for a pack, per kind of roll
	pack  []int32 // rolls in it
	cost  []int64 // of one roll: its share of the pack, in parts of the unit of money, rounded down
	parts int64   // in the unit of money; 1 unless there are packs
	count []int32 // that there are; unlimited if -1
	row   []int32 // of the linear program that counts a limited kind; -1
	spare []int32 // place in left of the rolls in an open pack; -1 if sold singly
	dear  int64   // cost of a piece left out
	unit  int64   // all sums of money are multiples of it
	top   int64   // highest price of a pack

	load  []int64 // capacities under the weights looked at; the last for pieces left out
	now   []int   // exact lanes that show them
	last  int     // kind that carries the last of the weight
	order []int   // kinds of roll by cost per capacity; len(cost) stands for leaving out
	rhs   []int32
	met   plan  // rolls met by pricing
	sole  []int // exact lane of each kind that carries least by length
	only  bool  // load holds only for sets good for every start
	every bool  // so does capacity

	listing int   // steps left for listing such sets
	scale   int64 // weight of the dearest roll in whole numbers

	weight   []int64 // of the best bound
	rate     float64 // what weight 1 costs there where the last of it is carried, the dearest roll at 1
	capacity []int64 // of the best bound; the last for pieces left out
	lane     []int   // that shows it
	bound    int64

	bestCost int64
	lists    []states
	short    []states // that may keep a left-over
	left     []int32  // pieces, then rolls of each limited kind, then those in open packs
	used     []int32  // rolls of each kind, of a plan looked at
	chosen   []pick
	keep     []int16
}

type pick struct {
	stock, set int32 // stock -1: the piece of kind set is left out
}

const unlimited = -1

// isMixed says whether the problem is about more than as many rolls as wanted
// of a single kind.
func (p *Problem) isMixed() bool { return len(p.stock) > 1 || p.stock[0].Count > 0 }

// price sets the costs up.
func (x *mixed) price(p *Problem) {
	n := len(p.stock)
	x.paid, x.count, x.row, x.pack = grow(x.paid, n), grow(x.count, n), grow(x.row, n), grow(x.pack, n)
	prices := priced(p.stock)
	x.unit, x.top = 0, 1
	total := int64(0)
	rows := int32(len(p.kinds))
	x.rhs = append(x.rhs[:0], p.demand...)
	for b := range p.stock {
		s := &p.stock[b]
		x.paid[b], x.pack[b] = 1, int32(s.pack())
		if prices {
			x.paid[b] = s.Price
		}
		if s.InHand {
			x.paid[b] = 0
		}
		x.count[b], x.row[b] = unlimited, -1
		most := len(p.kindOf)
		if s.Count > 0 {
			x.count[b], x.row[b] = int32(min(s.Count, math.MaxInt32)), rows
			x.rhs = append(x.rhs, -x.count[b])
			rows++
			most = min(most, s.Count)
		}
		total += s.whole(most) * x.paid[b]
		x.unit, x.top = gcd(x.unit, x.paid[b]), max(x.top, x.paid[b])
	}
	x.unit = max(x.unit, 1)
	x.dear = total + x.unit
	x.share(p)
	x.scale = one
	for float64(x.dear)/float64(x.top)*float64(len(p.kindOf))*float64(x.scale) > 1<<60 {
		x.scale /= 2
	}
	x.bound, x.bestCost, x.rate, x.last, x.only, x.every = 0, faraway, 0, 0, false, false
	x.weight = grow(x.weight, len(p.kinds))
	clear(x.weight)
	x.capacity, x.load = grow(x.capacity, n+1), grow(x.load, n+1)
	x.lane, x.now = grow(x.lane, n), grow(x.now, n)
	clear(x.capacity)
	clear(x.lane)
}

// share sets up what a single roll costs of its pack.
func (x *mixed) share(p *Problem) {
	x.parts = 1
	for _, n := range x.pack {
		if next := x.parts / gcd(x.parts, int64(n)) * int64(n); next <= 5040 && x.dear < 1<<58/next/int64(len(p.kindOf)+1) {
			x.parts = next
		}
	}
	x.cost, x.spare = grow(x.cost, len(x.pack)), grow(x.spare, len(x.pack))
	place := int32(len(x.rhs))
	for b, n := range x.pack {
		x.cost[b] = x.paid[b] * x.parts / int64(n)
		if x.spare[b] = -1; n > 1 {
			x.spare[b] = place
			place++
		}
	}
}

// costOfPlan is what the rolls of the given kinds cost, in whole packs, and
// the pieces left out (-1).
func (x *mixed) costOfPlan(stock []int32) int64 {
	x.used = grow(x.used, len(x.pack))
	clear(x.used)
	cost := int64(0)
	for _, b := range stock {
		switch {
		case b < 0:
			cost += x.dear
		case x.used[b]%x.pack[b] == 0:
			cost += x.paid[b]
			fallthrough
		default:
			x.used[b]++
		}
	}
	return cost
}

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// solveMixed leaves the best plan it finds in w.best, and cost and bound in
// w.mixed.
func (w *work) solveMixed() {
	x := &w.mixed
	x.price(w.p)
	w.fillMixed(w.p.length)
	w.improveMixed()
	w.value = grow(w.value, w.m)
	if x.open() {
		prices := slices.Clone(x.weight)
		w.fillMixed(prices)
	}
	if x.open() && w.isLarge() && !w.isCoarse() {
		w.poolMixed()
	}
	if x.open() {
		w.cutRest()
	}
	if x.open() {
		w.exhaustMixed()
	}
}

// isCoarse says whether positions had to be rounded on some kind of roll.
func (w *work) isCoarse() bool {
	return slices.ContainsFunc(w.p.nets, func(n network) bool { return n.coarse })
}

func (x *mixed) open() bool { return x.bestCost > x.bound }

// keepMixed makes the trial plan the best one if it costs less.
func (w *work) keepMixed() {
	x := &w.mixed
	cost := x.costOfPlan(w.trial.stock)
	if w.best.rolls() == 0 || cost < x.bestCost {
		x.bestCost = cost
		w.best.copyFrom(&w.trial)
	}
}

// offerMixed keeps the weights in w.weight as bound if they prove more.
func (w *work) offerMixed() {
	x := &w.mixed
	n := len(x.cost)
	x.load[n] = slices.Max(w.weight[:w.m])
	x.rank(x.load)
	if c := x.costOf(x.load, dot(w.p.demand, w.weight)); c > x.bound || x.capacity[n] == 0 {
		x.bound = max(c, x.bound)
		copy(x.weight, w.weight)
		copy(x.capacity, x.load)
		copy(x.lane, x.now)
		x.every = x.only
		x.rate = float64(x.costAt(x.last)) / float64(x.load[x.last]) / float64(x.top) / float64(x.parts)
	}
}

// rank sorts the kinds of roll by cost per capacity. Kinds that can carry
// nothing are left out.
func (x *mixed) rank(load []int64) {
	x.order = x.order[:0]
	for b := range load {
		if load[b] > 0 {
			x.order = append(x.order, b)
		}
	}
	slices.SortStableFunc(x.order, func(a, b int) int {
		ah, al := bits.Mul64(uint64(x.costAt(a)), uint64(load[b]))
		bh, bl := bits.Mul64(uint64(x.costAt(b)), uint64(load[a]))
		switch {
		case ah < bh || ah == bh && al < bl:
			return -1
		case ah > bh || al > bl:
			return 1
		}
		return 0
	})
}

// costAt is the cost of a kind of roll, in parts; of leaving a piece out for
// the number after the last.
func (x *mixed) costAt(b int) int64 {
	if b == len(x.cost) {
		return x.dear * x.parts
	}
	return x.cost[b]
}

// costOf is a cost below which the weight cannot be carried: the capacities
// are filled in the order of rank, the last roll in part, and the sum rounded
// up to a multiple of the unit.
func (x *mixed) costOf(load []int64, weight int64) int64 {
	cost := int64(0)
	for _, b := range x.order {
		if weight <= 0 {
			break
		}
		x.last = b
		if b < len(x.count) && x.count[b] >= 0 && int64(x.count[b])*load[b] < weight {
			weight -= int64(x.count[b]) * load[b]
			cost += int64(x.count[b]) * x.cost[b]
			continue
		}
		q, exact := mulDiv(x.costAt(b), weight, load[b])
		if !exact {
			q++
		}
		cost += q
		break
	}
	unit := x.unit * x.parts
	return (cost + unit - 1) / unit * x.unit
}

// carried is a weight that no rolls for the money can exceed, given how many
// of the limited kinds are left: the counterpart of costOf.
func (x *mixed) carried(money int64, left []int32) int64 {
	sum := x.carriedSpare(left)
	money *= x.parts
	for _, b := range x.order {
		cost, load := x.costAt(b), x.capacity[b]
		if b < len(x.row) && x.row[b] >= 0 {
			n := int64(left[x.row[b]])
			if cost*n <= money {
				sum += n * load
				money -= n * cost
				continue
			}
		}
		if cost == 0 {
			return faraway
		}
		q, _ := mulDiv(money, load, cost)
		return min(sum+q, faraway)
	}
	return sum
}

// carriedSpare is a weight that the rolls left in open packs cannot exceed.
func (x *mixed) carriedSpare(left []int32) int64 {
	sum := int64(0)
	for b, at := range x.spare {
		if at >= 0 {
			sum += int64(left[at]) * x.capacity[b]
		}
	}
	return sum
}

// mulDiv returns a·b/c rounded down, or faraway if that is less, and whether
// it is exact. None is negative, and c is above zero.
func mulDiv(a, b, c int64) (q int64, exact bool) {
	hi, lo := bits.Mul64(uint64(a), uint64(b))
	if hi >= uint64(c) {
		return faraway, true
	}
	quo, rem := bits.Div64(hi, lo, uint64(c))
	if quo > faraway {
		return faraway, true
	}
	return int64(quo), rem == 0
}
