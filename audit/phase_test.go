package audit

import (
	"testing"

	"pgregory.net/rapid"

	"firstdrop/internal/anyroom"
	"firstdrop/measure"
	"firstdrop/paper"
)

// A third of 640 mm is no whole number of nanometres: drop 2 stands two
// thirds further on in one rounding, and drop 3 as drop 0.
func TestShiftOfThirds(t *testing.T) {
	p := &paper.Paper{Repeat: 640 * measure.Millimetre, Match: paper.Match{Kind: paper.Offset, Num: 1, Den: 3}}
	for i, want := range map[int]int64{0: 0, 1: 213_333_333, 2: 426_666_667, 3: 0, -1: 426_666_667, 3_000_001: 213_333_333} {
		if got := shift(p, i); got != want {
			t.Errorf("drop %d: shift %d, want %d", i, got, want)
		}
	}
}

// A label that reads 64/24 stands 24 cm on from drop to drop, and as drop 0
// after eight: 8 × 24 = 3 × 64.
func TestShiftOfStatedLength(t *testing.T) {
	p := &paper.Paper{Repeat: 640 * measure.Millimetre, Match: paper.Match{Kind: paper.Offset, Length: 240 * measure.Millimetre}}
	for i, want := range map[int]int64{1: 240 * mm, 2: 480 * mm, 3: 80 * mm, 8: 0, -1: 400 * mm} {
		if got := shift(p, i); got != want {
			t.Errorf("drop %d: shift %d, want %d", i, got, want)
		}
	}
}

// The label's own arithmetic gives the same phases.
func TestPhaseAgreesWithPaper(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := anyroom.Paper(t)
		i := rapid.IntRange(-10_000, 10_000).Draw(t, "drop")
		design, y := within(t, "design"), within(t, "height")
		want := int64(p.Phase(i, measure.Length(design), measure.Length(y)))
		if got := phaseAt(p, design, i, p.IsReversed(i), y); got != want {
			t.Errorf("phase %d, want %d", got, want)
		}
	})
}
