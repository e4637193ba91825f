package cutting

// Rolls as paths, piece by piece.
//
// While the pieces are hung in their order, each roll takes some of them. What
// it holds decides what it can still take; so its life is a path:
//
//	piece     0         1         2         3
//	      {} ─take─ {a} ─left── {a} ─fetch─ {ac} ─take─ {acd}     2 stretches
//	         ─left─ {} ──fetch─ {b} ─take── {bc} ─left─ {bc}      1 stretch
//
// To take a piece from a roll fetched anew begins a stretch and costs one; from
// the roll at hand it is free. Two sets that from a piece on can take the same
// pieces are one node, and pieces that do not fit are passed over, so that
// every node has a piece which may be taken or left to another roll.
//
// If every piece has a price, the roll that earns most, stretches deducted, is
// found by one pass over the nodes, from the last piece to the first.
type hangNet struct {
	piece  []int32    // of each node
	left   []int32    // what follows if the piece is left to another roll
	taken  [2][]int32 // if it is taken: by the roll fetched, by that at hand; nowhere if that is forbidden
	worth  []int64    // what can be earned yet: by each node fetched, and at hand
	nodes  []int32    // first node of each piece; those of piece 0 come last
	begin  [2][]int32 // what follows before each piece for an empty roll: ordinary, short
	born   []int32    // scratch: of each set, the pieces to be hung before it can be there
	node   []int32    // scratch: of each set before the piece looked at
	table  []int32    // scratch: open addressing over the nodes of a piece
	pruned []undone
}

// undone is an arc that was forbidden, and what it led to.
type undone struct {
	mode, node, to int32
}

// What follows is given as an index in worth: twice the node, plus one if the
// roll is at hand.
const (
	theEnd  = int32(0)
	nowhere = int32(2)
	fetched = 0
	atHand  = 1

	// priceOfStretch is the price of one stretch.
	priceOfStretch = int64(1) << 20
	maxHangNodes   = 1 << 20
)

// load lays out the network. It returns false if it would be too large.
func (g *hangNet) load(w *work, sets *rollSets) bool {
	n := len(w.p.kindOf)
	g.findBorn(w, sets)
	g.piece, g.left = append(g.piece[:0], -1, -1), append(g.left[:0], theEnd, nowhere)
	for mode := range g.taken {
		g.taken[mode] = append(g.taken[mode][:0], theEnd, nowhere)
		g.begin[mode] = grow(g.begin[mode], n)
	}
	g.pruned = g.pruned[:0]
	g.nodes = grow(g.nodes, n+1)
	g.node = grow(g.node, len(g.born))
	clear(g.node)
	size := 64
	for size < 2*len(g.born) {
		size *= 2
	}
	g.table = grow(g.table, size)
	for i := n - 1; i >= 0; i-- {
		g.nodes[i] = int32(len(g.piece))
		g.addPiece(w, sets, int32(i))
		if w.steps += 1 + len(g.born)/64; w.spent() || len(g.piece) > maxHangNodes {
			return false
		}
	}
	g.worth = grow(g.worth, 2*len(g.piece))
	return true
}

// findBorn finds how many pieces must be hung before a roll can hold each set;
// more than there are if it never can.
func (g *hangNet) findBorn(w *work, sets *rollSets) {
	n := int32(len(w.p.kindOf))
	g.born = grow(g.born, len(sets.leads))
	for s := range g.born {
		g.born[s] = n + 1
	}
	g.born[0] = 0
	there := append(g.node[:0], 0)
	if sets.limited {
		g.born[sets.short] = 0
		there = append(there, sets.short)
	}
	for i, j := range w.p.kindOf {
		for _, s := range there {
			if to := sets.add(s, j); to >= 0 && g.born[to] > n {
				g.born[to] = int32(i) + 1
				there = append(there, to)
			}
		}
		w.steps += 1 + len(there)/64
	}
	g.node = there
}

// addPiece adds the nodes of a piece, those of later ones being there.
func (g *hangNet) addPiece(w *work, sets *rollSets, i int32) {
	clear(g.table)
	j := w.p.kindOf[i]
	for s := range g.node {
		if g.born[s] > i {
			continue
		}
		if to := sets.add(int32(s), j); to >= 0 {
			g.node[s] = g.find(i, 2*g.node[s], g.follow(g.node[to], i))
		}
	}
	g.begin[0][i] = 2 * g.node[0]
	if sets.limited {
		g.begin[1][i] = 2 * g.node[sets.short]
	}
}

// follow is what follows if piece i is taken and a node is reached.
func (g *hangNet) follow(node, i int32) int32 {
	if g.piece[node] == i+1 {
		return 2*node + atHand
	}
	return 2 * node
}

// find returns the node of piece i that leads there, a new one if there is none.
func (g *hangNet) find(i, left, taken int32) int32 {
	mask := len(g.table) - 1
	at := int(mix(uint64(left)<<32+uint64(taken))) & mask
	for ; g.table[at] != 0; at = (at + 1) & mask {
		if v := g.table[at]; g.left[v] == left && g.taken[0][v] == taken {
			return v
		}
	}
	v := int32(len(g.piece))
	g.table[at] = v
	g.piece, g.left = append(g.piece, i), append(g.left, left)
	for mode := range g.taken {
		g.taken[mode] = append(g.taken[mode], taken)
	}
	return v
}

// price finds what every node can earn yet.
func (g *hangNet) price(price []int64) {
	g.worth[theEnd], g.worth[theEnd+atHand] = 0, 0
	g.worth[nowhere], g.worth[nowhere+atHand] = -1<<60, -1<<60
	anew, on := g.taken[fetched], g.taken[atHand]
	for v := 2; v < len(g.piece); v++ {
		rest, p := g.worth[g.left[v]], price[g.piece[v]]
		g.worth[2*v] = max(rest, g.worth[anew[v]]+p-priceOfStretch)
		g.worth[2*v+atHand] = max(rest, g.worth[on[v]]+p)
	}
}

// earned is the most that a roll earns, by the prices given last: an ordinary
// one, or the short one.
func (g *hangNet) earned(sort int) int64 { return g.worth[g.begin[sort][0]] }

// trace appends the arcs of the roll that earns most from there: for each piece
// that it takes twice the node, plus one if the roll is at hand.
func (g *hangNet) trace(dst []int32, at int32) []int32 {
	for at != theEnd {
		v := at / 2
		if to := g.left[v]; g.worth[at] == g.worth[to] {
			at = to
			continue
		}
		dst = append(dst, at)
		at = g.taken[at&1][v]
	}
	return dst
}

// forbid forbids the arcs of a piece that are not wanted.
func (g *hangNet) forbid(i int32, wanted func(arc int32) bool) {
	hi := int32(len(g.piece))
	if i > 0 {
		hi = g.nodes[i-1]
	}
	for v := g.nodes[i]; v < hi; v++ {
		for mode := range int32(2) {
			if to := g.taken[mode][v]; to != nowhere && !wanted(2*v+mode) {
				g.pruned = append(g.pruned, undone{mode, v, to})
				g.taken[mode][v] = nowhere
			}
		}
	}
}

// allow allows again what was forbidden since so many arcs were.
func (g *hangNet) allow(since int) {
	for _, u := range g.pruned[since:] {
		g.taken[u.mode][u.node] = u.to
	}
	g.pruned = g.pruned[:since]
}

// allows says whether none of the arcs is forbidden.
func (g *hangNet) allows(arcs []int32) bool {
	for _, a := range arcs {
		if g.taken[a&1][a/2] == nowhere {
			return false
		}
	}
	return true
}
