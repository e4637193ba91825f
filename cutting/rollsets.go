package cutting

// rollSets are the sets of pieces that one roll can hold, with what each
// becomes when a piece is added. The last ones, if there is a short roll, are
// those that use no more than its limit, once more.
//
//	{} ─a─ {a} ─b─ {a b} ─a─ -1        an automaton without ways back
//	   ─b─ {b} ─a──┘
//
// Sets that lead to none heavy enough are left out: by the weights of the
// certificate, so many rolls together can waste only so much.
type rollSets struct {
	m       int
	next    []int32 // next[s*m+j], -1 if the piece does not fit; above s otherwise
	limited bool    // there is a short roll
	short   int32   // the empty set of the short roll
	number  []int32 // scratch: of the sets listed, -1 if not wanted
	leads   []bool  // scratch: of the sets, whether they lead to a heavy one
}

// load lists the sets for k rolls. It returns false if there are too many.
func (s *rollSets) load(w *work, k int, limit int64) bool {
	if !w.listed && !w.catalogue() {
		return false
	}
	copy(w.weight, w.lower.weight)
	w.weigh()
	s.m, s.limited, s.short = w.m, limit > 0, -1
	s.next, s.leads = s.next[:0], s.leads[:0]
	capacity := w.lower.capacity
	slack, least := int64(k)*capacity-dot(w.p.demand, w.lower.weight), int64(0)
	if s.limited {
		least = w.mostWithin(limit)
		slack += least - capacity
		copy(w.weight, w.lower.weight)
	}
	n := s.add(w, 0, capacity-slack, func(int) bool { return true })
	if s.limited {
		s.short = int32(n)
		s.add(w, n, least-slack, func(id int) bool { return id == 0 || w.useListed(id) <= limit })
	}
	w.steps += len(s.next) / 64
	return true
}

// add appends the sets of the catalogue that are wanted, numbered from base on,
// and returns the number of sets there are then. Pieces are added only if that
// leads to a set of the given weight.
func (s *rollSets) add(w *work, base int, least int64, wanted func(id int) bool) int {
	all := &w.states
	s.number = grow(s.number, len(all.info))
	n := base
	for id := range all.info {
		s.number[id] = -1
		if wanted(id) {
			s.number[id] = int32(n)
			s.leads = append(s.leads, all.info[id].weight >= least)
			n++
		}
	}
	lo := len(s.next)
	s.next = append(s.next, make([]int32, (n-base)*s.m)...)
	for id := len(all.info) - 1; id >= 0; id-- {
		if at := int(s.number[id]); at >= 0 {
			s.link(all, id, s.next[lo+(at-base)*s.m:][:s.m])
		}
	}
	return n
}

// link notes in row what becomes of a set when a piece is added.
func (s *rollSets) link(all *states, id int, row []int32) {
	at := s.number[id]
	for j := range row {
		row[j] = -1
		if k := all.find(id, j); k >= 0 && s.number[k] >= 0 && s.leads[s.number[k]] {
			row[j], s.leads[at] = s.number[k], true
		}
	}
}
