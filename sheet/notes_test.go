package sheet

import "testing"

// Lengths are not broken across lines.
func TestGlued(t *testing.T) {
	for text, want := range map[string]string{
		"12 mm of 530 mm":         "12\u00a0mm of 530\u00a0mm",
		`3' 5 15/16" from`:        "3'\u00a05\u00a015/16\" from",
		`7/8" wide`:               `7/8" wide`,
		"2400 mm on drops 11, 9":  "2400\u00a0mm on drops 11, 9",
		"drop 3 makes its corner": "drop 3 makes its corner",
	} {
		if got := glued(text); got != want {
			t.Errorf("glued(%q) = %q, want %q", text, got, want)
		}
	}
}

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
