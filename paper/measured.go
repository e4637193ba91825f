package paper

import (
	"fmt"

	"firstdrop/measure"
	"firstdrop/message"
)

// Labels are wrong at times: a "drop" that is a cycle of four strips, 25 1/4 in of drop
// that are 5 in and straight (trade diaries: wallpaperlady.wordpress.com, 2018/08/14 and
// tag/pattern-repeat). So before the first cut a few strips are laid side by side on the
// floor, their edges so that the design meets, and one motif is looked for in each:
//
//	   1     2     3     4
//	┌─────┬─────┬─────┬─────┐
//	│  ◆  │     │  ◆  │     │   ┐ lower in 2 and 4 than in 1; in 3 by nothing:
//	│     │  ◆  │     │  ◆  │   ┘ a half drop
//	│  ◆  │     │  ◆  │     │   from ◆ to ◆ in one strip: the repeat
//	└─────┴─────┴─────┴─────┘
//
// The next strip at the same height is a straight match, the second a half drop, the third
// or a later one a multiple drop; where the label says otherwise the paper is right.

// Design is how a design recurs: along the roll, and from drop to drop.
type Design struct {
	Repeat measure.Length // 0: it does not
	Match  Match
}

// Measured is what was measured of a design on strips laid side by side.
type Measured struct {
	Repeat measure.Length   // from one motif to the next like it, along one strip; > 0
	Lower  []measure.Length // how much lower than in the first strip it stands in the second, third …; negative: higher
}

// mostStrips is up to how many strips a cycle is looked for: more nobody lays side by side,
// and no label is known to ask for (common practice).
const mostStrips = 8

// MeasuredError says which figure cannot be. Field is its name in a job document, below
// what was measured: "repeat", "lower", "lower[2]", counted from 0.
type MeasuredError struct {
	Field string
	What  message.Message
}

// Error says what is wrong.
func (e *MeasuredError) Error() string { return e.What.Error() }

// Design returns the design that was measured: straight, or the least part of the repeat
// that goes with all strips to within what a tape can tell, or else the length by which the
// second strip is off. It fails with a [*MeasuredError] when there is no such figure, or
// strips contradict each other.
func (m *Measured) Design() (Design, error) {
	refuse := func(field, code, text string, args ...any) (Design, error) {
		return Design{}, &MeasuredError{field, message.New(code, text, args...)}
	}
	switch {
	case m.Repeat <= 0:
		return refuse("repeat", "measured_repeat", "what was measured needs a repeat of more than 0: from one motif to the next like it, along one strip")
	case m.Repeat > measure.MaxLength:
		return refuse("repeat", "measured_large", "{size} is more than any strip is long", "size", m.Repeat)
	case len(m.Lower) == 0:
		return refuse("lower", "measured_strips", "say by how much lower the motif stands in the second strip than in the first: 0 where it is level")
	}
	for k, l := range m.Lower {
		if l.Abs() > measure.MaxLength {
			return refuse(fmt.Sprintf("lower[%d]", k), "measured_large", "{size} is more than any strip is long", "size", l)
		}
	}
	for den := int64(1); den <= mostStrips; den++ {
		if num, ok := m.part(den); ok && den == 1 {
			return Design{m.Repeat, Match{Kind: Straight}}, nil
		} else if ok {
			return Design{m.Repeat, Match{Kind: Offset, Num: num, Den: den}}, nil
		}
	}
	step, off := (-m.Lower[0]).Mod(m.Repeat), measure.Length(0)
	for k, l := range m.Lower {
		want := measure.Length(cycle(k+1, int64(step), int64(m.Repeat)))
		if step != 0 {
			off += m.tells() // that each strip may be off the one before; of level ones all are told already
		}
		if m.apart(want, -l) > max(off, m.tells()) {
			return refuse(fmt.Sprintf("lower[%d]", k), "measured_contradicts",
				"{size} in strip {strip} does not go with strip 2: by that it would be {want}; lay the strips out and measure again",
				"size", l, "strip", k+2, "want", m.nearest(-want))
		}
	}
	return Design{m.Repeat, Match{Kind: Offset, Length: step}}, nil
}

// part returns how many parts of so many of the repeat every strip stands further on than
// the one before, so that it goes with all that was measured; false if none does.
func (m *Measured) part(den int64) (num int64, ok bool) {
	best := measure.MaxLength
	for n := int64(0); n < den; n++ {
		if gcd(den, n) != 1 && den > 1 {
			continue
		}
		off := measure.Length(0)
		for k, l := range m.Lower {
			off = max(off, m.apart(m.Repeat.Scaled(cycle(k+1, n, den), den), -l))
		}
		if off <= m.tells() && off < best {
			num, best, ok = n, off, true
		}
	}
	return num, ok
}

// apart returns how far two places in the repeat are apart, the shorter way round.
func (m *Measured) apart(a, b measure.Length) measure.Length {
	d := (a - b).Mod(m.Repeat)
	return min(d, m.Repeat-d)
}

// nearest returns a place in the repeat as the lower or the higher, whichever is less.
func (m *Measured) nearest(l measure.Length) measure.Length {
	if l = l.Mod(m.Repeat); l > m.Repeat/2 {
		l -= m.Repeat
	}
	return l
}

// tells returns how much a tape tells of where a motif stands: 5 mm, less in a small
// repeat, but never less than 1 mm (common practice).
func (m *Measured) tells() measure.Length {
	return max(min(5*measure.Millimetre, m.Repeat/40), measure.Millimetre)
}

// IsMislabelled reports whether the design was measured, and is not what the label says.
func (p *Paper) IsMislabelled() bool {
	d := Design{p.Repeat, p.Match}
	return p.Printed != nil && !d.keepsTo(p.Printed)
}

// keepsTo reports whether a design is another as far as a tape tells.
func (d *Design) keepsTo(other *Design) bool {
	if (d.Repeat > 0) != (other.Repeat > 0) {
		return false
	}
	if d.Repeat == 0 {
		return true
	}
	m := Measured{Repeat: d.Repeat}
	return (d.Repeat-other.Repeat).Abs() <= m.tells() && m.apart(d.next(), other.next()) <= m.tells()
}

// next returns how much further on along the roll the next drop stands, at equal height.
func (d *Design) next() measure.Length {
	p := Paper{Repeat: d.Repeat, Match: d.Match}
	return p.Shift(1)
}

// lower returns how much lower the same motif stands in the next drop, in [0, Repeat).
func (d *Design) lower() measure.Length {
	if d.Repeat == 0 {
		return 0
	}
	return (-d.next()).Mod(d.Repeat)
}
