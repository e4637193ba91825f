package plan_test

import (
	"testing"

	"firstdrop/measure"
	"firstdrop/money"
	"firstdrop/paper"
	"firstdrop/plan"
)

// One extra roll kept for repairs, bought unopened (practice of working paperhangers; also
// federal guide specifications: extra materials). Eight drops of 2.50 m take two rolls of four;
// what is kept comes on top, and leaves alone how they are cut. Counts by hand.
func TestRollsAreKept(t *testing.T) {
	const m = measure.Metre
	n := func(i int) *int { return &i }
	opened := whole(10050 * mm)
	opened.Begins = new(measure.Length)
	for _, c := range []struct {
		name              string
		task              *plan.Task
		keep, pack        int
		available         *int
		rolls, kept, pcks int
		short             int
	}{
		{"none", eight(), 0, 1, nil, 2, 0, 2, 0},
		{"one", eight(), 1, 1, nil, 2, 1, 3, 0},
		{"one, in packs of two", eight(), 1, 2, nil, 2, 1, 2, 0},
		{"two, in packs of two", eight(), 2, 2, nil, 2, 2, 2, 0},
		{"the third of three that are left", eight(), 1, 1, n(3), 2, 1, 3, 0},
		{"two where three are left", eight(), 2, 1, n(3), 2, 1, 3, 1},
		{"one where none is left", eight(), 1, 1, n(2), 2, 0, 2, 1},
		{"all are there, and one more", eight(whole(10050*mm), whole(10050*mm), whole(10050*mm)), 1, 1, nil, 0, 0, 0, 0},
		{"all are there, none more", eight(whole(10050*mm), whole(10050*mm)), 1, 1, nil, 0, 1, 1, 0},
		{"a left-over beside, too short to be a roll", eight(whole(10050*mm), whole(10050*mm), whole(4*m)), 1, 1, nil, 0, 1, 1, 0},
		{"a roll beside that somebody has opened", eight(whole(10050*mm), whole(10050*mm), opened), 1, 1, nil, 0, 1, 1, 0},
	} {
		label := &c.task.Papers[0]
		label.Keep, label.Pack, label.Available = c.keep, c.pack, c.available
		p := made(t, c.task)
		line := p.Papers[0].Orders[0]
		if line.Rolls != c.rolls || line.Kept != c.kept || line.Packs != c.pcks || line.Spare != c.pcks*c.pack-c.rolls-c.kept {
			t.Errorf("%s: %+v", c.name, line)
		}
		if p.Papers[0].Buy() != c.rolls {
			t.Errorf("%s: %d needed", c.name, p.Papers[0].Buy())
		}
		short := 0
		for _, f := range p.Findings {
			if f.Code == plan.KeptShort {
				short = f.Count
			}
		}
		if short != c.short {
			t.Errorf("%s: %d short, want %d", c.name, short, c.short)
		}
	}
}

// What is kept is of the size of which most is cut, if that can be had, else of another.
func TestRollsAreKeptOfTheSizeThatIsCut(t *testing.T) {
	euros := func(n int64) money.Amount { return money.Amount{Minor: 100 * n, Currency: "EUR"} }
	n := func(i int) *int { return &i }
	for _, c := range []struct {
		name      string
		available *int // of the large ones
		kept      [2]int
	}{
		{"as many as wanted", nil, [2]int{0, 1}},
		{"no more than are cut", n(1), [2]int{1, 0}},
	} {
		task := eight()
		label := &task.Papers[0]
		label.Keep, label.Price = 1, euros(20)
		label.Also = []paper.Offer{{RollLength: 25 * measure.Metre, Pack: 1, Price: euros(30), Available: c.available}}
		p := made(t, task)
		if o := p.Papers[0].Orders; o[1].Rolls != 1 || o[0].Kept != c.kept[0] || o[1].Kept != c.kept[1] {
			t.Errorf("%s: %+v", c.name, o)
		}
	}
}
