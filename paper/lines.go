package paper

import (
	"slices"
	"strconv"
	"strings"

	"firstdrop/message"
)

// Lines says which lines of the design the eye holds against the room: rows
// against ceiling and heads, upright lines against corners and casings. It decides
// what is set straight in a crooked room.
type Lines int

// The kinds of lines. LinesUnstated is the zero value.
const (
	LinesUnstated Lines = iota
	LinesLoose          // none: flowers, leaves, whatever grows anyhow
	LinesLevel          // rows: geometric designs, horizontal bands
	LinesUpright        // stripes
	LinesBoth           // checks, trellises
	LinesIsolated       // rows of motifs of which none crosses a seam: each drop may hang a little higher or lower
)

var linesNames = []string{"", "loose", "level", "upright", "both", "isolated"}

// String returns "loose", "level", "upright", "both" or "isolated"; "" when unstated.
func (l Lines) String() string {
	if l < 0 || int(l) >= len(linesNames) {
		return "unknown lines"
	}
	return linesNames[l]
}

// MarshalText writes what [Lines.String] returns.
func (l Lines) MarshalText() ([]byte, error) { return []byte(l.String()), nil }

// UnmarshalText reads what [Lines.String] returns; l is unchanged by an error.
func (l *Lines) UnmarshalText(text []byte) error {
	i := slices.Index(linesNames, string(text))
	if i <= 0 {
		return message.New("lines_unknown", "{text} says nothing of the design's lines; it is one of {words}", "text", strconv.Quote(string(text)), "words", strings.Join(linesNames[1:], ", "))
	}
	*l = Lines(i)
	return nil
}
