package audit

import (
	"math/rand/v2"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"firstdrop/cutting"
	"firstdrop/measure"
)

// hungJob makes up a room of some walls of different heights, each with
// windows, its pieces in hanging order. All of it is invented; sizes are common
// practice.
func hungJob(seed uint64) cutting.Spec {
	const mm = measure.Millimetre
	r := rand.New(rand.NewPCG(seed, 3))
	in := func(lo, hi int) measure.Length { return measure.Length(lo+r.IntN(hi-lo+1)) * mm }
	spec := cutting.Spec{Roll: cutting.Roll{Length: 10_050 * mm}, Lead: in(0, 1) * 50, Loss: in(0, 1) * 3}
	if seed%4 > 0 {
		spec.Repeat = in(200, 640)
	}
	if spec.Repeat > 0 && seed%2 == 0 {
		spec.Roll.Start = cutting.StartAt(in(0, 199))
	}
	half := seed % 3
	for range 2 + r.IntN(4) {
		height, under := in(2300, 2900), in(600, 1000)
		for i := range 3 + r.IntN(6) {
			q := measure.Length(i) * spec.Repeat / 2 * measure.Length(half%2)
			phase := func(below measure.Length) measure.Length { return (q + below).Mod(spec.Repeat) }
			if r.IntN(4) > 0 {
				spec.Pieces = append(spec.Pieces, cutting.Piece{Length: height, Phase: phase(0)})
				continue
			}
			spec.Pieces = append(spec.Pieces, cutting.Piece{Length: under / 2, Phase: phase(0)},
				cutting.Piece{Length: under, Phase: phase(height - under)})
		}
	}
	return spec
}

func solved(t testing.TB, spec cutting.Spec, o cutting.Options) *cutting.Solution {
	p, err := cutting.NewProblem(spec)
	if err != nil {
		t.Fatal(err)
	}
	return cutting.Solve(p, o)
}

// ordersOfGoals are the orders of goals in which changes are bounded.
var ordersOfGoals = []cutting.Options{
	{Then: []cutting.Goal{cutting.FewestChanges}},
	{Then: []cutting.Goal{cutting.FewestChanges, cutting.LongestLeftover}},
	{Then: []cutting.Goal{cutting.LongestLeftover, cutting.FewestChanges}},
	{First: cutting.FewestChanges, Then: []cutting.Goal{cutting.LongestLeftover}},
}

// What is said of the changes of roll is proven here in nearly every room; what
// is not is named.
func TestChangesAreProven(t *testing.T) {
	const jobs = 80
	seen := map[string]int{}
	for seed := range uint64(jobs) {
		s := solved(t, hungJob(seed), ordersOfGoals[seed/4%4])
		for _, v := range Cutting(s) {
			t.Errorf("job %d: %v", seed, v)
		}
		for _, err := range s.Check() {
			t.Errorf("job %d: %v", seed, err)
		}
		r := newRolls(&book{}, s)
		goal, _ := r.changesGoal()
		c := s.Certificate.Changes
		switch {
		case c != nil && c.Changes == goal.Bound:
			seen["by prices"]++
		case c != nil:
			seen["partly by prices"]++
		case goal.Bound >= int64(len(s.Rolls)) && !r.changesFirst():
			seen["by search alone"]++
		default:
			seen["at once"]++
		}
		if c != nil && c.Short {
			seen["with a left-over"]++
		}
		for _, claim := range r.trustedChanges() {
			seen["trusted"]++
			t.Logf("job %d, %d pieces: %s of %d, on %d rolls", seed, len(r.spec.Pieces), claim, goal.Value, len(s.Rolls))
		}
	}
	t.Log(seen)
	if seen["trusted"] > jobs/8 {
		t.Errorf("%d of %d bounds on trust", seen["trusted"], jobs)
	}
	if seen["by prices"] == 0 || seen["with a left-over"] == 0 {
		t.Errorf("too tame: %v", seen)
	}
}

// earnedByTrying is the most that a roll earns, by trying every choice of
// pieces; what is not in the list of sets may not be taken.
func (h *held) earnedByTrying(c *cutting.ChangesProof, i int, set int32, atHand bool, need int64) int64 {
	if i == len(h.of) {
		if h.weight[set] < need {
			return never
		}
		return 0
	}
	best := h.earnedByTrying(c, i+1, set, false, need)
	if to := h.add(set, h.of[i]); to >= 0 {
		gain := c.Prices[i]
		if !atHand {
			gain -= c.Stretch
		}
		best = max(best, gain+h.earnedByTrying(c, i+1, to, true, need))
	}
	return best
}

// The sets listed are those that trying every order of cutting finds, and what
// a roll earns is what trying every choice finds.
func TestHeldAgainstTrying(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		spec := cutting.Spec{Repeat: measure.Length(rapid.IntRange(0, 7).Draw(t, "repeat"))}
		spec.Roll.Length = measure.Length(rapid.IntRange(8, 25).Draw(t, "roll"))
		if spec.Repeat > 0 && rapid.Bool().Draw(t, "known") {
			spec.Roll.Start = cutting.StartAt(measure.Length(rapid.IntRange(0, int(spec.Repeat)-1).Draw(t, "start")))
		}
		spec.Lead, spec.Loss = measure.Length(rapid.IntRange(0, 2).Draw(t, "lead")), measure.Length(rapid.IntRange(0, 2).Draw(t, "loss"))
		r := &rolls{book: &book{}, s: &cutting.Solution{}, spec: spec, repeat: int64(spec.Repeat), loss: int64(spec.Loss), lead: int64(spec.Lead)}
		c := &cutting.ChangesProof{Stretch: 4}
		for range rapid.IntRange(1, 9).Draw(t, "pieces") {
			p := cutting.Piece{Length: measure.Length(rapid.IntRange(2, 6).Draw(t, "length"))}
			p.Phase = measure.Length(mod(rapid.Int64Range(0, 6).Draw(t, "phase"), r.repeat))
			r.spec.Pieces = append(r.spec.Pieces, p)
			r.s.Certificate.Weights = append(r.s.Certificate.Weights, int64(p.Length))
			c.Prices = append(c.Prices, rapid.Int64Range(0, 5).Draw(t, "price"))
		}
		r.wares = wares(&r.spec)
		kinds := r.kinds()
		h := newHeld(r, kinds)
		for set := range 1 << len(h.of) {
			at, chosen := int32(0), make([]int, len(kinds))
			for i, k := range h.of {
				if set>>i&1 == 1 {
					chosen[k]++
					if at >= 0 {
						at = h.add(at, k)
					}
				}
			}
			if want := h.fitsByTrying(chosen); (at >= 0) != want {
				t.Fatalf("set %v fits: %v, listed %v", chosen, want, at >= 0)
			}
		}
		need := rapid.Int64Range(0, 12).Draw(t, "need")
		want := max(0, h.earnedByTrying(c, 0, 0, false, need))
		if got := r.mostEarned(c, h, func(s int) bool { return h.weight[s] >= need }); got != want {
			t.Errorf("a roll earns %d, by trying %d", got, want)
		}
	})
}

// fitsByTrying tries every start and every order of cutting.
func (h *held) fitsByTrying(chosen []int) bool {
	w := &h.r.wares[0]
	starts := []int64{w.start}
	for s := int64(1); !w.known && s < h.r.repeat || s == 1 && !w.known; s++ {
		starts = append(starts, s)
	}
	for _, s := range starts {
		if !h.ordered(chosen, s+h.r.lead, s+w.length+h.r.loss) {
			return false
		}
	}
	return true
}

func (h *held) ordered(chosen []int, x, end int64) bool {
	done := true
	for k := range chosen {
		if chosen[k] == 0 {
			continue
		}
		done = false
		chosen[k]--
		to := x + mod(h.kinds[k].phase-x, h.r.repeat) + h.kinds[k].length
		ok := to <= end && h.ordered(chosen, to, end)
		chosen[k]++
		if ok {
			return true
		}
	}
	return done
}

// falsifiedChanges is every way a proof of the changes is falsified.
var falsifiedChanges = map[string]func(r *rolls, c *cutting.ChangesProof){
	"a piece dearer":          func(_ *rolls, c *cutting.ChangesProof) { c.Prices[0] += c.Stretch },
	"a price below zero":      func(_ *rolls, c *cutting.ChangesProof) { c.Prices[0] = -1 },
	"a price left out":        func(_ *rolls, c *cutting.ChangesProof) { c.Prices = c.Prices[1:] },
	"the left-over forgotten": func(_ *rolls, c *cutting.ChangesProof) { c.Short = !c.Short },
	"a stretch for nothing":   func(_ *rolls, c *cutting.ChangesProof) { c.Stretch = 0 },
	"cheaper stretches":       func(_ *rolls, c *cutting.ChangesProof) { c.Stretch /= 2 },
	"one change more proven":  func(_ *rolls, c *cutting.ChangesProof) { c.Changes++ },
	"no such goal":            func(r *rolls, _ *cutting.ChangesProof) { r.s.Goals = nil },
	"less earned than a roll can": func(r *rolls, c *cutting.ChangesProof) {
		_, left := r.changesGoal()
		earned, _, _ := r.earned(c, left)
		c.Earned = earned - 1
		r.claim(c)
	},
	"less earned than the roll with the left-over can": func(r *rolls, c *cutting.ChangesProof) {
		_, left := r.changesGoal()
		if _, short, _ := r.earned(c, left); c.Short {
			c.ShortEarned = short - 1
		} else {
			c.Prices = nil
		}
		r.claim(c)
	},
	"all pieces dearer": func(r *rolls, c *cutting.ChangesProof) {
		for i := range c.Prices {
			c.Prices[i] += c.Stretch
		}
		r.claim(c)
	},
}

// claim claims what would follow from a proof.
func (r *rolls) claim(c *cutting.ChangesProof) {
	c.Changes = r.changesBy(c)
	goal, _ := r.changesGoal()
	goal.Value, goal.Bound = max(goal.Value, c.Changes), max(goal.Bound, c.Changes)
}

// A proof of the changes that is falsified is found out; a bound without its
// proof is named as taken on trust.
func TestFalsifiedChanges(t *testing.T) {
	proofs, named := 0, 0
	for seed := range uint64(24) {
		sound := solved(t, hungJob(seed), ordersOfGoals[seed/4%3])
		if sound.Certificate.Changes == nil {
			continue
		}
		proofs++
		for name, break_ := range falsifiedChanges {
			s, c := *sound, *sound.Certificate.Changes
			s.Goals, c.Prices = slices.Clone(s.Goals), slices.Clone(c.Prices)
			s.Certificate.Changes = &c
			break_(newRolls(&book{}, &s), &c)
			if len(Cutting(&s)) == 0 {
				t.Errorf("job %d, %s: not found out", seed, name)
			}
		}
		sound.Certificate.Changes = nil
		r := newRolls(&book{}, sound)
		goal, _ := r.changesGoal()
		beyond := goal.Bound > r.fewestStretches()-1 // which need no prices
		if got := len(r.trustedChanges()) == 1; got != beyond {
			t.Errorf("job %d: a bound of %d without proof is named: %v", seed, goal.Bound, got)
		}
		if beyond {
			named++
		}
	}
	if proofs < 4 || named < 2 {
		t.Errorf("only %d proofs, %d of them needed", proofs, named)
	}
}
