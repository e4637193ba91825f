package sheet

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"firstdrop/draw/page"
	"firstdrop/hanging"
)

// Words that all sheets share. Those of each sheet stand in a file of their own,
// texts_….go; no layout holds any.

const (
	textNoName   = "Job without a name"
	textBlankJob = "Job ______________________"
)

var pageWords = page.Words{
	Lang:   "en-GB",
	PageOf: func(n, of int) string { return fmt.Sprintf("%d / %d", n, of) },
	Ruler:  "Print at 100 %: this ruler must come out 100 mm (4 in) long.",
}

func textCorner(name string) string { return "corner " + name }

func textEnd(side hanging.Side) string { return "the " + side.String() + " end" }

func textScale(n int64) string { return fmt.Sprintf("1:%d", n) }

// textWall names a wall: "Wall A", but "Landing wall".
func textWall(name string) string {
	if strings.Contains(strings.ToLower(name), "wall") {
		r, n := utf8.DecodeRuneInString(name)
		return string(unicode.ToUpper(r)) + name[n:]
	}
	return "Wall " + name
}

// textTheWall is as textWall, within a sentence.
func textTheWall(name string) string {
	if strings.Contains(strings.ToLower(name), "wall") {
		return "the " + name
	}
	return "wall " + name
}

func textOfRun(title, run string, several bool) string {
	if several {
		return title + ": " + run
	}
	return title
}
