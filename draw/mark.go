package draw

import (
	"math"

	"firstdrop/geom"
	"firstdrop/measure"
)

// Mark is a number in a ring, which a note elsewhere explains.
type Mark struct {
	At    geom.Point // its middle
	Text  string     // a number or a letter or two
	Size  measure.Length
	Ink   Ink // of the ring and the text
	Fill  Ink // inside the ring
	Width measure.Length
}

func (Mark) item() {}

// Box returns the box of the ring.
func (m Mark) Box() Box {
	r := m.radius()
	return BoxAt(m.At.X-r, m.At.Y-r, 2*r, 2*r)
}

// radius lets the text stand inside the ring with some air.
func (m Mark) radius() measure.Length {
	w := TextWidth(m.Text, m.Size, true)
	return max(m.Size*7/10, w*6/10)
}

// Parts returns ring and text.
func (m Mark) Parts() []Item {
	return []Item{
		Area{Shape: geom.Polygon{Outline: Disc(m.At, m.radius())}, Fill: m.Fill, Pen: Pen{Ink: m.Ink, Width: m.Width}},
		Text{At: geom.Point{X: m.At.X, Y: m.At.Y - m.Size*36/100}, Text: m.Text, Size: m.Size, Anchor: Middle, Bold: true, Ink: m.Ink},
	}
}

// discCorners keeps a disc of 10 mm across within 0.01 mm of round.
const discCorners = 72

// Disc returns a circle as a ring of many corners, rounded to whole nanometres.
func Disc(middle geom.Point, radius measure.Length) geom.Ring {
	ring := make(geom.Ring, discCorners)
	for i := range ring {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / discCorners)
		ring[i] = geom.Point{
			X: middle.X + measure.Length(math.Round(cos*float64(radius))),
			Y: middle.Y + measure.Length(math.Round(sin*float64(radius))),
		}
	}
	return ring
}
