package cutting

import (
	"fmt"
	"slices"
	"strings"
)

// Goal is something that a plan is to have.
type Goal int

const (
	// FewestRolls asks for the fewest rolls to buy, or the least cost where they
	// have prices.
	FewestRolls Goal = iota
	// LongestLeftover asks for the longest free end on one roll: a piece that
	// can still patch any drop. In nanometres; with an unknown start it is
	// measured at the worst one. Its bound is an upper one.
	LongestLeftover
	// FewestChanges asks that consecutive pieces lie on the same roll: the
	// number of times that piece i+1 lies on another roll than piece i. Its
	// bound is a lower one.
	FewestChanges
)

var goalNames = [...]string{"rolls", "leftover", "changes"}

// String returns "rolls", "leftover" or "changes".
func (g Goal) String() string {
	if g < 0 || int(g) >= len(goalNames) {
		return "unknown goal"
	}
	return goalNames[g]
}

// MarshalText writes what [Goal.String] returns.
func (g Goal) MarshalText() ([]byte, error) { return []byte(g.String()), nil }

// UnmarshalText reads what [Goal.String] returns; g is unchanged by an error.
func (g *Goal) UnmarshalText(text []byte) error {
	i := slices.Index(goalNames[:], string(text))
	if i < 0 {
		return fmt.Errorf("%q is no goal of cutting; it is one of %s", text, strings.Join(goalNames[:], ", "))
	}
	*g = Goal(i)
	return nil
}

// Result says how far a goal was reached.
type Result struct {
	Goal   Goal
	Value  int64 // reached
	Bound  int64 // no plan with as few rolls, and as good by the goals before, does better
	Proven bool  // Value == Bound, and the number of rolls is proven
}

// pursue rearranges the best plan for the first goal asked for, and then for
// the other among the plans as good by the first. Where the first is not the
// best there is, that means as good as the one reached.
func (w *work) pursue(goals []Goal) (results []Result, pl *placing) {
	if len(goals) == 0 {
		return nil, w.place(false)
	}
	var value, bound int64
	if goals[0] == FewestChanges {
		value, bound = w.fewestChanges()
		pl = w.placeHanging()
	} else {
		value, bound = w.bestLeftover()
		pl = w.place(true)
	}
	done := map[Goal]Result{}
	for i, g := range goals {
		if i > 0 && g != goals[0] && len(done) == 1 {
			value, bound, pl = w.follow(g, value, pl)
		}
		if _, known := done[g]; !known {
			done[g] = Result{g, value, bound, value == bound && !w.open()}
		}
		results = append(results, done[g])
	}
	return results, pl
}

// follow rearranges the plan for a second goal; the first one's value is
// first.
func (w *work) follow(g Goal, first int64, pl *placing) (value, bound int64, _ *placing) {
	if g == FewestChanges {
		better, value, bound := w.changesAfterLeftover(pl)
		if better {
			pl = w.placeHanging()
		}
		return value, bound, pl
	}
	value, bound = w.leftoverAfterChanges(first)
	return value, bound, w.placeHanging()
}

// judge is the same for several kinds of roll, where plans are not made for
// goals yet: nothing is claimed beyond the longest roll, or no change at all.
func (s *Solution) judge(goals []Goal) []Result {
	var results []Result
	for _, g := range goals {
		r := Result{Goal: g, Value: s.measure(g)}
		for i := range s.Problem.stock {
			if g == LongestLeftover {
				r.Bound = max(r.Bound, int64(s.Problem.stock[i].length()))
			}
		}
		results = append(results, r)
	}
	return results
}

// measure is what the written plan reaches.
func (s *Solution) measure(g Goal) int64 {
	value := int64(0)
	if g == LongestLeftover {
		for _, free := range s.Leftovers() {
			value = max(value, int64(free))
		}
		return value
	}
	rollOf := make([]int32, len(s.Problem.spec.Pieces))
	for r, plan := range s.Rolls {
		for _, c := range plan.Orders[0].Cuts {
			rollOf[c.Piece] = int32(r)
		}
	}
	return countChanges(rollOf)
}
