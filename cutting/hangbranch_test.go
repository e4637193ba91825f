package cutting

import (
	"testing"

	"pgregory.net/rapid"

	"firstdrop/measure"
)

// stretches is the fewest stretches on exactly so many rolls, one of which uses
// no more than the limit unless that is 0; most if there is no such plan with
// fewer.
func (b *brute) stretches(rolls, most int, limit measure.Length) int {
	use := map[int]measure.Length{}
	short := func(set int) bool {
		if _, known := use[set]; !known {
			use[set] = b.use(set)
		}
		return use[set] <= limit
	}
	best := int64(most) - 1
	b.hangingsOn(rolls, func() int64 { return best - 1 }, func(sets []int, changes int64) {
		ok := limit == 0
		for _, set := range sets {
			if set == 0 {
				return
			}
			ok = ok || short(set)
		}
		if ok {
			best = changes
		}
	})
	return int(best) + 1
}

// TestPricedHangingAgainstBruteForce compares the search by prices and
// branches, which not every small question gets as far as, with the definition:
// on the fewest rolls and on more, with and without a roll that is to use little.
func TestPricedHangingAgainstBruteForce(t *testing.T) {
	limited, none := 0, 0
	manyTimes(t, func(rt *rapid.T) {
		spec := tinySpec(8).Draw(rt, "spec")
		p, err := NewProblem(spec)
		if err != nil {
			rt.Fatal(err)
		}
		b := newBrute(spec)
		w := newWork(p, DefaultSteps)
		defer w.free()
		w.greedy()
		w.prove()
		w.dive()
		w.exhaust()
		if w.open() || w.n.coarse || w.best.rolls() != b.rolls() {
			return
		}
		w.sharpen()
		most := len(spec.Pieces) + 1
		rolls := min(b.rolls()+rapid.IntRange(0, 1).Draw(rt, "more"), len(spec.Pieces))
		limit := measure.Length(0)
		if rapid.Bool().Draw(rt, "limited") {
			limit = measure.Length(rapid.IntRange(1, int(spec.Roll.Length)).Draw(rt, "limit"))
			limited++
		}
		want := b.stretches(rolls, most, limit)
		if want == most {
			none++
		}
		got, least := w.hangByPrices(rolls, most, int64(limit))
		if got != want && rolls == b.rolls() || got < want || least > want {
			rt.Errorf("%d stretches on %d rolls of limit %d, at least %d; brute force %d", got, rolls, limit, least, want)
		}
		if rolls == b.rolls() && least != want {
			rt.Errorf("%d stretches on %d rolls of limit %d proven, at least %d", got, rolls, limit, least)
		}
	})
	t.Logf("%d with a short roll, %d impossible", limited, none)
	if limited == 0 || none == 0 {
		t.Error("too tame: no short roll, or all were possible")
	}
}
