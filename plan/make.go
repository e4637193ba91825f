package plan

import (
	"slices"

	"firstdrop/cutting"
	"firstdrop/finding"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/message"
)

// Step is the fine grid on which starts are tried where Task.Step is not set.
const Step = measure.Millimetre

// Make returns the best plan for a task. The runs are laid out one after the
// other; of runs that share a paper, the few best layouts are then tried together. It fails when a rule does not fit a paper, when what is fixed
// leaves no layout, or, with a [*PieceError], when a piece is longer than a
// roll can be sure to give.
func Make(t *Task) (*Plan, error) { return makePlan(t, nil) }

// makePlan plans a task, in a session if that is not nil.
func makePlan(t *Task, session *Session) (*Plan, error) {
	p, err := planned(t, session)
	if !t.isStopped() {
		return p, err
	}
	if session != nil {
		*session = *NewSession() // what it has begun is not to be used again
	}
	return nil, ErrStopped
}

func planned(t *Task, session *Session) (*Plan, error) {
	if len(t.Runs) == 0 {
		return nil, message.New("nothing_to_hang", "there is nothing to hang")
	}
	p := &Plan{Task: t, Runs: make([]RunPlan, len(t.Runs)), Papers: make([]PaperPlan, len(t.Papers)), session: session}
	runs := make([]laid, len(t.Runs))
	for _, i := range t.inTurn() {
		var err error
		if runs[i], err = p.layOut(i); err != nil {
			return nil, err
		}
	}
	for i := range t.Papers {
		p.together(i, runs)
		if err := p.cut(i, p.allot(i, runs)); err != nil {
			return nil, err
		}
	}
	for i := range runs {
		p.relevel(i)
		runs[i].raise(p)
		p.raisePanels(i)
		p.raiseLifts(i)
	}
	finding.Sort(p.Findings)
	p.session = nil
	return p, nil
}

// inTurn lists the runs in the order in which they are laid out: linings after what
// hangs over them.
func (t *Task) inTurn() (order []int) {
	for _, isLining := range [2]bool{false, true} {
		for i := range t.Runs {
			if len(t.Runs[i].Over) > 0 == isLining {
				order = append(order, i)
			}
		}
	}
	return order
}

// runsIn lists the runs that are hung in a paper.
func (t *Task) runsIn(paper int) (runs []int) {
	for i := range t.Runs {
		if t.Runs[i].Paper == paper {
			runs = append(runs, i)
		}
	}
	return runs
}

// seamsOver returns where the seams stand of what hangs over a lining.
func (p *Plan) seamsOver(rt *RunTask) (lines []Line) {
	for _, a := range rt.Over {
		l := p.Runs[a.Run].Layout
		for w, over := range a.Walls {
			if over < 0 || l == nil {
				continue
			}
			for _, x := range seamsOn(l, over) {
				lines = append(lines, Line{w, x})
			}
		}
	}
	return lines
}

// search prepares the search for a layout of run i with its walls set so, the runs
// before it being laid out. A rival is to beat another.
func (p *Plan) search(i int, set []hanging.Setting, rival bool) (*search, error) {
	if s := p.session.search(p, i, set, rival); s != nil {
		return s, nil
	}
	return p.newSearch(i, set)
}

// newSearch prepares a search that uses nothing of an earlier one. What it knows of
// the run is the run as its sheets see it.
func (p *Plan) newSearch(i int, set []hanging.Setting) (*search, error) {
	return p.searchUnder(i, set, p.seamsOver(&p.Task.Runs[i]))
}

// searchUnder prepares a search that uses nothing of an earlier one, for a run over which
// paper hangs with its seams on lines.
func (p *Plan) searchUnder(i int, set []hanging.Setting, lines []Line) (*search, error) {
	rt := &p.Task.Runs[i]
	if len(lines) > 0 {
		lining := *rt
		lining.Lining = append(slices.Clone(rt.Lining), lines...)
		rt = &lining
	}
	label := &p.Task.Papers[rt.Paper]
	h, err := hanging.NewSet(rt.Run, set, label, p.Task.Rules)
	if err != nil {
		return nil, err
	}
	j := newJudge(rt, label, p.Task.Taste, h)
	if h.Run() != rt.Run {
		turned := *rt
		turned.Run = h.Run()
		rt = &turned
	}
	s := &search{
		task: p.Task, run: rt, h: h, lot: searchLot(label),
		judge:    j,
		standing: j.standing(),
		base:     p.earlier(i),
		step:     p.Task.Step,
		counts:   map[string]*count{},
	}
	if s.step <= 0 {
		s.step = Step
	}
	return s, nil
}

// layOut chooses the layout of run i.
func (p *Plan) layOut(i int) (laid, error) {
	if p.Task.Runs[i].isPanelled() {
		best, err := p.panelled(i)
		if err == nil {
			p.Runs[i] = RunPlan{Layout: best.best.layout, Score: best.total(), Tried: best.s.tried, Ways: 1, Searched: 1, Untried: best.s.untried()}
		}
		return best, err
	}
	set := p.Task.Runs[i].Fixed.fixedSet(len(p.Task.Runs[i].Run.Walls))
	best, ok := p.lined(i, set)
	if !ok {
		var err error
		if best, err = p.laidAs(i, set); err != nil {
			return laid{}, err
		}
	}
	run := RunPlan{Untried: best.s.untried()}
	best = p.choose(i, best, &run)
	run.Layout, run.Score, run.Tried = best.best.layout, best.total(), best.s.tried
	slices.Sort(run.Untried)
	run.Untried = slices.Compact(run.Untried)
	p.Runs[i] = run
	return best, nil
}

// total is what a layout weighs with the way its walls are set.
func (r *laid) total() int64 { return r.best.score + r.s.standing }

// laidAs chooses the layout of run i with its walls set so.
func (p *Plan) laidAs(i int, set []hanging.Setting) (laid, error) {
	s, err := p.search(i, set, false)
	if err != nil {
		return laid{}, err
	}
	best, err := s.find()
	p.session.keep(p, i, set, s, nil)
	if err != nil {
		return laid{}, err
	}
	return laid{s, best}, nil
}

// raise notes what the layout chosen for a run wants people to know.
func (r *laid) raise(p *Plan) {
	r.s.judge.out = &p.Findings
	r.s.judge.raiseLayout(r.best.layout, &r.best.kill)
	r.s.raiseReturns()
}

// earlier returns the pieces of the runs laid out before run i in the same paper.
func (p *Plan) earlier(i int) (pieces []cutting.Piece) {
	for r := range p.Runs {
		if r != i && p.Runs[r].Layout != nil && p.Task.Runs[r].Paper == p.Task.Runs[i].Paper {
			pieces = appendPieces(pieces, p.Runs[r].Layout)
		}
	}
	return pieces
}
