package cutting

import (
	"slices"
	"testing"
)

// TestNewsLeaveNothingOut compares passes that look only at what is new at each
// node with the maximum over all kinds, from every lane, with weights some of
// which are below zero.
func TestNewsLeaveNothingOut(t *testing.T) {
	for _, match := range []string{"straight", "half"} {
		for _, spec := range []Spec{hotel(40, 20, match), anyStart(hotel(40, 20, match))} {
			w := newWork(newProblem(t, spec), DefaultSteps)
			g := w.n.plan
			if g.news == nil || len(g.news)*2 > len(g.next) {
				t.Errorf("%s: %d steps are new of %d", match, len(g.news), len(g.next))
			}
			all := graph{kinds: g.kinds, at: g.at, next: g.next}
			r := source(7)
			for j := range w.weight {
				w.weight[j] = int64(r.in(0, 1<<20)) - 1<<17
			}
			got, want := make([]int64, len(g.at)), make([]int64, len(g.at))
			for _, l := range append(slices.Clone(w.n.exact), w.n.safe...) {
				if a, b := g.pass(l.from, l.last, w.weight, got), all.pass(l.from, l.last, w.weight, want); a != b {
					t.Fatalf("%s: %d, over all kinds %d", match, a, b)
				}
				if !slices.Equal(got[l.from:], want[l.from:]) {
					t.Fatalf("%s: gains differ", match)
				}
			}
			w.free()
		}
	}
}
