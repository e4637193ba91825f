package cutting

import "fmt"

// ChangesProof is the proof on paper that so many changes of roll must be. Every
// piece has a price, and every stretch that a roll is hung in one go costs
// Stretch. No roll of the plan can earn more than Earned with the pieces that it
// gives, its stretches paid. So if K rolls give all pieces in S stretches,
//
//	sum of Prices - S · Stretch  ≤  K · Earned,
//
// and S is one more than the changes. It speaks of plans with as many rolls as
// there are: where Weights and Capacity hold, each of these carries at least
// the sum of the weights less what the others can, and lighter ones need not be
// looked at. To check it, list the sets of pieces that fit a roll, and go
// through the pieces from the last to the first: what a roll with a set can
// earn yet depends on whether it is the one at hand.
type ChangesProof struct {
	Prices  []int64 // per piece, index as in Spec.Pieces; none negative
	Stretch int64   // above zero
	Earned  int64

	// Short says that one of the rolls has the left-over that was wanted more
	// and reached; ShortEarned, in place of Earned, is what that can earn.
	Short       bool
	ShortEarned int64

	// Changes is ⌈(sum of Prices - what the rolls earn) / Stretch⌉ - 1. A bound
	// beyond it comes from a complete search.
	Changes int64
}

// changesProof proves the bound on the changes, as far as prices can, and
// raises that in the results if they prove more. It returns nil if there is
// nothing to prove, or they prove nothing.
func (w *work) changesProof(results []Result) *ChangesProof {
	h, k := &w.hang, w.best.rolls()
	for i := range results {
		r := &results[i]
		if r.Goal != FewestChanges || i == 0 || r.Bound < int64(k) {
			continue
		}
		if !w.beginPriced(k, int(r.Bound)+2, h.keep) {
			return nil
		}
		if len(h.prices) == 0 {
			w.boundHanging(0)
			h.prices = append(h.prices, h.priced.root...)
		}
		proof := h.priced.proofBy(h.prices)
		if proof == nil || proof.Changes < int64(k) {
			return nil
		}
		if proof.Changes > r.Bound {
			r.Bound = proof.Changes
			r.Proven = r.Value == r.Bound && !w.open()
		}
		return proof
	}
	return nil
}

// proofBy makes a proof of prices; nil if there are none.
func (h *pricedHanging) proofBy(prices []int64) *ChangesProof {
	if len(prices) == 0 {
		return nil
	}
	h.net.price(prices)
	c := &ChangesProof{Prices: append([]int64(nil), prices...), Stretch: priceOfStretch, Earned: h.net.earned(0)}
	if c.Short = h.sets.limited; c.Short {
		c.ShortEarned = h.net.earned(1)
	}
	c.Changes = c.follows(h.k)
	return c
}

// follows is the number of changes that follows for so many rolls.
func (c *ChangesProof) follows(rolls int) int64 {
	sum := int64(0)
	for _, p := range c.Prices {
		sum += p
	}
	if c.Short {
		sum -= c.ShortEarned
		rolls--
	}
	return int64(ceilDiv(max(sum-int64(rolls)*c.Earned, 0), c.Stretch)) - 1
}

// checkChanges makes the proof anew from its prices.
func (s *Solution) checkChanges(of *Result, limit int64) error {
	c, k := s.Certificate.Changes, len(s.Rolls)
	switch {
	case c == nil:
		return nil
	case len(c.Prices) != len(s.Problem.kindOf) || c.Stretch != priceOfStretch || c.Short != (limit > 0):
		return fmt.Errorf("the proof of the changes is about another question")
	case c.Changes > of.Bound || c.Changes != c.follows(k):
		return fmt.Errorf("%d changes do not follow for %d rolls", c.Changes, k)
	}
	w := newWork(s.Problem, DefaultSteps)
	defer w.free()
	for i, j := range s.Problem.kindOf {
		w.lower.weight[j] = s.Certificate.Weights[i]
	}
	w.lower.capacity = s.Certificate.Capacity
	if !w.beginPriced(k, int(of.Bound)+2, limit) {
		return fmt.Errorf("too many sets to check the proof of the changes")
	}
	if again := w.hang.priced.proofBy(c.Prices); again.Earned > c.Earned || again.ShortEarned > c.ShortEarned {
		return fmt.Errorf("a roll can earn %d, a short one %d", again.Earned, again.ShortEarned)
	}
	return nil
}
