package audit

import (
	"math/big"
	"slices"

	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/room"
)

// Sheets need not hang plumb. Where a wall's are set to a ceiling, a casing or a
// neighbour, the wall is turned here until they do, and judged like any other:
//
//	x' = x − lean·(y − foot)/height        foot: of the corner on its left
//	y' = y − lift − rise·x/width
//
// What each wall is set to gives its lean; the rows of the design, at right angles
// to the edges, rise by −lean·width/height; the lift says how high they begin.

// turning is how one wall is turned, in nanometres.
type turning struct{ lean, rise, lift int64 }

// turnings works out the turns that settings ask for, wall after wall, each as
// soon as what it is set to is known; ok is false where one never is.
func turnings(run *room.Run, set []hanging.Setting) (all []turning, ok bool) {
	n := len(run.Walls)
	all = make([]turning, n)
	known := make([]bool, n)
	left := n
	for range n {
		for i := range n {
			if !known[i] && turnWall(run, set, all, known, i) {
				known[i] = true
				left--
			}
		}
	}
	return all, left == 0
}

// turnWall works out the turn of wall i, if what it needs is known.
func turnWall(run *room.Run, set []hanging.Setting, all []turning, known []bool, i int) bool {
	s, w := set[i], &run.Walls[i]
	from := 0 // the side from which lean or height come
	switch {
	case s.To == hanging.ToLeft, s.To != hanging.ToRight && s.Meets == hanging.MeetLeft:
		from = -1
	case s.To == hanging.ToRight, s.Meets == hanging.MeetRight:
		from = 1
	}
	other, there := neighbour(run, i, from)
	if from != 0 && (!there || !known[other]) {
		return false
	}
	low, high := heightsOf(w.Outline)
	t := &all[i]
	switch s.To {
	case hanging.ToCeiling:
		a, b, ok := endsOf(w)
		if !ok {
			return false
		}
		t.rise = b - a
		t.lean = nearest(-t.rise, high-low, int64(w.Width))
	case hanging.ToCasing:
		over, tall, ok := casingOf(w, &s)
		if !ok {
			return false
		}
		t.lean = nearest(over, high-low, tall)
	case hanging.ToLeft, hanging.ToRight:
		t.lean = alongside(run, all, i, other, from)
	}
	if s.To != hanging.ToCeiling {
		t.rise = nearest(-t.lean, int64(w.Width), high-low)
	}
	switch {
	case from < 0:
		t.lift = all[other].lift + all[other].rise
	case from > 0:
		t.lift = all[other].lift - t.rise
	case s.To == hanging.ToCeiling:
		a, _, _ := endsOf(w)
		t.lift = a - ceilingMiddle(run, set, i)
	default:
		t.lift = -(t.rise / 2)
	}
	return true
}

// neighbour returns the wall on one side, −1 or 1.
func neighbour(run *room.Run, i, side int) (int, bool) {
	n := len(run.Walls)
	k := i + side
	if k >= 0 && k < n {
		return k, true
	}
	return (k + n) % n, run.Closed && n > 1
}

// heightsOf returns the lowest and the highest point of a ring.
func heightsOf(ring geom.Ring) (low, high int64) {
	low, high = int64(ring[0].Y), int64(ring[0].Y)
	for _, p := range ring {
		low, high = min(low, int64(p.Y)), max(high, int64(p.Y))
	}
	return low, high
}

// endsOf returns the heights of a wall's upper edge at both its ends; ok is false
// unless it has two points at either end and no others.
func endsOf(w *room.Wall) (left, right int64, ok bool) {
	var at [2][]int64
	for _, p := range w.Outline {
		switch p.X {
		case 0:
			at[0] = append(at[0], int64(p.Y))
		case w.Width:
			at[1] = append(at[1], int64(p.Y))
		default:
			return 0, 0, false
		}
	}
	if len(at[0]) != 2 || len(at[1]) != 2 {
		return 0, 0, false
	}
	return slices.Max(at[0]), slices.Max(at[1]), true
}

// casingOf returns how far the side of an opening that a wall is set to leans, and
// over what height.
func casingOf(w *room.Wall, s *hanging.Setting) (over, tall int64, ok bool) {
	if s.Opening < 0 || s.Opening >= len(w.Openings) || len(w.Openings[s.Opening].Outline) != 4 {
		return 0, 0, false
	}
	byX := slices.Clone(w.Openings[s.Opening].Outline)
	slices.SortFunc(byX, func(a, b geom.Point) int { return int(max(-1, min(1, a.X-b.X))) })
	pair := byX[:2]
	if s.Side == hanging.Right {
		pair = byX[2:]
	}
	foot, head := pair[0], pair[1]
	if foot.Y > head.Y {
		foot, head = head, foot
	}
	return int64(head.X - foot.X), int64(head.Y - foot.Y), head.Y > foot.Y
}

// alongside returns the lean with which wall i's sheets touch those of a
// neighbour all down the corner: over the corner's height, what each edge of the
// corner leans more than its sheets must be alike.
func alongside(run *room.Run, all []turning, i, other, side int) int64 {
	g := newGround(run)
	f := &g.walls[i].left
	mine, theirs := f.leanRight, f.leanLeft
	if side > 0 {
		f = &g.walls[i].right
		mine, theirs = f.leanLeft, f.leanRight
	}
	if f.head <= f.foot {
		return 0
	}
	a, b := &g.walls[i], &g.walls[other]
	more := theirs - nearest(all[other].lean, f.head-f.foot, b.high-b.low)
	return nearest(mine-more, a.high-a.low, f.head-f.foot)
}

// ceilingMiddle returns the middle between the lowest and the highest point of a
// ceiling over neighbouring walls that are all set to it and meet at one height.
func ceilingMiddle(run *room.Run, set []hanging.Setting, i int) int64 {
	a, b, _ := endsOf(&run.Walls[i])
	low, high := min(a, b), max(a, b)
	for _, side := range [2]int{-1, 1} {
		end := a
		if side > 0 {
			end = b
		}
		for k, steps := i, 0; steps < len(run.Walls)-1; steps++ {
			next, ok := neighbour(run, k, side)
			if !ok || set[next].To != hanging.ToCeiling || set[next].Meets != hanging.AtDatum {
				break
			}
			l, r, ok := endsOf(&run.Walls[next])
			near, far := l, r
			if side < 0 {
				near, far = r, l
			}
			if !ok || near != end {
				break
			}
			low, high, end, k = min(low, far), max(high, far), far, next
		}
	}
	return low + (high-low)/2
}

// turned returns the run as its sheets see it.
func turned(run *room.Run, all []turning) *room.Run {
	out := *run
	out.Walls, out.Corners = slices.Clone(run.Walls), slices.Clone(run.Corners)
	g := newGround(run)
	for i := range out.Walls {
		w, from, t := &out.Walls[i], &g.walls[i], all[i]
		foot, tall := from.left.foot, from.high-from.low
		move := func(p geom.Point) geom.Point {
			return geom.Point{
				X: p.X - lengthOf(nearest(t.lean, int64(p.Y)-foot, tall)),
				Y: p.Y - lengthOf(t.lift+nearest(t.rise, int64(p.X), from.width)),
			}
		}
		ring := func(r geom.Ring) geom.Ring {
			moved := make(geom.Ring, len(r))
			for k, p := range r {
				moved[k] = move(p)
			}
			return moved
		}
		within := w.Outline
		width := w.Width - lengthOf(nearest(t.lean, from.right.foot-foot, tall))
		outline := ring(w.Outline)
		for k, p := range w.Outline {
			if p.X == 0 {
				outline[k].X = 0
			} else if p.X == w.Width {
				outline[k].X = width
			}
		}
		w.Outline, w.Width = outline, width
		w.Openings, w.Fittings = slices.Clone(w.Openings), slices.Clone(w.Fittings)
		for o := range w.Openings {
			moved := ring(w.Openings[o].Outline)
			for k, p := range w.Openings[o].Outline {
				off := geom.Point{}
				if t.lean != 0 || t.rise != 0 {
					off = offEdge(within, p)
				}
				moved[k].X, moved[k].Y = moved[k].X+off.X, moved[k].Y+off.Y
			}
			w.Openings[o].Outline = moved
		}
		for k := range w.Fittings {
			w.Fittings[k].At = move(w.Fittings[k].At)
		}
		off := func(f *fold) int64 { return nearest(t.lean, max(f.head-f.foot, 0), tall) }
		straighten(&out, i, lengthOf(off(&from.left)), lengthOf(off(&from.right)))
	}
	return &out
}

// offEdge returns how a point on the edge of an outline is put beyond it: by 2 nm
// wherever one nanometre leads out of it.
func offEdge(outline geom.Ring, p geom.Point) (off geom.Point) {
	if !holds(outline, p.X, p.Y) {
		return off
	}
	for _, d := range [...]measure.Length{1, -1} {
		if !holds(outline, p.X+d, p.Y) {
			off.X += 2 * d
		}
		if !holds(outline, p.X, p.Y+d) {
			off.Y += 2 * d
		}
	}
	return off
}

// holds reports whether a point lies in a ring or on its edge: how often a ray to
// the right crosses it.
func holds(ring geom.Ring, x, y measure.Length) bool {
	inside := false
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		if a.Y > b.Y {
			a, b = b, a
		}
		// More than 0 where the point lies to the left of the edge, seen upwards.
		left := new(big.Int).Sub(
			new(big.Int).Mul(big.NewInt(int64(b.X-a.X)), big.NewInt(int64(y-a.Y))),
			new(big.Int).Mul(big.NewInt(int64(b.Y-a.Y)), big.NewInt(int64(x-a.X)))).Sign()
		beside := x >= min(a.X, b.X) && x <= max(a.X, b.X) && y >= a.Y && y <= b.Y
		if left == 0 && beside {
			return true
		}
		if a.Y <= y && y < b.Y && left > 0 {
			inside = !inside
		}
	}
	return inside
}

// straighten takes what a wall's sheets lean off the leans of its corners.
func straighten(run *room.Run, i int, left, right measure.Length) {
	if before, ok := neighbour(run, i, -1); (ok || len(run.Walls) == 1 && run.Closed) && before < len(run.Corners) {
		run.Corners[before].LeanRight -= left
	} else {
		run.Ends.Left.LeanRight -= left
	}
	if i < len(run.Corners) {
		run.Corners[i].LeanLeft -= right
	} else {
		run.Ends.Right.LeanLeft -= right
	}
}

// step returns how far the design steps up in the corner at the right of wall i.
func (h *hung) step(i int) int64 {
	if h.turns == nil {
		return 0
	}
	a, b := &h.turns[i], &h.turns[(i+1)%len(h.turns)]
	return b.lift - a.lift - a.rise
}

// judgeTurns: each wall is turned as it is set, and what the layout was laid on is
// the run so turned.
func (h *hung) judgeTurns() {
	l := h.l
	if h.turns == nil {
		h.same(Turned, Place{}, "walls turned", 0, len(l.Turns))
		h.same(Turned, Place{}, "run that the sheets see", true, l.Hung() == l.Run)
		return
	}
	if !h.same(Turned, Place{}, "walls turned", len(h.turns), len(l.Turns)) {
		return
	}
	seen := l.Hung()
	for i, t := range h.turns {
		at, got := Place{Wall: i + 1}, l.Turns[i]
		h.same(Turned, at, "lean of its sheets", lengthOf(t.lean), got.Lean)
		h.same(Turned, at, "rise of the design along it", lengthOf(t.rise), got.Rise)
		h.same(Turned, at, "height of the design at its left end", lengthOf(t.lift), got.Lift)
		if len(seen.Walls) != len(h.run.Walls) {
			h.note(Turned, at, "walls that the sheets see", len(h.run.Walls), len(seen.Walls))
			return
		}
		h.same(Turned, at, "width that the sheets see", h.run.Walls[i].Width, seen.Walls[i].Width)
		h.same(Turned, at, "outline that the sheets see, as expected", true, slices.Equal(h.run.Walls[i].Outline, seen.Walls[i].Outline))
		if h.step(i) != 0 && i < len(l.Run.Corners) && l.Run.Corners[i].Kind == room.Outside {
			h.note(Turned, at, "step of the design round the outside corner on its right", "none", lengthOf(h.step(i)))
		}
	}
}
