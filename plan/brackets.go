package plan

import (
	"math"
	"slices"
	"sort"

	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/room"
)

// From one event (events.go) up to the next what lies ahead changes evenly, so that it is
// nowhere less than at one of both ends. So the places where drops may meet a corner are
// bracketed, and only the first and the last place of a bracket are weighed; from there one
// comes to any of the brackets of the next corner that lie between where the two come to:
//
//	corner                           next corner
//	  ┊ │first      last│ ┊            ┊       │    ┊  │      ┊
//	──┊─┼───────────────┼─┊── … ──►  ──┊───────┼────┊──┼──────┊──
//	  ┊ │    bracket    │ ┊            ┊  bracket   ┊ bracket ┊
//	event               event

// bracket holds the places where a drop may meet a corner, from one to another, between
// which nothing changes but evenly.
type bracket struct {
	lo, hi measure.Length // both included
	ends   [2]place       // at both; the other is not looked at where it is sure to be like the first
	on, up row            // no more than any between comes to
	tails  []farTail      // by end
	known  ends
}

// place is a corner that a drop meets, and the way on from there.
type place struct {
	corner *node
	hop
}

// farTail is what lies ahead at the least, wherever one begins.
type farTail struct {
	carried, renewed ahead
	across           crossing
	reach            reach
}

// far returns what lies ahead from one place, at which T is 0.
func (t *tail) far() farTail {
	f := farTail{t.carried, t.renewed, crossing{}, upTo(t.reach)}
	if t.across != unknown {
		f.across = crossing{1, [2]measure.Length{t.across}}
	}
	return f
}

// brackets looks ahead from brackets.
type brackets struct {
	o           *outlook
	events      []events       // by wall
	grid        measure.Length // all drops meet corners at multiples of that from their walls' ends
	level       []bool         // by wall: neither its head nor its foot falls
	slack       slack
	tables      [][]bracket
	spare       []farTail // not yet given to a bracket
	parts       []hanging.Part
	here, there []stand
}

// widestBracket is how wide brackets are at the most (measured: half or twice as much is as
// good).
const widestBracket = 32 * measure.Millimetre

// newBrackets prepares for the corners of a run; nil if not all that is on its walls
// changes evenly: on those that have not four corners, or openings that have not.
func (o *outlook) newBrackets() *brackets {
	run := o.m.s.run.Run
	b := &brackets{o: o, tables: make([][]bracket, 4*len(run.Walls)), slack: newSlack(o.v.j), grid: o.m.grid()}
	for i := range run.Walls {
		w := &run.Walls[i]
		if !o.v.j.walls[i].top.straight || len(w.Outline) != 4 || slices.ContainsFunc(w.Openings, isOdd) {
			return nil
		}
		b.events = append(b.events, o.eventsOn(i))
		b.level = append(b.level, len(o.v.h.LevelStretches(i)) == len(o.v.h.Uprights(i))-1)
	}
	return b
}

// mayPay reports whether it may pay to bracket corners. In a long run brackets tell of little:
// round one corner after the other the places get lost. Nor do they pay there where twins
// spare many starts.
func (o *outlook) mayPay() bool {
	m := o.m
	return m.renews || m.walls <= mostBracketed && (m.twins == nil || !m.twins.spareMany())
}

// pays reports whether there are so many starts that it pays to bracket them: the brackets
// of a corner are as many as the events of its walls.
func (b *brackets) pays() bool {
	o, n := b.o, 0
	for _, es := range b.events {
		tables := 2
		if o.v.turns {
			tables *= 2
		}
		n += len(es) * tables
	}
	return len(o.m.s.starts) >= startsPerBracket*n
}

// startsPerBracket is how many starts there are to be, and mostBracketed how many walls at the
// most (measured).
const (
	startsPerBracket = 3
	mostBracketed    = 30
)

// isOdd reports whether an opening has not four corners.
func isOdd(o room.Opening) bool { return len(o.Outline) != 4 }

// slack is what rounding may take from a sum of faults between two places.
type slack struct {
	graded int64 // what a fault weighs at the least that is graded: a third, half of that in a hidden place
	each   int64 // for each of these: rounded once, and once more on a focal wall
	others int64 // for those that weigh anything from nothing on: off a centre, and unequal ends
}

// newSlack returns the slack of a run.
func newSlack(j *judge) slack {
	w := &j.taste.Weights
	s := slack{graded: math.MaxInt64, each: 1}
	part := int64(3)
	for i := range j.walls {
		switch wall := &j.walls[i]; {
		case wall.regard == hidden:
			part = 6
		case wall.regard == focal:
			s.each = 3
		}
		if j.walls[i].centre != nil {
			s.others = 2
		}
	}
	for _, weight := range [...]int64{w.Sliver, w.SeamNear, w.SliverBeside, w.LiningSeam} {
		if weight > 0 {
			s.graded = min(s.graded, max(weight/part, 1))
		}
	}
	return s
}

// of returns what rounding may take from faults that weigh so much at least.
func (s *slack) of(faults int64) int64 {
	if faults <= 0 {
		return 0
	}
	return s.others + s.each*(faults/s.graded)
}

// faults returns what rules find at the most in so many drops that come to an end.
func (b *brackets) faults(a *ahead, drops int, e *end) int64 {
	if e.place.kill.Kind == hanging.OnWall { // before which some of them end
		drops = 0
	}
	return int64(a.looks) - int64(drops)*b.o.m.s.task.Taste.Weights.Drop
}

// table returns the brackets of a corner.
func (b *brackets) table(n *node) []bracket {
	at := 4*n.spot.Wall + 2*int(n.spot.Side)
	if n.odd {
		at++
	}
	if b.tables[at] == nil {
		b.tables[at] = b.bracketed(n)
	}
	return b.tables[at]
}

// grid returns a length of which the places of all drops are multiples that come from starts.
func (m *combiner) grid() measure.Length {
	step := m.v.nodes.step
	for _, start := range m.s.starts {
		if start.X%measure.Length(step) != 0 {
			step = gcd(step, int64(start.X.Abs()))
		}
	}
	return measure.Length(step)
}

// bracketed lists the brackets of a corner.
func (b *brackets) bracketed(n *node) []bracket {
	spot, run, width := n.spot, b.o.m.s.run.Run, b.o.v.width
	near, far := run.LeanAt(spot.Wall)
	if spot.Side == hanging.Left {
		near, far = -far, -near
	}
	least, most := min(0, near), run.Walls[spot.Wall].Width+max(0, far)
	all := make([]bracket, 0, 64)
	for spot.T = max(least, most-width+1).CeilTo(b.grid); spot.T <= most; {
		first, hi := b.at(spot, n.odd), spot.T
		if way := min(b.way(&first), widestBracket); way > 0 {
			hi = min(most, spot.T+way-1).FloorTo(b.grid)
		}
		all = append(all, b.bracket(first, hi))
		spot.T = all[len(all)-1].hi + b.grid
	}
	return all
}

// at looks at the corner from a spot where a drop meets it.
func (b *brackets) at(spot hanging.Spot, odd bool) place {
	corner := b.o.v.node(spot, odd)
	return place{corner, b.o.hop(corner)}
}

// bracket brackets a place and those after it, up to another, or up to where drops go
// another way.
func (b *brackets) bracket(first place, hi measure.Length) bracket {
	spot, odd := first.corner.spot, first.corner.odd
	lo, last := spot.T, first
	if hi > lo && b.isSurelyLike(&first, hi) {
		return b.newBracket(first, place{}, lo, hi)
	}
	if spot.T = hi; hi > lo {
		last = b.at(spot, odd)
	}
	if !first.goesAs(&last) {
		last = first
		for other := hi; other-last.corner.spot.T > b.grid; {
			spot.T = last.corner.spot.T + ((other - last.corner.spot.T) / 2).CeilTo(b.grid)
			if p := b.at(spot, odd); first.goesAs(&p) {
				last = p
			} else {
				other = spot.T
			}
		}
		hi = last.corner.spot.T
	}
	return b.newBracket(first, last, lo, hi)
}

// newBracket brackets two places.
func (b *brackets) newBracket(first, last place, lo, hi measure.Length) bracket {
	if len(b.spare) == 0 {
		b.spare = make([]farTail, 64*len(b.o.ends))
	}
	n := len(b.o.ends)
	r := bracket{lo: lo, hi: hi, ends: [2]place{first, last}, on: first.on, up: first.up, tails: b.spare[:n:n]}
	b.spare = b.spare[n:]
	if hi > lo && last.corner != nil {
		r.on = b.leastRow(&first.on, &last.on, min(first.faults, last.faults), b.isLevel(&first))
	}
	if hi > lo && first.next != nil {
		r.up = b.o.givenUpBetween(first.corner.spot, hi, first.next)
	}
	return r
}

// isSurelyLike reports whether all drops up to another place come to just what the first
// does: no fault is graded, so none is up to the next event, and on level walls pieces are
// the same.
func (b *brackets) isSurelyLike(p *place, hi measure.Length) bool {
	if b.slack.of(p.faults) != 0 || p.edge.to == nil || p.edge.corners != 1 || p.edge.skewed || !b.isLevel(p) {
		return false
	}
	spot, to := p.corner.spot, p.edge.to
	spot.T = hi
	parts, corners, next, ok := b.o.v.h.Lay(b.parts[:0], spot, -1)
	b.parts = parts
	return ok && corners == 1 && layAlike(parts, p.edge.parts) &&
		next.Wall == to.spot.Wall && next.T-to.spot.T == hi-p.corner.spot.T && b.o.v.wholes(next) == to.count
}

// layAlike reports whether the parts of two drops lie on the same walls and are turned alike.
func layAlike(a, b []hanging.Part) bool {
	return slices.EqualFunc(a, b, func(x, y hanging.Part) bool {
		return x.Wall == y.Wall && x.Joined == y.Joined && x.Skew == y.Skew
	})
}

// last looks at the other end of a bracket, if nobody has.
func (b *brackets) last(r *bracket) *place {
	if p := &r.ends[1]; p.corner == nil {
		spot := r.ends[0].corner.spot
		spot.T = r.hi
		*p = b.at(spot, r.ends[0].corner.odd)
	}
	return &r.ends[1]
}

// goesAs reports whether two drops go the same way round a corner.
func (p *place) goesAs(q *place) bool {
	a, b := p.edge, q.edge
	if a.corners != b.corners || !layAlike(a.parts, b.parts) || (a.to == nil) != (b.to == nil) || p.on.drops != q.on.drops {
		return false
	}
	return a.to == nil || a.to.spot.Wall == b.to.spot.Wall && a.to.count == b.to.count
}

// isLevel reports whether all walls to which a drop comes are level.
func (b *brackets) isLevel(p *place) bool {
	for i := range p.edge.parts {
		if !b.level[p.edge.parts[i].Wall] {
			return false
		}
	}
	return b.level[p.corner.spot.Wall] && (p.edge.to == nil || b.level[p.edge.to.spot.Wall])
}

// leastRow returns what a row comes to at the least that comes to so much at either end,
// and in which rules find so much at least.
func (b *brackets) leastRow(x, y *row, faults int64, level bool) row {
	r := *x
	r.least(&y.ahead)
	r.weigh(-b.slack.of(faults))
	b.forget(&r.ahead, level)
	return r
}

// forget takes away what does not change evenly where heads or feet fall: whether motifs
// meet the ceiling, and the phases of pieces.
func (b *brackets) forget(a *ahead, level bool) {
	if level {
		return
	}
	a.motifs = 0
	if b.o.v.rolls.prices.roll > 0 {
		a.parts = 0
	}
}

// stand is where on a wall the edge of a drop is, on the way, whole widths aside.
type stand struct {
	wall int
	t    measure.Length
}

// stands lists where edges are on all walls to which a drop comes that begins at a spot.
func (b *brackets) stands(dst []stand, spot hanging.Spot, parts []hanging.Part, next *hanging.Spot) []stand {
	dst = append(dst, stand{spot.Wall, spot.T})
	for i := range parts {
		p := &parts[i]
		t := p.X.Lo - p.Across.Lo
		if spot.Side == hanging.Left {
			t = b.o.m.s.run.Run.Walls[p.Wall].Width - t
		}
		dst = append(dst, stand{p.Wall, t})
	}
	if next != nil {
		dst = append(dst, stand{next.Wall, next.T})
	}
	return dst
}

// way returns how far the drop that meets a corner can move on before something changes: 0
// if it would go another way at once. Edges that stay where they are while it moves do not count.
func (b *brackets) way(p *place) (way measure.Length) {
	spot := p.corner.spot
	var to *hanging.Spot
	if p.edge.to != nil {
		to = &p.edge.to.spot
	}
	b.here = b.stands(b.here[:0], spot, p.edge.parts, to)
	spot.T++
	parts, _, next, ok := b.o.v.h.Lay(b.parts[:0], spot, -1)
	b.parts = parts
	if ok {
		b.there = b.stands(b.there[:0], spot, parts, &next)
	} else {
		b.there = b.stands(b.there[:0], spot, nil, nil)
	}
	if len(b.here) != len(b.there) {
		return 0
	}
	way = math.MaxInt64
	for i, s := range b.here {
		if s == b.there[i] {
			continue
		}
		if s.wall != b.there[i].wall {
			return 0
		}
		way = min(way, b.apart(spot.Side, s))
	}
	return way
}

// apart returns how many places there are from an edge on up to the next event on the way.
func (b *brackets) apart(side hanging.Side, s stand) measure.Length {
	es, width := b.events[s.wall], b.o.v.width
	if side == hanging.Right {
		return es.next(s.t, width)
	}
	return es.before(b.o.m.s.run.Run.Walls[s.wall].Width-s.t, width)
}

// between returns the brackets of the corner that drops from a node on come to and from any
// that begin so that they meet it from one place to another; none if they are not known.
func (b *brackets) between(n *node, from, to measure.Length) []bracket {
	all := b.table(n.corner)
	i := sort.Search(len(all), func(i int) bool { return all[i].hi >= from })
	k := sort.Search(len(all), func(i int) bool { return all[i].lo > to })
	if i == len(all) || all[i].lo > from || all[k-1].hi < to {
		return nil
	}
	return all[i:k]
}

// ahead fills in what lies ahead of any of some brackets on the way to some ends, after a
// row and so far before their corner.
func (b *brackets) ahead(dst []farTail, some []bracket, asked ends, before *row, by measure.Length) {
	for i := range some {
		b.fill(&some[i], asked)
	}
	for rest := asked; !rest.isEmpty(); {
		var e int
		e, rest = rest.next()
		t := &dst[e]
		if len(some) == 0 {
			*t = farTail{reach: upTo(unknown)}
			continue
		}
		*t = some[0].tails[e]
		for i := 1; i < len(some); i++ {
			t.least(&some[i].tails[e])
		}
		t.carried.after(before, b.o)
		t.renewed.after(before, b.o)
		t.across = t.across.moved(by, b.o.designWidth())
	}
}

// least takes in what lies ahead otherwise.
func (t *farTail) least(u *farTail) {
	t.carried.least(&u.carried)
	t.renewed.least(&u.renewed)
	t.across = t.across.or(u.across)
	t.reach = t.reach.or(u.reach)
}

// fill works out what lies ahead of a bracket on the way to some ends.
func (b *brackets) fill(r *bracket, asked ends) {
	if asked = asked.without(r.known); asked.isEmpty() {
		return
	}
	r.known = r.known.or(asked)
	o, corner, edge := b.o, r.ends[0].corner, r.ends[0].edge
	side, to := corner.spot.Side, edge.to
	passed, landed := ends{}, ends{}
	if to != nil {
		passed = o.passed(corner, edge).and(asked)
		landed = o.on[side][to.spot.Wall].and(asked).without(passed)
		if rest := asked.without(landed).without(passed); !rest.isEmpty() {
			by := to.corner.spot.T - corner.spot.T
			b.ahead(r.tails, b.between(to, r.lo+by, r.hi+by), rest, &r.on, along(side, by))
		}
	}
	for rest := asked; !rest.isEmpty(); {
		var e int
		e, rest = rest.next()
		b.finish(r, e, passed.has(e), landed.has(e))
	}
}

// finish takes in an end that a drop passes, or lands before, and new drops on the way.
func (b *brackets) finish(r *bracket, e int, passed, landed bool) {
	o, end, p := b.o, &b.o.ends[e], &r.ends[0]
	side, last, t := p.corner.spot.Side, p.edge.corners, &r.tails[e]
	switch {
	case p.edge.to == nil, passed && end.place.kill.Kind != hanging.AtCorner:
		at := o.lostSight(end, side)
		b.takeIn(t, &at, 0, p.corner.spot)
		return
	case passed:
		at := o.passing(&p.hop, end, side)
		b.takeIn(t, &at, 0, p.corner.spot)
		last = o.nthCorner(p.corner, end.place.kill.Wall)
	case landed:
		at := o.landed(&p.hop, e)
		if b.takeIn(t, &at, 0, p.corner.spot); r.hi == r.lo {
			break
		}
		p := b.last(r)
		at = o.landed(&p.hop, e)
		b.takeIn(t, &at, 1, p.corner.spot)
		t.carried.weigh(-b.slack.of(b.faults(&t.carried, p.edge.to.count+1, end)))
		b.forget(&t.carried, b.isLevel(p))
	}
	o.renew(&t.renewed, &p.hop, &r.up, p.corner, last, e)
	if last > 1 {
		p := b.last(r)
		o.renew(&t.renewed, &p.hop, &r.up, p.corner, last, e)
	}
}

// takeIn takes in what lies ahead of the first or the other end of a bracket, or of a row.
func (b *brackets) takeIn(t *farTail, at *tail, i int, from hanging.Spot) {
	far := at.far()
	far.across = far.across.moved(-along(from.Side, from.T), b.o.designWidth())
	if i == 0 {
		*t = far
	} else {
		t.least(&far)
	}
}
