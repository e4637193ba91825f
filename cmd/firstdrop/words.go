package main

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"firstdrop/finding"
	"firstdrop/measure"
	"firstdrop/sheet"
)

// words says a finding in a sentence.
func words(f finding.Finding, units measure.System) string { return sheet.Words(f, units) }

// upperFirst begins a text with a capital.
func upperFirst(text string) string {
	r, size := utf8.DecodeRuneInString(text)
	return strings.ToUpper(string(unicode.ToUpper(r))) + text[size:]
}
