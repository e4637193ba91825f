package cutting

import (
	"testing"

	"firstdrop/measure"
)

// Lengths without a common measure: positions are too many and are rounded to
// a grid. Plans stay true, the bound stays true; proofs may be missing.
func TestLengthsWithoutCommonMeasure(t *testing.T) {
	r := source(7)
	for _, repeat := range []measure.Length{0, 1013} {
		for _, start := range []Start{StartAt(repeat / 2), AnyStart} {
			s := Spec{Repeat: repeat, Roll: Roll{10_050*mm + 7, start}}
			for range 60 {
				s.Pieces = append(s.Pieces, Piece{r.mm(150, 1200) + measure.Length(r.in(0, 999_999)), measure.Length(r.in(0, 1012))})
			}
			if repeat == 0 {
				for i := range s.Pieces {
					s.Pieces[i].Phase = 0
				}
			}
			p := newProblem(t, s)
			if !p.nets[0].coarse {
				t.Errorf("repeat %d: not so many positions after all: %d", repeat, p.nets[0].plan.nodes())
			}
			sol := solve(t, s)
			total := measure.Length(0)
			for _, piece := range s.Pieces {
				total += piece.Length
			}
			least := int((total + s.Roll.Length - 1) / s.Roll.Length)
			if sol.LowerBound > len(sol.Rolls) || len(sol.Rolls) > least+1 {
				t.Errorf("repeat %d: %d rolls, bound %d, by length %d", repeat, len(sol.Rolls), sol.LowerBound, least)
			}
		}
	}
}

// Many different short pieces on one roll: sets too large to be sorted keep
// the order of their path.
func TestManyKindsOnOneRoll(t *testing.T) {
	for _, repeat := range []measure.Length{0, 64 * mm} {
		for _, start := range []Start{StartAt(0), AnyStart} {
			s := Spec{Repeat: repeat, Roll: Roll{10_050 * mm, start}}
			for i := range 48 {
				s.Pieces = append(s.Pieces, Piece{measure.Length(200+7*i) * mm, measure.Length(5*i) * mm % max(repeat, 1)})
			}
			sol := solve(t, s)
			if len(sol.Rolls) > sol.LowerBound+1 {
				t.Errorf("repeat %d, %+v: %d rolls, bound %d", repeat/mm, start, len(sol.Rolls), sol.LowerBound)
			}
			t.Logf("repeat %d, known %v: %d rolls, bound %d, %d steps", repeat/mm, start.Known, len(sol.Rolls), sol.LowerBound, sol.Steps)
		}
	}
}

// Imperial sizes have a unit of 1/16 in at best; phases of a third of a repeat
// not even that.
func TestImperial(t *testing.T) {
	repeat := 25 * inch
	s := Spec{Repeat: repeat, Roll: Roll{33 * foot, AnyStart}}
	for i := range 30 {
		s.Pieces = append(s.Pieces, Piece{8*foot + 4*inch + 3*measure.Sixteenth, (7*inch + repeat.Scaled(int64(i%3), 3)).Mod(repeat)})
	}
	s.Pieces = append(s.Pieces, Piece{18*inch + measure.Sixteenth, inch}, Piece{40 * inch, 2 * inch})
	if sol := solve(t, s); !sol.Proven {
		t.Errorf("%d rolls, bound %d", len(sol.Rolls), sol.LowerBound)
	}
}

func TestStepsLimit(t *testing.T) {
	for seed := range 200 {
		p := newProblem(t, anyStart(randomRoom(seed)))
		s := Solve(p, Options{Steps: 1})
		for _, err := range s.Check() {
			t.Error(err)
		}
		if full := Solve(p, Options{}); s.LowerBound > full.LowerBound || len(s.Rolls) < len(full.Rolls) {
			t.Errorf("room %d: one step gives %d..%d, the full search %d", seed, s.LowerBound, len(s.Rolls), len(full.Rolls))
		}
	}
}

// A caller follows the search and ends it.
func TestProgress(t *testing.T) {
	var hard Spec
	for _, j := range tenJobs(t) {
		hard = j.spec // the last: i10
	}
	p := newProblem(t, anyStart(hard))
	var seen []Progress
	follow := func(pr Progress) bool {
		seen = append(seen, pr)
		return true
	}
	goals := []Goal{FewestChanges}
	full := Solve(p, Options{Then: goals, Progress: follow})
	if len(seen) == 0 || !full.Proven {
		t.Fatalf("%d reports, proven %v", len(seen), full.Proven)
	}
	for i, pr := range seen {
		if pr.LowerBound > pr.Rolls || pr.Rolls < int64(full.LowerBound) || i > 0 && pr.Steps < seen[i-1].Steps+ReportSteps {
			t.Errorf("report %d: %+v", i, pr)
		}
	}
	if silent := Solve(p, Options{Then: goals}); silent.Steps != full.Steps || len(silent.Rolls) != len(full.Rolls) {
		t.Error("looking on changes the answer")
	}
	stopped := Solve(p, Options{Then: goals, Progress: func(Progress) bool { return false }})
	for _, err := range stopped.Check() {
		t.Error(err)
	}
	if stopped.Steps > 2*ReportSteps || stopped.Steps >= full.Steps {
		t.Errorf("ended after %d steps of %d", stopped.Steps, full.Steps)
	}
}
