package audit_test

import (
	"testing"

	"pgregory.net/rapid"

	"firstdrop/audit"
	"firstdrop/cutting"
	"firstdrop/measure"
)

// stock draws a question with several kinds of roll: in hand and to be bought,
// opened and not, with flaws, in parts, with prices or none.
func stock(t *rapid.T) cutting.Spec {
	spec := pieces(t, 15)
	spec.Lead = measure.Length(rapid.IntRange(0, 1).Draw(t, "lead")*rapid.IntRange(0, 200).Draw(t, "lead by")) * mm
	spec.Loss = measure.Length(rapid.IntRange(0, 1).Draw(t, "loss")*rapid.IntRange(0, 5).Draw(t, "loss by")) * mm
	spec.InOrder = rapid.IntRange(0, 2).Draw(t, "in order") == 0
	priced := rapid.Bool().Draw(t, "priced")
	for range rapid.IntRange(1, 4).Draw(t, "kinds of roll") {
		spec.Stock = append(spec.Stock, oneStock(t, spec.Repeat, priced))
	}
	return spec
}

func oneStock(t *rapid.T, repeat measure.Length, priced bool) cutting.Stock {
	length := func(lo, hi int, name string) measure.Length {
		return measure.Length(rapid.IntRange(lo, hi).Draw(t, name)) * mm
	}
	start := func() cutting.Start {
		if repeat == 0 {
			return cutting.AnyStart
		}
		return cutting.StartAt(measure.Length(rapid.Int64Range(0, int64(repeat)-1).Draw(t, "phase")))
	}
	s := cutting.Stock{Roll: cutting.Roll{Length: length(2000, 15000, "length")}}
	switch rapid.IntRange(0, 3).Draw(t, "shape") {
	case 0: // not opened
	case 1:
		s.Start = start()
	case 2:
		s.Start = start()
		from := length(0, 8000, "flaw")
		s.Flaws = []cutting.Flaw{{From: from, To: from + length(1, 2000, "to")}, {From: from + 100*mm, To: from + 3000*mm}}
	case 3:
		s.Roll = cutting.Roll{}
		for range rapid.IntRange(2, 3).Draw(t, "parts") {
			s.Parts = append(s.Parts, cutting.Roll{Length: length(500, 6000, "part"), Start: start()})
		}
	}
	if s.InHand = rapid.Bool().Draw(t, "in hand"); s.InHand || rapid.Bool().Draw(t, "counted") {
		s.Count = rapid.IntRange(1, 3).Draw(t, "count")
	}
	if priced && !s.InHand {
		s.Price = int64(rapid.IntRange(1, 50).Draw(t, "price"))
	}
	return s
}

// Whatever is solved from any stock keeps its promises.
func TestStockSolved(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		problem, err := cutting.NewProblem(stock(t))
		if err != nil {
			t.Skip(err)
		}
		o := cutting.Options{Steps: 20000, First: rapid.SampledFrom([]cutting.Goal{cutting.FewestRolls, cutting.FewestChanges}).Draw(t, "first")}
		if rapid.Bool().Draw(t, "goals") {
			o.Then = []cutting.Goal{cutting.LongestLeftover, cutting.FewestChanges}
		}
		for _, v := range audit.Cutting(cutting.Solve(problem, o)) {
			t.Errorf("%v", v)
		}
	})
}
