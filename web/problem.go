package web

import (
	"context"
	"encoding/json"
	"errors"
	"net/http"
	"strconv"

	"github.com/danielgtaylor/huma/v2"

	"firstdrop/job"
	"firstdrop/plan"
	"firstdrop/store"
	"firstdrop/words"
)

// Problem is what every error is told as: the problem details of RFC 9457, with a
// code for programs.
type Problem struct {
	Type   string  `json:"type" doc:"Always about:blank: the status and the code say what it is."`
	Title  string  `json:"title" doc:"The status in words."`
	Status int     `json:"status"`
	Code   string  `json:"code" doc:"A stable word for programs, such as version_conflict."`
	Detail string  `json:"detail" doc:"What is wrong and what to do, for people."`
	Errors []Fault `json:"errors,omitempty" doc:"Everything that is wrong, each with its place."`
	// Current is there when a save was refused because the job has moved on.
	Current *JobBody `json:"current,omitempty" doc:"The job as it stands, when a save was made on another version."`

	wait int // seconds after which to try again; 0: it is no use
}

// Fault is one thing that is wrong in what was sent.
type Fault struct {
	Path    string         `json:"path,omitempty" doc:"Where it stands, as room.walls[2].width; of a request, as body.label or query.lang."`
	Line    int            `json:"line,omitempty" doc:"Of the text that was sent, from 1."`
	Column  int            `json:"column,omitempty" doc:"In characters, from 1."`
	Code    string         `json:"code,omitempty" doc:"A stable word for what is wrong in a job, such as wall_twice."`
	Args    map[string]any `json:"args,omitempty" doc:"What it is about, by name: texts, numbers, lengths in millimetres, and what is said within, with code and args of its own."`
	Message string         `json:"message" doc:"The same for people, in English."`
}

func (p *Problem) Error() string { return p.Detail }

// GetStatus returns the status of the answer.
func (p *Problem) GetStatus() int { return p.Status }

// ContentType returns the media type of problems.
func (p *Problem) ContentType(string) string { return "application/problem+json" }

// GetHeaders says when to try again.
func (p *Problem) GetHeaders() http.Header {
	h := http.Header{}
	if p.wait > 0 {
		h.Set("Retry-After", strconv.Itoa(p.wait))
	}
	return h
}

func newProblem(status int, code, detail string) *Problem {
	return &Problem{Type: "about:blank", Title: http.StatusText(status), Status: status, Code: code, Detail: detail}
}

// refuse answers with a problem.
func refuse(w http.ResponseWriter, status int, code, detail string) {
	w.Header().Set("Content-Type", "application/problem+json")
	w.WriteHeader(status)
	_ = json.NewEncoder(w).Encode(newProblem(status, code, detail))
}

// What is wrong with a request before it reaches us is told in the same form.
func init() {
	huma.NewError = func(status int, detail string, errs ...error) huma.StatusError {
		code := map[int]string{
			http.StatusRequestEntityTooLarge: "too_large", http.StatusUnsupportedMediaType: "wrong_type",
			http.StatusNotAcceptable: "wrong_type", http.StatusInternalServerError: "internal", http.StatusRequestTimeout: "too_slow",
		}[status]
		if code == "" {
			code = "invalid"
		}
		p := newProblem(status, code, detail)
		for _, err := range errs {
			var d huma.ErrorDetailer
			if errors.As(err, &d) {
				p.Errors = append(p.Errors, Fault{Path: d.ErrorDetail().Location, Message: d.ErrorDetail().Message})
			} else if err != nil {
				p.Errors = append(p.Errors, Fault{Message: err.Error()})
			}
		}
		return p
	}
}

// statuses are those of the store's codes.
var statuses = map[store.Code]int{
	store.NotFound: http.StatusNotFound, store.Conflict: http.StatusPreconditionFailed, store.TooLarge: http.StatusRequestEntityTooLarge,
	store.Invalid: http.StatusUnprocessableEntity, store.Full: http.StatusInsufficientStorage,
}

// asProblem tells an error to whoever asked. What nobody can do anything about is
// logged, and told as little of as possible.
func (s *Server) asProblem(err error) error {
	var p *Problem
	var known *store.Error
	var wrong job.Problems
	var piece *plan.PieceError
	switch {
	case err == nil:
		return nil
	case errors.As(err, &p):
		return p
	case errors.As(err, &known):
		p = newProblem(statuses[known.Code], string(known.Code), known.Message)
		if known.Current != nil {
			p.Current = bodyOf(known.Current)
		}
		return p
	case errors.As(err, &wrong):
		return unsound(wrong)
	case errors.As(err, &piece):
		return newProblem(http.StatusUnprocessableEntity, "no_plan", err.Error())
	case errors.Is(err, context.Canceled):
		return newProblem(499, "gone", "whoever asked has gone")
	}
	s.Log.Error("failed", "error", err.Error())
	return newProblem(http.StatusInternalServerError, "internal", "the server could not do that; its log says why")
}

// unsound tells what is wrong in a job.
func unsound(wrong job.Problems) *Problem {
	p := newProblem(http.StatusUnprocessableEntity, "unsound_job", "the job cannot be planned as it stands")
	p.Errors = faultsOf(wrong)
	return p
}

func faultsOf(wrong job.Problems) []Fault {
	faults := []Fault{}
	for _, w := range wrong {
		faults = append(faults, faultOf(w))
	}
	return faults
}

func faultOf(w job.Problem) Fault {
	f := Fault{Path: w.Path, Line: w.Line, Column: w.Column, Code: w.What.Code, Args: map[string]any{}, Message: words.For("").Say(w.What)}
	for name, value := range w.What.Args.All() {
		f.Args[name] = value
	}
	return f
}
