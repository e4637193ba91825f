package plan

import (
	"firstdrop/hanging"
	"firstdrop/room"
)

// Most starts cannot become anything with most kill places, whatever new drops are
// begun on the way. That is told before the halves are put together, from what lies
// ahead of a corner at the least, of which there are no more than places where a drop
// may meet it:
//
//	start ──► whole drops ──► corner ─┬─ carried on ──► whole drops ──► corner … kill
//	                                  └─ a new drop ──► whole drops ──► corner … kill
//
// The least of both is taken at every corner, and noted there for each kill place. Only
// what surely comes to be is added up, so what is told is a bound.

// outlook tells what lies ahead.
type outlook struct {
	m     *combiner
	v     *halves
	ends  []end  // where halves may end
	endOf []int  // of each kill place
	roll  int64  // what a roll weighs
	rolls int64  // what the rolls weigh that any layout needs at the least
	hand  int64  // what full pieces weigh that rolls in hand give
	rows  []tail // not yet given to a corner, as is room
	room  []hop
	pairs []ahead    // of each start with each end
	sides [2][]ahead // of the start at hand: what lies on either side of it
}

// end is where a half may end: kill places that are the same but for the lap.
type end struct {
	place    *killPlace
	kills    []int
	folds    bool     // nothing is sure of the wall where it ends
	sure     [2]ahead // by side: what is sure of the last drop
	hopeless bool     // with the start at hand
}

// ahead is what drops come to in ways that are least each by itself. Weights beyond
// all reason are cut short.
type ahead [4]int32

// What is least.
const (
	looks      = iota // without rolls
	withRolls         // with the parts of a roll that full pieces take
	fullPieces        // these parts alone, in so many to a roll
	allLengths        // the parts that the length of all pieces takes
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

// tail is what lies ahead of a corner on the way to an end.
type tail struct {
	known bool
	least ahead
}

// hop is a way round a corner, and on to the next.
type hop struct {
	edge *pass
	new  bool
	only ahead // of the drop that meets the corner, and the seam before it
	on   ahead // and of the whole drops after it, up to the next corner
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

// mostAhead is what is no longer told apart, some ten thousand rolls; partsOfRoll is in
// how many parts a roll is counted.
const (
	mostAhead   = 1 << 24
	partsOfRoll = 1 << 10
)

// of returns what a sum comes to.
func (o *outlook) of(t *sum) (a ahead) {
	r := &o.v.rolls
	if r.per > 0 {
		a[fullPieces] = int32(min(int64(t.full)*partsOfRoll/r.per, mostAhead))
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
func (o *outlook) from(n *node, sums *ahead, e int) ahead {
	if o.endsOn(&o.ends[e], n.spot.Side, n.spot.Wall) {
		return o.toEnd(n, e)
	}
	return o.past(n, sums, e)
}

// past is the same for a half that goes on past the corner ahead.
func (o *outlook) past(n *node, sums *ahead, e int) ahead {
	a := *o.tail(n.corner, n.count > 0, e)
	a.add(sums)
	return a
}

// toEnd returns what lies between a node and an end on its wall.
func (o *outlook) toEnd(n *node, i int) (a ahead) {
	e, side := &o.ends[i], n.spot.Side
	if e.place.kill.Kind != hanging.OnWall {
		a = o.of(&n.sums)
		if n.corner.spot.T < o.m.s.run.Run.Walls[n.corner.spot.Wall].Width {
			a.add(&e.sure[side])
		}
		return a
	}
	if e.folds {
		return a
	}
	near := o.m.near(e.place, side)
	if n.spot.T < near {
		a = e.sure[side]
	}
	if n.count > 0 && n.spot.T+o.v.width <= near {
		t, _ := o.m.before(n, near)
		b := o.of(&t)
		a.add(&b)
	}
	return a
}

// tail returns what lies ahead of a corner at which a drop begins that meets it; whole
// says that a whole drop ends where it begins.
func (o *outlook) tail(corner *node, whole bool, e int) *ahead {
	at := 0
	if whole {
		at = 1
	}
	if corner.turn == nil || corner.turn.tails[at] == nil {
		o.open(corner, at)
	}
	t := &corner.turn.tails[at][e]
	if !t.known {
		t.known = true
		t.least = o.ahead(corner, corner.turn.hops[at], e)
	}
	return &t.least
}

// open lists the ways round a corner, of which nothing is known yet.
func (o *outlook) open(corner *node, at int) {
	if len(o.rows) < len(o.ends) {
		o.rows = make([]tail, 128*len(o.ends))
	}
	hops := o.hops(corner, at > 0)
	corner.turn.tails[at], corner.turn.hops[at] = o.rows[:len(o.ends):len(o.ends)], hops
	o.rows = o.rows[len(o.ends):]
}

// ahead works out what lies ahead of a corner: nothing for sure where the run ends, or
// a drop passes the end.
func (o *outlook) ahead(corner *node, hops []hop, e int) (least ahead) {
	for i := range hops {
		h := &hops[i]
		if h.edge.corners > 1 && o.passesEnd(corner, h.edge, e) {
			return ahead{}
		}
		a := o.after(h, e)
		if i == 0 {
			least = a
		} else {
			least.least(&a)
		}
	}
	return least
}

// after returns what a hop and all after it come to.
func (o *outlook) after(h *hop, e int) (a ahead) {
	to := h.edge.to
	if o.endsOn(&o.ends[e], to.spot.Side, to.spot.Wall) {
		a = o.toEnd(to, e)
		a.add(&h.only)
		return a
	}
	a = *o.tail(to.corner, to.count > 0, e)
	a.add(&h.on)
	return a
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

// hops lists the ways round a corner: the drop carried on, and new drops in the corners
// that it meets.
func (o *outlook) hops(corner *node, whole bool) (hops []hop) {
	carried := o.v.pass(corner, -1)
	if carried.to == nil {
		return nil
	}
	hops = append(o.few(1+carried.corners), o.hop(corner, carried, -1, whole))
	for nth := range carried.corners {
		at, ok := o.m.cornerFrom(corner.spot.Wall, corner.spot.Side, nth)
		if !ok || o.m.s.run.Run.Corners[at].Kind != room.Inside {
			continue
		}
		if edge := o.v.pass(corner, nth); edge.to != nil && edge.corners == nth+1 {
			hops = append(hops, o.hop(corner, edge, nth, whole))
		}
	}
	return hops
}

// few returns room for so many hops.
func (o *outlook) few(n int) []hop {
	if len(o.room) < n {
		o.room = make([]hop, max(256, n))
	}
	hops := o.room[:0:n]
	o.room = o.room[n:]
	return hops
}

// hop weighs one way round a corner.
func (o *outlook) hop(corner *node, edge *pass, renew int, whole bool) hop {
	t := edge.sum
	if whole {
		t.score += o.v.seamToPass(&before{node: o.v.behind(corner)}, corner, renew)
	}
	h := hop{edge: edge, new: renew >= 0, only: o.of(&t)}
	if edge.to.count > 0 {
		t.score += o.v.seamToWhole(&before{edge: edge, from: corner}, edge.to)
	}
	t.add(&edge.to.sums)
	h.on = o.of(&t)
	return h
}

// isHopeless reports whether no layout from a start can be better than the best found,
// and marks the ends with which none can.
func (o *outlook) isHopeless(i int) bool {
	all := true
	for e := range o.ends {
		o.ends[e].hopeless = o.isBeaten(&o.pairs[i*len(o.ends)+e])
		all = all && o.ends[e].hopeless
	}
	if !all {
		o.face(i)
	}
	return all
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
			a := ahead{}
			switch kill := &o.ends[e].place.kill; {
			case o.ends[e].hopeless:
			case kill.Kind == hanging.OnWall && kill.Wall == n.spot.Wall:
				a = o.toEnd(n, e)
			default:
				a = o.from(n, &sums, e)
			}
			o.sides[side] = append(o.sides[side], a)
		}
	}
}

// isBeaten reports whether what comes to so much cannot be better than the best found.
func (o *outlook) isBeaten(a *ahead) bool {
	best := o.m.s.best.score
	return int64(a[looks])+o.rolls >= best || int64(a[withRolls])-o.hand >= best
}

// isLost reports whether a half of the start at hand that comes to so much, and is to go
// on from a node, cannot lead to a layout that is better than the best found.
func (o *outlook) isLost(so *sum, to *node) bool {
	here, sums := o.of(so), o.of(&to.sums)
	others := o.sides[to.spot.Side.Opposite()]
	for e := range o.ends {
		if o.ends[e].hopeless {
			continue
		}
		a := o.from(to, &sums, e)
		a.add(&here)
		if a.add(&others[e]); !o.isBeaten(&a) {
			return false
		}
	}
	return true
}

// look tells of every start with every end, and how many rolls any layout needs at the
// least. Of a start without halves nothing is known.
func (o *outlook) look() {
	least := ahead{mostAhead, mostAhead, mostAhead, mostAhead}
	o.pairs = make([]ahead, len(o.m.s.starts)*len(o.ends))
	for i := range o.m.s.starts {
		z, first, ok := o.m.seamOf(i)
		if !ok {
			least = ahead{}
			continue
		}
		var nodes [2]*node
		var sums [2]ahead
		for side := range nodes {
			nodes[side] = o.m.firstNode(i, hanging.Side(side), z, first)
			sums[side] = o.of(&nodes[side].sums)
		}
		for e := range o.ends {
			if o.m.isOffered(i, o.ends[e].kills[0]) {
				a := &o.pairs[i*len(o.ends)+e]
				*a = o.between(&nodes, &sums, e)
				least.least(a)
			}
		}
	}
	o.count(&least)
}

// between returns what lies between the beginnings of two halves and an end.
func (o *outlook) between(nodes *[2]*node, sums *[2]ahead, e int) (least ahead) {
	left, right := nodes[hanging.Left], nodes[hanging.Right]
	kill := &o.ends[e].place.kill
	if kill.Kind != hanging.OnWall || kill.Wall != left.spot.Wall {
		least = o.from(right, &sums[hanging.Right], e)
		a := o.from(left, &sums[hanging.Left], e)
		least.add(&a)
		return least
	}
	least = o.past(right, &sums[hanging.Right], e)
	other := o.past(left, &sums[hanging.Left], e)
	a, b := o.toEnd(left, e), o.toEnd(right, e)
	least.add(&a)
	other.add(&b)
	least.least(&other)
	return least
}

// count notes the rolls that any layout needs, by what all need at the least.
func (o *outlook) count(least *ahead) {
	r := &o.v.rolls
	if r.per > 0 {
		o.hand = (r.hand*o.roll + r.per - 1) / r.per
		o.rolls = max(0, int64(least[fullPieces])-(r.hand*partsOfRoll+r.per-1)/r.per)
	}
	if r.roll > 0 {
		o.rolls = max(o.rolls, int64(least[allLengths])+int64(r.base)*partsOfRoll/int64(r.roll)-1)
	}
	o.rolls = (o.rolls + partsOfRoll - 1) / partsOfRoll * o.roll
}
