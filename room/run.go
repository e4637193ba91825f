package room

import (
	"firstdrop/geom"
	"firstdrop/measure"
)

// Run is a stretch of consecutive walls to be papered with one paper, left to
// right as one faces them from inside the room.
type Run struct {
	Name  string
	Walls []Wall
	// Corners[i] stands at the right end of Walls[i]. A closed run has as many
	// corners as walls, and the last leads back to Walls[0]; an open run has
	// one fewer.
	Corners []Corner
	Closed  bool
	// Ends are the corners at the two ends of an open run, where papering
	// stops: only their leans count. A closed run has none.
	Ends struct{ Left, Right Corner }
}

// Face returns the polygon of wall i that is really to be papered: its outline
// with both upright edges leaning as the corners do, less its openings. Each
// edge leans in proportion to the height above the corner's foot, rounded to
// the nearest nanometre; foot and head of a corner are the lowest and highest
// point that either of its two walls has there.
func (r *Run) Face(i int) geom.Polygon { panic("not yet") }

// LeanAt returns the leans of wall i's left and right edge: the leaning, in
// the plane of that wall, of the corner or end that stands there.
func (r *Run) LeanAt(i int) (left, right measure.Length) { panic("not yet") }

// Mirrored returns the run as a mirror shows it: walls in reverse order, every
// x counted from the other end, leans and sides exchanged and reversed.
// Mirroring twice gives the same run again.
func (r *Run) Mirrored() *Run { panic("not yet") }
