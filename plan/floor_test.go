package plan

import (
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"firstdrop/internal/anyroom"
	"firstdrop/internal/roomtext"
	"firstdrop/measure"
	"firstdrop/paper"
)

// No layout of any room weighs less than the floor, wherever its drops stand, and that of
// all ways to set walls is no higher.
func TestNothingWeighsLessThanTheFloor(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		run, p := anyroom.Run(rt), *anyroom.Paper(rt)
		c := anyroom.Choice(rt, run, &p)
		plan := &Plan{Task: asking(run, p, 0), Runs: make([]RunPlan, 1), Papers: make([]PaperPlan, 1)}
		s, err := plan.newSearch(0, nil)
		if err != nil {
			rt.Skip(err)
		}
		n := candidate{choice: c, kill: placeOf(run, c.Kill)}
		if s.layOut(&n); n.layout == nil {
			rt.Skip("no layout")
		}
		total, err := s.total(&n)
		if err != nil {
			rt.Skip(err)
		}
		if floor, anyhow := s.floor(), s.floorAnyhow(); floor > total || anyhow > floor {
			rt.Errorf("a layout weighs %d, the floor is %d, that of all ways %d", total, floor, anyhow)
		}
	})
}

// By hand: 2650 mm of wall, 2400 mm high, in paper 530 mm wide ask for five drops of 2500
// mm. Of a roll of 10.05 m without a repeat four are cut, so two rolls; in repeats of 640
// mm they begin 2560 mm apart, and three are cut: 2500 + 2·2560 = 7620, a fourth would
// end at 10180.
func TestFloorByHand(t *testing.T) {
	w := DefaultTaste().Weights
	for _, tt := range []struct {
		width, repeat measure.Length
		drops, rolls  int64
	}{
		{2120, 0, 4, 1},
		{2120, 640, 4, 2},
		{2650, 0, 5, 2},
		{3710, 640, 7, 3},
	} {
		p := rows(tt.repeat * mm)
		if tt.repeat == 0 {
			p.Match.Kind = paper.Free
		}
		plan := &Plan{Task: asking(roomtext.Run(fmt.Sprintf("A %dx2400", int64(tt.width))), p, 0), Runs: make([]RunPlan, 1), Papers: make([]PaperPlan, 1)}
		s, err := plan.newSearch(0, nil)
		if err != nil {
			t.Fatal(err)
		}
		if got, want := s.floor(), tt.drops*(w.Drop+w.Piece)+tt.rolls*w.Roll; got != want {
			t.Errorf("%v mm: floor %d, want %d", int64(tt.width), got, want)
		}
	}
}
