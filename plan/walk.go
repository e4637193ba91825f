package plan

import (
	"slices"

	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/room"
)

// Where bounds settle nothing and a search ends unsettled, what it has not looked at may be
// better. A walk knows nothing of bounds: from a layout at random it goes on to others that
// differ a little, each laid out in full and cut from rolls, as long as they weigh no more,
// and then begins anew somewhere else (stochastic local search with restarts, as handbooks of
// optimization have it: from memory):
//
//	weight │ ╲        ╲
//	       │  ╲__      ╲   ╱╲___      each walk ends where no small change
//	       │     ╲___   ╲_╱     ╲_    is for the better
//	       └──────────────────────────
//
// Its dice are numbered, so that the same task gives the same plan.

// walked is how many layouts a walk lays out.
const walked = 3000

// walk is such a walk through the layouts of a run.
type walk struct {
	s     *search
	salt  uint64
	dice  uint64 // thrown
	lines []line // of starts
	tried int
	best  candidate
}

// ramble walks where a search has ended unsettled that is free to begin anywhere, and keeps
// what is better than it has found.
func (s *search) ramble() {
	if s.proven || s.rival || s.run.Fixed.Start != nil || s.run.Fixed.Centre != nil {
		return
	}
	w := newWalk(s, 0)
	if w.goOn(walked); w.best.layout != nil && !s.isBeaten(w.best.score) {
		s.best = w.best
	}
}

// newWalk returns a walk; others with another salt.
func newWalk(s *search, salt uint64) *walk {
	return &walk{s: s, salt: salt, lines: s.lines(), best: candidate{score: never}}
}

// throw returns a number from 0 up to n.
func (w *walk) throw(n int) int {
	w.dice++
	return int(mix(w.salt, w.dice) % uint64(max(n, 1)))
}

// goOn walks until so many layouts have been tried. A walk has come to its end where so many
// small changes in a row are not for the better.
func (w *walk) goOn(most int) {
	const patience = 120
	for drawn := 0; w.tried < most && drawn < 10*most && !w.s.task.isStopped(); {
		drawn++
		c := w.begin()
		if !w.isChoice(&c) {
			continue
		}
		weight := w.weigh(&c)
		for failed := 0; failed < patience && w.tried < most; failed++ {
			n := w.step(c)
			if !w.isChoice(&n) {
				continue
			}
			switch other := w.weigh(&n); {
			case other < weight:
				c, weight, failed = n, other, 0
			case other == weight:
				c = n
			}
		}
	}
}

// weigh returns what a choice weighs, and keeps it if it is the best. Of one that cannot be
// better than the search's best it says what it weighs at the least.
func (w *walk) weigh(c *candidate) int64 {
	s, n := w.s, candidate{choice: c.choice, kill: c.kill}
	w.tried++
	n.kill.kill = n.choice.Kill
	if s.layOut(&n); n.layout == nil {
		return never
	}
	least := s.leastTotal(&n)
	if s.isBeaten(least) {
		return least
	}
	total, err := s.total(&n)
	if err != nil {
		return never
	}
	if n.score = total; total < w.best.score {
		w.best = n
	}
	return total
}

// begin returns a choice at random.
func (w *walk) begin() (c candidate) {
	l := w.lines[w.throw(len(w.lines))]
	c.choice.Start = hanging.Start{Wall: l.wall, X: l.from + measure.Length(w.throw(l.starts()))*l.step}
	if w.s.run.Fixed.Design != nil {
		c.choice.Design = *w.s.run.Fixed.Design
	}
	w.move(&c)
	for range w.throw(triedNew + 1) {
		w.turn(&c)
	}
	return c
}

// move sets the kill seam somewhere else.
func (w *walk) move(c *candidate) {
	c.kill = w.s.kills[w.throw(len(w.s.kills))]
	c.choice.Kill = c.kill.kill
	if span := c.kill.span; span.Length() > 2*nearEnd {
		c.choice.Kill.X = span.Lo + nearEnd + measure.Length(w.throw(int((span.Length()-2*nearEnd)/nearEnd)))*nearEnd
	}
}

// turn begins a new drop in a corner, or carries it on there.
func (w *walk) turn(c *candidate) {
	if len(w.s.run.Run.Corners) == 0 {
		return
	}
	corners, corner := slices.Clone(c.choice.NewDrop), w.throw(len(w.s.run.Run.Corners))
	if i := slices.Index(corners, corner); i >= 0 {
		c.choice.NewDrop = slices.Delete(corners, i, i+1)
		return
	}
	c.choice.NewDrop = append(corners, corner)
	slices.Sort(c.choice.NewDrop)
}

// step returns a choice that differs a little.
func (w *walk) step(c candidate) candidate {
	by := func(most int, step measure.Length) measure.Length {
		return measure.Length(w.throw(2*most+1)-most) * step
	}
	switch w.throw(6) {
	case 0, 1:
		c.choice.Start.X += by(20, w.s.step)
	case 2:
		c.choice.Start.X += by(200, w.s.step)
	case 3:
		w.move(&c)
	case 4:
		w.turn(&c)
	default:
		if span := c.kill.span; span.Length() > 2*nearEnd {
			c.choice.Kill.X = max(span.Lo+nearEnd, min(c.choice.Kill.X+by(30, nearEnd), span.Hi-nearEnd))
		}
	}
	return c
}

// isChoice reports whether a choice begins on its wall, and has new drops where some may be.
func (w *walk) isChoice(c *candidate) bool {
	run, f, start, kill := w.s.run.Run, &w.s.run.Fixed, c.choice.Start, &c.choice.Kill
	if len(c.choice.NewDrop) > max(triedNew, len(f.NewDrop)) {
		return false
	}
	var corners [mostNew]int16
	for i, corner := range c.choice.NewDrop {
		if run.Corners[corner].Kind != room.Inside || kill.Kind == hanging.AtCorner && kill.Wall == corner {
			return false
		}
		corners[i] = int16(corner) + 1
	}
	return f.allows(&corners, kill) && w.isOnGrid(start)
}

// isOnGrid reports whether a start stands on its wall, and on the grid of one of the lines
// there.
func (w *walk) isOnGrid(start hanging.Start) bool {
	return start.X > -w.s.halves.width && start.X < w.s.run.Run.Walls[start.Wall].Width &&
		slices.ContainsFunc(w.lines, func(l line) bool {
			by := start.X - l.from
			return l.wall == start.Wall && (by == 0 || l.starts() > 1 && by%l.step == 0)
		})
}
