package audit_test

import (
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"firstdrop/audit"
	"firstdrop/cutting"
	"firstdrop/hanging"
	"firstdrop/internal/anyroom"
	"firstdrop/internal/roomtext"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/plan"
)

// openedTask draws a small room, of level walls so that planning is quick, to
// be hung from rolls that have come.
func openedTask(t *rapid.T) *plan.Task {
	p := anyroom.Opened(t)
	p.Width, p.Tolerance = 530*mm, paper.Tolerance{Length: 15, Width: 15}
	task := &plan.Task{Papers: []paper.Paper{*p}, Rules: hanging.DefaultRules(), Taste: plan.DefaultTaste(), Step: 200 * mm}
	room := ""
	for i := range rapid.IntRange(2, 4).Draw(t, "walls") {
		if i > 0 {
			room += rapid.SampledFrom([]string{" | ", " | ", " > "}).Draw(t, "corner")
		}
		width := rapid.IntRange(4, 24).Draw(t, "width") * 100
		room += fmt.Sprintf("%c %dx2400", 'A'+i, width)
		if width > 900 && rapid.Bool().Draw(t, "window") {
			room += " window(200+600 700+1300)"
		}
	}
	task.Papers[0].InOrder = rapid.IntRange(0, 3).Draw(t, "in order") == 0
	task.Runs = []plan.RunTask{{Run: roomtext.Run(room)}}
	c := &task.Cut
	c.Lead = measure.Length(rapid.IntRange(0, 2).Draw(t, "lead")) * 50 * mm
	c.Loss = measure.Length(rapid.IntRange(0, 1).Draw(t, "loss")) * 3 * mm
	c.Blade = measure.Length(rapid.IntRange(0, 2).Draw(t, "blade")) * 5 * mm
	c.Alone = rapid.IntRange(0, 3).Draw(t, "alone") == 0
	c.First = rapid.SampledFrom([]cutting.Goal{cutting.FewestRolls, cutting.FewestRolls, cutting.FewestChanges}).Draw(t, "first")
	if rapid.Bool().Draw(t, "goals") {
		c.Then = []cutting.Goal{cutting.LongestLeftover, cutting.FewestChanges}
	}
	return task
}

// Plans of made-up rooms from rolls in hand, of one batch or two, with
// left-overs, flaws, further sizes and packs keep all promises.
func TestPlansOfAnyRolls(t *testing.T) {
	tasks := rapid.Custom(openedTask)
	seen := map[string]int{}
	for seed := range 200 {
		task := tasks.Example(seed)
		p, err := plan.Make(task)
		if err != nil {
			seen["refused"]++
			continue
		}
		for _, v := range audit.Plan(p) {
			t.Errorf("task %d: %v", seed, v)
		}
		tally(seen, p)
	}
	for _, what := range []string{"in hand", "two batches", "missing", "bought", "told of a change"} {
		if seen[what] < 5 {
			t.Errorf("only %d plans with %s", seen[what], what)
		}
	}
	t.Log(seen)
}

// tally counts what a plan shows.
func tally(seen map[string]int, p *plan.Plan) {
	pp := &p.Papers[0]
	for i := range pp.Batches {
		b := &pp.Batches[i]
		for r := range b.Cutting.Rolls {
			if b.Kinds[b.Cutting.Rolls[r].Stock].Roll >= 0 {
				seen["in hand"]++
				break
			}
		}
		if b.Apart != nil {
			seen["strips"]++
		}
		if len(b.Cutting.Missing) > 0 {
			seen["missing"]++
		}
	}
	if len(pp.Batches) > 1 {
		seen["two batches"]++
	}
	if pp.Buy() > 0 {
		seen["bought"]++
	}
	for _, f := range p.Findings {
		if f.Code == plan.BatchChange {
			seen["told of a change"]++
		}
	}
}
