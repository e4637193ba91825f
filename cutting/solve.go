package cutting

import (
	"fmt"
	"slices"
)

// Options limit the search. The zero value is the default.
type Options struct {
	// Steps is the number of search steps after which the best plan so far is
	// returned; 0 means DefaultSteps. A step is one pass over the network, one
	// set of pieces listed, or one branch of the search. There is no limit in
	// seconds: the same question gets the same answer on every machine.
	Steps int
	// First is what is wanted most: FewestRolls, or FewestChanges. With the
	// latter the rolls come second: as few, or as cheap, as plans with that many
	// changes allow. Anything else cannot come first, since more rolls would
	// always leave more over: Check says so, and Solve takes it for FewestRolls.
	First Goal
	// Then lists what is wanted beyond that, most wanted first: a later goal
	// chooses among the plans as good by those before. FewestRolls may be among
	// them, but is pursued first or second all the same. Empty: nothing but the
	// fewest rolls, which is fastest.
	Then []Goal
	// Catalogue, if not nil, has the sets of pieces that one roll gives: of these kinds, and
	// perhaps of others. Solve then need not list them, which takes most of the steps where
	// a roll gives many small pieces. One that does not have all of them is not used, nor
	// where anything but the fewest rolls is wanted.
	Catalogue *Catalogue
	// Progress, if not nil, is called now and then (every ReportSteps steps)
	// from the goroutine that called Solve. If it returns false the search ends
	// and the best plan so far is returned, with the bound so far: so a caller
	// cancels. As long as
	// it returns true the answer does not depend on it.
	Progress func(Progress) bool
}

// OptionError names a goal that cannot be had where it is asked for.
type OptionError struct {
	Field string // as "First" or "Then[1]"
	Goal  Goal
	Why   Reason
}

func (e *OptionError) Error() string {
	return fmt.Sprintf("cutting: %s %s: %s", e.Field, e.Goal, e.Why)
}

// Check says whether the goals can be pursued in this order. The error is an
// *[OptionError]. Solve does not need it, and ignores what it complains about.
func (o Options) Check() error {
	if o.First != FewestRolls && o.First != FewestChanges {
		return &OptionError{"First", o.First, NotFirst}
	}
	for i, g := range o.Then {
		if g < 0 || int(g) >= len(goalNames) {
			return &OptionError{fmt.Sprintf("Then[%d]", i), g, NoSuchGoal}
		}
	}
	return nil
}

// goals lists what is pursued, most wanted first: rolls are among the first
// two.
func (o *Options) goals() []Goal {
	all := make([]Goal, 0, 3)
	if o.First == FewestChanges {
		all = append(all, FewestChanges)
	}
	all = append(all, FewestRolls)
	for _, g := range o.Then {
		if g >= 0 && int(g) < len(goalNames) && !slices.Contains(all, g) {
			all = append(all, g)
		}
	}
	return all
}

// report lists the results for the goals asked for: those of First and of the
// rolls unless these come first, then one for each of Then.
func (o *Options) report(results []Result) []Result {
	var all []Result
	for i, r := range results {
		if o.First == FewestChanges && i < 2 {
			all = append(all, r)
		}
	}
	for _, g := range o.Then {
		for _, r := range results {
			if r.Goal == g {
				all = append(all, r)
			}
		}
	}
	return all
}

// ReportSteps is the number of steps between two calls of Options.Progress.
const ReportSteps = 5_000

// Progress is how far a search has come.
type Progress struct {
	Steps int
	// Rolls is what the best plan so far needs, and LowerBound what no plan
	// undercuts so far; with several kinds of roll they are costs.
	Rolls, LowerBound int64
}

// DefaultSteps is the limit when none is given. An ordinary room takes fewer
// than a hundred; this many take a second or two.
const DefaultSteps = 1_000_000

// Solve returns the plan with the fewest rolls it can find, and the best lower
// bound it can prove. Solution.Proven says that the two agree, which is the
// rule for the pieces of a room. It is deterministic to the byte.
//
// It goes from the cheap to the thorough and stops as soon as plan and bound
// meet: greedy fillings, the linear program with its certificate, dives, and
// a search to exhaustion.
func Solve(p *Problem, o Options) *Solution {
	if o.Steps <= 0 {
		o.Steps = DefaultSteps
	}
	s := &Solution{Problem: p, Proven: true}
	if len(p.kinds) == 0 {
		return s
	}
	w := newWork(p, o.Steps)
	defer w.free()
	w.progress = o.Progress
	if o.First == FewestRolls && len(o.Then) == 0 {
		w.given = o.Catalogue
	}
	if p.spec.InOrder {
		w.solveInOrder(s, &o)
		return s
	}
	if p.isMixed() {
		w.solveMixed()
		w.finishMixed(s, o)
		return s
	}
	w.greedy()
	w.proveFirst()
	w.prove()
	w.proveListed(fewKinds)
	w.briefly()
	w.provePriced()
	if w.open() {
		w.dive()
	}
	w.proveListed(maxKinds)
	if w.open() {
		w.exhaust()
	}
	results, pl := w.pursue(&o)
	s.Goals = o.report(results)
	s.Rolls, _ = w.write(pl, len(results) > 1)
	s.LowerBound = w.lower.rolls()
	s.Proven = len(s.Rolls) == s.LowerBound
	s.Cost, s.CostBound = p.costOfRolls(len(s.Rolls)), p.costOfRolls(s.LowerBound)
	s.Certificate = w.certificate()
	s.Certificate.Changes = w.changesProof(results)
	s.Steps = w.steps
	return s
}

// costOfRolls is what so many rolls cost if there is a single kind.
func (p *Problem) costOfRolls(n int) int64 {
	return p.stock[0].whole(n) * max(p.stock[0].Price, 1)
}

// finishMixed writes the answer out for several kinds of roll.
func (w *work) finishMixed(s *Solution, o Options) {
	x := &w.mixed
	goals := o.goals()
	bounds, pl := w.pursueMixed(goals)
	s.Rolls, s.Missing = w.write(pl, len(goals) > 1)
	s.Cost, s.CostBound = x.bestCost, x.bound
	s.Certificate = w.certificateMixed()
	if s.Cost != s.CostBound {
		s.CostBound = s.Certificate.ByCost // a search only counts where it has met the cost
	}
	s.Proven = s.Cost == s.CostBound
	s.LowerBound = x.leastRolls(s.CostBound)
	results := s.judge(goals)
	for i, bound := range bounds {
		r := &results[i]
		r.Bound = bound
		r.Proven = r.Value == bound && (s.Proven || goals[0] == FewestChanges)
	}
	s.Goals = o.report(results)
	s.Steps = w.steps
}

// QuickRolls returns the rolls of the best greedy plan: an upper bound on what
// Solve needs, in a few microseconds. With Stock it counts the rolls to buy in
// a plan that need not be the cheapest.
func QuickRolls(p *Problem) int {
	if len(p.kinds) == 0 {
		return 0
	}
	w := newWork(p, DefaultSteps)
	defer w.free()
	switch {
	case p.spec.InOrder:
		return w.rollsInOrder()
	case !p.isMixed():
		return w.greedy()
	}
	w.mixed.price(p)
	w.fillMixed(p.length)
	return w.bought(&w.best)
}
