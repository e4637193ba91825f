package cutting

// Options limit the search. The zero value is the default.
type Options struct {
	// Steps is the number of search steps after which the best plan so far is
	// returned; 0 means DefaultSteps. A step is one pass over the network, one
	// set of pieces listed, or one branch of the search. There is no limit in
	// seconds: the same question gets the same answer on every machine.
	Steps int
	// Then lists what is wanted beyond the fewest rolls, most wanted first.
	// Empty: nothing but the fewest rolls, which is fastest.
	Then []Goal
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
	w.greedy()
	w.prove()
	w.proveListed(fewKinds)
	if w.open() {
		w.dive()
	}
	w.proveListed(maxKinds)
	if w.open() {
		w.exhaust()
	}
	s.Goals = w.pursue(o.Then)
	goals := len(o.Then) > 0
	s.Rolls = w.write(w.place(goals), goals)
	s.LowerBound = w.lower.rolls()
	s.Proven = len(s.Rolls) == s.LowerBound
	s.Certificate = w.certificate()
	s.Steps = w.steps
	return s
}

// QuickRolls returns the rolls of the best greedy plan: an upper bound on what
// Solve needs, in a few microseconds.
func QuickRolls(p *Problem) int {
	if len(p.kinds) == 0 {
		return 0
	}
	w := newWork(p, DefaultSteps)
	defer w.free()
	return w.greedy()
}
