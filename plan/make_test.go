package plan_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"math/rand/v2"
	"slices"
	"testing"

	"firstdrop/audit"
	"firstdrop/finding"
	"firstdrop/hanging"
	"firstdrop/internal/roomtext"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/plan"
	"firstdrop/room"
)

const mm = measure.Millimetre

// task asks for one run given in the notation of roomtext.
func task(run string, p paper.Paper) *plan.Task { return asked(roomtext.Run(run), p) }

func asked(run *room.Run, p paper.Paper) *plan.Task {
	return &plan.Task{
		Runs:   []plan.RunTask{{Run: run}},
		Papers: []paper.Paper{p},
		Rules:  hanging.DefaultRules(),
		Taste:  plan.DefaultTaste(),
	}
}

func plain() paper.Paper {
	return paper.Paper{Name: "plain", Width: 530 * mm, RollLength: 10050 * mm, Pack: 1}
}

func halfDrop() paper.Paper {
	p := plain()
	p.Name, p.Repeat = "half drop", 640*mm
	p.Match = paper.Match{Kind: paper.Offset, Num: 1, Den: 2}
	return p
}

// made plans a task and has the plan audited.
func made(t testing.TB, task *plan.Task) *plan.Plan {
	t.Helper()
	p, err := plan.Make(task)
	if err != nil {
		t.Fatal(err)
	}
	for _, v := range audit.Plan(p) {
		t.Errorf("audit: %v", v)
	}
	return p
}

func codes(p *plan.Plan) map[finding.Code]int {
	n := map[finding.Code]int{}
	for _, f := range p.Findings {
		n[f.Code]++
	}
	return n
}

const (
	bedroom = "closed: A 4200x2400! window(1500+1200 900+1200) | B 3600x2400 | C 4200x2400 door(300+900 0+2000) | D 3600x2400 |"
	breast  = "closed: A 1200x2400 | B 350x2400 > C 1500x2400! > D 350x2400 | E 1200x2400 | F 3000x2400 window(900+1200 900+1200) |" +
		" G 3900x2400? door(300+900 0+2000) | H 3000x2400 |"
)

func TestSameTaskSameBytes(t *testing.T) {
	for _, run := range []string{bedroom, breast} {
		var docs [][]byte
		for range 3 {
			data, err := json.Marshal(made(t, task(run, halfDrop())).Document("job"))
			if err != nil {
				t.Fatal(err)
			}
			docs = append(docs, data)
		}
		if !bytes.Equal(docs[0], docs[1]) || !bytes.Equal(docs[1], docs[2]) {
			t.Errorf("%s: three plans differ", run)
		}
	}
}

// Seams keep 50 mm away from outside corners and openings where that can be
// had, and no strip is narrower than the least: here it can (published advice
// of the trade: wallpaperandborder.com/engineer.htm; robuild.co.uk).
func TestSeamsKeepClear(t *testing.T) {
	t.Parallel()
	for _, run := range []string{
		"closed: A 4200x2400 window(1500+1200 900+1200) | B 3600x2400 | C 4200x2400 | D 3600x2400 |",
		"A 3000x2400 door(1010+900 0+2000)",
		"A 1200x2400 | B 350x2400 > C 1500x2400 > D 350x2400 | E 1200x2400",
	} {
		n := codes(made(t, task(run, plain())))
		for _, c := range []finding.Code{plan.SeamNearEdge, plan.SeamNearFold, plan.Sliver, plan.EndInFold} {
			if n[c] > 0 {
				t.Errorf("%s: %d findings %s", run, n[c], c)
			}
		}
	}
}

// A kill seam over a short header behind the door is better than one in a
// full-height corner (published rule of the trade: doityourself.com/stry/
// wallcoverinstalstart: choose the mismatch where a short length meets).
func TestKillSeamGoesOverTheDoor(t *testing.T) {
	p := made(t, task("closed: A 4215x2400! | B 3610x2400 | C 4215x2400? door(1500+900 0+2050) | D 3610x2400 |", halfDrop()))
	k := p.Runs[0].Layout.Choice.Kill
	if k.Kind != hanging.OnWall || k.Wall != 2 || k.X < 1500*mm || k.X > 2400*mm {
		t.Errorf("kill seam at %+v, want over the door on wall C", k)
	}
	if n := codes(p); n[plan.KillMisfit] != 1 {
		t.Errorf("findings %v, want the kill seam's misfit", n)
	}
}

func TestFixedChoicesAreKept(t *testing.T) {
	design := 123 * mm
	for _, kill := range []hanging.Kill{
		{Kind: hanging.AtCorner, Wall: 3},
		{Kind: hanging.AtCorner, Wall: 3, Lap: hanging.Right},
		{Kind: hanging.OnWall, Wall: 2, X: 717 * mm}, // over the door, where nothing else ends
	} {
		ta := task(bedroom, halfDrop())
		ta.Runs[0].Fixed = plan.Fixed{Start: &hanging.Start{Wall: 1, X: 700 * mm}, Kill: &plan.Kill{Kill: kill}, Design: &design}
		c := made(t, ta).Runs[0].Layout.Choice
		if c.Start != *ta.Runs[0].Fixed.Start || c.Kill != kill || c.Design != design {
			t.Errorf("choice %+v, fixed %+v, kill seam %+v", c, ta.Runs[0].Fixed, kill)
		}
	}
}

func TestCentres(t *testing.T) {
	motif := halfDrop()
	motif.Motif = &paper.Motif{Axis: 130 * mm, Head: 0, Tall: 400 * mm}
	for _, tt := range []struct {
		of   plan.CentreOf
		want []measure.Length // left edges of drop 0 that put it on the line at 2000
	}{
		{plan.DropCentre, []measure.Length{1735 * mm}},
		{plan.SeamCentre, []measure.Length{2000 * mm}},
		{plan.MotifAxis, []measure.Length{1870 * mm}},
		{plan.Either, []measure.Length{1735 * mm, 2000 * mm, 1870 * mm}},
	} {
		ta := task("A 4100x2400!", motif)
		ta.Runs[0].Fixed.Centre = &plan.Centre{Wall: 0, X: 2000 * mm, Of: tt.of}
		got := made(t, ta).Runs[0].Layout.Choice.Start.X
		found := false
		for _, w := range tt.want {
			found = found || got == w
		}
		if !found {
			t.Errorf("centre of %d: drop 0 at %v, want one of %v", tt.of, got, tt.want)
		}
	}
}

// No motif is cut at a level ceiling when some height suits all drops
// (malerblatt.de 2018-10: at the ceiling do not cut a prominent motif).
func TestMotifIsNotCutAtTheCeiling(t *testing.T) {
	p := halfDrop()
	p.Motif = &paper.Motif{Axis: 265 * mm, Head: 100 * mm, Tall: 250 * mm}
	pl := made(t, task(bedroom, p))
	if n := codes(pl)[plan.MotifCut]; n > 0 {
		t.Errorf("%d motifs cut", n)
	}
	l := pl.Runs[0].Layout
	for _, piece := range l.Pieces {
		// The ceiling line, read from the piece itself: 50 mm of allowance below its head.
		line := (piece.Phase + 50*mm).Mod(p.Repeat)
		if piece.Y.Hi == 2400*mm && line > 100*mm && line < 350*mm {
			t.Errorf("piece %s is cut at phase %v, within the motif", piece.Name, line)
		}
	}
	// A motif as tall as the repeat is always cut, and that is said.
	p.Motif = &paper.Motif{Axis: 265 * mm, Head: 100 * mm, Tall: 640 * mm}
	if n := codes(made(t, task(bedroom, p)))[plan.MotifCut]; n == 0 {
		t.Error("a motif without end is cut, but that is not said")
	}
}

func TestDropLongerThanRoll(t *testing.T) {
	p := plain()
	p.RollLength = 2450 * mm
	_, err := plan.Make(task("A 3000x2400", p))
	var e *plan.PieceError
	if !errors.As(err, &e) || e.Wall != "A" || e.Length != 2500*mm {
		t.Errorf("error %v, want a PieceError for wall A and 2500 mm", err)
	}
}

func TestRunsShareRolls(t *testing.T) {
	ta := task("A 2650x900", plain()) // five drops of 1.0 m
	ta.Runs = append(ta.Runs, plan.RunTask{Run: roomtext.Run("B 2650x900")})
	p := made(t, ta).Papers[0]
	if p.Drops != 10 || p.Rolls() != 1 {
		t.Errorf("%d drops from %d rolls, want 10 from 1", p.Drops, p.Rolls())
	}
}

// The bounds prune nothing that matters: no start on the whole millimetre grid
// of a small room, cut from rolls in full, weighs less than what Make finds.
func TestNoStartIsBetter(t *testing.T) {
	t.Parallel()
	if testing.Short() {
		t.Skip("lays out every start")
	}
	for _, run := range []string{"A 2300x2400 door(700+800 0+2000)", "A 1400x2400 | B 900x2400 window(300+400 900+1000)"} {
		for _, p := range []paper.Paper{plain(), halfDrop()} {
			best := made(t, task(run, p))
			for x := measure.Length(0); x < p.Width; x += mm {
				ta := task(run, p)
				ta.Runs[0].Fixed.Start = &hanging.Start{Wall: 0, X: x}
				one := made(t, ta)
				if one.Runs[0].Score < best.Runs[0].Score {
					t.Errorf("%s, %s: the start at %v weighs %d, the plan %d", run, p.Name, x, one.Runs[0].Score, best.Runs[0].Score)
				}
			}
		}
	}
}

// A longer roll never needs more of them: asserted for the same layout.
func TestLongerRollsNeverNeedMore(t *testing.T) {
	t.Parallel()
	r := rand.New(rand.NewPCG(2, 2))
	compared := 0
	for i, m := range madeUps {
		longer := measure.Length(1+r.IntN(5000)) * mm
		if slices.Contains(unsettled, i) || m().err != nil {
			continue
		}
		pl := m().plan
		ta := pl.Task.Fix(0, pl.Runs[0].Layout)
		ta.Papers = slices.Clone(ta.Papers)
		ta.Papers[0].RollLength += longer
		again := made(t, ta)
		if !slices.Equal(pl.Runs[0].Layout.Choice.NewDrop, again.Runs[0].Layout.Choice.NewDrop) {
			continue // another layout pays with longer rolls
		}
		compared++
		a, b := pl.Papers[0].Batches[0].Cutting, again.Papers[0].Batches[0].Cutting
		if a.Proven && b.Proven && len(b.Rolls) > len(a.Rolls) {
			t.Errorf("room %d: %d rolls, %v longer %d", i, len(a.Rolls), longer, len(b.Rolls))
		}
	}
	if compared < len(madeUps)*3/4 {
		t.Errorf("only %d rooms are compared", compared)
	}
}
