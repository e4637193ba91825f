package cutting

// What is new at a node.
//
// Where the design repeats, most pieces wait for their phase: from a node and
// from the next one they are cut at the same place and end at the same node.
// Only pieces whose phase comes up between the two end elsewhere:
//
//	node     v      v+1
//	     ----|---a---|------b------c---
//	             '-- new at v: kinds of phase a; all others as from v+1
//
// To be at v is never worse than to be at v+1, so
//
//	gain(v) = max(gain(v+1), max over what is new at v)
//
// is the maximum over all kinds, exactly, and a pass looks at each place where
// a piece can be cut once, not once from each node that waits for it. With a
// hundred kinds and a dozen phases that is one step of fifty.

// arc is a step to the node where a piece of the kind ends.
type arc struct{ kind, to int32 }

// fewCells is the number of steps up to which it is not worth looking.
const fewCells = 1 << 12

// findNews lists what is new at each node, for graphs in which to be earlier is
// never worse.
func (g *graph) findNews() {
	n, m := g.nodes(), g.kinds
	if n*m < fewCells {
		return
	}
	g.newsFrom = make([]int32, 1, n+1)
	g.news = make([]arc, 0, n*m/8)
	off := int32(n)
	for v := range n {
		row := g.row(int32(v))
		for j, to := range row {
			if to < off && (v+1 == n || to != g.next[(v+1)*m+j]) {
				g.news = append(g.news, arc{int32(j), to})
			}
		}
		g.newsFrom = append(g.newsFrom, int32(len(g.news)))
	}
}

// passNews fills gain from node last down to node from; what is beyond last
// must count as off the roll already.
func (g *graph) passNews(from, last int32, weight, gain []int64) {
	best := int64(0)
	gain[last] = 0
	at := g.newsFrom[last]
	for v := last - 1; v >= from; v-- {
		for lo := g.newsFrom[v]; at > lo; {
			at--
			a := g.news[at]
			best = max(best, weight[a.kind]+gain[a.to])
		}
		gain[v] = best
	}
}
