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
// full, and the same is asked again of the plans.

// Alternative is one of several plans to choose from.
type Alternative struct {
	Plan *Plan
	// Best says in what it is the best of those offered.
	Best []Virtue
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

const (
	// mostTried is how many candidates are planned in full.
	mostTried = 16
	// moved is by how much seams must have moved for people to call a layout
	// another one (common practice: a hand's breadth).
	moved = 80 * measure.Millimetre
)

// Alternatives returns up to most plans for a task, the best on the whole first,
// then by what they weigh. The same task gives the same plans in the same order.
// What is fixed in the task stays fixed in all of them.
func Alternatives(t *Task, most int) ([]Alternative, error) {
	best, err := Make(t)
	if err != nil {
		return nil, err
	}
	plans := []*Plan{best}
	for i := range t.Runs {
		for _, c := range best.candidates(i) {
			task := t
			for k := range t.Runs {
				if k != i {
					task = task.Fix(k, best.Runs[k].Layout)
				}
			}
			if p, err := Make(task.Fix(i, c.layout)); err == nil {
				p.Task = t
				plans = append(plans, p)
			}
		}
	}
	return offered(undominated(plans), most), nil
}

// candidates returns layouts of run i worth planning in full: those that nothing
// beats, and for each kill place and wall to start on the best.
func (p *Plan) candidates(i int) (out []candidate) {
	s, err := p.search(i, p.Runs[i].Layout.Choice.Set)
	if err != nil {
		return nil
	}
	cs := s.survivors()
	tallies := make([]tally, len(cs))
	for k := range cs {
		tallies[k] = s.tallyOf(&cs[k])
	}
	for k := range cs {
		beaten := slices.ContainsFunc(tallies, func(t tally) bool { return t.atLeastAsGood(tallies[k]) && !tallies[k].atLeastAsGood(t) })
		if !beaten && len(out) < mostTried && !slices.ContainsFunc(out, func(c candidate) bool { return alike(c.layout, cs[k].layout) }) {
			out = append(out, cs[k])
		}
	}
	return out
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
		mine, beaten := p.tally(), false
		for k, q := range plans {
			theirs := q.tally()
			if i > 0 && k != i && theirs.atLeastAsGood(mine) && (theirs != mine || k < i) {
				beaten = true
			}
		}
		if !beaten {
			out = append(out, p)
		}
	}
	return out
}

// offered chooses up to most plans that differ: the best on the whole, the best
// looking, that of the fewest rolls, the easiest to hang, and what lies between
// by what it weighs.
func offered(plans []*Plan, most int) (out []Alternative) {
	add := func(p *Plan) {
		for i := range out {
			if !differ(out[i].Plan, p) {
				return
			}
		}
		if len(out) < most {
			out = append(out, Alternative{Plan: p, Trade: p.Against(plans[0])})
		}
	}
	add(plans[0])
	for _, v := range virtues {
		add(slices.MinFunc(plans, v.compare))
	}
	rest := slices.Clone(plans)
	slices.SortStableFunc(rest, func(a, b *Plan) int { return cmp.Compare(a.weight(), b.weight()) })
	for _, p := range rest {
		add(p)
	}
	if len(out) > 0 {
		slices.SortStableFunc(out[1:], func(a, b Alternative) int { return cmp.Compare(a.Plan.weight(), b.Plan.weight()) })
		out[0].Best = append(out[0].Best, OnTheWhole)
	}
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
// elsewhere, or on some wall the seams have moved by more than a hand's breadth.
func differ(a, b *Plan) bool {
	for i := range a.Runs {
		if !alike(a.Runs[i].Layout, b.Runs[i].Layout) {
			return true
		}
	}
	return false
}

// alike reports whether people would call two layouts of a run the same.
func alike(x, y *hanging.Layout) bool {
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
