package room

import "firstdrop/measure"

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
	// Beyond names the walls with which the room goes on beyond the ends of an open
	// run; "" where it does not.
	Beyond struct{ Left, Right string }
}

// Girth returns the sum of the walls' widths: the way round a closed run.
func (r *Run) Girth() measure.Length {
	var sum measure.Length
	for i := range r.Walls {
		sum += r.Walls[i].Width
	}
	return sum
}

// cornersOf returns the corners or ends at wall i's left and right, and the
// walls beyond them, −1 where the run ends. A run that lacks corners has plumb
// ones in their place.
func (r *Run) cornersOf(i int) (left, right joint) {
	n := len(r.Walls)
	left = joint{&r.Ends.Left, i - 1}
	right = joint{&r.Ends.Right, i + 1}
	if r.Closed {
		left.wall, right.wall = (i+n-1)%n, (i+1)%n
	}
	if i > 0 || r.Closed {
		left.corner = r.cornerAt(left.wall)
	}
	if i+1 < n || r.Closed {
		right.corner = r.cornerAt(i)
	} else {
		right.wall = -1
	}
	return left, right
}

// joint is what a wall meets at one of its ends.
type joint struct {
	corner *Corner
	wall   int // beyond the corner; −1 where the run ends
}

func (r *Run) cornerAt(i int) *Corner {
	if i < len(r.Corners) {
		return &r.Corners[i]
	}
	return &plumb
}

// plumb is the corner that a run has where it lacks one.
var plumb Corner
