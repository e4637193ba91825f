package audit

import (
	"firstdrop/hanging"
)

// judgePlumbs: a plumb line is drawn for drop 0, and for every sheet that has
// no plumb sheet on its own wall to be butted against, on the side from which
// hanging comes, where there is any wall to butt them on. Each stands at an edge of
// the part it sets, where the wall's face is, or between its edges where neither has
// any; and they come in hanging order: drop 0, then to the right, then to the left. A
// part from corner to corner is set by a corner.
func (h *hung) judgePlumbs() {
	if h.anchor < 0 {
		return
	}
	drawn := make([]int, len(h.lays))
	before := -1
	for i := range h.l.Plumbs {
		k := h.judgePlumb(i)
		drawn[k]++
		turn := h.turn(k)
		if turn < before {
			h.note(PlumbLine, Place{Plumb: i + 1}, "place in the list", "in hanging order", "after a later one")
		}
		before = max(before, turn)
	}
	for i := 0; i < len(h.lays); {
		n := i + 1
		for n < len(h.lays) && h.lays[n].sheet == h.lays[i].sheet {
			n++
		}
		h.judgeSheetPlumbs(i, n, drawn)
		i = n
	}
}

// turn returns when a lay is hung: drop 0's first, then those to its right,
// then those to its left.
func (h *hung) turn(k int) int {
	if k >= h.anchor {
		return k - h.anchor
	}
	return len(h.lays) - k
}

// judgePlumb judges one plumb line by itself and returns the lay it sets.
func (h *hung) judgePlumb(i int) int {
	p, at := &h.l.Plumbs[i], Place{Plumb: i + 1}
	k := h.first[p.Drop] + p.Part
	y := &h.lays[k]
	at.Wall, at.Drop, at.Part = p.Wall+1, p.Drop+1, p.Part+1
	h.same(PlumbLine, at, "wall", y.wall+1, p.Wall+1)
	edge, other, line := y.x.lo, y.x.hi, y.x.lo+int64(p.Beyond)
	if p.Edge == hanging.Right {
		edge, other, line = other, edge, y.x.hi-int64(p.Beyond)
	}
	h.same(PlumbLine, at, "distance from the wall's left end", lengthOf(line), p.X)
	isOn := h.isOnWall(y, edge) || h.isOnWall(y, other)
	switch isDrawable := h.drawable(y, line); {
	case p.Beyond < 0 || p.Beyond > 0 && (h.drawable(y, edge) || h.drawable(y, other) || !isDrawable || !isOn):
		h.note(PlumbLine, at, "how far the edge stands beyond", "nothing", p.Beyond)
	case !isDrawable && (h.drawable(y, other) || isOn && h.hasFace(y)):
		h.note(PlumbLine, at, "distance from the wall's left end", "on the wall's face", p.X)
	}
	for _, s := range []hanging.Side{p.Edge, p.From} {
		if s != hanging.Left && s != hanging.Right {
			h.note(PlumbLine, at, "a side", "left or right", int(s))
		}
	}
	return k
}

// isOnWall reports whether x lies between the corners of the lay's wall.
func (h *hung) isOnWall(y *lay, x int64) bool { return 0 < x && x < h.walls[y.wall].width }

// drawable reports whether a line at x can be drawn on the lay's wall: between its
// corners, and not in openings from the foot to the head.
func (h *hung) drawable(y *lay, x int64) bool {
	if !h.isOnWall(y, x) {
		return false
	}
	for i := range h.columns[y.wall] {
		if c := &h.columns[y.wall][i]; c.x.lo <= x && x <= c.x.hi && c.hasFace(2*x) {
			return true
		}
	}
	return false
}

// hasFace reports whether there is any place in the lay where a line can be drawn.
func (h *hung) hasFace(y *lay) bool {
	for i := range h.columns[y.wall] {
		c := &h.columns[y.wall][i]
		x := span{max(c.x.lo, y.x.lo, 0), min(c.x.hi, y.x.hi, h.walls[y.wall].width)}
		if x.hi-x.lo > 1 && c.hasFace(x.lo+x.hi) {
			return true
		}
	}
	return false
}

// hasFace reports whether the column has any height on the upright at half/2.
func (c *column) hasFace(half int64) bool {
	for _, b := range c.bands {
		if r := b.at(half); r.foot.below(r.head) {
			return true
		}
	}
	return false
}

// judgeSheetPlumbs: the sheet of lays i to n has the lines it needs, at the
// part that is set plumb.
func (h *hung) judgeSheetPlumbs(i, n int, drawn []int) {
	k := h.plumbLay(i, n)
	for j := i; j < n; j++ {
		want := 0
		if j == k && h.hangs(k) && h.cutLoose(k) {
			want = 1
		}
		h.same(PlumbLine, h.lays[j].at(), "number of plumb lines", want, drawn[j])
	}
}

// hangs reports whether the drop of lay k needs paper at all.
func (h *hung) hangs(k int) bool { return h.l.Drops[h.lays[k].drop].Number > 0 }

// cutLoose reports whether the sheet that is set plumb at lay k stands free of
// any plumb sheet on its wall, seen from the start.
func (h *hung) cutLoose(k int) bool {
	inner := k - 1
	switch {
	case k == h.anchor:
		return true
	case k < h.anchor:
		inner = k + 1
	}
	y, before := &h.lays[k], &h.lays[inner]
	edge := y.x.lo
	if k < h.anchor {
		edge = y.x.hi
	}
	if before.wall != y.wall || !h.hangs(inner) || h.isOnWall(y, edge) && !h.drawable(y, edge) {
		return true
	}
	// A sheet that has come round a corner is no guide, however it leans.
	folded := before.joined
	if k < h.anchor {
		folded = inner+1 < len(h.lays) && h.lays[inner+1].joined
	}
	if inner == h.anchor {
		folded = false
	}
	return folded
}
