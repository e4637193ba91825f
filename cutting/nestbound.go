package cutting

import (
	"fmt"
	"math"

	"firstdrop/measure"
)

// A bound for all groupings at once.
//
// Every narrow piece has a weight, as has every full width. The most a roll
// can carry is the longest path over strips of all types, each worth the most
// it can hold (striptypes.go). So weights prove a number of rolls without any
// grouping being named. They come from the linear program of columns.go with a
// row for each kind of full width, of strip chosen already, and of narrow
// piece left; its columns are rolls, written as the rows they serve.
type nestRows struct {
	kind   []int32 // of each row: in the problem of all types, or -1
	narrow []int32 // of each row: the narrow kind, or -1
	demand []int32
	ofKind []int32 // row of each kind, or -1
	ofNar  []int32 // row of each narrow kind, or -1
	filler []int32 // per kind: the type that makes it heavy, or -1 for its own row
	seq    []int16
}

// nestCertificate is the best bound for all groupings so far.
type nestCertificate struct {
	full, narrow []int64 // weights per kind
	capacity     int64
	lane         int
	byWeights    int
	near         float64
}

// maxListedTypes is the number of kinds up to which the sets that serve every
// start are listed.
const maxListedTypes = 60

// rootBound seeks the bound for all groupings and the lane by which the search
// is to bound.
func (x *nesting) rootBound() {
	w := x.w
	x.lanes = nil
	for d := range w.n.exact {
		x.lanes = append(x.lanes, d)
	}
	if len(w.n.safe) > 1 && !w.n.coarse && w.m <= maxListedTypes {
		w.limit = w.steps + maxCatalogue
		if w.listed = w.catalogue(); w.listed {
			x.lanes = []int{listed}
		}
		w.limit = math.MaxInt
	}
	target := int(x.best.Solution.Cost / x.price())
	for _, d := range x.lanes {
		if n := x.raise(d, target, true); n >= target {
			break
		}
	}
	x.lanes = []int{x.cert.lane}
	x.lower = int64(x.cert.byWeights) * x.price()
}

// price is that of a roll of the only kind.
func (x *nesting) price() int64 { return max(x.q.stock[0].Price, 1) }

// hopeless says that no way to go on is better than the best plan.
func (x *nesting) hopeless() bool {
	target := int(x.best.Solution.Cost / x.price())
	return x.raise(x.lanes[0], target, false) >= target
}

// lay lays the rows out for the strips chosen and the pieces left.
func (x *nesting) lay() {
	r := &x.rows
	r.kind, r.narrow, r.demand = r.kind[:0], r.narrow[:0], r.demand[:0]
	r.ofKind, r.ofNar = grow(r.ofKind, x.w.m), grow(r.ofNar, len(x.kinds))
	r.filler = grow(r.filler, x.w.m)
	for j, n := range x.demand {
		r.ofKind[j] = -1
		if n > 0 {
			r.ofKind[j] = int32(len(r.demand))
			r.kind, r.narrow, r.demand = append(r.kind, int32(j)), append(r.narrow, -1), append(r.demand, n)
		}
	}
	for k, n := range x.fill.left {
		r.ofNar[k] = -1
		if n > 0 {
			r.ofNar[k] = int32(len(r.demand))
			r.kind, r.narrow, r.demand = append(r.kind, -1), append(r.narrow, int32(k)), append(r.demand, n)
		}
	}
}

// start makes the rolls that serve a single row the basis.
func (x *nesting) start(d int) bool {
	s, r := &x.w.master, &x.rows
	s.reset(len(r.demand))
	for i, n := range r.demand {
		j := int(r.kind[i])
		if j < 0 {
			j = x.single(int(r.narrow[i]))
		}
		copies := x.w.copies(j, d)
		if copies == 0 {
			return false
		}
		r.seq = r.seq[:0]
		for range copies {
			r.seq = append(r.seq, int16(i))
		}
		s.startColumn(i, s.add(0, r.seq, 1, -1), copies, float64(n))
	}
	return true
}

// single is the kind, in the problem of all types, of the strip for a narrow
// piece alone.
func (x *nesting) single(k int) int {
	n := x.kinds[k].piece
	for i := range x.types {
		if x.types[i].length == n.Length && x.types[i].phase == n.Phase {
			return x.types[i].kind
		}
	}
	return -1 // not reached: every piece fits a roll by itself
}

// raise returns the bound for the strips chosen and the pieces left, by one
// lane. It is over where the bound reaches the target or can reach it no more.
// With keep it keeps the best certificate.
func (x *nesting) raise(d, target int, keep bool) int {
	w, s, r := x.w, &x.w.master, &x.rows
	x.lay()
	if !x.start(d) {
		return 0
	}
	proven := 0
	for range 60*s.m + 200 {
		s.reprice()
		if j := s.surplusWorthwhile(); j >= 0 {
			s.surplusColumn(j)
			if !s.pivot(int32(-1-j), r.demand) {
				break
			}
			continue
		}
		capacity := x.weigh(d)
		proven = max(proven, x.offer(capacity, d, keep))
		if proven >= target || s.settled(r.demand, proven) || !keep && s.settled(r.demand, target-1) {
			break
		}
		x.serve()
		if !s.worthwhile(r.seq) || x.spent() || !s.pivot(s.enter(0, r.seq, 1, -1), r.demand) {
			break
		}
	}
	w.steps++
	return proven
}

// weigh turns the prices into weights, leaves the heaviest roll in w.seq and
// returns a capacity for them.
func (x *nesting) weigh(d int) int64 {
	w, s, r := x.w, &x.w.master, &x.rows
	for k := range x.kinds {
		x.fill.weight[k] = 0
		if at := r.ofNar[k]; at >= 0 {
			x.fill.weight[k] = int64(max(s.price[at], 0) * float64(one))
		}
	}
	for j := range w.weight {
		w.weight[j], r.filler[j] = 0, -1
		if at := r.ofKind[j]; at >= 0 {
			w.weight[j] = int64(max(s.price[at], 0) * float64(one))
		}
	}
	x.fillTypes()
	if d == listed {
		return w.heaviestListed()
	}
	return w.heaviestOn(d)
}

// fillTypes makes each kind as heavy as its strips' best contents.
func (x *nesting) fillTypes() {
	for i := range x.types {
		t := &x.types[i]
		if most := x.fill.heaviest(t); most > x.w.weight[t.kind] {
			x.w.weight[t.kind] = most
			x.rows.filler[t.kind] = int32(i)
		}
	}
}

// serve writes the roll in w.seq as the rows it serves.
func (x *nesting) serve() {
	r := &x.rows
	r.seq = r.seq[:0]
	for _, j := range x.w.seq {
		if i := r.filler[j]; i >= 0 {
			x.fill.heaviest(&x.types[i])
			at := len(r.seq)
			r.seq = x.fill.contents(r.seq)
			for c := at; c < len(r.seq); c++ {
				r.seq[c] = int16(r.ofNar[r.seq[c]])
			}
		} else if at := r.ofKind[j]; at >= 0 {
			r.seq = append(r.seq, int16(at))
		}
	}
}

// offer returns what the weights prove, and keeps them if asked to.
func (x *nesting) offer(capacity int64, d int, keep bool) int {
	if capacity <= 0 {
		return 0
	}
	r, s := &x.rows, &x.w.master
	sum := int64(0)
	for i, n := range r.demand {
		sum += int64(n) * int64(max(s.price[i], 0)*float64(one))
	}
	n, near := ceilDiv(sum, capacity), float64(sum)/float64(capacity)
	c := &x.cert
	if !keep || n < c.byWeights || n == c.byWeights && near <= c.near {
		return n
	}
	*c = nestCertificate{make([]int64, x.w.m), make([]int64, len(x.kinds)), capacity, d, n, near}
	for i := range r.demand {
		y := int64(max(s.price[i], 0) * float64(one))
		if j := r.kind[i]; j >= 0 {
			c.full[j] = y
		} else {
			c.narrow[r.narrow[i]] = y
		}
	}
	return n
}

// certificate writes the bound out per piece.
func (x *nesting) certificate(lower int) Certificate {
	c := Certificate{Capacity: x.cert.capacity, ByWeights: x.cert.byWeights, Exhausted: lower - x.cert.byWeights}
	c.Weights = make([]int64, len(x.spec.Pieces)+len(x.spec.Narrow))
	for i, j := range x.q.kindOf[:len(x.spec.Pieces)] {
		c.Weights[i] = x.cert.full[j]
	}
	for k := range x.kinds {
		for _, i := range x.kinds[k].pieces {
			c.Weights[len(x.spec.Pieces)+i] = x.cert.narrow[k]
		}
	}
	if x.cert.lane == listed {
		c.AllStarts = true
	} else {
		c.At = x.w.startOf(x.cert.lane)
	}
	return c
}

// checkBound weighs the rolls anew: all types of strip laid out afresh, filled
// by the certificate's weights.
func (s *Strips) checkBound() error {
	c := s.Certificate
	if len(s.Spec.Narrow) <= 1 || c.Weights == nil {
		return nil
	}
	x := newNesting(s.Spec, Options{})
	defer x.free()
	if x.q == nil || c.Capacity <= 0 || len(c.Weights) != len(s.Spec.Pieces)+len(s.Spec.Narrow) {
		return fmt.Errorf("the certificate is not usable")
	}
	x.lay()
	clear(x.w.weight)
	total := int64(0)
	for i, y := range c.Weights {
		if y < 0 || y > math.MaxInt64/int64(len(c.Weights)) {
			return fmt.Errorf("weight %d is negative or too large", i)
		}
		total += y
		if i < len(s.Spec.Pieces) {
			j := x.q.kindOf[i]
			x.w.weight[j] = max(x.w.weight[j], y)
		}
	}
	for k := range x.kinds {
		for _, i := range x.kinds[k].pieces {
			x.fill.weight[k] = max(x.fill.weight[k], c.Weights[len(s.Spec.Pieces)+i])
		}
	}
	x.fillTypes()
	if n := ceilDiv(total, c.Capacity); n != c.ByWeights || n+c.Exhausted != s.LowerBound {
		return fmt.Errorf("weights prove %d rolls, not %d", n, c.ByWeights)
	}
	return x.checkCapacity(c)
}

func (x *nesting) checkCapacity(c Certificate) error {
	if c.AllStarts {
		if !x.w.catalogue() {
			return fmt.Errorf("too many sets to check a capacity for all starts")
		}
		if _, most := x.w.weigh(); most > c.Capacity {
			return fmt.Errorf("a roll that serves all starts can weigh %d", most)
		}
		return nil
	}
	for d, l := range x.w.n.exact {
		if !x.w.n.known && measure.Length(mod(l.begin, x.w.p.repeat)) != c.At {
			continue
		}
		if x.w.lanePass(d) <= c.Capacity {
			return nil
		}
	}
	return fmt.Errorf("a roll can weigh more than %d", c.Capacity)
}
