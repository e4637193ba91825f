package audit

import (
	"cmp"
	"slices"

	"firstdrop/cutting"
)

// class is the start phases that an order is for: from + 1 to from + size,
// wound round the repeat.
type class struct{ from, size int64 }

func (r *rolls) class(o *cutting.Order) class {
	c := class{int64(o.After), mod(int64(o.UpTo-o.After), r.repeat)}
	if c.size == 0 {
		c.size = r.repeat
	}
	return c
}

// holds reports whether a start phase is in the class.
func (c class) holds(start, repeat int64) bool {
	d := mod(start-c.from, repeat)
	return c.size == repeat || 1 <= d && d <= c.size
}

// judgeStarts: a roll whose start is known or does not matter has one order,
// for that start. Else the classes of its orders hold every phase, and each
// order fits at every start of its class.
func (r *rolls) judgeStarts(roll int) {
	orders := r.s.Rolls[roll].Orders
	at, w := Place{Roll: roll + 1}, r.ware(roll)
	if w.known {
		r.same(StartClass, at, "number of orders", 1, len(orders))
		if r.repeat > 0 && len(orders) > 0 {
			r.same(StartClass, at, "start phase", lengthOf(w.start), orders[0].At)
		}
		return
	}
	r.judgeClasses(at, orders)
	for i := range orders {
		at.Order = i + 1
		r.replay(at, w, &orders[i])
	}
}

// judgeClasses: no phase is left out.
func (r *rolls) judgeClasses(at Place, orders []cutting.Order) {
	var served []span // closed stretches within the repeat
	for i := range orders {
		o := &orders[i]
		for _, l := range []int64{int64(o.After), int64(o.UpTo), int64(o.At)} {
			if mod(l, r.repeat) != l {
				r.note(StartClass, Place{Roll: at.Roll, Order: i + 1}, "phase", "within the repeat", l)
			}
		}
		c := r.class(o)
		if !c.holds(int64(o.At), r.repeat) {
			r.note(StartClass, Place{Roll: at.Roll, Order: i + 1}, "start for which cuts are given", "of the class", int64(o.At))
		}
		first := mod(c.from+1, r.repeat)
		last := first + c.size - 1
		served = append(served, span{first, min(last, r.repeat-1)}, span{0, last - r.repeat})
	}
	slices.SortFunc(served, func(a, b span) int { return cmp.Compare(a.lo, b.lo) })
	next := int64(0)
	for _, s := range served {
		if s.hi < s.lo {
			continue
		}
		if s.lo > next {
			break
		}
		next = max(next, s.hi+1)
	}
	if next < r.repeat {
		r.note(StartClass, at, "start phase "+figure(next), "served by an order", "left out")
	}
}

// replay cuts the roll in the given order, each piece as early as its phase
// comes, for starts of the class: its ends, every phase of a piece and its
// neighbours, and some in between. The end of the last cut jumps only where a
// piece's phase is passed, so these would do without the rest.
func (r *rolls) replay(at Place, w *ware, o *cutting.Order) {
	c := r.class(o)
	starts := []int64{int64(o.At), c.from + 1, c.from + c.size}
	for _, cut := range o.Cuts {
		q := r.phase(cut.Piece)
		starts = append(starts, q-1-r.lead, q-r.lead, q+1-r.lead)
	}
	seed := uint64(at.Roll)<<32 + uint64(at.Order)
	for range 12 {
		seed = seed*6364136223846793005 + 1442695040888963407 // Knuth's MMIX multiplier
		starts = append(starts, int64(seed>>2)%r.repeat)
	}
	given := r.end(o, int64(o.At))
	worst, latest := int64(o.At), given
	for _, s := range starts {
		s = mod(s, r.repeat)
		if end := r.end(o, s); c.holds(s, r.repeat) && end > latest {
			worst, latest = s, end
		}
	}
	if latest > w.length {
		r.note(Replay, at, "end of the last cut on a roll that begins at phase "+figure(worst), figure(w.length)+" or less", latest)
	}
	if latest > given {
		r.note(StartClass, at, "start for which cuts are given", "the worst of the class, such as "+figure(worst), int64(o.At))
	}
}

// end returns where the last piece of an order ends on a roll that begins at a
// phase.
func (r *rolls) end(o *cutting.Order, start int64) int64 {
	x := start + r.lead
	for i, c := range o.Cuts {
		if i > 0 {
			x += r.loss
		}
		x += mod(r.phase(c.Piece)-x, r.repeat) + r.size(c.Piece)
	}
	return x - start
}
