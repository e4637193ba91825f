package words

import (
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"firstdrop/measure"
	"firstdrop/money"
)

// Length returns a length as people read it, and says with ≈ that it had to be
// rounded: "2502,5 mm". See [measure.Length.Format].
func (c *Catalogue) Length(l measure.Length) string { return c.Number(l.Format(c.Units())) }

// Plain returns a length without saying that it had to be rounded: for drawings,
// which say so once.
func (c *Catalogue) Plain(l measure.Length) string {
	return strings.TrimPrefix(c.Length(l), "≈ ")
}

// Figure returns a length without its unit where the system has one unit.
func (c *Catalogue) Figure(l measure.Length) string {
	return strings.TrimSuffix(c.Plain(l), " mm")
}

// Unbroken returns a text in which no line breaks within a length: the spaces
// before "mm" and between feet, inches and their fraction become no-break spaces.
func Unbroken(text string) string {
	var b strings.Builder
	for i := range len(text) {
		if text[i] == ' ' && i > 0 && (isDigit(text[i-1]) || text[i-1] == '\'') && isUnit(text[i+1:]) {
			b.WriteString("\u00a0")
			continue
		}
		b.WriteByte(text[i])
	}
	return b.String()
}

// isUnit reports whether a text goes on with a digit, or with "mm" as a word.
func isUnit(text string) bool {
	rest, is := strings.CutPrefix(text, "mm")
	switch {
	case text == "":
		return false
	case isDigit(text[0]):
		return true
	}
	r, _ := utf8.DecodeRuneInString(rest)
	return is && !unicode.IsLetter(r)
}

// Within returns a sentence as it stands within another: with a small letter first,
// in German only where the first word is no noun.
func (c *Catalogue) Within(text string) string {
	first, _, _ := strings.Cut(text, " ")
	if c = c.orDefault(); c.nouns && !slices.Contains(smallWords, first) {
		return text
	}
	r, n := utf8.DecodeRuneInString(text)
	if n == 0 {
		return text
	}
	return string(unicode.ToLower(r)) + text[n:]
}

// smallWords are what German sentences begin with besides nouns and names.
var smallWords = strings.Fields("Der Die Das Ein Eine Nur In Im An Am Auf Bei Über Unter Zwischen Neben Es Nach Mit")

// Exact returns a length in millimetres with all its decimals.
func (c *Catalogue) Exact(l measure.Length) string { return c.Number(l.String()) }

// Both returns a length in both systems: "2502,5 mm (8' 2 1/2\")".
func (c *Catalogue) Both(l measure.Length) string { return c.Number(measure.Both(l)) }

// Money returns an amount with its currency behind a space that breaks no line, as
// "24,90 EUR"; "" for none.
func (c *Catalogue) Money(a money.Amount) string {
	return strings.ReplaceAll(c.Number(a.String()), " ", "\u00a0")
}

// Number returns a number, written as programs write it and with whatever
// stands round it, with the language's decimal sign: a point between two digits
// becomes a comma.
func (c *Catalogue) Number(text string) string {
	sign := c.orDefault().decimal
	if sign == "." {
		return text
	}
	var b strings.Builder
	for i := range len(text) {
		if text[i] == '.' && i > 0 && i+1 < len(text) && isDigit(text[i-1]) && isDigit(text[i+1]) {
			b.WriteString(sign)
			continue
		}
		b.WriteByte(text[i])
	}
	return b.String()
}

func isDigit(b byte) bool { return '0' <= b && b <= '9' }

// Decimal returns n/unit with at least two decimals and no more than it needs,
// up to nine: "10,05" metres for 10,050 millimetres of 1000 each.
func (c *Catalogue) Decimal(n, unit int64) string {
	whole, rest := n/unit, n%unit
	sign := ""
	if n < 0 {
		sign, whole, rest = "-", -whole, -rest
	}
	digits := make([]byte, 0, 9)
	for rest > 0 && len(digits) < 9 {
		digits = append(digits, byte('0'+rest*10/unit))
		rest = rest * 10 % unit
	}
	for len(digits) < 2 {
		digits = append(digits, '0')
	}
	return sign + strconv.FormatInt(whole, 10) + c.orDefault().decimal + string(digits)
}

// Date returns a date as it stands in a text: "25 November 2026". month counts
// from 1.
func (c *Catalogue) Date(year, month, day int) string {
	shown := strconv.Itoa(day)
	if day == 1 {
		shown = c.Text("date.first")
	}
	return c.Text("date", "day", shown, "month", c.Text("month."+strconv.Itoa(month)), "year", year)
}
