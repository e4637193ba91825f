package screen

import (
	"strings"

	"firstdrop/cutting"
	"firstdrop/measure"
	"firstdrop/plan"
	"firstdrop/tell"
)

// cutting answers [AskCutting].
func (q *question) cutting(a *Answer) {
	p := q.planned(a)
	if p == nil {
		return
	}
	a.Cutting = &Cutting{Papers: []PaperCutting{}}
	for i := range p.Papers {
		if len(p.Papers[i].Batches) > 0 {
			a.Cutting.Papers = append(a.Cutting.Papers, q.paperCutting(p, i))
		}
	}
}

func (q *question) paperCutting(p *plan.Plan, i int) PaperCutting {
	bought := tell.Buy(q.c, p, i, false)
	lines := 0 // of what to buy
	for _, line := range p.Papers[i].Orders {
		if line.Rolls > 0 {
			lines++
		}
	}
	lines = max(lines, 1)
	out := PaperCutting{
		Name: p.Task.Papers[i].Name, Rolls: []Roll{}, Order: bought[:lines], Why: append([]string{}, bought[lines:]...),
		Notes: q.notes(p, i), Counts: q.counts(p, i),
	}
	rolls := tell.Rolls(p, i)
	for k := range rolls {
		out.Rolls = append(out.Rolls, q.roll(p, i, &rolls[k]))
	}
	return out
}

// notes says what is missing, what is in hand, and how the batches are kept.
func (q *question) notes(p *plan.Plan, i int) []string {
	notes := []string{}
	if missing := tell.Missing(q.c, p, i); missing != "" {
		notes = append(notes, missing)
	}
	notes = append(notes, tell.InHand(q.c, p, i)...)
	return append(notes, q.c.Text("page.one-batch"), q.c.Text("page.short-pieces"))
}

// counts sets the count beside what other ways of counting say.
func (q *question) counts(p *plan.Plan, i int) []Count {
	pp := &p.Papers[i]
	out := []Count{{Label: q.c.Text("screen.count-ours"), Rolls: pp.Buy(), Ours: true}}
	for _, other := range []struct {
		id    string
		rolls int
	}{
		{"bound", pp.LowerBound()}, {"area", pp.AreaRolls}, {"in-order", pp.InOrderRolls}, {"full-drops", pp.FullDropRolls}, {"short", pp.ShortRolls},
	} {
		if other.rolls > 0 {
			out = append(out, Count{Label: q.c.Text("screen.count-" + other.id), Rolls: other.rolls})
		}
	}
	return out
}

func (q *question) roll(p *plan.Plan, paper int, r *tell.Roll) Roll {
	out := Roll{Number: r.Number, Name: r.Name, Batch: r.Batch, InHand: r.InHand, Length: mm(r.Length), Orders: []Order{}}
	for k := range r.Orders {
		out.Orders = append(out.Orders, q.order(p, paper, r, &r.Orders[k]))
	}
	return out
}

func (q *question) order(p *plan.Plan, paper int, r *tell.Roll, o *cutting.Order) Order {
	out := Order{Cuts: []Cut{}, Left: mm(r.Left), Rest: q.rest(p, paper, r)}
	if len(r.Orders) > 1 {
		out.When = q.c.Text("page.roll-order", "after", q.c.Plain(o.After.RoundTo(measure.Micrometre)), "upto", q.c.Plain(o.UpTo.RoundTo(measure.Micrometre)))
	}
	for _, cut := range o.Cuts {
		out.Cuts = append(out.Cuts, q.cut(p, paper, r, cut))
	}
	return out
}

// rest says what is left of a roll, and what it can still give.
func (q *question) rest(p *plan.Plan, paper int, r *tell.Roll) string {
	left := r.Left.FloorTo(measure.Millimetre)
	switch {
	case left <= 0:
		return q.c.Text("screen.rest-none")
	case r.Patches(p, paper):
		return q.c.Text("screen.rest-patches", "size", q.c.Plain(left))
	}
	return q.c.Text("page.left", "size", q.c.Plain(left))
}

// marks lists where within a cut the design begins anew: the first lies what is left of
// the repeat behind the leading end, which shows the design at the phase.
func marks(cut cutting.Cut, phase, repeat measure.Length) (all []float64) {
	if repeat <= 0 {
		return nil
	}
	for at := cut.From + (repeat - phase).Mod(repeat); at < cut.To; at += repeat {
		all = append(all, mm(at))
	}
	return all
}

func (q *question) cut(p *plan.Plan, paper int, r *tell.Roll, cut cutting.Cut) Cut {
	out := Cut{From: mm(cut.From), To: mm(cut.To), Pieces: []Piece{}, Marks: marks(cut, r.Phase(cut), p.Task.Papers[paper].Repeat)}
	gifts := r.Gifts(p, cut)
	for _, g := range gifts {
		out.Pieces = append(out.Pieces, Piece{
			Name: g.Piece.Name, Drop: g.Layout.Drops[g.Piece.Drop].Number, Wall: g.Layout.Run.WallName(g.Layout.PieceWall(g.Piece)),
			Run: q.c.Name(g.Layout.Run.Name), Length: q.c.Plain(g.Piece.Length),
		})
	}
	first := gifts[0]
	end := "cut.head-first"
	if first.Layout.Drops[first.Piece.Drop].Reversed {
		end = "cut.foot-first"
	}
	parts := []string{q.c.Plain(cut.To - cut.From), tell.Mark(q.c, &p.Task.Papers[paper], r.Phase(cut)), q.c.Text(end)}
	if len(gifts) > 1 {
		parts = append(parts, q.c.Text("cut.slit", "pieces", tell.Names(gifts)))
	} else {
		parts = append(parts, tell.Piece(q.c, first.Layout, first.Piece))
	}
	said := parts[:0]
	for _, part := range parts {
		if part != "" {
			said = append(said, part)
		}
	}
	out.Text = strings.Join(said, " · ")
	return out
}
