package plan_test

import (
	"bytes"
	"encoding/json"
	"testing"

	"firstdrop/hanging"
	"firstdrop/internal/roomtext"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/plan"
)

// A session gives the plans that planning from scratch gives, to the byte: while
// the start is dragged along a wall, when an opening moves, and when the start is
// let go.
func TestSessionPlansAsFromScratch(t *testing.T) {
	t.Parallel()
	motif := halfDrop()
	motif.Motif = &paper.Motif{Axis: 265 * mm, Head: 40 * mm, Tall: 400 * mm}
	moved := "closed: A 4200x2400! window(1520+1200 900+1200) | B 3600x2400 | C 4200x2400 door(300+900 0+2000) | D 3600x2400 |"
	for _, label := range []paper.Paper{plain(), halfDrop(), motif} {
		s := plan.NewSession()
		runs := map[string]*plan.Task{bedroom: task(bedroom, label), breast: task(breast, label), moved: task(moved, label)}
		for _, step := range []struct {
			text string
			wall int
			x    int // −1000: free
		}{
			{bedroom, 0, 310},
			{bedroom, 0, 311},
			{bedroom, 0, 330},
			{bedroom, 1, -40},
			{moved, 1, -40},
			{moved, 0, 310},
			{bedroom, 2, 1000},
			{bedroom, 0, -1000},
			{bedroom, 0, 310},
			{breast, 1, -100},
			{breast, 2, 485},
			{breast, 2, 486},
		} {
			ta := *runs[step.text]
			ta.Runs = append([]plan.RunTask(nil), ta.Runs...)
			if step.x > -1000 {
				ta.Runs[0].Fixed.Start = &hanging.Start{Wall: step.wall, X: measure.Length(step.x) * mm}
			}
			got, err := s.Plan(&ta)
			if err != nil {
				t.Fatal(err)
			}
			if a, b := document(t, got), document(t, made(t, &ta)); !bytes.Equal(a, b) {
				t.Errorf("%s: start at %d on wall %d: the session plans otherwise than from scratch", label.Name, step.x, step.wall)
			}
		}
	}
}

// The same in a room whose walls are set out of plumb, and beside a wall in equal panels,
// which stays as it is.
func TestSessionPlansCrookedAndPanelledRooms(t *testing.T) {
	t.Parallel()
	crooked, beside := asked(tilted(), lined(paper.LinesLevel)), task(bedroom, grasscloth())
	beside.Runs = append(beside.Runs, panelled(roomtext.Run("E 3100x2400"), 10*mm).Runs...)
	for _, base := range []*plan.Task{crooked, beside} {
		s := plan.NewSession()
		for _, x := range []int{-1000, 300, 301, 330, -1000, 301} {
			ta := *base
			ta.Runs = append([]plan.RunTask(nil), ta.Runs...)
			if x > -1000 {
				ta.Runs[0].Fixed.Start = &hanging.Start{X: measure.Length(x) * mm}
			}
			got, err := s.Plan(&ta)
			if err != nil {
				t.Fatal(err)
			}
			if a, b := document(t, got), document(t, made(t, &ta)); !bytes.Equal(a, b) {
				t.Errorf("start at %d: the session plans otherwise than from scratch", x)
			}
		}
	}
}

func document(t *testing.T, p *plan.Plan) []byte {
	t.Helper()
	data, err := json.Marshal(p.Document("job"))
	if err != nil {
		t.Fatal(err)
	}
	return data
}
