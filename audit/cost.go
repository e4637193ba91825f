package audit

import (
	"math/big"
	"slices"
)

// What do the rolls cost, and can it be done for less?
//
// A roll in hand costs nothing, one to be bought its share of a pack, and packs
// are bought whole. A piece for which no roll is left is missing, and dearer
// than all rolls together.
//
// Every kind of roll can carry so much weight and no more, at its price, so the
// weight of all pieces costs at least what it does on the rolls that carry it
// most cheaply, as many of each as there are, the last of them in part:
//
//	weight  |== in hand ==|=== cheap per weight ===|== dearer ==|
//	cost    0             0           any number of these, in part
//
// The sum is worked out in fractions and rounded up once, to a multiple of what
// divides all prices.

// judgeStock: no more rolls of a kind are cut than there are.
func (r *rolls) judgeStock() {
	used := make([]int, len(r.wares))
	for i := range r.s.Rolls {
		used[r.s.Rolls[i].Stock]++
	}
	for k, n := range used {
		if have := r.wares[k].count; have > 0 && n > have {
			r.note(StockCount, Place{}, "rolls of kind "+figure(k+1), figure(have)+" or fewer", n)
		}
	}
}

// tariff is what rolls of each kind, and missing pieces, cost.
type tariff struct {
	pack    []int64 // price of a pack, by kind; 0 in hand
	size    []int   // rolls in a pack
	each    int64   // of each roll besides
	missing int64   // of a piece: more than all rolls that can be used
	unit    int64   // divides all costs
	dearest int64   // pack
}

// tariff works the prices out: as stated, or 1 for each pack to be bought.
func (r *rolls) tariff() tariff {
	priced := slices.ContainsFunc(r.wares, func(w ware) bool { return !w.inHand && w.price > 0 })
	t := tariff{dearest: 1}
	total := int64(0)
	for i := range r.wares {
		w := &r.wares[i]
		price, n := int64(1), len(r.spec.Pieces)
		if priced {
			price = w.price
		}
		if w.inHand {
			price = 0
		}
		if w.count > 0 {
			n = min(n, w.count)
		}
		t.pack, t.size = append(t.pack, price), append(t.size, w.pack)
		total += int64((n+w.pack-1)/w.pack) * price
		t.unit, t.dearest = divisor(t.unit, price), max(t.dearest, price)
	}
	t.unit = max(t.unit, 1)
	t.missing = total + t.unit
	return t
}

// divisor returns the greatest number that divides both; either may be 0.
func divisor(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// paid returns what the rolls of the plan cost, and how many are bought.
func (r *rolls) paid(t *tariff) (cost int64, bought int) {
	used := make([]int, len(r.wares))
	for i := range r.s.Rolls {
		k := r.s.Rolls[i].Stock
		used[k]++
		if !r.wares[k].inHand {
			bought++
		}
	}
	for k, n := range used {
		cost += int64((n+t.size[k]-1)/t.size[k]) * t.pack[k]
	}
	return cost, bought
}

// judgeCost: the cost is that of rolls and missing pieces, the bounds on cost
// and count follow, and proven means that cost and bound agree.
func (r *rolls) judgeCost() {
	s := r.s
	if len(r.spec.Pieces) == 0 {
		r.same(Cost, Place{}, "cost of nothing", int64(0), s.Cost)
		return
	}
	t := r.tariff()
	cost, bought := r.paid(&t)
	r.same(Cost, Place{}, "cost", int(cost+int64(len(s.Missing))*t.missing), int(s.Cost))
	r.same(Proven, Place{}, "proven", s.Cost == s.CostBound, s.Proven)
	if s.CostBound > s.Cost {
		r.note(Bound, Place{}, "bound on the cost", "no more than the cost, "+figure(int(s.Cost)), int(s.CostBound))
	}
	least := 0
	if s.CostBound > 0 && s.CostBound < t.missing {
		least = int((s.CostBound + t.dearest - 1) / t.dearest)
	}
	if least = min(least, bought); s.LowerBound < 0 || s.LowerBound > least {
		r.note(Bound, Place{}, "lower bound on rolls to buy", figure(least)+" or less", s.LowerBound)
	}
	if r.spec.InOrder && s.Certificate.Capacities == nil {
		r.judgeByOrder(&t)
		return
	}
	r.judgeWeights(&t)
}

// judgeWeights: what the weights prove the cost to be at least, and that a bound
// above that is claimed only where a search has met it.
func (r *rolls) judgeWeights(t *tariff) {
	c := &r.s.Certificate
	if !r.soundWeights() || !r.same(Certificate, Place{}, "number of capacities", len(r.wares), len(c.Capacities)) ||
		!r.same(Certificate, Place{}, "number of starts", len(r.wares), len(c.Starts)) {
		return
	}
	kinds := r.kinds()
	for k := range r.wares {
		limit := c.Capacities[k]
		if limit < 0 || limit > most {
			r.note(Certificate, Place{}, "capacity of kind "+figure(k+1), "0 or more, within reason", limit)
			return
		}
		if heaviest, _ := r.carries(kinds, &r.wares[k], int64(c.Starts[k]), limit); heaviest > limit {
			r.note(Certificate, Place{}, "most weight that a roll of kind "+figure(k+1)+" can carry", limit, heaviest)
		}
	}
	if proven := r.leastCost(t); c.ByCost < 0 || !proven.IsInt64() || c.ByCost > proven.Int64() {
		r.note(Bound, Place{}, "cost that the weights prove", proven.String()+" or less", int(c.ByCost))
	}
	if bound := r.s.CostBound; c.ByCost > bound || c.ByCost < bound && bound != r.s.Cost {
		r.note(Bound, Place{}, "bound on the cost", figure(int(c.ByCost))+", or the cost where a search has met it", int(bound))
	}
}

// carrier is a kind of roll, or the leaving out of a piece, as what carries
// weight at a cost.
type carrier struct {
	load  int64
	price *big.Rat // for each
	count int64    // 0 for any number
}

// leastCost returns what the certificate's capacities prove the cost to be at
// least.
func (r *rolls) leastCost(t *tariff) *big.Int {
	c := &r.s.Certificate
	left, heaviest := new(big.Rat), int64(0)
	for _, w := range c.Weights {
		left.Add(left, new(big.Rat).SetInt64(w))
		heaviest = max(heaviest, w)
	}
	all := []carrier{{heaviest, new(big.Rat).SetInt64(t.missing), 0}}
	for k := range r.wares {
		all = append(all, carrier{c.Capacities[k], big.NewRat(t.pack[k], int64(t.size[k])), int64(r.wares[k].count)})
	}
	all = slices.DeleteFunc(all, func(c carrier) bool { return c.load <= 0 })
	slices.SortStableFunc(all, func(a, b carrier) int { return a.perWeight().Cmp(b.perWeight()) })
	sum := new(big.Rat)
	for _, c := range all {
		if left.Sign() <= 0 {
			break
		}
		rolls := new(big.Rat).Quo(left, new(big.Rat).SetInt64(c.load))
		if n := new(big.Rat).SetInt64(c.count); c.count > 0 && rolls.Cmp(n) > 0 {
			rolls = n
		}
		sum.Add(sum, new(big.Rat).Mul(rolls, c.price))
		left.Sub(left, rolls.Mul(rolls, new(big.Rat).SetInt64(c.load)))
	}
	return roundUp(sum, t.unit)
}

func (c *carrier) perWeight() *big.Rat {
	return new(big.Rat).Quo(c.price, new(big.Rat).SetInt64(c.load))
}

// roundUp returns the least multiple of a unit that is no less than x, which is
// not negative.
func roundUp(x *big.Rat, unit int64) *big.Int {
	u := big.NewInt(unit)
	q, rest := new(big.Int).QuoRem(x.Num(), new(big.Int).Mul(x.Denom(), u), new(big.Int))
	if rest.Sign() > 0 {
		q.Add(q, big.NewInt(1))
	}
	return q.Mul(q, u)
}
