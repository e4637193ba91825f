package draw

import (
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

// TextWidth returns how wide a text may come out at most, since the typeface is
// the reader's: the advance widths of DejaVu Sans, among the widest plain faces
// in use (measured from version 2.37), or of Liberation Sans where that is wider.
// Letters that are not in the tables count as a full square for East Asian
// scripts and signs, as a wide capital otherwise.
func TextWidth(text string, size measure.Length, bold bool) measure.Length {
	sum := int64(0)
	for _, r := range text {
		sum += advance(r, bold)
	}
	return size.Scaled(sum, 1000)
}

// advance returns the advance of a letter in thousandths of the size.
func advance(r rune, bold bool) int64 {
	switch {
	case r >= ' ' && r <= '~' && bold:
		return int64(boldAdvances[r-' '])
	case r >= ' ' && r <= '~':
		return int64(plainAdvances[r-' '])
	case r < 0x250 && bold:
		return 820
	case r < 0x250:
		return 760
	case r >= 0x300 && r < 0x370: // combining marks
		return 0
	case r >= 0x1100 && r < 0x1200, r >= 0x2000:
		return 1100
	case bold:
		return 1000
	}
	return 920
}

var plainAdvances = [...]uint16{
	318, 401, 460, 838, 637, 951, 780, 275, 391, 391, 500, 838, 318, 361, 318, 337, // space to /
	637, 637, 637, 637, 637, 637, 637, 637, 637, 637, 337, 337, 838, 838, 838, 557, // 0 to ?
	1016, 685, 687, 723, 771, 667, 611, 778, 752, 295, 500, 667, 558, 863, 749, 788, // @ to O
	667, 788, 723, 667, 611, 732, 685, 989, 686, 667, 686, 391, 337, 391, 838, 557, // P to _
	500, 613, 635, 550, 635, 616, 353, 635, 634, 278, 278, 580, 278, 975, 634, 612, // ` to o
	635, 635, 412, 521, 393, 634, 592, 818, 592, 592, 525, 637, 337, 637, 838, // p to ~
}

var boldAdvances = [...]uint16{
	349, 457, 521, 838, 696, 1002, 873, 307, 458, 458, 523, 838, 380, 416, 380, 366,
	696, 696, 696, 696, 696, 696, 696, 696, 696, 696, 400, 400, 838, 838, 838, 611,
	1016, 774, 763, 734, 831, 684, 684, 821, 837, 373, 556, 775, 638, 996, 837, 851,
	733, 851, 771, 721, 683, 813, 774, 1104, 771, 725, 726, 458, 366, 458, 838, 556,
	500, 675, 716, 593, 716, 679, 436, 716, 712, 343, 343, 666, 343, 1042, 712, 688,
	716, 716, 494, 596, 479, 712, 652, 924, 652, 652, 583, 712, 366, 712, 838,
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
