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
	Second   string         // a second text, on the other side of the line; may be empty
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
	for i, words := range []string{d.Text, d.Second} {
		if words != "" {
			items = append(items, d.words(words, d.Below != (i == 1)))
		}
	}
	return items
}

// words returns a text above the line, or left of it; otherwise below or right.
func (d Dimension) words(words string, below bool) Text {
	text := Text{Text: words, Size: d.Size, Anchor: Middle, Ink: d.Pen.Ink}
	text.At = BoxOf([]geom.Point{d.From, d.To}).Middle()
	gap := d.Size / gapPart
	beyond := gap + d.Size*ascent/1000 // for a text on the far side of the line
	switch upright := d.From.X == d.To.X; {
	case upright && below:
		text.Turn, text.At.X = Upwards, text.At.X+beyond
	case upright:
		text.Turn, text.At.X = Upwards, text.At.X-gap-d.Size*descent/1000
	case below:
		text.At.Y -= beyond
	default:
		text.At.Y += gap + d.Size*descent/1000
	}
	return text
}

// InBoth returns the dimension with a length in millimetres on one side of the line
// and in feet and inches on the other; first says which comes first.
func (d Dimension) InBoth(l measure.Length, first measure.System) Dimension {
	d.Text, d.Second = l.Format(measure.Metric), l.Format(measure.Imperial)
	if first == measure.Imperial {
		d.Text, d.Second = d.Second, d.Text
	}
	return d
}
