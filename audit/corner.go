package audit

import (
	"slices"

	"firstdrop/hanging"
	"firstdrop/room"
)

// Hanging comes to a corner from the start. A crossing is one corner seen so:
// t is the distance along a wall from the end by which one comes to it, a the
// distance across the drop from the edge one comes to first.
//
//	  near wall         corner      far wall
//	─────────────────────┐  ┌──────────────────
//	 … near part ────────│──│ far part …
//	                far ▲   ▲ begin
//
// The corner leans: far is its farthest point on the near wall, begin its
// nearest on the far wall. What is left of the drop beyond far decides.
type crossing struct {
	kind           room.CornerKind
	near, far      place
	nearWidth      int64 // of the near wall
	farWidth       int64
	short          int64 // what a leaning near sheet may fall short by of where its far edge stands
	reach          int64 // where the near drop's far edge surely is, in t of the near wall
	farthest       int64 // of the corner on the near wall
	begin          int64 // nearest point of the corner on the far wall
	leanNear, lean int64 // on the near and on the far wall, in walking direction
	step           bool  // the design steps up or down there
	folded, right  bool  // one sheet on both walls; the far wall is the right one
	newDrop        bool
	upright        bool
}

// place is a lay in walking direction.
type place struct {
	*lay
	t, a span
	skew int64
}

// walked returns the lay k in walking direction.
func (h *hung) walked(k int, right bool) place {
	y := &h.lays[k]
	if right {
		return place{y, y.x, y.a, y.skew}
	}
	w := h.walls[y.wall].width
	return place{y, span{w - y.x.hi, w - y.x.lo}, span{h.width - y.a.hi, h.width - y.a.lo}, -y.skew}
}

// crossing returns the corner between lays k and k+1 as hanging comes to it.
func (h *hung) crossing(k int) crossing {
	right := k >= h.anchor
	left := h.lays[k].wall
	f := &h.walls[left].right
	c := crossing{kind: f.kind, newDrop: slices.Contains(h.l.Choice.NewDrop, left), folded: h.lays[k+1].joined, right: right, step: h.step(left) != 0}
	if right {
		c.near, c.far = h.walked(k, true), h.walked(k+1, true)
		c.leanNear, c.lean = f.leanLeft, f.leanRight
	} else {
		c.near, c.far = h.walked(k+1, false), h.walked(k, false)
		c.leanNear, c.lean = -f.leanRight, -f.leanLeft
	}
	c.nearWidth, c.farWidth = h.walls[c.near.wall].width, h.walls[c.far.wall].width
	c.farthest, c.begin = c.nearWidth+max(0, c.leanNear), min(0, c.lean)
	c.short = h.short(&c.near)
	c.reach = c.near.t.lo + h.width - c.near.a.lo - c.short
	c.upright = max(size(c.leanNear), size(c.lean)) <= size(int64(h.l.Rules.PlumbTolerance))
	return c
}

// judgeCorners judges what meets at every corner between the ends.
func (h *hung) judgeCorners() {
	if h.anchor < 0 {
		return
	}
	for k := range len(h.lays) - 1 {
		p, q := &h.lays[k], &h.lays[k+1]
		if p.wall == q.wall || h.next(p.wall) != q.wall {
			continue
		}
		c := h.crossing(k)
		if c.kind == room.Inside {
			h.judgeInside(&c)
		} else {
			h.judgeOutside(&c)
		}
	}
}

// foldable reports whether the near drop can be folded round the corner: it
// has paper on the near wall all along the corner. One that begins within the
// lean has not, and may be folded or begun anew.
func (c *crossing) foldable() bool {
	if c.step {
		return false
	}
	return c.near.a.lo > 0 || c.near.t.lo < c.nearWidth && c.near.t.lo <= c.nearWidth+min(0, c.leanNear)
}

// judgeInside: nothing left, and a new drop begins in the corner; no more than
// the wrap limit, and the drop turns whole; else what is left is carried on,
// or given up where a new drop is chosen.
func (h *hung) judgeInside(c *crossing) {
	r := &h.l.Rules
	left := c.reach - c.farthest
	at := c.near.at()
	switch {
	case left <= 0:
		h.begins(c, true)
	case c.newDrop:
		h.wraps(c, min(int64(r.Wrap), left))
		h.begins(c, true)
	case left <= int64(r.WrapLimit) && (c.foldable() || c.folded && !c.step):
		h.same(Corner, at, "a remainder of "+figure(left)+" folded round the corner", true, c.folded)
	default:
		h.wraps(c, min(int64(r.Wrap), left))
		h.begins(c, c.near.a.hi == h.width)
	}
}

// wraps judges how far paper goes beyond the corner's farthest point: by the
// wrap, or by as much as a leaning sheet may fall short, which is known to the
// nanometre either way.
func (h *hung) wraps(c *crossing, wrap int64) {
	beyond := c.near.t.hi - c.farthest
	if wrap >= c.short {
		h.same(Corner, c.near.at(), "paper beyond the corner", lengthOf(wrap), lengthOf(beyond))
	} else if size(beyond-c.short) > 2 {
		h.note(Corner, c.near.at(), "paper beyond the corner", lengthOf(c.short), lengthOf(beyond))
	}
}

// short returns by how much the far edge of a leaning sheet may fall short, on
// its wall, of where it stands at the foot of the corner it has turned.
func (h *hung) short(p *place) int64 {
	w := &h.walls[p.wall]
	least := min(0, p.skew)
	if n := p.head - p.foot; n > 0 && p.skew != 0 {
		for _, y := range []int64{w.low, w.high} {
			if y < p.foot || y > p.head {
				least = min(least, nearest(p.skew, y-p.foot, n)-1)
			}
		}
	}
	return -least
}

// begins judges a part cut loose that begins in the corner: at its nearest
// point, plumb, with what was left of the drop or with a new one.
func (h *hung) begins(c *crossing, fresh bool) {
	at := c.far.at()
	h.same(Corner, at, "folded round the corner", false, c.folded)
	h.same(Corner, at, "near edge in the corner", c.begin, c.far.t.lo)
	h.same(Corner, at, "skew", int64(0), c.far.skew)
	h.same(Corner, at, "a new drop", fresh, c.far.drop != c.near.drop)
	want := c.near.a.hi
	if fresh {
		want = 0
	}
	h.same(Corner, at, "begin across the drop", want, c.far.a.lo)
}

// judgeOutside: the drop goes round if the corner is plumb within tolerance.
// Else it is cut after the wide wrap, unless too little is left to be worth it
// (no more than the wrap limit, or than the sheet leans by on that wall) or the wall, or what is to be papered of it, ends before.
func (h *hung) judgeOutside(c *crossing) {
	r := &h.l.Rules
	left := c.reach - c.farthest
	at := c.near.at()
	if left <= 0 || !c.foldable() && !c.folded {
		h.begins(c, c.near.a.hi == h.width)
		return
	}
	if !h.same(Corner, at, "folded round the outside corner", true, c.folded) || c.upright {
		return
	}
	wide := int64(r.OutsideWrap)
	switch beyond := c.far.t.hi; {
	case left <= wide+max(int64(r.WrapLimit), h.mostLean(c.far.lay)) || h.papered(c) <= wide:
	case beyond < wide:
		h.note(Corner, c.far.at(), "wrap round an outside corner out of plumb", figure(wide)+" or more", beyond)
	case beyond > wide:
		h.note(Corner, c.far.at(), "paper beyond an outside corner out of plumb", "cut after "+figure(wide), beyond)
	}
}

// mostLean returns how far a lay's edges are off plumb on its wall, at the
// farthest: a wall may reach beyond the corner's head and foot.
func (h *hung) mostLean(y *lay) int64 {
	w := &h.walls[y.wall]
	most := int64(size(y.skew))
	if n := y.head - y.foot; n > 0 {
		for _, at := range []int64{w.low, w.high} {
			most = max(most, int64(size(nearest(y.skew, at-y.foot, n))))
		}
	}
	return most
}

// papered returns how much of the far wall is to be papered from this corner
// on: all of it, or up to the kill seam if hanging ends there.
func (h *hung) papered(c *crossing) int64 {
	kill := h.l.Choice.Kill
	last := &h.lays[len(h.lays)-1]
	if !c.right {
		last = &h.lays[0]
	}
	switch {
	case kill.Kind != hanging.OnWall || last.wall != c.far.wall || last.drop != c.far.drop:
		return c.farWidth
	case c.right:
		return int64(kill.X)
	}
	return c.farWidth - int64(kill.X)
}

// judgeEnds: paper ends where the run ends, or at the kill: at the seam on the
// wall, in the corner, or beyond it by the overlap on the side that laps.
func (h *hung) judgeEnds() {
	if h.anchor < 0 {
		return
	}
	for _, right := range []bool{true, false} {
		k := 0
		if right {
			k = len(h.lays) - 1
		}
		p := h.walked(k, right)
		w := &h.walls[p.wall]
		lean := w.right.leanLeft
		side := hanging.Left // of the kill on which this end stands
		if !right {
			lean, side = -w.left.leanRight, hanging.Right
		}
		stop := w.width + max(0, lean)
		kill := h.l.Choice.Kill
		switch {
		case kill.Kind == hanging.OnWall && right:
			stop = int64(kill.X)
		case kill.Kind == hanging.OnWall:
			stop = w.width - int64(kill.X)
		case kill.Kind == hanging.AtCorner && kill.Lap == side:
			stop += int64(h.l.Rules.Overlap)
		}
		want := min(stop, p.t.lo+h.width-p.a.lo)
		if over := p.t.hi - want; over <= 0 || over > int64(size(p.skew)) { // a leaning sheet may need more at its foot
			h.same(End, p.at(), "end of the paper on its wall", want, p.t.hi)
		}
	}
}
