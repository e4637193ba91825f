package screen

import (
	"firstdrop/message"
	"firstdrop/order"
	"firstdrop/plan"
	"firstdrop/tell"
)

// How many jobs are simulated: as asked, within limits.
const (
	usualJobs = 1_000
	mostJobs  = 100_000
	// seed is always the same: the same job gives the same curve.
	seed = 1
)

// certainty answers [AskCertainty].
func (q *question) certainty(a *Answer) {
	p := q.planned(a)
	if p == nil {
		return
	}
	a.Certainty = &Certainty{Papers: []Curve{}, Inputs: []string{}}
	jobs := q.request.Jobs
	if jobs < 1 {
		jobs = usualJobs
	}
	jobs = min(jobs, mostJobs)
	for i := range p.Papers {
		for k := range p.Papers[i].Batches {
			chances := p.Chances(i)
			a.Certainty.Papers = append(a.Certainty.Papers, q.curve(p, i, k, chances, jobs))
			a.Certainty.Inputs = append(a.Certainty.Inputs, tell.Assumed(q.c, chances))
		}
	}
	a.Certainty.Inputs = append([]string{}, tell.Distinct(a.Certainty.Inputs)...)
}

// curve simulates one batch of a paper.
func (q *question) curve(p *plan.Plan, i, batch int, chances order.Chances, jobs int) Curve {
	out := Curve{Name: q.batchName(p, i, batch), Planned: p.Papers[i].Batches[batch].Cutting.Bought(), Points: []Share{}}
	curve, err := p.Certainty(i, batch, chances, jobs, seed)
	if err != nil {
		out.Refused = q.c.Text("screen.no-curve", "why", q.c.Say(message.Of(err)))
		return out
	}
	out.Planned = curve.Rolls
	for _, point := range curve.Enough {
		out.Points = append(out.Points, Share{Rolls: point.Rolls, Chance: float64(point.Jobs) / float64(curve.Jobs)})
	}
	inHand := inHandOf(p, i, batch)
	share := q.c.Text("screen.enough", "share", tell.Share(q.c, curve.Planned().Of, curve.Planned().All))
	said := append([]string{tell.Planned(q.c, inHand, curve.Rolls), share}, tell.CountOrder(q.c, &p.Task.Papers[i], curve)...)
	out.Text = tell.Sentences(append(said, tell.Advice(q.c, curve, inHand)...)...)
	return out
}

// inHandOf counts the rolls in hand that a batch is cut from.
func inHandOf(p *plan.Plan, i, batch int) (n int) {
	b := &p.Papers[i].Batches[batch]
	for k := range b.Cutting.Rolls {
		if _, ok := b.InHand(k); ok {
			n++
		}
	}
	return n
}

// batchName names a paper, and its batch where it has several.
func (q *question) batchName(p *plan.Plan, i, batch int) string {
	name, b := p.Task.Papers[i].Name, p.Papers[i].Batches[batch].Batch
	if len(p.Papers[i].Batches) < 2 || b == "" {
		return name
	}
	return name + ", " + q.c.Text("page.roll-batch", "batch", b)
}

// cliffs answers [AskCliffs].
func (q *question) cliffs(a *Answer) {
	p := q.planned(a)
	if p == nil {
		return
	}
	a.Cliffs = []Cliff{}
	for i := range p.Papers {
		for k := range p.Papers[i].Batches {
			all, err := p.Cliffs(i, k)
			if err != nil {
				a.Cliffs, a.Failure = nil, q.c.Text("screen.mistake", "what", err.Error())
				return
			}
			for _, c := range all {
				a.Cliffs = append(a.Cliffs, q.cliff(p, i, k, c))
			}
		}
	}
}

func (q *question) cliff(p *plan.Plan, i, batch int, c order.Cliff) Cliff {
	change, effect := tell.Cliff(q.c, c, c.Planned)
	return Cliff{
		Paper: q.batchName(p, i, batch), Rolls: c.Rolls - c.Planned,
		Text: q.c.Text("screen.cliff", "size", q.c.Plain(c.Change.Abs()), "change", change, "effect", effect),
	}
}
