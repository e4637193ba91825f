package audit_test

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"slices"
	"strconv"
	"testing"

	"firstdrop/audit"
	"firstdrop/cutting"
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/internal/roomtext"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/plan"
)

const nm = measure.Nanometre

// falsifiedLayouts is every kind of falsified layout that must be caught, with
// the rule that it breaks.
var falsifiedLayouts = []struct {
	name   string
	layout func() *hanging.Layout
	break_ func(l *hanging.Layout)
	rule   audit.Rule
}{
	{"a drop index skipped", fourWalls, func(l *hanging.Layout) { l.Drops[5].Index++ }, audit.DropOrder},
	{"drop 0 off its start", fourWalls, func(l *hanging.Layout) { l.Choice.Start.X += nm }, audit.DropOrder},
	{"a wall left out", fourWalls, func(l *hanging.Layout) { l.Drops[3].Parts[1].Wall = 2 }, audit.DropOrder},
	{"reversed flag flipped", reversed, func(l *hanging.Layout) { l.Drops[1].Reversed = false }, audit.Reversal},
	{"reversed without the label saying so", fourWalls, func(l *hanging.Layout) { l.Drops[1].Reversed = true }, audit.Reversal},
	{"a part not rigid", fourWalls, func(l *hanging.Layout) { l.Drops[3].Parts[1].Across.Hi -= nm }, audit.Rigid},
	{"a part beyond the paper's width", fourWalls, func(l *hanging.Layout) { l.Drops[13].Parts[0].Across = geom.Interval{Lo: 410 * mm, Hi: 531 * mm} }, audit.Width},
	{"paper lost within a drop", fourWalls, func(l *hanging.Layout) {
		p := &l.Drops[3].Parts[1]
		p.Across.Lo += mm
		p.X.Hi -= mm
	}, audit.Width},
	{"a drop begun within its width", fourWalls, func(l *hanging.Layout) {
		l.Drops[4].Parts[0].Across.Lo += mm
		l.Drops[4].Parts[0].X.Lo += mm
	}, audit.Width},
	{"a lean of the sheets off by 1 nm", alongTheCeiling, func(l *hanging.Layout) { l.Turns[0].Lean += nm }, audit.Turned},
	{"a lift of the design off by 1 nm", alongTheCeiling, func(l *hanging.Layout) { l.Turns[1].Lift += nm }, audit.Turned},
	{"walls turned that are set plumb", alongTheCeiling, func(l *hanging.Layout) { l.Choice.Set = nil }, audit.Turned},
	{"a wall set otherwise than it is turned", alongTheCeiling, func(l *hanging.Layout) { l.Choice.Set[0].Meets = hanging.MeetRight }, audit.Turned},
	{"a step of the design hidden", alongTheCeiling, func(l *hanging.Layout) {
		for i := range l.Seams {
			l.Seams[i].Along = 0
		}
	}, audit.SeamMisfit},
	{"a skew left out", turnedWhole, func(l *hanging.Layout) { l.Drops[0].Parts[1].Skew = 0 }, audit.Skew},
	{"a fold off the corner", turnedWhole, func(l *hanging.Layout) { l.Drops[0].Parts[1].X.Lo += nm }, audit.Skew},
	{"a wrap dropped at a corner", fourWalls, func(l *hanging.Layout) {
		p := &l.Drops[3].Parts[0]
		p.X.Hi -= 12 * mm
		p.Across.Hi -= 12 * mm
		q := &l.Drops[3].Parts[1]
		q.Across.Lo -= 12 * mm
		q.X.Hi += 12 * mm
	}, audit.Corner},
	{"a remainder off the corner", leaningCorners, func(l *hanging.Layout) { l.Drops[6].Parts[1].X.Lo += 6 * mm }, audit.Corner},
	{"a remainder carried that turns whole", turnedWhole, func(l *hanging.Layout) { l.Drops[0].Parts[1].Joined = false }, audit.Corner},
	{"a remainder turned whole that is carried", fourWalls, func(l *hanging.Layout) { l.Drops[3].Parts[1].Joined = true }, audit.Corner},
	{"a new drop nobody chose", fourWalls, func(l *hanging.Layout) { l.Choice.NewDrop = []int{0} }, audit.Corner},
	{"an outside corner out of plumb papered round", outsideCorners, func(l *hanging.Layout) { l.Drops[2].Parts[1].X.Hi += 200 * mm }, audit.Corner},
	{"a wide wrap too narrow", outsideCorners, func(l *hanging.Layout) { l.Drops[2].Parts[1].X.Hi -= mm }, audit.Corner},
	{"a lap at the kill too short", fourWalls, func(l *hanging.Layout) {
		l.Drops[0].Parts[0].X.Lo += mm
		l.Drops[0].Parts[0].Across.Lo += mm
	}, audit.End},
	{"a last drop too short", fourWalls, func(l *hanging.Layout) { l.Drops[13].Parts[0].X.Hi -= mm }, audit.End},
	{"a strip left bare", fourWalls, func(l *hanging.Layout) { l.Drops[2].Parts[0].X.Lo += nm }, audit.Coverage},
	{"a leaning strip left bare", turnedWhole, func(l *hanging.Layout) { l.Drops[1].Parts[0].X.Lo += nm }, audit.Coverage},
	{"a strip covered twice", fourWalls, func(l *hanging.Layout) { l.Drops[2].Parts[0].X.Lo -= nm }, audit.DoubleCover},
	{"a lap wider than the lean", turnedWhole, func(l *hanging.Layout) { l.Drops[1].Parts[0].X.Lo -= nm }, audit.DoubleCover},
	{"a missing seam", fourWalls, func(l *hanging.Layout) { l.Seams = slices.Delete(l.Seams, 6, 7) }, audit.SeamMissing},
	{"a missing kill seam", fourWalls, func(l *hanging.Layout) { l.Seams = l.Seams[:16] }, audit.SeamMissing},
	{"a seam twice", fourWalls, func(l *hanging.Layout) { l.Seams = append(l.Seams, l.Seams[2]) }, audit.SeamExtra},
	{"seams out of order", fourWalls, func(l *hanging.Layout) { l.Seams[1], l.Seams[2] = l.Seams[2], l.Seams[1] }, audit.SeamExtra},
	{"a kill seam where none is chosen", fourWalls, func(l *hanging.Layout) { l.Seams[4].Kind = hanging.KillSeam }, audit.SeamKind},
	{"a carried seam called butted", fourWalls, func(l *hanging.Layout) { l.Seams[3].Kind = hanging.Butt }, audit.SeamKind},
	{"a shifted seam", fourWalls, func(l *hanging.Layout) { l.Seams[1].X += nm }, audit.SeamPlace},
	{"a seam put out of its corner", fourWalls, func(l *hanging.Layout) { l.Seams[3].InCorner = false }, audit.SeamPlace},
	{"a false misfit", fourWalls, func(l *hanging.Layout) { l.Seams[1].Across.Hi = nm }, audit.SeamMisfit},
	{"a hidden misfit", fourWalls, func(l *hanging.Layout) { l.Seams[3].Across = geom.Interval{} }, audit.SeamMisfit},
	{"a misfit that hides the lean", leaningCorners, func(l *hanging.Layout) { l.Seams[3].Across.Hi = 0 }, audit.SeamMisfit},
	{"a misfit along hidden at the kill", halfDropRoom, func(l *hanging.Layout) { l.Seams[len(l.Seams)-1].Along = 0 }, audit.SeamMisfit},
	{"a plumb line moved", fourWalls, func(l *hanging.Layout) { l.Plumbs[1].X += nm }, audit.PlumbLine},
	{"a plumb line left out", fourWalls, func(l *hanging.Layout) { l.Plumbs = slices.Delete(l.Plumbs, 2, 3) }, audit.PlumbLine},
	{"a plumb line for the wrong edge", fourWalls, func(l *hanging.Layout) { l.Plumbs[1].Edge = hanging.Left }, audit.PlumbLine},
	{"a plumb line for a drop that is butted", fourWalls, func(l *hanging.Layout) { l.Plumbs[1].Drop, l.Plumbs[1].Part, l.Plumbs[1].X = 4, 0, 638*mm }, audit.PlumbLine},
	{"a plumb line in a cupboard", betweenCupboards, func(l *hanging.Layout) { l.Plumbs[0].X, l.Plumbs[0].Beyond = 980*mm, 0 }, audit.PlumbLine},
	{"a plumb line in the other cupboard", betweenCupboards, func(l *hanging.Layout) { l.Plumbs[0].X, l.Plumbs[0].Beyond = 500*mm, 480*mm }, audit.PlumbLine},
	{"a drop butted in a cupboard", pastACupboard, func(l *hanging.Layout) { l.Plumbs = l.Plumbs[:1] }, audit.PlumbLine},
	{"an edge that stands elsewhere than beyond its line", betweenCupboards, func(l *hanging.Layout) { l.Plumbs[0].Beyond += nm }, audit.PlumbLine},
	{"a plumb line inside a drop whose edge is on the wall", fourWalls, func(l *hanging.Layout) { l.Plumbs[1].X -= mm; l.Plumbs[1].Beyond = mm }, audit.PlumbLine},
	{"plumb lines out of order", fourWalls, func(l *hanging.Layout) { l.Plumbs[1], l.Plumbs[2] = l.Plumbs[2], l.Plumbs[1] }, audit.PlumbLine},
	{"a missing piece", doorAndWindow, func(l *hanging.Layout) { l.Pieces = slices.Delete(l.Pieces, 1, 2) }, audit.PieceSet},
	{"a piece twice", doorAndWindow, func(l *hanging.Layout) { l.Pieces = append(l.Pieces, l.Pieces[1]) }, audit.PieceSet},
	{"two pieces made one", doorAndWindow, func(l *hanging.Layout) {
		l.Pieces[7].Y.Lo = 0
		l.Pieces = slices.Delete(l.Pieces, 8, 9)
	}, audit.PieceSet},
	{"a piece that stops short of the ceiling", fourWalls, func(l *hanging.Layout) { l.Pieces[4].Y.Hi -= nm }, audit.PieceNeed},
	{"a piece that stops short of a slope", reversed, func(l *hanging.Layout) { l.Pieces[1].Y.Hi -= nm }, audit.PieceNeed},
	{"a piece beside a lean that reaches over the ceiling", turnedWhole, func(l *hanging.Layout) { l.Pieces[0].Y.Hi += mm }, audit.PieceNeed},
	{"a piece that needs more width than it says", fourWalls, func(l *hanging.Layout) { l.Pieces[0].Across.Lo += nm }, audit.PieceNeed},
	{"a wrong length by 1 nm", fourWalls, func(l *hanging.Layout) { l.Pieces[6].Length -= nm }, audit.PieceLength},
	{"a piece without its allowance", fourWalls, func(l *hanging.Layout) { l.Pieces[6].Length -= 50 * mm }, audit.PieceLength},
	{"a length not rounded up", reversed, func(l *hanging.Layout) { l.Rules.CutStep = 7 * mm }, audit.PieceLength},
	{"a wrong phase", twoWalls, func(l *hanging.Layout) { l.Pieces[2].Phase += nm }, audit.PiecePhase},
	{"the design half a repeat too high", twoWalls, func(l *hanging.Layout) { l.Choice.Design -= 320 * mm }, audit.PiecePhase},
	{"a reversed drop led by its head", reversed, func(l *hanging.Layout) { l.Pieces[1].Lead = 2185 * mm }, audit.PiecePhase},
	{"a return left bare", doorAndWindow, func(l *hanging.Layout) { l.Pieces = slices.Delete(l.Pieces, 5, 6) }, audit.Returns},
	{"a return covered twice", doorAndWindow, func(l *hanging.Layout) { l.Pieces[5].Return.Side = hanging.LeftReveal }, audit.Returns},
	{"a return that is not papered", doorAndWindow, func(l *hanging.Layout) { l.Run.Walls[0].Openings[1].Sides.Sill = false }, audit.Returns},
	{"numbering swapped", fourWalls, func(l *hanging.Layout) { l.Drops[2].Number, l.Drops[9].Number = 10, 3 }, audit.Numbering},
	{"a number given twice", fourWalls, func(l *hanging.Layout) { l.Drops[2].Number = 4 }, audit.Numbering},
	{"not begun with drop 0", twoWalls, func(l *hanging.Layout) {
		for i := range l.Drops {
			l.Drops[i].Number = i + 1
		}
	}, audit.Numbering},
	{"pieces out of order", fourWalls, func(l *hanging.Layout) { l.Pieces[3], l.Pieces[4] = l.Pieces[4], l.Pieces[3] }, audit.Naming},
	{"a piece misnamed", doorAndWindow, func(l *hanging.Layout) { l.Pieces[3].Name = "4" }, audit.Naming},
	{"no paper", fourWalls, func(l *hanging.Layout) { l.Paper = nil }, audit.Sound},
	{"a seam between drops that are not there", fourWalls, func(l *hanging.Layout) { l.Seams[2].Right = 14 }, audit.Sound},
	{"a length beyond measure", fourWalls, func(l *hanging.Layout) { l.Drops[2].Parts[0].X.Hi = 1 << 62 }, audit.Sound},
}

func TestLayoutFalsified(t *testing.T) {
	for _, tt := range falsifiedLayouts {
		l := tt.layout()
		if vs := audit.Layout(l); len(vs) > 0 {
			t.Fatalf("%s: not sound before: %v", tt.name, vs[0])
		}
		tt.break_(l)
		if vs := audit.Layout(l); !breaks(vs, tt.rule) {
			t.Errorf("%s: violations %v, want one of %q", tt.name, vs, tt.rule)
		}
	}
}

func breaks(vs []audit.Violation, rule audit.Rule) bool {
	return slices.ContainsFunc(vs, func(v audit.Violation) bool { return v.Rule == rule })
}

// halfDropRoom is the room of fourWalls in a half drop: 14 drops are hung, and
// the misfit of 13 whole widths at the kill is half a repeat.
func halfDropRoom() *hanging.Layout {
	l := fourWalls()
	l.Paper = &halfDrop
	for i := range l.Pieces {
		p := &l.Pieces[i]
		p.Phase = (320*mm*measure.Length(p.Drop%2) - p.Lead + 4*640*mm) % (640 * mm)
	}
	l.Seams[len(l.Seams)-1].Along = 320 * mm
	return l
}

func order(p *plan.Plan, roll int) *cutting.Order {
	return &p.Papers[0].Batches[0].Cutting.Rolls[roll].Orders[0]
}

// falsifiedPlans is every kind of falsified plan that must be caught, with the
// sound plan it comes from and the rule that it breaks.
var falsifiedPlans = []struct {
	name   string
	plan   string
	break_ func(p *plan.Plan)
	rule   audit.Rule
}{
	{"other rules than asked for", "four walls", func(p *plan.Plan) { p.Task.Rules.Head = 60 * mm }, audit.Faithful},
	{"another start than fixed", "four walls", func(p *plan.Plan) { p.Task.Runs[0].Fixed.Start = &hanging.Start{X: 1} }, audit.Faithful},
	{"another design height than fixed", "two walls", func(p *plan.Plan) { d := 0 * mm; p.Task.Runs[0].Fixed.Design = &d }, audit.Faithful},
	{"a kill seam elsewhere than fixed", "four walls", func(p *plan.Plan) {
		p.Task.Runs[0].Fixed.Kill = &plan.Kill{Kill: hanging.Kill{Kind: hanging.AtCorner, Wall: 1}, Free: true}
	}, audit.Faithful},
	{"a centre line missed", "two walls", func(p *plan.Plan) { p.Task.Runs[0].Fixed.Centre = &plan.Centre{X: 664 * mm} }, audit.Faithful},
	{"a layout missing", "four walls", func(p *plan.Plan) { p.Runs = nil }, audit.Sound},
	{"a piece of the layout not cut", "four walls", func(p *plan.Plan) { c := p.Papers[0].Batches[0].Cuts; c[0] = c[1] }, audit.SpecFaithful},
	{"a piece of the layout cut twice", "four walls", func(p *plan.Plan) { p.Papers[0].Batches[0].Cuts[3][0].Piece = 4 }, audit.SpecFaithful},
	{"pieces exchanged", "two walls", func(p *plan.Plan) { q := p.Papers[0].Batches[0].Cuts; q[0], q[1] = q[1], q[0] }, audit.SpecFaithful},
	{"rolls longer than the label says", "four walls", func(p *plan.Plan) { p.Task.Papers[0].RollLength = 10 * measure.Metre }, audit.StockFaithful},
	{"a piece cut from no roll", "four walls", func(p *plan.Plan) { o := order(p, 1); o.Cuts = o.Cuts[:3] }, audit.CutPieces},
	{"a piece cut twice", "four walls", func(p *plan.Plan) { order(p, 1).Cuts[0].Piece = 0 }, audit.CutPieces},
	{"a short cut", "four walls", func(p *plan.Plan) { order(p, 0).Cuts[1].To -= nm }, audit.CutLength},
	{"a cut off the roll's end", "four walls", func(p *plan.Plan) {
		c := &order(p, 0).Cuts[3]
		c.From, c.To = c.From+51*mm, c.To+51*mm
	}, audit.CutOnRoll},
	{"a cut before the roll's beginning", "four walls", func(p *plan.Plan) {
		c := &order(p, 0).Cuts[0]
		c.From, c.To = c.From-nm, c.To-nm
	}, audit.CutOnRoll},
	{"two cuts overlapping", "four walls", func(p *plan.Plan) {
		c := &order(p, 0).Cuts[1]
		c.From, c.To = c.From-nm, c.To-nm
	}, audit.CutApart},
	{"a cut off its phase", "two walls", func(p *plan.Plan) {
		c := &order(p, 0).Cuts[2]
		c.From, c.To = c.From+nm, c.To+nm
	}, audit.CutPhase},
	{"a start class with a hole", "two walls", func(p *plan.Plan) { order(p, 0).UpTo -= nm }, audit.StartClass},
	{"cuts not given for the worst start", "two walls", func(p *plan.Plan) {
		o := order(p, 0)
		o.At += 100 * mm
		for i := range o.Cuts {
			o.Cuts[i].From, o.Cuts[i].To = o.Cuts[i].From-100*mm, o.Cuts[i].To-100*mm
		}
	}, audit.StartClass},
	{"an order that some starts do not fit", "two walls", func(p *plan.Plan) {
		o, from := order(p, 0), order(p, 1)
		o.Cuts = append(o.Cuts, from.Cuts[0])
	}, audit.Replay},
	{"a bound claimed too high", "four walls", func(p *plan.Plan) { p.Papers[0].Batches[0].Cutting.LowerBound++ }, audit.Bound},
	{"a bound that the weights do not give", "four walls", func(p *plan.Plan) { c := p.Papers[0].Batches[0].Cutting; c.LowerBound--; c.Certificate.ByWeights-- }, audit.Bound},
	{"proven claimed falsely", "four walls", func(p *plan.Plan) {
		c := p.Papers[0].Batches[0].Cutting
		c.Certificate.Weights[0], c.Certificate.Weights[1] = 0, 0
		c.Certificate.ByWeights, c.LowerBound = 3, 3
	}, audit.Proven},
	{"a proof not claimed", "four walls", func(p *plan.Plan) { p.Papers[0].Batches[0].Cutting.Proven = false }, audit.Proven},
	{"certificate weights inflated", "four walls", func(p *plan.Plan) { p.Papers[0].Batches[0].Cutting.Certificate.Weights[5] = 2 }, audit.Certificate},
	{"a capacity understated", "two walls", func(p *plan.Plan) {
		c := p.Papers[0].Batches[0].Cutting
		c.Certificate.Capacity, c.Certificate.ByWeights, c.LowerBound = 2, 3, 3
	}, audit.Certificate},
	{"a negative weight", "four walls", func(p *plan.Plan) { p.Papers[0].Batches[0].Cutting.Certificate.Weights[5] = -1 }, audit.Certificate},
	{"a drop forgotten", "four walls", func(p *plan.Plan) { p.Papers[0].Drops-- }, audit.Quantities},
	{"rolls to spare wrong", "two walls", func(p *plan.Plan) { p.Papers[0].Orders[0].Spare++ }, audit.Quantities},
	{"rolls to be kept forgotten", "two walls", func(p *plan.Plan) { p.Task.Papers[0].Keep = 1 }, audit.Quantities},
	{"rolls kept that nobody asked for", "two walls", func(p *plan.Plan) {
		p.Papers[0].Orders[0].Kept, p.Papers[0].Orders[0].Spare = 1, p.Papers[0].Orders[0].Spare-1
	}, audit.Quantities},
	{"a cost made up", "two walls", func(p *plan.Plan) { p.Papers[0].Orders[0].Cost.Minor++ }, audit.Quantities},
	{"packs wrong", "two walls", func(p *plan.Plan) { p.Papers[0].Orders[0].Packs++ }, audit.Quantities},
	{"net area falsified", "four walls", func(p *plan.Plan) { p.Papers[0].Net += measure.SquareMillimetre }, audit.NetArea},
	{"area estimate falsified", "four walls", func(p *plan.Plan) { p.Papers[0].AreaRolls-- }, audit.AreaCount},
	{"short rolls said to need fewer", "four walls", func(p *plan.Plan) { p.Papers[0].ShortRolls-- }, audit.ShortCount},
	{"short rolls said to be too short", "four walls", func(p *plan.Plan) { p.Papers[0].ShortRolls = 0 }, audit.ShortCount},
}

func TestPlanFalsified(t *testing.T) {
	for _, tt := range falsifiedPlans {
		p := plans[tt.plan](t)
		if vs := audit.Plan(p); len(vs) > 0 {
			t.Fatalf("%s: not sound before: %v", tt.name, vs[0])
		}
		tt.break_(p)
		if vs := audit.Plan(p); !breaks(vs, tt.rule) {
			t.Errorf("%s: violations %v, want one of %q", tt.name, vs, tt.rule)
		}
	}
}

// No rule is there that no falsification breaks: a rule that cannot be broken
// judges nothing.
func TestEveryRuleIsBroken(t *testing.T) {
	file, err := parser.ParseFile(token.NewFileSet(), "violation.go", nil, 0)
	if err != nil {
		t.Fatal(err)
	}
	broken := map[string]bool{}
	for _, tt := range falsifiedLayouts {
		broken[string(tt.rule)] = true
	}
	for _, tt := range falsifiedPlans {
		broken[string(tt.rule)] = true
	}
	for _, tt := range falsifiedRolls {
		broken[string(tt.rule)] = true
	}
	rules := 0
	ast.Inspect(file, func(n ast.Node) bool {
		c, ok := n.(*ast.ValueSpec)
		if !ok || c.Type == nil {
			return true
		}
		if name, ok := c.Type.(*ast.Ident); ok && name.Name == "Rule" {
			rule, _ := strconv.Unquote(c.Values[0].(*ast.BasicLit).Value)
			rules++
			if !broken[rule] {
				t.Errorf("no falsification breaks the rule %q", rule)
			}
		}
		return true
	})
	if rules < 30 {
		t.Errorf("only %d rules found", rules)
	}
}

// Example shows what a violation says.
func ExampleLayout() {
	l := fourWalls()
	l.Seams[1].X += 2 * mm
	for _, v := range audit.Layout(l) {
		fmt.Println(v.Error())
	}
	// Output:
	// audit: wall 1, drop 3, part 1, seam 2: seam place: distance from the wall's left end must be 1035 mm and is 1037 mm
}

// alongTheCeiling is two walls under a ceiling that falls by 12 mm along the first,
// whose drops are set to it; the design steps in the corner between them.
func alongTheCeiling() *hanging.Layout {
	run := roomtext.Run("A 3000x2400 | B 2000x2400")
	run.Walls[0].Outline[2].Y -= 12 * mm
	p := &paper.Paper{Name: "rows", Width: 530 * mm, RollLength: 10050 * mm, Repeat: 320 * mm, Pack: 1, Match: paper.Match{Kind: paper.Straight}}
	h, err := hanging.NewSet(run, []hanging.Setting{{To: hanging.ToCeiling}, {}}, p, hanging.DefaultRules())
	if err != nil {
		panic(err)
	}
	l, err := h.Layout(hanging.Choice{})
	if err != nil {
		panic(err)
	}
	return l
}
