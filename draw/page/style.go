package page

import (
	"firstdrop/draw"
	"firstdrop/draw/text"
	"firstdrop/measure"
)

const mm = measure.Millimetre

// The inks. They differ in lightness as well, for those who print in black.
var (
	Graphite = draw.RGB(0x2f3036) // words and what is built
	Quiet    = draw.RGB(0x5f5b54) // what one looks up
	Faint    = draw.RGB(0xa49c8f) // lines that guide the eye
	Chalk    = draw.RGB(0x1f5590) // plumb lines
	Oxide    = draw.RGB(0xa32a17) // cautions
	Linen    = draw.RGB(0xf3eee2) // grounds
	White    = draw.RGB(0xffffff)
)

// Type is how words are set.
type Type struct {
	Size   measure.Length
	Bold   bool
	Ink    draw.Ink
	Anchor draw.Anchor // where they stand in their room
}

// The types. Body is read at arm's length, Large from two metres.
var (
	Body   = Type{Size: 37 * mm / 10, Ink: Graphite}
	Strong = Type{Size: 37 * mm / 10, Bold: true, Ink: Graphite}
	Small  = Type{Size: 29 * mm / 10, Ink: Quiet}
	Sub    = Type{Size: 5 * mm, Bold: true, Ink: Graphite}
	Title  = Type{Size: 8 * mm, Bold: true, Ink: Graphite}
	Large  = Type{Size: 9 * mm, Bold: true, Ink: Graphite}
)

// At returns the type at another place in its room.
func (t Type) At(a draw.Anchor) Type {
	t.Anchor = a
	return t
}

// Sized returns the type in letters of another size.
func (t Type) Sized(size measure.Length) Type {
	t.Size = size
	return t
}

// Inked returns the type in another ink.
func (t Type) Inked(i draw.Ink) Type {
	t.Ink = i
	return t
}

// within returns the type in letters small enough for words to have room in a width,
// none smaller than least.
func (t Type) within(width measure.Length, words string, least measure.Length) Type {
	if w := text.Width(draw.Clean(words), t.Size, t.Bold); w > width {
		t.Size = min(t.Size, max(least, t.Size.Scaled(int64(max(width, 0)), int64(w))-mm/100))
	}
	return t
}

// Line returns the height of one line: enough for letters of every script that the
// fonts hold (see text.Ascent, text.Descent).
func (t Type) Line() measure.Length { return t.Size * 14 / 10 }

// base is how far the base line stands below the head of a line.
func (t Type) base() measure.Length { return t.Size * 108 / 100 }

// The pens.
var (
	Rule  = draw.Pen{Ink: Graphite, Width: 5 * mm / 10}
	Thin  = draw.Pen{Ink: Faint, Width: 2 * mm / 10}
	Frame = draw.Pen{Ink: Quiet, Width: 3 * mm / 10}
)
