package draw

import (
	"cmp"
	"slices"

	"firstdrop/geom"
	"firstdrop/measure"
)

// Slope is the way hatching runs.
type Slope int

// The slopes, both at 45°.
const (
	Rising  Slope = iota // from the lower left to the upper right
	Falling              // from the upper left to the lower right
)

// Hatch fills a polygon with slanting lines.
type Hatch struct {
	Shape geom.Polygon
	Slope Slope
	Gap   measure.Length // from line to line, along x; > 0, otherwise nothing is drawn
	Pen   Pen
}

func (Hatch) item() {}

// Box returns the box of the outline.
func (h Hatch) Box() Box { return Area{Shape: h.Shape}.Box() }

// Parts returns the lines. They lie on a grid through the origin, so that
// neighbouring areas with equal hatching run into each other; what is inside
// follows from the even-odd rule. Points are rounded to the nearest nanometre.
func (h Hatch) Parts() []Item {
	box := h.Box()
	if h.Gap <= 0 || box.IsEmpty() {
		return nil
	}
	// Line c is the points with x − y·s = c, where s is 1 for rising lines.
	lo, hi := box.X.Lo-box.Y.Hi, box.X.Hi-box.Y.Lo
	if h.Slope == Falling {
		lo, hi = box.X.Lo+box.Y.Lo, box.X.Hi+box.Y.Hi
	}
	var items []Item
	for c := lo.CeilTo(h.Gap); c < hi; c += h.Gap {
		points := h.crossings(c)
		for i := 0; i+1 < len(points); i += 2 {
			items = append(items, Segment(points[i], points[i+1], h.Pen))
		}
	}
	return items
}

// crossings returns where line c crosses the rings, from left to right.
func (h Hatch) crossings(c measure.Length) []geom.Point {
	var points []geom.Point
	for _, ring := range append([]geom.Ring{h.Shape.Outline}, h.Shape.Holes...) {
		for i, p := range ring {
			q := ring[(i+1)%len(ring)]
			a, b := h.offset(p, c), h.offset(q, c)
			if (a < 0) == (b < 0) {
				continue
			}
			points = append(points, geom.Point{
				X: p.X + (q.X-p.X).Scaled(int64(a), int64(a-b)),
				Y: p.Y + (q.Y-p.Y).Scaled(int64(a), int64(a-b)),
			})
		}
	}
	slices.SortFunc(points, func(a, b geom.Point) int { return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y)) })
	return points
}

// offset returns on which side of line c a point lies, and how far along x.
func (h Hatch) offset(p geom.Point, c measure.Length) measure.Length {
	if h.Slope == Falling {
		return p.X + p.Y - c
	}
	return p.X - p.Y - c
}
