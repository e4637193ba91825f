package audit

import (
	"math/bits"

	"firstdrop/paper"
)

// shift returns by how much the design of drop i stands further along the roll
// than that of drop 0 at the same height, in [0, repeat): i times the stated
// part of the repeat, or i times the stated length. For a part, the whole of
// i·num/den is taken off before the one rounding.
func shift(p *paper.Paper, i int) int64 {
	repeat := int64(p.Repeat)
	if repeat <= 0 || p.Match.Kind != paper.Offset {
		return 0
	}
	if den := p.Match.Den; den > 0 {
		part := times(mod(int64(i), den), mod(p.Match.Num, den), den)
		return mod(nearest(repeat, part, den), repeat)
	}
	return times(mod(int64(i), repeat), mod(int64(p.Match.Length), repeat), repeat)
}

// times returns a·b modulo n for a and b in [0, n).
func times(a, b, n int64) int64 {
	hi, lo := bits.Mul64(uint64(a), uint64(b))
	return int64(bits.Rem64(hi, lo, uint64(n)))
}

// standing returns how high the design of drop i stands: the height, modulo
// the repeat, of the points of phase 0 on a drop hung head first. A reversed
// drop shows the same marks at the same heights.
func standing(p *paper.Paper, design int64, i int) int64 {
	return mod(mod(design, int64(p.Repeat))+shift(p, i), int64(p.Repeat))
}

// phaseAt returns the phase that drop i shows at height y, counted along the
// roll: downwards from the head, or upwards on a drop hung upside down.
func phaseAt(p *paper.Paper, design int64, i int, reversed bool, y int64) int64 {
	repeat := int64(p.Repeat)
	if repeat <= 0 {
		return 0
	}
	down := mod(standing(p, design, i)-mod(y, repeat), repeat)
	if reversed {
		return mod(-down, repeat)
	}
	return down
}

// centred returns n modulo a repeat in (−repeat/2, repeat/2]; 0 without one.
func centred(n, repeat int64) int64 {
	m := mod(n, repeat)
	if m > repeat-m {
		m -= repeat
	}
	return m
}
