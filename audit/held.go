package audit

import (
	"cmp"
	"slices"
)

// held lists what one roll can hold, each set with what becomes of it when one
// more piece is put to it. Every set but the empty one is made of a smaller one
// by a piece of no earlier kind than those it has; so each is met once, and all
// that are smaller are there:
//
//	{} ─a─ {a} ─a─ {a a}
//	    \      \─b─ {a b}       {b} + a: found as {a} + b
//	     ─b─ {b} ─b─ {b b}
//
// A set fits if the earliest end of its best order does, from every start; and
// that comes from the earliest ends of the sets with one piece less. With free
// match only the length that a set takes matters, and sets of one length are one.
type held struct {
	r      *rolls
	kinds  []kind
	of     []int   // kind of each piece
	starts []int64 // phases at which cutting may begin, behind the lead
	room   int64   // from there, with what is lost at the last cut

	next   []int32 // next[s·kinds+k] is set s with one more of kind k, above s; -1 if that does not fit
	end    []int64 // end[s·starts+i] is the earliest end from start i, counted from there
	weight []int64
	has    [][]holding
}

// holding is one kind of a set: how many it has, and the set with one less.
type holding struct {
	kind, count int
	less        int32
}

// mostHeld is how many sets are listed before it is given up.
const mostHeld = 60_000

// newHeld lists the sets of the only kind of roll; nil if they are too many, or
// rolls not whole.
func newHeld(r *rolls, kinds []kind) *held {
	w := &r.wares[0]
	if !w.whole() || len(kinds) == 0 {
		return nil
	}
	h := &held{r: r, kinds: kinds, room: w.length - r.lead + r.loss}
	for i := range r.spec.Pieces {
		h.of = append(h.of, slices.IndexFunc(kinds, func(k kind) bool {
			return k.length == r.size(i)+r.loss && k.phase == r.phase(i)
		}))
	}
	switch {
	case r.repeat == 0:
		return h.lengths()
	case w.known:
		h.starts = []int64{mod(w.start+r.lead, r.repeat)}
	default:
		for i := range kinds {
			h.starts = append(h.starts, mod(kinds[i].phase+1, r.repeat))
		}
		slices.Sort(h.starts)
		h.starts = slices.Compact(h.starts)
	}
	return h.sets()
}

// size is how many sets there are.
func (h *held) size() int { return len(h.weight) }

// add is what becomes of a set by one more of a kind.
func (h *held) add(set int32, k int) int32 { return h.next[int(set)*len(h.kinds)+k] }

// push appends a set, with nothing known yet of what becomes of it.
func (h *held) push(weight int64, has []holding) {
	h.weight, h.has = append(h.weight, weight), append(h.has, has)
	for range h.kinds {
		h.next = append(h.next, -1)
	}
}

// sets lists sets of pieces of a design that repeats.
func (h *held) sets() *held {
	h.push(0, nil)
	h.end = make([]int64, len(h.starts))
	for s := int32(0); int(s) < h.size(); s++ {
		last := 0
		if has := h.has[s]; len(has) > 0 {
			last = has[len(has)-1].kind
		}
		for k := last; k < len(h.kinds); k++ {
			if has, ok := h.larger(s, k); ok && !h.grow(s, k, has) {
				return nil
			}
		}
	}
	return h
}

// larger tells of a set with one more of a kind what it has. It is false if
// there are no more of the kind, or the set less one of another does not fit.
func (h *held) larger(s int32, k int) (has []holding, ok bool) {
	for _, one := range h.has[s] {
		if one.kind == k {
			if one.count == h.kinds[k].count {
				return nil, false
			}
			return h.withMore(s, k, one.count+1)
		}
	}
	return h.withMore(s, k, 1)
}

func (h *held) withMore(s int32, k, count int) (has []holding, ok bool) {
	for _, one := range h.has[s] {
		if one.kind == k {
			continue
		}
		less := h.add(one.less, k)
		if less < 0 {
			return nil, false
		}
		has = append(has, holding{one.kind, one.count, less})
	}
	return append(has, holding{k, count, s}), true
}

// grow lists a set if it fits. It is false if there are too many.
func (h *held) grow(s int32, k int, has []holding) bool {
	n, r := len(h.starts), h.r
	at := len(h.end)
	for i, start := range h.starts {
		end := most
		for _, one := range has {
			x := h.end[int(one.less)*n+i]
			q := &h.kinds[one.kind]
			end = min(end, x+mod(q.phase-start-x, r.repeat)+q.length)
		}
		if end > h.room {
			h.end = h.end[:at]
			return true
		}
		h.end = append(h.end, end)
	}
	to := int32(h.size())
	h.push(h.weight[s]+h.kinds[k].weight, has)
	for _, one := range has {
		h.next[int(one.less)*len(h.kinds)+one.kind] = to
	}
	return h.size() <= mostHeld
}

// lengths lists the lengths that sets take with free match, each with the most
// that such a set weighs.
func (h *held) lengths() *held {
	h.starts = []int64{0}
	all := []load{{}}
	for _, k := range h.of {
		if all = h.withOne(all, &h.kinds[k]); len(all) > mostHeld {
			return nil
		}
	}
	number := make(map[int64]int32, len(all))
	for s, l := range all {
		number[l.end] = int32(s)
		h.push(l.weight, nil)
		h.end = append(h.end, l.end)
	}
	for s, l := range all {
		for k := range h.kinds {
			if to, ok := number[l.end+h.kinds[k].length]; ok {
				h.next[s*len(h.kinds)+k] = to
			}
		}
	}
	return h
}

// withOne is what lengths become by one piece more, all ascending.
func (h *held) withOne(all []load, k *kind) []load {
	for _, l := range all {
		if l.end+k.length <= h.room {
			all = append(all, load{l.end + k.length, l.weight + k.weight})
		}
	}
	slices.SortFunc(all, func(a, b load) int {
		return cmp.Or(cmp.Compare(a.end, b.end), cmp.Compare(b.weight, a.weight))
	})
	return slices.CompactFunc(all, func(a, b load) bool { return a.end == b.end })
}

// takes is the length that a set takes at its worst start.
func (h *held) takes(set int) int64 {
	n := len(h.starts)
	return slices.Max(h.end[set*n : set*n+n])
}
