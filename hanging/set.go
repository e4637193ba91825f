package hanging

import (
	"firstdrop/measure"
	"firstdrop/message"
	"firstdrop/room"
)

// In a crooked room something must give, and whoever hangs decides wall by wall
// what: the sheets are plumb, or they are set to what the eye compares them with.
//
//	plumb      level rows; the ceiling and casings run off them
//	ceiling    rows along the ceiling; sheets, corners and casings run off plumb
//	casing     edges along a casing, however it leans; rows run off the level
//	neighbour  edges along those of the wall before, all down the corner: the
//	           design meets there, and what is wrong goes to ceiling and floor
//
// The height of the design is a second question: on the datum's level in the
// middle of the wall, so that both its corners miss by as little as can be; or as
// it comes round one of them, where it then meets.

// SetTo is what the sheets of a wall are set to.
type SetTo int

// What sheets can be set to. Plumb is the zero value.
const (
	ToPlumb SetTo = iota
	ToCeiling
	ToCasing
	ToLeft  // as the sheets of the wall on its left are, all down the corner
	ToRight // the same of the wall on its right
)

var setNames = [...]string{"plumb", "ceiling", "casing", "left", "right"}

// String returns "plumb", "ceiling", "casing", "left" or "right".
func (s SetTo) String() string { return setNames[s] }

// MarshalText writes what [SetTo.String] returns.
func (s SetTo) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// Meets says where the design of a wall gets its height from.
type Meets int

// Where a height comes from. AtDatum is the zero value.
const (
	AtDatum   Meets = iota // the datum, in the middle of the wall; of walls along one ceiling, in the middle of its heights
	MeetLeft               // the wall on its left: the design meets in that corner
	MeetRight              // the wall on its right
)

var meetNames = [...]string{"datum", "left", "right"}

// String returns "datum", "left" or "right".
func (m Meets) String() string { return meetNames[m] }

// MarshalText writes what [Meets.String] returns.
func (m Meets) MarshalText() ([]byte, error) { return []byte(m.String()), nil }

// Setting is how the sheets of one wall are set. The zero value is plumb, on the
// datum's level.
type Setting struct {
	To      SetTo
	Opening int   // ToCasing: index into the wall's Openings
	Side    Side  // ToCasing: which side of it
	Meets   Meets // of ToLeft and ToRight always that side
}

// Turns works out how each wall of a run is turned by its settings; nil where no
// wall is. It fails where a setting is none for its wall: a ceiling or a casing
// that is not one straight line, a neighbour that is not there, walls that wait
// for one another, or sheets that would be steeper than 1 in 50.
func Turns(run *room.Run, set []Setting) ([]room.Turn, error) {
	t := turner{run: run, set: set, turns: make([]room.Turn, len(run.Walls)), state: make([]int, len(run.Walls))}
	turned := false
	for i := range set {
		if err := t.wall(i); err != nil {
			return nil, err
		}
	}
	for i := range t.turns {
		turned = turned || t.turns[i] != room.Turn{}
	}
	if !turned {
		return nil, nil
	}
	return t.turns, nil
}

// turner works out turns, each wall after those that it waits for.
type turner struct {
	run   *room.Run
	set   []Setting
	turns []room.Turn
	state []int // of each wall: 0 not known, 1 waited for, 2 known
}

// wall works out the turn of wall i.
func (t *turner) wall(i int) error {
	switch t.state[i] {
	case 1:
		return message.New("set_in_turn", "wall {wall} is set to a neighbour that is set to it in turn", "wall", t.run.WallName(i))
	case 2:
		return nil
	}
	t.state[i] = 1
	if side, ok := t.set[i].waits(); ok {
		next, there := t.beside(i, side)
		if !there {
			return noNeighbour(t.run.WallName(i), side)
		}
		if err := t.wall(next); err != nil {
			return err
		}
	}
	if err := t.lean(i); err != nil {
		return err
	}
	if _, y := t.run.Walls[i].Outline.Bounds(); t.turns[i].Lean.Abs()*room.Steepest > y.Length() {
		return message.New("set_too_steep", "the sheets of wall {wall} would lean by {lean}, more than 1 in {steepest}", "wall", t.run.WallName(i), "lean", t.turns[i].Lean, "steepest", room.Steepest)
	}
	t.lift(i)
	t.state[i] = 2
	return nil
}

// noNeighbour says that there is no wall on that side of the one named.
func noNeighbour(wall string, side Side) error {
	if side == Right {
		return message.New("set_no_side_right", "wall {wall} has no wall on its right to be set to", "wall", wall)
	}
	return message.New("set_no_side_left", "wall {wall} has no wall on its left to be set to", "wall", wall)
}

// waits returns on which side the wall is that must be known first.
func (s *Setting) waits() (Side, bool) {
	switch {
	case s.To == ToLeft || s.To != ToRight && s.Meets == MeetLeft:
		return Left, true
	case s.To == ToRight || s.Meets == MeetRight:
		return Right, true
	}
	return Left, false
}

// beside returns the wall on one side of wall i; false where the run ends.
func (t *turner) beside(i int, side Side) (int, bool) {
	n := len(t.run.Walls)
	next := i - 1
	if side == Right {
		next = i + 1
	}
	if next < 0 || next >= n {
		if !t.run.Closed || n == 1 {
			return 0, false
		}
		next = (next + n) % n
	}
	return next, true
}

// lean finds the lean of wall i and, at right angles to it, the rise.
func (t *turner) lean(i int) error {
	w, s, turn := &t.run.Walls[i], &t.set[i], &t.turns[i]
	_, y := w.Outline.Bounds()
	height := int64(y.Length())
	switch s.To {
	case ToCeiling:
		left, right, ok := w.Ceiling()
		if !ok || !w.IsLevelCeiling(left, right) {
			return message.New("set_no_ceiling", "wall {wall} has no ceiling line that is straight and nearly level", "wall", t.run.WallName(i))
		}
		turn.Rise = right - left
		turn.Lean = -turn.Rise.Scaled(height, int64(w.Width))
		return nil
	case ToCasing:
		if s.Opening < 0 || s.Opening >= len(w.Openings) {
			return message.New("set_no_opening", "wall {wall} has no opening {n}", "wall", t.run.WallName(i), "n", s.Opening+1)
		}
		lean, tall, ok := w.Openings[s.Opening].Casing(s.Side == Right)
		if !ok {
			return message.New("set_no_casing", "the sides of opening {n} of wall {wall} are no nearly upright lines", "n", s.Opening+1, "wall", t.run.WallName(i))
		}
		turn.Lean = lean.Scaled(height, int64(tall))
	case ToLeft, ToRight:
		turn.Lean = t.along(i, s.To)
	}
	turn.Rise = -turn.Lean.Scaled(int64(w.Width), height)
	return nil
}

// along returns the lean with which sheets of wall i stand along those of a
// neighbour all down the corner between them.
func (t *turner) along(i int, to SetTo) measure.Length {
	side := Left
	if to == ToRight {
		side = Right
	}
	next, _ := t.beside(i, side)
	_, mine := t.run.Walls[i].Outline.Bounds()
	_, theirs := t.run.Walls[next].Outline.Bounds()
	left, right := t.run.Reach(i)
	reach, at := left, next
	if side == Right {
		reach, at = right, i
	}
	here, there := t.run.Corners[at].LeanRight, t.run.Corners[at].LeanLeft
	if side == Right {
		here, there = there, here
	}
	if reach.Length() <= 0 {
		return 0
	}
	off := there - t.turns[next].Lean.Scaled(int64(reach.Length()), int64(theirs.Length()))
	return (here - off).Scaled(int64(mine.Length()), int64(reach.Length()))
}

// lift finds the height of the design at the left end of wall i.
func (t *turner) lift(i int) {
	turn := &t.turns[i]
	side, waits := t.set[i].waits()
	next, _ := t.beside(i, side)
	switch {
	case waits && side == Left:
		turn.Lift = t.turns[next].Lift + t.turns[next].Rise
	case waits:
		turn.Lift = t.turns[next].Lift - turn.Rise
	case t.set[i].To == ToCeiling:
		left, _, _ := t.run.Walls[i].Ceiling()
		turn.Lift = left - t.middle(i)
	default:
		turn.Lift = -turn.Rise / 2
	}
}

// middle returns the height in the middle of a ceiling that goes on, corner for
// corner, over walls that are all set to it.
func (t *turner) middle(i int) measure.Length {
	left, right, _ := t.run.Walls[i].Ceiling()
	lo, hi := min(left, right), max(left, right)
	for _, side := range [2]Side{Left, Right} {
		at, end := i, left
		if side == Right {
			end = right
		}
		for range len(t.run.Walls) - 1 {
			next, ok := t.beside(at, side)
			if !ok || t.set[next].To != ToCeiling || t.set[next].Meets != AtDatum {
				break
			}
			l, r, ok := t.run.Walls[next].Ceiling()
			if side == Left {
				l, r = r, l
			}
			if !ok || l != end {
				break
			}
			lo, hi, at, end = min(lo, r), max(hi, r), next, r
		}
	}
	return lo + (hi-lo)/2
}
