package measure

import "math/bits"

// Length is a distance in whole nanometres. It may be negative: a position to
// the left of a corner, a point below the datum. The zero value is no distance.
//
// One millimetre and one sixty-fourth of an inch (396 875 nm) are both whole,
// so both unit systems live in one type without drift. As with time.Duration,
// divide to count and multiply to make:
//
//	drops := int64(wall / width)     // a plain number
//	cut := 3 * measure.Metre         // a length
//
// The range is about ±9.2 million kilometres; [ParseLength] accepts at most
// [MaxLength]. Never multiply two Lengths: use [Length.Times], which gives an
// [Area].
type Length int64

// Units of length. An inch is 25.4 mm by definition (international yard and
// pound agreement of 1959), hence the fractions of an inch are whole too.
const (
	Nanometre   Length = 1
	Micrometre         = 1000 * Nanometre
	Millimetre         = 1000 * Micrometre
	Centimetre         = 10 * Millimetre
	Metre              = 1000 * Millimetre
	Inch               = 25_400_000 * Nanometre
	SixtyFourth        = Inch / 64
	Sixteenth          = Inch / 16
	Foot               = 12 * Inch
	Yard               = 3 * Foot
	MaxLength          = 1000 * Metre
)

// Abs returns the length without its sign.
func (l Length) Abs() Length {
	if l < 0 {
		return -l
	}
	return l
}

// Mod returns the position of l within a repeat of p: a value in [0, p), also
// for negative l. For p = 0 (no repeat) it is 0.
func (l Length) Mod(p Length) Length {
	if p <= 0 {
		return 0
	}
	r := l % p
	if r < 0 {
		r += p
	}
	return r
}

// CeilTo returns the smallest multiple of step that is not below l; l itself
// for a step of 0 or less.
func (l Length) CeilTo(step Length) Length {
	if step <= 0 {
		return l
	}
	return l + (-l).Mod(step)
}

// FloorTo returns the largest multiple of step that is not above l; l itself
// for a step of 0 or less.
func (l Length) FloorTo(step Length) Length {
	if step <= 0 {
		return l
	}
	return l - l.Mod(step)
}

// RoundTo returns the multiple of step nearest to l, halves away from zero; l
// itself for a step of 0 or less.
func (l Length) RoundTo(step Length) Length {
	if step <= 0 {
		return l
	}
	if l < 0 {
		return -(-l).RoundTo(step)
	}
	return (l + step/2).FloorTo(step)
}

// Scaled returns l·num/den rounded to the nearest nanometre, halves away from
// zero, computed in 128 bits so that nothing overflows on the way. den must
// not be zero and the result must fit a Length; both are the caller's duty.
func (l Length) Scaled(num, den int64) Length { return Length(scaled(int64(l), num, den)) }

// scaled returns n·num/den to the nearest whole number, halves away from zero.
func scaled(n, num, den int64) int64 {
	neg := (n < 0) != (num < 0) != (den < 0)
	q := scaledUp(magnitude(n), magnitude(num), magnitude(den))
	if neg {
		return -int64(q)
	}
	return int64(q)
}

// scaledUp returns n·num/den to the nearest whole number, halves up. Few products need
// more than 64 bits, and these are slow, above all in a browser.
func scaledUp(n, num, den uint64) uint64 {
	if bits.Len64(n)+bits.Len64(num) < 64 {
		return (n*num + den/2) / den
	}
	hi, lo := bits.Mul64(n, num)
	lo, carry := bits.Add64(lo, den/2, 0)
	q, _ := bits.Div64(hi+carry, lo, den)
	return q
}

// magnitude returns |n|, also for the smallest int64.
func magnitude(n int64) uint64 {
	if n < 0 {
		return -uint64(n)
	}
	return uint64(n)
}
