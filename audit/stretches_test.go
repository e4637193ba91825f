package audit

import (
	"testing"

	"pgregory.net/rapid"

	"firstdrop/cutting"
	"firstdrop/measure"
)

// leastByTrying is the fewest stretches by trying every end of each, and on it
// every order of its pieces, from every beginning nanometre by nanometre.
func leastByTrying(r *rolls, i int) int64 {
	if i == len(r.spec.Pieces) {
		return 0
	}
	fewest := int64(len(r.spec.Pieces))
	for end := i + 1; end <= len(r.spec.Pieces); end++ {
		if end == i+1 || someRollHolds(r, i, end) {
			fewest = min(fewest, 1+leastByTrying(r, end))
		}
	}
	return fewest
}

func someRollHolds(r *rolls, i, end int) bool {
	for k := range r.wares {
		w, all := &r.wares[k], true
		for start := range max(r.repeat, 1) {
			all = all && inSomeOrder(r, w.from(start), 0, i, end, 0)
		}
		if all {
			return true
		}
	}
	return false
}

func inSomeOrder(r *rolls, tracts []tract, x int64, i, end int, cut uint) bool {
	if cut == 1<<(end-i)-1 {
		return true
	}
	for p := i; p < end; p++ {
		if cut&(1<<(p-i)) > 0 {
			continue
		}
		k := kind{length: r.size(p) + r.loss, phase: r.phase(p)}
		if to, ok := r.after(tracts, x, &k); ok && inSomeOrder(r, tracts, to, i, end, cut|1<<(p-i)) {
			return true
		}
	}
	return false
}

func TestFewestStretchesAgainstTrying(t *testing.T) {
	returns := 0
	rapid.Check(t, func(t *rapid.T) {
		spec := cutting.Spec{Repeat: measure.Length(rapid.IntRange(0, 6).Draw(t, "repeat")), Lead: measure.Length(rapid.IntRange(0, 1).Draw(t, "lead")), Loss: measure.Length(rapid.IntRange(0, 1).Draw(t, "loss"))}
		for range rapid.IntRange(1, 6).Draw(t, "pieces") {
			p := cutting.Piece{Length: measure.Length(rapid.IntRange(2, 7).Draw(t, "length"))}
			if spec.Repeat > 0 {
				p.Phase = measure.Length(rapid.IntRange(0, int(spec.Repeat)-1).Draw(t, "phase"))
			}
			spec.Pieces = append(spec.Pieces, p)
		}
		for k := range rapid.IntRange(1, 2).Draw(t, "kinds") {
			s := cutting.Stock{Roll: cutting.Roll{Length: measure.Length(rapid.IntRange(14, 24).Draw(t, "roll"))}, Count: k}
			if rapid.Bool().Draw(t, "known") {
				s.Start = cutting.StartAt(measure.Length(rapid.IntRange(0, 5).Draw(t, "start")).Mod(spec.Repeat))
				s.Flaws = []cutting.Flaw{{From: 6, To: measure.Length(rapid.IntRange(7, 9).Draw(t, "flaw"))}}
			}
			spec.Stock = append(spec.Stock, s)
		}
		problem, err := cutting.NewProblem(spec)
		if err != nil {
			t.Skip(err)
		}
		r := newRolls(&book{}, &cutting.Solution{Problem: problem})
		want := leastByTrying(r, 0)
		if got := r.fewestStretches(); got != want {
			t.Errorf("%d stretches, want %d", got, want)
		}
		if want > 1 {
			returns++
		}
	})
	if returns == 0 {
		t.Error("too tame")
	}
}

// Where changes come first, a bound on the rolls above that of any plan is named.
func TestRollsForFewChangesAreTrusted(t *testing.T) {
	named := 0
	for seed := range uint64(12) {
		s := solved(t, hungJob(seed), cutting.Options{First: cutting.FewestChanges})
		r := newRolls(&book{}, s)
		beyond := s.Goals[1].Bound > s.CostBound
		if got := len(r.trustedRolls()) > 0; got != beyond {
			t.Errorf("job %d: named: %v; %d, for any plan %d", seed, got, s.Goals[1].Bound, s.CostBound)
		}
		if beyond {
			named++
		}
	}
	if named == 0 {
		t.Error("too tame")
	}
}

// What is said of the changes of goods in hanging order and of rolls of several
// kinds is proven here but where a roll must be returned to.
func TestChangesOfOtherGoods(t *testing.T) {
	const jobs = 60
	inOrder, mixed := 0, 0
	for seed := range uint64(jobs) {
		spec := hungJob(seed)
		if seed%3 > 0 {
			spec.Stock = []cutting.Stock{{Roll: spec.Roll}, {Roll: cutting.Roll{Length: spec.Roll.Length * 2 / 3}, Count: 2, InHand: true}}
		}
		spec.InOrder = seed%3 < 2
		s := solved(t, spec, ordersOfGoals[seed/6%4])
		for _, v := range Cutting(s) {
			t.Errorf("job %d: %v", seed, v)
		}
		r := newRolls(&book{}, s)
		switch trusted := r.trustedChanges(); {
		case len(trusted) == 0:
		case spec.InOrder:
			inOrder++
			t.Logf("job %d, %d pieces in order: %v", seed, len(spec.Pieces), trusted)
		default:
			mixed++
		}
		goal, _ := r.changesGoal()
		goal.Bound += 2
		goal.Value, goal.Proven = goal.Bound, false
		if len(r.trustedChanges()) == 0 {
			t.Errorf("job %d: a bound of two more passes as proven", seed)
		}
	}
	t.Logf("of %d jobs on trust: %d in order, %d of several kinds", jobs, inOrder, mixed)
	if inOrder > 3 || mixed > 15 {
		t.Errorf("of %d jobs %d in order and %d of several kinds are on trust", jobs, inOrder, mixed)
	}
}
