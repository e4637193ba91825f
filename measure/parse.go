package measure

import (
	"fmt"
	"math/bits"
	"strconv"
	"strings"
	"unicode/utf8"

	"firstdrop/message"
)

// LengthError says why a text is no length. Why tells what is wrong and
// what would be right; Offset is the byte of Text where the trouble begins.
type LengthError struct {
	Text   string
	Offset int
	Why    message.Message
}

// Error returns the text in quotes and why.
func (e *LengthError) Error() string { return e.Said().Error() }

// Said returns the same to be said in any language.
func (e *LengthError) Said() message.Message { return complaint(e.Text, e.Why) }

// ParseLength reads a length as people write it:
//
//	2502   2502 mm   250.2 cm   250,2 cm   2.502 m   2 m 45 cm
//	8' 2 1/2"   8 ft 2-1/2 in   8'-2½"   8ft 2   98.5"   3/4 in   3'+30.5"
//
// A number without a unit takes bare; directly after feet it is inches. The
// sign in front belongs to the whole: -8' 2" is 98 inches below the datum.
// Inches may pass 12, as the trade writes them (6'34"); centimetres after
// metres may not pass 99, since that is a slip for millimetres.
//
// The value is exact or the text is refused, and so is whatever can be read in
// two ways: 1,234 m (a comma before exactly three digits), 8 3, 2 m 45, 31/2,
// 1'234 (feet, or a thousand), 2 m 3 in, units twice or in the wrong order,
// decimals in any part but the last. A point is always a decimal point, and
// 0,533 or 2502,125 can only be decimals: those are read. At most ±[MaxLength].
// The error is a [*LengthError].
func ParseLength(text string, bare Unit) (Length, error) {
	p := lengthParser{scanner{text: text}, bare}
	l, t := p.length()
	if t != nil {
		return 0, &LengthError{Text: text, Offset: t.offset, Why: t.why}
	}
	return l, nil
}

// lengthParser reads: sign, part, and further parts each after an optional
// joiner. A part is a number and its unit.
type lengthParser struct {
	scanner
	bare Unit
}

// part is one number with its unit; the zero part is none.
type part struct {
	number
	unit Unit
	size Length
}

func (p *lengthParser) length() (Length, *trouble) {
	negative, t := p.start(message.New("example_length", `2502 mm or 8' 2 1/2"`))
	if t != nil {
		return 0, t
	}
	total, q := Length(0), part{}
	for {
		if q, t = p.part(q); t != nil {
			return 0, t
		}
		total += q.size
		if total > MaxLength {
			return 0, tooLong(q.at)
		}
		if t, done := p.join(q); t != nil || done {
			return signed(total, negative), t
		}
	}
}

func signed(l Length, negative bool) Length {
	if negative {
		return -l
	}
	return l
}

// join passes over what may stand between two parts: space, a plus, or between
// feet and inches a hyphen as on drawings (8'-2"). A hyphen with space on one
// side only looks like a minus and is refused.
func (p *lengthParser) join(before part) (t *trouble, done bool) {
	spaced := p.skipSpace()
	at := p.pos
	switch {
	case p.isAtEnd():
		return nil, true
	case p.accept("+"):
		p.skipSpace()
	case p.accept(dashes):
		if p.skipSpace() != spaced || before.unit != Feet {
			return &trouble{at, message.New("length_dash", `a dash here may mean minus or "and"; write 8' 2" or 2 m 45 cm`)}, false
		}
	}
	return nil, false
}

// part reads the part that follows before and holds it against it.
func (p *lengthParser) part(before part) (q part, t *trouble) {
	if q.number, t = p.number(); t != nil {
		return q, t
	}
	if q.unit, t = p.unit(q.number, before); t != nil {
		return q, t
	}
	if t = p.grouped(q); t != nil {
		return q, t
	}
	if t = q.follows(before); t != nil {
		return q, t
	}
	q.size, t = q.measured()
	if t == nil && before.unit != 0 && q.unit.System() == Metric && q.size >= before.unit.Length() {
		t = &trouble{q.at, message.New("length_more_than_one", "more {unit} than make one {larger}; write one unit with a decimal point", "unit", q.unit, "larger", before.unit)}
	}
	return q, t
}

// unit reads the unit behind the number n, or finds the one that goes without saying.
func (p *lengthParser) unit(n number, before part) (Unit, *trouble) {
	p.skipSpace()
	at := p.pos
	switch p.markCount() {
	case 1:
		return Feet, nil
	case 2:
		return Inches, nil
	}
	word := p.word()
	if word == "" {
		return p.unwritten(n, before)
	}
	u := unitFromWord(word)
	if u == 0 {
		return 0, unknownWord(at, word)
	}
	return u, p.pointAfter(u)
}

// pointAfter reads the full stop of in. and ft., usual in American print. In
// front of a digit it may as well be a decimal point, after any unit.
func (p *lengthParser) pointAfter(u Unit) *trouble {
	at := p.pos
	switch {
	case p.peek() != '.':
		return nil
	case at+1 < len(p.text) && isDigit(p.text[at+1]):
		return &trouble{at, message.New("length_full_stop", "may be a full stop or a decimal point; write 8 ft 5 in or 8 ft 0.5 in")}
	case u.System() == Imperial:
		p.skip()
	}
	return nil
}

func unknownWord(at int, word string) *trouble {
	if c := word[0] | 0x20; c == 'e' || c == 'x' {
		return &trouble{at, message.New("number_in_full", "numbers are written out in full: 2500, not 2.5e3 or 0x9c4")}
	}
	return &trouble{at, message.New("length_no_unit_word", "{word} is no unit of length; use mm, cm, m, in, ft or yd", "word", strconv.Quote(word))}
}

// unwritten returns the unit of a number that carries none.
func (p *lengthParser) unwritten(n number, before part) (Unit, *trouble) {
	switch {
	case !p.isAtEnd():
		return 0, p.interrupted(n)
	case before.unit == Feet:
		return Inches, p.swissThousand(n, before)
	case before.unit != 0:
		return 0, &trouble{n.at, message.New("length_unit_after", "a number without a unit after {unit}; write {next}", "unit", before.unit, "next", smaller(before.unit))}
	case p.bare == 0:
		return 0, &trouble{n.end, message.New("length_unit_missing", "a unit is missing; use mm, cm, m, in, ft or yd")}
	}
	return p.bare, nil
}

// smaller names what may follow a unit.
func smaller(u Unit) message.Message {
	switch u {
	case Metres:
		return message.New("length_then_cm_mm", "cm or mm behind it")
	case Centimetres:
		return message.New("length_then_mm", "mm behind it")
	case Yards:
		return message.New("length_then_feet", "ft or in behind it")
	}
	return message.New("length_then_nothing", "the length as one number")
}

// interrupted says what is wrong with whatever follows a number without a unit.
func (p *lengthParser) interrupted(n number) *trouble {
	first := p.text[n.at:n.end]
	switch {
	case p.startsNumber():
		at := p.pos
		second, t := p.number()
		if t != nil || !n.isWhole || !second.isWhole {
			return &trouble{at, message.New("length_two_numbers_no_unit", "two numbers without a unit between them; give each its unit")}
		}
		return twoNumbers(at, first, p.text[at:second.end])
	case p.peek() == '_':
		return &trouble{p.pos, message.New("number_separators", "digits are written without separators: 1000, not 1_000")}
	case p.peek() == '+':
		return &trouble{n.end, message.New("length_plus", "{number} has no unit; write one before the plus", "number", first)}
	case p.accept(dashes):
		return &trouble{n.end, message.New("length_dash_inches", `a dash here may mean minus or "and"; write 2 1/2 or 8' 2"`)}
	}
	return &trouble{p.pos, message.New("length_stranger", "{character} does not belong in a length; use mm, cm, m, in, ft or yd", "character", fmt.Sprintf("%q", p.peek()))}
}

// twoNumbers refuses 8 3, and 2 502, where the space may divide thousands.
func twoNumbers(at int, first, second string) *trouble {
	if len(first) <= 3 && len(second) == 3 {
		return &trouble{at, message.New("length_space", "a space within a number; write {first}{second} if it is one number", "first", first, "second", second)}
	}
	return &trouble{at, message.New("length_two_numbers", `two numbers without units; write {first}' {second}" or {first}.{second} cm`, "first", first, "second", second)}
}

// swissThousand refuses 1'234: a foot and 234 inches, or a number with its
// thousands set off. An inch mark, a space or another count of digits decides.
func (p *lengthParser) swissThousand(n number, before part) *trouble {
	mark := p.text[before.end:n.at]
	tight := utf8.RuneCountInString(mark) == 1 && strings.Contains(singleMarks, mark)
	if !tight || n.wholeDigits != 3 || before.wholeDigits > 3 {
		return nil
	}
	first, rest := p.text[before.at:before.end], p.text[n.at:n.end]
	return &trouble{before.end, message.New("length_thousand_or_feet", `may be {first}' {second}" or {first}{second}; write one of them`, "first", first, "second", rest)}
}

// grouped refuses a comma that may divide thousands, and names both readings.
func (p *lengthParser) grouped(q part) *trouble {
	if !q.isGroupable {
		return nil
	}
	comma := q.at + q.wholeDigits
	whole, decimals := p.text[q.at:comma], p.text[comma+1:q.end]
	return &trouble{comma, message.New("length_comma", "may be {whole}.{decimals} {unit} or {whole}{decimals} {unit}; write one of them", "whole", whole, "decimals", decimals, "unit", q.unit)}
}

// follows refuses a part that does not go on from the one before it.
func (q part) follows(before part) *trouble {
	switch {
	case before.unit == 0:
		return nil
	case q.unit.System() != before.unit.System():
		return &trouble{q.at, message.New("length_mixed", "{unit} after {before}; a length is metric or imperial, not both", "unit", q.unit, "before", before.unit)}
	case q.unit == before.unit:
		return &trouble{q.at, message.New("length_unit_twice", "{unit} stands twice; write each unit once", "unit", q.unit)}
	case q.unit > before.unit:
		return &trouble{q.at, message.New("length_order", "{unit} after {before}; write the larger unit first", "unit", q.unit, "before", before.unit)}
	case !before.isWhole:
		return &trouble{before.at, message.New("only_last_part", "only the last part may have decimals or a fraction")}
	}
	return nil
}

// measured returns the exact length of the part.
func (q part) measured() (Length, *trouble) {
	hi, lo := bits.Mul64(q.n, uint64(q.unit.Length()))
	if hi >= q.d {
		return 0, tooLong(q.at)
	}
	nm, rest := bits.Div64(hi, lo, q.d)
	switch {
	case nm > uint64(MaxLength):
		return 0, tooLong(q.at)
	case rest != 0:
		return 0, q.unequal(Length(nm))
	}
	return Length(nm), nil
}

func tooLong(at int) *trouble {
	return &trouble{at, message.New("length_too_long", "more than {metres} m; check the unit", "metres", int(MaxLength/Metre))}
}

// unequal refuses a size between two nanometres, l and the next, and offers a near one.
func (q part) unequal(l Length) *trouble {
	if q.unit.System() == Imperial {
		return &trouble{q.at, message.New("length_uneven_inch", "not a whole number of nanometres; the nearest 1/64 in is {near}", "near", l.RoundTo(SixtyFourth).spelled(Imperial))}
	}
	return &trouble{q.at, message.New("length_uneven", "not a whole number of nanometres; write at most six decimals of a millimetre, such as {near}", "near", l)}
}
