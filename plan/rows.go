package plan

import (
	"cmp"
	"math"
	"slices"

	"firstdrop/hanging"
	"firstdrop/measure"
)

// Most starts come to nothing, and that is told of a row of them at once, as of brackets:
//
//	wall   ┊ │││││││││ ┊  │││││││ ┊       rows of starts between events
//	       ┊ └───┬───┘ ┊  └──┬──┘ ┊
//	          told 2174   told 2391       best found 2210: the second row is not looked at
//
// The starts of a row that promises something are looked at one by one; the most promising
// comes first.

// startRows are rows of starts.
type startRows struct {
	b      *brackets
	starts []int // those with halves, row by row
	all    []startRow
	sides  [2]farSide // of the row at hand
	spare  []pair     // not yet given to a row
}

// startRow is a row of starts on a wall between which nothing changes but evenly.
type startRow struct {
	from, to int // of the rows' starts; the last is not one of them
	bounds   []pair
	offered  ends
}

// farSide is what lies on one side of a row of starts, by end.
type farSide struct {
	onWall []farTail // for ends on the start's wall
	past   []farTail // for others, and those to which one comes when one has gone all the way round
}

// startSeam is where the seam of a start stands: small, since all of them are sorted.
type startSeam struct {
	z     measure.Length
	start int32
	wall  int16
	first int16
}

// newRows lists the rows of all starts, with what they weigh at the least.
func (b *brackets) newRows() *startRows {
	r, s := &startRows{b: b}, b.o.m.s
	for side := range r.sides {
		r.sides[side] = farSide{make([]farTail, len(b.o.ends)), make([]farTail, len(b.o.ends))}
	}
	r.list(0, s.own) // those beside kill seams are offered otherwise
	r.list(s.own, len(s.starts))
	return r
}

// list lists the rows of some starts.
func (r *startRows) list(first, last int) {
	for seams := r.b.o.seams(first, last); len(seams) > 0; {
		n, from := 1+r.alike(seams), len(r.starts)
		for _, seam := range seams[:n] {
			r.starts = append(r.starts, int(seam.start))
		}
		r.add(from, len(r.starts))
		seams = seams[n:]
	}
}

// seams lists where the seams of some starts stand, wall by wall, from left to right.
func (o *outlook) seams(from, to int) (seams []startSeam) {
	seams = make([]startSeam, 0, to-from)
	for i := from; i < to; i++ {
		if z, first, ok := o.m.seamOf(i); ok {
			seams = append(seams, startSeam{z, int32(i), int16(o.m.s.starts[i].Wall), int16(first)})
		}
	}
	slices.SortFunc(seams, func(a, b startSeam) int {
		switch {
		case a.wall != b.wall:
			return int(a.wall - b.wall)
		case a.first != b.first:
			return int(a.first - b.first)
		case a.z != b.z:
			return cmp.Compare(a.z, b.z)
		}
		return int(a.start - b.start)
	})
	return seams
}

// alike returns how many starts after the first follow it before the next event.
func (r *startRows) alike(seams []startSeam) (n int) {
	s, width := &seams[0], r.b.o.v.width
	way := min(r.b.events[s.wall].next(s.z, width), widestBracket)
	for n+1 < len(seams) && seams[n+1].wall == s.wall && seams[n+1].first == s.first && seams[n+1].z-s.z < way {
		n++
	}
	return n
}

// add adds a row; its halves, if not all of it stands alike.
func (r *startRows) add(from, to int) {
	m, i, k := r.b.o.m, r.starts[from], r.starts[to-1]
	z, first, _ := m.seamOf(i)
	last, _, _ := m.seamOf(k)
	var nodes [2][2]*node
	for side := range nodes {
		n := &nodes[side]
		*n = [2]*node{m.firstNode(i, hanging.Side(side), z, first), m.firstNode(k, hanging.Side(side), last, first)}
		if n[0].count != n[1].count {
			r.add(from, (from+to)/2)
			r.add((from+to)/2, to)
			return
		}
	}
	row := startRow{from: from, to: to, bounds: r.pairs(len(r.b.o.ends)), offered: r.b.o.offered(i)}
	r.bound(&row, nodes, first)
	r.all = append(r.all, row)
}

// pairs returns so many that are the row's own.
func (r *startRows) pairs(n int) []pair {
	if len(r.spare) == 0 {
		r.spare = make([]pair, 128*n)
	}
	p := r.spare[:n:n]
	r.spare = r.spare[n:]
	return p
}

// bound tells what a row of starts weighs at the least with each end, from the nodes at
// which its first start and its last begin, by side.
func (r *startRows) bound(row *startRow, nodes [2][2]*node, first int) {
	o, wall := r.b.o, nodes[0][0].spot.Wall
	starts := o.m.s.starts
	around := o.around(wall, starts[r.starts[row.from]].X, starts[r.starts[row.to-1]].X)
	for side := range nodes {
		r.look(hanging.Side(side), nodes[side], row.offered, &around)
	}
	m := meeting{o, first, [2]measure.Length{}, nodes[hanging.Right][1].spot.T - nodes[hanging.Right][0].spot.T}
	for side := range nodes {
		m.at[side] = nodes[side][0].spot.T
	}
	right, left := &r.sides[hanging.Right], &r.sides[hanging.Left]
	unequal, seam := int64(-1), r.seamOf(nodes[hanging.Right])
	for e := range o.ends {
		p, end := &row.bounds[e], &o.ends[e]
		if !row.offered.has(e) {
			*p = pair{mostAhead, mostAhead}
			continue
		}
		if o.own[wall].has(e) {
			*p = pair{mostAhead, mostAhead}
			for side := range around {
				if around[side].has(e) {
					p.least(m.meet(end, hanging.Side(side), &r.sides[side].past[e], &r.sides[1-side].onWall[e]))
				}
			}
		} else {
			x, y := &right.past[e], &left.past[e]
			if o.on[hanging.Right][wall].has(e) {
				x = &right.onWall[e]
			}
			if o.on[hanging.Left][wall].has(e) {
				y = &left.onWall[e]
			}
			*p = m.meet(end, hanging.Right, x, y)
		}
		if seam > 0 && r.keepSeam(end.place, nodes[hanging.Right]) {
			p[0], p[1] = p[0]+seam, p[1]+seam
		}
		if best := o.m.s.best.score; !o.own[wall].has(e) && (p[0] < best || p[1] < best) {
			if unequal < 0 {
				unequal = r.unequalOf(nodes)
			}
			p[0], p[1] = p[0]+unequal, p[1]+unequal
		}
	}
}

// seamOf returns what the seams of a row of starts weigh at the least, from the nodes at
// which the right halves of its first and its last begin.
func (r *startRows) seamOf(n [2]*node) int64 {
	v, wall := r.b.o.v, n[0].spot.Wall
	seam := v.seamOn(wall, n[0].spot.T)
	if n[0] == n[1] || seam == 0 {
		return seam
	}
	seam = min(seam, v.seamOn(wall, n[1].spot.T))
	return max(0, seam-r.b.slack.of(seam))
}

// keepSeam reports whether all of these seams are there wherever the kill seam stands.
func (r *startRows) keepSeam(place *killPlace, n [2]*node) bool {
	m, wall := r.b.o.m, n[0].spot.Wall
	return m.keepsSeam(place, wall, n[0].spot.T) && m.keepsSeam(place, wall, n[1].spot.T)
}

// unequalOf returns what the end strips of the wall of a row of starts weigh at the least.
func (r *startRows) unequalOf(nodes [2][2]*node) int64 {
	m, right, left := r.b.o.m, nodes[hanging.Right], nodes[hanging.Left]
	unequal := m.unequalAt(right[0], left[0])
	if right[0] != right[1] {
		unequal = min(unequal, m.unequalAt(right[1], left[1]))
	}
	return unequal
}

// look looks to one side from the nodes at which a row of starts begins.
func (r *startRows) look(side hanging.Side, n [2]*node, offered ends, around *[2]ends) {
	b, f, wall := r.b, &r.sides[side], n[0].spot.Wall
	o, moves := b.o, n[0] != n[1]
	on := o.on[side][wall]
	for rest := on.without(o.own[wall].without(around[side.Opposite()])).and(offered); !rest.isEmpty(); {
		var e int
		e, rest = rest.next()
		t := &f.onWall[e]
		for i := range n {
			at := o.toEnd(n[i], e)
			b.takeIn(t, &at, i, n[i].spot)
		}
		if moves {
			t.carried.weigh(-b.slack.of(b.faults(&t.carried, n[0].count, &o.ends[e])))
			b.forget(&t.carried, b.level[wall])
		}
	}
	past := offered.without(on.without(around[side]))
	if past.isEmpty() {
		return
	}
	sums := o.rowFrom(n[0])
	if moves {
		last := o.rowFrom(n[1])
		sums = b.leastRow(&sums, &last, min(o.faultsFrom(n[0]), o.faultsFrom(n[1])), b.level[wall])
	}
	from, to := n[0].corner.spot.T, n[1].corner.spot.T
	if from > to {
		from, to = to, from
	}
	b.ahead(f.past, b.between(n[0], from, to), past, &sums, along(side, n[0].corner.spot.T-n[0].spot.T))
}

// meeting is where the halves of a start, or of a row of starts, meet.
type meeting struct {
	o      *outlook
	first  int               // the index of the first drop to the right of the start
	at     [2]measure.Length // by side: where the first start begins
	within measure.Length    // how far the others are from that at the most
}

// meet returns what any of the starts weighs at the least whose two halves, that to a side
// first, meet at an end.
func (m *meeting) meet(e *end, side hanging.Side, x, y *farTail) (p pair) {
	o, other := m.o, side.Opposite()
	best := o.m.s.best.score
	weight, over := e.between(side, x.reach, y.reach)
	closed := x.carried
	closed.addTimes(&e.over, over)
	closed.weigh(weight)
	if p[0] = o.together(side, &closed, &y.carried, m.first); p[0] < best {
		p[0] += m.miss(e, side, x, y)
	}
	if !o.m.renews {
		p[1] = mostAhead
		return p
	}
	p[1] = o.together(side, &x.renewed, &y.renewed, m.first) + e.least
	c := o.together(side, &x.renewed, &y.carried, m.first) + e.closes(other, y.reach) // which may be less than nothing
	if c < best {
		c += m.leastMiss(e, other, y)
	}
	p[1] = min(p[1], c)
	c = o.together(side, &x.carried, &y.renewed, m.first) + e.closes(side, x.reach)
	if c < best {
		c += m.leastMiss(e, side, x)
	}
	p[1] = min(p[1], c)
	return p
}

// across returns how far across the design has come, by one of the ways to an end, from the
// first start.
func (m *meeting) across(c *crossing, i int, side hanging.Side) measure.Length {
	return (c.at[i] - along(side, m.at[side])).Mod(m.o.designWidth())
}

// miss returns what the kill seam weighs if both halves are carried on: however far along
// the start is, since they come to it as much farther as nearer.
func (m *meeting) miss(e *end, side hanging.Side, x, y *farTail) int64 {
	if x.across.n == 0 || y.across.n == 0 {
		return 0
	}
	least := int64(math.MaxInt64)
	for i := range x.across.n {
		for k := range y.across.n {
			least = min(least, e.miss(m.across(&x.across, i, side), m.across(&y.across, k, side.Opposite()), 0))
		}
	}
	return least
}

// leastMiss returns what the kill seam weighs at the least with a new drop on the other side.
func (m *meeting) leastMiss(e *end, side hanging.Side, t *farTail) int64 {
	if t.across.n == 0 {
		return 0
	}
	least := int64(math.MaxInt64)
	for i := range t.across.n {
		least = min(least, e.leastMiss(side, m.across(&t.across, i, side), m.within))
	}
	return least
}

// promise is a row of starts, or one, of which something may come, and what that weighs at
// the least.
type promise struct {
	bound int64
	row   int // −1: one start
	start int
	twins bool // one has looked for its twins
}

// isBefore reports whether a promise comes before another: the one that weighs less. Of equals
// rows come first, and then the start that is listed first.
func (p *promise) isBefore(other *promise) bool {
	switch {
	case p.bound != other.bound:
		return p.bound < other.bound
	case (p.row < 0) != (other.row < 0):
		return other.row < 0
	}
	return p.start < other.start
}

// promise begins to list starts by what they promise: from rows, or where it does not pay to
// bracket corners from all of them. Of those without halves nothing is known.
func (o *outlook) promise() {
	var b *brackets
	if o.mayPay() {
		b = o.newBrackets()
	}
	if b != nil && !b.pays() {
		b = nil
	}
	if b != nil {
		o.starts = b.newRows()
		for k := range o.starts.all {
			o.list(o.starts.promise(k))
		}
	}
	for i := range o.m.s.starts {
		if _, _, ok := o.m.seamOf(i); b == nil || !ok {
			o.list(promise{o.look(i, o.offered(i), !o.m.renews), -1, i, !o.m.renews})
		}
	}
	o.promises.arrange()
}

// list lists a promise, in no order, unless nothing better than the best found may come of it.
func (o *outlook) list(p promise) {
	if !o.m.s.isBeaten(p.bound) {
		o.promises = append(o.promises, p)
	}
}

// promise returns what a row promises.
func (r *startRows) promise(k int) promise {
	p := promise{bound: math.MaxInt64, row: k, start: r.starts[r.all[k].from]}
	for _, b := range r.all[k].bounds {
		p.bound = min(p.bound, b[0], b[1])
	}
	return p
}

// split puts back a row in parts.
func (o *outlook) split(row startRow) {
	k := len(o.starts.all)
	middle := (row.from + row.to) / 2
	o.starts.add(row.from, middle)
	o.starts.add(middle, row.to)
	for ; k < len(o.starts.all); k++ {
		if p := o.starts.promise(k); !o.m.s.isBeaten(p.bound) {
			o.promises.push(&p)
		}
	}
}

// next returns the start of those left that promises most; false if none promises
// something better than the best found.
func (o *outlook) next() (promise, bool) {
	for len(o.promises) > 0 {
		p := o.promises.pop()
		if o.m.s.isBeaten(p.bound) {
			break
		}
		if p.row < 0 {
			if o.m.twins == nil || p.twins {
				return p, true
			}
			p.twins = true
			if p.bound = o.look(p.start, o.asked(p.start), true); !o.m.s.isBeaten(p.bound) {
				o.promises.push(&p)
			}
			continue
		}
		row := o.starts.all[p.row]
		if n := row.to - row.from; n > fewTogether {
			o.split(row)
			continue
		}
		asked := row.asked(o.m.s.best.score)
		for _, i := range o.starts.starts[row.from:row.to] {
			if q := (promise{o.look(i, asked, false), -1, i, false}); !o.m.s.isBeaten(q.bound) {
				o.promises.push(&q)
			}
		}
	}
	return promise{}, false
}

// fewTogether is up to how many starts of a row are looked at one by one.
const fewTogether = 8

// asked returns the ends with which a row of starts may weigh less than the best found.
func (s *startRow) asked(best int64) ends { return below(s.bounds, best).and(s.offered) }

// asked returns the same of a start of which one has been told.
func (o *outlook) asked(i int) ends { return below(o.boundsOf(i), o.m.s.best.score).and(o.offered(i)) }

// below returns the ends with which something weighs less than the best found.
func below(bounds []pair, best int64) (n ends) {
	for e, p := range bounds {
		if p[0] < best || p[1] < best {
			n = n.or(oneEnd(e))
		}
	}
	return n
}
