package cutting

import (
	"bytes"
	"encoding/binary"
	"slices"
)

// Few changes with several kinds of roll.
//
// The search of changes.go, with money and rolls used in place of a number of
// rolls: the pieces are hung in their order, stretch by stretch,
//
//	pieces   0 1 2 | 3 4 5 | 6 7 | 8 9 10       4 stretches
//	roll       A       B      A      C
//
// and each stretch goes on a roll to be returned to or on another one that the
// money buys. A branch ends when the stretches allowed do not reach the last
// piece even if each is the longest that any roll holds, or when what is left
// weighs more than money, open packs and rolls to be returned to can carry.
//
// A roll done with takes the next piece if it fits: that piece's own roll only
// gains by it. Not so where a roll still has to be found that keeps a
// left-over, for it might lose its only piece; then every end is tried.
type hungPlan struct {
	failed map[string]struct{}
	key    []byte
	keys   [][]byte
	sorted []int16

	rolls  []hungRoll
	rest   []int64 // weight of the pieces from each number on
	least  []int32 // stretches needed from each piece on
	rollOf []int32 // of the search
	best   []int32 // of the plan
	keep   int64
	marked int  // roll that keeps the left-over; -1 until there is one
	unsure bool // a set had too many sub-multisets to say whether it fits
}

type hungRoll struct {
	stock int
	set   []int16
	load  int64
	open  bool // to be returned to
}

// beginHung sets up what does not depend on what is held, and puts the best
// plan's pieces on its rolls.
func (w *work) beginHung() {
	h, n := &w.hung, len(w.p.kindOf)
	if h.failed == nil {
		h.failed = map[string]struct{}{}
	}
	h.unsure = false
	h.best = append(h.best[:0], w.place(true).rollOf...)
	h.renumber(w)
	h.rollOf, h.rest, h.least = grow(h.rollOf, n), grow(h.rest, n+1), grow(h.least, n+1)
	h.rest[n], h.least[n] = 0, 0
	var set []int16
	for i := n - 1; i >= 0; i-- {
		h.rest[i] = h.rest[i+1] + w.mixed.weight[w.p.kindOf[i]]
		far := i
		for b := range w.p.stock {
			w.choose(b)
			set = set[:0]
			for end := i; end < n; end++ {
				if set = append(set, int16(w.p.kindOf[end])); !w.fitsSure(set) {
					break
				}
				far = max(far, end+1)
			}
		}
		h.least[i] = h.least[max(far, i+1)] + 1
	}
}

// renumber makes the best plan's rolls those of the placing in h.best, which
// are numbered by their lowest piece.
func (h *hungPlan) renumber(w *work) {
	stock := w.place(true).stock
	rolls := make([][]int16, len(stock))
	for i, r := range h.best {
		rolls[r] = append(rolls[r], int16(w.p.kindOf[i]))
	}
	w.trial.reset()
	for r, set := range rolls {
		w.trial.addFrom(int(stock[r]), set)
	}
	w.best.copyFrom(&w.trial)
}

// fitsSure is fits for the kind of roll chosen, and notes where it cannot say.
func (w *work) fitsSure(seq []int16) bool {
	if w.fits(seq) {
		return true
	}
	if !w.n.anyOrder() && !w.sort.load(seq) {
		w.hung.unsure = true
	}
	return false
}

// hangAllMixed searches from the beginning for a plan under what is held.
func (w *work) hangAllMixed(now held) verdict {
	h := &w.hung
	clear(h.failed)
	h.rolls, h.keep, h.marked = h.rolls[:0], now.keep, -1
	w.mixed.leaveAll()
	v := w.hangMixed(0, -1, now.stretches, now.money)
	if v == impossible && h.unsure {
		return undecided
	}
	return v
}

// hangMixed tries to hang the pieces from number i on, the one before being on
// roll prev, in so many stretches and for the money.
func (w *work) hangMixed(i, prev, stretches int, money int64) verdict {
	h, x := &w.hung, &w.mixed
	if i == len(w.p.kindOf) {
		if h.keep > 0 && h.marked < 0 {
			return impossible
		}
		return possible
	}
	if int(h.least[i]) > stretches || h.rest[i] > x.carried(money, x.left)+h.carry(x) {
		return impossible
	}
	if w.steps++; w.spent() {
		return undecided
	}
	if _, known := h.failed[string(h.state(x, i, prev, stretches, money))]; known {
		return impossible
	}
	for r := range h.rolls {
		if r == prev || !h.rolls[r].open {
			continue
		}
		if v := w.stretchMixed(i, r, stretches-1, money); v != impossible {
			return v
		}
	}
	for b := range x.paid {
		if v := w.beginMixedRoll(b, i, stretches-1, money); v != impossible {
			return v
		}
	}
	if len(h.failed) < 4*maxFails {
		h.failed[string(h.state(x, i, prev, stretches, money))] = struct{}{}
	}
	return impossible
}

// begin adds a roll of kind b.
func (h *hungPlan) begin(b int) {
	if n := len(h.rolls); n < cap(h.rolls) {
		h.rolls = h.rolls[:n+1]
		h.rolls[n] = hungRoll{stock: b, set: h.rolls[n].set[:0]}
		return
	}
	h.rolls = append(h.rolls, hungRoll{stock: b})
}

// beginMixedRoll tries to hang the pieces from number i on from another roll of
// kind b: an ordinary one, or the one that keeps the left-over.
func (w *work) beginMixedRoll(b, i, stretches int, money int64) verdict {
	h, x := &w.hung, &w.mixed
	price := x.priceNow(b)
	if price > money || x.row[b] >= 0 && x.left[x.row[b]] == 0 {
		return impossible
	}
	x.spend(b, 1)
	r := len(h.rolls)
	h.begin(b)
	v := w.stretchMixed(i, r, stretches, money-price)
	if v == impossible && h.keep > 0 && h.marked < 0 {
		h.marked = r
		if v = w.stretchMixed(i, r, stretches, money-price); v == impossible {
			h.marked = -1
		}
	}
	if v == impossible {
		h.rolls = h.rolls[:r]
		x.spend(b, -1)
	}
	return v
}

// carry is a weight that the rolls to be returned to cannot exceed.
func (h *hungPlan) carry(x *mixed) int64 {
	sum := int64(0)
	for i := range h.rolls {
		if r := &h.rolls[i]; r.open {
			sum += x.capacity[r.stock] - r.load
		}
	}
	return sum
}

// opened counts the rolls to be returned to.
func (h *hungPlan) opened() int {
	n := 0
	for i := range h.rolls {
		if h.rolls[i].open {
			n++
		}
	}
	return n
}

// fitsHung says whether the pieces on roll r fit it.
func (w *work) fitsHung(r int) bool {
	h := &w.hung
	roll := &h.rolls[r]
	w.choose(roll.stock)
	return w.fitsSure(roll.set) && (r != h.marked || w.leftOver(roll.stock, roll.set) >= h.keep)
}

// stretchMixed hangs pieces from number i on from roll r, and goes on with so
// many stretches: as many as fit if the roll is then done with, or fewer too if
// it is to be returned to or every end has to be tried.
func (w *work) stretchMixed(i, r, stretches int, money int64) verdict {
	h := &w.hung
	before, load, was := len(h.rolls[r].set), h.rolls[r].load, h.rolls[r].open
	end := i
	for end < len(w.p.kindOf) {
		h.rolls[r].set = append(h.rolls[r].set, int16(w.p.kindOf[end]))
		if w.steps++; !w.fitsHung(r) {
			break
		}
		h.rollOf[end] = int32(r)
		end++
	}
	longest := end
	for ; end > i; end-- {
		h.rolls[r].set = h.rolls[r].set[:before+end-i]
		h.rolls[r].load = load + h.rest[i] - h.rest[end]
		for _, open := range [2]bool{false, true} {
			h.rolls[r].open = open
			if h.opened() > stretches || !open && end < longest && (h.keep == 0 || h.marked >= 0) {
				continue
			}
			if v := w.hangMixed(end, r, stretches, money); v != impossible {
				return v
			}
		}
	}
	h.rolls[r].set, h.rolls[r].load, h.rolls[r].open = h.rolls[r].set[:before], load, was
	return impossible
}

// state writes down all that what lies ahead depends on.
func (h *hungPlan) state(x *mixed, i, prev, stretches int, money int64) []byte {
	key := binary.AppendVarint(h.key[:0], int64(i))
	key = binary.AppendVarint(key, int64(stretches))
	key = binary.AppendVarint(key, money)
	key = binary.AppendVarint(key, int64(min(h.marked, 0)))
	for _, n := range x.left[len(x.weight):] { // rolls, not pieces
		key = binary.AppendVarint(key, int64(n))
	}
	n := 0
	for r := range h.rolls {
		if !h.rolls[r].open {
			continue
		}
		if n == len(h.keys) {
			h.keys = append(h.keys, nil)
		}
		h.keys[n] = h.rollKey(h.keys[n][:0], r, r == prev)
		n++
	}
	slices.SortFunc(h.keys[:n], bytes.Compare)
	for _, k := range h.keys[:n] {
		key = append(binary.AppendVarint(key, int64(len(k))), k...)
	}
	h.key = key
	return key
}

// rollKey writes down a roll to be returned to.
func (h *hungPlan) rollKey(key []byte, r int, at bool) []byte {
	roll := &h.rolls[r]
	h.sorted = append(h.sorted[:0], roll.set...)
	slices.Sort(h.sorted)
	flags := int64(roll.stock) << 2
	if at {
		flags |= 1
	}
	if r == h.marked {
		flags |= 2
	}
	key = binary.AppendVarint(key, flags)
	for _, j := range h.sorted {
		key = binary.AppendVarint(key, int64(j))
	}
	return key
}

// adoptHung makes the plan found by the search the best.
func (w *work) adoptHung() {
	h := &w.hung
	w.trial.reset()
	for i := range h.rolls {
		w.trial.addFrom(h.rolls[i].stock, h.rolls[i].set)
	}
	w.best.copyFrom(&w.trial)
	w.mixed.bestCost = w.mixed.costOfPlan(w.best.stock)
	h.best = append(h.best[:0], h.rollOf...)
}
