package plan

import (
	"firstdrop/hanging"
	"firstdrop/order"
)

// Certainty says how sure the count of rolls of a batch of paper i is, from a
// number of simulated jobs: see [order.Certainty]. The paper must be used.
func (p *Plan) Certainty(i, batch int, chances order.Chances, jobs int, seed uint64) (*order.Curve, error) {
	b := &p.Papers[i].Batches[batch]
	return order.Certainty(order.Job{Plan: b.Cutting, Pack: p.Task.Papers[i].Pack, Pieces: p.orderPieces(i, b), Progress: p.Task.telling(Jobs)}, chances, jobs, seed)
}

// Cliffs lists the smallest changes of a wall's height, an allowance, the repeat
// or the roll's length at which the count of rolls of a batch of paper i becomes
// another, nearest first: see [order.Cliffs]. The layout stays as it is. The
// paper must be used.
func (p *Plan) Cliffs(i, batch int) ([]order.Cliff, error) {
	b, label, rules := &p.Papers[i].Batches[batch], &p.Task.Papers[i], p.Task.Rules
	all := p.piecesOf(i)
	spec := b.Cutting.Problem.Spec()
	c := &order.Cutting{
		Spec: spec, Head: rules.Head, Foot: rules.Foot, Step: rules.CutStep,
		Width: label.Width, Blade: p.Task.Cut.Blade, Progress: p.Task.telling(Sizes),
	}
	c.Spec.Pieces = nil
	var refs []PieceRef
	for _, ref := range p.refs(i) {
		if b.gives(ref) {
			refs = append(refs, ref)
			c.Pieces = append(c.Pieces, all[ref])
			c.Spec.Pieces = append(c.Spec.Pieces, p.piece(ref))
		}
	}
	if !p.Task.Cut.Alone && !label.InOrder {
		c.Across = p.narrow(label, refs)
	}
	return c.Cliffs()
}

// gives reports whether the batch gives a piece, or should.
func (b *BatchPlan) gives(ref PieceRef) bool {
	for _, strip := range b.Cuts {
		for _, lie := range strip {
			if lie.PieceRef == ref {
				return true
			}
		}
	}
	return false
}

// piecesOf returns the pieces of paper i as order sees them.
func (p *Plan) piecesOf(i int) map[PieceRef]order.Piece {
	all := map[PieceRef]order.Piece{}
	refs := p.refs(i)
	for k, piece := range order.PiecesOf(p.layouts(i)...) {
		all[refs[k]] = piece
	}
	return all
}

// orderPieces returns what a batch cuts as order sees it: each of its pieces,
// and strips of narrow ones.
func (p *Plan) orderPieces(i int, b *BatchPlan) []order.Piece {
	all := p.piecesOf(i)
	spec := b.Cutting.Problem.Spec()
	out := make([]order.Piece, len(b.Cuts))
	for k, strip := range b.Cuts {
		if len(strip) == 1 {
			out[k] = all[strip[0].PieceRef]
			continue
		}
		out[k].Piece = spec.Pieces[k]
		for _, lie := range strip {
			out[k].Lies = append(out[k].Lies, order.Lie{Piece: all[lie.PieceRef], Offset: lie.Offset})
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
	for _, r := range p.Task.runsIn(i) {
		ls = append(ls, p.Runs[r].Layout)
	}
	return ls
}
