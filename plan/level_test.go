package plan_test

import (
	"testing"

	"firstdrop/audit"
	"firstdrop/hanging"
	"firstdrop/internal/roomtext"
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
