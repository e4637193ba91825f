package hanging

import (
	"cmp"
	"slices"

	"firstdrop/geom"
	"firstdrop/measure"
	"firstdrop/room"
)

// A walk from a seam goes on the same way however it came there: what follows
// depends on the wall and on where on it the next drop begins, and on nothing
// else. So whoever tries many choices may walk each way once, drop by drop, and
// put walks together instead of laying out each choice by itself:
//
//	         seam at t                    the next drop begins at next
//	            │◄───── one strip ─────►│
//	 ───────────┼──────────────┬────────┼───────────
//	            │  first part  c second │        corners passed: 1
//
// Strips are drops by themselves. Distances are in the direction of walking,
// parts as one faces their walls.

// Spot is where on a wall a walk to one side comes to a seam: T from the end of
// the wall by which one comes to it.
type Spot struct {
	Side Side // the direction of walking
	Wall int
	T    measure.Length
}

// Strip is one drop by itself.
type Strip struct {
	Index int
	Parts []Part // left to right
}

// Spot returns the spot at x from the left end of a wall.
func (h *Hanger) Spot(side Side, wall int, x measure.Length) Spot {
	if side == Left {
		x = h.walls[wall].width - x
	}
	return Spot{side, wall, x}
}

// Begin returns the spot where a new drop begins on a wall that one comes to.
func (h *Hanger) Begin(side Side, wall int) Spot {
	w := walker{h: h, side: side}
	_, near := w.leans(wall)
	return Spot{side, wall, min(0, near)}
}

// X returns how far the spot is from the left end of its wall.
func (h *Hanger) X(s Spot) measure.Length {
	if s.Side == Left {
		return h.walls[s.Wall].width - s.T
	}
	return s.T
}

// FitsWhole reports whether a drop that begins at the spot ends on the same wall.
func (h *Hanger) FitsWhole(s Spot) bool {
	w := walker{h: h, side: s.Side}
	far, _ := w.leans(s.Wall)
	return s.T+h.paper.Width <= h.walls[s.Wall].width+max(0, far)
}

// walkerAt returns a walk that stands at a seam.
func (h *Hanger) walkerAt(s Spot) walker {
	return walker{h: h, side: s.Side, wall: s.Wall, t: s.T, a: h.paper.Width, edge: s.T, drop: -1, legs: len(h.walls) + 2}
}

// Lay lays the one drop that begins at a spot and returns its parts, appended to
// dst, the number of corners that it passed on its way, and where the next drop
// begins. At its corner number renew (from 0; −1: nowhere) what remains of it is
// given up, if that is an inside corner where something would be carried on. A
// drop that goes round more than all corners, or past an end of an open run, is
// none: ok is false.
func (h *Hanger) Lay(dst []Part, s Spot, renew int) (parts []Part, corners int, next Spot, ok bool) {
	w := h.walkerAt(s)
	w.steps = h.strip[:0]
	for len(w.steps) == 0 || w.a < h.paper.Width {
		if corners > len(h.walls) {
			return dst, corners, s, false
		}
		c, more := w.cornerAhead()
		if !more {
			if w.roomLeft() {
				w.layOn()
				continue
			}
			return dst, corners, s, false
		}
		var choice Choice
		if corners == renew {
			h.renewAt[0] = c
			choice.NewDrop = h.renewAt[:]
		}
		if w.toCorner(choice) {
			corners++
		}
	}
	h.strip = w.steps
	return h.faced(dst, &w), corners, Spot{w.side, w.wall, w.t}, true
}

// cornerAhead returns the index of the corner ahead; false at an end of an open
// run.
func (w *walker) cornerAhead() (corner int, ok bool) {
	n := len(w.h.walls)
	corner = w.wall
	if w.side == Left {
		corner = w.wall - 1
	}
	if !w.h.run.Closed && (corner < 0 || corner >= n-1) {
		return 0, false
	}
	return (corner + n) % n, true
}

// roomLeft reports whether the next drop, or what is left of this one, ends on
// the last wall of an open run.
func (w *walker) roomLeft() bool {
	far, _ := w.leans(w.wall)
	t, a := w.t, w.a
	if a >= w.h.paper.Width {
		a = 0
	}
	return t+w.h.paper.Width-a <= w.h.walls[w.wall].width+max(0, far)
}

// layOn lays the drop on the last wall of an open run.
func (w *walker) layOn() {
	w.nextDrop()
	reach := w.reach()
	w.lay(w.t + w.h.paper.Width)
	w.t = reach
}

// LayEnd lays the last drop, which begins at a spot, up to the end of the way:
// after so many corners in the corner ahead, on either side of the lap; or, for
// a kill seam on the wall, there; or at the end of an open run. It returns the
// parts, appended to dst; none if the drop before ends where the way does. ok is
// false when more than one drop is left to lay.
func (h *Hanger) LayEnd(dst []Part, s Spot, corners int, kill Kill) (parts []Part, ok bool) {
	w := h.walkerAt(s)
	w.steps = h.strip[:0]
	w.legs = corners
	choice := Choice{Kill: kill}
	for w.legs > 0 {
		if w.toCorner(choice) {
			w.legs--
		}
	}
	w.toEnd(choice)
	h.strip = w.steps
	if n := len(w.steps); n > 0 && w.steps[n-1].drop > 0 {
		return dst, false
	}
	return h.faced(dst, &w), true
}

// faced appends the parts of the one drop walked, as one faces them, left to
// right.
func (h *Hanger) faced(dst []Part, w *walker) []Part {
	n := len(dst)
	for _, s := range w.steps {
		dst = append(dst, Part{Wall: s.wall, X: s.t, Across: s.a, Joined: s.joined, Skew: s.skew})
	}
	if w.side == Right {
		return dst
	}
	parts := dst[n:]
	for i, j := 0, len(parts)-1; i < j; i, j = i+1, j-1 {
		parts[i], parts[j] = parts[j], parts[i]
	}
	for i := range parts { // what was joined to the part before it in the walk is joined to the one after it as faced
		p := &parts[i]
		p.X = p.X.Mirrored().Shifted(h.walls[p.Wall].width)
		p.Across = p.Across.Mirrored().Shifted(h.paper.Width)
		p.Skew = -p.Skew
	}
	for i := len(parts) - 1; i > 0; i-- {
		parts[i].Joined = parts[i-1].Joined
	}
	if len(parts) > 0 {
		parts[0].Joined = false
	}
	return dst
}

// Alone fills l with one drop: its seams within, and its pieces, named as they
// are in a layout where it has number 1. ends says whether hanging ends at its
// left and its right side.
func (h *Hanger) Alone(l *Layout, s Strip, kill Kill, ends [2]bool) {
	h.begin(l, kill)
	l.inner = [2]bool{!ends[Left], !ends[Right]}
	h.put(l, s)
	l.addInner(h, 0)
	h.patch(l, 0)
	h.parcels()
	h.collect(l, 0)
	l.sortPieces(0)
	h.addReturns(l, 0)
	if n := len(l.Pieces); n > 0 {
		l.Drops[0].Number = 1
		for i := range l.Pieces {
			l.Pieces[i].Name = loneName(i, n)
		}
	}
}

// Beside fills l with two neighbouring drops and the seam between them. A drop
// that needs no paper may have its Number set to 0 by the caller.
func (h *Hanger) Beside(l *Layout, left, right Strip) {
	h.begin(l, Kill{})
	h.put(l, left)
	h.put(l, right)
	a, b := &l.Drops[0], &l.Drops[1]
	x, y := &a.Parts[len(a.Parts)-1], &b.Parts[0]
	l.Seams = append(l.Seams, l.seam(h, l.between(h, 0, x, y), 0, x, 1, y))
}

// Closing fills l with the two drops that meet at the kill seam, and that seam:
// right is the first drop of the run, left its last.
func (h *Hanger) Closing(l *Layout, kill Kill, right, left Strip) {
	h.begin(l, kill)
	h.put(l, right)
	h.put(l, left)
	a, b := &l.Drops[1], &l.Drops[0]
	l.Seams = append(l.Seams, l.seam(h, KillSeam, 1, &a.Parts[len(a.Parts)-1], 0, &b.Parts[0]))
}

// begin empties a layout. What all layouts of strips have in common stays in it from
// strip to strip.
func (h *Hanger) begin(l *Layout, kill Kill) {
	if l.strips != h {
		*l = Layout{
			Run: h.surveyed, Turns: h.turns, hung: h.run, Paper: h.paper, Rules: h.rules, Choice: Choice{Set: h.set},
			Drops: l.Drops, Seams: l.Seams, Pieces: l.Pieces, strips: h,
		}
	}
	l.Choice.Kill, l.inner = kill, [2]bool{}
	l.Drops, l.Seams, l.Pieces = l.Drops[:0], l.Seams[:0], l.Pieces[:0]
}

// put adds a drop. Its Parts are the strip's own.
func (h *Hanger) put(l *Layout, s Strip) {
	l.Drops = append(l.Drops, Drop{Index: s.Index, Number: 1, Reversed: h.paper.IsReversed(s.Index), Parts: s.Parts})
}

// loneNames are the names of the pieces of drop 1.
var loneNames = [...]string{"1", "1a", "1b", "1c", "1d", "1e", "1f"}

// loneName names piece i of n of a drop alone.
func loneName(i, n int) string {
	if n == 1 {
		return loneNames[0]
	}
	if i+1 < len(loneNames) {
		return loneNames[i+1]
	}
	return pieceName(1, i, true)
}

// Zone numbers the stretch of a wall between two uprights of its face or its
// returns in which x
// lies, or the upright on which it lies. ok says that all edges there are level:
// then what a drop covers does not depend on where in the stretch its own edge
// is.
func (h *Hanger) Zone(wall int, x measure.Length) (number int, ok bool) {
	zones := h.walls[wall].zones
	i, at := slices.BinarySearchFunc(zones, x, func(z zone, x measure.Length) int { return cmp.Compare(z.from, x) })
	if at {
		return 2*i + 1, true
	}
	return 2 * i, i == 0 || zones[i-1].level
}

// LevelStretches lists the stretches of a wall between two uprights of its face or its
// returns in which all edges are level, from left to right.
func (h *Hanger) LevelStretches(wall int) (xs []geom.Interval) {
	zones := h.walls[wall].zones
	for i := range len(zones) - 1 {
		if zones[i].level {
			xs = append(xs, geom.Interval{Lo: zones[i].from, Hi: zones[i+1].from})
		}
	}
	return xs
}

// zone is a stretch of a wall from one upright of its face to the next.
type zone struct {
	from  measure.Length
	level bool
}

// newZones lists the stretches of a face; the last begins where the face ends.
func newZones(face geom.Polygon, openings []room.Opening) []zone {
	var xs []measure.Length
	for i := range openings {
		for _, r := range Returns(&openings[i]) {
			xs = append(xs, r.X.Lo, r.X.Hi)
		}
	}
	rings := append([]geom.Ring{face.Outline}, face.Holes...)
	for _, ring := range rings {
		for _, p := range ring {
			xs = append(xs, p.X)
		}
	}
	slices.Sort(xs)
	xs = slices.Compact(xs)
	zones := make([]zone, len(xs))
	for i, x := range xs {
		zones[i] = zone{from: x, level: i+1 == len(xs) || isLevel(rings, geom.Interval{Lo: x, Hi: xs[i+1]})}
	}
	return zones
}

// isLevel reports whether all edges that cross a stretch are level.
func isLevel(rings []geom.Ring, x geom.Interval) bool {
	for _, ring := range rings {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			edge := geom.Interval{Lo: min(a.X, b.X), Hi: max(a.X, b.X)}
			if edge.Overlaps(x) && a.Y != b.Y {
				return false
			}
		}
	}
	return true
}

// Put fills l with one drop and its seams within, for whoever needs no pieces.
func (h *Hanger) Put(l *Layout, s Strip) {
	h.begin(l, Kill{})
	h.put(l, s)
	l.addInner(h, 0)
}

// Uprights lists where a wall's face or its returns have uprights, from left to right.
func (h *Hanger) Uprights(wall int) (xs []measure.Length) {
	for _, z := range h.walls[wall].zones {
		xs = append(xs, z.from)
	}
	return xs
}
