package audit

import (
	"math/bits"
	"slices"
)

// sets lists, one after the other, the sets of pieces that fit a roll whatever
// it begins with. A set that does not fit cannot be part of one that does, so
// sets grow piece by piece, in the order of kinds:
//
//	{} ── {a} ── {a a} ── {a a c}
//	  \      \─ {a b}
//	   ── {b} …
//
// A set need not be grown when what is left of the roll could not bring it
// over the limit even if filled with the kind that weighs most for its length.
type sets struct {
	r     *rolls
	room  int64 // of a roll, behind its lead, with what is lost at the last cut
	kinds []kind
	dense []kind // for each kind, the one of it and those after it that weighs most for its length
	count []int  // of each kind in the set at hand
	steps int

	// Scratch of fits.
	failed       int     // the kind past whose phase a start has last failed
	stride, used []int   // distance between smaller sets that differ by one of a kind used
	end          []int64 // earliest end of each smaller set
	left         []int   // of each kind, not yet cut
}

// mostSets is how many sets are looked at before it is given up.
const mostSets = 100_000

func newSets(r *rolls, kinds []kind, w *ware) *sets {
	s := &sets{r: r, room: w.length - r.lead + r.loss, kinds: kinds, dense: slices.Clone(kinds), count: make([]int, len(kinds))}
	for i := len(kinds) - 2; i >= 0; i-- {
		if denser(&s.dense[i+1], &s.dense[i]) {
			s.dense[i] = s.dense[i+1]
		}
	}
	return s
}

// denser reports whether a weighs more for its length than b.
func denser(a, b *kind) bool {
	hi1, lo1 := bits.Mul64(uint64(a.weight), uint64(b.length))
	hi2, lo2 := bits.Mul64(uint64(b.weight), uint64(a.length))
	return hi1 > hi2 || hi1 == hi2 && lo1 > lo2
}

// heaviest returns a weight above the limit if some set that fits every start
// has one, and a weight up to it if none has; whole is false when there were
// too many sets to tell.
func (s *sets) heaviest(limit int64) (weight int64, whole bool) {
	s.steps = 0
	return s.grow(0, 0, s.room, limit)
}

// grow tries all sets that the one at hand can grow to with kinds from i on.
func (s *sets) grow(i int, weight, left, limit int64) (best int64, whole bool) {
	best = weight
	for ; i < len(s.kinds); i++ {
		k := &s.kinds[i]
		if s.count[i] == k.count || k.length > left || !s.promises(i, weight+k.weight, left-k.length, limit) {
			continue
		}
		if s.steps++; s.steps > mostSets {
			return best, false
		}
		s.count[i]++
		heavier, all := weight, true
		switch {
		case !s.fits():
		case weight+k.weight > limit:
			heavier = weight + k.weight
		default:
			heavier, all = s.grow(i, weight+k.weight, left-k.length, limit)
		}
		s.count[i]--
		best = max(best, heavier)
		if best > limit || !all {
			return best, all
		}
	}
	return best, true
}

// promises reports whether a set of some weight may come over the limit with
// kinds from i on in what is left of the roll.
func (s *sets) promises(i int, weight, left, limit int64) bool {
	if weight > limit {
		return true
	}
	d := &s.dense[i]
	hi, lo := bits.Mul64(uint64(limit-weight), uint64(d.length))
	return over(uint64(d.weight), uint64(left), hi, lo)
}

// over reports whether a·b exceeds the product hi, lo.
func over(a, b, hi, lo uint64) bool {
	h, l := bits.Mul64(a, b)
	return h > hi || h == hi && l > lo
}

// fits reports whether the set at hand can be cut from a roll of any start. The
// end of the best order, counted in the design, is the same for all starts
// between two phases of the set, so the earliest of them, one past a phase,
// leaves least of the roll.
func (s *sets) fits() bool {
	if s.count[s.failed] > 0 && !s.fitsFrom(s.kinds[s.failed].phase+1) {
		return false
	}
	for i, n := range s.count {
		if n > 0 && i != s.failed && !s.fitsFrom(s.kinds[i].phase+1) {
			s.failed = i
			return false
		}
	}
	return true
}

// mostSmaller is of how many smaller sets the ends are worked out.
const mostSmaller = 1 << 14

// fitsFrom reports whether some order of the set fits if cutting begins at a
// phase, behind the lead: that which is quickly found, or else the best, from the earliest
// end of every smaller set, in turn.
func (s *sets) fitsFrom(start int64) bool {
	s.stride, s.used = s.stride[:0], s.used[:0]
	n := 1
	for i, c := range s.count {
		if c == 0 {
			continue
		}
		s.used, s.stride = append(s.used, i), append(s.stride, n)
		n *= c + 1
	}
	switch {
	case s.fitsByNext(start):
		return true
	case n > mostSmaller:
		return true // too many orders to try: taken to fit, which is never too mild
	}
	s.end = slices.Grow(s.end[:0], n)[:n]
	for i := range s.end {
		s.end[i] = most
	}
	s.end[0] = start
	for at, x := range s.end {
		for j, i := range s.used {
			if at/s.stride[j]%(s.count[i]+1) == s.count[i] {
				continue
			}
			k := &s.kinds[i]
			to := at + s.stride[j]
			s.end[to] = min(s.end[to], x+mod(k.phase-x, s.r.repeat)+k.length)
		}
	}
	return s.end[n-1]-start <= s.room
}

// fitsByNext reports whether the set fits if each time the piece is cut that the design
// comes to first.
func (s *sets) fitsByNext(start int64) bool {
	s.left = append(s.left[:0], s.count...)
	for end := start; ; {
		next, gap := -1, s.r.repeat
		for _, i := range s.used {
			if s.left[i] == 0 {
				continue
			}
			if d := mod(s.kinds[i].phase-end, s.r.repeat); next < 0 || d < gap {
				next, gap = i, d
			}
		}
		if next < 0 {
			return end-start <= s.room
		}
		s.left[next]--
		end += gap + s.kinds[next].length
	}
}
