package audit_test

import (
	"slices"
	"testing"

	"firstdrop/audit"
	"firstdrop/cutting"
	"firstdrop/finding"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/plan"
	"firstdrop/room"
)

func label(p *plan.Plan) *paper.Paper { return &p.Task.Papers[0] }

func theBatch(p *plan.Plan) *plan.BatchPlan { return &p.Papers[0].Batches[0] }

// cutFrom returns the first roll of a kind that is cut in the first batch.
func cutFrom(p *plan.Plan, kind int) *cutting.RollPlan {
	s := theBatch(p).Cutting
	for i := range s.Rolls {
		if s.Rolls[i].Stock == kind {
			return &s.Rolls[i]
		}
	}
	panic("no roll of the kind is cut")
}

// moved moves the last cut of a known roll to a place.
func moved(p *plan.Plan, kind int, to measure.Length) {
	cuts := cutFrom(p, kind).Orders[0].Cuts
	c := &cuts[len(cuts)-1]
	c.From, c.To = to, to+c.To-c.From
}

// shared returns a strip with several pieces.
func shared(p *plan.Plan) plan.Strip {
	for _, s := range theBatch(p).Cuts {
		if len(s) > 1 {
			return s
		}
	}
	panic("no strip is shared")
}

// findingOf returns the first finding of a code.
func findingOf(p *plan.Plan, code finding.Code) *finding.Finding {
	for i := range p.Findings {
		if p.Findings[i].Code == code {
			return &p.Findings[i]
		}
	}
	panic("nothing is told of " + code)
}

func untold(p *plan.Plan, code finding.Code) {
	p.Findings = slices.DeleteFunc(p.Findings, func(f finding.Finding) bool { return f.Code == code })
}

func tell(p *plan.Plan, code finding.Code, count int) {
	p.Findings = append(p.Findings, finding.Finding{Code: code, Count: count, Place: finding.Place{Paper: label(p).Name}})
}

// falsifiedRolls is every kind of falsified plan from rolls that have come, with
// the sound plan it comes from and the rule that it breaks.
var falsifiedRolls = []struct {
	name   string
	plan   string
	break_ func(p *plan.Plan)
	rule   audit.Rule
}{
	// What is asked of cutting.
	{"a roll shorter than measured", "opened", func(p *plan.Plan) { label(p).Rolls[0].Length += mm }, audit.StockFaithful},
	{"a design that begins elsewhere", "opened", func(p *plan.Plan) { *label(p).Rolls[0].Begins += mm }, audit.StockFaithful},
	{"a flaw moved", "opened", func(p *plan.Plan) { label(p).Rolls[0].Flaws[0].From -= mm }, audit.StockFaithful},
	{"a flaw left out", "opened", func(p *plan.Plan) {
		label(p).Rolls[0].Flaws = append(label(p).Rolls[0].Flaws, paper.Flaw{From: 9 * measure.Metre, To: 9100 * mm})
	}, audit.StockFaithful},
	{"a part longer than measured", "opened", func(p *plan.Plan) { label(p).Rolls[1].Parts[0].Length -= mm }, audit.StockFaithful},
	{"a part that begins elsewhere", "opened", func(p *plan.Plan) { *label(p).Rolls[1].Parts[1].Begins += mm }, audit.StockFaithful},
	{"a part made up", "opened", func(p *plan.Plan) { label(p).Rolls[1].Parts = label(p).Rolls[1].Parts[:1] }, audit.StockFaithful},
	{"a start guessed", "opened", func(p *plan.Plan) { label(p).Rolls[2].Begins = at(100 * mm) }, audit.StockFaithful},
	{"a price other than asked", "opened", func(p *plan.Plan) { label(p).Price.Minor++ }, audit.StockFaithful},
	{"another size's price made up", "opened", func(p *plan.Plan) { label(p).Also[0].Price.Minor++ }, audit.StockFaithful},
	{"a pack of another size", "opened", func(p *plan.Plan) { label(p).Pack = 3 }, audit.StockFaithful},
	{"as many as wanted of a few", "opened", func(p *plan.Plan) { label(p).Available = few(9) }, audit.StockFaithful},
	{"a size no longer to be had", "opened", func(p *plan.Plan) { label(p).Also[0].Available = few(0) }, audit.StockFaithful},
	{"another length of roll sold", "opened", func(p *plan.Plan) { label(p).Also[0].RollLength += mm }, audit.StockFaithful},
	{"a roll of another batch", "opened", func(p *plan.Plan) { label(p).Rolls[0].Batch = "two" }, audit.StockFaithful},
	{"a roll overlooked", "opened", func(p *plan.Plan) {
		label(p).Rolls = append(label(p).Rolls, paper.Roll{Name: "more", Length: 3 * measure.Metre})
	}, audit.StockFaithful},
	{"a roll taken for another", "opened", func(p *plan.Plan) { theBatch(p).Kinds[0].Roll = 1 }, audit.StockFaithful},
	{"a roll that is there taken for one to buy", "opened", func(p *plan.Plan) { theBatch(p).Kinds[2] = plan.RollKind{Roll: -1} }, audit.StockFaithful},
	{"a batch by another name", "opened", func(p *plan.Plan) { theBatch(p).Batch = "two" }, audit.StockFaithful},
	{"fewer rolls to be had than as many as wanted", "strips", func(p *plan.Plan) { label(p).Available = few(99) }, audit.StockFaithful},
	{"another length not to be used", "opened", func(p *plan.Plan) { p.Task.Cut.Lead += mm }, audit.SpecFaithful},
	{"another loss at a cut", "opened", func(p *plan.Plan) { p.Task.Cut.Loss = 0 }, audit.SpecFaithful},
	{"goods that shade cut in any order", "opened", func(p *plan.Plan) { label(p).InOrder = true }, audit.SpecFaithful},
	{"a kind of roll not named", "opened", func(p *plan.Plan) { theBatch(p).Kinds = theBatch(p).Kinds[1:] }, audit.Sound},
	{"a roll that is not there", "opened", func(p *plan.Plan) { theBatch(p).Kinds[0].Roll = 3 }, audit.Sound},
	{"an offer that nobody makes", "opened", func(p *plan.Plan) { theBatch(p).Kinds[4].Offer = 2 }, audit.Sound},

	// Cuts on rolls that are not whole.
	{"a cut over a flaw", "opened", func(p *plan.Plan) { moved(p, 0, 3350*mm) }, audit.CutUnbroken},
	{"a cut over a joint", "opened", func(p *plan.Plan) { moved(p, 1, 3900*mm) }, audit.CutUnbroken},
	{"a cut in the beginning of a second part", "opened", func(p *plan.Plan) { moved(p, 1, 4049*mm) }, audit.CutUnbroken},
	{"a cut off its phase on a second part", "opened", func(p *plan.Plan) { moved(p, 1, 5001*mm) }, audit.CutPhase},
	{"a cut in the crease", "opened", func(p *plan.Plan) {
		c := &cutFrom(p, 0).Orders[0].Cuts[0]
		c.From, c.To = 49*mm, 49*mm+c.To-c.From
	}, audit.CutOnRoll},
	{"a cut without its loss", "opened", func(p *plan.Plan) {
		r := &cutFrom(p, sold(p)).Orders[0]
		c := &r.Cuts[1]
		c.From, c.To = r.Cuts[0].To+mm, r.Cuts[0].To+mm+c.To-c.From
	}, audit.CutApart},
	{"a roll that begins elsewhere than planned for", "opened", func(p *plan.Plan) { cutFrom(p, 0).Orders[0].At++ }, audit.StartClass},
	{"two orders for a roll that is open", "opened", func(p *plan.Plan) {
		r := cutFrom(p, 0)
		r.Orders = append(r.Orders, r.Orders[0])
	}, audit.StartClass},
	{"a roll cut twice", "opened", func(p *plan.Plan) { cutFrom(p, 1).Stock = 0 }, audit.StockCount},
	{"a piece missing that is cut", "opened", func(p *plan.Plan) { theBatch(p).Cutting.Missing = []int{0} }, audit.Missing},
	{"a piece missing twice", "missing", func(p *plan.Plan) {
		s := theBatch(p).Cutting
		s.Missing = append(s.Missing, s.Missing[0])
	}, audit.Missing},
	{"a missing piece kept quiet", "missing", func(p *plan.Plan) { s := theBatch(p).Cutting; s.Missing = s.Missing[1:] }, audit.CutPieces},
	{"a missing piece that is none", "missing", func(p *plan.Plan) { theBatch(p).Cutting.Missing[0] = 99 }, audit.Sound},

	// Cost and proof with several kinds of roll.
	{"a cost understated", "opened", func(p *plan.Plan) { theBatch(p).Cutting.Cost-- }, audit.Cost},
	{"missing pieces that cost nothing", "missing", func(p *plan.Plan) { theBatch(p).Cutting.Cost = 0 }, audit.Cost},
	{"a cost made up for one kind of roll", "strips", func(p *plan.Plan) { theBatch(p).Cutting.Cost++ }, audit.Cost},
	{"a bound above the cost", "opened", func(p *plan.Plan) { theBatch(p).Cutting.CostBound++ }, audit.Bound},
	{"a bound on the cost of one kind of roll", "strips", func(p *plan.Plan) { theBatch(p).Cutting.CostBound-- }, audit.Bound},
	{"proven with a gap", "opened", func(p *plan.Plan) { theBatch(p).Cutting.CostBound--; theBatch(p).Cutting.Proven = true }, audit.Proven},
	{"rolls to buy bounded too high", "opened", func(p *plan.Plan) { theBatch(p).Cutting.LowerBound = p.Papers[0].Buy() + 1 }, audit.Bound},
	{"fewer rolls than none", "missing", func(p *plan.Plan) { theBatch(p).Cutting.LowerBound = -1 }, audit.Bound},
	{"a kind's capacity understated", "opened", func(p *plan.Plan) { theBatch(p).Cutting.Certificate.Capacities[4] /= 2 }, audit.Certificate},
	{"a flawed roll's capacity understated", "opened", func(p *plan.Plan) { theBatch(p).Cutting.Certificate.Capacities[0] /= 2 }, audit.Certificate},
	{"a capacity left out", "opened", func(p *plan.Plan) {
		c := &theBatch(p).Cutting.Certificate
		c.Capacities = c.Capacities[:4]
	}, audit.Certificate},
	{"a start left out", "opened", func(p *plan.Plan) { c := &theBatch(p).Cutting.Certificate; c.Starts = c.Starts[:4] }, audit.Certificate},
	{"a weight too heavy", "opened", func(p *plan.Plan) { theBatch(p).Cutting.Certificate.Weights[0] *= 3 }, audit.Certificate},
	{"a cost that the weights do not prove", "opened", func(p *plan.Plan) {
		c := theBatch(p).Cutting
		c.Certificate.ByCost = c.Cost + 100
	}, audit.Bound},
	{"a bound between weights and cost", "opened", func(p *plan.Plan) {
		c := theBatch(p).Cutting
		c.CostBound, c.Certificate.ByCost, c.Proven = c.Cost-1, 0, false
	}, audit.Bound},

	// Goods that shade, and goals.
	{"a piece cut before its turn", "shading", func(p *plan.Plan) {
		for i := range theBatch(p).Cutting.Rolls[0].Orders {
			c := theBatch(p).Cutting.Rolls[0].Orders[i].Cuts
			c[0].Piece, c[1].Piece = c[1].Piece, c[0].Piece
		}
	}, audit.InOrder},
	{"rolls out of turn", "shading", func(p *plan.Plan) {
		r := theBatch(p).Cutting.Rolls
		r[0], r[1] = r[1], r[0]
	}, audit.InOrder},
	{"an order of its own for some starts", "shading", func(p *plan.Plan) {
		r := &theBatch(p).Cutting.Rolls[1]
		o := r.Orders[0]
		o.Cuts = slices.Clone(o.Cuts)
		slices.Reverse(o.Cuts)
		r.Orders = append(r.Orders, o)
	}, audit.InOrder},
	{"a break left out", "shading", func(p *plan.Plan) {
		c := &theBatch(p).Cutting.Certificate
		c.Breaks = c.Breaks[1:]
	}, audit.Bound},
	{"a break too near", "shading", func(p *plan.Plan) { theBatch(p).Cutting.Certificate.Breaks[1]-- }, audit.Certificate},
	{"breaks out of order", "shading", func(p *plan.Plan) { slices.Reverse(theBatch(p).Cutting.Certificate.Breaks) }, audit.Certificate},
	{"a break beyond the pieces", "shading", func(p *plan.Plan) {
		b := theBatch(p).Cutting.Certificate.Breaks
		b[len(b)-1] = 99
	}, audit.Certificate},
	{"a break made up, and the bound with it", "shading", func(p *plan.Plan) {
		c := theBatch(p).Cutting
		c.Certificate.Breaks = append(c.Certificate.Breaks, len(theBatch(p).Cuts)-1)
		c.LowerBound++
		c.CostBound++
	}, audit.Bound},
	{"a least cost in order made up", "shading opened", func(p *plan.Plan) {
		c := theBatch(p).Cutting
		c.Cost++
		c.CostBound++
		c.Certificate.ByOrder++
	}, audit.Certificate},
	{"a bound that the cheapest order does not give", "shading opened", func(p *plan.Plan) { theBatch(p).Cutting.Certificate.ByOrder-- }, audit.Bound},
	{"rolls in hand out of turn", "shading opened", func(p *plan.Plan) {
		r := theBatch(p).Cutting.Rolls
		slices.Reverse(r)
	}, audit.InOrder},
	{"a left-over too long", "opened", func(p *plan.Plan) { theBatch(p).Cutting.Goals[0].Value++ }, audit.Goals},
	{"a left-over bounded too short", "opened", func(p *plan.Plan) { g := &theBatch(p).Cutting.Goals[0]; g.Bound = g.Value - 1 }, audit.Goals},
	{"a goal proven with a gap", "opened", func(p *plan.Plan) {
		g := &theBatch(p).Cutting.Goals[0]
		g.Bound, g.Proven = g.Value+1, true
	}, audit.Goals},
	{"changes of roll miscounted", "shading", func(p *plan.Plan) { theBatch(p).Cutting.Goals[0].Value--; theBatch(p).Cutting.Goals[0].Bound-- }, audit.Goals},
	{"changes bounded too high", "shading", func(p *plan.Plan) { theBatch(p).Cutting.Goals[0].Bound++ }, audit.Goals},
	{"rolls miscounted as a goal", "shading", func(p *plan.Plan) { theBatch(p).Cutting.Goals[1].Value++ }, audit.Goals},
	{"a goal not told of", "shading", func(p *plan.Plan) { c := theBatch(p).Cutting; c.Goals = c.Goals[:2] }, audit.Goals},
	{"goals in another order", "shading", func(p *plan.Plan) { g := theBatch(p).Cutting.Goals; g[0], g[1] = g[1], g[0] }, audit.Goals},
	{"a goal nobody asked for", "opened", func(p *plan.Plan) { p.Task.Cut.Then = nil }, audit.Goals},
	{"a goal that there is none of", "opened", func(p *plan.Plan) { theBatch(p).Cutting.Goals[0].Goal = 9 }, audit.Goals},
	{"rolls in hanging order miscounted", "strips", func(p *plan.Plan) { p.Papers[0].InOrderRolls++ }, audit.InOrderCount},
	{"rolls in hanging order said to be fewer", "opened", func(p *plan.Plan) { p.Papers[0].InOrderRolls = 0 }, audit.InOrderCount},
	{"rolls in hanging order of two batches", "two batches", func(p *plan.Plan) { p.Papers[0].InOrderRolls++ }, audit.InOrderCount},

	// Strips.
	{"a piece off its phase on a strip", "strips", func(p *plan.Plan) { shared(p)[0].Offset += mm }, audit.SpecFaithful},
	{"a piece that begins before its strip", "strips", func(p *plan.Plan) { shared(p)[1].Offset -= 530 * mm }, audit.SpecFaithful},
	{"a piece in the wrong place on a strip", "strips", func(p *plan.Plan) { s := shared(p); s[0], s[1] = s[1], s[0] }, audit.Strips},
	{"pieces too near to be cut apart", "strips", func(p *plan.Plan) { p.Task.Cut.Blade = 400 * mm }, audit.Strips},
	{"strips that the task forbids", "strips", func(p *plan.Plan) { p.Task.Cut.Alone = true }, audit.Strips},
	{"strips of goods that shade", "strips", func(p *plan.Plan) { label(p).InOrder = true }, audit.Strips},
	{"strips that save nobody knows what", "strips", func(p *plan.Plan) { theBatch(p).Apart = nil }, audit.Strips},
	{"strips that save nothing", "strips", func(p *plan.Plan) { theBatch(p).Apart = theBatch(p).Cutting }, audit.Strips},
	{"pieces cut alone that are others", "strips", func(p *plan.Plan) {
		q := &p.Runs[0].Layout.Pieces[0]
		q.Length += mm
	}, audit.Strips},
	{"a piece given by two strips", "strips", func(p *plan.Plan) { shared(p)[0].PieceRef = theBatch(p).Cuts[0][0].PieceRef }, audit.SpecFaithful},
	{"a narrow piece given by none", "strips", func(p *plan.Plan) {
		cuts := theBatch(p).Cuts
		i := slices.IndexFunc(cuts, func(s plan.Strip) bool { return len(s) > 1 })
		cuts[i] = cuts[i][:1]
	}, audit.SpecFaithful},
	{"a strip of nothing", "strips", func(p *plan.Plan) { theBatch(p).Cuts[0] = nil }, audit.Sound},
	{"a piece of no layout", "strips", func(p *plan.Plan) { shared(p)[0].Piece = 99 }, audit.Sound},

	// Batches.
	{"a drop of another batch on a wall", "two batches", func(p *plan.Plan) {
		a, b := p.Papers[0].Batches[0].Cuts, p.Papers[0].Batches[1].Cuts
		a[0], b[0] = b[0], a[0]
	}, audit.Batches},
	{"a batch listed twice", "two batches", func(p *plan.Plan) { p.Papers[0].Batches[1].Batch = "one" }, audit.Batches},
	{"batches that meet at an outside corner", "two batches", func(p *plan.Plan) {
		for i := range p.Runs[0].Layout.Run.Corners {
			p.Runs[0].Layout.Run.Corners[i].Kind = room.Outside
		}
	}, audit.Batches},
	{"batches that meet round a corner", "two batches", func(p *plan.Plan) {
		l := p.Runs[0].Layout
		d := &l.Drops[len(l.Drops)-1]
		on := d.Parts[0]
		on.Wall = 0
		d.Parts = append(d.Parts, on)
	}, audit.Batches},
	{"a change of batch not told", "two batches", func(p *plan.Plan) { untold(p, plan.BatchChange) }, audit.Findings},
	{"a change of batch told twice", "two batches", func(p *plan.Plan) {
		p.Findings = append(p.Findings, *findingOf(p, plan.BatchChange))
	}, audit.Findings},
	{"a change of batch told elsewhere", "two batches", func(p *plan.Plan) { findingOf(p, plan.BatchChange).Place.Corner = "D|A" }, audit.Findings},
	{"a change to a batch that does not come", "two batches", func(p *plan.Plan) {
		f := findingOf(p, plan.BatchChange)
		f.Word = map[string]string{"one": "two", "two": "one"}[f.Word]
	}, audit.Findings},
	{"a change of batch where there is one batch", "opened", func(p *plan.Plan) { tell(p, plan.BatchChange, 0) }, audit.Findings},

	// What people are told of the rolls, and counts.
	{"missing paper not told", "missing", func(p *plan.Plan) { untold(p, plan.PaperMissing) }, audit.Findings},
	{"missing paper told too small", "missing", func(p *plan.Plan) { findingOf(p, plan.PaperMissing).Count-- }, audit.Findings},
	{"missing paper where there is enough", "opened", func(p *plan.Plan) { tell(p, plan.PaperMissing, 1) }, audit.Findings},
	{"a saving not told", "strips", func(p *plan.Plan) { untold(p, plan.SideBySide) }, audit.Findings},
	{"a saving told too great", "strips", func(p *plan.Plan) { findingOf(p, plan.SideBySide).Count++ }, audit.Findings},
	{"a plan said to be unproven", "strips", func(p *plan.Plan) { tell(p, plan.Unproven, 1) }, audit.Findings},
	{"short rolls that make no odds", "strips", func(p *plan.Plan) { tell(p, plan.FullLength, 3); tell(p, plan.FullLength, 3) }, audit.Findings},
	{"an area set against rolls in hand", "opened", func(p *plan.Plan) { tell(p, plan.AreaMisleads, 1) }, audit.Findings},
	{"a size not ordered", "opened", func(p *plan.Plan) { p.Papers[0].Orders = p.Papers[0].Orders[:1] }, audit.Quantities},
	{"a second size miscounted", "opened", func(p *plan.Plan) { p.Papers[0].Orders[1].Rolls++ }, audit.Quantities},
	{"a second size of another length", "opened", func(p *plan.Plan) { p.Papers[0].Orders[1].RollLength += mm }, audit.Quantities},
	{"a second size at another cost", "opened", func(p *plan.Plan) { p.Papers[0].Orders[1].Cost.Minor++ }, audit.Quantities},
	{"full drops miscounted", "opened", func(p *plan.Plan) { p.Papers[0].FullDropRolls++ }, audit.FullDropCount},
	{"short rolls below the bound", "strips", func(p *plan.Plan) { p.Papers[0].ShortRolls = 1 }, audit.ShortCount},
}

// sold is a kind of roll that is bought in the plan "opened".
func sold(p *plan.Plan) int {
	return slices.IndexFunc(theBatch(p).Kinds, func(k plan.RollKind) bool {
		return k.Roll < 0 && p.Papers[0].Orders[k.Offer].Rolls > 0
	})
}

func TestRollsFalsified(t *testing.T) {
	for _, tt := range falsifiedRolls {
		p := openedPlans[tt.plan](t)
		if vs := audit.Plan(p); len(vs) > 0 {
			t.Fatalf("%s: not sound before: %v", tt.name, vs[0])
		}
		tt.break_(p)
		if vs := audit.Plan(p); !breaks(vs, tt.rule) {
			t.Errorf("%s: violations %v, want one of %q", tt.name, vs, tt.rule)
		}
	}
	if len(falsifiedRolls) < 60 {
		t.Errorf("only %d falsifications", len(falsifiedRolls))
	}
}
