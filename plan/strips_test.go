package plan_test

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"firstdrop/paper"
	"firstdrop/plan"
)

// dressing is a room with cabinets up to the ceiling, for which narrow strips
// side by side save a roll.
const dressing = "closed: A 3180x2380 furniture(360+1105 0+2380) furniture(1735+1105 0+2380) | B 1630x2380! window(400+800 900+1200) |" +
	" C 3180x2380 furniture(200+2480 0+2380) | D 1630x2380 door(600+840 0+2050) |"

func straight() paper.Paper {
	p := plain()
	p.Repeat, p.Match = 640*mm, paper.Match{Kind: paper.Straight}
	return p
}

// withBlade asks for strips side by side as they are cut by default.
func withBlade(run string, p paper.Paper) *plan.Task {
	ta := task(run, p)
	ta.Cut = plan.DefaultCut()
	return ta
}

// checkStrips holds the narrow pieces of a plan against their layouts: each lies
// once, at its phase, and clear of its neighbours by the blade, with 13 mm over at each
// slit edge: "don't pre-trim the last piece, cut 1/2 to 1 in over and trim in place"
// (corner sheet, assets.doityourself.com/stry/wallpapercorners). It returns the number of
// strips that give several.
func checkStrips(t *testing.T, name string, p *plan.Plan) (several int) {
	t.Helper()
	seen := map[plan.PieceRef]int{}
	for i := range p.Papers[0].Batches {
		b := &p.Papers[0].Batches[i]
		pieces := b.Cutting.Problem.Spec().Pieces
		for k, strip := range b.Cuts {
			if len(strip) > 1 {
				several++
			}
			edge := -p.Task.Cut.Blade
			for _, lie := range strip {
				seen[lie.PieceRef]++
				l := p.Runs[lie.Run].Layout
				q := &l.Pieces[lie.Piece]
				lo, hi := max(q.Across.Lo-13*mm, 0), min(q.Across.Hi+13*mm, l.Paper.Width)
				if l.Drops[q.Drop].Reversed { // turned end for end, left is right
					lo, hi = l.Paper.Width-hi, l.Paper.Width-lo
				}
				if len(strip) > 1 && lo < edge+p.Task.Cut.Blade {
					t.Errorf("%s: strip %d: piece %s needs the paper from %v, and the one before up to %v", name, k, q.Name, lo, edge)
				}
				if (pieces[k].Phase+lie.Offset-q.Phase).Mod(l.Paper.Repeat) != 0 || lie.Offset < 0 || lie.Offset+q.Length > pieces[k].Length {
					t.Errorf("%s: strip %d: piece %s lies off its place", name, k, q.Name)
				}
				if a := p.Across(lie.PieceRef); a.Lo != lo || a.Hi != hi {
					t.Errorf("%s: strip %d: piece %s is slit at %v, want %v to %v", name, k, q.Name, a, lo, hi)
				}
				edge = hi
			}
		}
	}
	for r := range p.Runs {
		for k := range p.Runs[r].Layout.Pieces {
			if n := seen[plan.PieceRef{Run: r, Piece: k}]; n != 1 {
				t.Errorf("%s: piece %d of run %d is cut %d times", name, k, r, n)
			}
		}
	}
	return several
}

func TestSideBySideSavesARoll(t *testing.T) {
	p := made(t, withBlade(dressing, straight()))
	pp := &p.Papers[0]
	if pp.SavedBySide() != 1 || pp.Buy() != 3 || !pp.Proven() || codes(p)[plan.SideBySide] != 1 {
		t.Errorf("%d rolls to buy, %d saved, proven %v", pp.Buy(), pp.SavedBySide(), pp.Proven())
	}
	if checkStrips(t, "dressing room", p) == 0 {
		t.Error("no strip gives two pieces")
	}
	mirror := withBlade(dressing, straight())
	mirror.Runs[0].Run, mirror.Papers[0] = mirror.Runs[0].Run.Mirrored(), *mirror.Papers[0].Mirrored()
	m := made(t, mirror)
	if m.Papers[0].Buy() != pp.Buy() || m.Papers[0].SavedBySide() != pp.SavedBySide() {
		t.Errorf("mirrored: %d rolls to buy, %d saved", m.Papers[0].Buy(), m.Papers[0].SavedBySide())
	}
	checkStrips(t, "mirrored", m)
}

// Whoever does not want it, and goods that shade, get every piece alone.
func TestNothingSideBySide(t *testing.T) {
	alone := withBlade(dressing, straight())
	alone.Cut.Alone = true
	shading := withBlade(dressing, straight())
	shading.Papers[0].InOrder = true
	wide := withBlade(dressing, straight())
	wide.Cut.Blade = 530 * mm
	for name, ta := range map[string]*plan.Task{"alone": alone, "shading": shading, "a blade as wide as the paper": wide} {
		p := made(t, ta)
		if n := checkStrips(t, name, p); n > 0 || p.Papers[0].SavedBySide() != 0 || p.Papers[0].Buy() != 4 {
			t.Errorf("%s: %d strips give several pieces, %d rolls to buy", name, n, p.Papers[0].Buy())
		}
	}
}

// In other rooms with cabinets, of other papers, what lies side by side lies
// apart, and only where that saves something.
func TestStripsLieApart(t *testing.T) {
	t.Parallel()
	saved := 0
	for seed := range 24 {
		r := rand.New(rand.NewPCG(2, uint64(seed)))
		w := func(least, most int) int { return least + 10*r.IntN((most-least)/10+1) }
		a, b, h := w(1800, 3200), w(1600, 2600), w(2350, 2600)
		left, right, gap := w(120, 400), w(120, 400), w(120, 400)
		cabinet := (a - left - right - gap) / 2
		text := fmt.Sprintf("closed: A %[1]dx%[2]d furniture(%[3]d+%[4]d 0+%[2]d) furniture(%[5]d+%[4]d 0+%[2]d) | B %[6]dx%[2]d window(400+800 900+1200) |"+
			" C %[1]dx%[2]d furniture(%[7]d+%[8]d 0+%[2]d) | D %[6]dx%[2]d door(600+840 0+2050) |", a, h, left, cabinet, left+cabinet+gap, b, w(120, 400), a-700)
		p := []paper.Paper{plain(), straight(), halfDrop()}[seed%3]
		p.Match.Reversing = seed%4 == 0
		pl := made(t, withBlade(text, p))
		several := checkStrips(t, text, pl)
		if n := pl.Papers[0].SavedBySide(); n > 0 {
			saved++
		} else if several > 0 {
			t.Errorf("%s: %d strips give several pieces and save nothing", text, several)
		}
	}
	if saved < 2 {
		t.Errorf("strips side by side save a roll in %d rooms only", saved)
	}
}
