package paper

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"firstdrop/measure"
	"firstdrop/message"
)

// MatchKind says how the next drop must stand against this one.
type MatchKind int

// The kinds of match. The words are those of the trade (EN 235 as the trade
// explains it).
const (
	Free     MatchKind = iota // no design to meet
	Straight                  // the same height from drop to drop
	Offset                    // every drop stands a stated part of the repeat further on
)

// Match is the label's match.
type Match struct {
	Kind MatchKind
	// For Offset: the part of the repeat, Num/Den in lowest terms with
	// 0 < Num < Den (1/2 is a half drop); or, when Den is 0, the stated Length
	// (a label that reads 64/32 has repeat 64 cm and offset 32 cm).
	Num, Den int64
	Length   measure.Length
	// Reversing says that alternate drops are hung upside down.
	Reversing bool
}

// mirrored returns the match of the paper printed in mirror writing.
func (m Match) mirrored(repeat measure.Length) Match {
	switch {
	case m.Kind == Offset && m.Den != 0:
		m.Num = m.Den - m.Num
	case m.Kind == Offset:
		m.Length = repeat - m.Length
	}
	return m
}

// MaxDen is the largest denominator of an offset. A finer one is a slip.
const MaxDen = 1000

// String prints the match, without the reversal, so that [ParseMatch] reads it
// back: "free", "straight", "half drop", "offset 1/3", "offset 320 mm".
func (m Match) String() string {
	switch {
	case m.Kind == Free:
		return "free"
	case m.Kind == Straight:
		return "straight"
	case m.Den == 0:
		return "offset " + m.Length.String()
	case m.Num == 1 && m.Den == 2:
		return "half drop"
	}
	return fmt.Sprintf("offset %d/%d", m.Num, m.Den)
}

// matchWords are the matches that have a name. 0 for a free match is the mark
// of EN 235 as the trade explains it (malerblatt.de 2018-10).
var matchWords = map[string]Match{
	"free":         {Kind: Free},
	"0":            {Kind: Free},
	"straight":     {Kind: Straight},
	"half drop":    {Kind: Offset, Num: 1, Den: 2},
	"third drop":   {Kind: Offset, Num: 1, Den: 3},
	"quarter drop": {Kind: Offset, Num: 1, Den: 4},
}

// ParseMatch reads the match as people and labels write it, and returns it with
// the repeat:
//
//	free   straight   half drop   third drop   offset 1/3   1/4
//	64/32 cm   64/32   64/0   offset 32 cm
//
// A larger number before a smaller one is the label's mark, repeat/offset: 64/32
// repeats every 64 cm and the next drop fits after 32 cm (malerblatt.de 2018-10);
// 64/0 is a straight match (common practice). A smaller before a larger number
// is a part of the repeat. repeat is what is known already, 0 for nothing: a mark
// must agree with it, or else states it. Labels print centimetres and leave them
// out; here, as everywhere, a bare number takes the given unit, so a mark without
// a unit is refused where the repeat does not confirm it and the unit is not cm.
func ParseMatch(text string, repeat measure.Length, unit measure.Unit) (Match, measure.Length, error) {
	word := strings.Join(strings.Fields(strings.ToLower(text)), " ")
	if m, ok := matchWords[word]; ok {
		return m, repeat, nil
	}
	rest, isOffset := strings.CutPrefix(word, "offset ")
	if num, den, ok := fraction(rest); ok && num < den {
		m, err := offsetBy(num, den)
		return m, repeat, err
	}
	switch {
	case !isOffset && strings.ContainsAny(rest, "/"):
		return parseMark(rest, repeat, unit)
	case isOffset:
		l, err := measure.ParseLength(rest, unit)
		if err != nil {
			return Match{}, 0, message.New("match_offset", "an offset is a part of the repeat, such as 1/3, or a length: {why}", "why", message.Of(err)).Because(err)
		}
		return Match{Kind: Offset, Length: l}, repeat, nil
	}
	return Match{}, 0, message.New("match_unknown", "{text} is no match; write free, straight, half drop, offset 1/3, or the label's mark such as 64/32 cm", "text", strconv.Quote(text))
}

// fraction reads two bare whole numbers with a slash between.
func fraction(text string) (num, den int64, ok bool) {
	before, after, found := strings.Cut(text, "/")
	num, errNum := strconv.ParseInt(strings.TrimSpace(before), 10, 64)
	den, errDen := strconv.ParseInt(strings.TrimSpace(after), 10, 64)
	return num, den, found && errNum == nil && errDen == nil
}

// offsetBy returns the offset by num/den in lowest terms.
func offsetBy(num, den int64) (Match, error) {
	if num <= 0 {
		return Match{}, message.New("match_nothing", "an offset of nothing is a straight match; write straight")
	}
	common := gcd(den, num)
	num, den = num/common, den/common
	if den > MaxDen {
		return Match{}, message.New("match_fine", "an offset of {num}/{den} of the repeat is finer than 1/{most}; state it as a length", "num", num, "den", den, "most", MaxDen)
	}
	return Match{Kind: Offset, Num: num, Den: den}, nil
}

// parseMark reads the label's mark: repeat, slash, offset, and perhaps a unit.
func parseMark(text string, repeat measure.Length, unit measure.Unit) (Match, measure.Length, error) {
	figures, marked, err := cutUnit(text)
	if err != nil {
		return Match{}, 0, err
	}
	if marked != 0 {
		unit = marked
	}
	first, second, _ := strings.Cut(figures, "/")
	whole, errWhole := measure.ParseLength(strings.TrimSpace(first), unit)
	offset, errOffset := measure.ParseLength(strings.TrimSpace(second), unit)
	if err := errors.Join(errWhole, errOffset); err != nil {
		return Match{}, 0, message.New("match_mark", "{text} is no mark of repeat and offset, such as 64/32 cm; an offset with a fraction is written: offset 10 1/2 in", "text", strconv.Quote(text))
	}
	if err := markFits(text, whole, offset, repeat, unit, marked != 0); err != nil {
		return Match{}, 0, err
	}
	if offset == 0 {
		return Match{Kind: Straight}, whole, nil
	}
	return Match{Kind: Offset, Length: offset}, whole, nil
}

// cutUnit parts the unit at the end from the figures; without one it is 0.
func cutUnit(text string) (figures string, unit measure.Unit, err error) {
	cut := strings.LastIndexAny(text, "0123456789") + 1
	word := strings.TrimSpace(text[cut:])
	if word == "" {
		return text, 0, nil
	}
	unit, err = measure.ParseUnit(word)
	return text[:cut], unit, err
}

// markFits holds the mark against itself and against the repeat.
func markFits(text string, whole, offset, repeat measure.Length, unit measure.Unit, hasUnit bool) error {
	switch {
	case offset < 0 || whole <= 0 || offset >= whole:
		return message.New("match_mark_order", "{text} is no mark: the offset behind the slash must be less than the repeat before it", "text", strconv.Quote(text))
	case repeat == 0 && !hasUnit && unit != measure.Centimetres:
		return message.New("match_mark_unit", "{text} has no unit, and no repeat that would confirm one; labels print centimetres: write {mark} cm", "text", strconv.Quote(text), "mark", text)
	case repeat != 0 && whole != repeat && !hasUnit:
		return message.New("match_mark_differs_unit", "{text} says the repeat is {whole}, but it is stated as {repeat}; labels print centimetres: write {mark} cm if so", "text", strconv.Quote(text), "whole", whole, "repeat", repeat, "mark", text)
	case repeat != 0 && whole != repeat:
		return message.New("match_mark_differs", "{text} says the repeat is {whole}, but it is stated as {repeat}", "text", strconv.Quote(text), "whole", whole, "repeat", repeat)
	}
	return nil
}
