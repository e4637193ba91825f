package plan

import (
	"math"

	"firstdrop/hanging"
	"firstdrop/measure"
)

// Where two halves meet over an opening, it takes drops to close the gap that is left
// between them, and each of those that does not also stand beside the opening is a piece
// of its own over it:
//
//	┌───┬───┬──╴╴╴╴╴┬───┐
//	│   │   │       │   │    so many drops as widths in the gap,
//	│ ┌─┼───┼───────┼─┐ │    rounded up; parts of widths where
//	  ► reach ┄ gap ┄ ◄      how far one half has come is not known

// gap is what closing takes at an end over an opening; zero at others.
type gap struct {
	wall, strip measure.Length    // the widths of the wall and of a drop
	near        [2]measure.Length // by side: how far along the wall the opening begins
	drop        int64
	over        ahead // the pieces of a drop over the opening
}

// gapAt returns what closing takes at an end.
func (o *outlook) gapAt(e *end) (g gap) {
	if e.place.kill.Kind != hanging.OnWall || e.folds {
		return g
	}
	w := &o.m.s.task.Taste.Weights
	g = gap{wall: o.m.s.run.Run.Walls[e.place.kill.Wall].Width, strip: o.v.width, drop: w.Drop}
	for side := range g.near {
		g.near[side] = o.m.near(e.place, hanging.Side(side))
	}
	g.over = o.of(&o.m.over[e.kills[0]]).ahead
	return g
}

// reach is how far along its wall a half comes at the least, and at the most.
type reach [2]measure.Length

// upTo is a reach that is known; or nothing is.
func upTo(x measure.Length) reach { return reach{x, x} }

// or returns the reach of either half.
func (r reach) or(o reach) reach {
	switch {
	case r == o:
		return r
	case r[0] == unknown:
		return reach{o[0], anywhere}
	case o[0] == unknown:
		return reach{r[0], anywhere}
	}
	return reach{min(r[0], o[0]), max(r[1], o[1])}
}

// anywhere is how far a half comes at the most where that is not known of all.
const anywhere = measure.Length(math.MaxInt64)

// isKnown reports whether it is known how far.
func (r reach) isKnown() bool { return r[0] != unknown && r[1] != anywhere }

// between returns what closes the gap between two halves at the least, that to a side
// first, by how far they have come: what the drops weigh, and how many have all their
// pieces over the opening.
func (g *gap) between(side hanging.Side, a, b reach) (weight int64, over int32) {
	if g.wall == 0 {
		return 0, 0
	}
	if !a.isKnown() || !b.isKnown() {
		return g.closes(side, a) + g.closes(side.Opposite(), b), 0
	}
	drops := max(0, int64((g.wall-a[1]-b[1]+g.strip-1)/g.strip))
	over = int32(drops)
	if a[0] < g.near[side] {
		over--
	}
	if b[0] < g.near[side.Opposite()] {
		over--
	}
	return drops * g.drop, max(over, 0)
}

// closes returns the share of one half in that, by how far it has come: as if each
// closed half of the wall, so less than nothing for one that comes farther. Two shares
// are no more than the whole.
func (g *gap) closes(side hanging.Side, r reach) int64 {
	if g.wall == 0 {
		return 0
	}
	if r[0] == unknown {
		r = upTo(g.wall)
	}
	r[1] = min(r[1], g.wall)
	each := measure.Length(g.drop + int64(g.over.looks))
	total := int64((g.wall*each/2 - r[1]*each).FloorTo(g.strip) / g.strip)
	if r[0] < g.near[side] {
		total -= int64(g.over.looks)
	}
	return total
}
