package audit

import (
	"math/bits"
	"slices"

	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/room"
)

// fold is the upright edge between two walls, or the end of an open run. At
// the height y it stands lean·(y−foot)/(head−foot) to the right of its foot,
// in the plane of either wall.
type fold struct {
	kind                room.CornerKind
	foot, head          int64
	leanLeft, leanRight int64 // in the plane of the wall on its left, on its right
}

// wall is a wall as it really stands, with leaning edges and with openings.
type wall struct {
	width       int64
	left, right fold
	slopes      []slope // the edges of its outline and openings that are not upright
	breaks      []int64 // every x at which a vertex or a crossing of edges stands, ascending
	openings    int
	low, high   int64 // its lowest and its highest point
}

// ground is a run of walls made ready for judging.
type ground struct {
	run   *room.Run
	walls []wall
}

func newGround(run *room.Run) *ground {
	g := &ground{run: run, walls: make([]wall, len(run.Walls))}
	for i := range g.walls {
		g.walls[i].width = int64(run.Walls[i].Width)
		g.walls[i].left, g.walls[i].right = g.foldBefore(i), g.foldAfter(i)
	}
	for i := range g.walls {
		g.walls[i].trace(&run.Walls[i])
	}
	return g
}

// next returns the wall to the right of wall i; −1 at the end of an open run.
func (g *ground) next(i int) int {
	switch n := len(g.walls); {
	case i+1 < n:
		return i + 1
	case g.run.Closed:
		return 0
	}
	return -1
}

// foldAfter returns the fold at the right end of wall i.
func (g *ground) foldAfter(i int) fold {
	if n := g.next(i); n >= 0 {
		return g.foldAt(g.run.Corners[i], i, n)
	}
	return g.foldAt(g.run.Ends.Right, i, -1)
}

// foldBefore returns the fold at the left end of wall i.
func (g *ground) foldBefore(i int) fold {
	switch {
	case i > 0:
		return g.foldAfter(i - 1)
	case g.run.Closed:
		return g.foldAfter(len(g.walls) - 1)
	}
	return g.foldAt(g.run.Ends.Left, -1, i)
}

// foldAt returns the fold between two walls, either of which may be −1: its
// foot and head are the lowest and highest corner that either has there.
func (g *ground) foldAt(c room.Corner, left, right int) fold {
	f := fold{kind: c.Kind, leanLeft: int64(c.LeanLeft), leanRight: int64(c.LeanRight)}
	found := false
	look := func(ring geom.Ring, x int64) {
		for _, p := range ring {
			if int64(p.X) != x {
				continue
			}
			if !found {
				f.foot, f.head, found = int64(p.Y), int64(p.Y), true
			}
			f.foot, f.head = min(f.foot, int64(p.Y)), max(f.head, int64(p.Y))
		}
	}
	if left >= 0 {
		look(g.run.Walls[left].Outline, int64(g.run.Walls[left].Width))
	}
	if right >= 0 {
		look(g.run.Walls[right].Outline, 0)
	}
	return f
}

// off returns how far a lean has taken a point of the fold at height y.
func (f *fold) off(lean, y int64) int64 {
	if f.head == f.foot || lean == 0 {
		return 0
	}
	return nearest(lean, y-f.foot, f.head-f.foot)
}

// trace draws the wall's edges: the outline with its upright edges leaning as
// the corners do, and the openings.
func (w *wall) trace(from *room.Wall) {
	outline := slices.Clone(from.Outline)
	w.low, w.high = int64(outline[0].Y), int64(outline[0].Y)
	for i, p := range outline {
		w.low, w.high = min(w.low, int64(p.Y)), max(w.high, int64(p.Y))
		switch int64(p.X) {
		case 0:
			outline[i].X += lengthOf(w.left.off(w.left.leanRight, int64(p.Y)))
		case w.width:
			outline[i].X += lengthOf(w.right.off(w.right.leanLeft, int64(p.Y)))
		}
	}
	w.addRing(outline, 0)
	for i := range from.Openings {
		w.addRing(from.Openings[i].Outline, i+1)
	}
	w.openings = len(from.Openings)
	for i := range w.slopes {
		for j := range i {
			w.breaks = appendMeeting(w.breaks, &w.slopes[j], &w.slopes[i])
		}
	}
	slices.Sort(w.breaks)
	w.breaks = slices.Compact(w.breaks)
}

func (w *wall) addRing(ring geom.Ring, number int) {
	for i, p := range ring {
		q := ring[(i+1)%len(ring)]
		w.breaks = append(w.breaks, int64(p.X))
		if s, ok := through(int64(p.X), int64(p.Y), int64(q.X), int64(q.Y), number); ok {
			w.slopes = append(w.slopes, s)
		}
	}
}

// returnsOf lists the returns of an opening that are papered, laid open into
// it. Only a rectangle has any that paper of the wall can go on into.
func returnsOf(o *room.Opening) []hanging.Return {
	x, y, ok := rectangle(o.Outline)
	if !ok || o.Depth <= 0 {
		return nil
	}
	var rs []hanging.Return
	add := func(papered bool, side hanging.ReturnSide, x, y geom.Interval) {
		if papered {
			rs = append(rs, hanging.Return{Side: side, X: x, Y: y})
		}
	}
	add(o.Sides.Left, hanging.LeftReveal, geom.Interval{Lo: x.Lo, Hi: x.Lo + o.Depth}, y)
	add(o.Sides.Right, hanging.RightReveal, geom.Interval{Lo: x.Hi - o.Depth, Hi: x.Hi}, y)
	add(o.Sides.Head, hanging.Soffit, x, geom.Interval{Lo: y.Hi - o.Depth, Hi: y.Hi})
	add(o.Sides.Sill, hanging.Sill, x, geom.Interval{Lo: y.Lo, Hi: y.Lo + o.Depth})
	return rs
}

// rectangle returns the sides of a ring that is an upright rectangle: every
// edge is upright or level, and every vertex stands in one of four corners.
func rectangle(ring geom.Ring) (x, y geom.Interval, ok bool) {
	if len(ring) < 4 {
		return x, y, false
	}
	x, y = geom.Interval{Lo: ring[0].X, Hi: ring[0].X}, geom.Interval{Lo: ring[0].Y, Hi: ring[0].Y}
	for _, p := range ring {
		x = geom.Interval{Lo: min(x.Lo, p.X), Hi: max(x.Hi, p.X)}
		y = geom.Interval{Lo: min(y.Lo, p.Y), Hi: max(y.Hi, p.Y)}
	}
	for i, p := range ring {
		q := ring[(i+1)%len(ring)]
		along := p.X == q.X && (p.X == x.Lo || p.X == x.Hi) || p.Y == q.Y && (p.Y == y.Lo || p.Y == y.Hi)
		if !along {
			return x, y, false
		}
	}
	return x, y, x.Lo < x.Hi && y.Lo < y.Hi
}

// sum128 adds up products.
type sum128 struct{ hi, lo uint64 }

func (s *sum128) add(a, b uint64) {
	hi, lo := bits.Mul64(a, b)
	var carry uint64
	s.lo, carry = bits.Add64(s.lo, lo, 0)
	s.hi, _ = bits.Add64(s.hi, hi, carry)
}

// area returns the area to be papered on the wall's face, in hundredths of a
// square millimetre, to within one of them for every 10 m of width.
func (w *wall) area() int64 {
	var twice sum128
	for _, c := range w.columns(w.breaks) {
		for _, b := range c.bands {
			left := b.head.at(2*c.x.lo).whole - b.foot.at(2*c.x.lo).whole
			right := b.head.at(2*c.x.hi).whole - b.foot.at(2*c.x.hi).whole
			twice.add(uint64(c.x.length()), uint64(max(0, left+right)))
		}
	}
	const unit = 2 * 10_000_000_000 // of twice the area, in nm²
	lo, carry := bits.Add64(twice.lo, unit/2, 0)
	if twice.hi+carry >= unit {
		return -1
	}
	q, _ := bits.Div64(twice.hi+carry, lo, unit)
	return int64(q)
}
