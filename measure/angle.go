package measure

import (
	"fmt"
	"math"

	"firstdrop/message"
)

// Angle is an angle in whole microdegrees. It may be negative, and it may be
// more than a full turn until [Angle.Normalized]. The zero value is no turn.
// A microdegree moves the end of a ten-metre wall by less than 0.2 µm.
//
// Whole degrees and decimal degrees to the sixth place are exact; minutes and
// seconds of arc are rounded to the nearest microdegree, since a sixtieth of a
// degree is not whole.
type Angle int64

// Units of angle, and the largest that [ParseAngle] reads.
const (
	Microdegree Angle = 1
	Degree            = 1_000_000 * Microdegree
	FullTurn          = 360 * Degree
)

// AngleError says why a text is no angle. Why tells what is wrong and what
// would be right; Offset is the byte of Text where the trouble begins.
type AngleError struct {
	Text   string
	Offset int
	Why    message.Message
}

// Error returns the text in quotes and why.
func (e *AngleError) Error() string { return e.Said().Error() }

// Said returns the same to be said in any language.
func (e *AngleError) Said() message.Message { return complaint(e.Text, e.Why) }

// ParseAngle reads an angle as people write it: 90, 90°, 89.5 deg, 89,5°,
// 22 1/2°, 89°30', 89° 30' 15". A bare number is in degrees; minutes and
// seconds need their marks and stay below 60. A comma is always a decimal
// comma, since angles have no thousands. The sum is rounded once to the
// nearest microdegree, halves away from zero. At most ±[FullTurn]. The error
// is an [*AngleError].
func ParseAngle(text string) (Angle, error) {
	p := angleParser{scanner{text: text}}
	a, t := p.angle()
	if t != nil {
		return 0, &AngleError{Text: text, Offset: t.offset, Why: t.why}
	}
	return a, nil
}

// angleParser reads: sign, degrees, and further minutes, and further seconds.
type angleParser struct{ scanner }

const secondsPerDegree = 3600

// angle sums in seconds: whole ones as long as parts follow, and the last part
// as a fraction.
func (p *angleParser) angle() (Angle, *trouble) {
	negative, t := p.start(message.New("example_angle", "90° or 89°30'"))
	if t != nil {
		return 0, t
	}
	seconds := uint64(0)
	for weight := uint64(secondsPerDegree); ; weight /= 60 {
		n, t := p.part(weight)
		if t != nil {
			return 0, t
		}
		if p.skipSpace(); p.isAtEnd() {
			return turned(seconds*n.d+n.n*weight, n, negative)
		}
		if t := p.goesOn(n, weight); t != nil {
			return 0, t
		}
		seconds += n.n * weight
	}
}

// turned returns the angle of total/last.d seconds.
func turned(total uint64, last number, negative bool) (Angle, *trouble) {
	a := Angle(scaled(int64(total), int64(Degree), int64(last.d)*secondsPerDegree))
	if a > FullTurn {
		return 0, &trouble{last.at, message.New("angle_full_turn", "more than a full turn of 360°")}
	}
	if negative {
		return -a, nil
	}
	return a, nil
}

// part reads degrees (weight 3600), minutes (60) or seconds (1) with their sign.
// The bounds keep total·10⁶ within 128 bits and the rest within 64.
func (p *angleParser) part(weight uint64) (number, *trouble) {
	n, t := p.number()
	switch {
	case t != nil:
		return n, t
	case n.d > 1_000_000_000:
		return n, &trouble{n.at, message.New("angle_decimals", "more than nine decimals; six make a microdegree")}
	case weight == secondsPerDegree && n.n > 360*n.d:
		return n, &trouble{n.at, message.New("angle_full_turn", "more than a full turn of 360°")}
	case weight < secondsPerDegree && n.n >= 60*n.d:
		return n, &trouble{n.at, message.New("angle_below_60", "minutes and seconds stay below 60")}
	}
	p.skipSpace()
	return n, p.sign(weight)
}

// sign reads the mark of a part. Only degrees at the end may go without.
func (p *angleParser) sign(weight uint64) *trouble {
	at := p.pos
	switch marks := p.markCount(); {
	case weight == 60 && marks == 1, weight == 1 && marks == 2:
		return nil
	case weight == secondsPerDegree && marks == 0:
		return p.degreeSign(at)
	}
	return &trouble{at, message.New("angle_marks", `write degrees, minutes and seconds as 89° 30' 15"`)}
}

func (p *angleParser) degreeSign(at int) *trouble {
	if p.accept("°º") || p.isAtEnd() {
		return nil
	}
	switch p.word() {
	case "deg", "degree", "degrees":
		return nil
	}
	return &trouble{at, message.New("angle_sign", "no sign of an angle; write 89.5°, 89.5 deg or 89°30'")}
}

// goesOn refuses a further part behind seconds or behind decimals.
func (p *angleParser) goesOn(n number, weight uint64) *trouble {
	switch {
	case weight == 1:
		return &trouble{p.pos, message.New("angle_goes_on", "nothing may follow the seconds, not {character}", "character", fmt.Sprintf("%q", p.peek()))}
	case !n.isWhole:
		return &trouble{n.at, message.New("only_last_part", "only the last part may have decimals or a fraction")}
	}
	return nil
}

// String returns the exact angle in degrees with as many of six decimals as it
// needs: "90°", "-0.25°". Up to [FullTurn] [ParseAngle] reads it back.
func (a Angle) String() string { return string(append(appendDecimal(nil, int64(a), 6), "°"...)) }

// Normalized returns the angle of the same direction in [0°, 360°).
func (a Angle) Normalized() Angle {
	a %= FullTurn
	if a < 0 {
		a += FullTurn
	}
	return a
}

// Sin returns the sine, for drawing and for the adjustment of a survey only: a
// float never decides what is cut. It is exact at whole quarter turns; elsewhere
// the error is that of [math.Sin] and of one rounding of the argument, below
// 2e-15.
func (a Angle) Sin() float64 {
	switch a = a.Normalized(); a {
	case 0, FullTurn / 2:
		return 0
	case FullTurn / 4:
		return 1
	case FullTurn / 4 * 3:
		return -1
	}
	return math.Sin(float64(a) / float64(FullTurn/2) * math.Pi)
}

// Cos returns the cosine, with the same limits as [Angle.Sin].
func (a Angle) Cos() float64 { return (a.Normalized() + FullTurn/4).Sin() }

// MarshalText writes what [Angle.String] returns.
func (a Angle) MarshalText() ([]byte, error) { return []byte(a.String()), nil }

// UnmarshalText reads what [ParseAngle] reads; a is unchanged by an error.
func (a *Angle) UnmarshalText(text []byte) error {
	read, err := ParseAngle(string(text))
	if err == nil {
		*a = read
	}
	return err
}
