package draw

import (
	"firstdrop/geom"
	"firstdrop/measure"
)

// Dimension is a dimension line: level or upright, a slanting tick at either
// end, its text on it. A level one is given from left to right, an upright one
// from its foot to its head.
type Dimension struct {
	From, To geom.Point
	Text     string
	Size     measure.Length // of the text
	Pen      Pen            // of line and ticks
	Below    bool           // the text stands below the line, or right of it, not above or left of it
}

func (Dimension) item() {}

// Tick and text in proportion to the text's size.
const (
	tickPart = 4 // the tick reaches a quarter of the size to each side
	gapPart  = 5
)

// Box returns the box of line, ticks and text.
func (d Dimension) Box() Box { return Group{Items: d.Parts()}.Box() }

// Parts returns the line, its two ticks, and the text in the pen's ink.
func (d Dimension) Parts() []Item {
	t := d.Size / tickPart
	items := []Item{Segment(d.From, d.To, d.Pen)}
	for _, p := range []geom.Point{d.From, d.To} {
		items = append(items, Segment(geom.Point{X: p.X - t, Y: p.Y - t}, geom.Point{X: p.X + t, Y: p.Y + t}, d.Pen))
	}
	if d.Text == "" {
		return items
	}
	text := Text{Text: d.Text, Size: d.Size, Anchor: Middle, Ink: d.Pen.Ink}
	text.At = BoxOf([]geom.Point{d.From, d.To}).Middle()
	gap := d.Size / gapPart
	beyond := gap + d.Size*ascent/1000 // for a text on the far side of the line
	switch upright := d.From.X == d.To.X; {
	case upright && d.Below:
		text.Turn, text.At.X = Upwards, text.At.X+beyond
	case upright:
		text.Turn, text.At.X = Upwards, text.At.X-gap-d.Size*descent/1000
	case d.Below:
		text.At.Y -= beyond
	default:
		text.At.Y += gap + d.Size*descent/1000
	}
	return append(items, text)
}
