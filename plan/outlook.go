package plan

import (
	"math"
	"math/bits"

	"firstdrop/hanging"
	"firstdrop/measure"
)

// Most starts cannot become anything with most kill places, whatever new drops are
// begun on the way. That is told before the halves are put together, from what lies
// ahead of a corner at the least, of which there are no more than places where a drop
// may meet it:
//
//	start ──► whole drops ──► corner ─┬─ carried on ──► whole drops ──► corner … kill
//	                                  └─ a new drop ──► whole drops ──► corner … kill
//
// What lies ahead of a corner is noted there for each kill place: what comes of it if the
// paper is carried on all the way, and the least of all ways with a new drop. The drop that
// is carried on is weighed; what a new one weighs is told from how much is given up for it,
// without laying it out (newdrop.go). Where the halves end the design misses by what it has
// come to on either side (misses.go). Only what surely comes to be is added up, so what is
// told is a bound. It is told of rows of starts first (rows.go), and of one start where that
// promises something.

// outlook tells what lies ahead.
type outlook struct {
	m        *combiner
	v        *halves
	ends     []end     // where halves may end
	endOf    []int     // of each kill place
	on       [2][]ends // by side and wall: those on the wall, or in the corner at its end
	own      []ends    // by wall: those over it
	all      ends
	roll     int64   // what a roll weighs
	hand     int64   // what full pieces weigh that rolls in hand give
	base     int64   // parts of rolls that are needed beside
	fulls    []int32 // what so many full pieces weigh
	part     parting
	turn     turnOfDrops
	spare    []view // not yet given to a corner
	rows     []tail
	walked   [2][]tail // by side and end: of the start at hand
	news     [2][]newDrop
	looked   []pair  // by end: of the start looked at
	bounds   []pair  // of each start of which something may come, with each end
	slots    []int32 // by start: where these begin, plus one; 0: none
	starts   *startRows
	promises heap[promise, *promise]
	sides    [2][]tail // of the start at hand: what lies on either side of it
	first    int       // of the start at hand: the index of the first drop to the right
}

// end is where a half may end: kill places that are the same but for the lap.
type end struct {
	place *killPlace
	kills []int
	wall  [2]int   // by side: that on which a half ends
	folds bool     // nothing is sure of the wall where it ends
	sure  [2]ahead // by side: what is sure of the last drop
	misses
	gap
	lost [2]bool // with the start at hand: nothing better comes of it without, with new drops
}

// isLost reports whether nothing better comes of it at all.
func (e *end) isLost() bool { return e.lost[0] && e.lost[1] }

// ahead is what drops come to in ways that are least each by itself. Weights beyond
// all reason are cut short.
type ahead struct {
	looks      int32  // without rolls
	withRolls  int32  // with the parts of a roll that full pieces take
	fullPieces int32  // how many they are
	parts      int32  // the parts of a roll that all pieces are worth, or that their length takes
	motifs     places // the drops whose motif meets the ceiling
}

// add adds what follows, its places counted from the same drop.
func (a *ahead) add(b *ahead) {
	a.looks += b.looks
	a.withRolls += b.withRolls
	a.fullPieces += b.fullPieces
	a.parts += b.parts
	a.motifs += b.motifs
}

// sub takes away what comes before, its places counted from the same drop.
func (a *ahead) sub(b *ahead) {
	a.looks -= b.looks
	a.withRolls -= b.withRolls
	a.fullPieces -= b.fullPieces
	a.parts -= b.parts
	a.motifs -= b.motifs
}

// addTimes adds what follows so many times, its motifs aside.
func (a *ahead) addTimes(b *ahead, times int32) {
	a.looks += b.looks * times
	a.withRolls += b.withRolls * times
	a.fullPieces += b.fullPieces * times
	a.parts += b.parts * times
}

// after puts a row before.
func (a *ahead) after(s *row, o *outlook) {
	if o.turn.lanes > 0 {
		a.motifs = o.turn.by(a.motifs, s.drops)
	}
	a.add(&s.ahead)
}

// least takes the lesser of everything.
func (a *ahead) least(b *ahead) {
	a.looks = min(a.looks, b.looks)
	a.withRolls = min(a.withRolls, b.withRolls)
	a.fullPieces = min(a.fullPieces, b.fullPieces)
	a.parts = min(a.parts, b.parts)
	a.motifs = a.motifs.least(b.motifs)
}

// weigh adds a weight.
func (a *ahead) weigh(weight int64) {
	w := int32(max(-mostAhead, min(weight, mostAhead)))
	a.looks += w
	a.withRolls += w
}

// row is what a row of drops comes to, and how many they are.
type row struct {
	ahead
	drops int32
}

// append puts another row after it.
func (s *row) append(r *row, o *outlook) {
	a := r.ahead
	a.after(s, o)
	s.ahead, s.drops = a, s.drops+r.drops
}

// tail is what lies ahead on the way to an end.
type tail struct {
	carried ahead          // all the way
	renewed ahead          // at the least, with new drops, and what closing takes; impossible if there are none
	across  measure.Length // carried: how far across the design has come
	reach   measure.Length // carried: how far drops have come to an opening where halves end
}

// after puts a row before a tail.
func (t *tail) after(s *row, o *outlook) {
	t.carried.after(s, o)
	t.renewed.after(s, o)
}

// unknown is how far that is where nothing is sure.
const unknown = measure.Length(-1)

// impossible is what no way comes to.
var impossible = ahead{mostAhead, mostAhead, mostAhead, mostAhead, 0}

// pair is what a start with an end weighs at the least, without and with new drops.
type pair [2]int64

// least takes the lesser of both.
func (p *pair) least(q pair) { p[0], p[1] = min(p[0], q[0]), min(p[1], q[1]) }

// hop is the drop that is carried round a corner, and the way on to the next.
type hop struct {
	edge   *pass
	only   row // the drop that meets the corner, with the seam before it
	on     row // and the whole drops after it, up to the next corner
	up     row // the drop if it is given up in the corner, with the seam after it
	next   *newDrop
	faults int64 // what rules find in on
}

// view is what lies ahead of a corner: on the way to those ends to which it has been asked.
type view struct {
	hop
	corner *node
	tails  []tail // by end
	known  ends
	stop
}

// outlookOf returns the outlook of the starts, nil where it spares nothing.
func (m *combiner) outlookOf() *outlook {
	s := m.s
	if m.walls == 1 || m.forced || s.gather != nil || s.best.layout == nil || len(s.starts) < fewStarts {
		return nil
	}
	return m.newOutlook()
}

// newOutlook looks ahead from all starts; nil if there are too many ends.
func (m *combiner) newOutlook() *outlook {
	s := m.s
	o := &outlook{m: m, v: m.v, roll: s.task.Taste.Weights.Roll, endOf: make([]int, len(s.kills)), turn: newTurnOfDrops(&m.v.motifs)}
	if r := &m.v.rolls; r.per > 0 {
		o.hand = (r.hand*o.roll + r.per - 1) / r.per
	}
	if r := &m.v.rolls; r.roll > 0 && r.prices.roll == 0 {
		o.base = int64((r.base * partsOfRoll).FloorTo(r.roll) / r.roll)
	}
	if r := &m.v.rolls; r.prices.roll > 0 {
		o.part = newParting(r.prices.roll)
	} else {
		o.part = newParting(int64(r.roll))
	}
	for k := range s.kills {
		o.addEnd(k)
	}
	if len(o.ends) > mostEnds {
		return nil
	}
	o.listOn()
	for i := range o.ends {
		e := &o.ends[i]
		o.all = o.all.or(oneEnd(i))
		for side := range e.sure {
			t := m.sure[e.kills[0]][side]
			if e.place.kill.Kind != hanging.OnWall {
				t.score += s.task.Taste.Weights.Drop
			}
			e.sure[side] = o.of(&t).ahead
		}
	}
	o.listNews()
	for i := range o.ends {
		o.ends[i].gap = o.gapAt(&o.ends[i])
		o.readMisses(i)
	}
	o.slots, o.looked = make([]int32, len(s.starts)), make([]pair, len(o.ends))
	return o
}

// addEnd adds the end at a kill place.
func (o *outlook) addEnd(k int) {
	place := &o.m.s.kills[k]
	for i := range o.ends {
		kill := &o.ends[i].place.kill
		if kill.Kind == hanging.AtCorner && place.kill.Kind == hanging.AtCorner && kill.Wall == place.kill.Wall {
			o.ends[i].kills = append(o.ends[i].kills, k)
			o.endOf[k] = i
			return
		}
	}
	o.endOf[k] = len(o.ends)
	o.ends = append(o.ends, end{
		place: place, kills: []int{k},
		folds: o.m.folds(place, hanging.Right) || o.m.folds(place, hanging.Left),
	})
}

// listOn lists by walls where halves end.
func (o *outlook) listOn() {
	o.own = make([]ends, o.m.walls)
	for side := range o.on {
		o.on[side] = make([]ends, o.m.walls)
		for wall := range o.on[side] {
			for i := range o.ends {
				if e := &o.ends[i]; o.endsOn(e, hanging.Side(side), wall) {
					e.wall[side] = wall
					o.on[side][wall] = o.on[side][wall].or(oneEnd(i))
					if e.place.kill.Kind == hanging.OnWall {
						o.own[wall] = o.own[wall].or(oneEnd(i))
					}
				}
			}
		}
	}
}

// mostAhead is what is no longer told apart, some thousand rolls; partsOfRoll is in how
// many parts a roll is counted.
const (
	mostAhead   = 1 << 24
	partsOfRoll = 1 << 14
)

// of returns what a sum comes to.
func (o *outlook) of(t *sum) row {
	var a ahead
	r := &o.v.rolls
	if r.per > 0 {
		a.fullPieces = t.full
		a.withRolls = o.full(t.full)
	}
	switch {
	case r.prices.roll > 0:
		a.parts = int32(min(o.part.of(t.worth), mostAhead))
	case r.roll > 0:
		a.parts = int32(min(o.part.of(int64(t.length)), mostAhead))
	}
	a.looks = int32(min(t.score+t.cut, mostAhead))
	a.withRolls += a.looks
	if t.some {
		a.motifs = o.turn.of(&t.motif)
	}
	return row{a, t.drops}
}

// full returns what so many full pieces weigh.
func (o *outlook) full(pieces int32) int32 {
	for n := len(o.fulls); n <= int(pieces); n++ {
		o.fulls = append(o.fulls, int32(min(int64(n)*o.roll/o.v.rolls.per, mostAhead)))
	}
	return o.fulls[pieces]
}

// parting tells how many parts of a roll a length comes to, or the worth of pieces, rounded
// down, or one part less: by a multiplication, since it is asked of every drop.
type parting uint64

// newParting returns that of a roll of some length or worth.
func newParting(roll int64) parting {
	if roll <= partsOfRoll {
		return 0
	}
	parts, _ := bits.Div64(partsOfRoll, 0, uint64(roll))
	return parting(parts)
}

// of returns how many parts something comes to.
func (p parting) of(n int64) int64 {
	parts, _ := bits.Mul64(uint64(n), uint64(p))
	return int64(parts)
}

// faults returns what rules find in a sum.
func (o *outlook) faults(t *sum) int64 {
	return t.score - int64(t.drops)*o.m.s.task.Taste.Weights.Drop
}

// faultsFrom returns what rules find in the row from a node on.
func (o *outlook) faultsFrom(n *node) int64 {
	faults := o.faults(&n.sums)
	if n.count > 0 {
		faults += o.v.seamToCorner(n.corner)
	}
	return faults
}

// endsOn reports whether a half that goes to a side ends on a wall, or in the corner
// at its end.
func (o *outlook) endsOn(e *end, side hanging.Side, wall int) bool {
	kill := &e.place.kill
	switch {
	case kill.Kind == hanging.OnWall, kill.Kind == hanging.AtCorner && side == hanging.Right:
		return wall == kill.Wall
	case kill.Kind == hanging.AtCorner:
		return wall == (kill.Wall+1)%o.m.walls
	case side == hanging.Right:
		return wall == o.m.walls-1
	}
	return wall == 0
}

// from returns what lies ahead of a node, what its whole drops come to included.
func (o *outlook) from(n *node, sums *row, e int) tail {
	if o.on[n.spot.Side][n.spot.Wall].has(e) {
		return o.toEnd(n, e)
	}
	v := o.view(n)
	o.fill(v, n.corner, oneEnd(e))
	t := v.tails[e]
	t.after(sums, o)
	return t
}

// toEnd returns what lies between a node and an end on its wall.
func (o *outlook) toEnd(n *node, i int) tail {
	e, side := &o.ends[i], n.spot.Side
	t := tail{renewed: impossible, across: o.across(n, e), reach: unknown}
	a := &t.carried
	if e.place.kill.Kind != hanging.OnWall {
		*a = o.of(&n.sums).ahead
		if n.corner.spot.T < o.m.s.run.Run.Walls[n.corner.spot.Wall].Width {
			a.add(&e.sure[side])
		}
		return t
	}
	if e.folds {
		return t
	}
	near := o.m.near(e.place, side)
	seam := int64(0)
	if t.reach = n.spot.T; n.count > 0 && n.spot.T+o.v.width <= near {
		var sums sum
		var at *node
		sums, at, seam = o.m.before(n, near)
		*a, t.reach = o.of(&sums).ahead, at.spot.T
	}
	if t.reach < near {
		a.add(&e.sure[side])
		a.weigh(seam)
	}
	return t
}

// view returns what is seen from the corner that the drops from a node on come to. Where
// the first drop there meets the corner, and no whole one stands before it, the seam
// before it is not known.
func (o *outlook) view(n *node) *view {
	corner := n.corner
	if corner.view != nil {
		return corner.view
	}
	h := o.hop(corner)
	if len(o.spare) == 0 {
		o.spare = make([]view, 128)
	}
	v := &o.spare[0]
	v.hop, v.corner, o.spare = h, corner, o.spare[1:]
	corner.view = v
	return v
}

// rowFrom returns what the whole drops from a node on come to, with the seam between the
// last of them and the drop that meets the corner.
func (o *outlook) rowFrom(n *node) row {
	r := o.of(&n.sums)
	if n.count > 0 {
		r.weigh(o.v.seamToCorner(n.corner))
	}
	return r
}

// fill works out what lies ahead of a corner on the way to some ends.
func (o *outlook) fill(v *view, corner *node, asked ends) {
	if asked = asked.without(v.known); asked.isEmpty() {
		return
	}
	if v.tails == nil {
		v.tails = o.someTails(len(o.ends))
	}
	side, to := corner.spot.Side, v.edge.to
	passed, landed := ends{}, ends{}
	var next *view
	if to != nil {
		passed = o.passed(corner, v.edge).and(asked)
		landed = o.on[side][to.spot.Wall].and(asked).without(passed)
		if beyond := asked.without(landed).without(passed); !beyond.isEmpty() {
			next = o.view(to)
			o.fill(next, to.corner, beyond)
		}
	}
	for rest := asked; !rest.isEmpty(); {
		var e int
		e, rest = rest.next()
		end, t, last := &o.ends[e], &v.tails[e], v.edge.corners
		switch {
		case to == nil, passed.has(e) && end.place.kill.Kind != hanging.AtCorner:
			*t = o.lostSight(end, side)
			continue
		case passed.has(e):
			*t = o.passing(&v.hop, end, side)
			last = o.nthCorner(corner, end.place.kill.Wall)
		case landed.has(e):
			*t = o.landed(&v.hop, e)
		default:
			*t = next.tails[e]
			t.after(&v.on, o)
		}
		o.renew(&t.renewed, &v.hop, &v.up, corner, last, e)
	}
	v.known = v.known.or(asked)
}

// someTails returns so many that are the caller's own.
func (o *outlook) someTails(n int) []tail {
	if len(o.rows) < n {
		o.rows = make([]tail, max(512, 128*n))
	}
	t := o.rows[:n:n]
	o.rows = o.rows[n:]
	return t
}

// lostSight returns what is told where nothing is.
func (o *outlook) lostSight(e *end, side hanging.Side) tail {
	t := tail{across: unknown, reach: unknown}
	t.renewed.weigh(e.closes(side, upTo(unknown)))
	return t
}

// passing returns what comes of a drop that passes the end in a corner: it is the last.
func (o *outlook) passing(h *hop, e *end, side hanging.Side) tail {
	return tail{carried: e.sure[side], renewed: impossible, across: o.acrossPassing(h.edge, side, e), reach: unknown}
}

// landed returns what a hop onto the wall of an end and all after it come to. Onto a wall
// where nothing is sure the drop itself may go otherwise.
func (o *outlook) landed(v *hop, e int) tail {
	t := o.toEnd(v.edge.to, e)
	end := &o.ends[e]
	if end.folds {
		return t
	}
	only, to := v.only, v.edge.to
	switch onWall := end.place.kill.Kind == hanging.OnWall; {
	case onWall && v.edge.skewed:
		t.across = unknown
	case !onWall && v.edge.corners == 1:
		t.carried.weigh(o.m.unequalOn(to))
	}
	if end.place.kill.Kind == hanging.OnWall && to.spot.T > o.m.near(end.place, to.spot.Side) {
		cut := o.v.cutOff()
		only = o.of(&cut)
		t.carried.add(&end.sure[to.spot.Side])
	}
	t.after(&only, o)
	return t
}

// renew takes in what comes of new drops in so many corners that a drop meets, which comes
// to up if it is given up in the first of them.
func (o *outlook) renew(renewed *ahead, v *hop, up *row, corner *node, corners, e int) {
	side := corner.spot.Side
	for nth := range corners {
		n, comes := v.next, *up
		if nth > 0 {
			at, ok := o.m.cornerFrom(corner.spot.Wall, side, nth)
			if !ok {
				return
			}
			if n = o.newAt(side, at, corner.odd); n != nil {
				comes = o.givenUpFarther(v.edge, side, at, n)
			}
		}
		if n == nil {
			continue
		}
		a := *o.onFrom(n, e)
		a.after(&comes, o)
		renewed.least(&a)
	}
}

// passed returns the ends that a drop passes on its way round corners. It is not inlined: what
// browsers load is smaller by that, and nothing is slower.
//
//go:noinline
func (o *outlook) passed(corner *node, edge *pass) (n ends) {
	for i := 1; i < edge.corners; i++ {
		wall := corner.spot.Wall + i
		if corner.spot.Side == hanging.Left {
			wall = corner.spot.Wall - i + o.m.walls
		}
		n = n.or(o.on[corner.spot.Side][wall%o.m.walls])
	}
	return n
}

// nthCorner returns how many corners a drop meets before a given one.
func (o *outlook) nthCorner(corner *node, given int) int {
	for nth := 0; ; nth++ {
		if at, ok := o.m.cornerFrom(corner.spot.Wall, corner.spot.Side, nth); !ok || at == given {
			return nth
		}
	}
}

// hop weighs the way round a corner.
func (o *outlook) hop(corner *node) hop {
	edge := o.v.pass(corner, -1)
	if edge.to == nil {
		return hop{edge: edge}
	}
	t := edge.sum
	h := hop{edge: edge, only: o.of(&t)}
	if edge.to.count > 0 {
		t.score += o.v.seamToWhole(&before{edge: edge, from: corner}, edge.to) + o.v.seamToCorner(edge.to.corner)
	}
	t.add(&edge.to.sums)
	h.on, h.faults = o.of(&t), o.faults(&t)
	if edge.corners == 1 {
		unequal := o.m.unequalOn(edge.to)
		h.on.weigh(unequal)
		h.faults += unequal
	}
	if at, ok := o.m.cornerFrom(corner.spot.Wall, corner.spot.Side, 0); ok {
		if h.next = o.newAt(corner.spot.Side, at, corner.odd); h.next != nil {
			h.up = o.givenUp(corner, h.next)
		}
	}
	return h
}

// boundsOf returns what a start weighs at the least with each end; nothing, if nobody has
// looked.
func (o *outlook) boundsOf(i int) []pair {
	n := len(o.ends)
	if o.slots[i] == 0 {
		o.slots[i] = int32(len(o.bounds)) + 1
		o.bounds = append(o.bounds, make([]pair, n)...)
	}
	at := int(o.slots[i]) - 1
	return o.bounds[at : at+n : at+n]
}

// isHopeless reports whether no layout from a start can be better than the best found,
// and marks the ends with which none can.
func (o *outlook) isHopeless(i int) bool {
	all, best := true, o.m.s.best.score
	bounds := o.boundsOf(i)
	for k := range o.ends {
		e, p := &o.ends[k], &bounds[k]
		e.lost = [2]bool{p[0] >= best, p[1] >= best}
		all = all && e.isLost()
	}
	if !all {
		o.face(i)
	}
	return all
}

// mayRenew reports whether new drops may make the start at hand better than the best
// found.
func (o *outlook) mayRenew() bool {
	for e := range o.ends {
		if !o.ends[e].lost[1] {
			return true
		}
	}
	return false
}

// face looks to either side of a start.
func (o *outlook) face(i int) {
	z, first, ok := o.m.seamOf(i)
	o.first = first
	for side := range o.sides {
		o.sides[side] = o.sides[side][:0]
		if !ok {
			continue
		}
		n := o.m.firstNode(i, hanging.Side(side), z, first)
		sums := o.rowFrom(n)
		for e := range o.ends {
			t := tail{}
			if !o.ends[e].lost[1] {
				t = o.from(n, &sums, e)
			}
			o.sides[side] = append(o.sides[side], t)
		}
	}
}

// bound returns what comes to so much weighs at the least: by its looks with all the rolls
// that it needs, or with parts of them.
func (o *outlook) bound(a *ahead) int64 {
	r, n := &o.v.rolls, int64(0)
	if r.per > 0 {
		n = (int64(a.fullPieces) - r.hand + r.per - 1) / r.per
	}
	if r.roll > 0 {
		n = max(n, (int64(a.parts)+o.base+partsOfRoll-1)/partsOfRoll)
	}
	return max(int64(a.looks)+max(n, 0)*o.roll, int64(a.withRolls)-o.hand)
}

// isLost reports whether a half of the start at hand that comes to so much, and is to go
// on from a node where a new drop begins, cannot lead to a layout that is better than the
// best found.
func (o *outlook) isLost(so *sum, to *node) bool {
	here, sums, best := o.of(so), o.rowFrom(to), o.m.s.best.score
	others := o.sides[to.spot.Side.Opposite()]
	for e := range o.ends {
		if o.ends[e].lost[1] {
			continue
		}
		t := o.from(to, &sums, e)
		t.after(&here, o)
		if p := o.meet(&o.ends[e], to.spot.Side, &t, &others[e], o.first); p[0] < best || p[1] < best {
			return false
		}
	}
	return true
}

// meet returns what a start weighs at the least whose two halves, that to a side first, meet
// at an end. first is the index of the first drop to the right of the start.
func (o *outlook) meet(e *end, side hanging.Side, a, b *tail, first int) pair {
	m, x, y := meeting{o: o, first: first}, a.far(), b.far()
	return m.meet(e, side, &x, &y)
}

// together returns what two halves weigh at the least, that to a side first.
func (o *outlook) together(side hanging.Side, a, b *ahead, first int) int64 {
	c := *a
	c.add(b)
	if o.turn.lanes == 0 {
		return o.bound(&c)
	}
	right, left := a.motifs, b.motifs
	if side == hanging.Left {
		right, left = left, right
	}
	c.weigh(o.turn.least(right, left, first))
	return o.bound(&c)
}

// look tells of a start with some of its ends, and returns what it weighs at the least; for
// its twins one looks where that promises something. Of a start without halves nothing is
// known.
func (o *outlook) look(i int, asked ends, twins bool) (least int64) {
	z, first, ok := o.m.seamOf(i)
	if !ok {
		return 0
	}
	start, best := o.m.s.starts[i], o.m.s.best.score
	wall := start.Wall
	around := o.around(wall, start.X, start.X)
	if t := o.m.twins; t != nil && !o.m.renews {
		if asked = t.without(i, asked, &around); asked.isEmpty() {
			return math.MaxInt64
		}
	}
	var sides [2]beginning
	for side := range sides {
		sides[side] = o.begin(o.m.firstNode(i, hanging.Side(side), z, first), asked, around[side])
	}
	unequal, seam := int64(-1), o.v.seamOn(wall, z)
	if t := o.m.twins; t != nil && twins {
		for side := range sides {
			sides[side].twin = t.of(i, hanging.Side(side))
		}
	}
	least = math.MaxInt64
	bounds := o.looked
	for e := range o.ends {
		p := &bounds[e]
		if !asked.has(e) {
			*p = pair{mostAhead, mostAhead}
			continue
		}
		*p = o.between(&sides, e, first, &around)
		if seam > 0 && o.m.keepsSeam(o.ends[e].place, wall, z) {
			p[0], p[1] = p[0]+seam, p[1]+seam
		}
		if !o.own[wall].has(e) && (p[0] < best || p[1] < best) {
			if unequal < 0 {
				unequal = o.m.unequalAt(sides[hanging.Right].node, sides[hanging.Left].node)
			}
			p[0], p[1] = p[0]+unequal, p[1]+unequal
		}
		least = min(least, p[0], p[1])
	}
	if !o.m.s.isBeaten(least) {
		copy(o.boundsOf(i), bounds)
	}
	return least
}

// offered returns the ends with which a start is tried.
func (o *outlook) offered(i int) ends {
	if i < o.m.s.own {
		return o.all
	}
	return o.own[o.m.s.starts[i].Wall]
}

// beginning is where a half begins, and what is seen from the first corner, or what has been
// walked to.
type beginning struct {
	node   *node
	sums   row
	view   *view
	walked []tail // by end
	twin   int    // how many corners away a twin stands that spares the start; 0: nobody has asked
}

// around returns the ends over the wall of starts from one place to another to which a half
// of any of them may go all the way round, by its side: to the right where the kill seam may
// stand left of drop 0, and to the left where it may stand right of it.
func (o *outlook) around(wall int, from, to measure.Length) (by [2]ends) {
	for rest := o.own[wall]; !rest.isEmpty(); {
		var e int
		e, rest = rest.next()
		x := o.ends[e].place.span
		if max(to, 0) >= x.Lo {
			by[hanging.Right] = by[hanging.Right].or(oneEnd(e))
		}
		if from+o.v.width <= x.Hi {
			by[hanging.Left] = by[hanging.Left].or(oneEnd(e))
		}
	}
	return by
}

// begin looks from where a half begins to all ends that lie beyond its wall, and to those to
// which it comes when it has gone all the way round.
func (o *outlook) begin(n *node, offered, around ends) beginning {
	b := beginning{node: n, sums: o.rowFrom(n)}
	asked := offered.without(o.on[n.spot.Side][n.spot.Wall].without(around))
	switch {
	case asked.isEmpty():
		return b
	case !o.m.renews:
		b.walked = o.walk(n, &b.sums, asked)
		return b
	}
	b.view = o.view(n)
	o.fill(b.view, n.corner, asked)
	return b
}

// past returns what lies ahead of a half that goes on past the first corner.
func (b *beginning) past(o *outlook, e int) tail {
	if b.walked != nil {
		return b.walked[e]
	}
	t := b.view.tails[e]
	t.after(&b.sums, o)
	return t
}

// to returns what lies ahead of a half.
func (b *beginning) to(o *outlook, e int) tail {
	if o.on[b.node.spot.Side][b.node.spot.Wall].has(e) {
		return o.toEnd(b.node, e)
	}
	return b.past(o, e)
}

// between returns what a start weighs at the least with an end. If that is on the start's
// own wall one half ends at once, and the other goes all the way round.
func (o *outlook) between(sides *[2]beginning, i, first int, around *[2]ends) pair {
	e, right, left := &o.ends[i], &sides[hanging.Right], &sides[hanging.Left]
	wall, n := left.node.spot.Wall, o.m.walls
	if !o.own[wall].has(i) {
		if !o.m.renews && !o.on[hanging.Right][wall].has(i) && !o.on[hanging.Left][wall].has(i) { // most weigh too much without what closing takes
			if p := o.together(hanging.Right, &right.walked[i].carried, &left.walked[i].carried, first); p >= o.m.s.best.score {
				return pair{p, mostAhead}
			}
		}
		a, b := right.to(o, i), left.to(o, i)
		gaps, _ := o.m.gapsFrom(hanging.Start{Wall: wall}, e.kills[0])
		right.spare(o, &a, i, gaps[0].right)
		left.spare(o, &b, i, gaps[0].left)
		return o.meet(e, hanging.Right, &a, &b, first)
	}
	p := pair{mostAhead, mostAhead}
	for side := range around {
		if around[side].has(i) {
			far, near := &sides[side], &sides[1-side]
			a, b := far.past(o, i), near.to(o, i)
			far.spare(o, &a, i, n)
			p.least(o.meet(e, hanging.Side(side), &a, &b, first))
		}
	}
	return p
}

// spare leaves of what lies ahead on the way to an end, so many corners away, what need be
// tried although a twin stands on the way: that a new drop begins before it.
func (b *beginning) spare(o *outlook, t *tail, e, corners int) {
	if b.twin == 0 || twinsCount(o.ends[e].place, corners) < b.twin {
		return
	}
	t.carried = impossible
	if b.twin > 1 || b.view == nil {
		return
	}
	if t.renewed = impossible; b.view.next != nil {
		t.renewed = *o.onFrom(b.view.next, e)
		t.renewed.after(&b.view.up, o)
		t.renewed.after(&b.sums, o)
	}
}
