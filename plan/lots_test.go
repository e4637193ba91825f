package plan_test

import (
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"firstdrop/finding"
	"firstdrop/internal/anyroom"
	"firstdrop/measure"
	"firstdrop/money"
	"firstdrop/paper"
	"firstdrop/plan"
	"firstdrop/room"
)

// eight asks for eight drops of 2.50 m: four come out of a roll of 10.05 m.
func eight(rolls ...paper.Roll) *plan.Task {
	p := plain()
	p.Rolls = rolls
	for i := range p.Rolls {
		p.Rolls[i].Name = fmt.Sprint(i + 1)
	}
	return asked(flat(8*530*mm, 2400*mm), p)
}

// whole is a roll in hand that nobody has looked at.
func whole(length measure.Length) paper.Roll { return paper.Roll{Length: length} }

// inHand counts the rolls that are cut and were there already.
func inHand(p *plan.Plan) (n int) {
	for i := range p.Papers[0].Batches {
		b := &p.Papers[0].Batches[i]
		for r := range b.Cutting.Rolls {
			if _, ok := b.InHand(r); ok {
				n++
			}
		}
	}
	return n
}

// Rolls in hand are used before others are bought. How many drops of 2.50 m each
// gives, and so what is to be bought, is worked out by hand.
func TestRollsInHandComeFirst(t *testing.T) {
	const m = measure.Metre
	flaw := func(from, to measure.Length) paper.Roll {
		return paper.Roll{Length: 10050 * mm, Flaws: []paper.Flaw{{From: from, To: to}}}
	}
	parts := func(lengths ...measure.Length) (r paper.Roll) {
		for _, l := range lengths {
			r.Parts = append(r.Parts, paper.RollPart{Length: l})
		}
		return r
	}
	for _, c := range []struct {
		name       string
		task       *plan.Task
		lead, loss measure.Length
		buy        int
	}{
		{"nothing there: 8 by 4", eight(), 0, 0, 2},
		{"a whole roll: 4 left", eight(whole(10050 * mm)), 0, 0, 1},
		{"two whole rolls", eight(whole(10050*mm), whole(10050*mm)), 0, 0, 0},
		{"one drop left over: 7 left", eight(whole(2600 * mm)), 0, 0, 2},
		{"a whole roll and one drop: 3 left", eight(whole(10050*mm), whole(2600*mm)), 0, 0, 1},
		{"two left-overs of two: 4 left", eight(whole(5100*mm), whole(5*m)), 0, 0, 1},
		{"10 m and 1 mm short of it: 1 left", eight(whole(10*m), whole(9999*mm)), 0, 0, 1},
		{"a scrap of 2.499 m", eight(whole(2499 * mm)), 0, 0, 2},
		{"a flaw in the fourth drop, 1 and 2: 5 left", eight(flaw(4900*mm, 5000*mm)), 0, 0, 2},
		{"a flaw between drops, 2 and 2: 4 left", eight(flaw(5000*mm, 5050*mm)), 0, 0, 1},
		{"two lengths, 2 and 2: 4 left", eight(parts(5*m, 5050*mm)), 0, 0, 1},
		{"two lengths, 1 and 2: 5 left", eight(parts(4900*mm, 5150*mm)), 0, 0, 2},
		{"a dirty winding: 3 a roll, 5 left", eight(whole(10050 * mm)), 100 * mm, 0, 2},
		{"a clean beginning of 50 mm: 4 left", eight(whole(10050 * mm)), 50 * mm, 0, 1},
		{"20 mm lost at a cut, 3 a roll: 5 left", eight(whole(10050 * mm)), 0, 20 * mm, 2},
		{"15 mm lost at a cut: 4 left", eight(whole(10050 * mm)), 0, 15 * mm, 1},
	} {
		c.task.Cut.Lead, c.task.Cut.Loss = c.lead, c.loss
		p := made(t, c.task)
		pp := &p.Papers[0]
		if pp.Buy() != c.buy || pp.Missing() != 0 || !pp.Proven() {
			t.Errorf("%s: %d to buy, %d missing, proven %v; want %d", c.name, pp.Buy(), pp.Missing(), pp.Proven(), c.buy)
		}
		if pp.Rolls() != pp.Buy()+inHand(p) {
			t.Errorf("%s: %d rolls, %d bought and %d in hand", c.name, pp.Rolls(), pp.Buy(), inHand(p))
		}
	}
}

// The least money is spent over all sizes on sale; sums worked out by hand.
func TestSizesOnSale(t *testing.T) {
	euros := func(n int64) money.Amount { return money.Amount{Minor: 100 * n, Currency: "EUR"} }
	n := func(i int) *int { return &i }
	for _, c := range []struct {
		name        string
		price       int64 // of the roll of 10.05 m, four drops
		also        paper.Offer
		long, short int
	}{
		{"two by two is cheaper: 36 for 40", 20, paper.Offer{RollLength: 5 * measure.Metre, Pack: 1, Price: euros(9)}, 0, 4},
		{"only two of them: 38 for 40", 20, paper.Offer{RollLength: 5 * measure.Metre, Pack: 1, Price: euros(9), Available: n(2)}, 1, 2},
		{"only one of them saves nothing", 20, paper.Offer{RollLength: 5 * measure.Metre, Pack: 1, Price: euros(9), Available: n(1)}, 2, 0},
		{"dear by the drop", 20, paper.Offer{RollLength: 5 * measure.Metre, Pack: 1, Price: euros(11)}, 2, 0},
		{"sold out", 20, paper.Offer{RollLength: 5 * measure.Metre, Pack: 1, Price: euros(1), Available: n(0)}, 2, 0},
		{"a long roll at once", 20, paper.Offer{RollLength: 20 * measure.Metre, Pack: 1, Price: euros(39)}, 0, 1},
	} {
		ta := eight()
		ta.Papers[0].Price, ta.Papers[0].Also = euros(c.price), []paper.Offer{c.also}
		pp := &made(t, ta).Papers[0]
		if pp.Orders[0].Rolls != c.long || pp.Orders[1].Rolls != c.short || !pp.Proven() {
			t.Errorf("%s: %d of 10.05 m and %d of %v, proven %v; want %d and %d", c.name, pp.Orders[0].Rolls, pp.Orders[1].Rolls, c.also.RollLength, pp.Proven(), c.long, c.short)
		}
	}
}

// What cannot be had is said, with the number of pieces.
func TestMissingPaperIsSaid(t *testing.T) {
	n := func(i int) *int { return &i }
	for _, c := range []struct {
		name                        string
		available                   int
		rolls                       []paper.Roll
		buy, missing, fromLeftOvers int
	}{
		{"one roll on sale gives 4 of 8", 1, nil, 1, 4, 0},
		{"two give all", 2, nil, 2, 0, 0},
		{"none on sale, a left-over of one drop", 0, []paper.Roll{whole(2600 * mm)}, 0, 7, 1},
		{"one on sale, and three drops there", 1, []paper.Roll{whole(2600 * mm), whole(5 * measure.Metre)}, 1, 1, 2},
	} {
		ta := eight(c.rolls...)
		ta.Papers[0].Available = n(c.available)
		p := made(t, ta)
		pp, said := &p.Papers[0], 0
		for _, f := range p.Findings {
			if f.Code == plan.PaperMissing && f.Severity == finding.Serious && f.Place.Paper == "plain" {
				said += f.Count
			}
		}
		if pp.Buy() != c.buy || pp.Missing() != c.missing || said != c.missing || inHand(p) != c.fromLeftOvers {
			t.Errorf("%s: %d to buy, %d missing, %d said, %d rolls in hand cut", c.name, pp.Buy(), pp.Missing(), said, inHand(p))
		}
	}
}

// A count for rolls that may begin anywhere holds for any that are opened then:
// planned again with their true starts, the same layout needs no roll more. That
// is what the count promises, so it is asserted in every case. The rooms are
// always the same ones.
func TestOpenedRollsAreEnough(t *testing.T) {
	t.Parallel()
	type asking struct {
		run    *room.Run
		paper  *paper.Paper
		begins []int64 // of the rolls, in millionths of the repeat
	}
	drawn := rapid.Custom(func(t *rapid.T) asking {
		return asking{anyroom.SmallRun(t), anyroom.Paper(t), rapid.SliceOfN(rapid.Int64Range(0, 999_999), 60, 60).Draw(t, "begins")}
	})
	again := 0
	for seed := range 25 {
		q := drawn.Example(seed)
		ta := asked(q.run, *q.paper)
		ta.Cut.Alone = true
		before, err := plan.Make(ta)
		if err != nil || q.paper.Repeat == 0 || len(before.Runs[0].Layout.Choice.NewDrop) > 0 || before.Papers[0].Buy() > len(q.begins) {
			continue // nothing to open, or a layout that cannot be fixed
		}
		p, choice := *q.paper, &before.Runs[0].Layout.Choice
		p.Available = new(int)
		for i := range before.Papers[0].Buy() {
			begins := p.Repeat.Scaled(q.begins[i], 1_000_000)
			p.Rolls = append(p.Rolls, paper.Roll{Name: fmt.Sprint(i), Batch: p.Batch, Length: p.RollLength, Begins: &begins})
		}
		opened := asked(q.run, p)
		opened.Cut.Alone = true
		opened.Runs[0].Fixed = plan.Fixed{Start: &choice.Start, Design: &choice.Design}
		if q.run.Closed {
			opened.Runs[0].Fixed.Kill = &plan.Kill{Kill: choice.Kill}
		}
		if n := made(t, opened).Papers[0].Missing(); n > 0 {
			t.Errorf("room %d: %d pieces are missing from %d rolls that were to be enough", seed, n, len(p.Rolls))
		}
		again++
	}
	if again < 10 {
		t.Errorf("only %d rooms were planned again", again)
	}
}
