package audit_test

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"firstdrop/audit"
	"firstdrop/cutting"
	"firstdrop/measure"
)

// twoOrders is a roll that needs two cutting orders. Repeat 640, roll 1800;
// piece 0 of phase 0 and piece 1 of phase 320, both 500 long. Counted in the
// design, 0 first ends at 500, 1 follows at 960 and ends at 1460: good if the
// roll begins within 1800 before that, so for starts from 300 to 640. 1 first
// ends at 820, 0 follows at 1280 and ends at 1780: good for starts from 0 (620
// the repeat before) to 320.
func twoOrders(t testing.TB) *cutting.Solution {
	t.Helper()
	problem, err := cutting.NewProblem(cutting.Spec{
		Repeat: 640 * mm, Roll: cutting.Roll{Length: 1800 * mm},
		Pieces: []cutting.Piece{{Length: 500 * mm}, {Length: 500 * mm, Phase: 320 * mm}},
	})
	if err != nil {
		t.Fatal(err)
	}
	wait := 320*mm - nm // from one past a phase to the next
	return &cutting.Solution{
		Problem: problem,
		Rolls: []cutting.RollPlan{{Orders: []cutting.Order{
			{After: 320 * mm, UpTo: 0, At: 320*mm + nm, Cuts: []cutting.Cut{{Piece: 0, From: wait, To: wait + 500*mm}, {Piece: 1, From: wait + 960*mm, To: wait + 1460*mm}}},
			{After: 0, UpTo: 320 * mm, At: nm, Cuts: []cutting.Cut{{Piece: 1, From: wait, To: wait + 500*mm}, {Piece: 0, From: wait + 960*mm, To: wait + 1460*mm}}},
		}}},
		LowerBound: 1, Proven: true, Cost: 1, CostBound: 1,
		Certificate: cutting.Certificate{Weights: []int64{1, 1}, Capacity: 2, ByWeights: 1, At: nm},
	}
}

func TestCuttingTwoOrders(t *testing.T) {
	tests := []struct {
		name   string
		break_ func(orders []cutting.Order)
		rule   audit.Rule
	}{
		{"sound", func([]cutting.Order) {}, ""},
		{"a start left out between the classes", func(o []cutting.Order) { o[1].UpTo -= nm }, audit.StartClass},
		{"classes that overlap are no harm", func(o []cutting.Order) { o[0].After, o[0].At = 310*mm, 310*mm+nm; shift(o[0].Cuts, 10*mm) }, ""},
		{"a class wider than its order serves", func(o []cutting.Order) { o[0].After, o[0].At = 290*mm, 290*mm+nm; shift(o[0].Cuts, 30*mm) }, audit.Replay},
		{"a class wider than its order serves, at its other end", func(o []cutting.Order) { o[0].UpTo = nm }, audit.Replay},
		{"one order for all", func(o []cutting.Order) { o[0].UpTo = 320 * mm }, audit.Replay},
		{"an order with a piece less", func(o []cutting.Order) { o[1].Cuts = o[1].Cuts[:1] }, audit.CutPieces},
		{"a start that is none of the class", func(o []cutting.Order) { o[1].At = 400 * mm }, audit.StartClass},
		{"a phase beyond the repeat", func(o []cutting.Order) { o[1].UpTo += 640 * mm }, audit.StartClass},
	}
	for _, tt := range tests {
		s := twoOrders(t)
		tt.break_(s.Rolls[0].Orders)
		vs := audit.Cutting(s)
		if tt.rule == "" && len(vs) > 0 || tt.rule != "" && !breaks(vs, tt.rule) {
			t.Errorf("%s: violations %v, want one of %q", tt.name, vs, tt.rule)
		}
	}
}

func shift(cuts []cutting.Cut, by measure.Length) {
	for i := range cuts {
		cuts[i].From, cuts[i].To = cuts[i].From+by, cuts[i].To+by
	}
}

// A known start has one order, for that start.
func TestCuttingKnownStart(t *testing.T) {
	problem, err := cutting.NewProblem(cutting.Spec{
		Repeat: 640 * mm, Roll: cutting.Roll{Length: 1000 * mm, Start: cutting.Start{Known: true, Phase: 600 * mm}},
		Pieces: []cutting.Piece{{Length: 900 * mm, Phase: 20 * mm}},
	})
	if err != nil {
		t.Fatal(err)
	}
	s := &cutting.Solution{
		Problem:     problem,
		Rolls:       []cutting.RollPlan{{Orders: []cutting.Order{{After: 600 * mm, UpTo: 600 * mm, At: 600 * mm, Cuts: []cutting.Cut{{From: 60 * mm, To: 960 * mm}}}}}},
		LowerBound:  1,
		Proven:      true,
		Cost:        1,
		CostBound:   1,
		Certificate: cutting.Certificate{Weights: []int64{1}, Capacity: 1, ByWeights: 1, At: 600 * mm},
	}
	if vs := audit.Cutting(s); len(vs) > 0 {
		t.Errorf("sound: %v", vs)
	}
	s.Rolls[0].Orders[0].At = 20 * mm
	if vs := audit.Cutting(s); !breaks(vs, audit.StartClass) {
		t.Errorf("another start: %v", vs)
	}
}

// The sheets of a worked example: H. A. Taha, Operations Research: An
// Introduction, problem 11-13, after R. S. Garfinkel, Operations Research
// 25(5), 1977. In units of one repeat, start cuts and lengths; the best chain
// leaves 1.410 repeats of waste beside 36.590 of sheets, 38 repeats together,
// by exhaustion over all 720 orders, for instance 1-4-3-5-2-6. So one roll of
// 38 repeats that begins at phase 0 gives all six, in that order and not in the
// order 1 to 6.
func TestCuttingChain(t *testing.T) {
	const unit = 640 * mm / 1000
	starts := []int{0, 342, 825, 585, 126, 435}
	lengths := []int{10470, 3820, 5930, 8140, 1910, 6320}
	chain := func(order []int) *cutting.Solution {
		spec := cutting.Spec{Repeat: 1000 * unit, Roll: cutting.Roll{Length: 38_000 * unit, Start: cutting.Start{Known: true}}}
		for i := range starts {
			spec.Pieces = append(spec.Pieces, cutting.Piece{Length: measure.Length(lengths[i]) * unit, Phase: measure.Length(starts[i]) * unit})
		}
		problem, err := cutting.NewProblem(spec)
		if err != nil {
			t.Fatal(err)
		}
		s := &cutting.Solution{Problem: problem, LowerBound: 1, Proven: true, Cost: 1, CostBound: 1}
		s.Certificate = cutting.Certificate{Weights: slices.Repeat([]int64{1}, 6), Capacity: 100, ByWeights: 1}
		at := 0
		var o cutting.Order
		for _, n := range order {
			at += ((starts[n-1]-at)%1000 + 1000) % 1000
			o.Cuts = append(o.Cuts, cutting.Cut{Piece: n - 1, From: measure.Length(at) * unit, To: measure.Length(at+lengths[n-1]) * unit})
			at += lengths[n-1]
		}
		s.Rolls = []cutting.RollPlan{{Orders: []cutting.Order{o}}}
		return s
	}
	for _, order := range [][]int{{1, 4, 3, 5, 2, 6}, {1, 4, 5, 2, 6, 3}, {5, 2, 6, 1, 4, 3}, {5, 2, 6, 3, 1, 4}} {
		if vs := audit.Cutting(chain(order)); len(vs) > 0 {
			t.Errorf("%v: %v", order, vs)
		}
	}
	if vs := audit.Cutting(chain([]int{1, 2, 3, 4, 5, 6})); !breaks(vs, audit.CutOnRoll) {
		t.Errorf("order 1 to 6: %v, want a cut off the roll", vs)
	}
}

// pieces draws a cutting question of up to n pieces of a few kinds.
func pieces(t *rapid.T, n int) cutting.Spec {
	spec := cutting.Spec{Roll: cutting.Roll{Length: measure.Length(rapid.IntRange(9000, 15000).Draw(t, "roll")) * mm}}
	if rapid.IntRange(0, 4).Draw(t, "patterned") > 0 {
		spec.Repeat = measure.Length(rapid.IntRange(50, 1000).Draw(t, "repeat"))*mm + measure.Length(rapid.IntRange(0, 1).Draw(t, "odd"))
		if rapid.IntRange(0, 3).Draw(t, "known") == 0 {
			spec.Roll.Start = cutting.Start{Known: true, Phase: measure.Length(rapid.Int64Range(0, int64(spec.Repeat)-1).Draw(t, "start"))}
		}
	}
	for range rapid.IntRange(1, 5).Draw(t, "kinds") {
		p := cutting.Piece{Length: measure.Length(rapid.IntRange(300, 3000).Draw(t, "length")) * mm}
		if spec.Repeat > 0 {
			p.Phase = measure.Length(rapid.Int64Range(0, int64(spec.Repeat)-1).Draw(t, "phase"))
		}
		for range rapid.IntRange(1, n/5).Draw(t, "count") {
			spec.Pieces = append(spec.Pieces, p)
		}
	}
	return spec
}

// Whatever is solved keeps its promises.
func TestCuttingSolved(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		problem, err := cutting.NewProblem(pieces(t, 30))
		if err != nil {
			t.Skip(err)
		}
		for _, v := range audit.Cutting(cutting.Solve(problem, cutting.Options{})) {
			t.Errorf("%v", v)
		}
	})
}
