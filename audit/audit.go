package audit

import (
	"firstdrop/hanging"
	"firstdrop/plan"
)

// Plan judges a plan against its task: its layouts, its cutting, its
// quantities. A plan that keeps all its promises has no violation. Whatever is
// in the plan, Plan does not panic; what cannot be judged violates [Sound].
func Plan(p *plan.Plan) []Violation {
	b := &book{}
	if !soundPlan(b, p) {
		return b.found
	}
	grounds := make([]*ground, len(p.Runs))
	for i := range p.Runs {
		b.at = Place{Run: i + 1}
		l := p.Runs[i].Layout
		judgeFaithful(b, p.Task, i, l)
		if h := judgeLayout(b, l); h != nil {
			grounds[i] = h.ground
			judgeStanding(b, p, i, h)
			judgeLifts(b, p, i)
			judgeLining(b, p, i)
		}
	}
	for i := range p.Papers {
		b.at = Place{Paper: i + 1}
		judgePaper(b, p, i, grounds)
		judgeBatches(b, p, i)
		judgeZones(b, p, i)
		judgeFindings(b, p, i)
	}
	return b.found
}

// soundPlan reports whether the plan can be judged at all.
func soundPlan(b *book, p *plan.Plan) bool {
	s := soundness{book: b}
	s.need(p != nil && p.Task != nil, Place{}, "the plan", "complete", "without plan or task")
	if s.bad {
		return false
	}
	s.need(len(p.Runs) == len(p.Task.Runs), Place{}, "number of layouts", len(p.Task.Runs), len(p.Runs))
	s.need(len(p.Papers) == len(p.Task.Papers), Place{}, "number of papers", len(p.Task.Papers), len(p.Papers))
	for i := range p.Task.Runs {
		s.index(Place{}, "paper of a run", p.Task.Runs[i].Paper, len(p.Task.Papers))
		s.need(p.Task.Runs[i].Run != nil, Place{}, "run of the task", "there", "missing")
	}
	for i := range p.Runs {
		if s.bad {
			return false
		}
		l := p.Runs[i].Layout
		s.need(l != nil && l.Run != nil && l.Paper != nil, Place{}, "layout of run "+figure(i+1), "complete", "without layout, run or paper")
	}
	for i := range p.Papers {
		for k := range p.Papers[i].Batches {
			if !s.bad {
				s.batch(Place{}, p, &p.Task.Papers[i], &p.Papers[i].Batches[k])
			}
		}
	}
	return !s.bad
}

// Layout judges one layout by itself.
func Layout(l *hanging.Layout) []Violation {
	b := &book{}
	judgeLayout(b, l)
	return b.found
}

// judgeLayout returns the layout laid on its walls; nil when it cannot be.
func judgeLayout(b *book, l *hanging.Layout) *hung {
	if !soundLayout(b, l) {
		return nil
	}
	h := newHung(b, l)
	h.judgeTurns()
	h.judgeParts()
	h.judgeCorners()
	h.judgeEnds()
	h.judgeCoverage()
	h.judgeSeams()
	h.judgePlumbs()
	h.judgePieces()
	h.judgeReturns()
	h.judgeNumbers()
	return h
}
