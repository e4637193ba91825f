package audit

import (
	"slices"

	"firstdrop/hanging"
)

// judgeParts judges drops and their parts by themselves and in their order.
func (h *hung) judgeParts() {
	h.judgeIndexes()
	h.judgeOrder()
	for k := range h.lays {
		h.judgeWidth(k)
	}
	h.judgeFolds()
}

// judgeIndexes: drops count from drop 0, which stands at the start, and
// alternate ones are reversed where the label says so.
func (h *hung) judgeIndexes() {
	first := h.l.Drops[0].Index
	for i := range h.l.Drops {
		d, at := &h.l.Drops[i], Place{Drop: i + 1}
		h.same(DropOrder, at, "index", first+i, d.Index)
		h.same(Reversal, at, "hung upside down", h.l.Paper.Match.Reversing && d.Index%2 != 0, d.Reversed)
	}
	if h.anchor < 0 {
		h.note(DropOrder, Place{Wall: h.l.Choice.Start.Wall + 1}, "drop 0", "standing at "+figure(h.l.Choice.Start.X), "not there")
	}
}

// judgeOrder: the parts follow one another along the run, from its left end or
// the kill to its right end.
func (h *hung) judgeOrder() {
	first, last, turns := 0, len(h.walls)-1, len(h.walls)-1
	switch kill := h.l.Choice.Kill; kill.Kind {
	case hanging.AtCorner:
		first, last = (kill.Wall+1)%len(h.walls), kill.Wall
	case hanging.OnWall:
		first, last, turns = kill.Wall, kill.Wall, len(h.walls)
	}
	h.same(DropOrder, h.lays[0].at(), "first wall", first+1, h.lays[0].wall+1)
	end := &h.lays[len(h.lays)-1]
	h.same(DropOrder, end.at(), "last wall", last+1, end.wall+1)
	for k := 1; k < len(h.lays); k++ {
		p, q := &h.lays[k-1], &h.lays[k]
		if p.wall == q.wall {
			lap := max(int64(size(p.skew-q.skew)), h.mostLean(p), h.mostLean(q))
			if lap > 0 {
				lap++ // a lean beyond the corner's height is rounded
			}
			if least := p.x.lo - lap; q.x.lo < least {
				h.note(DropOrder, q.at(), "left edge", "at or to the right of "+figure(least), q.x.lo)
			}
			continue
		}
		h.same(DropOrder, q.at(), "wall", h.next(p.wall)+1, q.wall+1)
		turns--
	}
	h.same(DropOrder, Place{}, "corners still to be met at the end", 0, turns)
}

// judgeWidth: the part is rigid and lies within the drop, against its
// neighbours in the drop, and the drop's width is used from edge to edge where
// nothing ends there.
func (h *hung) judgeWidth(k int) {
	y := &h.lays[k]
	h.same(Rigid, y.at(), "stretch of the drop across", y.x.length(), y.a.length())
	if y.a.length() <= 0 {
		h.note(Rigid, y.at(), "stretch of the drop across", "more than 0", y.a.length())
	}
	if y.a.lo < 0 || y.a.hi > h.width {
		h.note(Width, y.at(), "stretch of the drop across", "within "+figure(span{0, h.width}), y.a)
	}
	switch {
	case k > 0 && h.lays[k-1].drop == y.drop:
		h.same(Width, y.at(), "begin across", h.lays[k-1].a.hi, y.a.lo)
	case k > 0 && !h.renewed(k-1):
		h.same(Width, y.at(), "begin across", int64(0), y.a.lo)
		h.same(Width, h.lays[k-1].at(), "end across", h.width, h.lays[k-1].a.hi)
	}
}

// renewed reports whether a new drop is chosen for the corner between lay k
// and the next.
func (h *hung) renewed(k int) bool {
	p, q := &h.lays[k], &h.lays[k+1]
	return p.wall != q.wall && slices.Contains(h.l.Choice.NewDrop, p.wall)
}

// judgeFolds: a folded sheet goes round the corner between two walls, and
// leans beyond it by what the corner leans more in the one wall than in the
// other. It is plumb where hanging comes from.
func (h *hung) judgeFolds() {
	for i := range h.l.Drops {
		if h.l.Drops[i].Parts[0].Joined {
			h.note(Skew, Place{Drop: i + 1, Part: 1}, "the first part", "no sheet with one before it", "joined")
		}
	}
	for i := 0; i < len(h.lays); {
		n := i + 1
		for ; n < len(h.lays) && h.lays[n].sheet == h.lays[i].sheet; n++ {
			p, q := &h.lays[n-1], &h.lays[n]
			f := &h.walls[p.wall].right
			if h.next(p.wall) != q.wall {
				h.note(Skew, q.at(), "the wall of a folded part", h.next(p.wall)+1, q.wall+1)
				continue
			}
			h.same(Skew, p.at(), "fold on the left wall", h.walls[p.wall].width, p.x.hi)
			h.same(Skew, q.at(), "fold on the right wall", int64(0), q.x.lo)
			h.same(Skew, q.at(), "skew taken on at the fold", f.leanRight-f.leanLeft, q.skew-p.skew)
		}
		plumb := &h.lays[h.plumbLay(i, n)]
		h.same(Skew, plumb.at(), "skew where the sheet is set plumb", int64(0), plumb.skew)
		i = n
	}
}
