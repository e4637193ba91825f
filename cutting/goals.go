package cutting

import "firstdrop/measure"

// Goal is something to be had beyond the fewest rolls, which always come
// first.
type Goal int

const (
	// LongestLeftover asks for the longest free end on one roll: a piece that
	// can still patch any drop. With an unknown start it is measured at the
	// worst one.
	LongestLeftover Goal = iota + 1
)

// Result says how far a goal was reached.
type Result struct {
	Goal   Goal
	Value  measure.Length // reached
	Bound  measure.Length // no plan with as few rolls reaches more
	Proven bool           // Value == Bound, and the number of rolls is proven
}

// pursue rearranges the best plan for the goals asked for.
func (w *work) pursue(goals []Goal) []Result {
	var results []Result
	for _, g := range goals {
		if g == LongestLeftover {
			v, b := w.bestLeftover()
			results = append(results, Result{g, v, b, v == b && !w.open()})
		}
	}
	return results
}

// judge says how far a plan that was not rearranged for the goals reaches
// them. The bound is the longest roll: nothing is claimed beyond that.
func (s *Solution) judge(goals []Goal) []Result {
	var results []Result
	for _, g := range goals {
		r := Result{Goal: g}
		for _, free := range s.Leftovers() {
			r.Value = max(r.Value, free)
		}
		for i := range s.Problem.stock {
			r.Bound = max(r.Bound, s.Problem.stock[i].length())
		}
		results = append(results, r)
	}
	return results
}
