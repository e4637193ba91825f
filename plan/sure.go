package plan

import (
	"firstdrop/hanging"
	"firstdrop/order"
)

// Certainty says how sure the count of rolls of a batch of paper i is, from a
// number of simulated jobs: see [order.Certainty]. The paper must be used.
func (p *Plan) Certainty(i, batch int, chances order.Chances, jobs int, seed uint64) (*order.Curve, error) {
	b := &p.Papers[i].Batches[batch]
	return order.Certainty(order.Job{Plan: b.Cutting, Pieces: p.orderPieces(i, b)}, chances, jobs, seed)
}

// Cliffs lists the smallest changes of a wall's height, an allowance, the repeat
// or the roll's length at which the count of rolls of a batch of paper i becomes
// another, nearest first: see [order.Cliffs]. The layout stays as it is. The
// paper must be used.
func (p *Plan) Cliffs(i, batch int) ([]order.Cliff, error) {
	layouts := p.layouts(i)
	rules := p.Task.Rules
	b := &p.Papers[i].Batches[batch]
	c := &order.Cutting{
		Spec: b.Cutting.Problem.Spec(), Pieces: p.orderPieces(i, b),
		Head: rules.Head, Foot: rules.Foot, Step: rules.CutStep,
	}
	return order.Cliffs(c.Spec, c.Changes(layouts...))
}

// orderPieces returns what a batch cuts as order sees it: each of its pieces,
// and strips of narrow pieces as one length that hangs under no ceiling.
func (p *Plan) orderPieces(i int, b *BatchPlan) []order.Piece {
	all := map[PieceRef]order.Piece{}
	refs := p.refs(i)
	for k, piece := range order.PiecesOf(p.layouts(i)...) {
		all[refs[k]] = piece
	}
	spec := b.Cutting.Problem.Spec()
	out := make([]order.Piece, len(b.Cuts))
	for k, strip := range b.Cuts {
		out[k] = all[strip[0].PieceRef]
		if len(strip) > 1 {
			surplus := out[k].Length - out[k].Need
			out[k].Piece, out[k].Need, out[k].Ceiling = spec.Pieces[k], spec.Pieces[k].Length-surplus, false
		}
	}
	return out
}

// Chances returns the usual chances for paper i, with the job's cut step.
func (p *Plan) Chances(i int) order.Chances {
	c := order.DefaultChances(&p.Task.Papers[i])
	c.Step = p.Task.Rules.CutStep
	return c
}

// layouts returns the layouts of the runs hung with paper i, in the order of the
// runs.
func (p *Plan) layouts(i int) (ls []*hanging.Layout) {
	for r := range p.Runs {
		if p.Task.Runs[r].Paper == i {
			ls = append(ls, p.Runs[r].Layout)
		}
	}
	return ls
}
