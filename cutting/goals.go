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
