package plan

import (
	"cmp"
	"math"
	"slices"

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
// told is a bound.

// outlook tells what lies ahead.
type outlook struct {
	m     *combiner
	v     *halves
	ends  []end  // where halves may end
	endOf []int  // of each kill place
	roll  int64  // what a roll weighs
	hand  int64  // what full pieces weigh that rolls in hand give
	base  int64  // parts of rolls that are needed beside
	rows  []tail // not yet given to a corner
	news  [2][]newDrop
	pairs []pair    // of each start with each end
	sides [2][]tail // of the start at hand: what lies on either side of it
}

// end is where a half may end: kill places that are the same but for the lap.
type end struct {
	place *killPlace
	kills []int
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
type ahead [4]int32

// What is least.
const (
	looks      = iota // without rolls
	withRolls         // with the parts of a roll that full pieces take
	fullPieces        // how many they are
	allLengths        // the parts of a roll that the length of all pieces takes
)

func (a *ahead) add(b *ahead) {
	for i := range a {
		a[i] += b[i]
	}
}

func (a *ahead) least(b *ahead) {
	for i := range a {
		a[i] = min(a[i], b[i])
	}
}

// weigh adds a weight.
func (a *ahead) weigh(weight int64) {
	a[looks] += int32(weight)
	a[withRolls] += int32(weight)
}

// tail is what lies ahead on the way to an end.
type tail struct {
	carried ahead          // all the way
	renewed ahead          // at the least, with new drops, and what closing takes; impossible if there are none
	across  measure.Length // carried: how far across the design has come
	reach   measure.Length // carried: how far drops have come to an opening where halves end
	known   bool
}

// unknown is how far that is where nothing is sure.
const unknown = measure.Length(-1)

// impossible is what no way comes to.
var impossible = ahead{mostAhead, mostAhead, mostAhead, mostAhead}

// pair is what lies between a start and an end, without and with new drops.
type pair [2]ahead

// hop is the drop that is carried round a corner, and the way on to the next.
type hop struct {
	edge *pass
	only ahead // of the drop that meets the corner, and the seam before it
	on   ahead // and of the whole drops after it, up to the next corner
	up   ahead // of the drop if it is given up in the corner, and the seam after it
}

// outlookOf returns the outlook of the starts, nil where it spares nothing.
func (m *combiner) outlookOf() *outlook {
	s := m.s
	if !m.renews || m.forced || s.gather != nil || s.best.layout == nil || len(s.starts) < fewStarts {
		return nil
	}
	return m.newOutlook()
}

// newOutlook looks ahead from all starts.
func (m *combiner) newOutlook() *outlook {
	s := m.s
	o := &outlook{m: m, v: m.v, roll: s.task.Taste.Weights.Roll, endOf: make([]int, len(s.kills))}
	if r := &m.v.rolls; r.per > 0 {
		o.hand = (r.hand*o.roll + r.per - 1) / r.per
	}
	if r := &m.v.rolls; r.roll > 0 {
		o.base = int64((r.base * partsOfRoll).FloorTo(r.roll) / r.roll)
	}
	for k := range s.kills {
		o.addEnd(k)
	}
	for i := range o.ends {
		e := &o.ends[i]
		for side := range e.sure {
			t := m.sure[e.kills[0]][side]
			if e.place.kill.Kind != hanging.OnWall {
				t.score += s.task.Taste.Weights.Drop
			}
			e.sure[side] = o.of(&t)
		}
	}
	o.listNews()
	for i := range o.ends {
		o.ends[i].gap = o.gapAt(&o.ends[i])
		o.readMisses(i)
	}
	o.look()
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

// mostAhead is what is no longer told apart, some thousand rolls; partsOfRoll is in how
// many parts a roll is counted.
const (
	mostAhead   = 1 << 24
	partsOfRoll = 1 << 14
)

// of returns what a sum comes to.
func (o *outlook) of(t *sum) (a ahead) {
	r := &o.v.rolls
	if r.per > 0 {
		a[fullPieces] = t.full
		a[withRolls] = int32(min(int64(t.full)*o.roll/r.per, mostAhead))
	}
	if r.roll > 0 {
		a[allLengths] = int32(min(int64(t.length)*partsOfRoll/int64(r.roll), mostAhead))
	}
	a[looks] = int32(min(t.score+t.cut, mostAhead))
	a[withRolls] += a[looks]
	return a
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
func (o *outlook) from(n *node, sums *ahead, e int) tail {
	if o.endsOn(&o.ends[e], n.spot.Side, n.spot.Wall) {
		return o.toEnd(n, e)
	}
	return o.past(n, sums, e)
}

// past is the same for a half that goes on past the corner ahead.
func (o *outlook) past(n *node, sums *ahead, e int) tail {
	t := *o.tail(n.corner, n.count > 0, e)
	t.carried.add(sums)
	t.renewed.add(sums)
	return t
}

// toEnd returns what lies between a node and an end on its wall.
func (o *outlook) toEnd(n *node, i int) tail {
	e, side := &o.ends[i], n.spot.Side
	t := tail{renewed: impossible, across: o.across(n, e), reach: unknown}
	a := &t.carried
	if e.place.kill.Kind != hanging.OnWall {
		*a = o.of(&n.sums)
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
		*a, t.reach = o.of(&sums), at.spot.T
	}
	if t.reach < near {
		a.add(&e.sure[side])
		a.weigh(seam)
	}
	return t
}

// tail returns what lies ahead of a corner at which a drop begins that meets it; whole
// says that a whole drop ends where it begins.
func (o *outlook) tail(corner *node, whole bool, e int) *tail {
	at := 0
	if whole {
		at = 1
	}
	if corner.turn == nil || corner.turn.tails[at] == nil {
		o.open(corner, at)
	}
	t := &corner.turn.tails[at][e]
	if !t.known {
		*t = o.ahead(corner, &corner.turn.hops[at], e)
		t.known = true
	}
	return t
}

// open lays the drop that is carried round a corner; of what lies ahead nothing is known
// yet.
func (o *outlook) open(corner *node, at int) {
	if len(o.rows) < len(o.ends) {
		o.rows = make([]tail, 128*len(o.ends))
	}
	h := o.hop(corner, at > 0)
	corner.turn.tails[at], corner.turn.hops[at] = o.rows[:len(o.ends):len(o.ends)], h
	o.rows = o.rows[len(o.ends):]
}

// ahead works out what lies ahead of a corner: nothing for sure where the run ends, or
// a drop passes an opening where halves end.
func (o *outlook) ahead(corner *node, h *hop, i int) (t tail) {
	e, side := &o.ends[i], corner.spot.Side
	passes := h.edge.to != nil && h.edge.corners > 1 && o.passesEnd(corner, h.edge, i)
	switch {
	case h.edge.to == nil, passes && e.place.kill.Kind != hanging.AtCorner:
		t.across, t.reach = unknown, unknown
		t.renewed.weigh(e.closes(side, unknown))
		return t
	case passes:
		t = tail{carried: e.sure[side], renewed: impossible, across: o.acrossPassing(h.edge, side, e), reach: unknown}
	default:
		t = o.after(h, i)
	}
	for nth := range h.edge.corners {
		at, ok := o.m.cornerFrom(corner.spot.Wall, side, nth)
		if !ok || passes && at == e.place.kill.Wall {
			break
		}
		if n := o.newAt(side, at, corner.odd); n != nil {
			a := h.up
			if nth > 0 {
				a = o.givenUpFarther(h.edge, side, at, n)
			}
			a.add(o.on(n, i))
			t.renewed.least(&a)
		}
	}
	return t
}

// after returns what a hop and all after it come to. Onto a wall where nothing is sure the
// drop itself may go otherwise.
func (o *outlook) after(h *hop, e int) (t tail) {
	to, add := h.edge.to, &h.on
	if end := &o.ends[e]; o.endsOn(end, to.spot.Side, to.spot.Wall) {
		if t, add = o.toEnd(to, e), &h.only; end.folds {
			return t
		}
		if h.edge.skewed && end.place.kill.Kind == hanging.OnWall {
			t.across = unknown
		}
	} else {
		t = *o.tail(to.corner, to.count > 0, e)
	}
	t.carried.add(add)
	t.renewed.add(add)
	return t
}

// passesEnd reports whether a drop that passes corners passes an end.
func (o *outlook) passesEnd(corner *node, edge *pass, e int) bool {
	for i := 1; i < edge.corners; i++ {
		wall := corner.spot.Wall + i
		if corner.spot.Side == hanging.Left {
			wall = corner.spot.Wall - i + o.m.walls
		}
		if o.endsOn(&o.ends[e], corner.spot.Side, wall%o.m.walls) {
			return true
		}
	}
	return false
}

// hop weighs the way round a corner.
func (o *outlook) hop(corner *node, whole bool) hop {
	edge := o.v.pass(corner, -1)
	if edge.to == nil {
		return hop{edge: edge}
	}
	t := edge.sum
	if whole {
		t.score += o.v.seamToPass(&before{node: o.v.before(corner)}, corner, -1)
	}
	h := hop{edge: edge, only: o.of(&t)}
	if edge.to.count > 0 {
		t.score += o.v.seamToWhole(&before{edge: edge, from: corner}, edge.to)
	}
	t.add(&edge.to.sums)
	h.on = o.of(&t)
	if at, ok := o.m.cornerFrom(corner.spot.Wall, corner.spot.Side, 0); ok {
		if n := o.newAt(corner.spot.Side, at, corner.odd); n != nil {
			h.up = o.givenUp(corner, n)
		}
	}
	return h
}

// isHopeless reports whether no layout from a start can be better than the best found,
// and marks the ends with which none can.
func (o *outlook) isHopeless(i int) bool {
	all := true
	for k := range o.ends {
		e, p := &o.ends[k], &o.pairs[i*len(o.ends)+k]
		e.lost = [2]bool{o.isBeaten(&p[0]), o.isBeaten(&p[1])}
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
	for side := range o.sides {
		o.sides[side] = o.sides[side][:0]
		if !ok {
			continue
		}
		n := o.m.firstNode(i, hanging.Side(side), z, first)
		sums := o.of(&n.sums)
		for e := range o.ends {
			t := tail{}
			switch kill := &o.ends[e].place.kill; {
			case o.ends[e].lost[1]:
			case kill.Kind == hanging.OnWall && kill.Wall == n.spot.Wall:
				t = o.toEnd(n, e)
			default:
				t = o.from(n, &sums, e)
			}
			o.sides[side] = append(o.sides[side], t)
		}
	}
}

// isBeaten reports whether what comes to so much cannot be better than the best found: by
// its looks with all the rolls that it needs, or with parts of them.
func (o *outlook) isBeaten(a *ahead) bool {
	left := o.m.s.best.score - 1 - int64(a[looks])
	if left < 0 || int64(a[withRolls])-o.hand > left+int64(a[looks]) {
		return true
	}
	if o.roll <= 0 {
		return false
	}
	n, r := left/o.roll, &o.v.rolls
	return r.per > 0 && int64(a[fullPieces])-r.hand > r.per*n ||
		r.roll > 0 && int64(a[allLengths])+o.base > n*partsOfRoll
}

// bound returns what comes to so much weighs at the least.
func (o *outlook) bound(a *ahead) int64 {
	r, n := &o.v.rolls, int64(0)
	if r.per > 0 {
		n = (int64(a[fullPieces]) - r.hand + r.per - 1) / r.per
	}
	if r.roll > 0 {
		n = max(n, (int64(a[allLengths])+o.base+partsOfRoll-1)/partsOfRoll)
	}
	return max(int64(a[looks])+max(n, 0)*o.roll, int64(a[withRolls])-o.hand)
}

// promising lists the starts of which the best may come, so many at the most.
func (o *outlook) promising(most int) (starts []int) {
	type promise struct {
		start int
		bound int64
	}
	var all []promise
	for i := range o.m.s.starts {
		p := promise{i, math.MaxInt64}
		for e := range o.ends {
			ahead := &o.pairs[i*len(o.ends)+e]
			p.bound = min(p.bound, o.bound(&ahead[0]), o.bound(&ahead[1]))
		}
		if p.bound < o.m.s.best.score {
			all = append(all, p)
		}
	}
	slices.SortStableFunc(all, func(a, b promise) int { return cmp.Compare(a.bound, b.bound) })
	for _, p := range all[:min(most, len(all))] {
		starts = append(starts, p.start)
	}
	return starts
}

// isLost reports whether a half of the start at hand that comes to so much, and is to go
// on from a node where a new drop begins, cannot lead to a layout that is better than the
// best found.
func (o *outlook) isLost(so *sum, to *node) bool {
	here, sums := o.of(so), o.of(&to.sums)
	others := o.sides[to.spot.Side.Opposite()]
	for e := range o.ends {
		if o.ends[e].lost[1] {
			continue
		}
		t := o.from(to, &sums, e)
		t.carried.add(&here)
		t.renewed.add(&here)
		p := o.meet(&o.ends[e], to.spot.Side, &t, &others[e])
		if !o.isBeaten(&p[0]) || !o.isBeaten(&p[1]) {
			return false
		}
	}
	return true
}

// meet returns what two halves come to that meet at an end, that to a side first.
func (o *outlook) meet(e *end, side hanging.Side, a, b *tail) (p pair) {
	p[0] = a.carried
	p[0].add(&b.carried)
	if !o.isBeaten(&p[0]) {
		p[0].weigh(e.miss(a.across, b.across) + e.between(side, a.reach, b.reach))
	}
	p[1] = a.renewed
	p[1].add(&b.renewed)
	p[1].weigh(e.least)
	c := a.renewed
	c.add(&b.carried)
	if !o.isBeaten(&c) {
		c.weigh(e.leastMiss(side.Opposite(), b.across) + e.closes(side.Opposite(), b.reach))
	}
	p[1].least(&c)
	c = a.carried
	c.add(&b.renewed)
	if !o.isBeaten(&c) {
		c.weigh(e.leastMiss(side, a.across) + e.closes(side, a.reach))
	}
	p[1].least(&c)
	return p
}

// look tells of every start with every end. Of a start without halves nothing is known.
func (o *outlook) look() {
	o.pairs = make([]pair, len(o.m.s.starts)*len(o.ends))
	for i := range o.m.s.starts {
		z, first, ok := o.m.seamOf(i)
		if !ok {
			continue
		}
		var nodes [2]*node
		var sums [2]ahead
		for side := range nodes {
			nodes[side] = o.m.firstNode(i, hanging.Side(side), z, first)
			sums[side] = o.of(&nodes[side].sums)
		}
		for e := range o.ends {
			p := &o.pairs[i*len(o.ends)+e]
			if !o.m.isOffered(i, o.ends[e].kills[0]) {
				*p = pair{impossible, impossible}
				continue
			}
			*p = o.between(&nodes, &sums, e)
		}
	}
}

// between returns what lies between the beginnings of two halves and an end. On its own
// wall one half ends at once, and the other goes all the way round.
func (o *outlook) between(nodes *[2]*node, sums *[2]ahead, i int) pair {
	left, right := nodes[hanging.Left], nodes[hanging.Right]
	leftSums, rightSums := &sums[hanging.Left], &sums[hanging.Right]
	e := &o.ends[i]
	if kill := &e.place.kill; kill.Kind != hanging.OnWall || kill.Wall != left.spot.Wall {
		a, b := o.from(right, rightSums, i), o.from(left, leftSums, i)
		return o.meet(e, hanging.Right, &a, &b)
	}
	a, b := o.past(right, rightSums, i), o.toEnd(left, i)
	p := o.meet(e, hanging.Right, &a, &b)
	a, b = o.past(left, leftSums, i), o.toEnd(right, i)
	q := o.meet(e, hanging.Left, &a, &b)
	p[0].least(&q[0])
	p[1].least(&q[1])
	return p
}
