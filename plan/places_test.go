package plan

import (
	"testing"

	"pgregory.net/rapid"
)

// Counts in lanes against counts in a list: the lesser of each two, moved on by a row, and
// what motifs weigh at the least on both sides of a start, which motifBound tells from sums.
func TestPlacesCountAsALongerTurnDoes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		cycle := rapid.SampledFrom([]int{1, 2, 3, 4}).Draw(t, "cycle")
		b := motifBound{cycle: cycle, weight: 100}
		for range rapid.IntRange(1, 4).Draw(t, "heights") {
			b.cut = append(b.cut, rapid.SliceOfN(rapid.Bool(), cycle, cycle).Draw(t, "cut"))
		}
		turn := newTurnOfDrops(&b)
		row := func(name string) (n sum) {
			n.some, n.drops = true, int32(rapid.IntRange(0, 30).Draw(t, name+" drops"))
			for i := range n.motif {
				n.motif[i] = int16(rapid.IntRange(0, 40).Draw(t, name))
			}
			return n
		}
		right, left, next := row("right"), row("left"), row("next")
		if turn.lanes > 0 {
			a, c := turn.of(&right.motif), turn.of(&next.motif)
			for i, least := 0, a.least(c); i < turn.lanes; i++ {
				x, y, z := a>>(laneBits*i)&laneMask, c>>(laneBits*i)&laneMask, least>>(laneBits*i)&laneMask
				if z != min(x, y) {
					t.Fatalf("lane %d: the lesser of %d and %d is not %d", i, x, y, z)
				}
			}
			on := right
			on.add(&next)
			if got, want := a+turn.by(c, right.drops), turn.of(&on.motif); got != want {
				t.Fatalf("a row of %d drops before: %x, want %x", right.drops, got, want)
			}
		}
		got, first := int64(0), rapid.IntRange(0, 1).Draw(t, "first")
		if turn.lanes > 0 {
			got = turn.least(turn.of(&right.motif), turn.of(&left.motif), first)
		}
		if b.join(&right, &left, first); got != right.cut {
			t.Fatalf("motifs weigh %d, by their sums %d", got, right.cut)
		}
	})
}
