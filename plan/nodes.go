package plan

import (
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/room"
)

// nodes holds the nodes of a run by their spots. Where all places are multiples of some
// length they lie in tables, one for each wall and side, and for odd drops where these
// differ; in rooms with odd measures they are scattered over one table by their hash, and
// looked for from there on.
type nodes struct {
	step      int64
	width     measure.Length
	turns     bool // odd drops and even ones differ
	tables    [][]*node
	scattered []*node // as many as a power of two
	n         int     // of these taken
	slab      []node
}

// mostInTable is how many nodes a table may have.
const mostInTable = 40_000

// newNodes prepares for the nodes of a run, all of whose places are multiples of the
// lengths given and of those of its walls.
func newNodes(run *room.Run, width measure.Length, turns bool, lengths ...measure.Length) (ns nodes) {
	ns.step, ns.width, ns.turns = int64(width), width, turns
	for _, l := range lengths {
		ns.step = gcd(ns.step, int64(l))
	}
	for i := range run.Walls {
		left, right := run.LeanAt(i)
		for _, l := range []measure.Length{run.Walls[i].Width, left.Abs(), right.Abs()} {
			ns.step = gcd(ns.step, int64(l))
		}
	}
	ns.tables = make([][]*node, 4*len(run.Walls))
	for i := range ns.tables {
		size := int64(run.Walls[i/4].Width+2*width)/ns.step + 1
		if size <= mostInTable && (turns || i%2 == 0) {
			ns.tables[i] = make([]*node, size)
		}
	}
	return ns
}

// gcd returns the greatest common divisor of a > 0 and b ≥ 0.
func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// table numbers the table of a spot.
func (ns *nodes) table(spot hanging.Spot, odd bool) int {
	i := 4*spot.Wall + 2*int(spot.Side)
	if odd {
		i++
	}
	return i
}

// cell returns the place of a spot in its table; nil if it has none.
func (ns *nodes) cell(spot hanging.Spot, odd bool) **node {
	at, table := int64(spot.T+ns.width), ns.tables[ns.table(spot, odd)]
	if at >= 0 && at%ns.step == 0 && at/ns.step < int64(len(table)) {
		return &table[at/ns.step]
	}
	return nil
}

// scatter returns the place of a spot among the scattered ones: its own, or a free one.
func (ns *nodes) scatter(spot hanging.Spot, odd bool) **node {
	h := uint64(spot.T)*0x9e37_79b9_7f4a_7c15 ^ uint64(ns.table(spot, odd)+1)*0xc2b2_ae3d_27d4_eb4f
	mask := uint64(len(ns.scattered) - 1)
	for i := (h ^ h>>32) & mask; ; i = (i + 1) & mask {
		if n := ns.scattered[i]; n == nil || n.spot == spot && n.odd == odd {
			return &ns.scattered[i]
		}
	}
}

// at returns the node of a spot; nil if there is none.
func (ns *nodes) at(spot hanging.Spot, odd bool) *node {
	if cell := ns.cell(spot, odd); cell != nil {
		return *cell
	}
	if ns.n == 0 {
		return nil
	}
	return *ns.scatter(spot, odd)
}

// add adds a node where there is none.
func (ns *nodes) add(spot hanging.Spot, odd bool) *node {
	if len(ns.slab) == 0 {
		ns.slab = make([]node, 256)
	}
	n := &ns.slab[0]
	ns.slab = ns.slab[1:]
	n.spot, n.odd = spot, odd
	if cell := ns.cell(spot, odd); cell != nil {
		*cell = n
		return n
	}
	ns.grow()
	*ns.scatter(spot, odd) = n
	ns.n++
	return n
}

// grow keeps half of the scattered places free.
func (ns *nodes) grow() {
	if 2*ns.n < len(ns.scattered) {
		return
	}
	old := ns.scattered
	ns.scattered = make([]*node, max(1024, 2*len(old)))
	for _, n := range old {
		if n != nil {
			*ns.scatter(n.spot, n.odd) = n
		}
	}
}
