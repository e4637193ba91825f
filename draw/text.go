package draw

import (
	"strings"

	"firstdrop/geom"
	"firstdrop/measure"
)

// Anchor says which point of a text stands at its place.
type Anchor int

// The anchors, all on the base line.
const (
	Start Anchor = iota
	Middle
	End
)

// Turn says which way a text runs.
type Turn int

// The turns. Upwards is read with the head tilted to the left, as on the left
// edge of a drawing.
const (
	Level Turn = iota
	Upwards
)

// Text is one line of text in the reader's own plain typeface.
type Text struct {
	At     geom.Point
	Text   string
	Size   measure.Length // of the letters: from line to line
	Anchor Anchor
	Turn   Turn
	Bold   bool
	Ink    Ink
}

func (Text) item() {}

// What letters reach above and below the base line, in thousandths of the size:
// capitals with accents, and descenders.
const (
	ascent  = 760
	descent = 240
)

// Box returns the room that the text may take in any usual typeface: see
// [TextWidth].
func (t Text) Box() Box {
	w := TextWidth(t.Text, t.Size, t.Bold)
	up, down := t.Size*ascent/1000, t.Size*descent/1000
	before := measure.Length(0)
	switch t.Anchor {
	case Middle:
		before = w / 2
	case End:
		before = w
	}
	along := geom.Interval{Lo: -before, Hi: w - before}
	if t.Turn == Upwards {
		return Box{geom.Interval{Lo: t.At.X - up, Hi: t.At.X + down}, along.Shifted(t.At.Y)}
	}
	return Box{along.Shifted(t.At.X), geom.Interval{Lo: t.At.Y - down, Hi: t.At.Y + up}}
}

// TextWidth returns how wide a text may come out at most, whatever plain typeface
// it is shown in: see advance. The writers that have their own letters hold it for
// certain (a test goes through every letter).
func TextWidth(text string, size measure.Length, bold bool) measure.Length {
	sum := int64(0)
	for _, r := range text {
		sum += advance(r, bold)
	}
	return size.Scaled(sum, 1000)
}

// Fitted returns the text cut off so that it is no wider than room, with an
// ellipsis where it was cut; "" when not even that has room.
func Fitted(text string, size measure.Length, bold bool, room measure.Length) string {
	if TextWidth(text, size, bold) <= room {
		return text
	}
	runes := []rune(text)
	for n := len(runes) - 1; n > 0; n-- {
		if short := string(runes[:n]) + "…"; TextWidth(short, size, bold) <= room {
			return short
		}
	}
	return ""
}

// Within returns the text in letters small enough to be no wider than room, none
// smaller than least; what is too wide even then is cut off as by [Fitted].
func (t Text) Within(room, least measure.Length) Text {
	if w := TextWidth(t.Text, t.Size, t.Bold); w > room {
		t.Size = min(t.Size, max(least, t.Size.Scaled(int64(max(room, 0)), int64(w))-measure.Millimetre/100))
	}
	t.Text = Fitted(t.Text, t.Size, t.Bold, room)
	return t
}

// Wrapped returns the text broken into lines no wider than room, at spaces; a
// word that is wider by itself is broken. An empty text has no lines.
func Wrapped(text string, size measure.Length, bold bool, room measure.Length) []string {
	var lines []string
	line, gap := "", -1 // gap: where line may be broken, behind its last space
	for _, r := range text {
		if r == ' ' && line == "" {
			continue
		}
		if line += string(r); r == ' ' {
			gap = len(line)
		}
		if r == ' ' || TextWidth(line, size, bold) <= room || len(line) == len(string(r)) {
			continue
		}
		cut := gap
		if gap <= 0 {
			cut = len(line) - len(string(r))
		}
		lines = append(lines, trimmed(line[:cut]))
		line, gap = line[cut:], -1
	}
	if line = trimmed(line); line != "" {
		lines = append(lines, line)
	}
	return lines
}

// trimmed returns the line without the spaces at its end.
func trimmed(line string) string {
	for len(line) > 0 && line[len(line)-1] == ' ' {
		line = line[:len(line)-1]
	}
	return line
}

// Clean returns a text as it may be drawn: one line, without marks that would
// reverse the direction of what follows, and with the replacement character for
// what is no letter.
func Clean(text string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r >= 0x202a && r <= 0x202e, r >= 0x2066 && r <= 0x2069:
			return -1
		case r == '\n' || r == '\r' || r == '\t' || r == 0x2028 || r == 0x2029 || r == 0x85:
			return ' '
		case r < ' ' || r >= 0x7f && r < 0xa0 || r&0xfffe == 0xfffe:
			return '\ufffd'
		}
		return r
	}, text)
}
