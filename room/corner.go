package room

import "firstdrop/measure"

// CornerKind tells a fold towards the hanger from a fold away.
type CornerKind int

// The kinds of corner.
const (
	Inside  CornerKind = iota // concave: an ordinary corner of a room
	Outside                   // convex: the edge of a chimney breast
)

// Corner is the fold between a wall and the next wall to its right.
//
// LeanLeft and LeanRight tell how far the corner's head stands from plumb over
// its foot, measured in the plane of the wall on its left and of the wall on
// its right: positive when the head stands to the right of the foot as one
// faces that wall. A positive LeanLeft makes the left wall wider at the head;
// a positive LeanRight makes the right wall narrower there. The two differ in
// an ordinary crooked house: a corner that leans towards the room has a
// negative LeanLeft and a positive LeanRight.
type Corner struct {
	Kind CornerKind
	// Angle between the two wall faces, measured through the room: 90° for an
	// ordinary inside corner, 270° for an outside one. 0 when it was not
	// measured.
	Angle     measure.Angle
	LeanLeft  measure.Length
	LeanRight measure.Length
	Sight     Sight
}

// The angles taken for a corner whose angle was not measured.
const (
	squareInside  = 90 * measure.Degree
	squareOutside = 270 * measure.Degree
)

// InteriorAngle returns the corner's angle through the room: as measured, or
// square (90° inside, 270° outside) where it was not.
func (c Corner) InteriorAngle() measure.Angle {
	switch {
	case c.Angle != 0:
		return c.Angle
	case c.Kind == Outside:
		return squareOutside
	}
	return squareInside
}
