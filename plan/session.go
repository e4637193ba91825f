package plan

import (
	"encoding/binary"
	"fmt"
	"reflect"
	"slices"

	"firstdrop/cutting"
)

// Session plans the same rooms again and again, as when somebody drags the start
// along a wall. What did not change since is used again: where a start has moved,
// every drop that was weighed before; where a room has changed, every set of
// pieces that was cut before. The plans are those that [Make] returns, to the
// byte. A session is not safe for concurrent use. Of cuttings and counts it
// remembers up to [mostSolved] each, and then begins to remember anew.
type Session struct {
	searches []*search
	tasks    []Task // of each search
	solved   map[string]*cutting.Solution
}

// mostSolved is how many cuttings a session remembers: many more than one drag
// along a wall meets, and no more than some megabytes.
const mostSolved = 1000

// NewSession returns a session that has planned nothing yet.
func NewSession() *Session { return &Session{solved: map[string]*cutting.Solution{}} }

// Plan returns the best plan for a task, as [Make] does. What the task points to
// must not be changed afterwards: a room that has changed is another room.
func (s *Session) Plan(t *Task) (*Plan, error) { return makePlan(t, s) }

// search returns a search that has been used for the same run, ready to be used
// again, or nil.
func (s *Session) search(p *Plan, i int) *search {
	if s == nil || i >= len(s.searches) || len(p.Task.Runs[i].Over) > 0 || s.searches[i] == nil || !sameButStart(&s.tasks[i], p.Task, i) {
		return nil
	}
	old := s.searches[i]
	base := p.earlier(i)
	if !reflect.DeepEqual(base, old.base) {
		return nil
	}
	old.judge.out = nil
	if len(old.counts) >= mostSolved {
		clear(old.counts)
	}
	if old.best.layout != nil && reflect.DeepEqual(s.tasks[i].Runs[i].Fixed.Start, p.Task.Runs[i].Fixed.Start) {
		old.task, old.run, old.found = p.Task, &p.Task.Runs[i], true
		return old
	}
	return &search{
		task: p.Task, run: &p.Task.Runs[i], h: old.h, lot: old.lot, judge: old.judge, standing: old.standing, base: base,
		step: old.step, counts: old.counts, halves: old.halves, signer: old.signer,
	}
}

// keep keeps a search for the next plan.
func (s *Session) keep(p *Plan, i int, used *search) {
	if s == nil {
		return
	}
	for len(s.searches) <= i {
		s.searches, s.tasks = append(s.searches, nil), append(s.tasks, Task{})
	}
	task := *p.Task
	task.Runs = slices.Clone(task.Runs)
	s.searches[i], s.tasks[i] = used, task
}

// sameButStart reports whether run i of two tasks differs in nothing but where it
// is fixed to start.
func sameButStart(a, b *Task, i int) bool {
	if i >= len(a.Runs) || i >= len(b.Runs) {
		return false
	}
	x, y := a.Runs[i], b.Runs[i]
	x.Fixed.Start, y.Fixed.Start = nil, nil
	return x.Run == y.Run && reflect.DeepEqual(x, y) && x.Paper < len(a.Papers) &&
		reflect.DeepEqual(a.Papers[x.Paper], b.Papers[y.Paper]) && a.Rules == b.Rules &&
		reflect.DeepEqual(a.Cut, b.Cut) && a.Taste == b.Taste && a.Step == b.Step
}

// solve cuts pieces from rolls, or remembers how it cut the same before.
func (p *Plan) solve(spec cutting.Spec, options cutting.Options) (*cutting.Solution, error) {
	var key string
	if p.session != nil {
		key = specKey(&spec, &options)
		if known, ok := p.session.solved[key]; ok {
			return known, nil
		}
	}
	problem, err := cutting.NewProblem(spec)
	if err != nil {
		return nil, err
	}
	options.Progress = p.Task.watch()
	solution := cutting.Solve(problem, options)
	if p.session != nil {
		if len(p.session.solved) >= mostSolved {
			clear(p.session.solved)
		}
		p.session.solved[key] = solution
	}
	return solution, nil
}

// specKey is the same for the same question.
func specKey(spec *cutting.Spec, options *cutting.Options) string {
	key := fmt.Appendf(nil, "%v %v %v %v %v %v %v %v %v|", spec.Repeat, spec.Roll, spec.Stock, spec.Lead, spec.Loss, spec.InOrder,
		options.Steps, options.First, options.Then)
	for _, q := range spec.Pieces {
		key = binary.BigEndian.AppendUint64(key, uint64(q.Length))
		key = binary.BigEndian.AppendUint64(key, uint64(q.Phase))
	}
	return string(key)
}
