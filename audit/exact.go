package audit

import (
	"cmp"
	"math"
	"math/bits"
)

// height is an exact height: whole + num/den nanometres, 0 ≤ num < den. The
// height of a sloping edge over a whole position is such a number.
type height struct {
	whole    int64
	num, den uint64
}

// level is a height of whole nanometres.
func level(nm int64) height { return height{nm, 0, 1} }

// The heights below and above everything.
var (
	lowest  = level(math.MinInt64 / 2)
	highest = level(math.MaxInt64 / 2)
)

func (h height) compare(other height) int {
	if c := cmp.Compare(h.whole, other.whole); c != 0 {
		return c
	}
	hi1, lo1 := bits.Mul64(h.num, other.den)
	hi2, lo2 := bits.Mul64(other.num, h.den)
	return cmp.Or(cmp.Compare(hi1, hi2), cmp.Compare(lo1, lo2))
}

func (h height) below(other height) bool { return h.compare(other) < 0 }

func lower(a, b height) height {
	if b.below(a) {
		return b
	}
	return a
}

func higher(a, b height) height {
	if a.below(b) {
		return b
	}
	return a
}

// ceil returns the smallest whole height not below h.
func (h height) ceil() int64 {
	if h.num > 0 {
		return h.whole + 1
	}
	return h.whole
}

// quotient returns a·b/c without loss; what is too large for 62 bits is cut
// off there. c must not be 0.
func quotient(a, b, c int64) height {
	hi, lo := bits.Mul64(size(a), size(b))
	d := size(c)
	negative := (a < 0) != (b < 0) != (c < 0) && (hi|lo) != 0
	if hi >= d {
		return limit(negative)
	}
	q, r := bits.Div64(hi, lo, d)
	switch {
	case q >= math.MaxInt64/4:
		return limit(negative)
	case !negative:
		return height{int64(q), r, d}
	case r == 0:
		return height{-int64(q), 0, d}
	}
	return height{-int64(q) - 1, d - r, d}
}

func limit(negative bool) height {
	if negative {
		return level(math.MinInt64 / 4)
	}
	return level(math.MaxInt64 / 4)
}

// nearest returns a·b/c rounded to the nearest whole number, halves away from
// zero.
func nearest(a, b, c int64) int64 {
	h := quotient(a, b, c)
	negative := (a < 0) != (b < 0) != (c < 0)
	switch twice := cmp.Compare(h.num, h.den-h.num); {
	case twice > 0, twice == 0 && !negative:
		return h.whole + 1
	}
	return h.whole
}

func size(n int64) uint64 {
	if n < 0 {
		return -uint64(n)
	}
	return uint64(n)
}

// plus returns the height moved by whole nanometres.
func (h height) plus(nm int64) height {
	h.whole += nm
	return h
}

// mod is n modulo a repeat in [0, repeat); 0 without one.
func mod(n, repeat int64) int64 {
	if repeat <= 0 {
		return 0
	}
	return ((n % repeat) + repeat) % repeat
}

// span is a stretch of whole nanometres.
type span struct{ lo, hi int64 }

func (s span) length() int64 { return s.hi - s.lo }

func (s span) common(other span) span { return span{max(s.lo, other.lo), min(s.hi, other.hi)} }

// rise is a stretch of exact heights.
type rise struct{ foot, head height }

func (r rise) empty() bool { return !r.foot.below(r.head) }

func (r rise) common(other rise) rise {
	return rise{higher(r.foot, other.foot), lower(r.head, other.head)}
}

func (r rise) hull(other rise) rise {
	return rise{lower(r.foot, other.foot), higher(r.head, other.head)}
}

// slope is a straight line through two points with different x, endless both
// ways; from and to bound it where it is an edge.
type slope struct {
	x1, y1, x2, y2 int64 // x1 < x2
	ring           int   // 0: the outline; n: opening n
}

// through returns the line through two points; ok is false for an upright one.
func through(xa, ya, xb, yb int64, ring int) (s slope, ok bool) {
	if xa > xb {
		xa, ya, xb, yb = xb, yb, xa, ya
	}
	return slope{xa, ya, xb, yb, ring}, xa < xb
}

// at returns the line's exact height over the position half/2.
func (s *slope) at(half int64) height {
	if s.y1 == s.y2 {
		return level(s.y1)
	}
	return quotient(s.y2-s.y1, half-2*s.x1, 2*(s.x2-s.x1)).plus(s.y1)
}
