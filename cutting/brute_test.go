package cutting

import (
	"math/bits"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"firstdrop/internal/steady"
	"firstdrop/measure"
)

// brute knows only the definition: a set of pieces fits a roll if, for every
// start to be provided for, some order of the pieces fits when each is cut as
// early as its phase allows.
type brute struct {
	spec Spec
	fit  []bool // by set of pieces, as bits
}

func newBrute(s Spec) *brute {
	b := &brute{spec: s, fit: make([]bool, 1<<len(s.Pieces))}
	for set := range b.fit {
		b.fit[set] = b.fits(set)
	}
	return b
}

func (b *brute) fits(set int) bool {
	if b.spec.Repeat == 0 || b.spec.Roll.Start.Known {
		return b.anyOrder(set, 0, b.spec.Roll.Start.Phase)
	}
	for start := range b.spec.Repeat {
		if !b.anyOrder(set, 0, start) {
			return false
		}
	}
	return true
}

// anyOrder tries every order, nanometre by nanometre.
func (b *brute) anyOrder(set int, at, start measure.Length) bool {
	if set == 0 {
		return true
	}
	for i, p := range b.spec.Pieces {
		if set&(1<<i) == 0 {
			continue
		}
		from := at
		for b.spec.Repeat > 0 && (from+start)%b.spec.Repeat != p.Phase {
			from++
		}
		if from+p.Length <= b.spec.Roll.Length && b.anyOrder(set&^(1<<i), from+p.Length, start) {
			return true
		}
	}
	return false
}

// rolls is the fewest rolls, by trying all partitions; -1 if there is none.
func (b *brute) rolls() int {
	best := b.fewest()
	return best[len(best)-1]
}

// fewest is the fewest rolls for every set of pieces.
func (b *brute) fewest() []int {
	best := make([]int, len(b.fit))
	for set := 1; set < len(best); set++ {
		best[set] = -1
		low := 1 << bits.TrailingZeros(uint(set))
		for sub := set; sub > 0; sub = (sub - 1) & set {
			rest := set &^ sub
			if sub&low != 0 && b.fit[sub] && best[rest] >= 0 && (best[set] < 0 || best[rest]+1 < best[set]) {
				best[set] = best[rest] + 1
			}
		}
	}
	return best
}

// leftover is the longest free end that one roll can keep, at its worst start,
// with the fewest rolls.
func (b *brute) leftover() measure.Length {
	best := b.fewest()
	all := len(b.fit) - 1
	longest := measure.Length(-1)
	for set := 1; set <= all; set++ {
		if b.fit[set] && best[all&^set] == best[all]-1 {
			longest = max(longest, b.spec.Roll.Length-b.use(set))
		}
	}
	return longest
}

// use is the length a set needs at the worst start.
func (b *brute) use(set int) measure.Length {
	short := *b
	for short.spec.Roll.Length = 0; !short.fits(set); short.spec.Roll.Length++ {
	}
	return short.spec.Roll.Length
}

// tinySpec draws a question small enough for brute force, in nanometres.
func tinySpec(most int) *rapid.Generator[Spec] {
	return rapid.Custom(func(t *rapid.T) Spec {
		s := Spec{Repeat: measure.Length(rapid.IntRange(0, 9).Draw(t, "repeat"))}
		s.Roll.Length = measure.Length(rapid.IntRange(12, 40).Draw(t, "roll"))
		phase := rapid.IntRange(0, max(0, int(s.Repeat)-1))
		if rapid.Bool().Draw(t, "known") {
			s.Roll.Start = StartAt(measure.Length(phase.Draw(t, "start")))
		}
		longest := int(s.Roll.Length) - max(0, int(s.Repeat)-1)
		kinds := rapid.SliceOfN(rapid.Custom(func(t *rapid.T) Piece {
			return Piece{
				Length: measure.Length(rapid.IntRange(1, longest).Draw(t, "length")),
				Phase:  measure.Length(phase.Draw(t, "phase")),
			}
		}), 1, 5).Draw(t, "kinds")
		for range rapid.IntRange(1, most).Draw(t, "pieces") {
			s.Pieces = append(s.Pieces, rapid.SampledFrom(kinds).Draw(t, "piece"))
		}
		return s
	})
}

// manyTimes checks a property on ten times as many draws as usual, other ones
// each time and the same ones in every run.
func manyTimes(t *testing.T, property func(*rapid.T)) {
	t.Helper()
	rounds := 10
	if testing.Short() {
		rounds = 3
	}
	for round := range rounds {
		steady.Seeded(round+1, func() { rapid.Check(t, property) })
	}
}

// TestBruteForce compares with the definition: never a roll more, never a roll
// less, and never without proof.
func TestBruteForce(t *testing.T) {
	manyTimes(t, func(rt *rapid.T) {
		spec := tinySpec(7).Draw(rt, "spec")
		p, err := NewProblem(spec)
		if err != nil {
			rt.Fatal(err)
		}
		s := Solve(p, Options{})
		for _, err := range s.Check() {
			rt.Error(err)
		}
		want := newBrute(spec).rolls()
		if len(s.Rolls) != want || !s.Proven {
			rt.Errorf("%d rolls, bound %d, brute force %d", len(s.Rolls), s.LowerBound, want)
		}
		if lb, q := LowerBound(p), QuickRolls(p); lb > want || q < want {
			rt.Errorf("quick bounds %d and %d do not enclose %d", lb, q, want)
		}
		if c, enough := Prove(p); c.ByWeights > want || enough && c.ByWeights < want || c.AllStarts || len(c.Weights) != len(spec.Pieces) {
			rt.Errorf("weights alone prove %d of %d (%+v), enough: %v", c.ByWeights, want, c, enough)
		}
	})
}

// TestOrdersAtEveryStart replays every order at every start of its class.
func TestOrdersAtEveryStart(t *testing.T) {
	manyTimes(t, func(rt *rapid.T) {
		spec := anyStart(tinySpec(8).Draw(rt, "spec"))
		if spec.Repeat == 0 {
			return
		}
		p, err := NewProblem(spec)
		if err != nil {
			rt.Fatal(err)
		}
		for r, roll := range Solve(p, Options{}).Rolls {
			for start := range spec.Repeat {
				served := 0
				for _, o := range roll.Orders {
					if !inClass(o, start, spec.Repeat) {
						continue
					}
					served++
					cuts := o.CutsFrom(p, start)
					if last := cuts[len(cuts)-1]; last.To > spec.Roll.Length {
						rt.Errorf("roll %d at start %d ends at %d", r, start, last.To)
					}
				}
				if served != 1 {
					rt.Errorf("roll %d: %d orders serve start %d", r, served, start)
				}
			}
		}
	})
}

func inClass(o Order, start, repeat measure.Length) bool {
	if o.After == o.UpTo {
		return true
	}
	d := (start - o.After).Mod(repeat)
	return d > 0 && d <= (o.UpTo-o.After).Mod(repeat)
}

// TestBruteForceLeftover compares the best left-over with the definition.
func TestBruteForceLeftover(t *testing.T) {
	manyTimes(t, func(rt *rapid.T) {
		spec := tinySpec(6).Draw(rt, "spec")
		p, err := NewProblem(spec)
		if err != nil {
			rt.Fatal(err)
		}
		s := Solve(p, Options{Then: []Goal{LongestLeftover}})
		for _, err := range s.Check() {
			rt.Error(err)
		}
		b := newBrute(spec)
		if rolls := b.rolls(); len(s.Rolls) != rolls {
			rt.Fatalf("%d rolls, brute force %d", len(s.Rolls), rolls)
		}
		want, got := b.leftover(), s.Goals[0]
		if got.Value != int64(want) || !got.Proven || slices.Max(s.Leftovers()) != want {
			rt.Errorf("left-over %d, bound %d, in the plan %v; brute force %d", got.Value, got.Bound, s.Leftovers(), want)
		}
	})
}

// hangings calls done for every assignment of the pieces to the fewest rolls,
// with the set on each roll and the changes of roll while hanging in order. No
// assignment is gone on with that has more changes than most says.
func (b *brute) hangings(most func() int64, done func(sets []int, changes int64)) {
	b.hangingsOn(b.rolls(), most, done)
}

// hangingsOn is hangings on so many rolls, some of which may stay empty.
func (b *brute) hangingsOn(rolls int, most func() int64, done func(sets []int, changes int64)) {
	sets := make([]int, rolls)
	var hang func(i, prev int, changes int64)
	hang = func(i, prev int, changes int64) {
		if changes > most() {
			return
		}
		if i == len(b.spec.Pieces) {
			done(sets, changes)
			return
		}
		for r := range sets {
			if sets[r] |= 1 << i; b.fit[sets[r]] {
				more := changes
				if prev >= 0 && prev != r {
					more++
				}
				hang(i+1, r, more)
			}
			sets[r] &^= 1 << i
		}
	}
	hang(0, -1, 0)
}

// changes is the fewest changes of roll that hanging in order takes with the
// fewest rolls.
func (b *brute) changes() int64 {
	best := int64(len(b.spec.Pieces))
	b.hangings(func() int64 { return best - 1 }, func(_ []int, changes int64) { best = changes })
	return best
}

// TestBruteForceChanges compares the fewest changes with the definition.
func TestBruteForceChanges(t *testing.T) {
	returned := 0
	manyTimes(t, func(rt *rapid.T) {
		spec := tinySpec(8).Draw(rt, "spec")
		p, err := NewProblem(spec)
		if err != nil {
			rt.Fatal(err)
		}
		s := Solve(p, Options{Then: []Goal{FewestChanges}})
		for _, err := range s.Check() {
			rt.Error(err)
		}
		want, got := newBrute(spec).changes(), s.Goals[0]
		if got.Value != want || !got.Proven {
			rt.Errorf("%d changes, bound %d, brute force %d", got.Value, got.Bound, want)
		}
		if int(want) >= len(s.Rolls) {
			returned++
		}
	})
	t.Logf("%d times a roll had to be returned to", returned)
	if returned == 0 {
		t.Error("too tame: no roll had to be returned to")
	}
}
