package cutting

import (
	"slices"
	"strconv"
	"strings"

	"firstdrop/message"
)

// Goal is something that a plan is to have.
type Goal int

const (
	// FewestRolls asks for the fewest rolls to buy, or the least cost where they
	// have prices or come in packs. In the unit of Solution.Cost. Its bound is a
	// lower one.
	FewestRolls Goal = iota
	// LongestLeftover asks for the longest free end on one roll: a piece that
	// can still patch any drop. Every roll that is cut counts, whatever its kind
	// and whether it was in hand; of one in parts or with flaws only what hangs
	// together at its very end. In nanometres; with an unknown start it is
	// measured at the worst one. Its bound is an upper one.
	LongestLeftover
	// FewestChanges asks that consecutive pieces lie on the same roll: the
	// number of times that piece i+1 lies on another roll than piece i, pieces
	// for which no roll is left not counting. Its bound is a lower one.
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
		return message.New("goal_unknown", "{text} is no goal of cutting; it is one of {words}", "text", strconv.Quote(string(text)), "words", strings.Join(goalNames[:], ", "))
	}
	*g = Goal(i)
	return nil
}

// Result says how far a goal was reached.
type Result struct {
	Goal   Goal
	Value  int64 // reached
	Bound  int64 // no plan as good by what is wanted more does better
	Proven bool  // Value == Bound, and the number or cost of rolls is proven if it is wanted more
}

// pursue rearranges the best plan for what is wanted beyond the fewest rolls:
// for the first such goal, and then for the other among the plans as good by
// the first. Where the first is not the best there is, that means as good as
// the one reached. The results come in the order of Options.goals.
func (w *work) pursue(o *Options) (results []Result, pl *placing) {
	goals := o.goals()
	if goals[0] == FewestChanges {
		return w.pursueChanges(goals)
	}
	rolls := w.resultOfRolls(w.lower.rolls())
	if goals = goals[1:]; len(goals) == 0 {
		return []Result{rolls}, w.place(false)
	}
	var value, bound int64
	if goals[0] == FewestChanges {
		value, bound = w.fewestChanges()
		pl = w.placeHanging()
	} else {
		value, bound = w.bestLeftover()
		pl = w.place(true)
	}
	results = []Result{rolls, {goals[0], value, bound, value == bound && !w.open()}}
	if len(goals) > 1 {
		value, bound, pl = w.follow(goals[1], value, pl)
		r := &results[1] // where it is not proven, more may be reached now
		if goals[0] == FewestChanges {
			r.Value = countChanges(w.hang.best)
		} else {
			r.Value = w.leftFor(w.shortest())
		}
		r.Proven = r.Value == r.Bound && !w.open()
		results = append(results, Result{goals[1], value, bound, value == bound && !w.open()})
	}
	return results, pl
}

// resultOfRolls is the result for the rolls of the best plan, at least so many
// being needed.
func (w *work) resultOfRolls(least int) Result {
	have := w.best.rolls()
	return Result{FewestRolls, w.p.costOfRolls(have), w.p.costOfRolls(least), have == least}
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

// judge only measures how far goals are reached: nothing is claimed beyond the
// longest roll, or no change at all.
func (s *Solution) judge(goals []Goal) []Result {
	var results []Result
	for _, g := range goals {
		r := Result{Goal: g, Value: s.measure(g)}
		if g == FewestRolls {
			r.Bound, r.Proven = s.CostBound, s.Proven
		}
		for i := range s.Problem.stock {
			if g == LongestLeftover {
				r.Bound = max(r.Bound, int64(s.Problem.stock[i].Total()))
			}
		}
		results = append(results, r)
	}
	return results
}

// measure is what the written plan reaches.
func (s *Solution) measure(g Goal) int64 {
	value := int64(0)
	switch g {
	case FewestRolls:
		return s.Cost
	case LongestLeftover:
		for _, free := range s.Leftovers() {
			value = max(value, int64(free))
		}
		return value
	}
	rollOf := make([]int32, len(s.Problem.spec.Pieces))
	for _, i := range s.Missing {
		rollOf[i] = -1
	}
	for r, plan := range s.Rolls {
		for _, c := range plan.Orders[0].Cuts {
			rollOf[c.Piece] = int32(r)
		}
	}
	return countChanges(slices.DeleteFunc(rollOf, func(r int32) bool { return r < 0 }))
}
