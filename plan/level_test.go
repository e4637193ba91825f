package plan_test

import (
	"math/rand/v2"
	"testing"

	"firstdrop/audit"
	"firstdrop/hanging"
	"firstdrop/internal/roomtext"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/plan"
)

// Isolated motifs that cross no seam: each strip is levelled anew ("WPL", a paperhanger's
// diary, wallpaperlady.wordpress.com, tags off-track, house, wonky).

// By hand, in the tilted room: its ceiling rises by 12 mm over the 4 m of A, from 2400 mm
// to 2412 mm, and stands at 2406 mm in the middle. A drop whose middle is x from the left
// end of A hangs 12·x/4000 − 6 mm higher, to the millimetre; on B, under 2412 mm, 6 mm.
func TestPracticeIsolatedMotifsAreLevelledAnew(t *testing.T) {
	p := made(t, asked(tilted(), lined(paper.LinesIsolated)))
	sound(t, p)
	l := p.Runs[0].Layout
	if l.Turns != nil || codes(p)[plan.Drift]+codes(p)[plan.OffPlumb] > 0 || codes(p)[plan.Relevel] != 4 {
		t.Errorf("turned %v, found %v", l.Turns, codes(p))
	}
	checked := 0
	for i := range l.Drops {
		if len(l.Drops[i].Parts) > 1 || l.Drops[i].Number == 0 {
			continue
		}
		part := l.Drops[i].Parts[0]
		want := 6 * mm
		switch part.Wall {
		case 0:
			want = (12*mm).Scaled(int64(part.X.Lo+part.X.Length()/2), int64(4000*mm)) - 6*mm
		case 2:
			want = 6*mm - (12*mm).Scaled(int64(part.X.Lo+part.X.Length()/2), int64(4000*mm))
		case 3:
			want = -6 * mm
		}
		if (l.Lifts[i]-want).Abs() > mm/2 || l.Lifts[i]%mm != 0 {
			t.Errorf("drop %d on wall %d is hung %v higher, want %v", i, part.Wall, l.Lifts[i], want)
		}
		checked++
	}
	if checked < 12 {
		t.Errorf("only %d drops looked at", checked)
	}
	// The design falls where the drop hangs.
	f := l.Fall(0, 0)
	if want := l.Choice.Design + l.Paper.Shift(l.Drops[0].Index) + l.Lifts[0]; f.Begins != want {
		t.Errorf("the design of drop 0 begins at %v, want %v", f.Begins, want)
	}
}

// What is not allowed is not done: an allowance too short, walls set by hand to their
// ceilings, a level room.
func TestLevelledOnlyWhereItCanBe(t *testing.T) {
	short := asked(tilted(), lined(paper.LinesIsolated))
	short.Rules.Foot = 20 * mm
	p := made(t, short)
	sound(t, p)
	if p.Runs[0].Layout.Lifts != nil || codes(p)[plan.Drift] != 2 {
		t.Errorf("with 20 mm to trim: %v, found %v", p.Runs[0].Layout.Lifts, codes(p))
	}
	level := made(t, asked(roomtext.Run("A 3000x2400 | B 2000x2400"), lined(paper.LinesIsolated)))
	if level.Runs[0].Layout.Lifts != nil {
		t.Error("drops of a level room are moved")
	}
	set := asked(tilted(), lined(paper.LinesIsolated))
	set.Runs[0].Fixed.Set = []plan.WallSetting{{Wall: 0, Setting: hanging.Setting{To: hanging.ToCeiling}}}
	p = made(t, set)
	sound(t, p)
	if p.Runs[0].Layout.Lifts != nil {
		t.Error("drops are moved beside a wall set to its ceiling")
	}
}

// A motif is cut or not where its drop hangs. By hand: a ceiling that falls by 60 mm over
// 4 m falls by 8 mm over a drop of 530 mm. Of a repeat of 533 mm, 12 mm are free between
// two motifs. Drops hung by the ceiling can all have the line in these 12 mm, to the
// millimetre; of drops that hang level most could not, whatever the height.
func TestPracticeLevelledMotifsAreWhole(t *testing.T) {
	p := lined(paper.LinesIsolated)
	p.Width, p.Repeat = 530*mm, 533*mm
	p.Motif = &paper.Motif{Axis: 265 * mm, Head: 30 * mm, Tall: 521 * mm}
	ta := task("A 4000x2400/2340", p)
	pl := made(t, ta)
	sound(t, pl)
	if n := codes(pl)[plan.MotifCut]; n != 0 || pl.Runs[0].Layout.Lifts == nil {
		t.Errorf("%d motifs are cut at the ceiling, drops moved by %v", n, pl.Runs[0].Layout.Lifts)
	}
	ta.Rules.Head = 40 * mm // too little to move drops by
	if n := codes(made(t, ta))[plan.MotifCut]; n < 5 {
		t.Errorf("hung level, only %d motifs are told to be cut", n)
	}
}

// In crooked rooms, what is told of motifs cut at ceilings is what the design as it hangs
// says: some height of the ceiling over the drop lies between a motif's head and foot.
func TestMotifsAreCutWhereTheyHang(t *testing.T) {
	t.Parallel()
	r := rand.New(rand.NewPCG(5, 8))
	rooms, moved, cut := 60, 0, 0
	if testing.Short() {
		rooms = 15
	}
	for n := range rooms {
		run := crooked(r)
		var heights [4]measure.Length // out of level by up to 50 mm, so that drops are moved by up to 25
		for i := range heights {
			heights[i] = 2400*mm + measure.Length(r.IntN(51))*mm
		}
		for i := range run.Walls {
			run.Walls[i].Outline[2].Y, run.Walls[i].Outline[3].Y = heights[(i+1)%4], heights[i]
		}
		p := lined(paper.LinesIsolated)
		p.Motif = &paper.Motif{Axis: 10 * inch, Head: 2 * inch, Tall: 21*inch - measure.Length(8+r.IntN(60))*mm}
		p.Match = []paper.Match{{Kind: paper.Straight}, {Kind: paper.Offset, Num: 1, Den: 2}}[r.IntN(2)]
		ta := asked(run, p)
		ta.Runs[0].Fixed.Start = &hanging.Start{X: measure.Length(r.IntN(500)) * mm}
		pl := made(t, ta)
		l := pl.Runs[0].Layout
		if l.Lifts != nil {
			moved++
		}
		told := map[int]bool{}
		for _, f := range pl.Findings {
			if f.Code == plan.MotifCut {
				told[f.Place.Drop] = true
			}
		}
		for i := range l.Drops {
			d := &l.Drops[i]
			for k, part := range d.Parts {
				if d.Number == 0 || part.Across.Lo >= p.Motif.Axis || part.Across.Hi <= p.Motif.Axis {
					continue
				}
				w := &run.Walls[part.Wall]
				x := part.X.Lo + p.Motif.Axis - part.Across.Lo
				if x <= 0 || x >= w.Width {
					continue
				}
				left, right, _ := w.Ceiling()
				at := func(x measure.Length) measure.Length {
					return left + (right-left).Scaled(int64(min(max(x, 0), w.Width)), int64(w.Width))
				}
				high, low := max(at(part.X.Lo), at(part.X.Hi)), min(at(part.X.Lo), at(part.X.Hi))
				f := l.Fall(i, k)
				below := (f.Begins - high - p.Motif.Head).Mod(p.Repeat) // under a motif's head, at the line's highest point
				want := below > 0 && below < p.Motif.Tall || below+high-low > p.Repeat
				if want {
					cut++
				}
				if told[d.Number] != want {
					t.Errorf("room %d, drop %d: told %v, as it hangs %v", n, d.Number, told[d.Number], want)
				}
			}
		}
	}
	if moved < rooms/2 || cut == 0 {
		t.Errorf("drops are moved in %d of %d rooms, %d motifs cut", moved, rooms, cut)
	}
}

// The audit finds drops hung otherwise.
func TestLiftsAreJudged(t *testing.T) {
	for name, change := range map[string]func(*hanging.Layout){
		"a drop 2 mm too high": func(l *hanging.Layout) { l.Lifts[3] += 2 * mm },
		"beyond the allowance": func(l *hanging.Layout) {
			for i := range l.Lifts {
				l.Lifts[i] += 40 * mm
			}
		},
		"one left out": func(l *hanging.Layout) { l.Lifts = l.Lifts[1:] },
	} {
		p := made(t, asked(tilted(), lined(paper.LinesIsolated)))
		change(p.Runs[0].Layout)
		if len(audit.Plan(p)) == 0 {
			t.Errorf("%s: passes", name)
		}
	}
}
