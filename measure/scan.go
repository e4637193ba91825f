package measure

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"firstdrop/message"
)

// Characters that mean the same on different keyboards. Text is never
// normalised first: NFKC would turn ″ into two ′, and 3½ into 31/2.
const (
	dashes      = "-\u2010\u2011\u2012\u2013\u2212" // hyphens, figure and en dash, minus sign
	slashes     = "/\u2044\u2215"
	singleMarks = "'\u2018\u2019\u2032" // feet; minutes of arc
	doubleMarks = "\"\u201c\u201d\u2033"
	maxText     = 100 // bytes; no honest measurement is longer
	maxDigits   = 18  // so that a number fits 64 bits
)

var vulgarFractions = map[rune][2]uint64{
	'¼': {1, 4}, '½': {1, 2}, '¾': {3, 4},
	'⅓': {1, 3}, '⅔': {2, 3}, '⅕': {1, 5}, '⅖': {2, 5}, '⅗': {3, 5}, '⅘': {4, 5},
	'⅙': {1, 6}, '⅚': {5, 6}, '⅐': {1, 7}, '⅛': {1, 8}, '⅜': {3, 8}, '⅝': {5, 8}, '⅞': {7, 8},
	'⅑': {1, 9}, '⅒': {1, 10},
}

// trouble says what is wrong with a text, at which byte, and what would be right.
type trouble struct {
	offset int
	why    message.Message
}

// number is a rational n/d as it stood in a text; never negative.
type number struct {
	n, d        uint64
	at, end     int
	wholeDigits int  // digits before any decimal mark or fraction
	isWhole     bool // written without decimals or fraction
	isGroupable bool // like 1,234: the comma may divide decimals or thousands
}

// fraction is num/den as it stood in a text, as two digit groups or as one character.
type fraction struct {
	num, den             uint64
	at, denAt            int
	numDigits, denDigits int
}

// scanner reads a text from left to right. Positions are byte offsets.
type scanner struct {
	text string
	pos  int
}

// end is what peek returns behind the last character.
const end rune = -1

func (s *scanner) peek() rune {
	if s.pos >= len(s.text) {
		return end
	}
	if c := s.text[s.pos]; c < utf8.RuneSelf {
		return rune(c)
	}
	r, _ := utf8.DecodeRuneInString(s.text[s.pos:])
	return r
}

// skip passes over the character that peek returns.
func (s *scanner) skip() {
	_, size := utf8.DecodeRuneInString(s.text[s.pos:])
	s.pos += size
}

func (s *scanner) isAtEnd() bool { return s.pos >= len(s.text) }

// accept skips the next character if it is one of set.
func (s *scanner) accept(set string) bool {
	r := s.peek()
	if r == end || r == utf8.RuneError || !strings.ContainsRune(set, r) {
		return false
	}
	s.skip()
	return true
}

// skipSpace passes over spaces of every width, non-breaking ones too, and
// reports whether there were any.
func (s *scanner) skipSpace() bool {
	from := s.pos
	for unicode.IsSpace(s.peek()) {
		s.skip()
	}
	return s.pos > from
}

// start checks what every text must be and reads the sign in front.
func (s *scanner) start(example message.Message) (negative bool, t *trouble) {
	if len(s.text) > maxText {
		return false, &trouble{maxText, message.New("text_long", "longer than {bytes} bytes; write one measurement, such as {example}", "bytes", maxText, "example", example)}
	}
	if s.skipSpace(); s.isAtEnd() {
		return false, &trouble{s.pos, message.New("text_empty", "nothing is written; write a number and a unit, such as {example}", "example", example)}
	}
	if !s.accept("+") {
		negative = s.accept(dashes)
	}
	s.skipSpace()
	return negative, nil
}

func (s *scanner) digits() (value uint64, count int) {
	for s.pos < len(s.text) && isDigit(s.text[s.pos]) {
		value = value*10 + uint64(s.text[s.pos]-'0')
		count++
		s.pos++
	}
	return value, count
}

func isDigit(c byte) bool { return '0' <= c && c <= '9' }

// startsNumber reports whether the next character can begin a number.
func (s *scanner) startsNumber() bool {
	r := s.peek()
	_, vulgar := vulgarFractions[r]
	return vulgar || r == '.' || r == ',' || '0' <= r && r <= '9'
}

// number reads 12, 12.5, 12,5, .5, 1/2, ½, 12 1/2, 12-1/2 or 12½. The fraction
// is tried first, so that 31/2 is not taken for 31.
func (s *scanner) number() (number, *trouble) {
	n := number{at: s.pos, d: 1, isWhole: true}
	if !s.startsNumber() {
		return n, s.missingNumber()
	}
	var t *trouble
	if f, ok := s.fraction(); ok {
		t = n.become(f, s.text)
	} else {
		n.n, n.wholeDigits = s.digits()
		t = s.afterWhole(&n)
	}
	n.end = s.pos
	return n, t
}

func (s *scanner) missingNumber() *trouble {
	if s.isAtEnd() {
		return &trouble{s.pos, message.New("number_missing", "a number is missing at the end")}
	}
	return &trouble{s.pos, message.New("number_expected", "a number should stand here, not {character}", "character", fmt.Sprintf("%q", s.peek()))}
}

// afterWhole reads the decimals or the fraction that follow whole digits.
func (s *scanner) afterWhole(n *number) *trouble {
	if n.wholeDigits > maxDigits {
		return tooManyDigits(n.at)
	}
	if r := s.peek(); r == '.' || r == ',' {
		return s.decimals(n, r)
	}
	before := s.pos
	if !s.accept(dashes) {
		s.skipSpace()
	}
	f, ok := s.fraction()
	if !ok {
		s.pos = before
		return nil
	}
	return n.add(f)
}

// decimals reads the mark and the digits behind it. A point is always a
// decimal point, since we print it as one. A comma is one unless it could
// divide thousands: one to three digits before it, the first not 0, and
// exactly three behind.
func (s *scanner) decimals(n *number, mark rune) *trouble {
	first := s.text[n.at]
	s.skip()
	decimals, count := s.digits()
	switch r := s.peek(); {
	case count == 0:
		return &trouble{s.pos, message.New("number_digit_missing", "a digit is missing after the decimal mark")}
	case r == '.' || r == ',':
		return &trouble{s.pos, message.New("number_two_marks", "two decimal marks in one number; write 1234.5, without a mark between thousands")}
	case n.wholeDigits+count > maxDigits:
		return tooManyDigits(n.at)
	}
	for range count {
		n.n, n.d = n.n*10, n.d*10
	}
	n.n += decimals
	n.isWhole = false
	n.isGroupable = mark == ',' && count == 3 && 1 <= n.wholeDigits && n.wholeDigits <= 3 && first != '0'
	return nil
}

func tooManyDigits(at int) *trouble {
	return &trouble{at, message.New("number_digits", "more than the {most} digits that a number may have", "most", maxDigits)}
}

// fraction reads 3/4 or ¾; without one it leaves the scanner where it was.
func (s *scanner) fraction() (f fraction, ok bool) {
	f.at = s.pos
	if v, isVulgar := vulgarFractions[s.peek()]; isVulgar {
		s.skip()
		f.num, f.den, f.denAt = v[0], v[1], f.at
		return f, true
	}
	f.num, f.numDigits = s.digits()
	if f.numDigits > 0 && s.accept(slashes) {
		f.denAt = s.pos
		f.den, f.denDigits = s.digits()
		ok = f.denDigits > 0
	}
	if !ok {
		s.pos = f.at
	}
	return f, ok
}

// check refuses what is no fraction. Six digits each leave twelve for the
// whole number, and the sum fits 64 bits.
func (f fraction) check() *trouble {
	switch {
	case f.numDigits > 6 || f.denDigits > 6:
		return &trouble{f.at, message.New("fraction_digits", "more than six digits above or below the fraction bar")}
	case f.den == 0:
		return &trouble{f.denAt, message.New("fraction_zero", "a fraction cannot have 0 below the bar")}
	}
	return nil
}

// become makes n the fraction f alone. Above one and with several digits it is
// refused: 31/2 may be 3 1/2 with its space lost.
func (n *number) become(f fraction, text string) *trouble {
	if t := f.check(); t != nil {
		return t
	}
	n.n, n.d, n.isWhole = f.num, f.den, false
	if f.numDigits > 1 && f.num >= f.den {
		digits := text[f.at : f.at+f.numDigits]
		return &trouble{f.at, f.readings(digits)}
	}
	return nil
}

// readings says what an improper fraction may mean: "15 1/2 or 3 1/2".
func (f fraction) readings(digits string) message.Message {
	spelled := fmt.Sprint(f.num / f.den)
	if rest := f.num % f.den; rest != 0 {
		spelled += fmt.Sprintf(" %d/%d", rest, f.den)
	}
	for i := 1; i < len(digits); i++ {
		tail := scanner{text: digits[i:]}
		if rest, _ := tail.digits(); rest < f.den && digits[i] != '0' {
			return message.New("fraction_above_one_or", "a fraction above one, easily misread; write {reading} or {other}",
				"reading", spelled, "other", fmt.Sprintf("%s %d/%d", digits[:i], rest, f.den))
		}
	}
	return message.New("fraction_above_one", "a fraction above one, easily misread; write {reading}", "reading", spelled)
}

// add puts f behind the whole number n, as in 2 1/2.
func (n *number) add(f fraction) *trouble {
	switch t := f.check(); {
	case t != nil:
		return t
	case n.wholeDigits > 12:
		return tooManyDigits(n.at)
	case f.num >= f.den:
		return &trouble{f.at, message.New("fraction_behind_whole", "a fraction behind a whole number must be less than one")}
	}
	n.n, n.d, n.isWhole = n.n*f.den+f.num, f.den, false
	return nil
}

// markCount reads ' as 1 and " or ” as 2; 0 when neither stands next. Two
// single marks in a row are a double one.
func (s *scanner) markCount() int {
	switch {
	case s.accept(doubleMarks):
		return 2
	case !s.accept(singleMarks):
		return 0
	case s.accept(singleMarks):
		return 2
	}
	return 1
}

// word reads letters.
func (s *scanner) word() string {
	from := s.pos
	for unicode.IsLetter(s.peek()) {
		s.skip()
	}
	return s.text[from:s.pos]
}

// complaint is what a reading error says. It quotes with the mark that the
// text does not use, so that 8' 2" stays readable.
func complaint(text string, why message.Message) message.Message {
	format := "%q"
	if strings.Contains(text, `"`) {
		format = "%#q"
	}
	if len(text) > maxText {
		text = strings.ToValidUTF8(text[:maxText], "") + "…"
	}
	return message.New("quoted", "{text}: {why}", "text", fmt.Sprintf(format, text), "why", why)
}
