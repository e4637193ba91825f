package plan_test

import (
	"math/rand/v2"
	"testing"

	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/internal/roomtext"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/plan"
	"firstdrop/room"
)

// Goods whose seams show: equal panels on every wall, both edges trimmed ("1.5 in each
// seen"), never a narrow strip at an end, more drops accepted for it (WPL tag/math
// 2022-08-21, 2015/01/22; cjhayes.com, "To trim or not to trim the edges").

// grasscloth is 36 in wide, without a match.
func grasscloth() paper.Paper {
	return paper.Paper{Name: "grasscloth", Width: 36 * inch, RollLength: 24 * foot, Pack: 1}
}

// panelled asks for equal panels with so much off either edge.
func panelled(run *room.Run, trim measure.Length) *plan.Task {
	ta := asked(run, grasscloth())
	ta.Runs[0].Panels = &plan.Panels{Trim: trim}
	return ta
}

// By hand: 12 ft are 144 in; of 36 in goods 33 in are left when both edges are trimmed
// by 1.5 in, 144/33 = 4.4, so five panels of 28.8 in. Full widths would leave a strip of
// nothing: 4 × 36 = 144; at 12 ft 2 in, one of 2 in, and equal panels are 29.2 in.
func TestPracticeEqualPanels(t *testing.T) {
	for _, tt := range []struct {
		width, panel measure.Length
		count        int
	}{
		{144 * inch, 144 * inch / 5, 5},
		{146 * inch, 146 * inch / 5, 5},
		{33 * inch, 33 * inch, 1},
	} {
		run := &room.Run{Name: "run", Walls: []room.Wall{{
			Name: "A", Width: tt.width, Outline: geom.Ring{{}, {X: tt.width}, {X: tt.width, Y: 8 * foot}, {Y: 8 * foot}},
		}}}
		p := made(t, panelled(run, inch+inch/2))
		sound(t, p)
		l := p.Runs[0].Layout
		if len(l.Drops) != tt.count || l.Paper.Width != tt.panel {
			t.Errorf("%v: %d panels of %v, want %d of %v", tt.width, len(l.Drops), l.Paper.Width, tt.count, tt.panel)
		}
		if codes(p)[plan.Sliver] > 0 || codes(p)[plan.EqualPanels] != 1 {
			t.Errorf("%v: found %v", tt.width, codes(p))
		}
		if trim := p.PanelTrim(0); trim != (36*inch-tt.panel)/2 {
			t.Errorf("%v: %v off either edge", tt.width, trim)
		}
	}
}

// Seams tied to windows where more panels bring that about: four panels of 625 mm would
// put a seam 25 mm from the edge of the window; three of them, wider, do not.
func TestPanelsKeepOffWindows(t *testing.T) {
	run := roomtext.Run("A 2500x2440 window(650+640 850+1200)")
	fewest, chosen := panelled(run, 0), made(t, panelled(run, 0))
	sound(t, chosen)
	near := func(p *plan.Plan) int { return codes(p)[plan.SeamNearEdge] + codes(p)[plan.SliverBeside] }
	for n := 3; n < 9; n++ {
		full := *fewest
		full.Papers = []paper.Paper{grasscloth()}
		full.Papers[0].Width = (2500*mm + measure.Length(n) - 1) / measure.Length(n)
		full.Runs = []plan.RunTask{{Run: run}}
		full.Runs[0].Fixed.Start = &hanging.Start{}
		if p := made(t, &full); p.Runs[0].Score < chosen.Runs[0].Score {
			t.Errorf("%d panels weigh %d, less than %d of %d", n, p.Runs[0].Score, chosen.Runs[0].Score, len(chosen.Runs[0].Layout.Drops))
		}
	}
	if near(chosen) > 0 {
		t.Errorf("%d panels: found %v", len(chosen.Runs[0].Layout.Drops), codes(chosen))
	}
}

// Any wall, alone or round a chimney breast, between corners that lean: the audit
// passes, all panels are of one width, and both ends are covered.
func TestAnyPanels(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 5))
	for n := range 60 {
		run := roomtext.Run("A 900x2440")
		if n%2 == 0 {
			run = roomtext.Run("A 400x2440 > B 1500x2440 > C 400x2440")
		}
		for i := range run.Walls {
			w := &run.Walls[i]
			more := measure.Length(r.IntN(2000)) * mm
			w.Width += more
			w.Outline = geom.Ring{{}, {X: w.Width}, {X: w.Width, Y: 2440 * mm}, {Y: 2440 * mm}}
		}
		run.Ends.Left.LeanRight, run.Ends.Right.LeanLeft = measure.Length(r.IntN(17)-8)*mm, measure.Length(r.IntN(17)-8)*mm
		trim := measure.Length(r.IntN(60)) * mm
		p := made(t, panelled(run, trim))
		sound(t, p)
		l := p.Runs[0].Layout
		if l.Paper.Width > 36*inch-2*trim {
			t.Errorf("room %d: panels of %v, trimmed by less than %v", n, l.Paper.Width, trim)
		}
		for i := range l.Drops {
			sum := measure.Length(0)
			for _, part := range l.Drops[i].Parts {
				sum += part.Across.Length()
			}
			if short := l.Paper.Width - sum; short < 0 || short > measure.Length(len(l.Drops)) {
				t.Errorf("room %d: panel %d is %v wide, not %v", n, i+1, sum, l.Paper.Width)
			}
		}
	}
}
