package plan

import (
	"encoding/binary"
	"fmt"
	"maps"
	"reflect"
	"slices"

	"firstdrop/cutting"
	"firstdrop/hanging"
)

// Session plans the same rooms again and again, as when somebody drags the start
// along a wall. What did not change since is used again: where a start has moved,
// every drop that was weighed before; where a room has changed, every set of
// pieces that was cut before. The plans are those that [Make] returns, to the
// byte. A session is not safe for concurrent use. Of cuttings and counts it
// remembers up to [mostSolved] each, and then begins to remember anew.
type Session struct {
	runs   []keptRun
	solved map[string]*cutting.Solution
}

// keptRun is what is kept of a run.
type keptRun struct {
	task     Task   // that the searches and ways were for
	searches []kept // one for each way in which its walls have been set
	ways     *keptWays
	alone    *linedAlone
}

// kept is a search that has been used.
type kept struct {
	search *search
	start  *hanging.Start    // where the run was fixed to start
	set    []hanging.Setting // as the walls were set for it
	panels *candidate        // the layout found, where it is one in equal panels
}

// keptWays are the ways to set the walls of a run.
type keptWays struct {
	ways []wallWay
	all  bool
}

// mostSolved is how many cuttings a session remembers: many more than one drag
// along a wall meets, and no more than some megabytes.
const mostSolved = 1000

// NewSession returns a session that has planned nothing yet.
func NewSession() *Session { return &Session{solved: map[string]*cutting.Solution{}} }

// Plan returns the best plan for a task, as [Make] does. What the task points to
// must not be changed afterwards: a room that has changed is another room.
func (s *Session) Plan(t *Task) (*Plan, error) { return makePlan(t, s) }

// run returns what is kept of a run that is the same but for where it is fixed to start;
// nil if nothing is, or in no session.
func (s *Session) run(p *Plan, i int) *keptRun {
	if s == nil || i >= len(s.runs) || !sameButStart(&s.runs[i].task, p.Task, i) {
		return nil
	}
	return &s.runs[i]
}

// used returns the search kept for a run with its walls set so, if the runs before it
// leave the same pieces; nil if there is none.
func (s *Session) used(p *Plan, i int, set []hanging.Setting) *kept {
	run := s.run(p, i)
	if run == nil || len(p.Task.Runs[i].Over) > 0 { // what hangs over a lining may hang otherwise
		return nil
	}
	at := run.at(set)
	if at < 0 || !reflect.DeepEqual(p.earlier(i), run.searches[at].search.base) {
		return nil
	}
	return &run.searches[at]
}

// at returns which of the searches had the walls set so; −1 if none.
func (r *keptRun) at(set []hanging.Setting) int {
	return slices.IndexFunc(r.searches, func(k kept) bool { return slices.Equal(k.set, set) })
}

// search returns a search that has been used for the same run with its walls set so,
// ready to be used again, or nil. To find the same again it need not search, unless it
// is to beat something.
func (s *Session) search(p *Plan, i int, set []hanging.Setting, rival bool) *search {
	k := s.used(p, i, set)
	if k == nil || k.panels != nil {
		return nil
	}
	old := k.search
	old.judge.out = nil
	if len(old.counts) >= mostSolved {
		clear(old.counts)
	}
	if !rival && !old.rival && old.best.layout != nil && reflect.DeepEqual(k.start, p.Task.Runs[i].Fixed.Start) {
		old.task, old.run, old.found = p.Task, old.seenAs(p, i), true
		return old
	}
	maps.DeleteFunc(old.counts, func(_ string, n *count) bool { return n.again }) // of which the next search may have patience for others
	return &search{
		task: p.Task, run: old.seenAs(p, i), h: old.h, lot: old.lot, judge: old.judge, standing: old.standing, base: old.base,
		step: old.step, counts: old.counts, halves: old.halves, signer: old.signer,
	}
}

// seenAs returns run i of a plan as the sheets of a search see it.
func (s *search) seenAs(p *Plan, i int) *RunTask {
	rt := &p.Task.Runs[i]
	if s.run.Run == rt.Run {
		return rt
	}
	turned := *rt
	turned.Run = s.run.Run
	return &turned
}

// panelled returns the layout in equal panels that was found for the same run, or false.
func (s *Session) panelled(p *Plan, i int) (laid, bool) {
	k := s.used(p, i, nil)
	if k == nil || k.panels == nil {
		return laid{}, false
	}
	return laid{k.search, *k.panels}, true
}

// keep keeps a search of a run with its walls set so for the next plan.
func (s *Session) keep(p *Plan, i int, set []hanging.Setting, used *search, panels *candidate) {
	if s == nil {
		return
	}
	run := s.hold(p, i)
	k := kept{search: used, start: p.Task.Runs[i].Fixed.Start, set: slices.Clone(set), panels: panels}
	if at := run.at(set); at >= 0 {
		run.searches[at] = k
	} else {
		run.searches = append(run.searches, k)
	}
}

// waysOf returns the ways to set the walls of a run, those kept if there are any.
func (s *Session) waysOf(p *Plan, i int) ([]wallWay, bool) {
	if s == nil {
		return p.ways(i)
	}
	run := s.hold(p, i)
	if run.ways == nil {
		run.ways = &keptWays{}
		run.ways.ways, run.ways.all = p.ways(i)
	}
	return slices.Clone(run.ways.ways), run.ways.all
}

// linedAlone returns how a lining is best by itself: as it was before, if that is kept.
func (s *Session) linedAlone(p *Plan, i int, set []hanging.Setting) *linedAlone {
	if s == nil {
		return p.linedAlone(i, set)
	}
	run, start := s.hold(p, i), p.Task.Runs[i].Fixed.Start
	if run.alone == nil || !reflect.DeepEqual(run.alone.start, start) {
		run.alone = p.linedAlone(i, set)
		run.alone.start = start
	}
	return run.alone
}

// hold returns what is kept of a run; nothing yet, if the run was another.
func (s *Session) hold(p *Plan, i int) *keptRun {
	for len(s.runs) <= i {
		s.runs = append(s.runs, keptRun{})
	}
	run := s.run(p, i)
	if run == nil {
		run = &s.runs[i]
		task := *p.Task
		task.Runs = slices.Clone(task.Runs)
		*run = keptRun{task: task}
	}
	return run
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
