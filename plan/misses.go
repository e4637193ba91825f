package plan

import (
	"slices"

	"firstdrop/hanging"
	"firstdrop/measure"
)

// By how much the design misses at a kill place follows from how far across it has come
// there on either side, and that from where the halves began: at the start, if they were
// carried on all the way, or in the corner in which the last new drop begins.
//
//	──┬───────┬───────┬──╳──┬───────┬───────┬──
//	  ►       ►       ►  ┊  ◄       ◄       ◄
//	        a width apart, or so much less

// misses tells what a kill seam weighs for what the design misses there.
type misses struct {
	full     int64 // what it weighs where it misses in full; 0: nothing is known
	perMetre int64
	regard   regard
	seen     measure.Length
	width    measure.Length      // after which the design is the same across
	begun    [2][]measure.Length // by side: how far across it has come from each new drop
	any      [2]bool             // by side: or any other
	least    int64               // with a new drop on either side
}

// readMisses reads what the design misses at an end.
func (o *outlook) readMisses(i int) {
	e, j := &o.ends[i], o.v.j
	if e.place.kill.Kind == hanging.NoKill || e.folds || !j.isDesigned() {
		return
	}
	x := &e.misses
	x.regard, x.seen = j.killSeen(e.place)
	x.perMetre, x.width = j.taste.Weights.KillMetre, o.designWidth()
	x.full = x.weight(fullMiss)
	for side := range x.begun {
		for corner := range o.news[side] {
			n := &o.news[side][corner]
			if n.to == nil || e.place.kill.Kind == hanging.AtCorner && corner/2 == e.place.kill.Wall {
				continue
			}
			if across := o.onward(n, i).across; across == unknown {
				x.any[side] = true
			} else {
				x.begun[side] = append(x.begun[side], across)
			}
		}
	}
	x.least = x.full
	for _, across := range x.begun[hanging.Right] {
		x.least = min(x.least, x.leastMiss(hanging.Right, across, 0))
	}
	if x.any[hanging.Left] || x.any[hanging.Right] {
		x.least = 0
	}
}

// designWidth is after how much the design is the same across.
func (o *outlook) designWidth() measure.Length {
	p := o.v.j.paper
	if p.Across > 0 && p.Across < p.Width {
		return p.Across
	}
	return p.Width
}

// apart returns how far a length is from the nearest whole width of the design.
func (o *outlook) apart(l measure.Length) measure.Length {
	w := o.designWidth()
	l = l.Mod(w)
	return min(l, w-l)
}

// across returns how far across the design has come at an end, from a node on its wall.
func (o *outlook) across(n *node, e *end) measure.Length {
	if e.full == 0 {
		return unknown
	}
	t, width := n.spot.T, o.m.s.run.Run.Walls[n.spot.Wall].Width
	switch {
	case n.spot.Side == hanging.Left:
		t = width - t
	case e.place.kill.Kind == hanging.AtCorner:
		t -= width
	}
	return (-t).Mod(e.width)
}

// acrossPassing returns the same where the drop that passes an end in a corner ends there.
func (o *outlook) acrossPassing(edge *pass, side hanging.Side, e *end) measure.Length {
	across, ok := o.acrossIn(edge, side, e.place.kill.Wall)
	if e.full == 0 || !ok {
		return unknown
	}
	return across.Mod(e.width)
}

// acrossIn returns how far across its own width, from the left, a drop that passes a corner
// on its way to a side has come there; false if that is not known.
func (o *outlook) acrossIn(edge *pass, side hanging.Side, corner int) (across measure.Length, ok bool) {
	wall, x := corner, o.m.s.run.Run.Walls[corner].Width
	if side == hanging.Left {
		wall, x = (corner+1)%o.m.walls, 0
	}
	for i := range edge.parts { // of several on the wall the one at the corner: the last to the right
		if p := &edge.parts[i]; p.Wall == wall && (!ok || side == hanging.Right) {
			across, ok = p.Across.Lo+x-p.X.Lo, !edge.skewed
		}
	}
	return across, ok
}

// weight returns what a misfit weighs at the least.
func (x *misses) weight(miss measure.Length) int64 {
	return x.regard.kill(share(x.perMetre, miss, fullMiss), x.seen)
}

// miss returns what the kill seam weighs at the least where the design has come so far
// across from one side, and so far from the other, give or take so much.
func (x *misses) miss(a, b, within measure.Length) int64 {
	if x.full == 0 || a == unknown || b == unknown {
		return 0
	}
	d := (a - b).Mod(x.width)
	if d = max(min(d, x.width-d)-within, 0); d >= fullMiss {
		return x.full
	}
	return x.weight(d)
}

// leastMiss is the same with any new drop on the other side.
func (x *misses) leastMiss(side hanging.Side, across, within measure.Length) int64 {
	other := side.Opposite()
	if x.full == 0 || across == unknown || x.any[other] {
		return 0
	}
	least := x.full
	for _, b := range x.begun[other] {
		least = min(least, x.miss(across, b, within))
	}
	return least
}

// crossing tells how far across the design has come at an end from any place on the way:
// from one at T so far for T = 0, and to the right as much less, to the left as much more,
// as T is farther on. It is one of up to two; with none nothing is known.
type crossing struct {
	n  int
	at [2]measure.Length
}

// along returns a way to a side as a way to the right.
func along(side hanging.Side, way measure.Length) measure.Length {
	if side == hanging.Left {
		return -way
	}
	return way
}

// or returns what is told of either way.
func (c crossing) or(d crossing) crossing {
	if c.n == 0 || d.n == 0 {
		return crossing{}
	}
	for _, x := range d.at[:d.n] {
		if slices.Contains(c.at[:c.n], x) {
			continue
		}
		if c.n == len(c.at) {
			return crossing{}
		}
		c.at[c.n] = x
		c.n++
	}
	return c
}

// moved returns the crossing from a place so far before.
func (c crossing) moved(by, width measure.Length) crossing {
	for i := range c.n {
		c.at[i] = (c.at[i] - by).Mod(width)
	}
	return c
}
