package sheet

import (
	"testing"

	"firstdrop/hanging"
	"firstdrop/internal/roomtext"
	"firstdrop/paper"
	"firstdrop/plan"
)

// What is read out to those who cannot see the drawing, in full.
func TestDescribe(t *testing.T) {
	l := laid(t, "A 1400x2400 door(700+600 0+2000) | B 900x2400")
	scene := Wall(&plan.Plan{Runs: []plan.RunPlan{{Layout: l}}}, 0, 0, Options{})
	const want = "Wall A of run, 1400 mm wide, at 1:20." +
		" On the left: end of the run, papering stops here. Height there 2400 mm." +
		" On the right: to wall B, inside corner A|B. Height there 2400 mm." +
		" door from 700 mm to 1300 mm, 2000 mm high." +
		" From left to right: drop 1, seam at 530 mm, drop 2, seam at 1060 mm, drop 3." +
		" Start here. Plumb line 530 mm from the left end, for the right edge of drop 1."
	if scene.Desc != want {
		t.Errorf("\n got %s\nwant %s", scene.Desc, want)
	}
	if scene.Title != "Wall A" {
		t.Errorf("title %q", scene.Title)
	}
}

func TestUnnamedWallsAreCounted(t *testing.T) {
	l := laid(t, "A 1400x2400 | B 900x2400")
	l.Run.Walls[1].Name = ""
	scene := Wall(&plan.Plan{Runs: []plan.RunPlan{{Layout: l}}}, 0, 1, Options{})
	if scene.Title != "Wall 2" {
		t.Errorf("title %q, want Wall 2", scene.Title)
	}
	if _, name, beyond, ok := newElevation(&plan.Plan{Runs: []plan.RunPlan{{Layout: l}}}, 0, 0, Options{}).corner(hanging.Right); !ok || name != "A|wall 2" || beyond != "wall 2" {
		t.Errorf("the corner is %q, beyond it %q", name, beyond)
	}
}

// laid lays out a run from its left end.
func laid(t *testing.T, run string) *hanging.Layout {
	t.Helper()
	p := &paper.Paper{Name: "plain", Width: 530 * mm, RollLength: 10050 * mm, Pack: 1}
	h, err := hanging.New(roomtext.Run(run), p, hanging.DefaultRules())
	if err != nil {
		t.Fatal(err)
	}
	l, err := h.Layout(hanging.Choice{})
	if err != nil {
		t.Fatal(err)
	}
	return l
}
