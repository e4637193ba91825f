package plan

import (
	"testing"

	"firstdrop/hanging"
	"firstdrop/internal/roomtext"
	"firstdrop/paper"
)

// However much the best found weighs, as a layout does that has seams where none may stand,
// drops are hopeless if they weigh no less, and not otherwise.
func TestHopelessOnlyIfNoBetter(t *testing.T) {
	for _, match := range []paper.Match{{Kind: paper.Straight}, {Kind: paper.Offset, Num: 1, Den: 3}} {
		p := rows(640 * mm)
		p.Match = match
		s := searched(t, asking(roomtext.Run("closed: A 3300x2420 | B 2900x2420 | C 3300x2420 | D 2900x2420 door(1850+850 0+2030) |"), p, 0))
		s.prepare()
		m := newCombiner(s)
		for _, best := range []int64{1, 900, 6_000, offWeight, 40 * offWeight, never} {
			s.best = candidate{layout: &hanging.Layout{}, score: best}
			for _, pieces := range []int{0, 1, 24} {
				b := sum{score: 500}
				for range pieces {
					s.halves.rolls.count(&b, &hanging.Piece{Length: 2520 * mm, Lead: 2470 * mm})
				}
				if got, want := m.hopeless(&b), m.bound(&b) >= best; got != want {
					t.Errorf("%d pieces, which weigh %d, against %d: hopeless %v", pieces, m.bound(&b), best, got)
				}
			}
		}
	}
}
