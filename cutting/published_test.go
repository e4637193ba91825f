package cutting

import (
	"testing"

	"firstdrop/measure"
)

const (
	inch  = measure.Inch
	foot  = measure.Foot
	yard  = measure.Yard
	metre = measure.Metre
)

func equal(n int, length measure.Length) []Piece {
	pieces := make([]Piece, n)
	for i := range pieces {
		pieces[i].Length = length
	}
	return pieces
}

// TestPublishedCounts: lengths per roll and rolls per job as printed. All are
// free match, as the sources count.
func TestPublishedCounts(t *testing.T) {
	for _, c := range []struct {
		name, source string
		roll, length measure.Length
		pieces, want int
	}{
		// EN 233 allows a 10.05 m roll to be 1.5 % short: 9.899 m.
		{"four of 2.47 m are guaranteed", "EN 233, clause 5", 9899 * mm, 2470 * mm, 4, 1},
		{"four of 2.50 m are not", "EN 233, clause 5", 9899 * mm, 2500 * mm, 4, 2},
		{"four of 2.50 m from the nominal roll", "EN 233, clause 5", 10_050 * mm, 2500 * mm, 4, 1},
		{"E2: 31 strips of 9 ft from 48 ft, 6 1/5 rolls", "New Student's Reference Work, 1914, vol. 5 p. 2186", 48 * foot, 9 * foot, 31, 7},
		{"E3: 24 lengths, 4 a roll up to 8 ft", "Handyman's Pocket Book", 23 * yard / 2, 8 * foot, 24, 6},
		{"Handyman: 3 lengths a roll of 11 1/2 yd up to 10 ft", "Handyman's Pocket Book", 23 * yard / 2, 10 * foot, 3, 1},
		{"Handyman: only 2 lengths over 11 ft 6 in", "Handyman's Pocket Book", 23 * yard / 2, 11*foot + 7*inch, 3, 2},
		{"E4: 28 strips, 3 per 24-ft roll", "Google Books 0k1GxFGxhoYC p. 229", 24 * foot, 8 * foot, 28, 10},
		{"24-ft roll, over 8 ft: 2 strips", "Google Books 0k1GxFGxhoYC p. 229", 24 * foot, 8*foot + inch, 3, 2},
		{"E7: 34 strips of 3.00 m", "tayoma.de, Tapeten berechnen", 10_050 * mm, 3 * metre, 34, 12},
		{"E32: 7 strips of 14 ft 4 in, 2 per 33 ft", "londonwidepainters.co.uk, How to paper a ceiling", 33 * foot, 14*foot + 4*inch, 7, 4},
		{"room over 2.5 m gives 3 strips", "climatechange.ru", 10_050 * mm, 2600 * mm, 3, 1},
		{"room over 3.3 m only 2", "climatechange.ru", 10_050 * mm, 3360 * mm, 3, 2},
		// T2, franz-woll.de: ceil(girth / 0.53 m) strips; 4, 3 or 2 per roll.
		{"T2: 6 m, 2.35 m high", "franz-woll.de, Bedarfsermittlung", 10_050 * mm, 2450 * mm, 12, 3},
		{"T2: 10 m", "franz-woll.de, Bedarfsermittlung", 10_050 * mm, 2450 * mm, 19, 5},
		{"T2: 15 m", "franz-woll.de, Bedarfsermittlung", 10_050 * mm, 2450 * mm, 29, 8},
		{"T2: 20 m", "franz-woll.de, Bedarfsermittlung", 10_050 * mm, 2450 * mm, 38, 10},
		{"T2: 6 m, 3.05 m high", "franz-woll.de, Bedarfsermittlung", 10_050 * mm, 3150 * mm, 12, 4},
		{"T2: 10 m", "franz-woll.de, Bedarfsermittlung", 10_050 * mm, 3150 * mm, 19, 7},
		{"T2: 15 m", "franz-woll.de, Bedarfsermittlung", 10_050 * mm, 3150 * mm, 29, 10},
		{"T2: 20 m, 4.00 m high", "franz-woll.de, Bedarfsermittlung", 10_050 * mm, 4100 * mm, 38, 19},
	} {
		s := solve(t, Spec{Roll: Roll{Length: c.roll}, Pieces: equal(c.pieces, c.length)})
		if len(s.Rolls) != c.want || !s.Proven {
			t.Errorf("%s (%s): %d rolls, bound %d, want %d", c.name, c.source, len(s.Rolls), s.LowerBound, c.want)
		}
	}
}

// TestCuttingToThePattern is E33 (goodwin.crimea.ua): walls of 2.75 m, repeat
// 0.60 m, roll of 10 m. The printed rule "height + repeat" (3.35 m) leaves two
// strips to a roll; cut to the pattern every strip takes five repeats, 3.00 m,
// and a roll gives three.
func TestCuttingToThePattern(t *testing.T) {
	roll := Roll{10 * metre, StartAt(0)}
	printed := solve(t, Spec{Roll: roll, Pieces: equal(6, 3350*mm)})
	cut := solve(t, Spec{Repeat: 600 * mm, Roll: roll, Pieces: equal(6, 2750*mm)})
	if len(printed.Rolls) != 3 || len(cut.Rolls) != 2 {
		t.Errorf("%d rolls by the printed rule, %d cut to the pattern; want 3 and 2", len(printed.Rolls), len(cut.Rolls))
	}
	// The offset of 0.30 m in the same source, cut alternately: two of one
	// phase and one of the other still come from a roll.
	half := Spec{Repeat: 600 * mm, Roll: roll, Pieces: equal(6, 2750*mm)}
	for i := range half.Pieces {
		half.Pieces[i].Phase = measure.Length(i%2) * 300 * mm
	}
	if s := solve(t, half); len(s.Rolls) != 2 || !s.Proven {
		t.Errorf("half-drop: %d rolls, bound %d, want 2", len(s.Rolls), s.LowerBound)
	}
}

// TestShortRoll is R2 (wallpaperlady.wordpress.com, 2012-12-14): still wanted
// are two 8-ft strips and a 14-in piece; 4 in for trimming. One double roll of
// 27 ft gives all, single rolls of 13 1/2 ft do not: one gives a strip and
// about 5 ft.
func TestShortRoll(t *testing.T) {
	pieces := []Piece{{Length: 8*foot + 4*inch}, {Length: 8*foot + 4*inch}, {Length: 18 * inch}}
	if s := solve(t, Spec{Roll: Roll{Length: 27 * foot}, Pieces: pieces}); len(s.Rolls) != 1 {
		t.Errorf("double roll: %d rolls, want 1", len(s.Rolls))
	}
	if s := solve(t, Spec{Roll: Roll{Length: 27 * foot / 2}, Pieces: pieces}); len(s.Rolls) != 2 {
		t.Errorf("single rolls: %d, want 2", len(s.Rolls))
	}
	s := solve(t, Spec{Roll: Roll{Length: 27 * foot / 2}, Pieces: pieces[:1]})
	if free := s.Leftovers()[0]; free != 62*inch {
		t.Errorf("left after one strip: %v in, want 62 (about 5 ft)", free/inch)
	}
}

// TestWorstStart is R4 (wallpaperlady.wordpress.com, tag/vaulted, 2021-07-18):
// a gap 5 ft high costs 60 in and, with a repeat of 25 in, about 25 in more to
// reach the phase: 85 in of roll at worst. In whole nanometres the worst start
// is one past the phase.
func TestWorstStart(t *testing.T) {
	spec := Spec{Repeat: 25 * inch, Roll: Roll{Length: 85*inch - 1}, Pieces: []Piece{{60 * inch, 7 * inch}}}
	s := solve(t, spec)
	if cut := s.Rolls[0].Orders[0].Cuts[0]; cut.To != 85*inch-1 {
		t.Errorf("ends at %d, want 85 in less 1 nm", cut.To)
	}
	spec.Roll.Length--
	if _, err := NewProblem(spec); err == nil {
		t.Error("a shorter roll cannot guarantee the piece")
	}
}
