package cutting

import (
	"cmp"
	"slices"
)

// All rolls worth considering.
//
// Once weights and capacity are known, a plan of K rolls may waste at most
// K·capacity - total weight, so only rolls heavier than capacity less that
// waste can occur in it. They are listed by growing sets of pieces one by one
// along one lane:
//
//	{} ── {a} ── {a a} ── {a a c}        a set is kept with its earliest end,
//	  \      \              /            and only while weight + gain(end) can
//	   ── {b} ── {a b} ── {a b c}        still reach the wanted weight
//
// Every set that fits is reached along its own best order, and each of the
// sets on the way passes the same test; a set that is not good for all starts
// is a dead end, since no larger one can be.
type states struct {
	m      int
	count  []uint16 // m per set: copies of each kind
	info   []state
	table  []int32  // open addressing over info, plus one; 0 is empty
	key    []uint64 // random-looking number per kind; a set's hash is their sum
	set    []uint16 // scratch
	lanes  int      // starts per set in a catalogue, see catalogue.go
	ends   []int32  // of the sets in a catalogue, from each start
	larger []int16  // kinds that can be added to a set, see state.larger
	list   []int32  // the sets heavy enough, by first kind, heaviest first
	start  []int32  // where the list of each first kind begins
	least  int64    // the weight all listed sets have
	unsure bool     // a set had too many sub-multisets to say whether it fits
}

type state struct {
	hash     uint64
	weight   int64
	end      int32
	parent   int32
	size     int32
	kind     int16 // added last
	dead     bool
	from, to int32 // larger[from:to] are the kinds that can be added
}

const (
	maxStates = 60_000
)

// listRolls fills s with all sets of at most the demand that fit, weigh at
// least least under w.weight, and are good for all starts. They are grown
// along the given exact lane and end no later there than at node last. It
// returns false if there are too many.
func (w *work) listRolls(s *states, lane int, last int32, least int64) bool {
	s.reset(w.m)
	s.least = least
	from := w.n.exact[lane].from
	g := &w.n.plan
	w.gain = grow(w.gain, len(g.at))
	w.steps++
	if last < from || g.pass(from, last, w.weight, w.gain) < least {
		s.link(w.p.demand)
		return true
	}
	s.push(0, -1, -1, 0, from)
	for at := 0; at < len(s.info); at++ {
		if s.info[at].dead {
			continue
		}
		if w.steps++; w.spent() || s.unsure || len(s.info) > maxStates {
			return false
		}
		for j, to := range g.row(s.info[at].end) {
			if to > last || int32(s.count[at*s.m+j]) >= w.p.demand[j] {
				continue
			}
			weight := s.info[at].weight + w.weight[j]
			if weight+w.gain[to] >= least {
				w.reach(s, at, j, to, weight)
			}
		}
	}
	s.link(w.p.demand)
	return true
}

// reach records in s that set at with one more piece of kind j ends at node to.
func (w *work) reach(s *states, at, j int, to int32, weight int64) {
	id := s.find(at, j)
	if id >= 0 {
		if st := &s.info[id]; to < st.end {
			st.end, st.parent, st.kind = to, int32(at), int16(j)
		}
		return
	}
	id = s.push(s.info[at].hash+s.key[j], int32(at), int16(j), weight, to)
	if len(w.n.safe) > 1 {
		w.seq = s.sequence(w.seq[:0], int32(id))
		s.info[id].dead = !w.fits(w.seq)
		s.unsure = s.unsure || s.info[id].dead && w.sort.size > maxSubsets
	}
}

func (s *states) reset(m int) {
	s.m = m
	s.count, s.info, s.larger, s.list = s.count[:0], s.info[:0], s.larger[:0], s.list[:0]
	s.lanes, s.ends, s.unsure = 0, s.ends[:0], false
	if len(s.table) == 0 {
		s.table = make([]int32, 1<<10)
	}
	clear(s.table)
	for len(s.key) < m {
		s.key = append(s.key, keyOf(len(s.key)))
	}
}

// keyOf is the random-looking number of a kind.
func keyOf(j int) uint64 { return mix(0x9e3779b97f4a7c15 * uint64(j+1)) }

// hash is that of a number of pieces of each kind.
func (s *states) hash(count []int32) uint64 {
	sum := uint64(0)
	for j, n := range count {
		sum += uint64(n) * s.key[j]
	}
	return mix(sum)
}

// mix scrambles a number (the finaliser of splitmix64, public domain).
func mix(x uint64) uint64 {
	x = (x ^ x>>30) * 0xbf58476d1ce4e5b9
	x = (x ^ x>>27) * 0x94d049bb133111eb
	return x ^ x>>31
}

// push adds a set: that of parent and one more piece of the kind.
func (s *states) push(hash uint64, parent int32, kind int16, weight int64, end int32) int {
	id := len(s.info)
	lo := len(s.count)
	if parent < 0 {
		s.count = append(s.count, make([]uint16, s.m)...)
		s.info = append(s.info, state{hash: hash, end: end, parent: -1, kind: -1})
	} else {
		s.count = append(s.count, s.count[int(parent)*s.m:int(parent)*s.m+s.m]...)
		s.count[lo+int(kind)]++
		s.info = append(s.info, state{
			hash: hash, weight: weight, end: end, parent: parent, kind: kind, size: s.info[parent].size + 1,
		})
	}
	if 2*len(s.info) > len(s.table) {
		s.table = make([]int32, 2*len(s.table))
		for i := range s.info[:id] {
			s.insert(i)
		}
	}
	s.insert(id)
	return id
}

func (s *states) insert(id int) {
	mask := len(s.table) - 1
	at := int(mix(s.info[id].hash)) & mask
	for s.table[at] != 0 {
		at = (at + 1) & mask
	}
	s.table[at] = int32(id) + 1
}

// find returns the number of the set that holds one piece of kind j more than
// set at; -1 if it is not there.
func (s *states) find(at, j int) int {
	set := s.counts(at)
	set[j]++
	id := s.lookup(set, s.info[at].hash+s.key[j])
	set[j]--
	return id
}

// lookup returns the number of the set with these counts and this hash; -1 if
// it is not there. Equal hashes are compared piece by piece.
func (s *states) lookup(set []uint16, hash uint64) int {
	mask := len(s.table) - 1
	for i := int(mix(hash)) & mask; s.table[i] != 0; i = (i + 1) & mask {
		id := int(s.table[i]) - 1
		if s.info[id].hash == hash && slices.Equal(s.counts(id), set) {
			return id
		}
	}
	return -1
}

func (s *states) counts(id int) []uint16 { return s.count[id*s.m : id*s.m+s.m] }

// sequence appends the kinds of a set in the cutting order of its lane.
func (s *states) sequence(dst []int16, id int32) []int16 {
	lo := len(dst)
	for ; s.info[id].parent >= 0; id = s.info[id].parent {
		dst = append(dst, s.info[id].kind)
	}
	slices.Reverse(dst[lo:])
	return dst
}

// link lists the heavy sets by their first kind, heaviest and then largest
// first, and notes for each the pieces that could be added: a set that could
// take one of the pieces left need not be tried.
func (s *states) link(demand []int32) {
	s.list, s.larger = s.list[:0], s.larger[:0]
	for id := range s.info {
		st := &s.info[id]
		if st.dead || st.weight < s.least || st.size == 0 {
			continue
		}
		s.list = append(s.list, int32(id))
		st.from = int32(len(s.larger))
		for j := range s.m {
			if int32(s.count[id*s.m+j]) >= demand[j] {
				continue
			}
			if k := s.find(id, j); k >= 0 && !s.info[k].dead {
				s.larger = append(s.larger, int16(j))
			}
		}
		st.to = int32(len(s.larger))
	}
	slices.SortFunc(s.list, s.compare)
	s.start = grow(s.start, s.m+1)
	at := 0
	for j := range s.m {
		s.start[j] = int32(at)
		for at < len(s.list) && s.first(s.list[at]) == j {
			at++
		}
	}
	s.start[s.m] = int32(at)
}

// first returns the lowest kind in a set.
func (s *states) first(id int32) int {
	for j, n := range s.counts(int(id)) {
		if n > 0 {
			return j
		}
	}
	return s.m
}

// compare orders sets by first kind, then heaviest, then largest first. So a
// set comes after every larger one that contains it and has its first kind.
func (s *states) compare(a, b int32) int {
	x, y := &s.info[a], &s.info[b]
	return cmp.Or(
		cmp.Compare(s.first(a), s.first(b)),
		cmp.Compare(y.weight, x.weight),
		cmp.Compare(y.size, x.size),
		slices.Compare(s.counts(int(b)), s.counts(int(a))),
	)
}
