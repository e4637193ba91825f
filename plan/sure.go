package plan

import (
	"firstdrop/hanging"
	"firstdrop/order"
)

// Certainty says how sure the count of rolls of paper i is, from a number of
// simulated jobs: see [order.Certainty]. The paper must be used.
func (p *Plan) Certainty(i int, chances order.Chances, jobs int, seed uint64) (*order.Curve, error) {
	return order.Certainty(order.Job{Plan: p.Papers[i].Cutting, Pieces: order.PiecesOf(p.layouts(i)...)}, chances, jobs, seed)
}

// Cliffs lists the smallest changes of a wall's height, an allowance, the repeat
// or the roll's length at which the count of rolls of paper i becomes another,
// nearest first: see [order.Cliffs]. The layout stays as it is. The paper must be
// used.
func (p *Plan) Cliffs(i int) ([]order.Cliff, error) {
	layouts := p.layouts(i)
	rules := p.Task.Rules
	c := &order.Cutting{
		Spec: p.Papers[i].Cutting.Problem.Spec(), Pieces: order.PiecesOf(layouts...),
		Head: rules.Head, Foot: rules.Foot, Step: rules.CutStep,
	}
	return order.Cliffs(c.Spec, c.Changes(layouts...))
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
