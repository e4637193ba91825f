package hanging

import (
	"slices"

	"firstdrop/geom"
	"firstdrop/measure"
	"firstdrop/room"
)

// From drop 0 the hanging goes both ways. Each way is the same walk, seen once
// directly and once in a mirror, so it is written once, in the direction of
// walking: t is the distance along a wall from the end by which one comes to
// it, a the distance across the drop from the edge one comes to first.
//
//	   wall A                    corner          wall B
//	┌──────────┬──────────┬──────────┐─┬────────┬──────────┬────
//	│          │          │   first  ┊ │ rest of│   next   │
//	│  drop 1  │  drop 2  │   part   ┊ │ drop 3 │   drop   │
//	│          │          │  of 3    ┊c│        │          │
//	└──────────┴──────────┴──────────┘─┴────────┴──────────┴────
//	           t ────────► tr would be its far edge, the remainder
//	                         beyond the corner is r = tr − W
//
// At an inside corner the remainder decides (planning-model 5): none, and the
// next drop begins in the corner; no more than the wrap limit, and the drop
// turns whole; otherwise it is cut apart, the first part reaching the corner
// and a wrap c beyond, the rest set to a plumb line of its own with its near
// edge in the corner. At an outside corner that is plumb the drop goes round;
// otherwise it is cut after a wide wrap.
//
// A corner that leans does not stand at t = W but anywhere between W and W +
// lean. What must reach the corner reaches its farthest point; what must begin
// in it begins at its nearest. A drop that has turned a leaning corner leans
// itself, by its skew; what stands beside it begins at its surest edge.

// step is one part of one drop, in the direction of walking.
type step struct {
	drop    int // 0, 1, 2 … outwards
	wall    int
	t, a    geom.Interval
	joined  bool // one sheet with the step before it
	skew    measure.Length
	renewed bool // the first of a drop that begins anew in a corner
	plumb   bool // a plumb line is drawn for it
}

// walker is the state of a walk.
type walker struct {
	h       *Hanger
	side    Side // the direction of walking
	legs    int  // walls still to be reached after this one
	wall    int
	drop    int
	t, a    measure.Length // the drop's point a lies at t
	edge    measure.Length // the sheet's near edge, counted along this wall
	joined  bool
	skew    measure.Length
	renewed bool
	plumb   bool
	steps   []step
}

// march walks from the start to one side until the run, or the kill seam, ends
// it, and appends the parts of the drops it meets to dst.
func (h *Hanger) march(dst []step, side Side, c Choice) []step {
	w := walker{h: h, side: side, wall: c.Start.Wall, steps: dst, plumb: side == Right}
	anchor := max(c.Start.X, 0) // a point of drop 0 that lies on its wall
	w.t, w.a = anchor, anchor-c.Start.X
	if side == Left {
		w.t, w.a = h.walls[w.wall].width-w.t, h.paper.Width-w.a
	}
	w.edge = w.t - w.a
	w.legs = h.legs(side, c, anchor)
	for w.legs > 0 {
		if !w.toCorner(c) {
			continue
		}
		w.legs--
	}
	w.toEnd(c)
	return w.steps
}

// legs counts the walls that lie between the start wall and the end of the way.
func (h *Hanger) legs(side Side, c Choice, anchor measure.Length) int {
	n, s, k := len(h.walls), c.Start.Wall, c.Kill.Wall
	switch {
	case c.Kill.Kind == NoKill && side == Right:
		return n - 1 - s
	case c.Kill.Kind == NoKill:
		return s
	case c.Kill.Kind == AtCorner && side == Right:
		return (k - s + n) % n
	case c.Kill.Kind == AtCorner:
		return (s - k - 1 + 2*n) % n
	}
	behind := k == s && c.Kill.X <= anchor // the seam stands to the left of drop 0 on its own wall
	switch {
	case side == Right && behind, side == Left && k == s && !behind:
		return n
	case side == Right:
		return (k - s + n) % n
	}
	return (s - k + n) % n
}

// edge is the corner ahead, in the direction of walking.
type edge struct {
	kind         room.CornerKind
	renew        bool           // a new drop begins here, by choice
	leanA, leanB measure.Length // on the wall one leaves and on the wall one comes to
	step         bool           // the design steps up or down here: no sheet goes round
}

// ahead returns the corner at the far end of the wall one walks on, and the
// wall behind it.
func (w *walker) ahead(c Choice) (edge, int) {
	n := len(w.h.walls)
	from, next, corner := w.wall, (w.wall+1)%n, w.wall
	if w.side == Left {
		next = (w.wall - 1 + n) % n
		corner = next
	}
	e := edge{kind: w.h.run.Corners[corner].Kind, renew: slices.Contains(c.NewDrop, corner), step: room.StepAt(w.h.turns, corner) != 0}
	e.leanA, _ = w.leans(from)
	_, e.leanB = w.leans(next)
	return e, next
}

// leans returns the leans of a wall's far and near edge in the direction of
// walking.
func (w *walker) leans(i int) (far, near measure.Length) {
	x := &w.h.walls[i]
	if w.side == Left {
		return -x.leanLeft, -x.leanRight
	}
	return x.leanRight, x.leanLeft
}

// turned returns the heights of the corner by which one comes to a wall.
func (w *walker) turned(wall int) geom.Interval {
	if w.side == Left {
		return w.h.walls[wall].reachRight
	}
	return w.h.walls[wall].reachLeft
}

// nextDrop begins a new drop at t if the last is used up.
func (w *walker) nextDrop() {
	if w.a < w.h.paper.Width {
		return
	}
	w.drop++
	w.a, w.joined, w.skew, w.edge = 0, false, 0, w.t
}

// reach returns where the far edge of the drop surely is.
func (w *walker) reach() measure.Length {
	return w.surely(w.t + w.h.paper.Width - w.a)
}

// surely returns how far a sheet is sure to cover whose far edge stands at t at
// the foot of the corner it has turned. A wall that is higher than its corner,
// or lower at its foot, sees the lean go on; no sheet falls short of the corner
// it was folded round.
func (w *walker) surely(t measure.Length) measure.Length {
	if w.skew == 0 {
		return t
	}
	heights, turned := w.h.walls[w.wall].heights, w.turned(w.wall)
	least := min(0, w.skew)
	for _, y := range []measure.Length{heights.Lo, heights.Hi} {
		if !turned.IsEmpty() && !turned.Contains(y) && turned.Length() > 0 {
			least = min(least, (y-turned.Lo).Scaled(int64(w.skew), int64(turned.Length()))-1) // rounded, so surely less
		}
	}
	_, near := w.leans(w.wall)
	return max(t+least, min(0, near))
}

// mostLean returns how far the edge of a sheet that has turned a corner with
// that skew is off plumb on the next wall, at its farthest.
func (w *walker) mostLean(next int, skew measure.Length) measure.Length {
	heights, turned := w.h.walls[next].heights, w.turned(next)
	most := skew.Abs()
	if turned.Length() > 0 {
		for _, y := range []measure.Length{heights.Lo, heights.Hi} {
			most = max(most, (y-turned.Lo).Scaled(int64(skew), int64(turned.Length())).Abs())
		}
	}
	return most
}

// lay covers the wall from t to no further than stop with what is left of the
// drop's width, and moves on to where that ends.
func (w *walker) lay(stop measure.Length) {
	width := min(w.h.paper.Width-w.a, stop-w.t)
	if width <= 0 {
		return
	}
	w.steps = append(w.steps, step{
		drop: w.drop, wall: w.wall,
		t: geom.Interval{Lo: w.t, Hi: w.t + width}, a: geom.Interval{Lo: w.a, Hi: w.a + width},
		joined: w.joined, skew: w.skew, renewed: w.renewed, plumb: w.plumb,
	})
	w.renewed, w.plumb = false, w.joined
	w.t, w.a = w.t+width, w.a+width
}

// toCorner lays the next part on this wall and reports whether it took the
// walk round the corner.
func (w *walker) toCorner(c Choice) bool {
	e, next := w.ahead(c)
	width := w.h.walls[w.wall].width
	far, near := width+max(0, e.leanA), min(0, e.leanB)
	if w.a >= w.h.paper.Width && w.t >= far { // the last drop ended in the corner
		w.goOn(next, near)
		return true
	}
	w.nextDrop()
	reach := w.reach()
	r := reach - far
	if r <= 0 {
		w.lay(w.t + w.h.paper.Width)
		w.t = reach
		return false
	}
	rules := &w.h.rules
	// What a leaning sheet may fall short by, it needs beyond the corner.
	short := w.t + w.h.paper.Width - w.a - reach
	inside := e.kind == room.Inside
	// A sheet whose near edge lies between foot and head of a leaning corner, or
	// past it, has no paper on this wall somewhere and cannot be folded there.
	foldable := w.edge < width && w.edge <= width+min(0, e.leanA) && !e.step
	skew := w.skew + e.leanB - e.leanA // of the sheet, once it has turned
	upright := max(e.leanA.Abs(), e.leanB.Abs()) <= rules.PlumbTolerance
	switch {
	case inside && e.renew:
		w.lay(far + max(rules.Wrap, short))
		w.a, w.renewed = w.h.paper.Width, true
		w.goOn(next, near)
	case inside && (r > rules.WrapLimit || !foldable):
		w.lay(far + max(min(rules.Wrap, r), short))
		w.goOn(next, near)
	case !foldable:
		w.lay(far)
		w.goOn(next, near)
	case inside || upright || r <= rules.OutsideWrap+max(rules.WrapLimit, w.mostLean(next, skew)) || w.extent(c, next) <= rules.OutsideWrap:
		w.fold(next, e)
	default:
		w.fold(next, e)
		w.lay(rules.OutsideWrap)
		w.t = w.surely(w.t)
		w.edge = w.t
		w.joined, w.skew, w.plumb = false, 0, true
	}
	return true
}

// extent returns how much of the next wall there is to cover: its width, or
// less when the kill seam stands on it and the way ends there.
func (w *walker) extent(c Choice, next int) measure.Length {
	width := w.h.walls[next].width
	switch {
	case w.legs > 1 || c.Kill.Kind != OnWall:
		return width
	case w.side == Left:
		return width - c.Kill.X
	}
	return c.Kill.X
}

// goOn continues on the next wall at t, with paper cut loose.
func (w *walker) goOn(next int, t measure.Length) {
	w.wall, w.t, w.edge = next, t, t
	w.joined, w.skew, w.plumb = false, 0, true
}

// fold lays the drop up to the corner and continues on the next wall with the
// same sheet. The fold is meant at the corner's foot.
func (w *walker) fold(next int, e edge) {
	w.lay(w.h.walls[w.wall].width)
	w.edge -= w.t
	w.wall, w.t = next, 0
	w.joined, w.skew, w.plumb = true, w.skew+e.leanB-e.leanA, false
}

// toEnd lays the last wall up to the end of the way.
func (w *walker) toEnd(c Choice) {
	must, stop := w.end(c)
	for {
		if w.a >= w.h.paper.Width && w.t >= must {
			return
		}
		w.nextDrop()
		reach := w.reach()
		if reach >= must {
			w.lay(stop)
			return
		}
		// What of a leaning sheet goes past the end is trimmed there, but its
		// edge is where it is.
		w.lay(w.t + w.h.paper.Width)
		w.t = reach
	}
}

// end returns how far the last wall must be covered and where the paper ends
// at the latest, in the direction of walking.
func (w *walker) end(c Choice) (must, stop measure.Length) {
	x := &w.h.walls[w.wall]
	if c.Kill.Kind == OnWall {
		at := c.Kill.X
		if w.side == Left {
			at = x.width - at
		}
		return at, at
	}
	far, _ := w.leans(w.wall)
	must = x.width + max(0, far)
	if c.Kill.Kind == AtCorner && c.Kill.Lap == w.side.Opposite() {
		return must, must + w.h.rules.Overlap
	}
	return must, must
}
