package web

import (
	"container/list"
	"context"
	"crypto/sha256"
	"errors"
	"fmt"
	"net/http"
	"sync"

	"firstdrop/audit"
	"firstdrop/finding"
	"firstdrop/job"
	"firstdrop/job/yaml"
	"firstdrop/measure"
	"firstdrop/plan"
	"firstdrop/words"
)

// planned is a job with its plan, which has passed the audit. It is shared and
// never changed.
type planned struct {
	job  *job.Job
	plan *plan.Plan
}

// units returns the system of units that is asked for, or else the job's.
func (p *planned) units(asked string) measure.System {
	switch asked {
	case measure.Metric.String():
		return measure.Metric
	case measure.Imperial.String():
		return measure.Imperial
	}
	return p.job.Units.System()
}

// words returns the language that is asked for, in units.
func (p *planned) words(w Words) *words.Catalogue { return words.For(w.Lang).In(p.units(w.Units)) }

// plans remembers the plans that were made last, by what their documents hold: all
// drawings of a room are asked for one after the other.
type plans struct {
	mu    sync.Mutex
	byKey map[[sha256.Size]byte]*list.Element
	order *list.List // of *remembered, the last used first
}

type remembered struct {
	key  [sha256.Size]byte
	plan *planned
}

// mostPlans is how many plans are remembered.
const mostPlans = 16

func newPlans() *plans {
	return &plans{byKey: map[[sha256.Size]byte]*list.Element{}, order: list.New()}
}

func (ps *plans) get(key [sha256.Size]byte) *planned {
	ps.mu.Lock()
	defer ps.mu.Unlock()
	e := ps.byKey[key]
	if e == nil {
		return nil
	}
	ps.order.MoveToFront(e)
	return e.Value.(*remembered).plan
}

func (ps *plans) put(key [sha256.Size]byte, p *planned) {
	ps.mu.Lock()
	defer ps.mu.Unlock()
	if ps.byKey[key] != nil {
		return
	}
	ps.byKey[key] = ps.order.PushFront(&remembered{key, p})
	if ps.order.Len() > mostPlans {
		last := ps.order.Remove(ps.order.Back()).(*remembered)
		delete(ps.byKey, last.key)
	}
}

// fileName is what messages call a document that was sent.
const fileName = "job"

// planOf reads, plans and audits a document. It takes a processor: call it in the
// line. It ends soon after ctx is done.
func (s *Server) planOf(ctx context.Context, document []byte) (*planned, error) {
	key := sha256.Sum256(document)
	if p := s.plans.get(key); p != nil {
		return p, nil
	}
	j, err := yaml.Read(fileName, document)
	if err != nil {
		return nil, err
	}
	task, err := j.Task()
	if err != nil {
		return nil, noPlan(err)
	}
	task.Stop = func() bool { return ctx.Err() != nil }
	made, err := s.Make(task)
	task.Stop = nil // the plan is remembered, the request is not
	if err != nil {
		return nil, noPlan(err)
	}
	if wrong := audit.Plan(made); len(wrong) > 0 {
		return nil, fmt.Errorf("the plan did not pass its audit: %d violations, the first: %v", len(wrong), wrong[0])
	}
	made.Findings = append(j.Findings(), made.Findings...)
	finding.Sort(made.Findings)
	p := &planned{j, made}
	s.plans.put(key, p)
	return p, nil
}

// noPlan says why a sound job has no plan.
func noPlan(err error) error {
	var wrong job.Problems
	if errors.As(err, &wrong) {
		return err
	}
	return newProblem(http.StatusUnprocessableEntity, "no_plan", err.Error())
}
