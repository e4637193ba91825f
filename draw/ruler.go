package draw

import (
	"strconv"

	"firstdrop/geom"
	"firstdrop/measure"
)

// Ruler is a check ruler: 100 mm with its scale above the line and 4 in with its
// scale below. Who measures it on the print sees whether the printer kept the
// scale.
type Ruler struct {
	At   geom.Point // the left end of the line
	Size measure.Length
	Ink  Ink
	Pen  Pen
	Text string // what to do with it; stands to the right
}

func (Ruler) item() {}

// What the ruler shows.
const (
	rulerMetric   = 100 * measure.Millimetre
	rulerImperial = 4 * measure.Inch
)

// Box returns the box of all parts.
func (r Ruler) Box() Box { return Group{Items: r.Parts()}.Box() }

// Parts returns the line, its ticks and its figures.
func (r Ruler) Parts() []Item {
	items := []Item{Segment(r.At, geom.Point{X: r.At.X + rulerImperial, Y: r.At.Y}, r.Pen)}
	for i := range measure.Length(21) {
		tall := r.Size * [...]measure.Length{6, 3}[i%2] / 10
		items = append(items, r.tick(i*5*measure.Millimetre, tall))
	}
	for i := range measure.Length(17) {
		tall := r.Size * [...]measure.Length{6, 3, 4, 3}[i%4] / 10
		items = append(items, r.tick(i*measure.Inch/4, -tall))
	}
	for i := range measure.Length(6) {
		items = append(items, r.figure(i*20*measure.Millimetre, r.Size*8/10, strconv.Itoa(int(i)*20), i == 5, " mm"))
	}
	for i := range measure.Length(5) {
		items = append(items, r.figure(i*measure.Inch, -r.Size*14/10, strconv.Itoa(int(i)), i == 4, " in"))
	}
	words := Text{At: geom.Point{X: r.At.X + rulerImperial + 3*r.Size, Y: r.At.Y - r.Size*36/100}, Text: r.Text, Size: r.Size, Ink: r.Ink}
	return append(items, words)
}

func (r Ruler) tick(x, tall measure.Length) Item {
	foot := geom.Point{X: r.At.X + x, Y: r.At.Y}
	return Segment(foot, geom.Point{X: foot.X, Y: foot.Y + tall}, r.Pen)
}

// figure returns a figure centred over its tick; the last bears the unit.
func (r Ruler) figure(x, y measure.Length, text string, last bool, unit string) Item {
	at := geom.Point{X: r.At.X + x, Y: r.At.Y + y}
	t := Text{At: at, Text: text, Size: r.Size * 9 / 10, Anchor: Middle, Ink: r.Ink}
	if !last {
		return t
	}
	// The figure itself stays centred; the unit hangs on its right.
	t.At.X -= TextWidth(text, t.Size, false) / 2
	t.Anchor, t.Text = Start, text+unit
	return t
}
