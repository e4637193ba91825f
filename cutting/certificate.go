package cutting

import (
	"errors"
	"fmt"
	"math/bits"
	"slices"

	"firstdrop/measure"
)

// Certificate is the proof on paper that fewer rolls are impossible. Each
// piece has a weight, and no set of the pieces asked for that fits one roll
// weighs more than Capacity; so at least ⌈sum of weights / Capacity⌉ rolls are
// needed. Whole numbers throughout: the linear program that suggested the
// weights takes no part in the proof.
//
// To check the capacity, find the heaviest roll with a start at phase At by a
// longest path over the ends of cuts, or with free match by a knapsack in
// which no piece is used more often than asked for. With an unknown start a
// roll must serve every phase, so what no roll of this one start can carry no
// roll can. Where that is not sharp enough AllStarts is set: Capacity then
// holds for the sets of pieces that fit from every start, and to check it all
// of those are listed if they are few (catalogue.go), or else those that weigh
// more on the start that carries least, of which none may fit from every other
// (priced.go).
type Certificate struct {
	Weights   []int64        // per piece, index as in Spec.Pieces; none negative
	Capacity  int64          // above zero when there are pieces
	At        measure.Length // meaningless if AllStarts
	AllStarts bool

	// With several kinds of roll there is a capacity for each, with the start
	// that shows it, in place of Capacity and At; if AllStarts is set some of
	// those of unknown start hold only for the sets that fit from every start. And ByCost is the cost of the
	// cheapest capacities that carry all weights, the last roll in part,
	// rounded up to what sums of prices can make. A piece left out counts as
	// one more kind of roll that carries the heaviest piece and costs more than
	// all others together.
	Capacities []int64
	Starts     []measure.Length
	ByCost     int64

	// For pieces that must be cut in order (Spec.InOrder) there are no weights
	// but, with one kind of roll, Breaks: indexes of pieces, ascending, such
	// that no roll can hold all pieces from one to the next, both included. So
	// no two of them lie on the same roll, and as many rolls are needed. To
	// check them, cut each such stretch in its order from a roll, with an
	// unknown start as if the first phase came up a whole repeat less one
	// nanometre after the beginning; the last piece must not fit.
	//
	// With several kinds of roll the least cost is a shortest path over how many
	// pieces are cut, how many rolls of each counted kind are used and how many
	// are left in an open pack; ByOrder is its cost, with a piece left out as
	// above. To check it, find the path. Where there are too many nodes for
	// that, Capacities is set, and weights prove the cost in any order.
	Breaks  []int
	ByOrder int64

	// ByWeights is ⌈sum of Weights / Capacity⌉.
	ByWeights int
	// Exhausted is how many rolls above ByWeights the bound was raised because
	// a complete search found no plan with so few. 0 when weights suffice.
	Exhausted int

	// Changes proves how few changes of roll there must be, if that is asked for
	// and more than one for each roll after the first; else it is nil.
	Changes *ChangesProof
}

// Reason tells in a phrase how the lower bound was reached.
func (c Certificate) Reason() string {
	switch {
	case c.Breaks != nil:
		return fmt.Sprintf("no roll holds the pieces from one of %d to the next", len(c.Breaks))
	case c.Capacities == nil && c.Weights == nil && c.ByOrder > 0:
		return fmt.Sprintf("the cheapest way to cut in order costs %d", c.ByOrder)
	case c.Capacities != nil:
		return fmt.Sprintf("weights prove a cost of %d", c.ByCost)
	case c.ByWeights == 0:
		return "nothing to cut"
	case c.Exhausted > 0:
		return fmt.Sprintf("weights prove %d, a complete search excludes %d", c.ByWeights, c.ByWeights+c.Exhausted-1)
	default:
		return fmt.Sprintf("weights prove %d", c.ByWeights)
	}
}

// bound is the best certificate so far, by kind.
type bound struct {
	demand    []int32 // what is to be cut
	weight    []int64
	capacity  int64
	lane      int
	byWeights int
	near      float64 // the quotient that was rounded up, to choose between certificates
	exhausted int
	sharp     bool // nothing comes nearer to proving more
}

func (b *bound) reset(demand []int32) {
	*b = bound{demand: append(b.demand[:0], demand...), weight: grow(b.weight, len(demand))}
	clear(b.weight)
}

func (b *bound) rolls() int { return b.byWeights + b.exhausted }

// offer keeps the weights in w.weight as certificate if they prove more, or as
// much and come nearer to one more.
func (w *work) offer(capacity int64, lane int) {
	if capacity <= 0 {
		return
	}
	sum := dot(w.lower.demand, w.weight)
	n, near := ceilDiv(sum, capacity), float64(sum)/float64(capacity)
	if n < w.lower.byWeights || n == w.lower.byWeights && near <= w.lower.near {
		return
	}
	w.lower.byWeights, w.lower.near = n, near
	w.lower.capacity, w.lower.lane = capacity, lane
	copy(w.lower.weight, w.weight)
}

// certificate writes the best bound out per piece.
func (w *work) certificate() Certificate {
	c := Certificate{
		Weights: make([]int64, len(w.p.kindOf)), Capacity: w.lower.capacity,
		ByWeights: w.lower.byWeights, Exhausted: w.lower.exhausted,
	}
	for i, j := range w.p.kindOf {
		c.Weights[i] = w.lower.weight[j]
	}
	if w.lower.lane < 0 {
		c.AllStarts = true
	} else {
		c.At = w.startOf(w.lower.lane)
	}
	return c
}

// certificateMixed writes the best bound for several kinds of roll out.
func (w *work) certificateMixed() Certificate {
	x := &w.mixed
	c := Certificate{Weights: make([]int64, len(w.p.kindOf)), Capacities: slices.Clone(x.capacity[:len(x.cost)]), AllStarts: x.every}
	for i, j := range w.p.kindOf {
		c.Weights[i] = x.weight[j]
	}
	for b := range x.cost {
		w.choose(b)
		c.Starts = append(c.Starts, w.startOf(x.lane[b]))
	}
	w.choose(0)
	x.rank(x.capacity)
	c.ByCost = x.costOf(x.capacity, dot(w.p.demand, x.weight))
	return c
}

// startOf is the phase at the beginning of a roll by exact lane d.
func (w *work) startOf(d int) measure.Length {
	if w.n.known {
		return w.p.stock[w.at].startPhase(w.p.spec.Repeat)
	}
	return measure.Length(mod(w.n.exact[d].begin, w.p.repeat))
}

// dot returns the sum of the products. As [grow] it is not inlined.
//
//go:noinline
func dot(count []int32, weight []int64) int64 {
	sum := int64(0)
	for j, n := range count {
		sum += int64(n) * weight[j]
	}
	return sum
}

func ceilDiv(a, b int64) int { return int((a + b - 1) / b) }

// check recomputes the bound from the weights: the capacity by a pass over
// freshly laid out positions, the quotient in 128 bits.
func (c Certificate) check(p *Problem) error {
	weight := make([]int64, len(p.kinds))
	var hi, lo uint64
	for i, x := range c.Weights {
		j := p.kindOf[i]
		if x < 0 || (weight[j] != 0 && weight[j] != x) {
			return fmt.Errorf("piece %d: weight %d is negative or differs among equal pieces", i, x)
		}
		weight[j] = x
		var carry uint64
		lo, carry = bits.Add64(lo, uint64(x), 0)
		hi += carry
	}
	if c.Capacity <= 0 || hi >= uint64(c.Capacity) {
		return fmt.Errorf("capacity %d is not usable", c.Capacity)
	}
	q, r := bits.Div64(hi, lo, uint64(c.Capacity))
	if r > 0 {
		q++
	}
	if q != uint64(c.ByWeights) {
		return fmt.Errorf("weights prove %d rolls, not %d", q, c.ByWeights)
	}
	if c.AllStarts {
		return c.checkListed(p, weight)
	}
	return c.checkCapacity(p, 0, c.Capacity, c.At, weight)
}

// checkCapacity weighs the rolls of one kind anew.
func (c Certificate) checkCapacity(p *Problem, stock int, capacity int64, at measure.Length, weight []int64) error {
	n := newNetwork(p, &p.stock[stock])
	gain := make([]int64, len(n.bound.at))
	for _, l := range n.exact {
		if !n.known && measure.Length(mod(l.begin, p.repeat)) != at {
			continue
		}
		if most := n.bound.pass(l.boundFrom, l.boundLast, weight, gain); most <= capacity {
			return nil
		}
	}
	return fmt.Errorf("a roll that begins at phase %d can weigh more than %d", at, capacity)
}

// checkMixed recomputes the bound on the cost.
func (c Certificate) checkMixed(p *Problem) error {
	weight := make([]int64, len(p.kinds))
	for i, x := range c.Weights {
		if x < 0 {
			return fmt.Errorf("piece %d: weight %d is negative", i, x)
		}
		weight[p.kindOf[i]] = x
	}
	if len(c.Capacities) != len(p.stock) || len(c.Starts) != len(p.stock) {
		return fmt.Errorf("%d capacities for %d kinds of roll", len(c.Capacities), len(p.stock))
	}
	for b, capacity := range c.Capacities {
		err := c.checkCapacity(p, b, capacity, c.Starts[b], weight)
		if err != nil && c.AllStarts && !p.nets[b].known {
			err = c.checkAbove(p, b, capacity, weight)
		}
		if err != nil {
			return err
		}
	}
	var x mixed
	x.price(p)
	load := append(slices.Clone(c.Capacities), slices.Max(weight))
	x.rank(load)
	if cost := x.costOf(load, dot(p.demand, weight)); cost != c.ByCost {
		return fmt.Errorf("weights prove a cost of %d, not %d", cost, c.ByCost)
	}
	return nil
}

var (
	errTooMany  = errors.New("too many sets to check a capacity for all starts")
	errTooHeavy = errors.New("a roll that serves all starts can weigh more than the capacity")
)

// checkAbove looks anew for sets good for all starts of one kind of roll that
// weigh more than the capacity.
func (c Certificate) checkAbove(p *Problem, stock int, capacity int64, weight []int64) error {
	w := newWork(p, DefaultSteps)
	defer w.free()
	w.choose(stock)
	copy(w.weight, weight)
	return w.checkPriced(capacity)
}

// checkListed lists the sets good for all starts anew and weighs them.
func (c Certificate) checkListed(p *Problem, weight []int64) error {
	w := newWork(p, DefaultSteps)
	defer w.free()
	if !w.catalogue() {
		w.steps = 0
		copy(w.weight, weight)
		return w.checkPriced(c.Capacity)
	}
	copy(w.weight, weight)
	if _, most := w.weigh(); most > c.Capacity {
		return fmt.Errorf("a roll that serves all starts can weigh %d, more than %d", most, c.Capacity)
	}
	return nil
}
