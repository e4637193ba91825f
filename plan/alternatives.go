package plan

import (
	"cmp"
	"slices"

	"firstdrop/finding"
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
)

// Alternatives are plans that a person would call different, none of which
// another beats in everything.
//
//	looks better ▲
//	             │ ● best looking
//	             │      ● best on the whole
//	             │   ○        dominated: it looks worse and saves nothing
//	             │              ● fewest rolls
//	             └───────────────────► fewer rolls
//
// Candidates are the layouts that survive the search, of every run in turn. Those
// beaten in all of rolls, handling and each aspect of the looks fall away, and so
// do those that differ only by seams moved a little. What is left is planned in
// full, and the same is asked again of the plans. Where that leaves fewer than
// three, less is asked of their difference, and at last some are shown that another
// beats, and said to be.

// Alternative is one of several plans to choose from.
type Alternative struct {
	Plan *Plan
	// Best says in what it is the best of those offered.
	Best []Virtue
	// Beaten says that another of those offered is as good in everything: it is
	// shown because people would call it different, and there were too few others.
	Beaten bool
	// Trade is what it costs and saves against the first.
	Trade Trade
}

// Virtue is what a plan may be best in.
type Virtue string

// The virtues.
const (
	OnTheWhole Virtue = "on the whole"
	Looks      Virtue = "looks"
	Rolls      Virtue = "rolls"
	Handling   Virtue = "handling" // fewest drops and pieces
)

// mostTried is how many candidates of a run are planned in full at a time.
const mostTried = 16

// fewest is how many alternatives there should be, so that there is a choice.
const fewest = 3

// apart is when people call two layouts different, and whether one that another
// beats in everything is offered too.
type apart struct {
	moved  measure.Length // by how much seams must have moved
	beaten bool
}

// parts are tried in turn until there are enough alternatives: a hand's breadth
// first (common practice), then less, then layouts that are clearly different though
// another is better.
var parts = []apart{
	{80 * measure.Millimetre, false},
	{40 * measure.Millimetre, false},
	{20 * measure.Millimetre, false},
	{80 * measure.Millimetre, true},
	{20 * measure.Millimetre, true},
}

// Alternatives returns up to most plans for a task, the best on the whole first,
// then by what they weigh: at least three, if there are as many layouts that differ
// by more than a finger's breadth. The same task gives the same plans in the same
// order. What is fixed in the task stays fixed in all of them.
func Alternatives(t *Task, most int) ([]Alternative, error) { return alternatives(t, nil, most) }

// Alternatives returns what [Alternatives] does. If the session's last plan was of the
// same task, the best is known from it.
func (s *Session) Alternatives(t *Task, most int) ([]Alternative, error) {
	return alternatives(t, s, most)
}

func alternatives(t *Task, session *Session, most int) ([]Alternative, error) {
	best, err := makePlan(t, session)
	if err != nil {
		return nil, err
	}
	plans, out := []*Plan{best}, []Alternative(nil)
	pools := make([]candidates, len(t.Runs))
	for i := range pools {
		if len(t.Runs[i].Over) == 0 && !t.Runs[i].isPanelled() { // a lining follows what hangs over it
			pools[i] = best.candidates(i)
		}
	}
	for _, d := range parts {
		for i := range pools {
			taken := pools[i].take(d)
			for k, c := range taken {
				t.tell(Layouts, k, len(taken))
				if p, err := Make(best.with(i, c.layout)); err == nil {
					p.Task = t
					plans = append(plans, p)
				}
			}
		}
		if out = offered(plans, most, d); len(out) >= min(fewest, most) {
			break
		}
	}
	return out, nil
}

// with returns the plan's task with all runs fixed as the plan has them, and run i
// as a layout has it.
func (p *Plan) with(i int, l *hanging.Layout) *Task {
	task := p.Task.untold()
	for k := range p.Runs {
		if k != i && len(p.Task.Runs[k].Over) == 0 {
			task = task.Fix(k, p.Runs[k].Layout)
		}
	}
	return task.Fix(i, l)
}

// candidates are layouts of a run worth planning in full, the best first.
type candidates struct {
	all     []candidate
	tallies []tally
	taken   []bool
}

// candidates returns layouts of run i: for each kill place and wall to start on the
// best.
func (p *Plan) candidates(i int) (cs candidates) {
	s, err := p.search(i, p.Runs[i].Layout.Choice.Set, false)
	if err != nil {
		return cs
	}
	cs.all = s.survivors()
	cs.tallies, cs.taken = make([]tally, len(cs.all)), make([]bool, len(cs.all))
	for k := range cs.all {
		cs.tallies[k] = s.tallyOf(&cs.all[k])
	}
	return cs
}

// take returns those not taken yet that nothing beats, or with beaten any, and that
// differ from all taken; few of those that are beaten, since they are second to
// others.
func (cs *candidates) take(d apart) (out []candidate) {
	most := mostTried
	if d.beaten {
		most = fewest
	}
	for k := range cs.all {
		beats := func(t tally) bool { return t.atLeastAsGood(cs.tallies[k]) && !cs.tallies[k].atLeastAsGood(t) }
		if len(out) == most || cs.taken[k] || !d.beaten && slices.ContainsFunc(cs.tallies, beats) || cs.isAlike(k, d.moved) {
			continue
		}
		cs.taken[k] = true
		out = append(out, cs.all[k])
	}
	return out
}

// isAlike reports whether people would call candidate k the same as one taken.
func (cs *candidates) isAlike(k int, moved measure.Length) bool {
	for i, taken := range cs.taken {
		if taken && alike(cs.all[i].layout, cs.all[k].layout, moved) {
			return true
		}
	}
	return false
}

// tallyOf adds a candidate up as a plan would be.
func (s *search) tallyOf(c *candidate) tally {
	n := s.counted(c.layout)
	if n.err != nil {
		return tally{rolls: 1 << 30, drops: 1 << 30}
	}
	t := tally{rolls: n.exact(), pieces: len(c.layout.Pieces)}
	for i := range c.layout.Drops {
		if c.layout.Drops[i].Number > 0 {
			t.drops++
		}
	}
	var fs []finding.Finding
	s.judge.out = &fs
	s.judge.raiseLayout(c.layout, &c.kill)
	s.judge.out = nil
	for _, f := range fs {
		t.looks += f.Weight
		t.by[AspectOf(f.Code)] += f.Weight
	}
	return t
}

// undominated drops the plans that another beats, or equals, in everything; the
// first, which is the best on the whole, always stays.
func undominated(plans []*Plan) (out []*Plan) {
	for i, p := range plans {
		if i == 0 || !isBeaten(p, i, plans) {
			out = append(out, p)
		}
	}
	return out
}

// isBeaten reports whether one of some plans beats plan i in everything, or is as
// good and comes before it.
func isBeaten(p *Plan, i int, plans []*Plan) bool {
	mine := p.tally()
	for k, q := range plans {
		theirs := q.tally()
		if k != i && theirs.atLeastAsGood(mine) && (theirs != mine || k < i) {
			return true
		}
	}
	return false
}

// offered chooses up to most plans that differ: the best on the whole, the best
// looking, that of the fewest rolls, the easiest to hang, and what lies between
// by what it weighs; and of those that others beat, as many as make it three.
func offered(plans []*Plan, most int, d apart) (out []Alternative) {
	add := func(p *Plan, most int) {
		for i := range out {
			if !differ(out[i].Plan, p, d.moved) {
				return
			}
		}
		if len(out) < most {
			out = append(out, Alternative{Plan: p, Trade: p.Against(plans[0])})
		}
	}
	good := undominated(plans)
	add(good[0], most)
	for _, v := range virtues {
		add(slices.MinFunc(good, v.compare), most)
	}
	byWeight := func(plans []*Plan, most int) {
		rest := slices.Clone(plans)
		slices.SortStableFunc(rest, func(a, b *Plan) int { return cmp.Compare(a.weight(), b.weight()) })
		for _, p := range rest {
			add(p, most)
		}
	}
	byWeight(good, most)
	if d.beaten {
		byWeight(plans, min(fewest, most))
	}
	for i := range out[1:] {
		others := make([]*Plan, len(out))
		for k := range out {
			others[k] = out[k].Plan
		}
		out[i+1].Beaten = isBeaten(out[i+1].Plan, i+1, others)
	}
	slices.SortStableFunc(out[1:], func(a, b Alternative) int { return cmp.Compare(a.Plan.weight(), b.Plan.weight()) })
	out[0].Best = append(out[0].Best, OnTheWhole)
	for _, v := range virtues {
		i := bestBy(out, v.compare)
		out[i].Best = append(out[i].Best, v.of)
	}
	return out
}

// virtues are what a plan may be best in beside the whole.
var virtues = []struct {
	of      Virtue
	compare func(a, b *Plan) int
}{
	{Looks, func(a, b *Plan) int {
		return cmp.Or(cmp.Compare(a.tally().looks, b.tally().looks), cmp.Compare(a.weight(), b.weight()))
	}},
	{Rolls, func(a, b *Plan) int {
		return cmp.Or(cmp.Compare(a.tally().rolls, b.tally().rolls), cmp.Compare(a.weight(), b.weight()))
	}},
	{Handling, func(a, b *Plan) int {
		return cmp.Or(cmp.Compare(a.tally().handling(), b.tally().handling()), cmp.Compare(a.weight(), b.weight()))
	}},
}

// bestBy returns the index of the first alternative that none is better than.
func bestBy(as []Alternative, compare func(a, b *Plan) int) (best int) {
	for i := range as {
		if compare(as[i].Plan, as[best].Plan) < 0 {
			best = i
		}
	}
	return best
}

// weight is what a plan weighs on the whole: its findings, rolls, drops and
// pieces.
func (p *Plan) weight() int64 {
	t, w := p.tally(), &p.Task.Taste.Weights
	return t.looks + int64(t.rolls)*w.Roll + int64(t.drops)*w.Drop + int64(t.pieces)*w.Piece
}

// differ reports whether people would call two plans different: the kill seam is
// elsewhere, or on some wall the seams have moved by more than so much.
func differ(a, b *Plan, moved measure.Length) bool {
	for i := range a.Runs {
		if !alike(a.Runs[i].Layout, b.Runs[i].Layout, moved) {
			return true
		}
	}
	return false
}

// alike reports whether people would call two layouts of a run the same.
func alike(x, y *hanging.Layout, moved measure.Length) bool {
	a, b := x.Choice.Kill, y.Choice.Kill
	if a.Kind != b.Kind || a.Wall != b.Wall || a.Kind == hanging.OnWall && (a.X-b.X).Abs() > x.Paper.Width {
		return false
	}
	for w := range x.Run.Walls {
		if seamsMoved(x, y, w) > moved {
			return false
		}
	}
	return true
}

// seamsMoved returns how far the seams of a wall have moved between two layouts:
// from a seam to the nearest of the other layout, where that is least. Seams of a
// wall move together; only at its ends one may come in or go out.
func seamsMoved(a, b *hanging.Layout, wall int) measure.Length {
	least := a.Paper.Width
	ys := seamsOn(b, wall)
	for _, x := range seamsOn(a, wall) {
		for _, y := range ys {
			least = min(least, (x - y).Abs())
		}
	}
	if len(ys) == 0 || least == a.Paper.Width {
		return 0
	}
	return least
}

// seamsOn lists where on a wall seams stand, its corners aside.
func seamsOn(l *hanging.Layout, wall int) (xs []measure.Length) {
	whole := geom.Interval{Lo: 1, Hi: l.Run.Walls[wall].Width - 1}
	for _, s := range l.Seams {
		if s.Wall == wall && whole.Contains(s.X) {
			xs = append(xs, s.X)
		}
	}
	return xs
}
