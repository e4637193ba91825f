package sheet

import "testing"

func TestNotesStandInOrder(t *testing.T) {
	order := []note{{mark: plumbMark}, {mark: killMark}, {mark: pennantMark}, {}, {mark: dashedMark}, {mark: motifMark}, {mark: tickMark}, {mark: cautionMark}}
	for i := 1; i < len(order); i++ {
		if order[i-1].rank() >= order[i].rank() {
			t.Errorf("note %d does not stand before note %d", i-1, i)
		}
	}
}

// A long row of notes is written small; a short one is not.
func TestNoteGapHoldsTheNextMark(t *testing.T) {
	for lines := 1; lines < 5; lines++ {
		tall := noteGap(lines, small)
		if whole := int64(lines)*int64(small)*13/10 + int64(tall); whole < int64(pennantHigh+mm) {
			t.Errorf("%d lines and their gap are %d nm high", lines, whole)
		}
	}
}
