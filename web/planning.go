package web

import (
	"bytes"
	"context"
	"errors"
	"net/http"

	"github.com/danielgtaylor/huma/v2"

	"firstdrop/finding"
	"firstdrop/job"
	"firstdrop/job/yaml"
	"firstdrop/plan"
	"firstdrop/store"
	"firstdrop/tell"
	"firstdrop/words"
)

// Words says in which language and units something is told.
type Words struct {
	Lang  string `query:"lang" enum:"en-GB,en-US,de,fr" doc:"British English, if not given."`
	Units string `query:"units" enum:"metric,imperial" doc:"The job's, if not given."`
}

// PostedJob is a job that is sent along.
type PostedJob struct{ RawBody []byte }

// source is where a job's document comes from.
type source interface {
	document(ctx context.Context, s *Server) ([]byte, error)
	picture(ctx context.Context, s *Server, name string) (*store.Picture, error)
}

func (j *StoredJob) document(ctx context.Context, s *Server) ([]byte, error) {
	stored, err := s.Store.Get(ctx, store.ID(j.ID))
	if err != nil {
		return nil, err
	}
	return stored.Document, nil
}

func (j *StoredJob) picture(ctx context.Context, s *Server, name string) (*store.Picture, error) {
	return s.Store.Picture(ctx, store.ID(j.ID), name)
}

// document returns a copy: work in the line may go on when the request is over, and
// its buffer is then another's.
func (j *PostedJob) document(context.Context, *Server) ([]byte, error) {
	return bytes.Clone(j.RawBody), nil
}

func (*PostedJob) picture(_ context.Context, _ *Server, name string) (*store.Picture, error) {
	return nil, store.MissingPicture("", name)
}

// aJob describes a job that is sent along.
func aJob() *huma.RequestBody {
	return takes("A job, in JSON or YAML", "application/json", "application/yaml", "text/plain")
}

// makes plans a job and makes something of the plan, in the line.
func makes[T any](ctx context.Context, s *Server, from source, do_ func(p *planned) (T, error)) (T, error) {
	document, err := from.document(ctx, s)
	if err != nil {
		var none T
		return none, err
	}
	return do(ctx, s.line, func(ctx context.Context) (T, error) {
		p, err := s.planOf(ctx, document)
		if err != nil {
			var none T
			return none, err
		}
		return do_(p)
	})
}

// planErrors are those of operations that plan.
var planErrors = []int{http.StatusNotFound, http.StatusRequestEntityTooLarge, http.StatusServiceUnavailable}

// forBoth takes in an operation twice: on a job that is kept, and on one that is
// sent along.
func forBoth[S, P, O any](api operations, op huma.Operation, stored func(context.Context, *S) (*O, error), posted func(context.Context, *P) (*O, error)) {
	name := op.Path
	kept, sent := op, op
	kept.OperationID, kept.Method, kept.Path = "get-"+op.OperationID, http.MethodGet, "/api/jobs/{id}/"+name
	kept.Errors = append([]int{}, planErrors...)
	if op.Responses != nil {
		sent.Responses = map[string]*huma.Response{"200": op.Responses["200"]}
	}
	sent.OperationID, sent.Method, sent.Path, sent.RequestBody = "make-"+op.OperationID, http.MethodPost, "/api/"+name, aJob()
	sent.Errors = append([]int{}, planErrors...)
	sent.Summary += ", of a job that is sent along"
	add(api, kept, stored)
	add(api, sent, posted)
}

// PlanOutput is a plan.
type PlanOutput struct{ Body *plan.Document }

func (s *Server) planOperations(api operations) {
	tags := []string{"plans"}
	forBoth(api, huma.Operation{OperationID: "plan", Path: "plan", Summary: "Plan a job", Tags: tags},
		func(ctx context.Context, in *StoredJob) (*PlanOutput, error) { return s.planFrom(ctx, in) },
		func(ctx context.Context, in *PostedJob) (*PlanOutput, error) { return s.planFrom(ctx, in) })
	forBoth(api, huma.Operation{
		OperationID: "check", Path: "check", Summary: "Say what is wrong with a job, and what is worth a question", Tags: tags,
		Description: "That a job is not sound is no error of this operation.",
	},
		func(ctx context.Context, in *storedWords) (*CheckOutput, error) { return s.check(ctx, in, in.Words) },
		func(ctx context.Context, in *postedWords) (*CheckOutput, error) { return s.check(ctx, in, in.Words) })
}

// storedWords and postedWords are a job with the words that something is told in.
type (
	storedWords struct {
		StoredJob
		Words
	}
	postedWords struct {
		PostedJob
		Words
	}
)

func (s *Server) planFrom(ctx context.Context, from source) (*PlanOutput, error) {
	d, err := makes(ctx, s, from, func(p *planned) (*plan.Document, error) { return p.plan.Document(p.job.Name), nil })
	if err != nil {
		return nil, err
	}
	return &PlanOutput{d}, nil
}

// FindingBody is a finding with the sentence that says it.
type FindingBody struct {
	finding.Finding
	Text string `json:"text"`
}

// CheckOutput says what is wrong with a job.
type CheckOutput struct {
	Body struct {
		Sound    bool          `json:"sound" doc:"Whether it can be planned."`
		Problems []Fault       `json:"problems" doc:"What must be put right."`
		Findings []FindingBody `json:"findings" doc:"What is possible, but worth a question."`
	}
}

func (s *Server) check(ctx context.Context, from source, w Words) (*CheckOutput, error) {
	document, err := from.document(ctx, s)
	if err != nil {
		return nil, err
	}
	j, err := do(ctx, s.line, func(context.Context) (*job.Job, error) { return sound(document) })
	out := &CheckOutput{}
	out.Body.Problems, out.Body.Findings = []Fault{}, []FindingBody{}
	if wrong := problemsIn(err); wrong != nil {
		out.Body.Problems = faultsOf(wrong)
		return out, nil
	}
	if err != nil {
		return nil, err
	}
	out.Body.Sound = true
	p := &planned{job: j}
	fs := j.Findings()
	finding.Sort(fs)
	for _, f := range fs {
		out.Body.Findings = append(out.Body.Findings, FindingBody{f, tell.Finding(words.For(w.Lang).In(p.units(w.Units)), f)})
	}
	return out, nil
}

// sound reads a job, and whatever it asks for that cannot be.
func sound(document []byte) (*job.Job, error) {
	j, err := yaml.Read(fileName, document)
	if err != nil {
		return nil, err
	}
	_, err = j.Task()
	return j, err
}

// problemsIn returns what is wrong with a job; nil for other errors.
func problemsIn(err error) job.Problems {
	var wrong job.Problems
	var one job.Problem
	switch {
	case errors.As(err, &wrong):
		return wrong
	case errors.As(err, &one):
		return job.Problems{one}
	}
	return nil
}
