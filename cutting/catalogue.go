package cutting

// Every roll good for all starts.
//
// A set of pieces that serves every start may need another order for another
// start, so it is no path through the network, and no single pass finds the
// heaviest. But a part of such a set is such a set. So they can be listed by
// size, each with its earliest end from every start, computed from the sets
// with one piece less:
//
//	size 1    {a}    {b}    {c}            ends from start 1, 2, 3 …
//	            \    / \    /
//	size 2    {a b}   {b c}                end = min over the piece cut last
//	              \   /
//	size 3    {a b c}?   only if {a c} is listed too
//
// For the pieces of a room that is a matter of some hundred sets, and then
// pricing is a look along the list: exact for the guarantee. Where the list
// grows too long the sets are sought one by one, see priced.go.

// maxCatalogue is the number of sets beyond which no catalogue is made. A
// longer one would cost more than the search it saves.
const maxCatalogue = 25_000

// endsInStep is how many ends make a step: with many kinds and starts a set
// takes far longer than a pass over the network.
const endsInStep = 512

// catalogue lists every set good for all starts. It returns false if there
// are too many; the states then hold nothing of use.
func (w *work) catalogue() bool {
	if kinds, ok := w.given.kinds(w.p); ok {
		w.takeListed(w.given, kinds)
		return true
	}
	w.every = w.every[:0]
	for j := range w.m {
		w.every = append(w.every, int16(j))
	}
	return w.listAll(&w.states, w.every, w.p.demand, maxCatalogue)
}

// listAll lists in s every set good for all starts of so many pieces of the
// kinds. It returns false if there are more than most.
func (w *work) listAll(s *states, kinds []int16, demand []int32, most int) bool {
	s.reset(len(kinds))
	s.lanes = len(w.n.exact)
	for d := range w.n.exact {
		s.ends = append(s.ends, w.n.exact[d].from)
	}
	s.push(0, -1, -1, 0, 0)
	s.set = grow(s.set, s.m)
	tried := 0 // ends looked at
	for at := 0; at < len(s.info); at++ {
		first := max(0, int(s.info[at].kind))
		tried += (s.m - first) * s.lanes * int(s.info[at].size+1)
		w.steps += 1 + tried/endsInStep
		tried %= endsInStep
		if w.spent() || len(s.info) > most {
			return false
		}
		copy(s.set, s.counts(at))
		for j := first; j < s.m; j++ {
			if int32(s.set[j]) < demand[j] {
				s.set[j]++
				w.enter(s, kinds, at, j)
				s.set[j]--
			}
		}
	}
	return true
}

// enter lists the set in s.set, which is set at with one more of number j of the
// kinds, if it is good for all starts.
func (w *work) enter(s *states, kinds []int16, at, j int) {
	d := len(w.n.exact)
	hash := s.info[at].hash + s.key[j]
	base, off := len(s.ends), int32(w.n.plan.nodes())
	for range d {
		s.ends = append(s.ends, off)
	}
	ends := s.ends[base : base+d]
	for k, n := range s.set[:j+1] {
		if n == 0 {
			continue
		}
		less := at
		if k != j {
			s.set[k]--
			less = s.lookup(s.set, hash-s.key[k])
			s.set[k]++
		}
		if less < 0 {
			s.ends = s.ends[:base]
			return
		}
		for i, v := range s.ends[less*d : less*d+d] {
			ends[i] = min(ends[i], w.n.plan.next[int(v)*w.m+int(kinds[k])])
		}
	}
	for i, v := range ends {
		if v > w.n.exact[i].last {
			s.ends = s.ends[:base]
			return
		}
	}
	s.push(hash, int32(at), int16(j), 0, 0)
}

// weigh gives every set in the catalogue its weight under w.weight and returns
// the heaviest.
func (w *work) weigh() (int, int64) {
	info, best := w.states.info, 0
	for id := 1; id < len(info); id++ {
		st := &info[id]
		st.weight = info[st.parent].weight + w.weight[st.kind]
		if st.weight > info[best].weight {
			best = id
		}
	}
	return best, info[best].weight
}

// heaviestListed leaves in w.seq the heaviest set of the catalogue and returns
// its weight, which is a capacity for rolls that must serve all starts.
func (w *work) heaviestListed() int64 {
	w.steps++
	id, weight := w.weigh()
	w.seq = w.states.sequence(w.seq[:0], int32(id))
	return weight
}

// bestListed leaves in w.seq the set of the catalogue worth most by w.value
// among those that can be cut from what is left.
func (w *work) bestListed() {
	s, best, most := &w.states, 0, int64(0)
	copy(w.weight, w.value)
	w.steps += 1 + len(s.info)/64
	w.weigh()
	for id := range s.info {
		if s.info[id].weight > most && s.within(id, w.left) {
			best, most = id, s.info[id].weight
		}
	}
	w.seq = s.sequence(w.seq[:0], int32(best))
}

func (s *states) within(id int, left []int32) bool {
	for j, n := range s.counts(id) {
		if int32(n) > left[j] {
			return false
		}
	}
	return true
}
