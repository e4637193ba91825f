package plan_test

import (
	"fmt"

	"firstdrop/hanging"
	"firstdrop/paper"
	"firstdrop/plan"
	"firstdrop/room"
)

// A wall of 4.24 m takes eight drops. Four come out of a roll, so two rolls do,
// and one cannot.
func ExampleMake() {
	wall := room.Wall{Name: "A", Width: 4240 * mm, Outline: room.Rectangle(4240*mm, 2370*mm)}
	p, err := plan.Make(&plan.Task{
		Runs:   []plan.RunTask{{Run: &room.Run{Name: "wall", Walls: []room.Wall{wall}}}},
		Papers: []paper.Paper{{Name: "plain", Width: 530 * mm, RollLength: 10050 * mm, Pack: 1}},
		Rules:  hanging.DefaultRules(),
		Taste:  plan.DefaultTaste(),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	s := p.Document("").Summary.Papers[0]
	fmt.Println(s.Drops, "drops,", s.Rolls, "rolls, at least", s.LowerBound)
	// Output:
	// 8 drops, 2 rolls, at least 2
}
