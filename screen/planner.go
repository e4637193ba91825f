package screen

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"reflect"

	"firstdrop/audit"
	"firstdrop/finding"
	"firstdrop/job"
	"firstdrop/measure"
	"firstdrop/message"
	"firstdrop/plan"
	"firstdrop/words"
)

// Planner answers requests one after the other. What a drag leaves as it is, it
// plans once. It is not safe for concurrent use.
type Planner struct {
	// Progress, if not nil, is told now and then how far the work on a question is.
	Progress func(Progress)
	// Stop, if not nil, is asked now and then whether nobody wants the answer any more:
	// see [plan.Task].
	Stop func() bool

	session *plan.Session
	last    *plan.Task // whose rooms the session knows
	read    []byte     // the document that draft was read from
	words   Words      // of the request before
	draft   *job.Draft
	made    *outcome // of draft; nil before it is asked for
	way     way      // to the answer of the request
}

// outcome is what became of planning a job.
type outcome struct {
	plan     *plan.Plan // which has passed its audit
	problems []Problem
	failure  string
}

// New returns a planner that has planned nothing yet.
func New() *Planner { return &Planner{session: plan.NewSession()} }

// AnswerJSON answers a request in JSON with an answer in JSON. A text that is no
// request is told so.
func (p *Planner) AnswerJSON(request []byte) []byte {
	var r Request
	if err := json.Unmarshal(request, &r); err != nil {
		return encoded(Answer{Failure: words.For("").Text("screen.no-request", "why", err.Error())})
	}
	return encoded(p.Answer(r))
}

// encoded writes an answer; it holds nothing that cannot be written.
func encoded(a Answer) []byte {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	if err := e.Encode(a); err != nil {
		return encoded(Answer{ID: a.ID, Version: a.Version, Kind: a.Kind, Failure: err.Error()})
	}
	return bytes.TrimSpace(b.Bytes())
}

// Answer answers a request. Whatever it is asked, it does not panic: a mistake of
// the program is told as a failure, and the planner begins anew.
func (p *Planner) Answer(r Request) (a Answer) {
	defer func() {
		if mistake := recover(); mistake != nil {
			*p = Planner{session: plan.NewSession(), Progress: p.Progress, Stop: p.Stop}
			a = answerTo(r)
			a.Failure = r.Words.Catalogue().Text("screen.mistake", "what", fmt.Sprint(mistake))
		}
	}()
	return p.answer(r)
}

func answerTo(r Request) Answer { return Answer{ID: r.ID, Version: r.Version, Kind: r.Kind} }

// Catalogue returns the words and units that texts are wanted in: metric British
// English where nothing else is known.
func (w Words) Catalogue() *words.Catalogue {
	units := measure.Metric
	if w.Units == measure.Imperial.String() {
		units = measure.Imperial
	}
	return words.For(w.Locale).In(units)
}

// answer answers without a net.
func (p *Planner) answer(r Request) Answer {
	a := answerTo(r)
	p.open(&r)
	p.way = wayTo(r.Kind, p.draft.Task)
	q := &question{Planner: p, request: &r, c: r.Words.Catalogue()}
	ask, known := map[Kind]func(*Answer){
		AskSurvey: q.survey, AskPlan: q.plan, AskAlternatives: q.alternatives, AskWhy: q.why, AskPapers: q.papers,
		AskCutting: q.cutting, AskCertainty: q.certainty, AskCliffs: q.cliffs,
		AskDocument: q.document,
	}[r.Kind]
	if !known {
		a.Failure = q.c.Text("screen.no-kind", "kind", job.Clip(string(r.Kind)))
		return a
	}
	ask(&a)
	return a
}

// open reads the job of a request, unless it is the one of the request before.
func (p *Planner) open(r *Request) {
	if p.draft != nil && bytes.Equal(r.Job, p.read) && r.Words == p.words {
		return
	}
	p.read, p.words, p.draft, p.made = bytes.Clone(r.Job), r.Words, job.ReadDraft(r.Job), nil
	if p.draft.Task != nil {
		p.attend(p.draft.Task)
		p.recognise(p.draft.Task)
	}
}

// recognise puts the rooms that are planned already in place of equal ones, so
// that the session knows them again.
func (p *Planner) recognise(t *plan.Task) {
	if p.last != nil {
		for i := range t.Runs {
			if i < len(p.last.Runs) && reflect.DeepEqual(t.Runs[i].Run, p.last.Runs[i].Run) {
				t.Runs[i].Run = p.last.Runs[i].Run
			}
		}
	}
	p.last = t
}

// question is one request being answered.
type question struct {
	*Planner
	request *Request
	c       *words.Catalogue
}

// problemsOf lists what is wrong in a document.
func problemsOf(c *words.Catalogue, d *job.Draft) (ps []Problem) {
	for _, w := range d.Problems {
		ps = append(ps, Problem{Path: w.Path, Text: c.Say(w.What)})
	}
	return ps
}

// outcome plans the job, unless it is planned already.
func (q *question) outcome() *outcome {
	if q.made == nil {
		q.made = &outcome{problems: problemsOf(q.c, q.draft)}
		if q.draft.Task != nil {
			made, err := q.session.Plan(q.draft.Task)
			*q.made = outcomeOf(q.c, q.draft, made, err)
		}
	}
	return q.made
}

// Planned plans a job by itself. Without a plan, which has passed its audit, there
// are problems, or a failure in words.
func Planned(d *job.Draft, c *words.Catalogue) (made *plan.Plan, problems []Problem, failure string) {
	o := freshly(c, d)
	return o.plan, o.problems, o.failure
}

// freshly plans a job without a session.
func freshly(c *words.Catalogue, d *job.Draft) outcome {
	if d.Task == nil {
		return outcome{problems: problemsOf(c, d)}
	}
	made, err := plan.Make(d.Task)
	return outcomeOf(c, d, made, err)
}

// outcomeOf holds a plan against the audit, and says why there is none.
func outcomeOf(c *words.Catalogue, d *job.Draft, made *plan.Plan, err error) outcome {
	if err != nil {
		return outcome{problems: []Problem{unplannable(c, d, err)}}
	}
	if wrong := audit.Plan(made); len(wrong) > 0 {
		return outcome{failure: c.Text("screen.untrue", "rule", string(wrong[0].Rule), "what", wrong[0].Error())}
	}
	made.Findings = append(append([]finding.Finding(nil), d.Findings...), made.Findings...)
	finding.Sort(made.Findings)
	return outcome{plan: made}
}

// unplannable says why a sound job has no plan, at the place to change.
func unplannable(c *words.Catalogue, d *job.Draft, err error) Problem {
	var piece *plan.PieceError
	if !errors.As(err, &piece) {
		return Problem{Path: "hang", Text: c.Say(message.Of(err))}
	}
	id := "screen.too-long"
	if piece.Length <= piece.Roll {
		id = "screen.not-sure"
	}
	text := c.Text(id, "piece", piece.Piece, "wall", c.Name(piece.Wall), "need", piece.Length, "roll", piece.Roll, "paper", piece.Paper)
	return Problem{Path: paperPath(d.Job, piece.Paper) + ".roll", Text: text}
}

// paperPath returns where a paper stands in the document.
func paperPath(j *job.Job, name string) string {
	for i := range j.Papers {
		if j.Papers[i].Name == name {
			return fmt.Sprintf("papers[%d]", i)
		}
	}
	return "papers"
}

// survey answers [AskSurvey].
func (q *question) survey(a *Answer) {
	a.Problems = problemsOf(q.c, q.draft)
	s := &sketcher{q.c}
	a.Survey = s.survey(q.draft)
	a.Survey.Findings = s.findings(q.draft.Findings, q.draft, nil)
}

// planned plans the job for an answer; nil, with the reason in the answer, when
// there is no plan.
func (q *question) planned(a *Answer) *plan.Plan {
	o := q.outcome()
	a.Problems, a.Failure = o.problems, o.failure
	return o.plan
}

// plan answers [AskPlan].
func (q *question) plan(a *Answer) {
	q.survey(a)
	if p := q.planned(a); p != nil {
		made := q.drawnPlan(p)
		a.Plan = &made
	}
}

// document answers [AskDocument].
func (q *question) document(a *Answer) {
	if p := q.planned(a); p != nil {
		a.Document = p.Document(q.draft.Job.Name)
	}
}
