package text

import (
	"strings"

	"github.com/go-text/typesetting/segmenter"

	"firstdrop/measure"
)

// Width returns how wide a line comes out in letters of a size, rounded up to
// whole nanometres.
func Width(line string, size measure.Length, bold bool) measure.Length {
	w := Shape(line, bold).Width
	return -(-size).Scaled(int64(w), Em)
}

// Fitted returns the line cut off so that it is no wider than room, with an
// ellipsis where it was cut, and never inside a letter with its marks; "" when not
// even that has room.
func Fitted(line string, size measure.Length, bold bool, room measure.Length) string {
	if Width(line, size, bold) <= room {
		return line
	}
	line = string([]rune(line)) // so that what is no letter takes the bytes that it shows
	ends := graphemes(line)
	lo, hi := 0, len(ends) // the first lo letters fit, or none does
	for lo < hi {
		mid := (lo + hi + 1) / 2
		if Width(line[:ends[mid-1]]+"…", size, bold) <= room {
			lo = mid
		} else {
			hi = mid - 1
		}
	}
	for ; lo > 0; lo-- { // joined letters may come out wider when cut
		if short := line[:ends[lo-1]] + "…"; Width(short, size, bold) <= room {
			return short
		}
	}
	return ""
}

// graphemes returns where the letters of a line end, in bytes.
func graphemes(line string) []int {
	var s segmenter.Segmenter
	var ends []int
	s.Init([]rune(line))
	at := 0
	for it := s.GraphemeIterator(); it.Next(); {
		at += len(string(it.Grapheme().Text))
		ends = append(ends, at)
	}
	return ends
}

// Wrapped returns the text broken into lines no wider than room, where the rules
// of its script allow (Unicode's UAX #14); what is too wide by itself is broken
// between letters, of which one stands on a line even where it has no room. The name
// of a corner, as A|B, stays together. An
// empty text has no lines.
func Wrapped(text string, size measure.Length, bold bool, room measure.Length) []string {
	w := wrapping{fits: func(line string) bool { return Width(trimmed(line), size, bold) <= room }}
	var s segmenter.Segmenter
	s.Init([]rune(text))
	corner := "" // what ends with the sign between the walls of a corner's name
	for it := s.LineIterator(); it.Next(); {
		l := it.Line()
		word := corner + string(l.Text)
		if corner = ""; strings.HasSuffix(word, "|") && !l.IsMandatoryBreak {
			corner = word
			continue
		}
		w.add(word)
		if l.IsMandatoryBreak {
			w.end()
		}
	}
	w.add(corner)
	w.end()
	return w.lines
}

type wrapping struct {
	fits  func(line string) bool
	line  string
	lines []string
}

// add sets a word on the line, or on the next.
func (w *wrapping) add(word string) {
	if w.fits(w.line + word) {
		w.line += word
		return
	}
	w.end()
	for !w.fits(word) {
		ends := graphemes(word)
		n := 1
		for n < len(ends)-1 && w.fits(word[:ends[n]]) {
			n++
		}
		if n >= len(ends) {
			break
		}
		w.lines = append(w.lines, word[:ends[n-1]])
		word = word[ends[n-1]:]
	}
	w.line = word
}

// end closes the line. Blanks at its end are dropped, and a line of nothing else.
func (w *wrapping) end() {
	if line := trimmed(w.line); line != "" {
		w.lines = append(w.lines, line)
	}
	w.line = ""
}

func trimmed(line string) string {
	for len(line) > 0 && (line[len(line)-1] == ' ' || line[len(line)-1] == '\n') {
		line = line[:len(line)-1]
	}
	return line
}
