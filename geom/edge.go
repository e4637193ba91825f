package geom

import (
	"cmp"
	"math/bits"

	"firstdrop/measure"
)

// edge is a side of a ring that is not upright, from its left end to its right
// end: Left.X < Right.X. Where in between it stands how high is a fraction; the
// two questions asked of it, "how high here, to the nearest nanometre?" and
// "which of two is higher here?", are answered without rounding on the way,
// for every Length there is.
type edge struct {
	left, right Point
	ring        int // 0 for the outline, i+1 for hole i
}

// edgeBetween returns the side from p to q, in either direction, and whether
// it is one: an upright side is none.
func edgeBetween(p, q Point, ring int) (edge, bool) {
	if q.X < p.X {
		p, q = q, p
	}
	return edge{p, q, ring}, p.X < q.X
}

// whole returns the edge's height at x as whole + part/width with
// 0 ≤ part < width. x must lie between the edge's ends.
func (e *edge) whole(x measure.Length) (whole measure.Length, part, width uint64) {
	width = uint64(e.right.X) - uint64(e.left.X)
	run := uint64(x) - uint64(e.left.X)
	if e.right.Y >= e.left.Y {
		hi, lo := bits.Mul64(uint64(e.right.Y)-uint64(e.left.Y), run)
		q, r := bits.Div64(hi, lo, width)
		return e.left.Y + measure.Length(q), r, width
	}
	hi, lo := bits.Mul64(uint64(e.left.Y)-uint64(e.right.Y), run)
	q, r := bits.Div64(hi, lo, width)
	if r == 0 {
		return e.left.Y - measure.Length(q), 0, width
	}
	return e.left.Y - measure.Length(q) - 1, width - r, width
}

// height returns the edge's height at x to the nearest nanometre, halves up:
// at either end exactly that end's height, and the same from whichever end
// the edge was drawn. x must lie between the edge's ends.
func (e *edge) height(x measure.Length) measure.Length {
	switch {
	case e.left.Y == e.right.Y || x == e.left.X:
		return e.left.Y
	case x == e.right.X:
		return e.right.Y
	}
	y, part, width := e.whole(x)
	if part >= width-part {
		y++
	}
	return y
}

// compareAt returns −1, 0 or 1 as e runs below, through or above other at x,
// which must lie between the ends of both.
func (e *edge) compareAt(x measure.Length, other *edge) int {
	y, part, width := e.whole(x)
	otherY, otherPart, otherWidth := other.whole(x)
	if y != otherY {
		return cmp.Compare(y, otherY)
	}
	hi, lo := bits.Mul64(part, otherWidth)
	otherHi, otherLo := bits.Mul64(otherPart, width)
	return cmp.Or(cmp.Compare(hi, otherHi), cmp.Compare(lo, otherLo))
}

// side returns −1, 0 or 1 as the point lies below, on or above the edge; its
// x must lie between the edge's ends.
func (e *edge) side(p Point) int {
	y, part, _ := e.whole(p.X)
	if p.Y == y && part > 0 {
		return -1
	}
	return cmp.Compare(p.Y, y)
}

// crossing returns the stretch in which two edges cross: a single position
// where they do so at a whole nanometre, two neighbouring positions otherwise.
// It is empty where they do not cross, or meet only at an end of either, or
// run along each other.
func (e *edge) crossing(other *edge) Interval {
	lo, hi := max(e.left.X, other.left.X), min(e.right.X, other.right.X)
	if lo >= hi {
		return Interval{0, -1}
	}
	before := e.compareAt(lo, other)
	if before*e.compareAt(hi, other) >= 0 {
		return Interval{0, -1}
	}
	for uint64(hi)-uint64(lo) > 1 {
		middle := lo + measure.Length((uint64(hi)-uint64(lo))/2)
		switch e.compareAt(middle, other) {
		case 0:
			return Interval{middle, middle}
		case before:
			lo = middle
		default:
			hi = middle
		}
	}
	return Interval{lo, hi}
}
