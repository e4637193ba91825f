package plan

import (
	"cmp"
	"fmt"
	"slices"

	"firstdrop/cutting"
	"firstdrop/finding"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/room"
)

// The search for a layout goes from many to few.
//
//	every kill place × every wall × every start on a grid        thousands
//	  │  sketch: drops and seams only, paper by a rough count
//	  ▼
//	the valleys: starts better than their neighbours             hundreds
//	  │  where the grid was coarse, each moved on the fine grid to
//	  │  the bottom of its valley
//	  ▼
//	the best of them: laid out in full, in the order of a bound  hundreds
//	  │  cut from rolls until no bound is better than the best
//	  │  found; then corners are tried with new drops
//	  ▼
//	one, and the design height on it
//
// A start is a place of a seam within one width of the left end of a wall: all
// other starts on that wall give the same seams. Kill places, walls and starts
// are tried in order and the first of equals is kept, so that the same task
// gives the same plan.

// How many survive. In a run of many hundred walls a layout is dear: fewer do,
// and new drops are tried in fewer corners.
const (
	everyStart   = 600 // up to so many starts, every one is laid out in full
	valleysKept  = 160
	layoutsLeast = 3
	renewAll     = 16
)

// search looks for the best layout of one run.
type search struct {
	task   *Task
	run    *RunTask
	h      *hanging.Hanger
	lot    *lot // what rolls are counted of
	judge  *judge
	need   []needs
	base   []cutting.Piece // pieces of other runs that share the rolls
	sketch hanging.Layout
	row    []candidate // of the line being looked at
	tried  int
	step   measure.Length
	counts map[string]*count // by pieces
}

// candidate is a choice on its way.
type candidate struct {
	choice hanging.Choice
	kill   killPlace
	score  int64
	order  int
	layout *hanging.Layout
	bound  int64 // with layout: the score and the fewest rolls there can be
}

// best returns the best layout that can be cut from the paper's rolls.
func (s *search) best() (candidate, error) {
	cs := s.inFull(s.valleys())
	var best candidate
	var refused error
	for _, c := range cs {
		if best.layout != nil && c.bound >= best.score {
			break // and so are all that follow
		}
		total, err := s.total(&c)
		if err != nil {
			if refused == nil {
				refused = err
			}
			continue
		}
		c.score = total
		if best.layout == nil || c.score < best.score {
			best = c
		}
	}
	if best.layout == nil {
		if refused == nil {
			refused = fmt.Errorf("plan: run %q has no layout that keeps to what is fixed", s.run.Run.Name)
		}
		return best, refused
	}
	best = s.renewed(best)
	return s.anchored(best), nil
}

// valleys sketches all starts and returns those that are no worse than both
// their neighbours, best first. Where there are few starts, all are returned.
func (s *search) valleys() []candidate {
	var cs []candidate
	pairs := s.pairs()
	starts := 0
	for _, p := range pairs {
		starts += p.line.starts()
	}
	for _, p := range pairs {
		cs = append(cs, s.valleysOf(p.kill, p.line, len(cs), starts <= everyStart)...)
	}
	slices.SortStableFunc(cs, func(a, b candidate) int { return cmp.Compare(a.score, b.score) })
	most := min(valleysKept, max(layoutsLeast, valleysKept*20/len(s.run.Run.Walls)))
	if starts <= everyStart {
		most = starts
	}
	return cs[:min(len(cs), most)]
}

// valleysOf returns the valleys of one line of starts for one kill place, or
// every start. The line bends back on itself where it is a whole width long, but
// its ends are treated as ends: a valley there is found from both sides.
func (s *search) valleysOf(k killPlace, l line, order int, every bool) []candidate {
	row := s.row[:0]
	for x := l.from; x < l.to; x += l.step {
		c, ok := s.look(k, hanging.Start{Wall: l.wall, X: x})
		if ok {
			row = append(row, c)
		}
	}
	s.row = row
	var out []candidate
	for i, c := range row {
		if !every && (i > 0 && row[i-1].score <= c.score || i+1 < len(row) && row[i+1].score < c.score) {
			continue
		}
		c.order = order + len(out)
		if l.isGrid() && l.step > s.step {
			c = s.bottom(c, l)
		}
		out = append(out, c)
	}
	return out
}

// bottom moves a candidate on the fine grid to the best start within a coarse
// step of it.
func (s *search) bottom(c candidate, l line) candidate {
	best := c
	for d := s.step; d < l.step; d += s.step {
		for _, x := range []measure.Length{c.choice.Start.X - d, c.choice.Start.X + d} {
			if x < l.from || x >= l.to {
				continue
			}
			n, ok := s.look(c.kill, hanging.Start{Wall: l.wall, X: x})
			if ok && n.score < best.score {
				n.order = c.order
				best = n
			}
		}
	}
	return best
}

// look sketches one start and weighs it; false when the choice is none. A kill
// seam over an opening is tried at the opening's middle and at every edge of the
// last drops that lies over the opening, where only one drop is trimmed; of
// equals the one nearest the middle is kept.
func (s *search) look(k killPlace, start hanging.Start) (candidate, bool) {
	c := candidate{choice: hanging.Choice{Start: start, Kill: k.kill}, kill: k}
	if s.run.Fixed.Design != nil {
		c.choice.Design = *s.run.Fixed.Design
	}
	if !s.weigh(&c) {
		return c, false
	}
	if k.span.Length() == 0 {
		return c, true
	}
	best := c
	for _, x := range s.edges() {
		if x <= k.span.Lo || x >= k.span.Hi || x == k.kill.X {
			continue
		}
		n := c
		n.choice.Kill.X, n.kill.kill.X = x, x
		if s.weigh(&n) && (n.score < best.score || n.score == best.score && (x-k.kill.X).Abs() < (best.choice.Kill.X-k.kill.X).Abs()) {
			best = n
		}
	}
	return best, true
}

// weigh sketches a candidate and gives it its score; false when it is none.
func (s *search) weigh(c *candidate) bool {
	if err := s.h.Sketch(&s.sketch, c.choice); err != nil {
		return false
	}
	s.tried++
	c.score = s.judge.score(&s.sketch, &c.kill) + s.paper(&s.sketch)
	return true
}

// edges returns where the last drops before a kill seam on a wall begin and end
// untrimmed: those that come to it from the right, then from the left.
func (s *search) edges() [4]measure.Length {
	w := s.task.Papers[s.run.Paper].Width
	drops := s.sketch.Drops
	first := drops[0].Parts[0]
	last := drops[len(drops)-1].Parts
	end := last[len(last)-1]
	return [4]measure.Length{
		first.X.Lo - first.Across.Lo, first.X.Hi, end.X.Hi + w - end.Across.Hi, end.X.Lo,
	}
}

// inFull lays the candidates out in full and puts them in the order of their
// bounds. One that cannot be cut at all comes where its score puts it.
func (s *search) inFull(cs []candidate) []candidate {
	for i := range cs {
		c := &cs[i]
		if s.layOut(c); c.layout != nil {
			c.bound = c.score + int64(s.counted(c.layout).least)*s.task.Taste.Weights.Roll
		}
	}
	cs = slices.DeleteFunc(cs, func(c candidate) bool { return c.layout == nil })
	slices.SortStableFunc(cs, func(a, b candidate) int {
		return cmp.Or(cmp.Compare(a.bound, b.bound), cmp.Compare(a.order, b.order))
	})
	return cs
}

// layOut makes the layout of a candidate and weighs all but its rolls.
func (s *search) layOut(c *candidate) {
	l, err := s.h.Layout(c.choice)
	if err != nil {
		c.layout = nil
		return
	}
	if s.run.Fixed.Design == nil {
		if d := s.design(l); d != c.choice.Design {
			c.choice.Design = d
			l, _ = s.h.Layout(c.choice)
		}
	}
	c.layout = l
	c.score = s.judge.score(l, &c.kill) + s.judge.pieces(l)
}

// raiseReturns notes the returns that are left to the hanger.
func (s *search) raiseReturns() {
	for i := range s.run.Run.Walls {
		w := &s.run.Run.Walls[i]
		for o := range w.Openings {
			if op := &w.Openings[o]; op.Depth > 0 && op.Sides != (room.Sides{}) && len(hanging.Returns(op)) == 0 {
				s.judge.raise(ReturnByHand, finding.Serious, 0, finding.Place{Wall: w.Name, Opening: op.Name},
					finding.Size{Name: "depth", Value: op.Depth})
			}
		}
	}
}
