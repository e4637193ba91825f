package main

import (
	"io"
	"os"
	"strings"
	"unicode/utf8"

	"golang.org/x/term"

	"firstdrop/words"
)

// The widths that text is set to: what every terminal has, and beyond what
// lines are hard to read.
const (
	plainWidth = 80
	leastWidth = 40
	mostWidth  = 110
)

// screen is where text goes: a terminal, or anything else, which is then taken
// to be 80 columns wide and without colours.
type screen struct {
	io.Writer
	width    int
	height   int
	coloured bool
	terminal bool // somebody may be looking
}

func newScreen(w io.Writer) *screen {
	s := &screen{Writer: w, width: plainWidth, height: 24}
	f, ok := w.(*os.File)
	if !ok || !term.IsTerminal(int(f.Fd())) {
		return s
	}
	if width, height, err := term.GetSize(int(f.Fd())); err == nil && width > 0 {
		s.width, s.height = min(max(width, leastWidth), mostWidth), max(height, 24)
	}
	s.terminal = true
	s.coloured = os.Getenv("NO_COLOR") == "" && os.Getenv("TERM") != "dumb"
	return s
}

// ink is the number of an attribute or colour of terminals (ECMA-48, SGR).
type ink string

const (
	plain  ink = ""
	bold   ink = "1"
	red    ink = "31"
	yellow ink = "33"
)

// in returns the text in an ink where there are colours.
func (s *screen) in(i ink, text string) string {
	if !s.coloured || i == plain || text == "" {
		return text
	}
	return "\x1b[" + string(i) + "m" + text + "\x1b[0m"
}

// wrap breaks a text into lines of at most width characters, at spaces that may break. A word
// longer than a line stands on its own.
func wrap(text string, width int) []string {
	var lines []string
	var line string
	for _, word := range strings.FieldsFunc(words.Unbroken(text), func(r rune) bool { return r == ' ' || r == '\n' }) {
		switch {
		case line == "":
			line = word
		case utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) > width:
			lines = append(lines, line)
			line = word
		default:
			line += " " + word
		}
	}
	if line != "" {
		lines = append(lines, line)
	}
	for i := range lines {
		lines[i] = spaced(lines[i])
	}
	return lines
}

// spaced returns a line that is broken already with plain spaces.
func spaced(line string) string { return strings.ReplaceAll(line, "\u00a0", " ") }

// pad fills a text with spaces up to a width.
func pad(text string, width int) string {
	return text + strings.Repeat(" ", max(0, width-utf8.RuneCountInString(text)))
}
