package audit

import (
	"fmt"

	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/room"
)

// farthest bounds every length judged, so that nothing here can overflow.
const farthest = 2 * int64(measure.MaxLength)

// soundness says of a layout whether it can be judged at all: nothing missing,
// every index leads somewhere, no length beyond measure. Its first complaint
// ends it.
type soundness struct {
	*book
	bad bool
}

func (s *soundness) need(ok bool, at Place, what string, want, got any) {
	if !ok && !s.bad {
		s.bad = true
		s.note(Sound, at, what, want, got)
	}
}

func (s *soundness) index(at Place, what string, i, n int) {
	if i < 0 || i >= n {
		s.need(false, at, what, fmt.Sprintf("from 0 to %d", n-1), i)
	}
}

func (s *soundness) lengths(at Place, what string, all ...measure.Length) {
	for _, l := range all {
		if int64(l) > farthest || int64(l) < -farthest {
			s.need(false, at, what, "within measure", l)
		}
	}
}

func (s *soundness) interval(at Place, what string, i geom.Interval) {
	s.lengths(at, what, i.Lo, i.Hi)
}

// soundLayout reports whether the layout can be judged.
func soundLayout(b *book, l *hanging.Layout) bool {
	s := soundness{book: b}
	s.need(l != nil && l.Run != nil && l.Paper != nil, Place{}, "the layout", "complete", "without layout, run or paper")
	if s.bad {
		return false
	}
	s.run(l.Run)
	s.paper(l.Paper)
	r := &l.Rules
	s.lengths(Place{}, "a rule", r.Head, r.Foot, r.Wrap, r.WrapLimit, r.OutsideWrap, r.PlumbTolerance, r.Overlap, r.CutStep)
	s.choice(l)
	s.drops(l)
	s.rest(l)
	return !s.bad
}

func (s *soundness) run(run *room.Run) {
	corners := len(run.Walls) - 1
	if run.Closed {
		corners++
	}
	s.need(len(run.Walls) > 0, Place{}, "number of walls", "more than 0", len(run.Walls))
	s.need(len(run.Corners) == corners, Place{}, "number of corners", corners, len(run.Corners))
	for _, c := range run.Corners {
		s.lengths(Place{}, "lean of a corner", c.LeanLeft, c.LeanRight)
	}
	s.lengths(Place{}, "lean of an end", run.Ends.Left.LeanRight, run.Ends.Right.LeanLeft)
	for i := range run.Walls {
		w, at := &run.Walls[i], Place{Wall: i + 1}
		s.need(w.Width > 0, at, "width", "more than 0", w.Width)
		s.lengths(at, "width", w.Width)
		s.ring(at, w.Outline)
		for o := range w.Openings {
			s.ring(at, w.Openings[o].Outline)
			s.lengths(at, "depth of a return", w.Openings[o].Depth)
		}
	}
}

func (s *soundness) ring(at Place, ring geom.Ring) {
	s.need(len(ring) >= 3, at, "corners of an outline", "3 or more", len(ring))
	for _, p := range ring {
		s.lengths(at, "a point", p.X, p.Y)
	}
}

func (s *soundness) paper(p *paper.Paper) {
	s.need(p.Width > 0, Place{}, "width of the paper", "more than 0", p.Width)
	s.need(p.Repeat >= 0, Place{}, "repeat", "0 or more", p.Repeat)
	s.lengths(Place{}, "a length of the paper", p.Width, p.Repeat, p.Across, p.RollLength, p.Match.Length)
}

func (s *soundness) choice(l *hanging.Layout) {
	c, walls := &l.Choice, len(l.Run.Walls)
	s.index(Place{}, "wall of the start", c.Start.Wall, walls)
	s.lengths(Place{}, "a choice", c.Start.X, c.Kill.X, c.Design)
	s.need((c.Kill.Kind != hanging.NoKill) == l.Run.Closed, Place{}, "kill seam in a closed run, and only there", l.Run.Closed, c.Kill.Kind)
	s.need(c.Kill.Kind >= hanging.NoKill && c.Kill.Kind <= hanging.OnWall, Place{}, "kind of the kill", "known", int(c.Kill.Kind))
	s.need(c.Kill.Lap == hanging.Left || c.Kill.Lap == hanging.Right, Place{}, "side of the lap", "left or right", int(c.Kill.Lap))
	if c.Kill.Kind != hanging.NoKill {
		s.index(Place{}, "wall of the kill", c.Kill.Wall, walls)
	}
	s.set(l)
	for _, n := range c.NewDrop {
		s.index(Place{}, "corner of a new drop", n, len(l.Run.Corners))
	}
}

// set: settings, where there are any, are one for each wall, and each can be
// worked out.
func (s *soundness) set(l *hanging.Layout) {
	set := l.Choice.Set
	s.need(len(set) == 0 || len(set) == len(l.Run.Walls), Place{}, "walls that are set", len(l.Run.Walls), len(set))
	for i := range set {
		at := Place{Wall: i + 1}
		s.need(set[i].To >= hanging.ToPlumb && set[i].To <= hanging.ToRight, at, "what it is set to", "known", int(set[i].To))
		s.need(set[i].Meets >= hanging.AtDatum && set[i].Meets <= hanging.MeetRight, at, "where its design meets", "known", int(set[i].Meets))
		s.need(set[i].Side == hanging.Left || set[i].Side == hanging.Right, at, "side of the casing", "left or right", int(set[i].Side))
	}
	if s.bad || len(set) == 0 {
		return
	}
	all, ok := turnings(l.Run, set)
	s.need(ok, Place{}, "what walls are set to", "there", "not")
	for i := range l.Turns {
		s.lengths(Place{Wall: i + 1}, "a turn", l.Turns[i].Lean, l.Turns[i].Rise, l.Turns[i].Lift)
	}
	for i, t := range all {
		_, y := heightsOf(l.Run.Walls[i].Outline)
		s.need(t.lean <= y && -t.lean <= y, Place{Wall: i + 1}, "lean of its sheets", "less than its height", lengthOf(t.lean))
	}
}

func (s *soundness) drops(l *hanging.Layout) {
	s.need(len(l.Drops) > 0, Place{}, "number of drops", "more than 0", 0)
	for i := range l.Drops {
		d, at := &l.Drops[i], Place{Drop: i + 1}
		s.need(len(d.Parts) > 0, at, "number of parts", "more than 0", 0)
		s.need(d.Index > -1<<30 && d.Index < 1<<30, at, "index", "within reason", d.Index)
		for j, p := range d.Parts {
			at.Part = j + 1
			s.index(at, "wall", p.Wall, len(l.Run.Walls))
			s.interval(at, "stretch of the wall", p.X)
			s.interval(at, "stretch of the width", p.Across)
			s.lengths(at, "skew", p.Skew)
		}
	}
}

func (s *soundness) rest(l *hanging.Layout) {
	drops, walls := len(l.Drops), len(l.Run.Walls)
	for i, m := range l.Seams {
		at := Place{Seam: i + 1}
		s.index(at, "wall", m.Wall, walls)
		s.index(at, "left drop", m.Left, drops)
		s.index(at, "right drop", m.Right, drops)
		s.interval(at, "misfit across", m.Across)
		s.lengths(at, "a length", m.X, m.Along)
		s.need(m.Kind >= hanging.Butt && m.Kind <= hanging.KillSeam, at, "kind", "known", int(m.Kind))
	}
	for i, m := range l.Plumbs {
		at := Place{Plumb: i + 1}
		s.index(at, "wall", m.Wall, walls)
		s.index(at, "drop", m.Drop, drops)
		s.lengths(at, "distance", m.X, m.Beyond)
		if !s.bad {
			s.index(at, "part", m.Part, len(l.Drops[m.Drop].Parts))
		}
	}
	for i, p := range l.Pieces {
		at := Place{Piece: i + 1}
		s.index(at, "drop", p.Drop, drops)
		s.interval(at, "what it must cover", p.Y)
		s.interval(at, "stretch of the width", p.Across)
		s.lengths(at, "a length", p.Length, p.Phase, p.Lead)
		if r := p.Return; r != nil {
			s.index(at, "wall of the return", r.Wall, walls)
			if !s.bad {
				s.index(at, "opening", r.Opening, len(l.Run.Walls[r.Wall].Openings))
			}
			s.interval(at, "a side of the return", r.X)
			s.interval(at, "a side of the return", r.Y)
		}
	}
}
