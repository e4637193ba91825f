package tell

import (
	"testing"

	"firstdrop/hanging"
	"firstdrop/internal/roomtext"
	"firstdrop/measure"
	"firstdrop/paper"
)

// laid lays out a run from its left end.
func laid(t *testing.T, run string) *hanging.Layout {
	t.Helper()
	p := &paper.Paper{Name: "plain", Width: 530 * measure.Millimetre, RollLength: 10050 * measure.Millimetre, Pack: 1}
	h, err := hanging.New(roomtext.Run(run), p, hanging.DefaultRules())
	if err != nil {
		t.Fatal(err)
	}
	l, err := h.Layout(hanging.Choice{})
	if err != nil {
		t.Fatal(err)
	}
	return l
}

func TestPiece(t *testing.T) {
	tests := []struct {
		run  string
		want []string // of each piece in hanging order
	}{
		{"A 1060x2400", []string{"full", "full"}},
		{"A 530x2400 door(0+530 0+2000)", []string{"over door"}},
		{"A 530x2400 window(0+530 900+1000)", []string{"over window", "under window"}},
		{"A 530x2400 window(0+530 1400+600) window(0+530 400+600)", []string{"over window", "between window and window", "under window"}},
		{"A 530x2400 window(100+200 900+1000)", []string{"full, cut out round window"}},
		{"A 1060x2400/1200", []string{"full", "full"}},
		{"A 530x2400 window(0+530 900+1000 200)", []string{"over window", "under window", "left reveal of window", "right reveal of window", "soffit of window"}},
		{"A 400x2400 door(0+400 0+2000) | B 600x2400", []string{"full, cut out round door", "full"}},
	}
	for _, tt := range tests {
		l := laid(t, tt.run)
		if len(l.Pieces) != len(tt.want) {
			t.Errorf("%s: %d pieces, want %d", tt.run, len(l.Pieces), len(tt.want))
			continue
		}
		for i := range l.Pieces {
			if got := Piece(nil, l, &l.Pieces[i]); got != tt.want[i] {
				t.Errorf("%s: piece %s is %q, want %q", tt.run, l.Pieces[i].Name, got, tt.want[i])
			}
		}
	}
}

func TestUnnamedOpeningsAreWhatTheyAre(t *testing.T) {
	l := laid(t, "A 530x2400 fireplace(0+530 0+1000)")
	l.Run.Walls[0].Openings[0].Name = ""
	if got, want := Piece(nil, l, &l.Pieces[0]), "over fireplace"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}
