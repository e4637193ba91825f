package geom

import (
	"cmp"
	"math/bits"

	"firstdrop/measure"
)

// wide is a signed whole number of 128 bits in two's complement: a product of
// two lengths, or a sum of such products. Lengths up to [measure.MaxLength]
// take 41 bits with their sign, so that even a sum of millions of products of
// their differences fits.
type wide struct {
	hi int64
	lo uint64
}

// product returns a·b without loss.
func product(a, b measure.Length) wide {
	hi, lo := bits.Mul64(uint64(a), uint64(b))
	if a < 0 {
		hi -= uint64(b)
	}
	if b < 0 {
		hi -= uint64(a)
	}
	return wide{int64(hi), lo}
}

func (w wide) plus(other wide) wide {
	lo, carry := bits.Add64(w.lo, other.lo, 0)
	hi, _ := bits.Add64(uint64(w.hi), uint64(other.hi), carry)
	return wide{int64(hi), lo}
}

func (w wide) minus(other wide) wide {
	lo, borrow := bits.Sub64(w.lo, other.lo, 0)
	hi, _ := bits.Sub64(uint64(w.hi), uint64(other.hi), borrow)
	return wide{int64(hi), lo}
}

// compare returns −1, 0 or 1 as w is less than, equal to or greater than other.
func (w wide) compare(other wide) int {
	return cmp.Or(cmp.Compare(w.hi, other.hi), cmp.Compare(w.lo, other.lo))
}

func (w wide) abs() wide {
	if w.hi < 0 {
		return wide{}.minus(w)
	}
	return w
}

// dividedBy returns w/d rounded to the nearest whole number, halves up. It
// asks for w ≥ 0; a quotient of more than 63 bits becomes the largest there is.
func (w wide) dividedBy(d uint64) int64 {
	lo, carry := bits.Add64(w.lo, d/2, 0)
	hi := uint64(w.hi) + carry
	if hi >= d {
		return 1<<63 - 1
	}
	q, _ := bits.Div64(hi, lo, d)
	return int64(min(q, 1<<63-1))
}
