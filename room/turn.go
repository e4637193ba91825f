package room

import (
	"slices"

	"firstdrop/geom"
	"firstdrop/measure"
)

// Paper need not hang plumb. Where the sheets of a wall are set to a ceiling that
// falls, to a casing that leans or to the corner they begin in, all of them lean
// alike, and the rows of the design run uphill or downhill by as much:
//
//	  as it stands           as its sheets see it
//	┌────────┬─┬─_          ┌──────────────┐
//	│   /   /  /   │        │  │  │  │  │  │    ceiling level, sheets upright,
//	│  /   /  /    │  ──►   │  │  │  │  │  │    floor and corners out of true
//	└─/───/──/─────┘        └──/───────────/
//
// So a wall is turned until its sheets stand upright, everything on it with
// them, and whatever knows how to hang plumb paper hangs it.

// Turn says how a wall's sheets stand. The zero value is plumb, with the design
// level with the datum. It is a turn to the first order: lengths grow by half the
// square of the slope, which at 1 in 50, the steepest allowed, is 0.2 mm a metre.
type Turn struct {
	Lean measure.Length // how far the head of a sheet's edge stands to the right of its foot, over all of the wall's heights
	Rise measure.Length // how far a row of the design rises over the wall's width, from left to right
	Lift measure.Length // how far the design stands too high at the wall's left end, against the datum
}

// Steepest is the slope of ceilings, casings and sheets up to which they are meant
// level or upright: 1 in 50, more than six times what NHBC Standards 2020, 9.1.3
// tolerates of a ceiling.
const Steepest = 50

// StepAt returns how far the design steps up from wall i to the wall on its right.
func StepAt(turns []Turn, i int) measure.Length {
	if turns == nil {
		return 0
	}
	a, b := &turns[i], &turns[(i+1)%len(turns)]
	return b.Lift - a.Lift - a.Rise
}

// Turned returns the run as its sheets see it, one turn for each wall: a point
// of wall i is moved by −Lean·(y − foot)/height along the wall and by
// −Lift − Rise·x/width upwards, each rounded to the nearest nanometre. foot is
// that of the corner on its left, height from the wall's lowest to its highest
// point. What of an opening stands on the edge of a wall out of true is put 2 nm
// beyond, so that rounding leaves no hair of wall between. Corners lean by what they lean more than the sheets. The run itself is
// returned where nothing is turned; otherwise outlines, openings and fittings are
// not shared with it.
func (r *Run) Turned(turns []Turn) *Run {
	if !slices.ContainsFunc(turns, func(t Turn) bool { return t != Turn{} }) {
		return r
	}
	out := *r
	out.Walls, out.Corners = slices.Clone(r.Walls), slices.Clone(r.Corners)
	for i := range out.Walls {
		left, right := r.edges(i)
		f := frame{turn: turns[i], width: r.Walls[i].Width, foot: left.reach.Lo}
		_, y := r.Walls[i].Outline.Bounds()
		f.height = y.Length()
		out.Walls[i].turn(f, right.reach.Lo)
		out.lean(i, f.across(left.reach), f.across(right.reach))
	}
	return &out
}

// frame turns one wall.
type frame struct {
	turn                Turn
	width, height, foot measure.Length
}

// at turns a point.
func (f *frame) at(p geom.Point) geom.Point {
	return geom.Point{X: p.X - f.off(p.Y-f.foot), Y: p.Y - f.turn.Lift - f.turn.Rise.Scaled(int64(p.X), int64(f.width))}
}

// off returns how far a sheet's edge stands off plumb so high above its foot.
func (f *frame) off(y measure.Length) measure.Length {
	return f.turn.Lean.Scaled(int64(y), int64(f.height))
}

// across returns how far a sheet's edge leans over a corner's heights.
func (f *frame) across(reach geom.Interval) measure.Length {
	return f.off(max(reach.Length(), 0))
}

// turn turns the wall; right is the height of the foot of the corner on its right.
func (w *Wall) turn(f frame, right measure.Length) {
	original, width := w.Outline, w.Width-f.off(right-f.foot)
	outline := make(geom.Ring, len(w.Outline))
	for i, p := range w.Outline {
		outline[i] = f.at(p)
		switch p.X { // its corners are moved by their leans
		case 0:
			outline[i].X = 0
		case w.Width:
			outline[i].X = width
		}
	}
	w.Outline, w.Width = outline, width
	w.Openings, w.Fittings = slices.Clone(w.Openings), slices.Clone(w.Fittings)
	for o := range w.Openings {
		ring := slices.Clone(w.Openings[o].Outline)
		for i, p := range ring {
			q, off := f.at(p), geom.Point{}
			if f.turn.Lean != 0 || f.turn.Rise != 0 {
				off = beyondEdge(original, p)
			}
			ring[i] = geom.Point{X: q.X + off.X, Y: q.Y + off.Y}
		}
		w.Openings[o].Outline = ring
	}
	for i := range w.Fittings {
		w.Fittings[i].At = f.at(w.Fittings[i].At)
	}
}

// beyondEdge returns by how much a point on the edge of an outline is put beyond
// it: 2 nm in each direction in which the outline ends there.
func beyondEdge(outline geom.Ring, p geom.Point) (d geom.Point) {
	if !outline.Contains(p) {
		return d
	}
	for _, way := range [...]geom.Point{{X: 1}, {X: -1}, {Y: 1}, {Y: -1}} {
		if !outline.Contains(geom.Point{X: p.X + way.X, Y: p.Y + way.Y}) {
			d.X, d.Y = d.X+2*way.X, d.Y+2*way.Y
		}
	}
	return d
}

// lean takes off the corners at both ends of wall i what its sheets lean by.
func (r *Run) lean(i int, left, right measure.Length) {
	n := len(r.Walls)
	switch {
	case i > 0 || r.Closed && len(r.Corners) == n:
		r.Corners[(i-1+n)%n].LeanRight -= left
	default:
		r.Ends.Left.LeanRight -= left
	}
	if i < len(r.Corners) {
		r.Corners[i].LeanLeft -= right
	} else {
		r.Ends.Right.LeanLeft -= right
	}
}

// Ceiling returns the heights of a wall's upper edge at its two ends; ok is false
// unless the wall has four corners, two at each end.
func (w *Wall) Ceiling() (left, right measure.Length, ok bool) {
	if len(w.Outline) != 4 {
		return 0, 0, false
	}
	at, to := w.reachAt(0), w.reachAt(w.Width)
	lows, highs := 0, 0
	for _, p := range w.Outline {
		switch p.X {
		case 0:
			lows++
		case w.Width:
			highs++
		}
	}
	return at.Hi, to.Hi, lows == 2 && highs == 2
}

// IsLevelCeiling reports whether an upper edge with these heights at its ends is
// meant to be level: it falls by no more than 1 in 50.
func (w *Wall) IsLevelCeiling(left, right measure.Length) bool {
	return (right-left).Abs()*Steepest <= w.Width
}

// Casing returns how far the head of an opening's left or right side stands to
// the right of its foot, and over what height; ok is false unless the opening has
// four corners and its sides are meant upright.
func (o *Opening) Casing(right bool) (lean, height measure.Length, ok bool) {
	if len(o.Outline) != 4 {
		return 0, 0, false
	}
	var sides [][2]geom.Point
	for i, p := range o.Outline {
		q := o.Outline[(i+1)%4]
		if p.Y > q.Y {
			p, q = q, p
		}
		if p.Y < q.Y && (q.X-p.X).Abs()*Steepest <= q.Y-p.Y {
			sides = append(sides, [2]geom.Point{p, q})
		}
	}
	if len(sides) != 2 {
		return 0, 0, false
	}
	s, other := sides[0], sides[1]
	if right == (s[0].X+s[1].X < other[0].X+other[1].X) {
		s = other
	}
	return s[1].X - s[0].X, s[1].Y - s[0].Y, true
}
