package plan

import (
	"math/rand/v2"
	"testing"

	"firstdrop/cutting"
	"firstdrop/hanging"
	"firstdrop/internal/roomtext"
	"firstdrop/measure"
	"firstdrop/paper"
)

// By hand, in repeats of 610 mm and rolls of 10.05 m: drops of 2520 mm begin 3050 mm apart,
// so three are a roll, and end 8620 mm from the first one's head. Before that up to 610 mm
// are lost, so of 820 mm left none is long enough for a sill of 1000 mm: it takes the place
// of a drop. Seven rolls of drops and a sill are eight, which neither lengths (5.5) nor drops
// alone (7) tell.
func TestPricesByHand(t *testing.T) {
	p := rows(610 * mm)
	s := searched(t, asking(roomtext.Run("closed: A 3300x2420 | B 2900x2420 window(800+1100 900+1250) | C 3300x2420 | D 2900x2420 door(1850+850 0+2030) |"), p, 0))
	s.prepare()
	b := &s.halves.rolls
	if b.prices.roll == 0 {
		t.Fatal("no prices")
	}
	var drops sum
	full := hanging.Piece{Length: 2520 * mm, Lead: 2470 * mm}
	for range 21 {
		b.count(&drops, &full)
	}
	if got := b.rolls(&drops); got != 7 {
		t.Errorf("21 drops: %d rolls", got)
	}
	with := drops
	b.count(&with, &hanging.Piece{Length: 1000 * mm, Lead: 950 * mm})
	if got := b.rolls(&with); got != 8 {
		t.Errorf("21 drops and a sill: %d rolls", got)
	}
	with = drops
	b.count(&with, &hanging.Piece{Length: 1400 * mm, Lead: 950 * mm}) // worth no less
	if got := b.rolls(&with); got != 8 {
		t.Errorf("21 drops and a longer sill: %d rolls", got)
	}
}

// pricesHeld counts layouts held against what they are worth.
type pricesHeld struct{ rooms, layouts, exact int }

// hold holds some choices of a search against what they are worth.
func (h *pricesHeld) hold(t *testing.T, room int, s *search, choices []hanging.Choice) {
	t.Helper()
	b := &s.halves.rolls
	if b.prices.roll == 0 {
		return
	}
	h.rooms++
	for _, c := range choices {
		l, err := s.h.Layout(c)
		if err != nil {
			continue
		}
		var n sum
		for k := range l.Pieces {
			b.count(&n, &l.Pieces[k])
		}
		problem, err := cutting.NewProblem(s.lot.spec(s.task, s.judge.paper, appendPieces(nil, l)))
		if err != nil {
			continue
		}
		got, least := cutting.Solve(problem, cutting.Options{}), (n.worth+b.prices.roll-1)/b.prices.roll
		if h.layouts++; least > int64(len(got.Rolls)) {
			t.Fatalf("room %d, %+v: worth %d rolls, and cut from %d", room, l.Choice, least, len(got.Rolls))
		}
		if least == int64(len(got.Rolls)) {
			h.exact++
		}
	}
}

// What a layout needs by prices is never more than what it is cut from, whatever layout it
// is: in made-up rooms, against the exact cutting.
func TestPricesAreABound(t *testing.T) {
	var held pricesHeld
	for seed := range 160 {
		s, all := gathered(t, seed, 211*measure.Millimetre, true)
		var choices []hanging.Choice
		for i := 0; i < len(all); i += 1 + len(all)/12 {
			choices = append(choices, s.choice(&all[i]))
		}
		held.hold(t, seed, s, choices)
	}
	t.Logf("%d rooms with prices, %d layouts, %d told to the roll", held.rooms, held.layouts, held.exact)
	if held.rooms < 40 || 2*held.exact < held.layouts {
		t.Error("prices tell little")
	}
}

// The same in long runs, where prices come from rolls that serve every phase: they tell
// more than those of rolls of one phase.
func TestSharperPricesAreABound(t *testing.T) {
	t.Parallel()
	var held pricesHeld
	rooms := 16
	if testing.Short() {
		rooms = 4
	}
	for seed := range rooms {
		r := rand.New(rand.NewPCG(uint64(seed), 37))
		task := griddedTask(r, 14+r.IntN(12), 10*mm)
		task.Papers[0].Match, task.Papers[0].Repeat = paper.Match{Kind: paper.Offset, Num: 1, Den: 2}, 640*mm
		s := searched(t, task)
		s.prepare()
		var choices []hanging.Choice
		for range 20 {
			choices = append(choices, hanging.Choice{Start: s.starts[r.IntN(len(s.starts))], Kill: s.kills[r.IntN(len(s.kills))].kill})
		}
		held.hold(t, seed, s, choices)
	}
	t.Logf("%d runs with prices, %d layouts, %d told to the roll", held.rooms, held.layouts, held.exact)
	if held.rooms < rooms/2 || 2*held.exact < held.layouts {
		t.Error("prices tell little")
	}
}
