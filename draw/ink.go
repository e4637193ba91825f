package draw

import (
	"fmt"

	"firstdrop/measure"
)

// Ink is an opaque colour. The zero value is none: nothing is drawn.
type Ink uint32

const inked Ink = 1 << 24

// RGB returns the ink of that colour, 0xRRGGBB.
func RGB(rgb uint32) Ink { return inked | Ink(rgb&0xffffff) }

// IsNone reports whether there is no ink.
func (i Ink) IsNone() bool { return i&inked == 0 }

// RGB returns the three parts of the colour; all 0 for no ink.
func (i Ink) RGB() (r, g, b uint8) { return uint8(i >> 16), uint8(i >> 8), uint8(i) }

// String returns "#rrggbb", or "none".
func (i Ink) String() string {
	if i.IsNone() {
		return "none"
	}
	return fmt.Sprintf("#%06x", uint32(i&^inked))
}

// Luma returns how light the ink looks in black and white, from 0 (black) to
// 255, by the weights of ITU-R BT.601 (299, 587 and 114 thousandths).
func (i Ink) Luma() int {
	r, g, b := i.RGB()
	return (299*int(r) + 587*int(g) + 114*int(b)) / 1000
}

// Pen is how a line is drawn. The zero value draws nothing.
type Pen struct {
	Ink   Ink
	Width measure.Length
	// Dash is the lengths of strokes and gaps in turn; none is a whole line.
	Dash []measure.Length
}

// IsNone reports whether the pen draws nothing.
func (p Pen) IsNone() bool { return p.Ink.IsNone() || p.Width <= 0 }
