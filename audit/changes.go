package audit

import (
	"math/bits"

	"firstdrop/cutting"
)

// How few changes of roll can there be? The certificate names a price for each
// piece and one for each stretch that a roll is hung in one go, and claims what
// a roll can earn at most. That is found here by going through the pieces from
// the last to the first, with every set that a roll can hold before each:
//
//	held before piece i    left to another roll     taken
//	{a}, fetched anew      {a} before i+1           {a c} before i+1, at hand; price less stretch
//	{a}, at hand           {a} before i+1           {a c} before i+1, at hand; price
//
// K rolls that carry no more than the capacity must each carry what the others
// cannot; so a roll that ends up lighter does not count.

// mostEarning bounds pieces times sets.
const mostEarning = 1 << 25

// never is what a roll earns that cannot be.
const never = -1 << 61

// judgeChanges: the changes that prices prove follow from them, and no roll can
// earn more than they say.
func (r *rolls) judgeChanges() {
	c := r.s.Certificate.Changes
	if c == nil {
		return
	}
	if r.mixed() || r.spec.InOrder {
		r.note(Certificate, Place{}, "proof of the changes", "none for several kinds of roll, or cutting in order", "one")
		return
	}
	goal, left := r.changesGoal()
	if !r.soundChanges(c, goal, left) {
		return
	}
	r.same(Bound, Place{}, "changes that prices prove", int(r.changesBy(c)), int(c.Changes))
	if c.Changes > goal.Bound {
		r.note(Bound, Place{}, "changes that prices prove", "no more than their bound", int(c.Changes))
	}
	earned, short, whole := r.earned(c, left)
	if !whole {
		return // on trust, as Trusted says
	}
	if earned > c.Earned {
		r.note(Certificate, Place{}, "most that a roll earns", int(c.Earned), int(earned))
	}
	if c.Short && short > c.ShortEarned {
		r.note(Certificate, Place{}, "most that the roll with the left-over earns", int(c.ShortEarned), int(short))
	}
}

// changesGoal returns what is told of the changes, and the left-over that is
// wanted more; nil if nothing is, and -1 if none.
func (r *rolls) changesGoal() (goal *cutting.Result, left int64) {
	left = -1
	for i := range r.s.Goals {
		switch g := &r.s.Goals[i]; g.Goal {
		case cutting.LongestLeftover:
			left = g.Value
		case cutting.FewestChanges:
			return g, left
		}
	}
	return nil, left
}

// soundChanges reports whether the proof is about this plan, and in numbers
// that can be reckoned with.
func (r *rolls) soundChanges(c *cutting.ChangesProof, goal *cutting.Result, left int64) bool {
	if goal == nil {
		r.note(Certificate, Place{}, "proof of the changes", "none, as they are no goal", "one")
		return false
	}
	ok := len(r.s.Certificate.Weights) == len(r.spec.Pieces) &&
		r.same(Certificate, Place{}, "number of prices", len(r.spec.Pieces), len(c.Prices)) &&
		r.same(Certificate, Place{}, "proof with a left-over wanted more", left >= 0, c.Short)
	limit := most / int64(len(r.spec.Pieces)+1)
	for i, p := range c.Prices {
		if p < 0 || p > limit {
			r.note(Certificate, Place{Piece: i + 1}, "price", "0 or more, within reason", int(p))
			ok = false
		}
	}
	for _, x := range []int64{c.Stretch - 1, c.Earned, c.ShortEarned} {
		if x < 0 || x >= limit {
			r.note(Certificate, Place{}, "price of a stretch, or what a roll earns", "within reason", int(x))
			ok = false
		}
	}
	return ok
}

// changesBy is the number of changes that the prices prove.
func (r *rolls) changesBy(c *cutting.ChangesProof) int64 {
	sum, many := int64(0), int64(len(r.s.Rolls))
	for _, p := range c.Prices {
		sum += p
	}
	if c.Short {
		many--
		sum -= c.ShortEarned
	}
	if hi, lo := bits.Mul64(uint64(many), uint64(c.Earned)); hi > 0 || sum < 0 || lo >= uint64(sum) {
		return -1
	}
	sum -= many * c.Earned
	return (sum+c.Stretch-1)/c.Stretch - 1
}

// earned returns the most that a roll earns, and the one with the left-over. It
// is not whole where there are too many sets to tell.
func (r *rolls) earned(c *cutting.ChangesProof, left int64) (earned, short int64, whole bool) {
	kinds := r.kinds()
	h := newHeld(r, kinds)
	if h == nil || len(r.spec.Pieces) > mostEarning/h.size() {
		return 0, 0, false
	}
	need := r.leastLoad()
	if !c.Short {
		return r.mostEarned(c, h, func(s int) bool { return h.weight[s] >= need }), 0, true
	}
	is, carried := make([]bool, h.size()), int64(0)
	for s := range is {
		if is[s] = h.weight[s] >= need && h.takes(s) <= h.room-left; is[s] {
			carried = max(carried, h.weight[s])
		}
	}
	short = r.mostEarned(c, h, func(s int) bool { return is[s] })
	need += r.s.Certificate.Capacity - min(carried, r.s.Certificate.Capacity) // which the others must
	return r.mostEarned(c, h, func(s int) bool { return h.weight[s] >= need }), short, true
}

// leastLoad is what each roll carries at least, if all carry no more than the
// capacity.
func (r *rolls) leastLoad() int64 {
	c, others := &r.s.Certificate, int64(len(r.s.Rolls)-1)
	if others > 0 && c.Capacity > most/others {
		return -most
	}
	least := -others * c.Capacity
	for _, w := range c.Weights {
		least = min(least+w, most)
	}
	return least
}

// mostEarned is the most that a roll earns that ends with a set that counts.
func (r *rolls) mostEarned(c *cutting.ChangesProof, h *held, counts func(set int) bool) int64 {
	anew, atHand := make([]int64, h.size()), make([]int64, h.size())
	for s := range anew {
		if !counts(s) {
			anew[s] = never
		}
		atHand[s] = anew[s]
	}
	for i := len(r.spec.Pieces) - 1; i >= 0; i-- {
		k := h.of[i]
		for s := range anew {
			left := anew[s]
			atHand[s] = left
			if to := h.add(int32(s), k); to >= 0 {
				taken := atHand[to] + c.Prices[i] // of the piece after: to is above s
				anew[s], atHand[s] = max(left, taken-c.Stretch), max(left, taken)
			}
		}
	}
	return max(anew[0], 0)
}

// trustedChanges names a bound on the changes that is not proven here.
func (r *rolls) trustedChanges() []string {
	goal, left := r.changesGoal()
	if goal == nil || goal.Bound <= r.fewestStretches()-1 {
		return nil
	}
	known, c := int64(len(r.s.Rolls)-1), r.s.Certificate.Changes
	switch {
	case len(r.s.Missing) > 0 || c == nil && r.changesFirst():
		known = 0
	case r.spec.InOrder && r.mixed():
		known = r.fewestRolls() - 1
	case r.spec.InOrder:
	case r.mixed():
		known = 0
	case c != nil && r.soundChanges(c, goal, left):
		if _, _, whole := r.earned(c, left); whole {
			known = max(known, c.Changes)
		}
	}
	if goal.Bound <= known {
		return nil
	}
	return []string{"a search finds no fewer than " + figure(int(goal.Bound)) + " changes of roll"}
}

// trustedRolls names a bound on the rolls, or their cost, that is said to hold for
// plans with as few changes as this one, beyond the bound for any plan.
func (r *rolls) trustedRolls() []string {
	if !r.changesFirst() {
		return nil
	}
	if bound := r.s.Goals[1].Bound; bound > r.s.CostBound {
		return []string{"a search finds nothing below a cost of " + figure(int(bound)) + " with so few changes of roll"}
	}
	return nil
}

// changesFirst reports whether changes may have been wanted more than rolls.
func (r *rolls) changesFirst() bool {
	g := r.s.Goals
	return len(g) > 1 && g[0].Goal == cutting.FewestChanges && g[1].Goal == cutting.FewestRolls
}
