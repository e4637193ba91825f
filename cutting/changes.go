package cutting

import (
	"bytes"
	"slices"
)

// Few changes of roll.
//
// Whoever hangs the pieces in their order fetches another roll whenever the
// next piece is not on the roll at hand:
//
//	pieces   0 1 2 | 3 4 5 | 6 7 | 8 9 10
//	roll       A       B      A      C          3 changes, one return (to A)
//
// K rolls mean K-1 changes at least, and one more for every return to a roll.
// So the search asks for no return, then for one, two … and what has failed is
// excluded. A stretch on a roll that is not returned to may always take the
// next piece too if it fits, so its length is not in question; only rolls to
// be returned to are left at every length. What is left must not weigh more
// than the rolls can still carry, by the weights of the certificate; and what
// lies ahead depends only on the pieces hung, the number of rolls begun and
// the contents of those to be returned to, so that failures are remembered.
type hanging struct {
	priced  pricedHanging       // see hangbranch.go
	prices  []int64             // that bound the changes, see hangproof.go
	keep    int64               // what the short roll may use in that bound; 0 if there is none
	failed  map[string]struct{} // see state
	keys    [][]byte
	key     []byte
	sorted  []int16
	rest    []int64   // weight of the pieces from each number on
	sets    [][]int16 // pieces on each roll
	load    []int64   // their weight
	open    []bool    // to be returned to
	rollOf  []int32   // of the search
	best    []int32   // of the plan
	rolls   int
	returns int

	// One roll may have to keep a left-over, see goalorder.go.
	limit  int64 // what it may use; 0 if there is none
	short  int   // its number, -1 until it is begun
	most   int64 // it can carry
	unsure bool  // a set had too many sub-multisets to say whether it fits
}

// changeSteps is what the search for few changes may spend.
const (
	changeSteps  = 300_000
	briefChanges = 1_000 // at first
)

// fewestChanges rearranges the best plan so that hanging in the order of the
// pieces changes rolls as seldom as possible. The result is in w.hang.best;
// it returns the changes, and a number that no plan undercuts.
func (w *work) fewestChanges() (changes, bound int64) {
	h := &w.hang
	pl := w.place(false)
	h.best = append(h.best[:0], pl.rollOf...)
	h.rollOf = grow(h.rollOf, len(h.best))
	changes = countChanges(h.best)
	bound = int64(w.best.rolls() - 1)
	if w.n.coarse {
		return changes, bound
	}
	return w.fewerChanges(changes, bound, 0)
}

// fewerChanges looks for fewer changes than those of the plan in w.hang.best,
// bound being known to be needed, with one roll that uses no more than limit
// unless that is 0. It returns the changes of the plan left in w.hang.best, and
// the bound raised as far as it can be: at first by returns, which is done at
// once where few are needed, then piece by piece.
func (w *work) fewerChanges(changes, bound, limit int64) (have, least int64) {
	h := &w.hang
	h.keep, h.prices = limit, h.prices[:0]
	if changes == bound {
		return changes, bound
	}
	w.sharpen()
	changes, bound = w.countReturns(changes, bound, limit, briefChanges)
	if changes == bound {
		return changes, bound
	}
	stretches, fewest := w.hangByPrices(w.best.rolls(), int(changes)+1, limit)
	h.prices = append(h.prices, h.priced.root...)
	changes, bound = int64(stretches)-1, max(bound, int64(fewest)-1)
	return w.countReturns(changes, bound, limit, changeSteps)
}

// countReturns raises the bound return by return, within so many steps, until
// a plan is found or no fewer changes are possible.
func (w *work) countReturns(changes, bound, limit int64, steps int) (have, least int64) {
	h, until := &w.hang, w.limit
	w.limit = min(until, w.steps+steps)
	defer func() { w.limit = until }()
	w.prepareHanging()
	h.limit = limit
	for ; bound < changes; bound++ {
		h.returns = int(bound) + 1 - h.rolls
		switch w.hangAll() {
		case undecided:
			return changes, bound
		case possible:
			w.adoptHanging()
			return bound, bound
		}
	}
	return changes, bound
}

func countChanges(rollOf []int32) int64 {
	n := int64(0)
	for i := 1; i < len(rollOf); i++ {
		if rollOf[i] != rollOf[i-1] {
			n++
		}
	}
	return n
}

func (w *work) prepareHanging() {
	h, n := &w.hang, len(w.p.kindOf)
	h.limit, h.short, h.unsure = 0, -1, false
	h.rest, h.rollOf = grow(h.rest, n+1), grow(h.rollOf, n)
	h.rest[n] = 0
	for i := n - 1; i >= 0; i-- {
		h.rest[i] = h.rest[i+1] + w.lower.weight[w.p.kindOf[i]]
	}
	h.rolls = w.best.rolls()
	if h.failed == nil {
		h.failed = make(map[string]struct{})
	}
	for len(h.sets) < h.rolls {
		h.sets = append(h.sets, nil)
	}
	h.load, h.open = h.load[:0], h.open[:0]
}

// hangFrom tries to hang the pieces from number i on, the one before being on
// roll prev, when the rolls can still carry so much.
func (w *work) hangFrom(i, prev int, carry int64) verdict {
	h := &w.hang
	if i == len(w.p.kindOf) {
		return possible
	}
	if h.rest[i] > carry {
		return impossible
	}
	if w.steps++; w.spent() {
		return undecided
	}
	if _, known := h.failed[string(h.state(i, prev))]; known {
		return impossible
	}
	for r := range h.load {
		if r == prev || !h.open[r] {
			continue
		}
		h.returns--
		v := w.stretch(i, r, carry)
		h.returns++
		if v != impossible {
			return v
		}
	}
	if v := w.beginRoll(i, carry); v != impossible {
		return v
	}
	if len(h.failed) < 4*maxFails {
		h.failed[string(h.state(i, prev))] = struct{}{}
	}
	return impossible
}

// beginRoll tries to hang the pieces from number i on from another roll: an
// ordinary one, or the one that keeps a left-over.
func (w *work) beginRoll(i int, carry int64) verdict {
	h := &w.hang
	r := len(h.load)
	if r == h.rolls {
		return impossible
	}
	h.load, h.open, h.sets[r] = append(h.load, 0), append(h.open, false), h.sets[r][:0]
	needed := h.limit > 0 && h.short < 0
	if !needed || r < h.rolls-1 {
		if v := w.stretch(i, r, carry); v != impossible {
			return v
		}
	}
	if needed {
		h.short = r
		if v := w.stretch(i, r, carry); v != impossible {
			return v
		}
		h.short = -1
	}
	h.load, h.open = h.load[:r], h.open[:r]
	return impossible
}

// fitsOn says whether the pieces on roll r fit it.
func (w *work) fitsOn(r int) bool {
	h := &w.hang
	seq := h.sets[r]
	ok := len(seq) == 1 || w.fits(seq)
	if ok && r == h.short {
		ok = w.use(seq) <= h.limit
	}
	if !ok && !w.n.anyOrder() && len(seq) > 1 {
		h.unsure = h.unsure || !w.sort.load(seq)
	}
	return ok
}

// carries is the most roll r can carry.
func (w *work) carries(r int) int64 {
	if r == w.hang.short {
		return w.hang.most
	}
	return w.lower.capacity
}

// state writes down all that what lies ahead depends on: the next piece, the
// rolls begun, the returns left, and the sorted kinds on each roll to be
// returned to, the one at hand first, the others sorted.
func (h *hanging) state(i, prev int) []byte {
	h.key = append(h.key[:0], byte(i), byte(i>>8), byte(i>>16), byte(len(h.load)), byte(len(h.load)>>8), byte(h.returns), 0)
	if h.short >= 0 {
		h.key[6] = 1
	}
	n := 0
	for r, open := range h.open {
		if !open {
			continue
		}
		if n == len(h.keys) {
			h.keys = append(h.keys, nil)
		}
		h.sorted = append(h.sorted[:0], h.sets[r]...)
		slices.Sort(h.sorted)
		key := append(h.keys[n][:0], 1)
		if r == prev {
			key[0] = 0
		}
		if r == h.short {
			key[0] += 2
		}
		for _, j := range h.sorted {
			key = append(key, byte(j), byte(j>>8))
		}
		h.keys[n] = key
		n++
	}
	slices.SortFunc(h.keys[:n], bytes.Compare)
	for _, k := range h.keys[:n] {
		h.key = append(h.key, byte(len(k)), byte(len(k)>>8))
		h.key = append(h.key, k...)
	}
	return h.key
}

// stretch hangs pieces from number i on from roll r: as many as fit if the
// roll is then done with, or fewer too if it is to be returned to.
func (w *work) stretch(i, r int, carry int64) verdict {
	h := &w.hang
	before, load := len(h.sets[r]), h.load[r]
	end := i
	for end < len(w.p.kindOf) {
		h.sets[r] = append(h.sets[r], int16(w.p.kindOf[end]))
		if w.steps++; !w.fitsOn(r) {
			h.sets[r] = h.sets[r][:len(h.sets[r])-1]
			break
		}
		h.rollOf[end] = int32(r)
		end++
	}
	was := h.open[r]
	v := impossible
	if end > i {
		h.load[r] = load + h.rest[i] - h.rest[end]
		h.open[r] = false
		if h.opened() <= h.returns {
			v = w.hangFrom(end, r, carry-(h.rest[i]-h.rest[end])-(w.carries(r)-h.load[r]))
		}
	}
	h.open[r] = true
	for v == impossible && end > i && h.opened() <= h.returns {
		h.load[r] = load + h.rest[i] - h.rest[end]
		h.sets[r] = h.sets[r][:before+end-i]
		v = w.hangFrom(end, r, carry-(h.rest[i]-h.rest[end]))
		end--
		h.restore(i, end, r)
	}
	if v == impossible {
		h.open[r], h.load[r], h.sets[r] = was, load, h.sets[r][:before]
	}
	return v
}

// restore notes again that the pieces [i, end) are on roll r.
func (h *hanging) restore(i, end, r int) {
	for ; i < end; i++ {
		h.rollOf[i] = int32(r)
	}
}

// opened counts the rolls to be returned to.
func (h *hanging) opened() int {
	n := 0
	for _, o := range h.open {
		if o {
			n++
		}
	}
	return n
}

// adoptHanging makes the plan found by the search the best.
func (w *work) adoptHanging() {
	w.trial.reset()
	for r := range w.hang.load {
		w.trial.add(w.hang.sets[r])
	}
	w.best.copyFrom(&w.trial)
	w.hang.best = append(w.hang.best[:0], w.hang.rollOf...)
}

// placeHanging is place for a plan made by fewestChanges.
func (w *work) placeHanging() *placing {
	p := &placing{rollOf: slices.Clone(w.hang.best)}
	p.sortRolls(w.best.stock)
	return p
}
