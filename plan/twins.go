package plan

import (
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
)

// A start on the next wall often gives the drops that this one gives: where the drop that
// turns the corner between them leaves the same seams from either side, all others stand
// alike too. Only the sheet that laps in the corner is another, and that weighs something
// or nothing:
//
//	    wall A           c        wall B
//	──┬───────┬───────┬──┬────┬───────┬──      from a the drops come to c from the left,
//	  a       │       │  │    b       │        from b from the right: twins, if no kill seam
//	──┴───────┴───────┴──┴────┴───────┴──      and no new drop stands between a and b
//
// So of two twins only the better is tried, and of two that weigh the same the one on the
// list before. That leaves few starts of a long run: as many as stand on one wall, more or
// less, for every place of the kill seam.

// twins finds the starts that give the same drops as others.
type twins struct {
	m     *combiner
	walls []wallStarts
	next  [2][]twin    // by whether the first drop counts as odd, and start
	prior [2][]prior   // the same
	far   [][2]sparing // by start and side
	turn  int          // drops stand alike again after so many
}

// wallStarts are the starts of a wall that stand in a row.
type wallStarts struct {
	first, n   int
	from, step measure.Length
	plumb      bool // both its corners are; others leave other seams from either side
}

// twin is the next twin to the right.
type twin struct {
	start   int32 // −1: none
	drops   int32 // from the one's seam to the other's
	more    int64 // what it weighs more
	corners int8  // how many are between; 0: not asked
}

// prior is the next twin to the left.
type prior struct {
	start  int32 // −1: none
	parity int8  // by whether its first drop counts as odd, plus one; 0: not asked
}

// mostTwinWalls is up to how many walls of a run are counted.
const mostTwinWalls = 120

// newTwins returns the twins of all starts; nil where the way in which a layout is counted
// tells them apart, or the starts do not stand in rows.
func (m *combiner) newTwins() *twins {
	s := m.s
	if s.signer == nil || s.gather != nil || m.walls == 1 || m.walls > mostTwinWalls || len(s.starts) < fewStarts {
		return nil
	}
	t := &twins{m: m, walls: make([]wallStarts, m.walls), turn: m.turn()}
	for i := range t.walls {
		left, right := s.run.Run.LeanAt(i)
		t.walls[i].plumb = left == 0 && right == 0
	}
	n := 0
	for _, l := range s.lines() {
		l.step *= s.coarse / s.step
		if w := &t.walls[l.wall]; w.n == 0 {
			w.first, w.n, w.from, w.step = n, l.starts(), l.from, l.step
		}
		n += l.starts()
	}
	if n != s.own { // those round the best of a coarser grid
		return nil
	}
	for odd := range t.next {
		if odd == 0 || m.v.turns {
			t.next[odd], t.prior[odd] = make([]twin, len(s.starts)), make([]prior, len(s.starts))
		}
	}
	t.far = make([][2]sparing, len(s.starts))
	return t
}

// turn returns after how many drops a layout may begin as well: after each, if the design
// height is free, so that it does not matter at which height of an offset match.
func (m *combiner) turn() int {
	p, s := m.v.j.paper, m.s
	switch {
	case p.Match.Reversing && p.Alternatives()%2 != 0:
		return 2 * p.Alternatives()
	case p.Match.Reversing || s.rounds || len(s.base) > 0 || s.run.Fixed.Design != nil:
		return p.Alternatives()
	}
	return 1
}

// at returns the start at a place on a wall; −1 if there is none.
func (t *twins) at(wall int, x measure.Length) int {
	w := &t.walls[wall]
	if w.n == 0 || x < w.from || (x-w.from)%w.step != 0 || int((x-w.from)/w.step) >= w.n {
		return -1
	}
	return w.first + int((x-w.from)/w.step)
}

// twinsCount returns round how many corners twins of a start count, of so many on the way to
// a kill place. Those on the wall of a kill seam do not.
func twinsCount(place *killPlace, corners int) int {
	if place.kill.Kind == hanging.OnWall {
		return corners - 1
	}
	return corners
}

// spares reports whether a choice need not be tried whose halves go on without a new drop
// round so many corners to the right and to the left.
func (t *twins) spares(c *choiceAt, gap *killGap, right, left int) bool {
	place, i := &t.m.s.kills[c.kill], int(c.start)
	right, left = min(right, twinsCount(place, gap.right)), min(left, twinsCount(place, gap.left))
	return right >= t.of(i, hanging.Right) || left >= t.of(i, hanging.Left)
}

// without returns those of some ends with which a start need be tried, of which it comes to
// some when it has gone all the way round to a side.
func (t *twins) without(i int, asked ends, around *[2]ends) (left ends) {
	o, n, wall := t.m.out, t.m.walls, t.m.s.starts[i].Wall
	for side := range around {
		if come := around[side].and(asked); !come.isEmpty() && t.of(i, hanging.Side(side)) >= n {
			left = left.or(come)
		}
	}
	if asked = asked.without(o.own[wall]); asked.isEmpty() {
		return left
	}
	// No twin stands before those that are fewer walls away than it, from either side.
	var beyond ends
	right := t.of(i, hanging.Right)
	for away := max(0, n-t.of(i, hanging.Left)); away <= min(right, n-1); away++ {
		at := (wall + away) % n
		if beyond = beyond.or(o.own[at]); away < right {
			beyond = beyond.or(o.on[hanging.Right][at])
		}
	}
	return left.or(beyond.and(asked))
}

// spareMany reports whether more than a quarter of some starts need not be tried with ends on
// other walls.
func (t *twins) spareMany() bool {
	const some = 40
	asked, spared := 0, 0
	for i := 0; i < t.m.s.own; i += max(1, t.m.s.own/some) {
		asked++
		if t.of(i, hanging.Right)+t.of(i, hanging.Left) < t.m.walls { // one or the other stands before any of them
			spared++
		}
	}
	return 4*spared > asked
}

// sparesAll reports whether a start need not be tried at all.
func (t *twins) sparesAll(i int) bool {
	m := t.m
	if m.renews {
		return false
	}
	c := choiceAt{start: int32(i)}
	for k := range m.s.kills {
		if !m.isOffered(i, k) {
			continue
		}
		c.kill = int16(k)
		gaps, n := m.gaps(i, k)
		for g := range gaps[:n] {
			if !t.spares(&c, &gaps[g], m.walls, m.walls) {
				return false
			}
		}
	}
	return true
}

// of returns how many corners to one side the nearest twin of a start is away that spares
// it; more than there are if there is none.
func (t *twins) of(i int, side hanging.Side) int { return int(t.find(i, side).corners) }

// sparing is the nearest twin to one side that spares a start.
type sparing struct {
	corners int8  // how far it is away; more than there are if there is none, 0: not asked
	start   int32 // which start it is
	more    int64 // what it weighs more
}

// inQuestion marks a start of which that is being found out.
const inQuestion = -1

// find looks for that twin.
func (t *twins) find(i int, side hanging.Side) *sparing {
	return t.findFrom(i, side, t.m.walls)
}

// findFrom does so, and on the way asks twins that do not spare the start for those that
// spare them: what stands between spares neither. It asks one after the other, up to so many
// deep.
//
//	i ── no ── no ── no ── yes        by how much each weighs more than i: 10, 20, 10, −10
//	     └───────────────────┘        the first knows of the last
func (t *twins) findFrom(i int, side hanging.Side, deep int) *sparing {
	f := &t.far[i][side]
	if f.corners != 0 {
		return f
	}
	f.corners = inQuestion
	corners, more, asks := 0, int64(0), deep > 0 && t.turn == 1 && !t.m.v.turns
	at, drops := t.from(i, side)
	for first := true; ; first = false {
		var known *sparing
		if asks && !first {
			if known = t.findFrom(at, side, deep-1); known.corners == inQuestion {
				known = nil
			}
		}
		if known != nil {
			at, corners, more = int(known.start), corners+int(known.corners), more+known.more
		} else if by := t.step(&at, side, drops%2 != 0); by != nil {
			corners, drops = corners+int(by.corners), drops+int(by.drops)
			if side == hanging.Right {
				more += by.more
			} else {
				more -= by.more
			}
		}
		switch {
		case at < 0 || corners >= t.m.walls:
			*f = sparing{int8(t.m.walls + 1), -1, 0}
			return f
		case drops%t.turn == 0 && (more < 0 || more == 0 && at < i):
			*f = sparing{int8(corners), int32(at), more}
			return f
		}
	}
}

// step goes to the next twin to a side, and returns what the left one of the two says of the
// other; nil, and to −1, if there is none.
func (t *twins) step(at *int, side hanging.Side, odd bool) (by *twin) {
	switch {
	case *at < 0:
		return nil
	case side == hanging.Right:
		by = t.right(*at, odd)
		*at = int(by.start)
	default:
		*at, by = t.left(*at, odd)
	}
	return by
}

// from returns the start at the first seam on the wall of a start, from which its twins to a
// side are looked for, and how many drops that is nearer to them: less than none, if it is
// farther. Where drop 0 comes round the left corner, that seam is the one after it. It is −1 if
// there is none.
func (t *twins) from(i int, side hanging.Side) (at, drops int) {
	start := t.m.s.starts[i]
	switch {
	case start.X < 0 && side == hanging.Left:
		return t.at(start.Wall, start.X+t.m.v.width), -1
	case start.X < 0:
		return t.at(start.Wall, start.X+t.m.v.width), 1
	}
	if drops = int(start.X / t.m.v.width); drops == 0 {
		return i, 0
	}
	if side == hanging.Right {
		drops = -drops
	}
	return t.at(start.Wall, start.X%t.m.v.width), drops
}

// right returns the next twin to the right of a start, whose first drop to the right counts
// as odd or even.
func (t *twins) right(i int, odd bool) *twin {
	v, parity := t.m.v, t.parity(odd)
	b := &t.next[parity][i]
	if b.corners > 0 {
		return b
	}
	*b = twin{start: -1, corners: 1}
	start := t.m.s.starts[i]
	if start.X < 0 {
		return b
	}
	n := v.node(v.h.Spot(hanging.Right, start.Wall, start.X), parity == 1)
	corner := n.corner
	e := v.pass(corner, -1)
	if e.to == nil || !t.walls[start.Wall].plumb || !t.walls[e.to.spot.Wall].plumb {
		return b
	}
	back := v.h.X(e.to.spot)
	other := v.node(v.h.Spot(hanging.Left, e.to.spot.Wall, back), corner.odd)
	at := t.at(e.to.spot.Wall, back)
	if at < 0 || other.count > 0 {
		return b
	}
	f := v.pass(other, -1)
	if f.to == nil || !t.sameDrop(e, f) {
		return b
	}
	*b = twin{start: int32(at), drops: int32(n.count + 1), corners: int8(e.corners), more: t.turning(other, f) - t.turning(corner, e)}
	if t.at(start.Wall, start.X) == i {
		t.prior[t.parity((parity == 1) != (b.drops%2 != 0))][at] = prior{int32(i), int8(parity) + 1}
	}
	return b
}

// turning returns what a drop weighs that turns corners, with the seams on both sides of it.
func (t *twins) turning(n *node, e *pass) int64 {
	v := t.m.v
	return v.seamToPass(&before{whole: n}, n, -1) + e.sum.score + v.seamToWhole(&before{edge: e, from: n}, e.to)
}

// sameDrop reports whether a drop that comes round corners from either side covers the same,
// and is cut alike.
func (t *twins) sameDrop(e, f *pass) bool {
	sum := f.sum
	sum.score = e.sum.score
	if sum != e.sum || len(e.parts) != len(f.parts) {
		return false
	}
	for i := range e.parts {
		p, q := &e.parts[i], &f.parts[i]
		if p.Wall != q.Wall || p.Joined != q.Joined || p.Skew != q.Skew {
			return false
		}
		wall := geom.Interval{Hi: t.m.s.run.Run.Walls[p.Wall].Width}
		x := p.X.Intersection(wall)
		if x != q.X.Intersection(wall) || p.Across.Lo-p.X.Lo != q.Across.Lo-q.X.Lo {
			return false
		}
	}
	return true
}

// parity returns 1 for odd drops where these differ from even ones.
func (t *twins) parity(odd bool) int {
	if odd && t.m.v.turns {
		return 1
	}
	return 0
}

// left returns the next twin to the left of a start, and what it says of this one; −1 if
// there is none.
func (t *twins) left(i int, odd bool) (at int, by *twin) {
	p := &t.prior[t.parity(odd)][i]
	if p.parity == 0 {
		at, odd = t.seekLeft(i, odd)
		*p = prior{int32(at), int8(t.parity(odd)) + 1}
	}
	if p.start < 0 {
		return -1, nil
	}
	return int(p.start), &t.next[p.parity-1][p.start]
}

// seekLeft returns that twin, and whether its first drop counts as odd.
func (t *twins) seekLeft(i int, odd bool) (at int, first bool) {
	v, start := t.m.v, t.m.s.starts[i]
	n := v.node(v.h.Spot(hanging.Left, start.Wall, start.X), !odd)
	if n.count > 0 {
		return -1, false
	}
	e := v.pass(n, -1)
	if e.to == nil {
		return -1, false
	}
	spot := e.to.corner.spot
	first = odd != ((e.to.count+1)%2 != 0)
	if at = t.at(spot.Wall, v.h.X(spot)); at < 0 || int(t.right(at, first).start) != i {
		return -1, false
	}
	return at, first
}
