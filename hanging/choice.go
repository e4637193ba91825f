package hanging

import "firstdrop/measure"

// Side is a side as one faces the wall.
type Side int

// The two sides.
const (
	Left Side = iota
	Right
)

// Opposite returns the other side.
func (s Side) Opposite() Side { return 1 - s }

// String returns "left" or "right".
func (s Side) String() string { return [...]string{"left", "right"}[s] }

// MarshalText writes "left" or "right".
func (s Side) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// Choice is everything about a layout that is decided rather than found.
type Choice struct {
	Start Start
	Kill  Kill
	// NewDrop lists the inside corners (by the index of the wall on the
	// corner's left) at which the remainder is not carried on: the next wall
	// begins with a new drop.
	NewDrop []int
	// Design is the design phase that drop 0 shows at the datum: the height
	// of the design, in [0, repeat).
	Design measure.Length
	// Set says how the sheets of each wall are set; nil: plumb on all of them.
	// A [Hanger] lays out with the settings that it was made for.
	Set []Setting
}

// Start says where the left edge of drop 0 stands: at X from the left end of
// the wall. X may be negative: the drop is set plumb on this wall and what lies
// to the left of it turns the corner there, or is trimmed at an end of the run.
type Start struct {
	Wall int
	X    measure.Length
}

// KillKind says where the run is cut open.
type KillKind int

// The kinds of kill seam.
const (
	NoKill   KillKind = iota // an open run: there is none
	AtCorner                 // in the corner at the right end of Wall
	OnWall                   // at X on Wall: over an opening, in a break
)

// Kill says where in a closed run the design cannot meet, and so where the
// hanging from the left and from the right come together.
type Kill struct {
	Kind KillKind
	Wall int
	X    measure.Length // OnWall: from the wall's left end
	// Lap: AtCorner, the side whose drop turns the corner by the overlap;
	// the other side's is trimmed in the corner over it.
	Lap Side
}
