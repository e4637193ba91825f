package paper

import (
	"math/bits"

	"firstdrop/measure"
)

// Shift returns how far along the roll, at equal height on the wall, the
// design of drop i stands against that of drop 0: a value in [0, Repeat). i
// counts to the right and may be negative. It is computed from i in one
// rounding (to the nearest nanometre), never by adding a rounded step, so thirds
// do not drift. It is 0 without a repeat and for any match but an offset.
func (p *Paper) Shift(i int) measure.Length {
	if p.Match.Kind != Offset || p.Repeat <= 0 {
		return 0
	}
	if p.Match.Den <= 0 {
		return measure.Length(cycle(i, int64(p.Match.Length), int64(p.Repeat)))
	}
	part := cycle(i, p.Match.Num, p.Match.Den)
	return p.Repeat.Scaled(part, p.Match.Den).Mod(p.Repeat)
}

// cycle returns i·step modulo n, in [0, n), exact for all i and step. n > 0.
func cycle(i int, step, n int64) int64 {
	k := measure.Length(i).Mod(measure.Length(n))
	s := measure.Length(step).Mod(measure.Length(n))
	hi, lo := bits.Mul64(uint64(k), uint64(s))
	return int64(bits.Rem64(hi, lo, uint64(n)))
}

// Alternatives returns after how many drops the first comes back, which is how
// many different drops there are at one height: 1 for a free or straight
// match, 2 for a half drop, 3 for a third, 8 for 64/24. With alternate drops
// reversed the first comes back the same way up only after an even number.
func (p *Paper) Alternatives() int {
	n := int64(1)
	if p.Match.Kind == Offset && p.Repeat > 0 {
		step, whole := p.Match.Num, p.Match.Den
		if whole <= 0 {
			step, whole = int64(p.Match.Length), int64(p.Repeat)
		}
		n = whole / gcd(whole, int64(measure.Length(step).Mod(measure.Length(whole))))
	}
	if p.Match.Reversing && n%2 != 0 {
		n *= 2
	}
	return int(n)
}

// gcd returns the greatest common divisor of a > 0 and b ≥ 0; a when b is 0.
func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// IsReversed reports whether drop i hangs upside down.
func (p *Paper) IsReversed(i int) bool { return p.Match.Reversing && i%2 != 0 }

// Phase returns the design phase that drop i shows at height y above the
// datum, for a layout with the given design height: the phase that drop 0
// shows at the datum. Phases count along the roll. On a drop hung head first
// they grow downwards:
//
//	phase = design − y + Shift(i)   (mod repeat)
//
// On a reversed drop the same marks stand at the same heights, and phases grow
// upwards: phase = y − design − Shift(i) (mod repeat). Without a repeat it is 0.
func (p *Paper) Phase(i int, design, y measure.Length) measure.Length {
	phase := design - y + p.Shift(i)
	if p.IsReversed(i) {
		phase = -phase
	}
	return phase.Mod(p.Repeat)
}
