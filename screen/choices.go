package screen

import (
	"encoding/json"

	"firstdrop/finding"
	"firstdrop/job"
	"firstdrop/plan"
	"firstdrop/tell"
)

// Limits of what one request may ask for.
const (
	mostAlternatives = 5 // more than five nobody weighs against each other
	mostPapers       = 12
	mostSaid         = 4 // of what is gained, of what is lost, and of how a paper looks
)

// alternatives answers [AskAlternatives].
func (q *question) alternatives(a *Answer) {
	if q.planned(a) == nil {
		return
	}
	most := q.request.Most
	if most < 1 || most > mostAlternatives {
		most = mostAlternatives
	}
	as, err := q.session.Alternatives(q.draft.Task, most)
	if err != nil {
		a.Problems = []Problem{unplannable(q.c, q.draft, err)}
		return
	}
	for i := range as {
		o := outcomeOf(q.c, q.draft, as[i].Plan, nil)
		if o.plan == nil {
			a.Alternatives, a.Failure = nil, o.failure
			return
		}
		a.Alternatives = append(a.Alternatives, q.alternative(&as[i]))
	}
}

func (q *question) alternative(a *plan.Alternative) Alternative {
	out := Alternative{Title: tell.BestIn(q.c, a.Best), Choose: choices(q.draft.Job, a.Plan), Plan: q.drawnPlan(a.Plan)}
	out.Losses, out.Gains = q.trade(a.Trade)
	if out.Title == "" {
		out.Title = q.c.Text("screen.between")
	}
	return out
}

// trade says what a plan costs and saves, each in a few words.
func (q *question) trade(t plan.Trade) (losses, gains []string) {
	losses, gains = tell.Traded(q.c, t, mostSaid)
	return append([]string{}, losses...), append([]string{}, gains...)
}

// choices says what a job must say so that a plan comes out again.
func choices(j *job.Job, p *plan.Plan) []Choice {
	taken := *j
	if err := taken.Take(p); err != nil {
		return []Choice{} // a plan of another job has no choices in this one
	}
	out := []Choice{}
	for k, entry := range taken.Node().Member("hang").Items {
		c := Choice{Hang: k, Set: map[string]json.RawMessage{}}
		for _, key := range []string{"start", "kill", "new_drop", "design", "panels", "trim", "set_to"} {
			c.Set[key] = json.RawMessage("null")
			if n := entry.Member(key); n != nil {
				c.Set[key] = n.JSON()
			}
		}
		out = append(out, c)
	}
	return out
}

// why answers [AskWhy].
func (q *question) why(a *Answer) {
	chosen := q.planned(a)
	if chosen == nil {
		return
	}
	d, err := q.proposed()
	if err != nil {
		a.Failure = q.refused(err)
		return
	}
	q.attend(d.Task)
	other := freshly(q.c, d)
	if a.Problems, a.Failure = other.problems, other.failure; other.plan == nil {
		return
	}
	t := other.plan.Against(chosen)
	w := Why{Text: q.verdict(other.plan, t), Choose: choices(d.Job, other.plan), Plan: drawPlan(q.c, d, other.plan)}
	w.Losses, w.Gains = q.trade(t)
	a.Why = &w
}

// verdict says in a sentence what a proposal comes to.
func (q *question) verdict(p *plan.Plan, t plan.Trade) string {
	id := "screen.why-both"
	switch losses, gains := q.trade(t); {
	case len(losses)+len(gains) == 0:
		id = "screen.why-same"
	case len(gains) == 0:
		id = "screen.why-worse"
	case len(losses) == 0:
		id = "screen.why-better"
	}
	return q.c.Text(id, "taken", tell.Taken(q.c, p))
}

// proposed reads the job with the start or the kill seam that is asked about in
// place of its own.
func (q *question) proposed() (*job.Draft, error) {
	doc, err := editable(q.request.Job)
	if err != nil {
		return nil, err
	}
	entries := q.draft.Job.Entries(q.draft.Task)
	if q.request.Run < 0 || q.request.Run >= len(entries) {
		return nil, &refusal{"screen.no-run", []any{"number", q.request.Run + 1}}
	}
	h := doc.hang[entries[q.request.Run]]
	if q.request.Start == nil && q.request.Kill == nil {
		return nil, &refusal{id: "screen.nothing-proposed"}
	}
	if q.request.Start != nil {
		h["start"] = q.request.Start
		delete(h, "panels") // asked is what full widths from there would come to
		delete(h, "trim")
	}
	if q.request.Kill != nil {
		h["kill"] = q.request.Kill
	}
	return doc.read()
}

// papers answers [AskPapers].
func (q *question) papers(a *Answer) {
	a.Papers = []PaperTry{}
	for i, paper := range q.request.Papers {
		if i == mostPapers {
			break
		}
		q.progress(CountedPapers, i, min(len(q.request.Papers), mostPapers))
		t, err := q.try(paper)
		if err != nil {
			a.Papers, a.Failure = nil, q.refused(err)
			return
		}
		a.Papers = append(a.Papers, t)
	}
}

// try plans the room in another paper.
func (q *question) try(paper json.RawMessage) (PaperTry, error) {
	doc, err := editable(q.request.Job)
	if err != nil {
		return PaperTry{}, err
	}
	at, err := doc.exchange(q.request.Paper, paper)
	if err != nil {
		return PaperTry{}, err
	}
	d, err := doc.read()
	if err != nil {
		return PaperTry{}, err
	}
	t := PaperTry{Looks: []string{}}
	if d.Job != nil && at < len(d.Job.Papers) {
		t.Name = d.Job.Papers[at].Name
	}
	if d.Task != nil {
		d.Task.Stop = q.Stop // its progress is that of the papers
	}
	o := freshly(q.c, d)
	if t.Problems, t.Text = o.problems, o.failure; len(t.Problems) > 0 {
		t.Text = t.Problems[0].Text
	}
	if o.plan == nil {
		return t, nil
	}
	s := &sketcher{q.c}
	made := drawPlan(q.c, d, o.plan)
	t.Plan, t.Buy, t.Cost = &made, o.plan.Papers[at].Buy(), s.cost(&o.plan.Papers[at])
	t.Text = tell.Buy(q.c, o.plan, at, true)[0]
	for i, k := range tell.Kinds(gravest(o.plan.Findings)) {
		if i < mostSaid {
			t.Looks = append(t.Looks, k.Words(q.c))
		}
	}
	return t, nil
}

// gravest returns the findings that are more than notes; the gravest come first.
func gravest(fs []finding.Finding) []finding.Finding {
	for i, f := range fs {
		if f.Severity == finding.Note {
			return fs[:i]
		}
	}
	return fs
}
