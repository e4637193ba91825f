package cutting

import "slices"

// What one roll can hold.
//
// The sets of pieces that fit one roll, with what each becomes when a piece is
// added. The last ones, if there is a short roll, are those that use no more
// than its limit, once more.
//
//	{} ─a─ {a} ─b─ {a b} ─a─ -1        an automaton without ways back
//	   ─b─ {b} ─a──┘
//
// Kinds of piece that can stand for each other (see alike.go) are not told
// apart, and with free match only the length used matters. Sets that lead to
// none heavy enough are left out: by the weights of the certificate, so many
// rolls together can waste only so much.
type rollSets struct {
	m       int
	next    []int32 // next[s*m+j], -1 if the piece does not fit; above s otherwise
	limited bool    // there is a short roll
	short   int32   // the empty set of the short roll

	alike  alikeKinds
	all    states
	weight []int64 // of each kind told apart, the most
	grown  []int32 // scratch: what each set listed becomes by a piece of each kind, -1 if that is not listed
	number []int32 // scratch: of the sets listed, -1 if not wanted
	leads  []bool  // scratch: of the sets, whether they lead to a heavy one
	gone   []int64 // scratch: the most that weighs what ends at each node
	last   asked
}

// asked is what sets were last listed for, and how many steps that took.
type asked struct {
	of       *Problem // nil: for nothing
	k        int
	limit    int64
	capacity int64
	weight   []int64
	steps    int
}

// is reports whether the same is asked again.
func (a *asked) is(w *work, k int, limit int64) bool {
	return a.of == w.p && a.k == k && a.limit == limit && a.capacity == w.lower.capacity && slices.Equal(a.weight, w.lower.weight)
}

// maxRollSets bounds the sets told apart; most rooms have some hundred.
const maxRollSets = 50_000

// load lists the sets for k rolls, unless they are listed. It returns false if there are too
// many.
func (s *rollSets) load(w *work, k int, limit int64) bool {
	a := &s.last
	if a.is(w, k, limit) {
		w.steps += a.steps
		return true
	}
	begun := w.steps
	a.of = nil
	if !s.list(w, k, limit) {
		return false
	}
	*a = asked{w.p, k, limit, w.lower.capacity, append(a.weight[:0], w.lower.weight...), w.steps - begun}
	return true
}

// list lists them.
func (s *rollSets) list(w *work, k int, limit int64) bool {
	s.limited, s.short = limit > 0, -1
	s.alike.load(w, limit)
	s.m = len(s.alike.kinds)
	s.weigh(w)
	s.next, s.leads = s.next[:0], s.leads[:0]
	capacity := w.lower.capacity
	slack, least := int64(k)*capacity-dot(w.p.demand, w.lower.weight), int64(0)
	if s.limited {
		least = w.mostWithin(limit)
		slack += least - capacity
	}
	add := s.addLengths
	if !w.n.anyOrder() {
		if !w.listAll(&s.all, s.alike.kinds, s.alike.demand, maxRollSets) {
			return false
		}
		s.findGrown()
		add = s.addSets
	}
	ok := add(w, 0, capacity-slack)
	if ok && s.limited {
		s.short = int32(len(s.leads))
		ok = add(w, limit, least-slack)
	}
	w.steps += len(s.next) / 64
	return ok
}

// weigh finds the weight of each kind told apart.
func (s *rollSets) weigh(w *work) {
	s.weight = grow(s.weight, s.m)
	clear(s.weight)
	for j, of := range s.alike.of {
		s.weight[of] = max(s.weight[of], w.lower.weight[j])
	}
}

// addLengths appends the lengths that pieces can make with free match, of those
// up to the limit if it is not 0. Pieces are added only if that leads to a
// weight of at least so much.
func (s *rollSets) addLengths(w *work, limit, least int64) bool {
	g, l, base := &w.n.plan, &w.n.exact[0], int32(len(s.leads))
	last := l.last
	if limit > 0 {
		last = max(min(last, g.atOrBefore(l.begin+limit)), 0)
	}
	if l.from != 0 || int(last) > maxRollSets {
		return false
	}
	s.gone = grow(s.gone, int(last)+1)
	clear(s.gone)
	for v := range last + 1 {
		for j, kind := range s.alike.kinds {
			if to := g.next[int(v)*w.m+int(kind)]; to <= last {
				s.gone[to] = max(s.gone[to], s.gone[v]+s.weight[j])
			}
		}
	}
	s.next = append(s.next, make([]int32, int(last+1)*s.m)...)
	s.leads = append(s.leads, make([]bool, last+1)...)
	for v := last; v >= 0; v-- {
		at := base + v
		s.leads[at] = s.gone[v] >= least
		row := s.next[int(at)*s.m:][:s.m]
		for j, kind := range s.alike.kinds {
			row[j] = -1
			if to := g.next[int(v)*w.m+int(kind)]; to <= last && s.leads[base+to] {
				row[j], s.leads[at] = base+to, true
			}
		}
	}
	return true
}

// addSets appends the sets listed, of those that use no more than the limit if
// it is not 0. Pieces are added only if that leads to a set of at least so much
// weight.
func (s *rollSets) addSets(w *work, limit, least int64) bool {
	info := s.all.info
	s.number = grow(s.number, len(info))
	base := len(s.leads)
	for id := range info {
		s.number[id] = -1
		if id > 0 {
			info[id].weight = info[info[id].parent].weight + s.weight[info[id].kind]
		}
		if limit == 0 || id == 0 || s.uses(w, id) <= limit {
			s.number[id] = int32(len(s.leads))
			s.leads = append(s.leads, info[id].weight >= least)
		}
	}
	s.next = append(s.next, make([]int32, (len(s.leads)-base)*s.m)...)
	for id := len(info) - 1; id >= 0; id-- {
		if at := int(s.number[id]); at >= 0 {
			s.link(id, s.next[at*s.m:][:s.m])
		}
	}
	return true
}

// uses is the length that a set listed uses at its worst start.
func (s *rollSets) uses(w *work, id int) int64 {
	most, d := int64(0), len(w.n.exact)
	for i, end := range s.all.ends[id*d : id*d+d] {
		most = max(most, w.n.plan.at[end]-w.n.exact[i].begin)
	}
	return most
}

// findGrown finds what becomes of each set listed.
func (s *rollSets) findGrown() {
	s.grown = s.grown[:0]
	for id := range s.all.info {
		for j := range s.m {
			s.grown = append(s.grown, int32(s.all.find(id, j)))
		}
	}
}

// link notes in row what becomes of a set when a piece is added.
func (s *rollSets) link(id int, row []int32) {
	at := s.number[id]
	for j, k := range s.grown[id*s.m:][:s.m] {
		row[j] = -1
		if k >= 0 && s.number[k] >= 0 && s.leads[s.number[k]] {
			row[j], s.leads[at] = s.number[k], true
		}
	}
}

// add is what becomes of a set by a piece of a kind of the problem, -1 if that
// does not fit.
func (s *rollSets) add(set, kind int32) int32 { return s.next[int(set)*s.m+int(s.alike.of[kind])] }
