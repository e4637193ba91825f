package cutting

import (
	"testing"

	"pgregory.net/rapid"
)

// TestLayersAgainstBruteForce compares the search piece by piece, which small
// rooms do not get as far as, with the definition.
func TestLayersAgainstBruteForce(t *testing.T) {
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
		got, least := w.hangLayers(b.rolls(), most, 0)
		if want := int(b.changes()) + 1; got != want || least != want {
			rt.Errorf("%d stretches, at least %d; brute force %d", got, least, want)
		}
	})
}
