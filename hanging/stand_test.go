package hanging_test

import (
	"testing"

	"pgregory.net/rapid"

	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/internal/anyroom"
	"firstdrop/internal/roomtext"
	"firstdrop/measure"
	"firstdrop/paper"
)

// turned draws a layout on walls that are turned; others are skipped.
func turned(t *rapid.T) *hanging.Layout {
	run, set := anyroom.Crooked(t)
	p := anyroom.Paper(t)
	if set == nil {
		t.Skip("hangs plumb")
	}
	h, err := hanging.NewSet(run, set, p, hanging.DefaultRules())
	if err != nil {
		t.Skip(err)
	}
	l, err := h.Layout(anyroom.Choice(t, h.Run(), p))
	if err != nil {
		t.Skip(err)
	}
	return l
}

// What was turned is turned back: every corner of an outline that lies on no edge of
// the wall, and every corner of an opening, stands again where it was surveyed.
func TestOnWallUndoesTurned(t *testing.T) {
	checked := 0
	rapid.Check(t, func(t *rapid.T) {
		l := turned(t)
		for w := range l.Run.Walls {
			for o, op := range l.Run.Walls[w].Openings {
				for i, want := range op.Outline {
					got := l.OnWall(w, l.Hung().Walls[w].Openings[o].Outline[i])
					if (got.X-want.X).Abs() > 4 || (got.Y-want.Y).Abs() > 4 { // 2 nm beyond the edge, and rounding
						t.Fatalf("wall %d, opening %d: %v is back at %v", w, o, want, got)
					}
					checked++
				}
			}
		}
	})
	if checked == 0 {
		t.Error("no opening was turned")
	}
}

// By hand: a ceiling that rises by 20 mm over 4 m, and sheets along it. Over the
// wall's 2420 mm they lean by 20·2420/4000 = 12.1 mm to the left. A place 1000 mm
// along the foot and 2000 mm up the sheet stands 10 mm further left and about 5 mm
// higher; the design's height at the left end is half the rise too low.
func TestFallByHand(t *testing.T) {
	const mm = measure.Millimetre
	run := roomtext.Run("A 4000x2400/2420")
	h, err := hanging.NewSet(run, []hanging.Setting{{To: hanging.ToCeiling}}, &paper.Paper{Name: "rows", Width: 530 * mm, RollLength: 10050 * mm, Repeat: 640 * mm, Pack: 1, Match: paper.Match{Kind: paper.Straight}}, hanging.DefaultRules())
	if err != nil {
		t.Fatal(err)
	}
	l, err := h.Layout(hanging.Choice{Start: hanging.Start{X: 470 * mm}, Design: 100 * mm})
	if err != nil {
		t.Fatal(err)
	}
	lift := l.Turns[0].Lift
	if lift != -10*mm || l.Turns[0].Rise != 20*mm {
		t.Fatalf("turned by %+v", l.Turns[0])
	}
	at := l.OnWall(0, geom.Point{X: 1000 * mm, Y: 2000 * mm})
	wantY := 2000*mm + lift + (20*mm).Scaled(int64(at.X), int64(4000*mm))
	wantX := 1000*mm - (12100*measure.Micrometre).Scaled(int64(wantY), int64(2420*mm))
	if (at.X-wantX).Abs() > 1 || (at.Y-wantY).Abs() > 1 || at.X > 991*mm || at.Y < 1994*mm {
		t.Errorf("stands at %v, want %v, %v", at, wantX, wantY)
	}
	for i := range l.Drops {
		f := l.Fall(i, 0)
		p := l.Drops[i].Parts[0]
		if f.EdgeAt(0) != p.X.Lo-p.Across.Lo || f.EdgeAt(2420*mm) != f.EdgeAt(0)-12100*measure.Micrometre {
			t.Errorf("drop %d: edge from %v to %v", i, f.EdgeAt(0), f.EdgeAt(2420*mm))
		}
		if f.RowAt(0) != 90*mm || f.RowAt(4000*mm) != 110*mm {
			t.Errorf("drop %d: its row runs from %v to %v, want from 90 mm to 110 mm", i, f.RowAt(0), f.RowAt(4000*mm))
		}
	}
}
