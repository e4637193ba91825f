package cutting

import (
	"maps"
	"math/rand/v2"
	"slices"
	"testing"

	"firstdrop/measure"
)

// From what was listed before, with more kinds of pieces, more of each, and the design moved,
// a problem takes the sets that it lists by itself; and the answer is the same.
func TestSetsListedBefore(t *testing.T) {
	held, sets, spared := 0, 0, 0
	for seed := range 400 {
		spec := anyStart(randomRoom(50_000 + seed))
		p := newProblem(t, spec)
		c := moreListed(t, p, rand.New(rand.NewPCG(uint64(seed), 19)))
		if c == nil || len(p.nets[0].safe) == 1 || p.nets[0].coarse {
			continue
		}
		kinds, ok := c.kinds(p)
		if !ok {
			t.Fatalf("room %d: what was listed does not have its kinds", seed)
		}
		w := newWork(p, DefaultSteps)
		if !w.catalogue() {
			t.Fatalf("room %d: more were listed than can be", seed)
		}
		want := listedSets(w)
		w.takeListed(c, kinds)
		if got := listedSets(w); !maps.Equal(got, want) {
			t.Fatalf("room %d: %d sets taken, %d listed", seed, len(got), len(want))
		}
		w.free()
		alone, given := Solve(p, Options{}), Solve(p, Options{Catalogue: c})
		if alone.LowerBound != given.LowerBound || len(alone.Rolls) != len(given.Rolls) {
			t.Errorf("room %d: %d rolls of at least %d, alone %d of %d", seed, len(given.Rolls), given.LowerBound, len(alone.Rolls), alone.LowerBound)
		}
		if err := given.Certificate.check(p); err != nil {
			t.Errorf("room %d: %v", seed, err)
		}
		held, sets, spared = held+1, sets+len(want), spared+alone.Steps-given.Steps
	}
	t.Logf("%d problems, %d sets, %d steps spared", held, sets, spared)
	if held < 200 || spared <= 0 {
		t.Errorf("only %d problems held, %d steps spared", held, spared)
	}
}

// moreListed lists the sets of a problem that has more pieces, some of other kinds, with the
// design moved.
func moreListed(t *testing.T, p *Problem, r *rand.Rand) *Catalogue {
	spec := p.Spec()
	if spec.Repeat == 0 {
		return nil
	}
	by := measure.Length(r.Int64N(int64(spec.Repeat)))
	var pieces []Piece
	for _, piece := range spec.Pieces {
		piece.Phase = (piece.Phase + by).Mod(spec.Repeat)
		pieces = append(pieces, piece)
	}
	for _, piece := range slices.Clone(pieces) {
		for range r.IntN(3) {
			pieces = append(pieces, piece)
		}
		if other := (piece.Phase + measure.Millimetre).Mod(spec.Repeat); r.IntN(6) == 0 {
			pieces = append(pieces, Piece{Length: piece.Length, Phase: other})
		}
	}
	spec.Pieces = pieces
	other, err := NewProblem(spec)
	if err != nil {
		return nil
	}
	return NewCatalogue(other)
}

// listedSets returns the sets in the states, and in how many ways each is there.
func listedSets(w *work) map[string]int {
	sets := map[string]int{}
	for id := range w.states.info {
		key := ""
		for _, n := range w.states.counts(id) {
			key += string(rune(n))
		}
		sets[key]++
	}
	return sets
}

// A problem about other rolls, or with pieces of other kinds, takes nothing.
func TestSetsOfOthersAreNotTaken(t *testing.T) {
	spec := anyStart(randomRoom(50_001))
	for seed := 50_002; spec.Repeat == 0 || NewCatalogue(newProblem(t, spec)) == nil; seed++ {
		spec = anyStart(randomRoom(seed))
	}
	c := NewCatalogue(newProblem(t, spec))
	if _, ok := c.kinds(newProblem(t, spec)); !ok {
		t.Fatal("a problem does not take its own sets")
	}
	longer := spec
	longer.Roll.Length += measure.Metre
	more := spec
	more.Pieces = append(slices.Clone(spec.Pieces), Piece{Length: spec.Pieces[0].Length + measure.Nanometre, Phase: spec.Pieces[0].Phase})
	for what, other := range map[string]Spec{"longer rolls": longer, "another piece": more} {
		if _, ok := c.kinds(newProblem(t, other)); ok {
			t.Errorf("%s: the sets are taken", what)
		}
	}
	if _, ok := (*Catalogue)(nil).kinds(newProblem(t, spec)); ok {
		t.Error("sets are taken of nothing")
	}
}
