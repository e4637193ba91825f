package plan

import (
	"slices"

	"firstdrop/hanging"
	"firstdrop/measure"
)

// In a run that is too long to try new drops with every start they are tried with the best
// one, and with some others. What comes after a new drop does not depend on what was before
// it. So what lies between new drops in two corners is weighed once for all starts; and of all
// ways to a corner, with so many new drops, only the one that weighs least up to there is
// followed:
//
//	start ──┬──── c1 ────┬──── c2 ────┬──── c3         to a new drop in c3 one comes
//	        └── new ─────┴── new ─────┴── new          from any corner before, or the start
//
// What rolls weigh is taken as if parts of them could be bought; and then the best ways with
// one new drop, with two and so on are weighed as they are, with the kill seam in every place.

// How far from the best start are others that are tried then, in places on the list.
const nearRenewed = 16

// startsRenewed returns how many other starts are tried with new drops: the more walls the
// more, but what one takes grows as their square, and all together must not grow faster than
// the walls.
func startsRenewed(walls int) int { return min(3*walls/2, 1600/walls+1) }

// renewal tries new drops in a long run.
type renewal struct {
	m     *combiner
	fresh [2]map[*node]*fresh // by side and where a new drop begins
	heads [2][]head           // of the start at hand: the start, and new drops
	best  [2][2][]bestWays    // by side, whether the end is on a wall, and how many corners it is away
}

// fresh is a start, or a new drop, and what lies ahead of it, by corner.
type fresh struct {
	links  []link
	ends   [2][]int64 // what surely comes before an end in the corner, or on the wall before it
	stages []stage
	gives  []int64 // what the stages weigh; never: no new drop may begin there
}

// stage is what lies between two new drops, or a start and one.
type stage struct {
	sum    sum
	before before // what comes before the new drop
}

// head is a way up to a new drop; the first is that to the start.
type head struct {
	weight int64
	on     *fresh
	last   *stage
	before int32 // the head from which it comes
	from   int16 // the number of the corner from which on it goes on
	corner int16 // in which the new drop begins
	n      int8  // how many there are
}

// bestWays are the ways to a corner that weigh least, by how many new drops there are, and
// what they weigh.
type bestWays struct {
	known  bool
	head   [mostNew + 1]int32 // plus one; 0: none
	weight [mostNew + 1]int64
}

// renew looks for new drops with which a layout of a long run is better than the best.
func (s *search) renew() {
	m := newCombiner(s)
	if m.most = mostNew; m.forced {
		return
	}
	s.closeup.m = m
	tried, full, proven := s.tried, s.full, s.proven
	s.tried, s.full = 0, 0
	defer func() { s.tried, s.full, s.proven = s.tried+tried, s.full+full, proven }()
	r := &renewal{m: m, fresh: [2]map[*node]*fresh{{}, {}}}
	r.start(s.startIndex(s.best.choice.Start))
	if s.own == 1 { // it is fixed
		return
	}
	for i, every := 0, max(1, s.own/startsRenewed(m.walls)); i < s.own && !s.task.isStopped(); i += every {
		r.start(i)
	}
	for by := nearRenewed; by > 0; by /= 2 {
		i := s.startIndex(s.best.choice.Start)
		for _, k := range [...]int{i - by, i + by} {
			if k >= 0 && k < s.own {
				r.start(k)
			}
		}
	}
}

// startIndex returns the number of a start, which is listed if it is not yet.
func (s *search) startIndex(start hanging.Start) int {
	i := slices.Index(s.starts, start)
	if i < 0 {
		i, s.starts = len(s.starts), append(s.starts, start)
	}
	return i
}

// start tries new drops with one start, and every kill place.
func (r *renewal) start(i int) {
	m, s := r.m, r.m.s
	if !m.halve(i) {
		return
	}
	s.open = s.open[:0]
	for side := range r.heads {
		r.spread(hanging.Side(side))
	}
	for k := range s.kills {
		gaps, n := m.gaps(i, k)
		for g := range gaps[:n] {
			r.meet(choiceAt{start: int32(i), kill: int16(k), x: gaps[g].x}, &gaps[g])
		}
	}
	s.settle(untilSettled, never)
}

// spread follows the ways to a side from the start at hand.
func (r *renewal) spread(side hanging.Side) {
	m := r.m
	heads := append(r.heads[side][:0], head{on: r.ahead(m.ways[side][0].links, side, m.wall)})
	for i := range m.walls {
		corner, ok := m.corner(side, i)
		if !ok {
			break
		}
		var best [2][mostNew + 1]head
		for h := range heads {
			from := &heads[h]
			at := i - int(from.from)
			if at >= len(from.on.gives) || from.on.gives[at] == never || int(from.n) == m.most {
				continue
			}
			last, odd := &from.on.stages[at], 0
			if m.v.turns && last.before.edge.to.odd {
				odd = 1
			}
			if b, weight := &best[odd][from.n+1], from.weight+from.on.gives[at]; b.n == 0 || weight < b.weight {
				*b = head{weight: weight, last: last, before: int32(h), from: int16(i) + 1, corner: int16(corner), n: from.n + 1}
			}
		}
		for odd := range best {
			least := int64(never)
			for n := range best[odd] {
				if b := &best[odd][n]; b.n > 0 && b.weight < least { // more new drops are to weigh less
					b.on, least = r.after(&b.last.before, side, corner), b.weight
					heads = append(heads, *b)
				}
			}
		}
	}
	r.heads[side] = heads
	for k := range r.best[side] {
		r.best[side][k] = append(r.best[side][k][:0], make([]bestWays, m.walls+1)...)
	}
}

// way returns the way to a head.
func (r *renewal) way(side hanging.Side, h int32) way {
	head := &r.heads[side][h]
	if head.n == 0 {
		return r.m.ways[side][0]
	}
	w := r.way(side, head.before)
	w.sum.add(&head.last.sum)
	w.renew(int(head.corner), int(head.from)-1)
	w.links = head.on.links
	return w
}

// after returns the new drop in a corner after another that was given up there.
func (r *renewal) after(b *before, side hanging.Side, corner int) *fresh {
	f := r.fresh[side][b.edge.to]
	if f == nil {
		wall := corner
		if side == hanging.Right {
			wall = (corner + 1) % r.m.walls
		}
		links := r.m.v.links(nil, b.edge.to, before{}, r.m.walls)
		if r.m.focal {
			r.m.addCrossed(links)
		}
		f = r.ahead(links, side, wall)
		r.fresh[side][b.edge.to] = f
	}
	return f
}

// ahead weighs what lies on links that begin on a wall.
func (r *renewal) ahead(links []link, side hanging.Side, wall int) *fresh {
	m := r.m
	f := &fresh{links: links}
	for i := range links {
		for k, before := range [...]*sum{&links[i].sum, &links[i].inSum} {
			f.ends[k] = append(f.ends[k], m.partly(before))
		}
		g, weight := stage{}, int64(never)
		if corner, ok := m.cornerFrom(wall, side, i); ok {
			if g.sum, g.before, ok = m.giveUp(&links[i], corner); ok {
				g.sum.score += m.v.seamToNew(&g.before)
				weight = m.partly(&g.sum)
			}
		}
		f.stages, f.gives = append(f.stages, g), append(f.gives, weight)
	}
	return f
}

// seamToNew weighs the seam between a drop that is given up and a whole one after it. As
// [outlook.passed] it is not inlined.
//
//go:noinline
func (v *halves) seamToNew(b *before) int64 {
	if b.edge.to.count == 0 {
		return 0
	}
	return v.seamToWhole(b, b.edge.to)
}

// partly returns what drops weigh with parts of rolls.
func (m *combiner) partly(b *sum) int64 {
	r, roll := &m.v.rolls, m.s.task.Taste.Weights.Roll
	weight := b.score + b.cut
	switch {
	case r.prices.roll > 0:
		weight += int64(measure.Length(b.worth).Scaled(roll, r.prices.roll))
	case r.roll > 0:
		weight += int64(b.length.Scaled(roll, int64(r.roll)))
	}
	return weight
}

// meet offers the start at hand with a kill place where its halves end, with so many new drops
// on one side and so many on the other.
func (r *renewal) meet(c choiceAt, gap *killGap) {
	m := r.m
	onWall := m.s.kills[c.kill].kill.Kind == hanging.OnWall
	right, left := r.bestTo(hanging.Right, onWall, gap.right), r.bestTo(hanging.Left, onWall, gap.left)
	for n, a := range right.head {
		for k, b := range left.head {
			if a > 0 && b > 0 && n+k > 0 && n+k <= m.most && !m.s.isBeaten(right.weight[n]+left.weight[k]) {
				x, y := r.way(hanging.Right, a-1), r.way(hanging.Left, b-1)
				m.join(c, &x, &y, gap.right, gap.left)
			}
		}
	}
}

// bestTo returns the best ways to an end so many corners away.
func (r *renewal) bestTo(side hanging.Side, onWall bool, away int) *bestWays {
	kind := 0
	if onWall {
		kind = 1
	}
	best := &r.best[side][kind][away]
	if best.known {
		return best
	}
	best.known = true
	for i := range r.heads[side] {
		h := &r.heads[side][i]
		if at := away - int(h.from); at >= 0 && at < len(h.on.links) {
			if weight := h.weight + h.on.ends[kind][at]; best.head[h.n] == 0 || weight < best.weight[h.n] {
				best.head[h.n], best.weight[h.n] = int32(i)+1, weight
			}
		}
	}
	return best
}
