package plan

import (
	"slices"

	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/room"
)

// Two halves make a layout: from the start so many corners to the right, so many
// to the left, and both ways end at the kill place. What the halves come to up to
// their last drops is at hand; what the kill seam weighs follows from how far the
// design has come on either side. The last drops themselves, and the seam at the
// start, are left to the sketch: without them the sum is a bound.

// way is one half as it goes from the start with new drops in some corners.
type way struct {
	links []link // at the corners from number from on
	from  int
	sum   sum // of all before links
	new   [mostNew]int16
	n     int // how many new drops
	whole int // round how many corners it goes on before the first
}

// at returns the link at the corner number i from the start.
func (w *way) at(i int) *link {
	if i < w.from || i-w.from >= len(w.links) {
		return nil
	}
	return &w.links[i-w.from]
}

// renew goes on from a new drop in a corner, that number i from the start.
func (w *way) renew(corner, i int) {
	if w.n == 0 {
		w.whole = i
	}
	w.new[w.n] = int16(corner) + 1
	w.n++
	w.from = i + 1
}

// renewWalls is up to how many walls new drops are tried with every start; in longer runs see
// renew.go.
const renewWalls = 12

// scan offers every so many-th start with every kill place; where one can look ahead, all
// those of which something may come.
func (s *search) scan(every int) {
	m := newCombiner(s)
	s.closeup.m = m
	m.renews = m.walls <= renewWalls && s.best.layout != nil || m.forced
	if every == 1 {
		m.twins = m.newTwins()
	}
	if m.out = m.outlookOf(); m.out != nil {
		m.bestFirst()
		return
	}
	for i := 0; i < len(s.starts) && !s.task.isStopped(); i += every {
		m.start(i)
		s.tellStarts(i)
	}
}

// startsAtOnce is how many starts are offered before choices are looked at. Of the first of
// them fewFinished layouts are laid out in full whatever they promise, so that there is a
// good one where bounds settle nothing.
const (
	startsAtOnce = 32
	fewFinished  = 8
)

// bestFirst offers the most promising starts first, and in between looks at the choices
// that promise more than the next start.
func (m *combiner) bestFirst() {
	s := m.s
	m.out.promise()
	for n := 0; ; n++ {
		p, ok := m.out.next()
		if !ok {
			return
		}
		switch {
		case n == startsAtOnce:
			s.settle(fewFinished, never)
		case n%startsAtOnce == 0:
			s.settle(untilSettled, p.bound)
		}
		if s.task.isStopped() || s.isBeaten(p.bound) {
			return
		}
		m.start(p.start)
		s.tellStarts(n)
	}
}

// combiner puts halves together.
type combiner struct {
	s      *search
	v      *halves
	walls  int
	most   int      // in how many corners new drops are tried
	forced bool     // in some they are fixed
	sure   [][2]sum // by kill place: the piece that surely ends a half there
	over   []sum    // by kill place over an opening: the pieces of a drop that stands there
	told   []bool   // by wall: what its end strips weigh
	focal  bool     // some are told of
	renews bool     // they are tried
	out    *outlook // nil: none
	twins  *twins   // nil: none
	lost   [2]bool  // with the kill place at hand: nothing better comes of it without, with new drops
	least  pair     // what it weighs at the least

	begin       int // the start
	first       int // the index of the first drop to the right of it
	z           measure.Length
	wall        int
	unequalEnds int64 // what the end strips of its wall weigh if the kill seam stands on another
	seam        int64 // what its seam weighs at the least
	ways        [2][]way
	arena       []link
	l           hanging.Layout
	ends        [2][1]hanging.Part
}

func newCombiner(s *search) *combiner {
	f := &s.run.Fixed
	m := &combiner{most: max(triedNew, len(f.NewDrop)), forced: len(f.NewDrop) > 0, s: s, v: s.halves, walls: len(s.run.Run.Walls), sure: make([][2]sum, len(s.kills))}
	for k := range s.kills {
		m.over = append(m.over, m.v.overOpening(&s.kills[k]))
		m.sure[k] = [2]sum{m.ending(&s.kills[k], hanging.Left), m.ending(&s.kills[k], hanging.Right)}
	}
	m.told = m.toldEnds()
	m.focal = slices.Contains(m.told, true)
	return m
}

// ending returns the piece that is sure to end the half that comes to a kill
// place from its start to that side.
func (m *combiner) ending(place *killPlace, side hanging.Side) sum {
	wall, x := place.kill.Wall, measure.Length(0)
	switch {
	case place.kill.Kind == hanging.OnWall && place.opening < 0:
		return sum{}
	case place.kill.Kind == hanging.OnWall && side == hanging.Right:
		return m.v.surely(wall, place.span.Lo-hair)
	case place.kill.Kind == hanging.OnWall:
		return m.v.surely(wall, place.span.Hi)
	case side == hanging.Right && place.kill.Kind == hanging.NoKill:
		wall = m.walls - 1
	case side == hanging.Left && place.kill.Kind == hanging.NoKill:
		wall = 0
	case side == hanging.Left:
		wall = (wall + 1) % m.walls
	}
	if side == hanging.Right {
		x = m.s.run.Run.Walls[wall].Width - hair
	}
	return m.v.surely(wall, x)
}

// fewStarts is up to how many starts nobody looks ahead.
const fewStarts = 32

// start offers one start.
func (m *combiner) start(i int) {
	if m.out != nil && m.out.isHopeless(i) {
		return
	}
	if m.twins != nil && m.twins.sparesAll(i) {
		return
	}
	if !m.halve(i) {
		m.outright(i)
		return
	}
	if m.renews && (m.out == nil || m.out.mayRenew()) {
		m.renew(hanging.Right)
		m.renew(hanging.Left)
	}
	var bounds []pair
	if m.out != nil {
		bounds = m.out.boundsOf(i)
	}
	for k := range m.s.kills {
		if m.out != nil {
			e := m.out.endOf[k]
			m.lost, m.least = m.out.ends[e].lost, bounds[e]
		}
		if m.isOffered(i, k) && !(m.lost[0] && m.lost[1]) {
			m.kill(k)
		}
	}
}

// isOffered reports whether a start is tried with a kill place.
func (m *combiner) isOffered(i, k int) bool {
	kill := &m.s.kills[k].kill
	return i < m.s.own || kill.Kind == hanging.OnWall && kill.Wall == m.s.starts[i].Wall
}

// halve walks both ways from a start; false if drop 0 reaches round both corners
// of its wall, so that there is no seam to walk from.
func (m *combiner) halve(i int) bool {
	z, first, ok := m.seamOf(i)
	if !ok {
		return false
	}
	m.begin, m.first, m.wall, m.z, m.arena = i, first, m.s.starts[i].Wall, z, m.arena[:0]
	var nodes [2]*node
	for _, side := range [2]hanging.Side{hanging.Right, hanging.Left} {
		n := m.firstNode(i, side, z, first)
		m.ways[side] = append(m.ways[side][:0], way{links: m.linked(n, before{}, m.walls+1), whole: m.walls})
		nodes[side] = n
	}
	m.unequalEnds, m.seam = m.unequalAt(nodes[hanging.Right], nodes[hanging.Left]), m.v.seamOn(m.wall, z)
	return true
}

// seamOf returns where on its wall the seam of a start stands from which the halves
// go, and the index of the first drop to the right of it; false if there is none.
func (m *combiner) seamOf(i int) (z measure.Length, first int, ok bool) {
	start := m.s.starts[i]
	if start.X >= 0 {
		return start.X, 0, true
	}
	z = start.X + m.v.width
	return z, 1, z <= m.s.run.Run.Walls[start.Wall].Width
}

// firstNode returns where a half of a start begins.
func (m *combiner) firstNode(i int, side hanging.Side, z measure.Length, first int) *node {
	return m.v.node(m.v.h.Spot(side, m.s.starts[i].Wall, z), (first+int(1-side))%2 != 0)
}

// linked returns the links of a half, in the arena. As [outlook.passed] it is not inlined.
//
//go:noinline
func (m *combiner) linked(n *node, b before, most int) []link {
	if cap(m.arena)-len(m.arena) < most {
		m.arena = make([]link, 0, max(2*cap(m.arena), 4*most))
	}
	at := len(m.arena)
	m.arena = m.v.links(m.arena, n, b, most)
	links := m.arena[at:len(m.arena):len(m.arena)]
	if m.focal {
		m.addCrossed(links)
	}
	return links
}

// outright offers a start at which drop 0 reaches round both corners of its wall:
// it has no halves, and is sketched with every kill place.
func (m *combiner) outright(i int) {
	for k := range m.s.kills {
		c := choiceAt{start: int32(i), kill: int16(k), x: m.s.kills[k].kill.X}
		m.s.offer(c)
		for corner, it := range m.s.run.Run.Corners {
			if it.Kind == room.Inside && !m.killedAt(k, corner) {
				c.new[0] = int16(corner) + 1
				m.s.offer(c)
			}
		}
	}
}

// killedAt reports whether the kill place is that corner.
func (m *combiner) killedAt(k, corner int) bool {
	kill := &m.s.kills[k].kill
	return kill.Kind == hanging.AtCorner && kill.Wall == corner
}

// renew adds the ways on which new drops begin in inside corners.
func (m *combiner) renew(side hanging.Side) {
	for w := 0; w < len(m.ways[side]); w++ {
		from := m.ways[side][w]
		if from.n == m.most {
			return
		}
		for i := from.from; i < m.walls; i++ {
			if next, ok := m.given(side, &from, i); ok {
				m.ways[side] = append(m.ways[side], next)
			}
		}
	}
}

// given returns the way on which what remains at the corner number i is given up.
func (m *combiner) given(side hanging.Side, w *way, i int) (next way, ok bool) {
	corner, ok := m.corner(side, i)
	k := w.at(i)
	if !ok || k == nil {
		return next, false
	}
	t, b, ok := m.giveUp(k, corner)
	if !ok {
		return next, false
	}
	next = *w
	if next.sum.add(&t); m.out != nil && m.out.isLost(&next.sum, b.edge.to) {
		return next, false
	}
	next.renew(corner, i)
	next.links = m.linked(b.edge.to, b, m.walls-i)
	return next, true
}

// giveUp returns what comes of a half up to a corner where what remains is given up, and what
// is before the new drop that begins there; false if none may.
func (m *combiner) giveUp(k *link, corner int) (t sum, b before, ok bool) {
	f := &m.s.run.Fixed
	if m.s.run.Run.Corners[corner].Kind != room.Inside || slices.Contains(f.Carry, corner) || m.forced && !slices.Contains(f.NewDrop, corner) {
		return t, b, false
	}
	e := m.v.pass(k.at, k.nth)
	if e.to == nil || e.corners != k.nth+1 {
		return t, b, false
	}
	t = k.sum
	t.score += m.crossed(k)
	t.score += m.v.seamToPass(&k.before, k.at, k.nth)
	t.add(&e.sum)
	return t, before{edge: e, from: k.at}, true
}

// hopeless reports whether no layout with these drops and one more can be better
// than the best found.
func (m *combiner) hopeless(b *sum) bool {
	left, roll := m.s.best.score-b.score-b.cut, m.s.task.Taste.Weights.Roll
	switch {
	case m.s.best.layout == nil:
		return false
	case left <= 0:
		return true
	case roll <= 0:
		return m.bound(b) >= m.s.best.score
	}
	return m.v.rolls.exceeds(b, min((left-1)/roll, mostRolls))
}

// mostRolls is more rolls than any run takes, and few enough for their lengths and worth to
// be added up.
const mostRolls = 1 << 20

// bound returns what drops weigh at the least, with their rolls.
func (m *combiner) bound(b *sum) int64 {
	return b.score + b.cut + m.v.rolls.rolls(b)*m.s.task.Taste.Weights.Roll
}

// corner returns the index of the corner number i from the start; false where an
// open run ends.
func (m *combiner) corner(side hanging.Side, i int) (int, bool) { return m.cornerFrom(m.wall, side, i) }

// cornerFrom is the same from any wall.
func (m *combiner) cornerFrom(wall int, side hanging.Side, i int) (int, bool) {
	corner := wall + i
	if side == hanging.Left {
		corner = wall - 1 - i
	}
	if !m.s.run.Run.Closed && (corner < 0 || corner >= m.walls-1) {
		return 0, false
	}
	return (corner%m.walls + m.walls) % m.walls, true
}

// kill offers the start with one kill place, on all ways there.
func (m *combiner) kill(k int) {
	gaps, n := m.gaps(m.begin, k)
	for i := range gaps[:n] {
		m.meet(choiceAt{start: int32(m.begin), kill: int16(k), x: gaps[i].x}, &gaps[i])
	}
}

// killGap is where the halves of a start end at a kill place: so many corners to the right
// and to the left of it, and at x if that is on a wall.
type killGap struct {
	x           measure.Length
	right, left int
}

// gaps returns where the halves of a start may end at a kill place. One on the start's own
// wall may lie on either side of drop 0, or reach over it.
func (m *combiner) gaps(i, k int) (gaps [2]killGap, many int) { return m.gapsFrom(m.s.starts[i], k) }

// gapsFrom is the same from any start.
func (m *combiner) gapsFrom(start hanging.Start, k int) (gaps [2]killGap, many int) {
	place, n := &m.s.kills[k], m.walls
	at := place.kill.Wall - start.Wall
	switch {
	case place.kill.Kind == hanging.NoKill:
		gaps[0] = killGap{place.kill.X, n - 1 - start.Wall, start.Wall}
	case place.kill.Kind == hanging.AtCorner:
		gaps[0] = killGap{place.kill.X, (at + n) % n, (2*n - at - 1) % n}
	case at != 0:
		gaps[0] = killGap{place.kill.X, (at + n) % n, (n - at) % n}
	default:
		if x := min(place.kill.X, max(start.X, 0)); x >= place.span.Lo {
			gaps[0], many = killGap{x, n, 0}, 1
		}
		if x := max(place.kill.X, start.X+m.v.width); x <= place.span.Hi {
			gaps[many] = killGap{x, 0, n}
			many++
		}
		return gaps, many
	}
	return gaps, 1
}

// meet offers the start with a kill place where its halves end.
func (m *combiner) meet(c choiceAt, gap *killGap) {
	right, left := gap.right, gap.left
	for r := range m.ways[hanging.Right] {
		a := &m.ways[hanging.Right][r]
		if a.from > right {
			continue
		}
		for l := range m.ways[hanging.Left] {
			b := &m.ways[hanging.Left][l]
			if b.from <= left && a.n+b.n <= m.most && !m.lost[min(a.n+b.n, 1)] {
				if m.twins == nil || !m.twins.spares(&c, gap, a.whole, b.whole) {
					m.join(c, a, b, right, left)
				}
			}
		}
	}
}

// join offers two ways that meet at a kill place.
func (m *combiner) join(c choiceAt, a, b *way, right, left int) {
	place := &m.s.kills[c.kill]
	x, y := a.at(right), b.at(left)
	if x == nil || y == nil {
		return
	}
	total, other := a.sum, b.sum
	if place.kill.Kind != hanging.OnWall || place.kill.Wall != m.wall {
		total.score += m.unequalEnds
	}
	if m.keepsSeam(place, m.wall, m.z) {
		total.score += m.seam
	}
	if m.folds(place, hanging.Right) || m.folds(place, hanging.Left) {
		m.v.motifs.join(&total, &other, m.first)
		m.offer(c, &total, a, b)
		return
	}
	from, ok := m.upTo(&total, int(c.kill), x, hanging.Right)
	to, also := m.upTo(&other, int(c.kill), y, hanging.Left)
	m.v.motifs.join(&total, &other, m.first)
	if ok && also {
		m.cross(&total, int(c.kill), from, to)
	}
	if m.hopeless(&total) {
		return
	}
	if place.kill.Kind != hanging.NoKill {
		total.score += m.closing(place, x, y, int(a.sum.drops), int(b.sum.drops))
	}
	m.offer(c, &total, a, b)
}

// offer offers two ways that come to so much.
func (m *combiner) offer(c choiceAt, total *sum, a, b *way) {
	c.bound = m.bound(total)
	c.rolls, c.local, c.new = c.bound-total.score, total.score, both(a, b)
	c.bound = max(c.bound, m.least[min(a.n+b.n, 1)])
	m.s.offer(c)
}

// both returns the corners of two ways in which new drops begin.
func both(a, b *way) [mostNew]int16 {
	corners := a.new
	copy(corners[a.n:], b.new[:b.n])
	return corners
}

// folds reports whether a kill seam may stand so near the outside corner by which
// a half comes to its wall that the drop before is not cut there but goes round
// whole. That depends on where the seam stands, so sums say nothing.
func (m *combiner) folds(place *killPlace, side hanging.Side) bool {
	if place.kill.Kind != hanging.OnWall {
		return false
	}
	wall := place.kill.Wall
	near, outside := place.span.Lo, m.s.judge.isOutside(wall-1)
	if side == hanging.Left {
		near, outside = m.s.run.Run.Walls[wall].Width-place.span.Hi, m.s.judge.isOutside(wall)
	}
	return outside && near <= m.s.task.Rules.OutsideWrap
}

// closing returns what the kill seam weighs; 0 where that is not known before a
// sketch. right and left are the drops before the links.
func (m *combiner) closing(place *killPlace, x, y *link, right, left int) int64 {
	last, ok := m.last(place, x, hanging.Right, right)
	if !ok {
		return 0
	}
	first, ok := m.last(place, y, hanging.Left, left)
	if !ok {
		return 0
	}
	kill := place.kill
	m.v.h.Closing(&m.l, kill, first, last)
	weight := m.s.judge.seam(&m.l, &m.l.Seams[0], place)
	if place.span.Length() > 0 && m.s.run.Fixed.isKeptOff(kill.Wall, kill.X) { // it may stand elsewhere over the opening
		weight -= offWeight
	}
	return weight
}

// last returns a drop that stands, on the wall where a half ends, as its last one
// does, so many drops before its link; false if there is none that is sure to.
func (m *combiner) last(place *killPlace, k *link, side hanging.Side, drops int) (hanging.Strip, bool) {
	n, wall := k.at, place.kill.Wall
	if place.kill.Kind == hanging.AtCorner && side == hanging.Left {
		wall = (wall + 1) % m.walls
	}
	if place.kill.Kind == hanging.OnWall {
		n = k.in
		drops += int(k.inSum.drops)
		if n == nil || k.inBefore.edge != nil && k.inBefore.edge.skewed {
			return hanging.Strip{}, false
		}
	} else {
		drops += int(k.sum.drops)
	}
	index := m.v.middle + drops
	if side == hanging.Left {
		index = m.v.middle - 1 - drops
	}
	if place.kill.Kind == hanging.AtCorner && k.nth > 0 {
		return m.passing(m.v.pass(n, -1), wall, index)
	}
	x := m.v.h.X(n.spot)
	if side == hanging.Left {
		x -= m.v.width
	}
	m.ends[side][0] = hanging.Part{
		Wall: wall, X: geom.Interval{Lo: x, Hi: x + m.v.width}, Across: geom.Interval{Hi: m.v.width},
	}
	return hanging.Strip{Index: index, Parts: m.ends[side][:]}, true
}

// passing returns the part on a wall of a drop that passes it.
func (m *combiner) passing(e *pass, wall, index int) (hanging.Strip, bool) {
	for i := range e.parts {
		if e.parts[i].Wall == wall {
			return hanging.Strip{Index: index, Parts: e.parts[i : i+1]}, true
		}
	}
	return hanging.Strip{}, false
}
