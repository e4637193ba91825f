package geom

import "firstdrop/measure"

// Point is a place on a wall: X from the wall's left end to the right as one
// faces it, Y upwards from the datum. Either may be negative.
type Point struct{ X, Y measure.Length }
