package plan_test

import (
	"math/rand/v2"
	"testing"

	"firstdrop/hanging"
	"firstdrop/internal/anyroom"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/plan"
)

// What a plan says its layout weighs it weighs on the scale too, and no other choice less.
func TestScaleAgreesWithPlans(t *testing.T) {
	t.Parallel()
	weighed := 0
	for seed := range 20 {
		r := rand.New(rand.NewPCG(uint64(seed), 17))
		task := &plan.Task{
			Runs: []plan.RunTask{{Run: anyroom.UsualRoom(r)}}, Papers: []paper.Paper{anyroom.UsualPaper(r)},
			Rules: hanging.DefaultRules(), Taste: plan.DefaultTaste(), Step: measure.Millimetre,
		}
		p, err := plan.Make(task)
		if err != nil {
			t.Fatalf("room %d: %v", seed, err)
		}
		scale, err := p.Scale(0)
		if err != nil {
			t.Fatalf("room %d: %v", seed, err)
		}
		run := &p.Runs[0]
		if got, err := scale.Weigh(run.Layout.Choice); err != nil || got != run.Score {
			t.Errorf("room %d: %+v weighs %d (%v) on the scale, and %d in the plan", seed, run.Layout.Choice, got, err, run.Score)
		}
		for wall := range task.Runs[0].Run.Walls {
			c := hanging.Choice{Start: hanging.Start{Wall: wall, X: measure.Length(r.IntN(400)) * measure.Millimetre}, Kill: run.Layout.Choice.Kill}
			if got, err := scale.Weigh(c); err == nil {
				if weighed++; got < run.Score {
					t.Errorf("room %d: %+v weighs %d, less than the %d of the plan", seed, c, got, run.Score)
				}
			}
		}
	}
	if weighed < 40 {
		t.Errorf("only %d other choices were weighed", weighed)
	}
}

// Of what is no run, and of a choice that gives no layout, the scale says so.
func TestScaleRefuses(t *testing.T) {
	t.Parallel()
	r := rand.New(rand.NewPCG(1, 17))
	task := &plan.Task{
		Runs: []plan.RunTask{{Run: anyroom.UsualRoom(r)}}, Papers: []paper.Paper{anyroom.UsualPaper(r)},
		Rules: hanging.DefaultRules(), Taste: plan.DefaultTaste(), Step: measure.Millimetre,
	}
	p, err := plan.Make(task)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := p.Scale(1); err == nil {
		t.Error("a scale for a run that is none")
	}
	scale, err := p.Scale(0)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := scale.Weigh(hanging.Choice{Start: hanging.Start{Wall: 9}}); err == nil {
		t.Error("a layout that begins on a wall that is none")
	}
}
