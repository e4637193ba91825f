package plan

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"firstdrop/hanging"
	"firstdrop/measure"
)

// What a row of drops is told to come to is what they come to when each is laid out and
// weighed by itself, with the seams between them.
func TestRowsOfDropsThatStandAlike(t *testing.T) {
	t.Parallel()
	rooms := 300
	if testing.Short() {
		rooms = 60
	}
	rows, drops, longest := 0, 0, 0
	hold := func(name string, task *Task, r *rand.Rand) {
		s := searched(t, task)
		s.prepare()
		v := s.halves
		for range 60 {
			spot := hanging.Spot{Side: hanging.Side(r.IntN(2)), Wall: r.IntN(len(s.run.Run.Walls))}
			spot.T = measure.Length(r.Int64N(int64(s.run.Run.Walls[spot.Wall].Width/measure.Millimetre))) * measure.Millimetre
			n := v.node(spot, r.IntN(2) == 0)
			if want, many := v.plainly(n); n.sums != want || n.count != many {
				t.Fatalf("%s: %d drops from %+v come to %+v, and one by one %d to %+v", name, n.count, spot, n.sums, many, want)
			}
			if n.run > 1 {
				rows, drops, longest = rows+1, drops+n.run, max(longest, n.run)
			}
		}
	}
	eachRoom(rooms, func(seed int, usual, odd *Task, r *rand.Rand) {
		hold(fmt.Sprint("usual room ", seed), usual, r)
		hold(fmt.Sprint("room ", seed), odd, r)
	})
	t.Logf("%d rows of %d drops, the longest of %d", rows, drops, longest)
	if rows < 10*rooms || longest < 5 {
		t.Error("few rows stand alike")
	}
}

// plainly sums up the whole drops from a node on, and the seams between them, one by one.
func (v *halves) plainly(n *node) (total sum, drops int) {
	for spot, odd := n.spot, n.odd; v.h.FitsWhole(spot); drops++ {
		v.h.Alone(&v.l, v.stripAt(spot, odd), hanging.Kill{}, [2]bool{})
		k := kind{sum: v.ofPieces()}
		if v.motifs.meets(&v.l) {
			k.sum.motif[0], k.sum.some = 1, true
		}
		t := v.weighed(&k)
		if drops > 0 {
			before := spot
			before.T -= v.width
			t.score += v.weighSeam(v.stripAt(before, !odd && v.turns), v.stripAt(spot, odd), spot.Side)
		}
		total.add(&t)
		spot.T, odd = spot.T+v.width, !odd && v.turns
	}
	return total, drops
}
