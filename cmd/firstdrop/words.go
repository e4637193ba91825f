package main

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"firstdrop/measure"
	"firstdrop/words"
)

// english is the language of commands that offer no other.
func english(units measure.System) *words.Catalogue { return words.For("").In(units) }

// upperFirst begins a text with a capital.
func upperFirst(text string) string {
	r, size := utf8.DecodeRuneInString(text)
	return strings.ToUpper(string(unicode.ToUpper(r))) + text[size:]
}
