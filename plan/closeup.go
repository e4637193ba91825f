package plan

import (
	"slices"

	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/paper"
)

// A sketch lays every drop of a choice out anew, though all but the last drops of
// either half have been weighed before. So a choice is first weighed from its halves,
// up to the last drops, which are laid out where the kill seam is:
//
//	start ──► sums of drops ──► │ last drop ╳ last drop │ ◄── sums of drops ◄── start
//
// That gives what the sketch would weigh, or a little more or less for each new drop, where
// the offset of a drop is no whole number of nanometres; and nothing where a sketch may
// differ from the halves near the kill seam.

// closeup weighs choices from their halves.
type closeup struct {
	m     *combiner
	c     *choiceAt
	kill  *killPlace
	l     hanging.Layout
	parts [2][4]hanging.Part
	edges [2]measure.Length // as edgesOf
	come  [2]*node          // by side: where it comes to the wall of the kill place; nil: not known
	by    [2]*pass          // and by which drop round a corner; nil: none
	ends  []endStrips       // by wall: of focal ones
	signs *signer           // if not nil, drops are signed
	sum   sign              // of those signed
}

// halfway is a half up to its end.
type halfway struct {
	score  int64
	first  int           // the index of its first drop
	drops  int           // before the last
	before before        // the last
	last   hanging.Strip // without parts: the drop before it ends where the half does
}

// index returns the index of the next drop of a half.
func (h *halfway) index(side hanging.Side) int { return h.first + outward(side)*h.drops }

// weigh returns what the drops, seams and walls of a choice weigh; false where halves do not
// tell.
func (u *closeup) weigh(c *choiceAt, choice *hanging.Choice, kill *killPlace) (score int64, ok bool) {
	u.c, u.kill, u.come = c, kill, [2]*node{}
	z, first, ok := u.m.seamOf(int(c.start))
	if !ok || !u.isPlain(choice) {
		return 0, false
	}
	u.beginEnds()
	right, left := u.m.cornersTo(choice, z)
	var halves [2]halfway
	for side, corners := range [2]int{hanging.Right: right, hanging.Left: left} {
		if halves[side], ok = u.half(hanging.Side(side), z, first, corners); !ok {
			return 0, false
		}
		score += halves[side].score
	}
	a, b := u.first(&halves[hanging.Left], hanging.Left, z, first), u.first(&halves[hanging.Right], hanging.Right, z, first)
	score += u.m.v.weighSeam(a, b, hanging.Right) + u.unequal()
	if kill.kill.Kind == hanging.NoKill {
		return score, true
	}
	r, l := &halves[hanging.Right], &halves[hanging.Left]
	from, to := u.end(r, hanging.Right), u.end(l, hanging.Left)
	u.edges = edgesOf(from.Parts, to.Parts)
	from.Index, to.Index = u.m.v.middle+first+r.drops, u.m.v.middle+first-1-l.drops
	u.m.v.h.Closing(&u.l, kill.kill, to, from)
	return score + u.m.s.judge.seam(&u.l, &u.l.Seams[0], kill), true
}

// overlap returns what it takes to close the gap over an opening between the halves of the
// choice weighed last; false if they did not tell.
func (u *closeup) overlap(place *killPlace) (o overlap, ok bool) {
	r, l := u.come[hanging.Right], u.come[hanging.Left]
	if r == nil || l == nil {
		return o, false
	}
	right, _, _ := u.m.landed(place, r, u.by[hanging.Right])
	left, _, _ := u.m.landed(place, l, u.by[hanging.Left])
	return u.m.overlap(place, right, left), true
}

// isPlain reports whether the kill seam of a choice stands where halves come to it as
// they go on without it: on its wall, not under drop 0, and not so near an outside
// corner that a drop goes round whole for its sake.
func (u *closeup) isPlain(c *hanging.Choice) bool {
	if c.Kill.Kind != hanging.OnWall {
		return true
	}
	s := u.m.s
	left, right := s.run.Run.LeanAt(c.Kill.Wall)
	x, width := c.Kill.X, s.run.Run.Walls[c.Kill.Wall].Width
	under := c.Kill.Wall == c.Start.Wall && x > c.Start.X && x < c.Start.X+u.m.v.width
	return !under && x > max(0, left) && x < width+min(0, right) &&
		!u.m.folds(u.kill, hanging.Right) && !u.m.folds(u.kill, hanging.Left)
}

// cornersTo returns how many corners lie between the seam of a start, at z on its wall,
// and the place of the kill seam, to the right and to the left.
func (m *combiner) cornersTo(c *hanging.Choice, z measure.Length) (right, left int) {
	n, s, k := m.walls, c.Start.Wall, c.Kill.Wall
	switch {
	case c.Kill.Kind == hanging.NoKill:
		return n - 1 - s, s
	case c.Kill.Kind == hanging.AtCorner:
		return (k - s + n) % n, (s - k - 1 + 2*n) % n
	case k != s:
		return (k - s + n) % n, (s - k + n) % n
	case c.Kill.X <= max(c.Start.X, 0):
		return n, 0
	}
	return 0, n
}

// sign signs the drops of a choice; false where halves do not tell of them.
func (u *closeup) sign(c *choiceAt, choice *hanging.Choice, kill *killPlace) (sign, bool) {
	u.signs, u.sum = u.m.s.signer, sign{}
	_, ok := u.weigh(c, choice, kill)
	u.signs = nil
	return u.sum, ok
}

// half weighs a half from a seam, to the right of which stands the drop of an index, to its
// end, so many corners away.
func (u *closeup) half(side hanging.Side, z measure.Length, first, corners int) (h halfway, ok bool) {
	v, onWall := u.m.v, u.kill.kill.Kind == hanging.OnWall
	n := u.m.firstNode(int(u.c.start), side, z, first)
	h.first = first - int(1-side)
	for passed := 0; ; {
		if onWall && passed == corners {
			u.come[side], u.by[side] = n, h.before.edge
			n = u.along(&h, n)
			return u.lay(&h, n, 0)
		}
		if n.count > 0 {
			h.score += v.seamToWhole(&h.before, n) + n.sums.score
			if u.signs != nil {
				u.sum.add(u.signs.row(n, h.index(side)))
			}
			h.drops += n.count
			h.before = before{whole: n.corner}
			u.seeWhole(n, n.corner)
		}
		corner := n.corner
		if !onWall && passed == corners {
			return u.lay(&h, corner, 0)
		}
		renew := u.renewed(corner, passed)
		e := v.pass(corner, renew)
		if e.to == nil {
			return h, false
		}
		passed += e.corners
		if passed > corners || onWall && passed == corners && e.to.spot.T >= u.reach(e.to.spot.Side) {
			if passed == corners {
				u.come[side], u.by[side] = e.to, e
			}
			return u.lay(&h, corner, corners-passed+e.corners)
		}
		u.see(e.parts)
		h.score += v.seamToPass(&h.before, corner, renew) + e.sum.score
		if u.signs != nil {
			u.sum.add(u.signs.pass(corner, e, h.index(side)))
		}
		h.drops++
		h.before = before{edge: e, from: corner}
		n = e.to
	}
}

// renewed returns in which of the corners that a drop meets it is given up, −1 for none;
// so many have been passed before.
func (u *closeup) renewed(corner *node, passed int) int {
	for nth := range u.m.walls {
		at, ok := u.m.cornerFrom(corner.spot.Wall, corner.spot.Side, nth)
		if ok && slices.Contains(u.c.new[:], int16(at)+1) {
			if e := u.m.v.pass(corner, nth); e.corners == nth+1 {
				return nth
			}
		}
		if nth+1 >= u.m.v.pass(corner, -1).corners {
			break
		}
	}
	return -1
}

// reach returns how far along its wall the kill seam stands for a half.
func (u *closeup) reach(side hanging.Side) measure.Length {
	x := u.kill.kill.X
	if side == hanging.Left {
		return u.m.s.run.Run.Walls[u.kill.kill.Wall].Width - x
	}
	return x
}

// along adds the whole drops on the kill seam's wall, and returns where the last begins.
func (u *closeup) along(h *halfway, n *node) *node {
	v := u.m.v
	t, at, _ := u.m.before(n, u.reach(n.spot.Side)-1)
	if at == n {
		return n
	}
	h.score += v.seamToWhole(&h.before, n) + t.score
	if u.signs != nil {
		side := n.spot.Side
		u.sum.add(u.signs.row(n, h.index(side)))
		u.sum.sub(u.signs.row(at, h.index(side)+outward(side)*int(t.drops)))
	}
	h.drops += int(t.drops)
	h.before = before{whole: at}
	u.seeWhole(n, at)
	return at
}

// lay lays the last drop, from a node on and so many corners on.
func (u *closeup) lay(h *halfway, n *node, corners int) (halfway, bool) {
	v, side := u.m.v, n.spot.Side
	parts, ok := v.h.LayEnd(u.parts[side][:0], n.spot, corners, u.kill.kill)
	h.last = hanging.Strip{Index: v.index(side, n.odd), Parts: parts}
	if !ok || len(parts) == 0 && h.drops == 0 {
		return *h, false
	}
	if len(parts) == 0 {
		h.drops--
		return *h, u.signs == nil || h.before.edge == nil || !h.before.edge.skewed
	}
	u.see(parts)
	if u.signs != nil {
		if isSkewed(parts) {
			return *h, false
		}
		u.sum.add(u.signs.drop(hanging.Strip{Index: u.signs.like(side, h.index(side)), Parts: parts}, hanging.Kill{}, [2]bool{}))
	}
	v.h.Put(&v.l, h.last)
	none := kind{}
	last := v.weighed(&none)
	h.score += last.score
	if b, ok := u.strip(&h.before); ok {
		h.score += v.weighSeam(b, h.last, side)
	}
	return *h, true
}

// beginEnds forgets the end strips of the choice before.
func (u *closeup) beginEnds() {
	j := u.m.s.judge
	if !j.focal {
		return
	}
	if u.ends == nil {
		u.ends = make([]endStrips, len(j.walls))
	}
	for i := range j.walls {
		u.ends[i] = endStrips{first: j.walls[i].width}
	}
}

// see looks whether parts of a drop are at the end of a focal wall.
func (u *closeup) see(parts []hanging.Part) {
	j := u.m.s.judge
	if !j.focal {
		return
	}
	for k := range parts {
		if w := &j.walls[parts[k].Wall]; w.focal {
			u.ends[parts[k].Wall].see(parts, k, w.width, u.m.s.task.Rules.WrapLimit)
		}
	}
}

// seeWhole looks at the first and the last of a row of whole drops, which ends at a node.
func (u *closeup) seeWhole(first, end *node) {
	if u.m.s.judge.walls[first.spot.Wall].focal {
		u.see(u.m.v.strip(first).Parts)
		u.see(u.m.v.stripBefore(end).Parts)
	}
}

// unequal weighs the end strips of all focal walls.
func (u *closeup) unequal() (total int64) {
	j := u.m.s.judge
	if !j.focal {
		return 0
	}
	for i := range j.walls {
		if j.walls[i].focal {
			total += j.unequal(i, u.ends[i].left, u.ends[i].right)
		}
	}
	return total
}

// strip returns the drop before another; false if there is none.
func (u *closeup) strip(b *before) (hanging.Strip, bool) {
	switch {
	case b.edge != nil:
		return u.m.v.passStrip(b.from, b.edge), true
	case b.whole != nil:
		return u.m.v.stripBefore(b.whole), true
	}
	return hanging.Strip{}, false
}

// end returns the last drop of a half.
func (u *closeup) end(h *halfway, side hanging.Side) hanging.Strip {
	if len(h.last.Parts) > 0 {
		return h.last
	}
	s, _ := u.strip(&h.before)
	return s
}

// first returns the first drop of a half, which is the last too if it is the only one.
func (u *closeup) first(h *halfway, side hanging.Side, z measure.Length, first int) hanging.Strip {
	v := u.m.v
	n := u.m.firstNode(int(u.c.start), side, z, first)
	if h.before.edge == nil && h.before.whole == nil {
		return h.last
	}
	if n.count > 0 {
		return v.strip(n)
	}
	return v.passStrip(n, v.pass(n.corner, u.renewed(n.corner, 0)))
}

// roundsOffsets reports whether the offset of drops is no whole number of nanometres, and
// is rounded for each.
func roundsOffsets(p *paper.Paper) bool {
	for i := range p.Alternatives() {
		if (p.Shift(i+1) - p.Shift(i) - p.Shift(1)).Mod(p.Repeat) != 0 {
			return true
		}
	}
	return false
}
