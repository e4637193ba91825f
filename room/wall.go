package room

import (
	"firstdrop/geom"
	"firstdrop/measure"
)

// Sight says how much a place is looked at.
type Sight int

// The sights. Plain is the zero value.
const (
	Plain  Sight = iota
	Focal        // what one sees first, or looks at longest
	Hidden       // behind an open door, behind furniture that stays
)

// Wall is one plane surface to be papered.
type Wall struct {
	Name  string
	Width measure.Length // along the datum, between the feet of its two corners; > 0
	// Outline is the wall as if its corners were plumb: x from 0 to Width, y
	// from the datum. How far the corners really lean is the corners' affair.
	Outline  geom.Ring
	Openings []Opening
	Fittings []Fitting
	Sight    Sight
}

// OpeningKind is what an opening is.
type OpeningKind int

// The kinds of opening. Anything that keeps paper off the wall is one.
const (
	Door OpeningKind = iota
	Window
	Arch
	Fireplace
	Furniture // fitted cupboards, shelves, baths: whatever stays
	Panel     // a stretch of wall with another finish
)

// Opening is a hole in a wall.
type Opening struct {
	Name    string
	Kind    OpeningKind
	Outline geom.Ring // in the wall's coordinates
	// Depth of the return: how far reveals, soffit and sill go back from the
	// wall's face. 0 means nothing there is papered.
	Depth measure.Length
	Sides Sides // which of its returns are papered; ignored when Depth is 0
	Sight Sight
}

// Sides names the returns of an opening.
type Sides struct{ Left, Right, Head, Sill bool }

// FittingKind is what a fitting is.
type FittingKind int

// The kinds of fitting. They need a caution and a cut-out, and change no quantity.
const (
	Socket FittingKind = iota
	Switch
	Light
	Radiator
	Bracket
	Vent
)

// Fitting is a thing on a wall that is papered round or under.
type Fitting struct {
	Name string
	Kind FittingKind
	At   geom.Point // its middle
	Size geom.Point // its width (X) and height (Y)
}
