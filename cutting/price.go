package cutting

// What is the most a roll can carry?
//
// Give every piece a weight. The heaviest roll is the longest path through the
// network, found backwards node by node:
//
//	gain(v) = max(0, max over kinds j of weight(j) + gain(next(v, j)))
//
// One pass touches each node and kind once, or fewer where most kinds lead from
// a node to where they lead from the next (news.go), works on whole numbers, and
// is exact. It serves twice: the path is the column that the linear program asks
// for, and the number is the capacity of a certificate.

// pass fills gain for one lane of a graph and returns the value of its first
// node. Nodes beyond last count as off the roll, even the first one.
func (g *graph) pass(from, last int32, weight, gain []int64) int64 {
	const never = -1 << 60
	for v := int(last) + 1; v < len(gain); v++ {
		gain[v] = never
	}
	if g.news != nil && last >= from {
		g.passNews(from, last, weight, gain)
		return gain[from]
	}
	m := g.kinds
	weight = weight[:m]
	for v := int(last); v >= int(from); v-- {
		best := int64(0)
		for j, to := range g.next[v*m : v*m+m] {
			if x := weight[j] + gain[to]; x > best {
				best = x
			}
		}
		gain[v] = best
	}
	return max(gain[from], 0)
}

// path appends the kinds along a heaviest path from node from on, after pass.
func (g *graph) path(dst []int16, from int32, weight, gain []int64) []int16 {
	for v := from; gain[v] > 0; {
		for j, to := range g.row(v) {
			if weight[j]+gain[to] == gain[v] {
				dst = append(dst, int16(j))
				v = to
				break
			}
		}
	}
	return dst
}

// lanePass returns the heaviest weight of a roll that begins by exact lane d,
// under w.weight.
func (w *work) lanePass(d int) int64 {
	l := &w.n.exact[d]
	w.gain = grow(w.gain, len(w.n.bound.at))
	w.steps++
	return w.n.bound.pass(l.boundFrom, l.boundLast, w.weight, w.gain)
}

// heaviestOn leaves in w.seq the heaviest roll for one start alone, that of
// exact lane d, and returns a capacity for it: the roll's weight, or more if
// positions are rounded.
func (w *work) heaviestOn(d int) int64 {
	capacity := w.lanePass(d)
	l := &w.n.exact[d]
	if w.n.coarse {
		w.gain = grow(w.gain, len(w.n.plan.at))
		w.n.plan.pass(l.from, l.last, w.weight, w.gain)
	}
	w.seq = w.n.plan.path(w.seq[:0], l.from, w.weight, w.gain)
	return capacity
}

// heaviest leaves in w.seq the heaviest roll good for all starts that it
// finds: the best of the safe lanes, or if that is not worth a whole roll the
// best of an exact lane that happens to be good for all.
func (w *work) heaviest() { w.heaviestBeyond(one) }

// heaviestBeyond does so where a whole roll is worth so much.
func (w *work) heaviestBeyond(worth int64) {
	g, most := &w.n.plan, int64(0)
	w.gain = grow(w.gain, len(g.at))
	w.seq = w.seq[:0]
	for i := range w.n.safe {
		d := (w.turn + i) % len(w.n.safe)
		l := &w.n.safe[d]
		w.steps++
		if v := g.pass(l.from, l.last, w.weight, w.gain); v > most {
			most = v
			w.seq = g.path(w.seq[:0], l.from, w.weight, w.gain)
			if w.m > manyLaneKinds && most > worth+w.enough {
				w.turn = d + 1
				return
			}
		}
	}
	w.enough = max(most-worth, one>>13) / 2
	if len(w.n.safe) == 1 || most > worth+one>>20 {
		return
	}
	for d := range w.n.exact {
		l := &w.n.exact[d]
		w.steps++
		v := g.pass(l.from, l.last, w.weight, w.gain)
		if v <= most {
			continue
		}
		w.deep.scratch = g.path(w.deep.scratch[:0], l.from, w.weight, w.gain)
		if w.sort.load(w.deep.scratch) && w.guaranteed() {
			most = v
			w.seq = append(w.seq[:0], w.deep.scratch...)
		}
	}
}
