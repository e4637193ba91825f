package audit_test

import (
	"testing"

	"firstdrop/audit"
	"firstdrop/hanging"
	"firstdrop/internal/roomtext"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/plan"
	"firstdrop/room"
)

// made plans runs in one paper, the first with what is fixed, and fails unless every promise is kept.
func made(t *testing.T, p paper.Paper, fixed plan.Fixed, runs ...string) *plan.Plan {
	t.Helper()
	task := &plan.Task{Papers: []paper.Paper{p}, Rules: hanging.DefaultRules(), Taste: plan.DefaultTaste(), Step: 20 * mm}
	for _, r := range runs {
		task.Runs = append(task.Runs, plan.RunTask{Run: roomtext.Run(r)})
	}
	task.Runs[0].Fixed = fixed
	made, err := plan.Make(task)
	if err != nil {
		t.Fatal(err)
	}
	for _, v := range audit.Plan(made) {
		t.Errorf("%s: %v", runs[0], v)
	}
	return made
}

// Plans as they are made keep all promises: of crooked rooms, several runs in
// one paper, everything fixed, every match.
func TestPlansAsMade(t *testing.T) {
	third := with(halfDrop, func(p *paper.Paper) { p.Match.Den = 3; p.Repeat = 530 * mm })
	stated := with(halfDrop, func(p *paper.Paper) { p.Match = paper.Match{Kind: paper.Offset, Length: 240 * mm, Reversing: true} })
	design := 55 * mm
	made(t, plain, plan.Fixed{}, "closed: A 3600x2400 | B 3000x2400 | C 3600x2400 door(2500+800 0+2000) | D 3000x2400 window(900+1200 900+1200 150) |")
	made(t, halfDrop, plan.Fixed{Design: &design}, "A 1200x2400 |-3,8 B 350x2400 > C 1500x2400 > D 350x2400 |2,2 E 1200x2400/1900")
	made(t, third, plan.Fixed{Start: &hanging.Start{Wall: 1, X: 100 * mm}}, "A 1500x2400 | B 2300x2400 window(700+900 900+1200)", "A 900x2200")
	made(t, stated, plan.Fixed{Centre: &plan.Centre{X: 1100 * mm}}, "A 2200x2600 |0,3 B 2000x2600 door(600+900 0+2000)")
}

// An attic wall: a gable with a window, and a knee wall that leans.
func TestPlanOfGable(t *testing.T) {
	task := &plan.Task{Papers: []paper.Paper{straight}, Rules: hanging.DefaultRules(), Taste: plan.DefaultTaste(), Step: 20 * mm}
	run := roomtext.Run("A 4000x3000 window(1500+1000 1000+1200 100)")
	run.Walls[0].Outline = run.Walls[0].Outline[:0]
	for _, p := range [][2]measure.Length{{0, 0}, {4000, 0}, {4000, 1100}, {2000, 3050}, {0, 1100}} {
		run.Walls[0].Outline = append(run.Walls[0].Outline, point(p[0], p[1]))
	}
	run.Ends.Left = room.Corner{LeanRight: 7 * mm}
	task.Runs = []plan.RunTask{{Run: run}}
	p, err := plan.Make(task)
	if err != nil {
		t.Fatal(err)
	}
	for _, v := range audit.Plan(p) {
		t.Error(v)
	}
}
