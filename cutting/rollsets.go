package cutting

import "slices"

// rollSets are the sets of pieces that one roll can hold, with what each
// becomes when a piece is added. The last ones, if there is a short roll, are
// those that use no more than its limit, once more.
//
//	{} ─a─ {a} ─b─ {a b} ─a─ -1        an automaton without ways back
//	   ─b─ {b} ─a──┘
//
// Once some kinds have all been hung, many sets differ in nothing that
// matters: they take the same pieces still to come, and lead to such as are
// alike again. Of those alike the one with the highest number stands for all.
type rollSets struct {
	m       int
	next    []int32 // next[s*m+j], -1 if the piece does not fit
	limited bool    // there is a short roll
	short   int32   // the empty set of the short roll
	like    [][]int32
	at      []int32 // index into like for each number of pieces hung
	table   []int32
	number  []int32 // scratch: of the sets listed, 0 if not
}

// maxRollSets bounds the sets told apart; most rooms have some hundred.
const maxRollSets = 8_000

// load lists the sets. It returns false if there are too many.
func (s *rollSets) load(w *work, limit int64) bool {
	if !w.listed && !w.catalogue() || len(w.states.info) > maxRollSets {
		return false
	}
	s.m, s.limited, s.short = w.m, limit > 0, -1
	s.next = s.next[:0]
	n := s.add(w, 0, func(int) bool { return true })
	if s.limited {
		s.short = int32(n)
		s.add(w, n, func(id int) bool { return id == 0 || w.useListed(id) <= limit })
	}
	s.findLike(w.p.kindOf)
	return true
}

// add appends the sets of the catalogue that are wanted, numbered from base on,
// and returns the number of sets there are then.
func (s *rollSets) add(w *work, base int, wanted func(id int) bool) int {
	all := &w.states
	s.number = grow(s.number, len(all.info))
	n := base
	for id := range all.info {
		s.number[id] = -1
		if wanted(id) {
			s.number[id] = int32(n)
			n++
		}
	}
	for id := range all.info {
		if s.number[id] < 0 {
			continue
		}
		for j := range s.m {
			to := int32(-1)
			if k := all.find(id, j); k >= 0 {
				to = s.number[k]
			}
			s.next = append(s.next, to)
		}
	}
	return n
}

// findLike finds the sets alike after each number of pieces.
func (s *rollSets) findLike(kindOf []int32) {
	n := len(kindOf)
	s.at = grow(s.at, n+1)
	left := make([]bool, s.m)
	s.like = append(s.like[:0], s.alike(left))
	s.at[n] = 0
	for i := n - 1; i >= 0; i-- {
		if !left[kindOf[i]] {
			left[kindOf[i]] = true
			s.like = append(s.like, s.alike(left))
		}
		s.at[i] = int32(len(s.like) - 1)
	}
}

// alike returns for each set the one that stands for it if only some kinds are
// left.
func (s *rollSets) alike(left []bool) []int32 {
	sets := len(s.next) / s.m
	like := make([]int32, sets)
	size := 1
	for size < 2*sets {
		size *= 2
	}
	s.table = grow(s.table, size)
	clear(s.table)
	sign := make([]int32, sets*s.m)
	for id := sets - 1; id >= 0; id-- {
		own := sign[id*s.m : id*s.m+s.m]
		hash := uint64(0)
		for j, to := range s.next[id*s.m : id*s.m+s.m] {
			own[j] = -1
			if left[j] && to >= 0 {
				own[j] = like[to]
			}
			hash = mix(hash + uint64(own[j]+1))
		}
		at := int(hash) & (size - 1)
		for s.table[at] != 0 && !slices.Equal(sign[int(s.table[at]-1)*s.m:int(s.table[at])*s.m], own) {
			at = (at + 1) & (size - 1)
		}
		if s.table[at] == 0 {
			s.table[at] = int32(id) + 1
		}
		like[id] = s.table[at] - 1
	}
	return like
}

// likeAt is the set that stands for one when so many pieces are hung.
func (s *rollSets) likeAt(hung int, set int32) int32 { return s.like[s.at[hung]][set] }
