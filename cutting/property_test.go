package cutting

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"testing"

	"pgregory.net/rapid"

	"firstdrop/measure"
)

func roomSpec() *rapid.Generator[Spec] {
	return rapid.Custom(func(t *rapid.T) Spec {
		s := randomRoom(rapid.IntRange(10_000, 1_000_000).Draw(t, "room"))
		if rapid.Bool().Draw(t, "unopened") {
			s = anyStart(s)
		}
		return s
	})
}

func must(t *rapid.T, s Spec) *Solution {
	p, err := NewProblem(s)
	if err != nil {
		t.Fatal(err)
	}
	sol := Solve(p, Options{Steps: 50_000})
	for _, err := range sol.Check() {
		t.Error(err)
	}
	return sol
}

func TestLongerRollNeverNeedsMore(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		s := roomSpec().Draw(rt, "room")
		a := must(rt, s)
		s.Roll.Length += measure.Length(rapid.IntRange(1, 2000).Draw(rt, "longer")) * mm
		b := must(rt, s)
		if a.Proven && b.Proven && len(b.Rolls) > len(a.Rolls) {
			rt.Errorf("%d rolls, but %d longer ones", len(a.Rolls), len(b.Rolls))
		}
	})
}

// Scaling everything keeps the count where the start is known. An unknown
// start is a whole number of nanometres in either size, so a larger design can
// meet a start that lay between two of them before: no such promise there.
func TestScalingKeepsTheCount(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		s := roomSpec().Draw(rt, "room")
		if !s.Roll.Start.Known {
			return
		}
		k := measure.Length(rapid.IntRange(2, 50).Draw(rt, "factor"))
		big := Spec{Repeat: s.Repeat * k, Roll: Roll{s.Roll.Length * k, StartAt(s.Roll.Start.Phase * k)}}
		for _, p := range s.Pieces {
			big.Pieces = append(big.Pieces, Piece{p.Length * k, p.Phase * k})
		}
		if a, b := must(rt, s), must(rt, big); a.Proven && b.Proven && len(a.Rolls) != len(b.Rolls) {
			rt.Errorf("%d rolls, %d when %d times as large", len(a.Rolls), len(b.Rolls), k)
		}
	})
}

func TestOrderOfPiecesDoesNotMatter(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		s := roomSpec().Draw(rt, "room")
		a := must(rt, s)
		shuffled := s
		shuffled.Pieces = append([]Piece(nil), s.Pieces...)
		r := rand.New(rand.NewPCG(rapid.Uint64().Draw(rt, "seed"), 1))
		r.Shuffle(len(s.Pieces), func(i, k int) {
			shuffled.Pieces[i], shuffled.Pieces[k] = shuffled.Pieces[k], shuffled.Pieces[i]
		})
		if b := must(rt, shuffled); a.Proven && b.Proven && len(a.Rolls) != len(b.Rolls) {
			rt.Errorf("%d rolls, %d in another order", len(a.Rolls), len(b.Rolls))
		}
	})
}

// The memory that Solve re-uses must not shine through: in between, other
// rooms are solved.
func TestSameInputSameBytes(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		s := roomSpec().Draw(rt, "room")
		a := fmt.Sprint(must(rt, s))
		must(rt, roomSpec().Draw(rt, "another"))
		if b := fmt.Sprint(must(rt, s)); dropAddress(a) != dropAddress(b) {
			rt.Errorf("differs:\n%s\n%s", a, b)
		}
	})
}

// dropAddress cuts the problem's address off a printed solution.
func dropAddress(s string) string {
	for i, c := range s {
		if c == ' ' {
			return s[i:]
		}
	}
	return s
}

func TestRefusals(t *testing.T) {
	good := Piece{2500 * mm, 100 * mm}
	for _, c := range []struct {
		name  string
		spec  Spec
		index int
		why   Reason
	}{
		{"longer than the roll", Spec{Repeat: 0, Roll: Roll{Length: 2 * measure.Metre}, Pieces: []Piece{good}}, 0, TooLong},
		{"zero length", Spec{Repeat: 0, Roll: Roll{Length: 9 * measure.Metre}, Pieces: []Piece{good, {}}}, 1, NotPositive},
		{"negative length", Spec{Repeat: 0, Roll: Roll{Length: 9 * measure.Metre}, Pieces: []Piece{{Length: -1}}}, 0, NotPositive},
		{"phase at the repeat", Spec{Repeat: 500 * mm, Roll: Roll{Length: 9 * measure.Metre}, Pieces: []Piece{good, {good.Length, 500 * mm}}}, 1, PhaseOutOfRange},
		{"negative phase", Spec{Repeat: 500 * mm, Roll: Roll{Length: 9 * measure.Metre}, Pieces: []Piece{{good.Length, -1}}}, 0, PhaseOutOfRange},
		{"phase comes too late", Spec{Repeat: 500 * mm, Roll: Roll{2600 * mm, StartAt(101 * mm)}, Pieces: []Piece{good}}, 0, PhaseNotReached},
		{"not for every start", Spec{Repeat: 500 * mm, Roll: Roll{Length: 2999*mm + 999_998}, Pieces: []Piece{good}}, 0, NotGuaranteed},
	} {
		_, err := NewProblem(c.spec)
		var pe *PieceError
		if !errors.As(err, &pe) || pe.Index != c.index || pe.Why != c.why {
			t.Errorf("%s: got %v, want piece %d: %s", c.name, err, c.index, c.why)
		}
	}
	// One nanometre more of roll, and every start will do.
	if _, err := NewProblem(Spec{Repeat: 500 * mm, Roll: Roll{Length: 2999*mm + 999_999}, Pieces: []Piece{good}}); err != nil {
		t.Error(err)
	}
	for _, c := range []struct {
		field string
		spec  Spec
	}{
		{"Repeat", Spec{Repeat: -1, Roll: Roll{Length: 1}}},
		{"Repeat", Spec{Repeat: measure.MaxLength + 1, Roll: Roll{Length: 1}}},
		{"Roll.Length", Spec{}},
		{"Roll.Length", Spec{Roll: Roll{Length: measure.MaxLength + 1}}},
		{"Roll.Start", Spec{Repeat: 5, Roll: Roll{9, StartAt(5)}}},
	} {
		_, err := NewProblem(c.spec)
		var se *SpecError
		if !errors.As(err, &se) || se.Field != c.field {
			t.Errorf("got %v, want a complaint about %s", err, c.field)
		}
	}
}

func TestNothingToCut(t *testing.T) {
	s := solve(t, Spec{Repeat: 5, Roll: Roll{Length: 9}})
	if len(s.Rolls) != 0 || !s.Proven || s.LowerBound != 0 {
		t.Errorf("got %+v", s)
	}
}
