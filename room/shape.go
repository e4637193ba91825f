package room

import (
	"firstdrop/geom"
	"firstdrop/measure"
)

// Rectangle returns the outline of an upright wall that stands on the datum,
// corners counter-clockwise from the left foot.
func Rectangle(width, height measure.Length) geom.Ring { return Rect(0, 0, width, height) }

// Rect returns an upright rectangle of width w and height h whose left foot
// stands at x, y; corners counter-clockwise from there. A w or h of 0 or less
// gives a ring that no check lets pass.
func Rect(x, y, w, h measure.Length) geom.Ring {
	return geom.Ring{{X: x, Y: y}, {X: x + w, Y: y}, {X: x + w, Y: y + h}, {X: x, Y: y + h}}
}
