package words

import "strings"

// locale is what differs between locales besides their texts.
type locale struct {
	tag     string
	name    string // in the language itself
	base    string // what it is written as differences to; "" for none
	decimal string
	page    string
	plural  func(n int) string
	nouns   bool // are written with a capital
}

// locales lists what there is; the first is the default. The decimal signs
// and plural rules are those of the Unicode CLDR, the pages those that printers
// are sold with (common practice).
var locales = []locale{
	{"en-GB", "English (British)", "", ".", "A4", oneIsOne, false},
	{"en-US", "English (American)", "en-GB", ".", "Letter", oneIsOne, false},
	{"de", "Deutsch", "", ",", "A4", oneIsOne, true},
	{"fr", "français", "", ",", "A4", noneIsOne, false},
}

// spaced returns a text in which a space that the language sets before a mark,
// or inside its quotation marks, breaks no line.
func (l *locale) spaced(text string) string {
	if l.tag != "fr" {
		return text
	}
	return strings.NewReplacer(" :", "\u00a0:", " ;", "\u00a0;", " !", "\u00a0!", " ?", "\u00a0?", "« ", "«\u00a0", " »", "\u00a0»").Replace(text)
}

// Languages lists the tags of all locales, the default first.
func Languages() []string {
	tags := make([]string, len(locales))
	for i, l := range locales {
		tags[i] = l.tag
	}
	return tags
}

// Match returns the language for a tag of BCP 47 or a locale of POSIX, and
// whether there is one: "de_AT.UTF-8" is "de", "en" is "en-GB", "en-CA" too.
// Capitals do not matter.
func Match(tag string) (string, bool) {
	tag, _, _ = strings.Cut(tag, ".")
	tag, _, _ = strings.Cut(tag, "@")
	tag = strings.ReplaceAll(tag, "_", "-")
	main, _, _ := strings.Cut(tag, "-")
	for _, want := range []string{tag, main} {
		for _, l := range locales {
			if strings.EqualFold(l.tag, want) {
				return l.tag, true
			}
		}
	}
	if strings.EqualFold(main, "en") {
		return locales[0].tag, true
	}
	return "", false
}
