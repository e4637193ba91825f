package plan

// Drops whose motif meets the ceiling are counted ahead by their place in the turn in
// which an offset match shows the motif at several heights (motifs.go): four counts in one
// word, that of the first drop lowest. A row before them moves them on by as many places
// as it has drops:
//
//	row of 3 drops, then   ┌ 2 ┬ 0 ┬ 1 ┬ 0 ┐      by place in the turn from the row's
//	                         0   1   2   3        first drop: 0, 1, 0, 2
//
// Counts stay far below what a lane holds.

// places counts drops by place.
type places uint64

// A lane is one count.
const (
	laneBits = 16
	laneMask = 1<<laneBits - 1
	laneTops = 0x8000_8000_8000_8000
)

// least returns the lesser of each two counts.
func (a places) least(b places) places {
	if a == b {
		return a
	}
	greater := ((a | laneTops) - b) & laneTops >> (laneBits - 1) * laneMask // lanes in which a is no less
	return b&greater | a&^greater
}

// turnOfDrops tells what the motifs cut at the ceiling weigh at the least.
type turnOfDrops struct {
	lanes  int // 0: no bound
	cut    []places
	weight int64
}

// newTurnOfDrops takes over a bound; it knows of none if some design height cuts nothing.
func newTurnOfDrops(b *motifBound) (t turnOfDrops) {
	switch b.cycle {
	case 1, 2, 4:
		t.lanes = 4
	case 3:
		t.lanes = 3
	default:
		return turnOfDrops{}
	}
	t.weight = b.weight
	for _, cut := range b.cut {
		var mask places
		for i := range t.lanes {
			if cut[i%b.cycle] {
				mask |= laneMask << (laneBits * i)
			}
		}
		if mask == 0 {
			return turnOfDrops{}
		}
		t.cut = append(t.cut, mask)
	}
	return t
}

// of gathers counts by place in a longer turn.
func (t *turnOfDrops) of(motif *[motifCycle]int16) (p places) {
	if t.lanes == 0 {
		return 0
	}
	for i, n := range motif {
		p += places(n) << (laneBits * (i % t.lanes))
	}
	return p
}

// by moves counts on by so many drops.
func (t *turnOfDrops) by(p places, drops int32) places {
	if p == 0 {
		return 0
	}
	by, all := laneBits*(int(drops)%t.lanes), laneBits*t.lanes
	return p<<by&(1<<all-1) | p>>(all-by)
}

// reversed returns counts from the other end of a turn.
func (t *turnOfDrops) reversed(p places) (q places) {
	for range t.lanes {
		q, p = q<<laneBits|p&laneMask, p>>laneBits
	}
	return q
}

// least returns what motifs weigh at the least that are cut on either side of a start,
// after which the drop to the right has an index.
func (t *turnOfDrops) least(right, left places, first int) int64 {
	p := t.by(right+t.reversed(left), int32(first))
	least := int64(-1)
	for _, mask := range t.cut {
		n := int64(0)
		for q := p & mask; q != 0; q >>= laneBits {
			n += int64(q & laneMask)
		}
		if least < 0 || n < least {
			least = n
		}
	}
	return max(least, 0) * t.weight
}
