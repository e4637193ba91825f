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
	turns     bool      // odd drops and even ones differ
	tables    [][]*node // made when the first node lies in them
	sizes     []int     // of the tables; 0: none
	scattered []*node   // as many as a power of two
	n         int       // of these taken
	slab      slab[node]
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
	ns.tables, ns.sizes = make([][]*node, 4*len(run.Walls)), make([]int, 4*len(run.Walls))
	for i := range ns.tables {
		size := int64(run.Walls[i/4].Width+2*width)/ns.step + 1
		if size <= mostInTable && (turns || i%2 == 0) {
			ns.sizes[i] = int(size)
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

// cell returns the place of a spot in its table; −1 if it has none.
func (ns *nodes) cell(spot hanging.Spot, table int) int {
	at := int64(spot.T + ns.width)
	if at >= 0 && at%ns.step == 0 && at/ns.step < int64(ns.sizes[table]) {
		return int(at / ns.step)
	}
	return -1
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
	table := ns.table(spot, odd)
	if cell := ns.cell(spot, table); cell >= 0 {
		if t := ns.tables[table]; t != nil {
			return t[cell]
		}
		return nil
	}
	if ns.n == 0 {
		return nil
	}
	return *ns.scatter(spot, odd)
}

// add adds a node where there is none.
func (ns *nodes) add(spot hanging.Spot, odd bool) *node {
	n := ns.slab.one()
	n.spot, n.odd = spot, odd
	table := ns.table(spot, odd)
	if cell := ns.cell(spot, table); cell >= 0 {
		if ns.tables[table] == nil {
			ns.tables[table] = make([]*node, ns.sizes[table])
		}
		ns.tables[table][cell] = n
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

// slab makes things many at a time: a few at first, then more and more.
type slab[T any] struct {
	spare []T
	made  int
}

// How many a slab makes at a time.
const (
	fewMade  = 16
	mostMade = 256
)

// one returns one that nobody has.
func (s *slab[T]) one() *T {
	if len(s.spare) == 0 {
		s.made = min(max(fewMade, 2*s.made), mostMade)
		s.spare = make([]T, s.made)
	}
	t := &s.spare[0]
	s.spare = s.spare[1:]
	return t
}
