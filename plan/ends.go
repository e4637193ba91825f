package plan

import "math/bits"

// ends is a set of places where halves may end, by index.
type ends [2]uint64

// mostEnds is how many there may be; in a run with more nobody looks ahead.
const mostEnds = 128

// oneEnd returns the set of one.
func oneEnd(e int) (n ends) {
	n[e/64] = 1 << (e % 64)
	return n
}

// has reports whether one is in the set.
func (n ends) has(e int) bool { return n[e/64]>>(e%64)&1 != 0 }

// isEmpty reports whether none is.
func (n ends) isEmpty() bool { return n == ends{} }

// or returns the set of all that are in either set.
func (n ends) or(m ends) ends { return ends{n[0] | m[0], n[1] | m[1]} }

// and returns the set of all that are in both.
func (n ends) and(m ends) ends { return ends{n[0] & m[0], n[1] & m[1]} }

// without returns the set of all that are not in the other.
func (n ends) without(m ends) ends { return ends{n[0] &^ m[0], n[1] &^ m[1]} }

// next returns the first of a set that is not empty, and the others.
func (n ends) next() (e int, others ends) {
	if n[0] != 0 {
		return bits.TrailingZeros64(n[0]), ends{n[0] & (n[0] - 1), n[1]}
	}
	return 64 + bits.TrailingZeros64(n[1]), ends{0, n[1] & (n[1] - 1)}
}

// count returns how many they are.
func (n ends) count() int { return bits.OnesCount64(n[0]) + bits.OnesCount64(n[1]) }
