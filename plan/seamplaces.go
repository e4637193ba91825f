package plan

import (
	"cmp"
	"slices"

	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
)

// Over an opening the kill seam may stand anywhere, but few places need be tried. Between
// two edges of drops, of either half, nothing but the strips at the kill seam changes, and
// these only for the worse where one is a sliver:
//
//	right half ►   a       b       c
//	            ───┼───╴╴╴╴┼╴╴╴╴╴╴╴┼╴╴         at an edge one drop is trimmed instead of two;
//	                 ┊ ··┊   ┊···┊             between two edges the kill seam stands as near
//	            ──╴╴╴╴╴┼╴╴╴╴╴╴╴┼───────        the middle as the strips allow ( ··· )
//	                   d       e     ◄ left half
//
// In between, the centre line of a wall may be over one strip or the other, a stretch may be
// kept free of seams, and the end strips of a focal wall may become alike.

// seamPlaces lists where a kill seam over an opening need be tried beside its place in a
// choice that has been weighed, those nearest to that first.
func (s *search) seamPlaces(c *hanging.Choice, k *killPlace) []measure.Length {
	s.places = slices.DeleteFunc(s.appendPlaces(s.places[:0], c.Kill.Wall, k.span), func(x measure.Length) bool {
		return x <= k.span.Lo || x >= k.span.Hi || x == c.Kill.X || s.isAcross(c, x)
	})
	middle := c.Kill.X
	slices.SortFunc(s.places, func(a, b measure.Length) int {
		return cmp.Or(cmp.Compare((a-middle).Abs(), (b-middle).Abs()), cmp.Compare(a, b))
	})
	return slices.Compact(s.places)
}

// nearEnd is how near to an end of an opening, or to a centre line, the kill seam is tried
// beside it.
const nearEnd = measure.Millimetre

// appendPlaces appends the places on a span of a wall, between the edges of drops that the
// halves last weighed have there.
func (s *search) appendPlaces(xs []measure.Length, wall int, span geom.Interval) []measure.Length {
	right, left := s.grids()
	for at := span.Lo; at < span.Hi; {
		next := min(right.after(at), left.after(at), span.Hi)
		last, end := right.upTo(at), left.from(next)
		xs = s.appendBetween(append(xs, next), wall, span, geom.Interval{Lo: at, Hi: next}, geom.Interval{Lo: last, Hi: end})
		if last < 0 || end > s.judge.walls[wall].width { // what turns a corner may be a strip by itself
			xs = s.appendBetween(xs, wall, span, geom.Interval{Lo: at, Hi: next}, geom.Interval{Lo: max(last, 0), Hi: min(end, s.judge.walls[wall].width)})
		}
		at = next
	}
	w, wrap, sliver := &s.judge.walls[wall], s.task.Rules.OutsideWrap, s.task.Taste.MinSliver
	if w.left { // a drop may go round the corner whole
		xs = append(xs, wrap, wrap-sliver, wrap+sliver)
	}
	if w.right {
		xs = append(xs, w.width-wrap, w.width-wrap-sliver, w.width-wrap+sliver)
	}
	return xs
}

// appendBetween appends the places on a stretch between two edges, where the two strips at
// the kill seam reach from one place to another.
func (s *search) appendBetween(xs []measure.Length, wall int, span, stretch, strips geom.Interval) []measure.Length {
	w, sliver := &s.judge.walls[wall], s.task.Taste.MinSliver
	stretch = stretch.Intersection(geom.Interval{Lo: span.Lo + nearEnd, Hi: span.Hi - nearEnd})
	free := stretch.Intersection(geom.Interval{Lo: strips.Lo + sliver, Hi: strips.Hi - sliver})
	if free.Lo > free.Hi { // one or both are slivers
		return append(xs, nearest(strips.Lo+sliver, stretch), nearest(strips.Hi-sliver, stretch))
	}
	within := func(x measure.Length) measure.Length { return nearest(x, free) }
	xs = append(xs, within(span.Lo+span.Length()/2))
	if w.centre != nil && *w.centre > free.Lo && *w.centre < free.Hi {
		xs = append(xs, within(*w.centre-nearEnd), within(*w.centre+nearEnd))
	}
	for _, kept := range s.run.Fixed.KeepOff {
		if kept.Wall == wall && kept.X.Lo < free.Hi && kept.X.Hi > free.Lo {
			xs = append(xs, within(kept.X.Lo), within(kept.X.Hi))
		}
	}
	if w.focal {
		xs = s.appendAlike(xs, wall, free)
	}
	return xs
}

// appendAlike appends the places on a stretch nearest to where the end strips of a wall are
// alike, if one of them is the strip at the kill seam. What has only turned a corner may be
// no strip; then the one beside it is.
func (s *search) appendAlike(xs []measure.Length, wall int, free geom.Interval) []measure.Length {
	right, left := s.grids()
	w, turned, wrap := &s.judge.walls[wall], s.task.Rules.WrapLimit, s.task.Rules.OutsideWrap
	width := w.width
	begins, ends := [2]measure.Length{0, right.after(0)}, [2]measure.Length{width, left.upTo(width - 1)}
	for i, begin := range begins {
		for k, end := range ends {
			if i > 0 && begin > turned || k > 0 && end < width-turned {
				continue
			}
			if right.upTo(free.Lo) <= begin {
				xs = append(xs, nearest(begin+end-left.upTo(end-1), free))
				if w.right { // a drop has come round the outside corner by so much
					xs = append(xs, nearest(begin+wrap, free))
				}
			}
			if left.from(free.Hi) >= end {
				xs = append(xs, nearest(end-(right.after(begin)-begin), free))
				if w.left {
					xs = append(xs, nearest(end-wrap, free))
				}
			}
		}
	}
	return xs
}

// nearest returns the place on a stretch that is nearest to x.
func nearest(x measure.Length, stretch geom.Interval) measure.Length {
	return max(stretch.Lo, min(x, stretch.Hi))
}

// grid are the edges of drops on a wall that stand a width apart, one of them known.
type grid struct{ edge, width measure.Length }

// grids returns the edges that the halves last weighed have on the wall of the kill seam.
func (s *search) grids() (right, left grid) {
	return grid{s.edges[hanging.Right], s.halves.width}, grid{s.edges[hanging.Left], s.halves.width}
}

// upTo returns the last edge no farther than x.
func (g grid) upTo(x measure.Length) measure.Length { return x - (x - g.edge).Mod(g.width) }

// from returns the first edge no nearer than x.
func (g grid) from(x measure.Length) measure.Length { return x + (g.edge - x).Mod(g.width) }

// after returns the first edge past x.
func (g grid) after(x measure.Length) measure.Length { return g.upTo(x) + g.width }

// isAcross reports whether a kill seam at x would stand on the other side of drop
// 0 than the choice's own.
func (s *search) isAcross(c *hanging.Choice, x measure.Length) bool {
	return c.Kill.Wall == c.Start.Wall && (x <= max(c.Start.X, 0)) != (c.Kill.X <= max(c.Start.X, 0))
}

// edgesOf returns an edge on the wall of a kill seam, as if it were not trimmed there, of the
// last drop before it of either half, from their parts.
func edgesOf(right, left []hanging.Part) (edges [2]measure.Length) {
	a, b := &right[len(right)-1], &left[0]
	edges[hanging.Right], edges[hanging.Left] = a.X.Lo-a.Across.Lo, b.X.Lo-b.Across.Lo
	return edges
}
