package measure

import (
	"fmt"
	"math/bits"
	"strings"
	"unicode/utf8"
)

// LengthError says why a text is no length. Message tells what is wrong and
// what would be right; Offset is the byte of Text where the trouble begins.
type LengthError struct {
	Text    string
	Offset  int
	Message string
}

// Error returns the text in quotes and the message.
func (e *LengthError) Error() string { return complaint(e.Text, e.Message) }

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
		return 0, &LengthError{Text: text, Offset: t.offset, Message: t.message}
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
	negative, t := p.start(`2502 mm or 8' 2 1/2"`)
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
			return &trouble{at, `a dash here may mean minus or "and"; write 8' 2" or 2 m 45 cm`}, false
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
		t = &trouble{q.at, fmt.Sprintf("more %s than make one %s; write one unit with a decimal point", q.unit, before.unit)}
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
		return &trouble{at, "may be a full stop or a decimal point; write 8 ft 5 in or 8 ft 0.5 in"}
	case u.System() == Imperial:
		p.skip()
	}
	return nil
}

func unknownWord(at int, word string) *trouble {
	if c := word[0] | 0x20; c == 'e' || c == 'x' {
		return &trouble{at, "numbers are written out in full: 2500, not 2.5e3 or 0x9c4"}
	}
	return &trouble{at, fmt.Sprintf("%q is no unit of length; use %s", word, knownUnits)}
}

// unwritten returns the unit of a number that carries none.
func (p *lengthParser) unwritten(n number, before part) (Unit, *trouble) {
	switch {
	case !p.isAtEnd():
		return 0, p.interrupted(n)
	case before.unit == Feet:
		return Inches, p.swissThousand(n, before)
	case before.unit != 0:
		return 0, &trouble{n.at, fmt.Sprintf("a number without a unit after %s; write %s", before.unit, smaller(before.unit))}
	case p.bare == 0:
		return 0, &trouble{n.end, "a unit is missing; use " + knownUnits}
	}
	return p.bare, nil
}

// smaller names what may follow a unit.
func smaller(u Unit) string {
	switch u {
	case Metres:
		return "cm or mm behind it"
	case Centimetres:
		return "mm behind it"
	case Yards:
		return "ft or in behind it"
	}
	return "the length as one number"
}

// interrupted says what is wrong with whatever follows a number without a unit.
func (p *lengthParser) interrupted(n number) *trouble {
	first := p.text[n.at:n.end]
	switch {
	case p.startsNumber():
		at := p.pos
		second, t := p.number()
		if t != nil || !n.isWhole || !second.isWhole {
			return &trouble{at, "two numbers without a unit between them; give each its unit"}
		}
		return twoNumbers(at, first, p.text[at:second.end])
	case p.peek() == '_':
		return &trouble{p.pos, "digits are written without separators: 1000, not 1_000"}
	case p.peek() == '+':
		return &trouble{n.end, fmt.Sprintf("%s has no unit; write one before the plus", first)}
	case p.accept(dashes):
		return &trouble{n.end, `a dash here may mean minus or "and"; write 2 1/2 or 8' 2"`}
	}
	return &trouble{p.pos, fmt.Sprintf("%q does not belong in a length; use %s", p.peek(), knownUnits)}
}

// twoNumbers refuses 8 3, and 2 502, where the space may divide thousands.
func twoNumbers(at int, first, second string) *trouble {
	if len(first) <= 3 && len(second) == 3 {
		return &trouble{at, fmt.Sprintf("a space within a number; write %s%s if it is one number", first, second)}
	}
	return &trouble{at, fmt.Sprintf("two numbers without units; write %s' %s\" or %s.%s cm", first, second, first, second)}
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
	return &trouble{before.end, fmt.Sprintf("may be %s' %s\" or %s%s; write one of them", first, rest, first, rest)}
}

// grouped refuses a comma that may divide thousands, and names both readings.
func (p *lengthParser) grouped(q part) *trouble {
	if !q.isGroupable {
		return nil
	}
	comma := q.at + q.wholeDigits
	whole, decimals := p.text[q.at:comma], p.text[comma+1:q.end]
	return &trouble{comma, fmt.Sprintf("may be %s.%s %s or %s%s %s; write one of them", whole, decimals, q.unit, whole, decimals, q.unit)}
}

// follows refuses a part that does not go on from the one before it.
func (q part) follows(before part) *trouble {
	switch {
	case before.unit == 0:
		return nil
	case q.unit.System() != before.unit.System():
		return &trouble{q.at, fmt.Sprintf("%s after %s; a length is metric or imperial, not both", q.unit, before.unit)}
	case q.unit == before.unit:
		return &trouble{q.at, fmt.Sprintf("%s stands twice; write each unit once", q.unit)}
	case q.unit > before.unit:
		return &trouble{q.at, fmt.Sprintf("%s after %s; write the larger unit first", q.unit, before.unit)}
	case !before.isWhole:
		return &trouble{before.at, "only the last part may have decimals or a fraction"}
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
	return &trouble{at, fmt.Sprintf("more than %d m; check the unit", MaxLength/Metre)}
}

// unequal refuses a size between two nanometres, l and the next, and offers a near one.
func (q part) unequal(l Length) *trouble {
	const what = "not a whole number of nanometres; "
	if q.unit.System() == Imperial {
		return &trouble{q.at, what + "the nearest 1/64 in is " + l.RoundTo(SixtyFourth).spelled(Imperial)}
	}
	return &trouble{q.at, what + "write at most six decimals of a millimetre, such as " + l.String()}
}
