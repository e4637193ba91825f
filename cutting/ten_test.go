package cutting

import (
	"slices"
	"testing"

	"firstdrop/measure"
)

// The optima of the ten jobs as four general MIP solvers found them (CBC
// 2.10.8, GLPK 5.0, SYMPHONY 5.6.17, HiGHS 1.13.1), and the rolls of the exact
// any-start guarantee.
var tenOptima = map[string]struct{ known, any int }{
	"i01-n5-P0": {2, 2}, "i02-n12-P0": {3, 3}, "i03-n18-P530": {5, 5}, "i04-n24-P640h": {7, 7}, "i05-n30-P320": {7, 7},
	"i06-n40-P640h": {10, 10}, "i07-n60-P530h": {15, 15}, "i08-n100-P320h": {24, 24}, "i09-n150-P530": {38, 40}, "i10-n200-P640h": {48, 48},
}

func TestTenJobs(t *testing.T) {
	for _, j := range tenJobs(t) {
		want := tenOptima[j.name]
		if s := solve(t, j.spec); len(s.Rolls) != want.known || !s.Proven {
			t.Errorf("%v: %d rolls, bound %d, want %d proven", j, len(s.Rolls), s.LowerBound, want.known)
		}
		if s := solve(t, anyStart(j.spec)); len(s.Rolls) != want.any || !s.Proven {
			t.Errorf("%v, any start: %d rolls, bound %d, want %d proven (%d steps)", j, len(s.Rolls), s.LowerBound, want.any, s.Steps)
		}
	}
}

// The largest remainders with the fewest rolls, known start, as CBC and HiGHS
// found them for the first eight jobs; those of the last two, which they did
// not reach, are our own.
var tenRemainders = map[string]measure.Length{
	"i01-n5-P0": 7550, "i02-n12-P0": 7130, "i03-n18-P530": 7017, "i04-n24-P640h": 9290,
	"i05-n30-P320": 4994, "i06-n40-P640h": 4181, "i07-n60-P530h": 6703, "i08-n100-P320h": 7512,
	"i09-n150-P530": 4946, "i10-n200-P640h": 2233,
}

func TestTenRemainders(t *testing.T) {
	for _, j := range tenJobs(t) {
		s := Solve(newProblem(t, j.spec), Options{Then: []Goal{LongestLeftover}})
		for _, err := range s.Check() {
			t.Error(err)
		}
		got := s.Goals[0]
		if longest := slices.Max(s.Leftovers()); int64(longest) != got.Value {
			t.Errorf("%v: the plan leaves %d mm, the result says %d", j, longest/mm, got.Value)
		}
		if want := tenRemainders[j.name]; got.Value != int64(want*mm) || !got.Proven {
			t.Errorf("%v: remainder %d mm, bound %d, want %d proven", j, got.Value/1e6, got.Bound/1e6, want)
		}
		t.Logf("%v: remainder %d mm, bound %d, %d steps", j, got.Value/1e6, got.Bound/1e6, s.Steps)
	}
}
