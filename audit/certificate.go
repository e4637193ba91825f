package audit

import (
	"cmp"
	"math/bits"
	"slices"

	"firstdrop/cutting"
)

// What can a roll carry at most? Cut it piece after piece; where the last cut
// ends, and how much weight is on the roll, is all that counts for what
// follows:
//
//	(end 0, weight 0) ── piece ── (end, weight) ── piece ── …
//
// A state that ends no earlier than another and carries no more is worth
// nothing. So the states worth going on from, taken by their end, have growing
// weights, and each is gone on from once. Pieces may be used more often than
// asked for; that can only make the roll carry more.

// most bounds weights and capacity, so that sums of two cannot overflow.
const most = int64(1) << 60

// mostSteps bounds the states gone on from; a roll of rooms' pieces has some
// thousand.
const mostSteps = 1 << 22

// load is a state: where the last cut ends, counted from the design's origin,
// and the weight on the roll.
type load struct{ end, weight int64 }

// kind is a group of pieces that are the same to cut.
type kind struct {
	length, phase int64 // the length with what is lost at its cut
	weight        int64 // the most that one of them weighs
	count         int
}

// kinds groups the pieces: longest first, then by phase.
func (r *rolls) kinds() []kind {
	all := make([]kind, 0, len(r.spec.Pieces))
	for i := range r.spec.Pieces {
		all = append(all, kind{r.size(i) + r.loss, r.phase(i), r.s.Certificate.Weights[i], 1})
	}
	slices.SortFunc(all, func(a, b kind) int {
		return cmp.Or(cmp.Compare(b.length, a.length), cmp.Compare(a.phase, b.phase))
	})
	groups := all[:0]
	for _, k := range all {
		if n := len(groups); n > 0 && groups[n-1].length == k.length && groups[n-1].phase == k.phase {
			groups[n-1].count++
			groups[n-1].weight = max(groups[n-1].weight, k.weight)
			continue
		}
		groups = append(groups, k)
	}
	return groups
}

// judgeProof: the capacity holds, the bound follows from the weights, and
// proven means that plan and bound agree.
func (r *rolls) judgeProof() {
	if r.mixed() {
		r.judgeCost()
		return
	}
	s := r.s
	r.same(Proven, Place{}, "proven", len(s.Rolls) == s.LowerBound, s.Proven)
	if s.LowerBound > len(s.Rolls) {
		r.note(Bound, Place{}, "lower bound", "no more than the rolls planned, "+figure(len(s.Rolls)), s.LowerBound)
	}
	if len(r.spec.Pieces) == 0 {
		r.same(Bound, Place{}, "lower bound", 0, s.LowerBound)
		return
	}
	t := r.tariff()
	cost, _ := r.paid(&t)
	r.same(Cost, Place{}, "cost", int(cost), int(s.Cost))
	packs := (s.LowerBound + t.size[0] - 1) / t.size[0]
	r.same(Bound, Place{}, "bound on the cost", packs*int(t.pack[0]), int(s.CostBound))
	if r.spec.InOrder {
		r.judgeBreaks()
		return
	}
	c := &s.Certificate
	if !r.soundWeights() || !r.soundCapacity(c.Capacity) {
		return
	}
	if c.Exhausted < 0 {
		r.note(Bound, Place{}, "rolls excluded by search", "0 or more", c.Exhausted)
	}
	r.same(Bound, Place{}, "rolls that the weights prove", r.byWeights(), c.ByWeights)
	r.same(Bound, Place{}, "lower bound", c.ByWeights+c.Exhausted, s.LowerBound)
	kinds := r.kinds()
	heaviest, _ := r.carries(kinds, &r.wares[0], int64(c.At), c.Capacity)
	if heaviest > c.Capacity {
		r.note(Certificate, Place{}, "most weight that a roll can carry", c.Capacity, heaviest)
	}
}

// soundWeights reports whether there is a possible weight for every piece.
func (r *rolls) soundWeights() bool {
	weights := r.s.Certificate.Weights
	if !r.same(Certificate, Place{}, "number of weights", len(r.spec.Pieces), len(weights)) {
		return false
	}
	for i, w := range weights {
		if w < 0 || w > most {
			r.note(Certificate, Place{Piece: i + 1}, "weight", "0 or more, within reason", w)
			return false
		}
	}
	return true
}

func (r *rolls) soundCapacity(c int64) bool {
	if c <= 0 || c > most {
		r.note(Certificate, Place{}, "capacity", "more than 0, within reason", c)
		return false
	}
	return true
}

// byWeights returns the sum of the weights over the capacity, rounded up.
func (r *rolls) byWeights() int {
	var hi, lo uint64
	for _, w := range r.s.Certificate.Weights {
		var carry uint64
		lo, carry = bits.Add64(lo, uint64(w), 0)
		hi += carry
	}
	capacity := uint64(r.s.Certificate.Capacity)
	if hi >= capacity {
		return -1
	}
	q, rest := bits.Div64(hi, lo, capacity)
	if rest > 0 {
		q++
	}
	return int(q)
}

// capacity returns the most weight that a roll of a kind can carry, or some
// weight above the limit if that is not it. A roll of unknown start must serve
// every start, so the start that carries least decides; the one that the
// certificate names is tried first.
func (r *rolls) capacity(kinds []kind, w *ware, at, limit int64) int64 {
	if w.known {
		carried := r.heaviest(kinds, w.from(0), limit)
		if carried > limit && r.repeat == 0 && w.whole() {
			carried = r.knapsack(kinds, w, limit)
		}
		return carried
	}
	starts := []int64{mod(at, r.repeat)}
	for _, k := range kinds {
		if k.weight > 0 {
			starts = append(starts, mod(k.phase+1-r.lead, r.repeat))
		}
	}
	least := most
	for _, s := range starts {
		carried := r.heaviest(kinds, w.from(s), limit)
		if carried <= limit {
			return carried
		}
		least = min(least, carried)
	}
	return least
}

// carries returns the most weight that a roll of a kind can carry, or some weight
// above the limit if that is not it: on one start, or if the certificate says so
// for sets that fit every start. It is not whole where those are too many to
// tell, and the limit is taken on trust, as Trusted says.
func (r *rolls) carries(kinds []kind, w *ware, at, limit int64) (weight int64, whole bool) {
	weight = r.capacity(kinds, w, at, limit)
	if weight <= limit || !r.s.Certificate.AllStarts || w.known {
		return weight, true
	}
	if weight, whole = newSets(r, kinds, w).heaviest(limit); !whole {
		return limit, false
	}
	return weight, true
}

// heaviest returns the most weight that a roll of these tracts can carry; once
// that exceeds the limit, it returns what it has. What takes too many steps to
// prove counts as unproven: the answer is then above every limit.
func (r *rolls) heaviest(kinds []kind, tracts []tract, limit int64) int64 {
	waiting := heap{{0, 0}}
	best := int64(-1)
	for steps := 0; len(waiting) > 0; {
		at := waiting.pop()
		if at.weight <= best {
			continue
		}
		if steps++; steps > mostSteps {
			return most + 1
		}
		best = at.weight
		for i := range kinds {
			k := &kinds[i]
			if k.weight == 0 {
				continue
			}
			end, ok := r.after(tracts, at.end, k)
			if !ok {
				continue
			}
			if at.weight+k.weight > limit {
				return at.weight + k.weight
			}
			waiting.push(load{end, at.weight + k.weight})
		}
	}
	return best
}

// knapsack returns the most weight that a whole roll of free match can carry
// when no piece is used more often than asked for.
func (r *rolls) knapsack(kinds []kind, w *ware, limit int64) int64 {
	states, room := []load{{r.lead, 0}}, w.length+r.loss
	for _, k := range kinds {
		for range k.count {
			n := len(states)
			for i := range n {
				s := states[i]
				if s.end += k.length; s.end <= room {
					s.weight += k.weight
					if s.weight > limit {
						return s.weight
					}
					states = append(states, s)
				}
			}
			if len(states) == n {
				break
			}
			if states = worthy(states); len(states) > mostSteps {
				return most + 1
			}
		}
	}
	return states[len(states)-1].weight
}

// worthy keeps the states of growing weight, by their ends.
func worthy(states []load) []load {
	slices.SortFunc(states, func(a, b load) int {
		return cmp.Or(cmp.Compare(a.end, b.end), cmp.Compare(b.weight, a.weight))
	})
	kept := states[:1]
	for _, s := range states[1:] {
		if s.weight > kept[len(kept)-1].weight {
			kept = append(kept, s)
		}
	}
	return kept
}

// heap hands out states by their ends, the heavier of two first.
type heap []load

func (h heap) before(i, j int) bool {
	return h[i].end < h[j].end || h[i].end == h[j].end && h[i].weight > h[j].weight
}

func (h *heap) push(l load) {
	*h = append(*h, l)
	q := *h
	for i := len(q) - 1; i > 0 && q.before(i, (i-1)/2); i = (i - 1) / 2 {
		q[i], q[(i-1)/2] = q[(i-1)/2], q[i]
	}
}

func (h *heap) pop() load {
	q := *h
	top, last := q[0], len(q)-1
	q[0] = q[last]
	q = q[:last]
	*h = q
	for i := 0; ; {
		c := 2*i + 1
		if c >= last {
			return top
		}
		if c+1 < last && q.before(c+1, c) {
			c++
		}
		if !q.before(c, i) {
			return top
		}
		q[i], q[c] = q[c], q[i]
		i = c
	}
}

// Trusted names the claims of a cutting plan that are not proven here: rolls, a
// cost or changes of roll excluded by a complete search, which leaves no
// certificate, also of rolls for the sake of few changes; a capacity that holds only for the sets that fit every start,
// where they are too many; and the least cost of cutting in order, where there
// are too many ways.
func Trusted(s *cutting.Solution) []string {
	r := newRolls(&book{}, s)
	if r == nil || len(r.spec.Pieces) == 0 {
		return nil
	}
	return slices.Concat(r.trustedBound(), r.trustedChanges(), r.trustedRolls())
}

// trustedBound names what is not proven of the bound on rolls or cost.
func (r *rolls) trustedBound() []string {
	s := r.s
	switch {
	case r.spec.InOrder && s.Certificate.Capacities == nil:
		return r.trustedInOrder()
	case len(r.spec.Pieces) != len(s.Certificate.Weights):
		return nil
	case r.mixed():
		return r.trustedMixed()
	}
	var claims []string
	if s.Certificate.Exhausted > 0 {
		claims = append(claims, "a complete search excludes "+figure(s.LowerBound-1)+" rolls")
	}
	if _, whole := r.carries(r.kinds(), &r.wares[0], int64(s.Certificate.At), s.Certificate.Capacity); !whole {
		claims = append(claims, "no set that fits every start weighs more than "+figure(int(s.Certificate.Capacity)))
	}
	return claims
}

// trustedMixed does so for several kinds of roll.
func (r *rolls) trustedMixed() []string {
	var claims []string
	c := &r.s.Certificate
	if r.s.CostBound > c.ByCost {
		claims = append(claims, "a complete search finds nothing below a cost of "+figure(int(r.s.CostBound)))
	}
	if len(c.Capacities) != len(r.wares) || len(c.Starts) != len(r.wares) {
		return claims
	}
	for k := range r.wares {
		if _, whole := r.carries(r.kinds(), &r.wares[k], int64(c.Starts[k]), c.Capacities[k]); !whole {
			claims = append(claims, "no set that fits every start of kind "+figure(k+1)+" weighs more than "+figure(int(c.Capacities[k])))
		}
	}
	return claims
}

// trustedInOrder names a least cost that is not found again.
func (r *rolls) trustedInOrder() []string {
	if !r.mixed() {
		return nil
	}
	t := r.tariff()
	if _, whole := r.leastInOrder(&t); whole {
		return nil
	}
	return []string{"no way of cutting in order costs less than " + figure(int(r.s.CostBound))}
}
