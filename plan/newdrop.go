package plan

import (
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/room"
)

// What a new drop in a corner weighs at the least is told without laying out the drop
// that is given up for it. What goes on from the corner is the same for all of them; and
// the design misses there by what is given up, whole widths aside:
//
//	│      │ given │┊ up     │        the seam misses by what would have gone round
//	│      │ up in ││        │        the corner, or by what has stood before it,
//	│      │ the corner      │        whichever is less
//	└──────┴───────┴┴────────┴──

// newDrop is what begins in a corner.
type newDrop struct {
	only   row   // of the drop given up, what is sure: if it covers the corner at all
	drop   row   // the same if it does not
	to     *node // where the new one begins; nil: none may
	sums   row   // of the whole drops from there
	after  []onward
	begin  measure.Length
	lapped measure.Length // no more than so much is not given up, but lapped round the corner
	fold   *fold
}

// onward is what lies ahead of a new drop on the way to an end.
type onward struct {
	least  ahead          // and what closing takes
	across measure.Length // carried: as of a tail
	known  bool
}

// listNews lists what begins in each corner: first after an even drop, then after an odd
// one, by corner.
func (o *outlook) listNews() {
	run := o.m.s.run.Run
	for side := range o.news {
		o.news[side] = make([]newDrop, 2*len(run.Corners))
		if !o.m.renews {
			continue
		}
		for corner := range run.Corners {
			if run.Corners[corner].Kind != room.Inside {
				continue
			}
			for odd := range 2 {
				if odd == 1 && !o.v.turns {
					break
				}
				o.news[side][2*corner+odd] = o.newDrop(hanging.Side(side), corner, odd == 1)
			}
		}
	}
}

// newDrop returns what begins in a corner after a drop.
func (o *outlook) newDrop(side hanging.Side, corner int, odd bool) newDrop {
	walls, j := o.m.s.run.Run.Walls, o.v.j
	from, next, x := corner, (corner+1)%len(walls), walls[corner].Width-hair
	if side == hanging.Left {
		from, next, x = next, from, 0
	}
	t := sum{score: o.m.s.task.Taste.Weights.Drop, drops: 1}
	n := newDrop{drop: o.of(&t), fold: &j.corners[corner], after: make([]onward, len(o.ends))}
	sure := o.v.surely(from, x)
	t.add(&sure)
	n.only = o.of(&t)
	spot := o.v.h.Begin(side, next)
	n.begin, n.to = spot.T, o.v.node(spot, !odd)
	left, right := o.m.s.run.Run.LeanAt(from)
	n.lapped = o.m.s.task.Rules.Wrap + max(left.Abs(), right.Abs())
	n.sums = o.rowFrom(n.to)
	n.sums.weigh(o.m.unequalOn(n.to))
	return n
}

// newAt returns what begins in a corner where a drop is given up, nil if none may.
func (o *outlook) newAt(side hanging.Side, corner int, odd bool) *newDrop {
	i := 2 * corner
	if odd {
		i++
	}
	if n := &o.news[side][i]; n.to != nil {
		return n
	}
	return nil
}

// onFrom returns what lies ahead of a new drop at the least.
func (o *outlook) onFrom(n *newDrop, e int) *ahead { return &o.onward(n, e).least }

// onward returns what lies ahead of a new drop.
func (o *outlook) onward(n *newDrop, e int) *onward {
	f := &n.after[e]
	if !f.known {
		t := o.from(n.to, &n.sums, e)
		f.least, f.across = t.carried, t.across
		f.least.weigh(o.ends[e].closes(n.to.spot.Side, upTo(t.reach)))
		f.least.least(&t.renewed)
		f.known = true
	}
	return f
}

// givenUp returns what a drop that meets a corner comes to at the least if it is given up
// there, with the seam after it: if it is a sliver, and what the design misses.
func (o *outlook) givenUp(corner *node, n *newDrop) row {
	return o.givenUpBetween(corner.spot, corner.spot.T, n)
}

// givenUpBetween returns the same of all drops that meet a corner from a spot on up to one
// that begins farther along.
func (o *outlook) givenUpBetween(from hanging.Spot, to measure.Length, n *newDrop) row {
	width := o.m.s.run.Run.Walls[from.Wall].Width
	if to >= width {
		return n.drop
	}
	a, j, widest := n.only, o.v.j, width-from.T
	a.weigh(j.walls[from.Wall].regard.of(graded(j.taste.Weights.Sliver, widest, j.taste.MinSliver)))
	a.weigh(min(o.misses(n, widest), o.misses(n, width-to)))
	return a
}

// givenUpFarther returns the same if it passes other corners before that corner.
func (o *outlook) givenUpFarther(edge *pass, side hanging.Side, corner int, n *newDrop) row {
	a := n.only
	strip, ok := o.acrossIn(edge, side, corner)
	if side == hanging.Left {
		strip = o.v.width - strip
	}
	if ok {
		a.weigh(o.misses(n, strip))
	}
	return a
}

// misses returns what the seam at least weighs in a corner where a new drop begins after
// one of which so much has come to the corner.
func (o *outlook) misses(n *newDrop, strip measure.Length) int64 {
	if !o.v.j.isDesigned() || o.v.width-strip <= n.lapped {
		return 0
	}
	return o.v.j.renews(n.fold, o.apart(strip+n.begin))
}
