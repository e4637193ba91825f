package cutting

// Pieces that can stand for each other.
//
// In a room out of level hardly two drops are of one length. But where the
// design repeats, the next piece waits for its phase, and a few millimetres are
// lost in the wait:
//
//	|== 2713 ==|....|== next        no piece begins in between,
//	|= 2711 ==|.....|== next        and no roll ends there
//
// So positions between which no piece begins and no roll ends are one, and
// kinds that lead from every position to the same one can stand for each other,
// on every roll. That is exact: a set fits a roll if and only if it does with
// one in place of the other.
type alikeKinds struct {
	of     []int32 // of each kind of the problem, its number among those told apart
	kinds  []int16 // of those told apart, one that stands for all
	demand []int32 // pieces of each
	same   []int32 // scratch: of each node, the last one that is the same position
	ends   []bool  // scratch: of each node, whether a roll ends there
}

// load finds the kinds that need not be told apart, on rolls and on one that
// uses no more than limit unless that is 0.
func (a *alikeKinds) load(w *work, limit int64) {
	a.findSame(w, limit)
	a.of, a.kinds, a.demand = grow(a.of, w.m), a.kinds[:0], a.demand[:0]
	for j := range w.m {
		at := 0
		for at < len(a.kinds) && !a.standFor(w, j, int(a.kinds[at])) {
			at++
		}
		if at == len(a.kinds) {
			a.kinds, a.demand = append(a.kinds, int16(j)), append(a.demand, 0)
		}
		a.of[j] = int32(at)
		a.demand[at] += w.p.demand[j]
	}
}

// findSame finds the positions that are one.
func (a *alikeKinds) findSame(w *work, limit int64) {
	g, n := &w.n.plan, w.n.plan.nodes()
	a.ends, a.same = grow(a.ends, n+1), grow(a.same, n+1)
	clear(a.ends)
	last := int32(0)
	for i := range w.n.exact {
		l := &w.n.exact[i]
		a.ends[max(l.last, 0)] = true
		last = max(last, l.last)
		if limit > 0 {
			a.ends[max(g.atOrBefore(l.begin+limit), 0)] = true
		}
	}
	a.same[n] = int32(n)
	for v := n - 1; v >= 0; v-- {
		a.same[v] = int32(v)
		if v > int(last) || !a.ends[v] && v+1 < n && a.sameRows(g, v) {
			a.same[v] = a.same[v+1]
		}
	}
	w.steps += 1 + n*w.m/256
}

// sameRows says whether all kinds lead from node v to the same positions as
// from the next.
func (a *alikeKinds) sameRows(g *graph, v int) bool {
	next := g.row(int32(v + 1))
	for j, to := range g.row(int32(v)) {
		if a.same[to] != a.same[next[j]] {
			return false
		}
	}
	return true
}

// standFor says whether kind j leads to the same positions as kind k.
func (a *alikeKinds) standFor(w *work, j, k int) bool {
	g := &w.n.plan
	for v, same := range a.same[:g.nodes()] {
		if int(same) == v && a.same[g.next[v*g.kinds+j]] != a.same[g.next[v*g.kinds+k]] {
			return false
		}
	}
	return true
}
