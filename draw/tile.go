package draw

import (
	"firstdrop/geom"
	"firstdrop/measure"
)

// Tile is a picture repeated at true size, seen through a polygon with holes:
// paper on a wall. Holes are cut as an [Area]'s are.
type Tile struct {
	Shape   geom.Polygon
	Picture *Picture // nothing is drawn without one
	// At is where the lower left corner of one of the repeats stands; where it
	// stands upside down, that corner of the picture as seen.
	At            geom.Point
	Width, Height measure.Length // of one repeat; nothing is drawn unless > 0
	UpsideDown    bool
	Fade          int // percent of what lies beneath that shows through, 0 to 100
}

func (Tile) item() {}

// Box returns the box of the outline.
func (t Tile) Box() Box { return Area{Shape: t.Shape}.Box() }

// IsNone reports whether nothing is drawn.
func (t Tile) IsNone() bool {
	return t.Picture == nil || t.Width <= 0 || t.Height <= 0 || t.Box().IsEmpty()
}

// MostRepeats is how many repeats [Tile.Repeats] returns at most: a polygon that
// would take more shows them too small to be seen.
const MostRepeats = 20_000

// Repeats returns the boxes of all repeats that the polygon's box shows, row by row
// from the lower left. It is nil, false where there are more than [MostRepeats].
func (t Tile) Repeats() (boxes []Box, ok bool) {
	if t.IsNone() {
		return nil, true
	}
	b := t.Box()
	x := b.X.Lo - (b.X.Lo - t.At.X).Mod(t.Width)
	y := b.Y.Lo - (b.Y.Lo - t.At.Y).Mod(t.Height)
	across, up := int64((b.X.Hi-x-1)/t.Width)+1, int64((b.Y.Hi-y-1)/t.Height)+1
	if across > MostRepeats || up > MostRepeats || across*up > MostRepeats {
		return nil, false
	}
	for row := range up {
		for col := range across {
			boxes = append(boxes, BoxAt(x+measure.Length(col)*t.Width, y+measure.Length(row)*t.Height, t.Width, t.Height))
		}
	}
	return boxes, true
}
