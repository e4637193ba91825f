package hanging

import (
	"firstdrop/geom"
	"firstdrop/measure"
)

// addPlumbs lists the plumb lines in hanging order: one for drop 0, one for
// every part that is cut loose, one for the first drop after every corner and
// after a stretch without paper: also where the seam before it stands in an opening from
// the foot of the wall to its head, so that there is no edge to butt it to. A drop that
// needs no paper has none. A sheet is set by its far edge in the direction of hanging
// where that lies on the wall, as the first plumb line of a room stands one width from
// its corner; otherwise by its near edge. Where openings from the foot of the wall to
// its head are in the way of both, or of one while the other is in the corner, the line
// is drawn between them where the wall is tallest, and the sheet set so that its edge
// stands beyond:
//
//	 cabinet │  wall  │ cabinet
//	         │   ┊    │
//	┌╌╌╌╌╌╌╌╌┼───┊────┼╌╌╌╌╌╌┐  the sheet: both its edges
//	┆        │   ┊    │      ┆  would stand in cabinets
//	         │   ┊line│
//	◄─── beyond ─┤
func (h *Hanger) addPlumbs(l *Layout) {
	h.plumbWay(l, h.ahead, Right)
	h.plumbWay(l, h.back, Left)
}

// plumbWay adds the lines of one way from the start.
func (h *Hanger) plumbWay(l *Layout, steps []step, far Side) {
	before := 0
	for _, s := range steps {
		index, p := s.drop, Part{Wall: s.wall, X: s.t}
		if far == Left {
			index, p = -s.drop, l.faced(s)
		}
		// The drop before, seen from the start, is a guide only where it hangs.
		alone := index != before && (!l.hangs(before) || h.isApart(&p, far))
		before = index
		if (s.plumb || alone) && l.hangs(index) {
			h.plumb(l, index, p, far)
		}
	}
}

// isApart reports whether a part that goes on to a side begins where its wall has no face.
func (h *Hanger) isApart(p *Part, far Side) bool {
	x := p.X.Lo
	if far == Left {
		x = p.X.Hi
	}
	return 0 < x && x < h.walls[p.Wall].width && !h.hasFace(p.Wall, x)
}

// hangs reports whether the drop with that index needs paper.
func (l *Layout) hangs(index int) bool { return l.Drops[index-l.Drops[0].Index].Number > 0 }

// plumb adds the line for the part of the drop with that index that p is, or
// is the first half of.
func (h *Hanger) plumb(l *Layout, index int, p Part, far Side) {
	drop := index - l.Drops[0].Index
	for i, q := range l.Drops[drop].Parts {
		if q.Wall != p.Wall || q.X.Intersection(p.X) != p.X {
			continue
		}
		b := Plumb{Wall: q.Wall, X: q.X.Hi, Drop: drop, Part: i, Edge: far, From: far.Opposite()}
		if far == Left {
			b.X = q.X.Lo
		}
		l.Plumbs = append(l.Plumbs, h.drawable(b, q.X))
		return
	}
}

// drawable moves a line that would set the part at x by its far edge to where it can
// be drawn. A part from corner to corner is set by the corner itself, and one without
// any face by its edge.
func (h *Hanger) drawable(b Plumb, x geom.Interval) Plumb {
	if h.hasFace(b.Wall, b.X) {
		return b
	}
	other := b
	other.X, other.Edge = x.Lo+x.Hi-b.X, b.Edge.Opposite()
	if h.hasFace(b.Wall, other.X) {
		return other
	}
	isOn := func(x measure.Length) bool { return 0 < x && x < h.walls[b.Wall].width }
	if at, ok := h.tallest(b.Wall, x); ok && (isOn(b.X) || isOn(other.X)) {
		b.X, b.Beyond = at, (b.X - at).Abs()
		return b
	}
	if !isOn(b.X) {
		return other
	}
	return b
}

// hasFace reports whether a wall has a face at x, between its corners, on which a
// line can be drawn; beside an opening it can.
func (h *Hanger) hasFace(wall int, x measure.Length) bool {
	if x <= 0 || x >= h.walls[wall].width {
		return false
	}
	for _, c := range h.walls[wall].face.Cells(geom.Interval{Lo: x - 1, Hi: x + 1}) {
		if c.At(x).Length() > 0 {
			return true
		}
	}
	return false
}

// tallest returns the middle of the tallest stretch of a wall's face within x, and of
// the widest of those, rounded to what lengths are cut by; false without any.
func (h *Hanger) tallest(wall int, x geom.Interval) (at measure.Length, ok bool) {
	var tall, wide measure.Length
	for _, c := range h.walls[wall].face.Cells(x.Intersection(geom.Interval{Hi: h.walls[wall].width})) {
		middle := c.X.Lo + c.X.Length()/2
		y := c.At(middle).Length()
		if y <= 0 || middle <= c.X.Lo || y < tall || y == tall && c.X.Length() <= wide {
			continue
		}
		if step := middle.RoundTo(h.rules.CutStep); c.X.Lo < step && step < c.X.Hi {
			middle = step
		}
		at, tall, wide, ok = middle, y, c.X.Length(), true
	}
	return at, ok
}
