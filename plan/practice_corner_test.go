package plan_test

import (
	"testing"

	"firstdrop/hanging"
	"firstdrop/internal/roomtext"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/plan"
)

// Corners, as practising paperhangers and the trade's texts tell it; the sources are
// those of practice_test.go.

// partsAt returns the parts of the drop that meets the corner right of wall 0.
func partsAt(t *testing.T, p *plan.Plan) []hanging.Part {
	t.Helper()
	for _, d := range p.Runs[0].Layout.Drops {
		for k := 1; k < len(d.Parts); k++ {
			if d.Parts[k-1].Wall == 0 && d.Parts[k].Wall == 1 {
				return d.Parts[k-1:]
			}
		}
	}
	t.Fatal("no drop meets the corner")
	return nil
}

// started is a task whose first drop begins in the left corner.
func started(run string, p paper.Paper) *plan.Task {
	ta := task(run, p)
	ta.Runs[0].Fixed.Start = &hanging.Start{}
	return ta
}

// R9 (WPL tag/shifts, 2022-02-05): paper of 21 in, 19 in left to the corner. The
// whole sheet would wrap by 2 in; 1/16 to 1/8 in is wanted. The sheet is cut apart: it
// turns the corner by 1/8 in, the other 1 7/8 in are set to a line of their own, and
// the design loses no more than the wrap.
func TestPracticeNineteenInchesToTheCorner(t *testing.T) {
	p := usPattern()
	p.Width = 21 * inch
	ta := started("A 2083x2440 | B 2500x2440", p) // 82 in: three sheets and 19 in
	ta.Runs[0].Run.Walls[0] = flat(82*inch, 96*inch).Walls[0]
	ta.Runs[0].Run.Walls[0].Name = "A"
	ta.Rules.Wrap = inch / 8
	pl := made(t, ta)
	sound(t, pl)
	parts := partsAt(t, pl)
	if got := parts[0].X.Hi - 82*inch; got != inch/8 || parts[1].Joined {
		t.Errorf("the sheet turns the corner by %v, want 1/8 in", got)
	}
	if got := parts[1].X.Length(); got != 2*inch-inch/8 {
		t.Errorf("%v are carried on, want 1 7/8 in", got)
	}
	for _, s := range pl.Runs[0].Layout.Seams {
		if s.InCorner && (s.Across.Lo != inch/8 || s.Across.Hi != inch/8) {
			t.Errorf("the design loses %v in the corner", s.Across)
		}
	}
}

// Measure the gap at top, middle and bottom and take the largest: in a corner that
// leans away by 3/4 in the sheet reaches its farthest point and the wrap beyond.
func TestPracticeTakesTheLargestGap(t *testing.T) {
	for _, lean := range []measure.Length{3 * inch / 4, -3 * inch / 4} {
		ta := started("A 2083x2440 | B 2500x2440", usPattern())
		ta.Runs[0].Run.Corners[0].LeanLeft = lean
		pl := made(t, ta)
		sound(t, pl)
		if got, want := partsAt(t, pl)[0].X.Hi, 2083*mm+max(0, lean)+ta.Rules.Wrap; got != want {
			t.Errorf("leaning by %v: the sheet ends at %v, want %v", lean, got, want)
		}
	}
}

// A gap within 6 in of a full sheet takes the full sheet (one US sheet of advice):
// what it saves is the second sheet. So it is a setting, the wrap limit; and without
// it the rest of the same sheet is carried on, so that no sheet more is needed either.
func TestPracticeFullSheetWithinSixInches(t *testing.T) {
	for _, tt := range []struct {
		gap   measure.Length
		whole bool
	}{
		{14*inch + inch/2, true}, // exactly 6 in of 20.5 go round
		{14 * inch, false},
	} {
		drops := [2]int{}
		for k, limit := range []measure.Length{6 * inch, inch} {
			ta := started("A 2000x2440 | B 2500x2440", usPattern())
			ta.Runs[0].Run.Walls[0] = flat(2*(20*inch+inch/2)+tt.gap, 96*inch).Walls[0]
			ta.Runs[0].Run.Walls[0].Name = "A"
			ta.Rules.WrapLimit = limit
			pl := made(t, ta)
			sound(t, pl)
			drops[k] = pl.Papers[0].Drops
			if joined := partsAt(t, pl)[1].Joined; joined != (tt.whole && k == 0) {
				t.Errorf("gap of %v, limit %v: the sheet turns whole: %v", tt.gap, limit, joined)
			}
		}
		if drops[1] > drops[0] {
			t.Errorf("gap of %v: carried on it takes %d drops, whole %d", tt.gap, drops[1], drops[0])
		}
	}
}

// Outside corners: no seam on the edge; wrap only if plumb, else cut just past it and
// restart plumb.
func TestPracticeOutsideCornerOutOfPlumb(t *testing.T) {
	for _, tt := range []struct {
		run   string
		whole bool
	}{
		{"A 1200x2440 > B 2500x2440", true},
		{"A 1200x2440 >-10,10 B 2500x2440", false},
	} {
		ta := started(tt.run, usPattern())
		pl := made(t, ta)
		sound(t, pl)
		parts := partsAt(t, pl)
		if !parts[1].Joined {
			t.Errorf("%s: no paper goes round the edge", tt.run)
		}
		if restarts := len(parts) > 2 && !parts[2].Joined; restarts == tt.whole {
			t.Errorf("%s: restarted plumb beyond the edge: %v", tt.run, restarts)
		}
	}
}

// Visible-seam goods (grasscloth): seams are a design of their own; balanced strips
// at both ends of the wall that is looked at, none of them a sliver. Hung in
// full widths, the ends differ by up to an eighth of a width where a seam would else
// stand in the middle of the wall; published hangers also trim all panels to one width:
// see TestPracticeEqualPanels.
func TestPracticeGrassclothEnds(t *testing.T) {
	p := paper.Paper{Name: "grasscloth", Width: 36 * inch, RollLength: 24 * foot, Pack: 1}
	for width := 90 * inch; width <= 200*inch; width += 11 * inch {
		run := flat(width, 96*inch)
		run.Walls[0].Sight = roomtext.Run("A 1000x1000!").Walls[0].Sight
		pl := made(t, asked(run, p))
		drops := pl.Runs[0].Layout.Drops
		first, last := drops[0].Parts[0].X, drops[len(drops)-1].Parts[0].X
		ends := [2]measure.Length{first.Hi, width - last.Lo}
		if d := (ends[0] - ends[1]).Abs(); d > p.Width/8 || min(ends[0], ends[1]) < plan.DefaultTaste().MinSliver {
			t.Errorf("a wall of %v ends in strips of %v and %v", width, ends[0], ends[1])
		}
	}
}
