package draw

import "firstdrop/geom"

// Item is something drawn.
type Item interface {
	// Box returns the smallest box that holds the item. The thickness of pens
	// is left out, and text is measured by [TextWidth].
	Box() Box
	item()
}

// Compound is an item made of simpler ones, which a writer may draw instead.
type Compound interface {
	Item
	Parts() []Item
}

// Area is a polygon with holes, filled by the even-odd rule, edged by a pen, or
// both.
type Area struct {
	Shape geom.Polygon
	Fill  Ink
	Pen   Pen
}

// Line is a line through two or more points. Its ends are square with the
// points, its corners round.
type Line struct {
	Points []geom.Point
	Pen    Pen
}

// Group is a few items that belong together. Its title says what they are.
type Group struct {
	ID    string // a short word, unique in its scene; may be empty
	Title string // may be empty
	Desc  string // what it shows, in sentences, for those who cannot see it; may be empty
	Role  Role   // what it is when the page is read aloud
	Items []Item
}

// Box returns the box of the outline.
func (a Area) Box() Box {
	x, y := a.Shape.Bounds()
	return Box{x, y}
}

// Box returns the box of the points.
func (l Line) Box() Box { return BoxOf(l.Points) }

// Box returns the box of all items.
func (g Group) Box() Box {
	b := NoBox
	for _, it := range g.Items {
		b = b.Union(it.Box())
	}
	return b
}

func (Area) item()  {}
func (Line) item()  {}
func (Group) item() {}

// Segment returns the straight line from a to b.
func Segment(a, b geom.Point, pen Pen) Line { return Line{[]geom.Point{a, b}, pen} }
