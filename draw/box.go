package draw

import (
	"firstdrop/geom"
	"firstdrop/measure"
)

// Box is an upright rectangle of the plane. It is empty when either stretch is.
type Box struct{ X, Y geom.Interval }

// NoBox is the empty box: it adds nothing to a union.
var NoBox = Box{X: geom.Interval{Lo: 0, Hi: -1}, Y: geom.Interval{Lo: 0, Hi: -1}}

// BoxAt returns the box of that width and height with its lower left corner
// at x, y.
func BoxAt(x, y, width, height measure.Length) Box {
	return Box{geom.Interval{Lo: x, Hi: x + width}, geom.Interval{Lo: y, Hi: y + height}}
}

// BoxOf returns the smallest box that holds all points; [NoBox] for none.
func BoxOf(points []geom.Point) Box {
	x, y := geom.Ring(points).Bounds()
	return Box{x, y}
}

// IsEmpty reports whether the box holds no point.
func (b Box) IsEmpty() bool { return b.X.IsEmpty() || b.Y.IsEmpty() }

// Union returns the smallest box that holds both; an empty one adds nothing.
func (b Box) Union(other Box) Box {
	switch {
	case b.IsEmpty():
		return other
	case other.IsEmpty():
		return b
	}
	return Box{b.X.Union(other.X), b.Y.Union(other.Y)}
}

// Overlaps reports whether the two share more than an edge.
func (b Box) Overlaps(other Box) bool { return b.X.Overlaps(other.X) && b.Y.Overlaps(other.Y) }

// Contains reports whether all of other lies in b; an empty one does.
func (b Box) Contains(other Box) bool { return other.IsEmpty() || b.Union(other) == b }

// Grown returns the box with d more on every side.
func (b Box) Grown(d measure.Length) Box {
	return Box{geom.Interval{Lo: b.X.Lo - d, Hi: b.X.Hi + d}, geom.Interval{Lo: b.Y.Lo - d, Hi: b.Y.Hi + d}}
}

// Shifted returns the box moved by d.
func (b Box) Shifted(d geom.Point) Box { return Box{b.X.Shifted(d.X), b.Y.Shifted(d.Y)} }

// Middle returns the box's centre, rounded down to whole nanometres.
func (b Box) Middle() geom.Point {
	return geom.Point{X: b.X.Lo + b.X.Length()/2, Y: b.Y.Lo + b.Y.Length()/2}
}

// Ring returns the box's corners, counter-clockwise from its lower left.
func (b Box) Ring() geom.Ring {
	return geom.Ring{{X: b.X.Lo, Y: b.Y.Lo}, {X: b.X.Hi, Y: b.Y.Lo}, {X: b.X.Hi, Y: b.Y.Hi}, {X: b.X.Lo, Y: b.Y.Hi}}
}
