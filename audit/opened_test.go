package audit_test

import (
	"testing"

	"firstdrop/audit"
	"firstdrop/cutting"
	"firstdrop/finding"
	"firstdrop/hanging"
	"firstdrop/internal/roomtext"
	"firstdrop/measure"
	"firstdrop/money"
	"firstdrop/paper"
	"firstdrop/plan"
)

func at(l measure.Length) *measure.Length { return &l }

func few(n int) *int { return &n }

// euros is an invented price.
func euros(n int64) money.Amount { return money.Amount{Minor: n * 100, Currency: "EUR"} }

// planOf plans one room in one paper, with rules for cutting.
func planOf(t testing.TB, p paper.Paper, rules plan.CutRules, fixed plan.Fixed, rooms ...string) *plan.Plan {
	t.Helper()
	task := &plan.Task{Papers: []paper.Paper{p}, Rules: hanging.DefaultRules(), Taste: plan.DefaultTaste(), Step: 100 * mm, Cut: rules}
	for i, r := range rooms {
		run := roomtext.Run(r)
		run.Name = string(rune('p' + i))
		task.Runs = append(task.Runs, plan.RunTask{Run: run})
	}
	task.Runs[0].Fixed = fixed
	made, err := plan.Make(task)
	if err != nil {
		t.Fatal(err)
	}
	return made
}

// openedPlans makes plans from rolls that have come, which falsifications start
// from.
var openedPlans = map[string]func(t testing.TB) *plan.Plan{
	// A roll with a flaw, one in two parts, a left-over nobody has looked at, and
	// two sizes to be bought: the four walls take all of them.
	"opened": func(t testing.TB) *plan.Plan {
		p := with(halfDrop, func(p *paper.Paper) {
			p.Price = euros(40)
			p.Also = []paper.Offer{{RollLength: 15 * measure.Metre, Pack: 1, Price: euros(29)}}
			p.Rolls = []paper.Roll{
				{Name: "flawed", Length: 10050 * mm, Begins: at(200 * mm), Flaws: []paper.Flaw{{From: 3300 * mm, To: 3400 * mm}}},
				{Name: "parted", Parts: []paper.RollPart{{Length: 4000 * mm, Begins: at(0)}, {Length: 6000 * mm, Begins: at(420 * mm)}}},
				{Name: "left", Length: 6500 * mm},
			}
		})
		return planOf(t, p, plan.CutRules{Lead: 50 * mm, Loss: 2 * mm, Then: []cutting.Goal{cutting.LongestLeftover}}, plan.Fixed{},
			"closed: A 2600x2400 | B 2000x2400 | C 2600x2400 | D 2000x2400 |")
	},
	// Nothing can be bought, and two batches are there, neither of which is enough.
	"two batches": func(t testing.TB) *plan.Plan {
		p := with(plain, func(p *paper.Paper) {
			p.Batch, p.Available = "one", few(0)
			for i, batch := range []string{"one", "one", "two", "two"} {
				p.Rolls = append(p.Rolls, paper.Roll{Name: string(rune('1' + i)), Batch: batch, Length: 10050 * mm})
			}
		})
		return planOf(t, p, plan.CutRules{}, plan.Fixed{}, "A 2000x2400 | B 1500x2400 | C 2000x2400 | D 1000x2400")
	},
	// Two left-overs of one batch for more than they give.
	"missing": func(t testing.TB) *plan.Plan {
		p := with(plain, func(p *paper.Paper) {
			p.Available = few(0)
			p.Rolls = []paper.Roll{{Name: "1", Length: 10050 * mm}, {Name: "2", Length: 6000 * mm}}
		})
		return planOf(t, p, plan.CutRules{}, plan.Fixed{}, "A 2000x2400 | B 2000x2400")
	},
	// Goods that shade, from one kind of roll, with goals.
	"shading": func(t testing.TB) *plan.Plan {
		p := with(halfDrop, func(p *paper.Paper) { p.InOrder, p.Tolerance.Length = true, 15 })
		return planOf(t, p, plan.CutRules{First: cutting.FewestChanges, Then: []cutting.Goal{cutting.LongestLeftover}}, plan.Fixed{},
			"A 2600x2400 | B 2000x2400 window(500+900 900+1200)")
	},
	// Goods that shade, from rolls in hand and two sizes to be bought in packs.
	"shading opened": func(t testing.TB) *plan.Plan {
		p := with(halfDrop, func(p *paper.Paper) {
			p.InOrder, p.Price = true, euros(20)
			p.Also = []paper.Offer{{RollLength: 15 * measure.Metre, Pack: 1, Price: euros(15)}}
			p.Rolls = []paper.Roll{{Name: "1", Length: 6000 * mm, Begins: at(200 * mm)}, {Name: "2", Length: 6500 * mm}}
		})
		return planOf(t, p, plan.CutRules{}, plan.Fixed{}, "A 2600x2400 | B 2000x2400 window(500+900 900+1200)")
	},
	// Narrow pieces at the window lie beside those at the wall's end.
	"strips": func(t testing.TB) *plan.Plan {
		third := with(halfDrop, func(p *paper.Paper) {
			p.Match.Den, p.Repeat = 3, 530*mm
			p.Tolerance = paper.Tolerance{Length: 15, Width: 15}
		})
		return planOf(t, third, plan.CutRules{Blade: 5 * mm}, plan.Fixed{Start: &hanging.Start{Wall: 1, X: 100 * mm}},
			"A 1500x2400 | B 2300x2400 window(700+900 900+1200)", "A 900x2200")
	},
}

// Plans from rolls that have come are sound, and show what they are for.
func TestOpenedPlansSound(t *testing.T) {
	shows := map[string]func(p *plan.Plan) bool{
		"opened": func(p *plan.Plan) bool {
			used := map[int]bool{}
			for _, r := range p.Papers[0].Batches[0].Cutting.Rolls {
				used[r.Stock] = true
			}
			return used[0] && used[1] && used[2] && p.Papers[0].Buy() > 0
		},
		"two batches": func(p *plan.Plan) bool { return len(p.Papers[0].Batches) == 2 && told(p, plan.BatchChange) },
		"shading": func(p *plan.Plan) bool {
			c := p.Papers[0].Batches[0].Cutting
			return len(c.Certificate.Breaks) > 1 && len(c.Goals) == 3
		},
		"shading opened": func(p *plan.Plan) bool {
			c := p.Papers[0].Batches[0].Cutting
			return c.Certificate.ByOrder > 0 && len(c.Rolls) > 2
		},
		"missing": func(p *plan.Plan) bool { return p.Papers[0].Missing() > 0 && told(p, plan.PaperMissing) },
		"strips":  func(p *plan.Plan) bool { return p.Papers[0].SavedBySide() > 0 && told(p, plan.SideBySide) },
	}
	for name, make := range openedPlans {
		p := make(t)
		for _, v := range audit.Plan(p) {
			t.Errorf("%s: %v", name, v)
		}
		if !shows[name](p) {
			t.Errorf("%s: does not show what it is for: %+v %+v", name, p.Papers[0].Batches, p.Findings)
		}
	}
}

func told(p *plan.Plan, code finding.Code) bool {
	for _, f := range p.Findings {
		if f.Code == code {
			return true
		}
	}
	return false
}
