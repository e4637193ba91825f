package plan

import "firstdrop/measure"

// choiceAt is a choice that is still to be looked at more closely.
type choiceAt struct {
	bound    int64          // what it weighs at the least
	rolls    int64          // the rolls it needs at the least, and the weight of its pieces
	x        measure.Length // of a kill seam on a wall
	local    int64          // what its drops and seams weigh: at the least, before it is weighed
	sign     sign           // signed
	order    int32
	start    int32
	known    int32 // how many signatures were known when it was weighed
	kill     int16
	new      [mostNew]int16 // corners + 1; 0: none
	sketched bool
	signed   bool
}

// In how many corners at once new drops are kept, and tried where none are fixed.
const (
	mostNew  = MostNewDrops
	triedNew = 2
)

// choices are to be looked at, the least bound first.
type choices = heap[choiceAt, *choiceAt]

// isBefore reports whether a choice is to be looked at before another.
func (c *choiceAt) isBefore(other *choiceAt) bool {
	if c.bound != other.bound {
		return c.bound < other.bound
	}
	return c.order < other.order
}
