package room

import (
	"slices"

	"firstdrop/geom"
	"firstdrop/measure"
)

// The face of a wall is its outline with the upright edges leaning as the
// corners do:
//
//	 LeanRight < 0          LeanLeft > 0
//	    \                       /       head of the corner
//	     \      the wall       /
//	      \                   /
//	       |_________________|          foot of the corner
//	       0               Width
//
// An edge may have several corners of the outline on it (a dado, a step in the
// floor). All of them lie on one straight line from the corner's foot, where it
// stands at 0 or Width, to its head, where it stands off by the lean.

// Face returns the polygon of wall i that is really to be papered: its outline
// with both upright edges leaning as the corners do, less its openings. Each
// edge leans in proportion to the height above the corner's foot, rounded to
// the nearest nanometre; foot and head of a corner are the lowest and highest
// point that either of its two walls has there. Openings stand where they were
// measured: one that reaches into a corner which leans away from it leaves a
// wedge of wall there, which [Run.Findings] tells of.
func (r *Run) Face(i int) geom.Polygon {
	w := &r.Walls[i]
	left, right := r.edges(i)
	face := geom.Polygon{Outline: w.leaning(left, right)}
	for _, o := range w.Openings {
		face.Holes = append(face.Holes, slices.Clone(o.Outline))
	}
	return face
}

// LeanAt returns the leans of wall i's left and right edge: the leaning, in
// the plane of that wall, of the corner or end that stands there.
func (r *Run) LeanAt(i int) (left, right measure.Length) {
	l, s := r.cornersOf(i)
	return l.corner.LeanRight, s.corner.LeanLeft
}

// Reach returns the heights over which the corners, or ends, at the left and
// right edge of wall i lean: from the foot of the corner, the lowest point that
// either of its walls has there, to its head. It is empty where an outline has
// no corner on that edge.
func (r *Run) Reach(i int) (left, right geom.Interval) {
	l, s := r.edges(i)
	return l.reach, s.reach
}

// edgeLine is one leaning edge of a wall: how far it is off, and over what
// stretch of height.
type edgeLine struct {
	lean  measure.Length
	reach geom.Interval
}

// at returns how far the edge stands off at height y: 0 below the corner's
// foot, the whole lean above its head, and 0 all along where it has no height.
func (e edgeLine) at(y measure.Length) measure.Length {
	if e.lean == 0 || e.reach.Length() <= 0 {
		return 0
	}
	y = min(max(y, e.reach.Lo), e.reach.Hi)
	return (y - e.reach.Lo).Scaled(int64(e.lean), int64(e.reach.Length()))
}

// edges returns the lines of wall i's left and right edge.
func (r *Run) edges(i int) (left, right edgeLine) {
	before, after := r.cornersOf(i)
	left.lean, right.lean = before.corner.LeanRight, after.corner.LeanLeft
	left.reach = r.Walls[i].reachAt(0)
	right.reach = r.Walls[i].reachAt(r.Walls[i].Width)
	if before.wall >= 0 {
		w := &r.Walls[before.wall]
		left.reach = left.reach.Union(w.reachAt(w.Width))
	}
	if after.wall >= 0 {
		right.reach = right.reach.Union(r.Walls[after.wall].reachAt(0))
	}
	return left, right
}

// reachAt returns the stretch of heights that the outline's corners have at x;
// empty where none stands there.
func (w *Wall) reachAt(x measure.Length) geom.Interval {
	reach := geom.Interval{Lo: 0, Hi: -1}
	for _, p := range w.Outline {
		if p.X == x {
			reach = reach.Union(geom.Interval{Lo: p.Y, Hi: p.Y})
		}
	}
	return reach
}

// leaning returns the outline with its corners on the wall's edges moved along
// the edges' lines.
func (w *Wall) leaning(left, right edgeLine) geom.Ring {
	leaning := slices.Clone(w.Outline)
	for i, p := range w.Outline {
		switch p.X {
		case 0:
			leaning[i].X += left.at(p.Y)
		case w.Width:
			leaning[i].X += right.at(p.Y)
		}
	}
	return leaning
}
