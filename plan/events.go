package plan

import (
	"slices"

	"firstdrop/measure"
)

// Where the first drop of a wall stands a little farther along, all others do, and so does
// what is carried round the corners. What they weigh changes evenly with that, or not at
// all, but where the edge of a drop comes to a place at which a rule begins, or ends, or
// turns: a whole number of widths from it, wherever on the wall that is.
//
//	       ┊ clear of the edge          what a seam here weighs
//	──┬────┊─┬─────────┐                │╲      ┊
//	  │    ┊ │ opening │                │  ╲    ┊
//	  │    ┊ │         │                │    ╲  ┊________
//	  ►    ┊ │         │                └───────┴────────  event

// events are the places on a wall from which on, to the right, something else holds, less
// whole widths, in order. A place that is like neither side has the one after it beside it.
type events []measure.Length

// ruled gathers the events of a wall. Its methods are called from many places, and are not
// worth being copied to all of them.
type ruled struct {
	es    events
	width measure.Length
}

// from notes that something holds from each place on.
//
//go:noinline
func (r *ruled) from(xs ...measure.Length) {
	for _, x := range xs {
		r.es = append(r.es, x.Mod(r.width))
	}
}

// upTo notes that something holds up to each place.
//
//go:noinline
func (r *ruled) upTo(xs ...measure.Length) {
	for _, x := range xs {
		r.from(x + 1)
	}
}

// at notes that each place is like neither side.
//
//go:noinline
func (r *ruled) at(xs ...measure.Length) {
	r.from(xs...)
	r.upTo(xs...)
}

// around notes the same of a place, and of those so far from it.
//
//go:noinline
func (r *ruled) around(x measure.Length, by ...measure.Length) {
	r.at(x)
	for _, d := range by {
		r.at(x-d, x+d)
	}
}

// eventsOn lists them for a wall.
func (o *outlook) eventsOn(wall int) events {
	v, j, rules := o.v, o.v.j, &o.m.s.task.Rules
	t, w, run, width := &j.taste, &j.walls[wall], j.run, v.width
	r := &ruled{width: width}
	for _, x := range append(v.h.Uprights(wall), 0, w.width) {
		r.at(x)
		if m := j.paper.Motif; m != nil && o.turn.lanes > 0 {
			r.at(x - m.Axis)
		}
	}
	for _, h := range w.holes {
		r.at(h.x.Lo, h.x.Hi)
	}
	for _, e := range w.edges { // a strip between a seam and the edge lies outside of the opening
		r.at(e.x)
		r.upTo(e.x - t.SeamClearance)
		r.from(e.x + t.SeamClearance)
		if e.left {
			r.upTo(e.x-t.MinSliver, e.x-t.Overrun)
		} else {
			r.from(e.x+t.MinSliver, e.x+t.Overrun)
		}
	}
	if w.focal {
		r.around(w.width/2, t.SeamClearance)
		for _, x := range [...]measure.Length{w.width / 2, (w.width + width) / 2} { // the end strips are alike
			r.around(x, measure.Millimetre/2)
		}
		r.at(rules.WrapLimit, w.width-rules.WrapLimit, width/2, w.width-width/2)
	}
	if c := w.centre; c != nil {
		r.at(*c)
		if m := j.paper.Motif; m != nil {
			for _, axis := range [...]measure.Length{m.Axis, width - m.Axis} {
				r.around(*c-axis, measure.Millimetre)
				r.around(*c-axis+width/2, measure.Millimetre)
			}
		}
	}
	for _, x := range w.lining {
		r.upTo(x - liningClear)
		r.from(x, x+liningClear)
	}
	for _, f := range run.Walls[wall].Fittings {
		r.from(f.At.X - f.Size.X/2)
		r.upTo(f.At.X + f.Size.X/2)
	}
	for _, k := range j.fixed.KeepOff {
		if k.Wall == wall {
			r.upTo(k.X.Lo)
			r.from(k.X.Hi)
		}
	}
	left, right := run.LeanAt(wall)
	near, far := min(0, left), w.width+max(0, right) // what must reach the corners reaches their farthest points
	r.at(near, near-rules.Wrap, near-rules.WrapLimit, max(0, left), t.MinSliver)
	r.at(far, far+rules.Wrap, far+rules.WrapLimit, w.width+min(0, right), w.width-t.MinSliver)
	lean := max(left, -right, 0) // nearer to a corner nothing is told of a seam
	r.at(lean, w.width-lean)
	round := rules.OutsideWrap + rules.WrapLimit
	if w.left {
		r.around(0, t.SeamClearance, rules.OutsideWrap, round)
		r.around(near, rules.OutsideWrap, round)
		r.at(rules.OutsideWrap + t.MinSliver)
	}
	if w.right {
		r.around(w.width, t.SeamClearance, rules.OutsideWrap, round)
		r.around(far, rules.OutsideWrap, round)
		r.at(w.width - rules.OutsideWrap - t.MinSliver)
	}
	n, walls := len(run.Walls), run.Walls
	for begun := measure.Length(0); begun < width; begun += o.designWidth() { // a new drop there misses by nothing
		next, _ := run.LeanAt((wall + 1) % n)
		_, last := run.LeanAt((wall + n - 1) % n)
		r.at(walls[wall].Width+min(0, next)-begun, max(0, last)+begun)
	}
	lapped := rules.Wrap + max(left.Abs(), right.Abs())
	r.at(w.width+lapped, -lapped)
	slices.Sort(r.es)
	return slices.Compact(r.es)
}

// next returns how many places there are from one on to the right, up to the next event.
func (es events) next(x, width measure.Length) measure.Length {
	x = x.Mod(width)
	if i, _ := slices.BinarySearch(es, x+1); i < len(es) {
		return es[i] - x
	}
	return es[0] + width - x
}

// before is the same to the left: those from which on nothing else holds.
func (es events) before(x, width measure.Length) measure.Length {
	x = x.Mod(width)
	if i, _ := slices.BinarySearch(es, x+1); i > 0 {
		return x - es[i-1] + 1
	}
	return x + width - es[len(es)-1] + 1
}
