package cutting

// The order on one roll.
//
// Between two cuts lies the wait for the next piece's phase, and it depends on
// who follows whom:
//
//	|== a ==|..|=== b ===|......|== c ==|      a b c: waits .. and ......
//	|== a ==|.|== c ==|..|=== b ===|           a c b: shorter
//
// To end earlier is never worse, so for a set M of pieces only the earliest
// end matters:
//
//	f(M) = min over j in M of next(f(M less j), j),  f(nothing) = first node
//
// over all sub-multisets of M: exact, and small, because a roll holds few
// different kinds. Where it is not small (many short kinds on one roll) the
// sorter declines and the order already known is kept.
//
// The rule of the waits is that of R. S. Garfinkel, "Minimizing Wallpaper
// Waste, Part 1", Operations Research 25(5), 1977 (as restated in H. A. Taha,
// Operations Research: An Introduction, problem 11-13), who treats one endless
// roll.
type sorter struct {
	kind  []int16 // distinct kinds of the set
	count []int32
	step  []int32 // distance in f between M and M less one of the kind
	digit []int32
	f     []int32
	size  int // number of sub-multisets
	out   []int16
}

const maxSubsets = 1 << 15

// load takes the set of kinds in seq, in any order. It returns false if the
// set has too many sub-multisets to look at.
func (s *sorter) load(seq []int16) bool {
	s.kind, s.count, s.step = s.kind[:0], s.count[:0], s.step[:0]
	for _, j := range seq {
		i := 0
		for i < len(s.kind) && s.kind[i] < j {
			i++
		}
		if i < len(s.kind) && s.kind[i] == j {
			s.count[i]++
			continue
		}
		s.kind, s.count = append(s.kind, 0), append(s.count, 0)
		copy(s.kind[i+1:], s.kind[i:])
		copy(s.count[i+1:], s.count[i:])
		s.kind[i], s.count[i] = j, 1
	}
	s.size = 1
	for _, c := range s.count {
		s.step = append(s.step, int32(s.size))
		s.size *= int(c) + 1
		if s.size > maxSubsets {
			return false
		}
	}
	return true
}

// earliest returns the node where the loaded set ends when cut as early as
// possible from node from on; nodes() if that is off the roll.
func (s *sorter) earliest(g *graph, from int32) int32 {
	s.f = grow(s.f, s.size)
	s.digit = grow(s.digit, len(s.kind))
	clear(s.digit)
	off := int32(g.nodes())
	s.f[0] = from
	for at := 1; at < s.size; at++ {
		for i := 0; ; i++ {
			if s.digit[i] < s.count[i] {
				s.digit[i]++
				break
			}
			s.digit[i] = 0
		}
		least := off
		for i, d := range s.digit {
			if d == 0 {
				continue
			}
			if v := s.f[at-int(s.step[i])]; v < off {
				least = min(least, g.next[int(v)*g.kinds+int(s.kind[i])])
			}
		}
		s.f[at] = least
	}
	return s.f[s.size-1]
}

// order returns a cutting order that reaches the end found by the last call
// of earliest, which must not have been off the roll. Where several kinds may
// be cut last, the one listed last is.
func (s *sorter) order(g *graph) []int16 {
	s.out = s.out[:0]
	copy(s.digit, s.count)
	for at := s.size - 1; at > 0; {
		for i := len(s.kind) - 1; i >= 0; i-- {
			if s.digit[i] == 0 {
				continue
			}
			v := s.f[at-int(s.step[i])]
			if int(v) < g.nodes() && g.next[int(v)*g.kinds+int(s.kind[i])] == s.f[at] {
				s.out = append(s.out, s.kind[i])
				at -= int(s.step[i])
				s.digit[i]--
				break
			}
		}
	}
	for a, b := 0, len(s.out)-1; a < b; a, b = a+1, b-1 {
		s.out[a], s.out[b] = s.out[b], s.out[a]
	}
	return s.out
}

// walk returns the node where the pieces end when cut in exactly this order
// from node from on; nodes() if that is off the roll.
func (g *graph) walk(from int32, seq []int16) int32 {
	off := int32(g.nodes())
	for _, j := range seq {
		if from == off {
			return off
		}
		from = g.next[int(from)*g.kinds+int(j)]
	}
	return from
}
