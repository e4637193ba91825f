package plan

import (
	"firstdrop/cutting"
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
)

// The search by halves. From the seam at which hanging starts, the way to the
// right and the way to the left know nothing of each other; and each goes on the
// same way however it came to a seam. So every drop that any start can bring
// about is weighed once, and every start is put together from sums:
//
//	      ◄── left half ──┊── right half ──►
//	──┬────────┬────────┬─┊─────┬────────┬────────┬──
//	  │  sum to here    │ start │   sum to here   │
//	  c1                c0      c0                c1     corners passed
//
// A spot is a place on a wall where a drop begins. The drops that stand whole on
// the wall lead from spot to spot up to the drop that meets the corner; that drop
// is carried round, or given up there, and leads to a spot on the next wall.

// sum is what a row of drops comes to.
type sum struct {
	score  int64          // of the drops and the seams between them
	cut    int64          // of their pieces
	length measure.Length // of all pieces
	worth  int64          // of all pieces
	full   int32          // pieces of the kind that most pieces are of
	long   [longest]int32 // pieces of which no roll gives more than 1, 2 …
	drops  int32
	// motif counts the drops whose motif meets the ceiling, by their place in the
	// row; some says that there are any.
	motif [motifCycle]int16
	some  bool
}

// add adds what another row comes to, after this one. As [outlook.passed] it is not inlined.
//
//go:noinline
func (a *sum) add(b *sum) {
	if b.some {
		for i, n := range b.motif {
			a.motif[(int(a.drops)+i)%motifCycle] += n
		}
		a.some = true
	}
	a.score += b.score
	a.cut += b.cut
	a.full += b.full
	a.length += b.length
	a.worth += b.worth
	for k := range a.long {
		a.long[k] += b.long[k]
	}
	a.drops += b.drops
}

// addPieces adds the pieces of so many drops.
func (a *sum) addPieces(b *sum, drops int64) {
	a.cut += b.cut * drops
	a.full += b.full * int32(drops)
	a.length += b.length * measure.Length(drops)
	a.worth += b.worth * drops
	for k := range a.long {
		a.long[k] += b.long[k] * int32(drops)
	}
}

// sub takes away what a row comes to that comes first. As [outlook.passed] it is not inlined.
//
//go:noinline
func (a *sum) sub(b *sum) {
	a.score -= b.score
	a.cut -= b.cut
	a.full -= b.full
	a.length -= b.length
	a.worth -= b.worth
	for k := range a.long {
		a.long[k] -= b.long[k]
	}
	a.drops -= b.drops
	if b.some {
		for i, n := range b.motif {
			a.motif[(int(a.drops)+i)%motifCycle] -= n
		}
	}
}

// halves holds what has been walked of one run.
type halves struct {
	s       *search
	h       *hanging.Hanger
	j       *judge
	rolls   rollBound
	motifs  motifBound
	width   measure.Length
	turns   bool // alternate drops are reversed: odd and even ones differ
	middle  int  // an index far from 0 that is like drop 0
	nodes   nodes
	kinds   map[kindKey]kind
	l       hanging.Layout
	parts   [2][1]hanging.Part // of the last two strips
	flip    int
	passes  slab[pass]
	busy    [][]geom.Interval // by wall: where a seam may weigh anything
	alike   []alikeRows       // by wall
	between seamTable
	before  [2]hanging.Part // of a drop beside a seam
	beside  [2]hanging.Part // of that on its right, or beside a corner
	floor   int64           // what any layout weighs at the least; 0: not yet asked

	catalogue *cutting.Catalogue // what rolls give; nil: not listed
}

// node is a spot with what begins there.
type node struct {
	spot hanging.Spot
	odd  bool

	next   *node // after the whole drops that stand in a row from here; nil if the drop here meets the corner
	run    int   // how many they are: one, or all that stand alike
	corner *node // where the drop begins that meets the corner
	seam   int64 // between the last drop in the row and the next whole drop
	sums   sum   // of the whole drops from here to corner, and the seams between them
	count  int   // how many they are
	prior  int64 // what the seam before it weighs at the least if a whole drop stands there, plus one; 0: not asked
	// What the drop that begins here may do, if it meets the corner and that was asked.
	carried *pass
	given   []*pass // by the corner where it is given up
	view    *view   // what the outlook sees from here
}

// pass is a drop that passes corners.
type pass struct {
	parts   []hanging.Part
	corners int
	sum     sum
	skewed  bool  // it leans on the wall where it ends
	to      *node // nil: it reaches an end of the run, or goes round more than everything
	// What the seam weighs between this drop and the whole one on either side of it, and
	// between it and what the next drop may do, by the corner where that is given up, plus
	// one; −1 where not yet known.
	afterWhole, beforeWhole int64
	beforePass              []int64
	few                     [2]hanging.Part // for parts, as a rule
}

// kind is what all drops of a kind have in common.
type kind struct {
	sum   sum  // of their pieces, and whether the motif meets the ceiling
	alike bool // they weigh the same: sum is all of that, but for their centring
}

// kindKey names a kind of drops that cover the same.
type kindKey struct {
	parts [2][3]uint16 // the wall, plus one, and the zones where the part begins and ends
	axis  [2]uint16    // the part in which the motif's axis lies, plus one, and the zone there
	odd   bool
}

func newHalves(s *search) *halves {
	p := &s.task.Papers[s.run.Paper]
	v := &halves{
		s: s, h: s.h, j: s.judge, width: p.Width, turns: p.Match.Reversing && (p.Repeat > 0 || p.Motif != nil), middle: 2 * p.Alternatives(),
		kinds: map[kindKey]kind{},
	}
	rules := &s.task.Rules
	v.nodes = newNodes(s.run.Run, v.width, v.turns, s.step, rules.Wrap, rules.OutsideWrap)
	v.between.step = measure.Length(v.nodes.step)
	for i := range v.j.run.Walls {
		v.busy = append(v.busy, v.busyStretches(i))
		v.alike = append(v.alike, v.newAlikeRows(i))
		v.between.walls = append(v.between.walls, make([]int64, v.nodes.sizes[4*i]))
	}
	return v
}

// node returns the node of a spot. odd says that a drop of odd index begins
// there.
func (v *halves) node(spot hanging.Spot, odd bool) *node {
	odd = odd && v.turns
	n := v.nodes.at(spot, odd)
	if n == nil {
		n = v.nodes.add(spot, odd)
		v.follow(n)
	}
	return n
}

// follow sums up the whole drops from a node to the corner.
func (v *halves) follow(n *node) {
	if !v.h.FitsWhole(n.spot) {
		n.corner = n
		return
	}
	if a := v.row(n); a.run > 0 {
		n.run, n.sums = a.run, a.sum
		n.sums.score += v.betweenAlike(n, a.run)
	} else {
		n.run, n.sums = 1, v.whole(n)
	}
	spot := n.spot
	spot.T += v.width * measure.Length(n.run)
	n.next = v.node(spot, v.oddAfter(n, n.run))
	n.corner, n.count = n.next.corner, n.next.count+n.run
	n.sums.add(&n.next.sums)
	if n.next.next != nil {
		n.seam = v.seamAfter(n)
		n.sums.score += n.seam
	}
}

// oddAfter reports whether a drop is odd that begins so many after a node.
func (v *halves) oddAfter(n *node, drops int) bool { return n.odd != (drops%2 != 0) }

// wholes returns how many whole drops stand from a spot on up to the corner.
func (v *halves) wholes(spot hanging.Spot) (n int) {
	for ; v.h.FitsWhole(spot); n++ {
		spot.T += v.width
	}
	return n
}

// whole weighs the whole drop that begins at a node, unless the other half came by
// it before.
func (v *halves) whole(n *node) sum {
	if m := v.facing(n); m != nil && m.run == 1 {
		t := m.sums
		t.sub(&m.next.sums)
		t.score -= m.seam
		return t
	}
	return v.weighStrip(v.strip(n))
}

// seamAfter weighs the seam between the whole drop that begins at a node and the
// next one, unless the other half came by it before.
func (v *halves) seamAfter(n *node) int64 {
	if m := v.facing(n.next); m != nil && m.run == 1 && m.next.next != nil {
		return m.seam
	}
	return v.seamBefore(n.next.spot, n.next.odd)
}

// facing returns the node at which the whole drop that begins at n begins when one
// comes from the other side; nil if nobody has come so.
func (v *halves) facing(n *node) *node {
	spot := hanging.Spot{Side: n.spot.Side.Opposite(), Wall: n.spot.Wall, T: v.s.run.Run.Walls[n.spot.Wall].Width - v.width - n.spot.T}
	return v.nodes.at(spot, n.odd)
}

// index returns an index like that of the drop that begins at a node.
func (v *halves) index(side hanging.Side, odd bool) int {
	i := v.middle
	if side == hanging.Left {
		i = -i
	}
	if odd {
		i++
	}
	return i
}

// left returns the left edge of the whole drop that begins at a spot.
func (v *halves) left(spot hanging.Spot) measure.Length {
	x := v.h.X(spot)
	if spot.Side == hanging.Left {
		x -= v.width
	}
	return x
}

// strip returns the whole drop that begins at a node, good until two more are
// asked for. As [outlook.passed] it is not inlined.
//
//go:noinline
func (v *halves) strip(n *node) hanging.Strip { return v.stripAt(n.spot, n.odd) }

// stripBefore returns the whole drop that ends at a node, good as long.
func (v *halves) stripBefore(n *node) hanging.Strip {
	spot := n.spot
	spot.T -= v.width
	return v.stripAt(spot, !n.odd && v.turns)
}

// stripAt returns the whole drop that begins at a spot, good as long.
func (v *halves) stripAt(spot hanging.Spot, odd bool) hanging.Strip {
	x := v.left(spot)
	v.flip = 1 - v.flip
	parts := v.parts[v.flip][:]
	parts[0] = hanging.Part{
		Wall: spot.Wall, X: geom.Interval{Lo: x, Hi: x + v.width}, Across: geom.Interval{Hi: v.width},
	}
	return hanging.Strip{Index: v.index(spot.Side, odd), Parts: parts}
}

// weighStrip weighs a drop. What those that cover the same come to beside their seams
// is found once for all of them.
func (v *halves) weighStrip(s hanging.Strip) sum {
	key, ok := v.kind(&s)
	k, known := v.kinds[key]
	switch {
	case ok && known && k.alike:
		t := k.sum
		t.score += v.centring(&s)
		return t
	case ok && known:
		v.h.Put(&v.l, s)
		return v.weighed(&k)
	}
	v.h.Alone(&v.l, s, hanging.Kill{}, [2]bool{})
	k.sum = v.ofPieces()
	if v.motifs.meets(&v.l) {
		k.sum.motif[0], k.sum.some = 1, true
	}
	t := v.weighed(&k)
	if ok {
		if k.alike = v.isAlike(&s); k.alike {
			k.sum = t
			k.sum.score -= v.centring(&s)
		}
		v.kinds[key] = k
	}
	return t
}

// likeOthers returns what all drops of a kind come to, but for their centring; false if they
// do not all come to the same.
func (v *halves) likeOthers(s hanging.Strip) (t sum, ok bool) {
	key, ok := v.kind(&s)
	if !ok || !v.isAlike(&s) {
		return t, false
	}
	k, known := v.kinds[key]
	if !known {
		v.weighStrip(s)
		k = v.kinds[key]
	}
	return k.sum, k.alike
}

// isAlike reports whether all drops of a kind weigh the same, but for their centring: a whole
// one that does not turn a corner.
func (v *halves) isAlike(s *hanging.Strip) bool {
	p := &s.Parts[0]
	return len(s.Parts) == 1 && p.X.Lo >= 0 && p.X.Hi <= v.j.walls[p.Wall].width
}

// centring weighs how far the motif of a drop that does not turn a corner stands off the line
// of its wall.
func (v *halves) centring(s *hanging.Strip) int64 {
	_, weight := v.j.offLine(&s.Parts[0], v.j.paper.IsReversed(s.Index))
	return weight
}

// weighed adds what the one drop of v.l and the seams in it weigh to what its kind
// comes to.
func (v *halves) weighed(k *kind) sum {
	l, t := &v.l, k.sum
	t.drops, t.score = 1, v.s.task.Taste.Weights.Drop+v.j.drop(l, 0)
	for i := range l.Seams {
		t.score += v.j.seam(l, &l.Seams[i], nil)
	}
	return t
}

// ofPieces returns what the pieces of the one drop of v.l come to.
func (v *halves) ofPieces() (t sum) {
	t.cut = int64(len(v.l.Pieces)) * v.s.task.Taste.Weights.Piece
	for i := range v.l.Pieces {
		p := &v.l.Pieces[i]
		t.cut += v.j.long(&v.l, p)
		v.rolls.count(&t, p)
	}
	return t
}

// kind returns the kind of a drop; false if it is like no other.
func (v *halves) kind(s *hanging.Strip) (k kindKey, ok bool) {
	k.odd, ok = s.Index%2 != 0, len(s.Parts) <= len(k.parts)
	if !ok || v.j.level != nil && len(s.Parts) > 1 { // hung by the ceiling of the wall on which it is wider
		return k, false
	}
	axis := measure.Length(-1)
	if v.j.paper.Motif != nil {
		axis = v.j.axis(v.j.paper.IsReversed(s.Index))
	}
	for i := range s.Parts {
		p := &s.Parts[i]
		left, level := v.h.Zone(p.Wall, p.X.Lo)
		right, also := v.h.Zone(p.Wall, p.X.Hi)
		k.parts[i] = [3]uint16{uint16(p.Wall) + 1, uint16(left), uint16(right)}
		ok = ok && level && also && p.Skew == 0
		if p.Across.Lo < axis && axis < p.Across.Hi {
			at, level := v.h.Zone(p.Wall, p.X.Lo+axis-p.Across.Lo)
			k.axis, ok = [2]uint16{uint16(i) + 1, uint16(at)}, ok && level
		}
	}
	return k, ok
}

// weighSeam weighs the seam between a drop and the one hung after it on that
// side.
func (v *halves) weighSeam(before, after hanging.Strip, side hanging.Side) int64 {
	if side == hanging.Left {
		after.Index = before.Index - 1
		before, after = after, before
	} else {
		after.Index = before.Index + 1
	}
	if v.isQuiet(&before.Parts[len(before.Parts)-1], &after.Parts[0]) {
		return 0
	}
	v.h.Beside(&v.l, before, after)
	return v.j.seam(&v.l, &v.l.Seams[0], nil)
}

// pass returns the drop that begins at a corner node, given up in the corner
// number renew that it meets, or carried round all (−1).
func (v *halves) pass(n *node, renew int) *pass {
	e := &n.carried
	if renew >= 0 {
		for len(n.given) <= renew {
			n.given = append(n.given, nil)
		}
		e = &n.given[renew]
	}
	if *e == nil {
		*e = v.newPass(n, renew)
	}
	return *e
}

func (v *halves) newPass(n *node, renew int) *pass {
	e := v.passes.one()
	e.afterWhole, e.beforeWhole = -1, -1
	parts, corners, next, ok := v.h.Lay(e.few[:0], n.spot, renew)
	if !ok {
		return e
	}
	e.parts, e.corners = parts, corners
	e.skewed = parts[0].Skew != 0 || parts[len(parts)-1].Skew != 0
	e.sum = v.weighStrip(v.passStrip(n, e))
	e.to = v.node(next, !n.odd)
	return e
}

func (v *halves) passStrip(n *node, e *pass) hanging.Strip {
	return hanging.Strip{Index: v.index(n.spot.Side, n.odd), Parts: e.parts}
}

// before is what a half comes to before some drop, and which drop that follows.
type before struct {
	edge  *pass // the drop before it passed corners
	from  *node // where that began
	whole *node // where the drop before it ends, if it stands whole; with neither, nothing is before it
}

// seamToCorner weighs the seam between a whole drop and the one after it that meets a corner,
// at the least: what goes round the corner, or is given up there, is left open.
func (v *halves) seamToCorner(corner *node) int64 {
	if corner.prior > 0 {
		return corner.prior - 1
	}
	corner.prior = 1
	wall, width := corner.spot.Wall, v.s.run.Run.Walls[corner.spot.Wall].Width
	left, right := v.s.run.Run.LeanAt(wall)
	if corner.spot.T >= width-max(left, -right, 0) {
		return 0
	}
	x := v.h.X(corner.spot)
	v.beside = [2]hanging.Part{{Wall: wall, X: geom.Interval{Lo: x, Hi: width}, Across: geom.Interval{Hi: width - x}}, {Wall: -1}}
	if corner.spot.Side == hanging.Left {
		v.beside = [2]hanging.Part{{Wall: -1}, {Wall: wall, X: geom.Interval{Hi: x}, Across: geom.Interval{Lo: v.width - x, Hi: v.width}}}
	}
	corner.prior += v.weighSeam(v.stripBefore(corner), hanging.Strip{Index: v.index(corner.spot.Side, corner.odd), Parts: v.beside[:]}, corner.spot.Side)
	return corner.prior - 1
}

// seamToWhole weighs the seam between what was before and the whole drop at n.
func (v *halves) seamToWhole(b *before, n *node) int64 {
	if b.edge == nil {
		if b.whole == nil {
			return 0
		}
		return v.weighSeam(v.stripBefore(b.whole), v.strip(n), n.spot.Side)
	}
	if b.edge.beforeWhole < 0 {
		b.edge.beforeWhole = v.weighSeam(v.passStrip(b.from, b.edge), v.strip(n), n.spot.Side)
	}
	return b.edge.beforeWhole
}

// seamToPass weighs the seam between what was before and the drop that begins at n, given up
// or carried.
func (v *halves) seamToPass(b *before, n *node, renew int) int64 {
	e := v.pass(n, renew)
	switch {
	case b.edge != nil:
		for len(b.edge.beforePass) <= renew+1 {
			b.edge.beforePass = append(b.edge.beforePass, -1)
		}
		seam := &b.edge.beforePass[renew+1]
		if *seam < 0 {
			*seam = v.weighSeam(v.passStrip(b.from, b.edge), v.passStrip(n, e), n.spot.Side)
		}
		return *seam
	case b.whole != nil:
		if e.afterWhole < 0 {
			e.afterWhole = v.weighSeam(v.stripBefore(b.whole), v.passStrip(n, e), n.spot.Side)
		}
		return e.afterWhole
	}
	return 0
}

// link is where a half comes to a corner.
type link struct {
	in       *node  // where the first drop begins on the wall; nil if one drop passes over all of it
	inSum    sum    // of all before that
	inBefore before // that
	at       *node  // where the drop begins that meets the corner
	nth      int    // how many corners it has met before
	sum      sum    // of all before that drop
	before   before
}

// links appends a half, link by link, as it comes to the corners: at most so
// many; fewer in an open run. b is what was before n.
func (v *halves) links(dst []link, n *node, b before, most int) []link {
	var total sum
	most += len(dst)
	for len(dst) < most {
		k := link{in: n, inSum: total, inBefore: b}
		if n.count > 0 {
			total.score += v.seamToWhole(&b, n)
			total.add(&n.sums)
			b = before{whole: n.corner}
		}
		k.at, k.sum, k.before = n.corner, total, b
		dst = append(dst, k)
		e := v.pass(n.corner, -1)
		if e.to == nil {
			return v.passed(dst, k, most)
		}
		for i := 1; i < e.corners && len(dst) < most; i++ {
			dst = append(dst, link{at: k.at, nth: i, sum: k.sum, before: k.before})
		}
		total.score += v.seamToPass(&b, n.corner, -1)
		total.add(&e.sum)
		b = before{edge: e, from: n.corner}
		n = e.to
	}
	return dst
}

// passed appends the links of the last drop, which reaches the end of an open
// run or goes round everything.
func (v *halves) passed(dst []link, k link, most int) []link {
	for i := 1; len(dst) < most; i++ {
		dst = append(dst, link{at: k.at, nth: i, sum: k.sum, before: k.before})
	}
	return dst
}

// hair is a width that no wall's level stretches are narrower than.
const hair = 2 * measure.Nanometre

// surely returns the one piece that covers a hair's breadth of a wall from x on.
func (v *halves) surely(wall int, x measure.Length) (t sum) {
	if v.hairAt(wall, x); len(v.l.Pieces) != 1 {
		return t
	}
	return v.ofPieces()
}

// hairAt lays a hair's breadth of a wall from x on.
func (v *halves) hairAt(wall int, x measure.Length) {
	v.h.Alone(&v.l, hanging.Strip{Index: v.middle, Parts: []hanging.Part{{
		Wall: wall, X: geom.Interval{Lo: x, Hi: x + hair}, Across: geom.Interval{Hi: hair},
	}}}, hanging.Kill{}, [2]bool{})
}

// cutOff returns what is sure of a drop that comes round a corner into an opening where the
// kill seam may stand, and is cut off there.
func (v *halves) cutOff() sum { return sum{score: v.s.task.Taste.Weights.Drop, drops: 1} }

// overOpening returns the pieces of a drop that stands within the width of an opening where
// the kill seam may stand: all that cover a hair's breadth of it, if all edges there are
// level, else no more than one of any length.
func (v *halves) overOpening(place *killPlace) (t sum) {
	if place.height == 0 || place.kill.Kind != hanging.OnWall {
		return t
	}
	for _, x := range v.h.LevelStretches(place.kill.Wall) {
		if place.opening >= 0 && x.Lo <= place.span.Lo && place.span.Hi <= x.Hi {
			v.hairAt(place.kill.Wall, place.span.Lo+place.span.Length()/2)
			return v.ofPieces()
		}
	}
	return sum{cut: v.s.task.Taste.Weights.Piece}
}
