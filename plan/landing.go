package plan

import (
	"firstdrop/hanging"
	"firstdrop/measure"
)

// Two halves meet over an opening wherever on it their kill seam stands. Before that, each
// goes on from where it lands, a width at a time, and so the seams over the opening are
// known, and how many there are at the least; but not how many of them are of which half:
//
//	───┬────┬──╴╴╴╴╴╴╴╴╴╴┬────┬───
//	   │    │  ┊    ┊    │    │       seams that the right half may have: ┊ on a, b …
//	   │  ┌─┼──a────b────┼──┐ │       the left half: on c, d …
//	   │  │ ┊  d    c    ┊  │ │       one of a, b with one of c, d; or a and b; or c and d
//	   └──┘                 └─┘

// landing is where a half comes to an opening.
type landing struct {
	at  measure.Length // how far along the wall its last sure drop begins
	cut bool           // but that comes round a corner and reaches over the opening: where it ends
}

// overlap is what it takes to close the gap between two halves over an opening.
type overlap struct {
	drops  int               // at the least; but those that are cut
	seams  int               // between them, beside the kill seam
	weight int64             // what these weigh at the least
	seam   [2]measure.Length // by side of the halves: where the first of them may stand
	last   [2]measure.Length // where the drop before that begins; not on the wall if it comes round a corner
}

// upTo adds the drops of a half before the kill place: all but the last. For a
// kill place on a wall it returns where the half lands; false if that is not known.
func (m *combiner) upTo(total *sum, kill int, k *link, side hanging.Side) (l landing, ok bool) {
	place := &m.s.kills[kill]
	if place.kill.Kind != hanging.OnWall {
		total.add(&k.sum)
		total.score += m.crossed(k)
		if k.nth > 0 || k.at.spot.T < m.s.run.Run.Walls[k.at.spot.Wall].Width {
			total.score += m.s.task.Taste.Weights.Drop
			total.add(&m.sure[kill][side])
		}
		return l, false
	}
	total.add(&k.inSum)
	n := k.in
	if n == nil {
		return l, false
	}
	l, whole, seam := m.landed(place, n, k.inBefore.edge)
	if l.cut {
		cut := m.v.cutOff()
		total.sub(&k.inBefore.edge.sum)
		total.add(&cut)
		total.add(&m.sure[kill][side])
		return l, true
	}
	first := int64(0)
	if n.count > 0 {
		first = m.v.seamToWhole(&k.inBefore, n)
	}
	if l.at > n.spot.T {
		total.score += first
		total.add(&whole)
	} else {
		seam = first
	}
	if l.at < m.near(place, side) {
		total.score += seam
		total.add(&m.sure[kill][side])
	}
	return l, true
}

// landed returns where a half lands that comes to the wall of a kill place at a node, by a
// drop round a corner or not; what the whole drops before that come to, and the seam after
// them.
func (m *combiner) landed(place *killPlace, n *node, by *pass) (l landing, whole sum, seam int64) {
	near := m.near(place, n.spot.Side)
	switch {
	case m.isCut(place, n, by):
		return landing{n.spot.T, true}, sum{}, 0
	case n.count > 0 && n.spot.T+m.v.width <= near:
		whole, n, seam = m.before(n, near)
	}
	return landing{at: n.spot.T}, whole, seam
}

// isCut reports whether a drop by which a half comes round a corner, to a node on the wall of
// a kill place, reaches into that.
func (m *combiner) isCut(place *killPlace, n *node, by *pass) bool {
	return by != nil && n.spot.T > m.near(place, n.spot.Side)
}

// near returns how far along its wall a kill place begins.
func (m *combiner) near(place *killPlace, side hanging.Side) measure.Length {
	if side == hanging.Left {
		return m.s.run.Run.Walls[place.kill.Wall].Width - place.span.Hi
	}
	return place.span.Lo
}

// before adds the whole drops from a node on that stand before a place on the wall, and
// returns where the next one begins, and what the seam before that weighs.
func (m *combiner) before(n *node, near measure.Length) (t sum, at *node, seam int64) {
	t, at = n.sums, n
	for at.next != nil && at.spot.T+m.v.width <= near {
		if row := (near - at.spot.T) / m.v.width; int(row) < at.run { // the place is in a row of drops that stand alike
			spot := at.spot
			spot.T += row * m.v.width
			at = m.v.node(spot, m.v.oddAfter(at, int(row)))
			seam = m.v.seamBefore(at.spot, at.odd)
			break
		}
		at, seam = at.next, at.seam
	}
	t.sub(&at.sums)
	t.score -= seam
	return t, at, seam
}

// cross adds the drops over an opening that it takes to close the gap between two halves,
// and the seams between them. Drops that begin beside the opening have been counted with
// their pieces; the others stand over it.
func (m *combiner) cross(total *sum, kill int, right, left landing) {
	place := &m.s.kills[kill]
	o := m.overlap(place, right, left)
	total.score += int64(o.drops)*m.s.task.Taste.Weights.Drop + o.weight
	over := o.drops
	for side, l := range [2]landing{hanging.Right: right, hanging.Left: left} {
		if l.at < m.near(place, hanging.Side(side)) {
			over--
		}
	}
	total.addPieces(&m.over[kill], int64(max(over, 0)))
}

// overlap returns what it takes to close the gap between two halves.
func (m *combiner) overlap(place *killPlace, right, left landing) (o overlap) {
	width, w := m.s.run.Run.Walls[place.kill.Wall].Width, m.v.width
	o.drops = int(max((width-right.at-left.at+w-1)/w, 0))
	o.seams = o.drops - 2
	for side, l := range [2]landing{hanging.Right: right, hanging.Left: left} {
		o.last[side], o.seam[side] = l.at, l.at+w
		if l.cut {
			o.seams++
			o.last[side], o.seam[side] = -1, l.at
		}
	}
	o.last[hanging.Left], o.seam[hanging.Left] = width-o.last[hanging.Left], width-o.seam[hanging.Left]
	o.seams = max(o.seams, 0)
	o.weight = m.seamsOver(place.kill.Wall, o.seam, o.seams)
	return o
}

// seamsOver returns what so many seams on a wall weigh at the least, some from one place on
// to the right, a width apart, and the others from another to the left.
func (m *combiner) seamsOver(wall int, from [2]measure.Length, seams int) int64 {
	total := int64(0)
	for i := range seams {
		total += m.v.seamOn(wall, from[hanging.Left]-measure.Length(i)*m.v.width)
	}
	least := total
	for i := range seams {
		total += m.v.seamOn(wall, from[hanging.Right]+measure.Length(i)*m.v.width)
		total -= m.v.seamOn(wall, from[hanging.Left]-measure.Length(seams-1-i)*m.v.width)
		least = min(least, total)
	}
	return least
}

// moreAt returns what drops and seams over an opening weigh more at the least, than has been
// told of them, if the kill seam stands at x: all seams of either half before that, the drops
// that they ask for, and strips at the kill seam that are slivers.
func (m *combiner) moreAt(place *killPlace, o *overlap, over *sum, x measure.Length) int64 {
	wall, w, seams, more := place.kill.Wall, m.v.width, 0, -o.weight
	right, from := o.last[hanging.Right], o.seam[hanging.Right]
	for ; from < x; from += w {
		more += m.v.seamOn(wall, from)
		right, seams = from, seams+1
	}
	left, to := o.last[hanging.Left], o.seam[hanging.Left]
	for ; to > x; to -= w {
		more += m.v.seamOn(wall, to)
		left, seams = to, seams+1
	}
	if right >= x || left <= x { // at the start itself: one half has no drop
		seams--
	}
	more += int64(max(seams-o.seams, 0)) * (m.s.task.Taste.Weights.Drop + over.cut)
	if right > 0 && right < x {
		more += m.v.j.slim(wall, x-right)
	}
	if left < m.s.run.Run.Walls[wall].Width && left > x {
		more += m.v.j.slim(wall, left-x)
	}
	return more
}

// keepsSeam reports whether a seam at a place on a wall is there wherever the kill seam
// stands at its own.
func (m *combiner) keepsSeam(place *killPlace, wall int, x measure.Length) bool {
	return x > 0 && x < m.s.run.Run.Walls[wall].Width &&
		(place.kill.Kind != hanging.OnWall || place.kill.Wall != wall || x < place.span.Lo || x > place.span.Hi)
}
