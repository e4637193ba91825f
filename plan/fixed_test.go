package plan_test

import (
	"fmt"
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/internal/anyroom"
	"firstdrop/measure"
	"firstdrop/plan"
)

// New drops begin where they are fixed and nowhere where they are not to; the
// audit looks at the same.
func TestNewDropsAsFixed(t *testing.T) {
	ta := task(bedroom, halfDrop())
	ta.Runs[0].Fixed = plan.Fixed{NewDrop: []int{0, 2}, Kill: &plan.Kill{Kill: hanging.Kill{Kind: hanging.AtCorner, Wall: 3}, Free: true}}
	c := made(t, ta).Runs[0].Layout.Choice
	if !slices.Contains(c.NewDrop, 0) || !slices.Contains(c.NewDrop, 2) {
		t.Errorf("new drops in %v, want them in 0 and 2", c.NewDrop)
	}
	ta.Runs[0].Fixed = plan.Fixed{Carry: []int{0, 1, 2, 3}}
	if c := made(t, ta).Runs[0].Layout.Choice; len(c.NewDrop) > 0 {
		t.Errorf("new drops in %v, want none", c.NewDrop)
	}
	ta.Runs[0].Fixed = plan.Fixed{NewDrop: []int{0, 1, 2, 3, 0, 1, 2}}
	if _, err := plan.Make(ta); err == nil {
		t.Error("new drops in seven corners are accepted")
	}
}

// Seams keep off the places named, the kill seam too; where they cannot, that is
// said.
func TestSeamsKeepOffWhatIsNamed(t *testing.T) {
	free := made(t, task(bedroom, halfDrop()))
	var off []plan.WallStretch
	for _, s := range free.Runs[0].Layout.Seams {
		if !s.InCorner && s.Wall < 2 {
			off = append(off, plan.WallStretch{Wall: s.Wall, X: geom.Interval{Lo: s.X - 5*mm, Hi: s.X + 5*mm}})
		}
	}
	ta := task(bedroom, halfDrop())
	ta.Runs[0].Fixed.KeepOff = off
	p := made(t, ta)
	for _, s := range p.Runs[0].Layout.Seams {
		for _, k := range off {
			if !s.InCorner && s.Wall == k.Wall && k.X.Lo < s.X && s.X < k.X.Hi {
				t.Errorf("a seam at %v on wall %d", s.X, s.Wall)
			}
		}
	}
	if p.Runs[0].Score < free.Runs[0].Score {
		t.Errorf("the plan that keeps off weighs %d, the free one %d", p.Runs[0].Score, free.Runs[0].Score)
	}
	ta.Runs[0].Fixed.KeepOff = []plan.WallStretch{{Wall: 1, X: geom.Interval{Lo: 100 * mm, Hi: 3500 * mm}}}
	walls := ta.Runs[0].Run.Walls
	if _, err := plan.Make(ta); err == nil || !strings.Contains(err.Error(), walls[0].Name+", "+walls[1].Name) {
		t.Errorf("no seam for 3.4 m: %v", err)
	}
}

// What hangs already stays: its seam is where it is, and the room is closed
// elsewhere.
func TestHungWallsStay(t *testing.T) {
	ta := task(bedroom, halfDrop())
	seam := hanging.Start{Wall: 2, X: 610 * mm}
	ta.Runs[0].Fixed = plan.Fixed{Start: &seam, Hung: []int{2, 3}}
	l := made(t, ta).Runs[0].Layout
	if k := l.Choice.Kill; k.Kind == hanging.OnWall && k.Wall >= 2 || k.Kind == hanging.AtCorner && k.Wall == 2 {
		t.Errorf("the kill seam %+v cuts what hangs", k)
	}
	found := false
	for _, s := range l.Seams {
		found = found || s.Wall == 2 && s.X == measure.Length(610*mm)
	}
	if !found {
		t.Error("no seam where one hangs")
	}
	ta.Runs[0].Fixed.Start = nil
	if _, err := plan.Make(ta); err == nil {
		t.Error("hung walls without a seam are accepted")
	}
}

// A layout that is fixed as it was found is found again, with rolls of two batches too:
// what is left to the search is settled as it was.
func TestFixedLayoutsAreFoundAgain(t *testing.T) {
	t.Parallel()
	again := func(what string, ta *plan.Task) bool {
		p, err := plan.Make(ta)
		if err != nil {
			return false
		}
		want := p.Runs[0].Layout.Choice
		fixed := ta.Fix(0, p.Runs[0].Layout)
		fixed.Runs[0].Fixed.NewDrop = want.NewDrop
		if got := made(t, fixed).Runs[0].Layout.Choice; !reflect.DeepEqual(got, want) {
			t.Errorf("%s: fixed as %+v, found %+v", what, want, got)
		}
		return true
	}
	found := 0
	for seed := range 60 {
		r := rand.New(rand.NewPCG(4, uint64(seed)))
		text, _ := anyWalls(r)
		if again(text, task(text, begun(motif(), 1+r.IntN(4)))) {
			found++
		}
	}
	run := rapid.Custom(anyroom.SmallRun)
	label := rapid.Custom(anyroom.Paper)
	for seed := range 20 {
		if again(fmt.Sprint("room ", seed), asked(run.Example(seed), *label.Example(seed))) {
			found++
		}
	}
	if found < 70 {
		t.Errorf("only %d rooms could be planned", found)
	}
}
