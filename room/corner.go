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
	Kind      CornerKind
	Angle     measure.Angle // between the two wall faces, measured through the room: 90° inside, 270° outside
	LeanLeft  measure.Length
	LeanRight measure.Length
	Sight     Sight
}
