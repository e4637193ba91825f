package plan

import (
	"slices"

	"firstdrop/hanging"
)

// A lining is to have no seam under one of the paper over it. Where the paper's start is
// dragged along its wall, that would be a search for each place; but what is best for the
// lining by itself stays so, whatever hangs over it, and seams of the paper can but make it
// worse. So first that is found, then other layouts that weigh as much:
//
//	lining alone   ① ② ③ ④ …     all of the least weight
//	paper          │   │   │
//	               ✗ ✗ ✓          the first of which no seam comes near one of the paper
//
// Where there is none, the lining is searched with the paper's seams in mind; and so it is in
// a closed run, where mostly one layout is best by itself, and has a seam that comes near.

// linedAlone is a lining as it is best by itself.
type linedAlone struct {
	search *search // nil: it cannot be laid out so
	equals []candidate
	start  *hanging.Start // in a session: where the lining was fixed to start
}

// How many starts are tried for layouts of a lining that weigh as much, and how many of
// these are kept.
const (
	startsOfEquals = 128
	mostEquals     = 64
)

// lined chooses the layout of run i, a lining of an open run, if one that is best by itself
// comes near no seam of what hangs over it.
func (p *Plan) lined(i int, set []hanging.Setting) (laid, bool) {
	rt := &p.Task.Runs[i]
	if len(rt.Over) == 0 || rt.Run.Closed || len(p.Task.runsIn(rt.Paper)) > 1 {
		return laid{}, false
	}
	alone := p.session.linedAlone(p, i, set)
	if len(alone.equals) == 0 {
		return laid{}, false
	}
	s, err := p.newSearch(i, set)
	if err != nil {
		return laid{}, false
	}
	lines := p.seamsOver(rt)
	for _, c := range alone.equals {
		if isClearOf(c.layout, lines) && s.judge.score(c.layout, &c.kill) == alone.search.judge.score(c.layout, &c.kill) {
			s.best, s.coarse, s.tried, s.proven = c, alone.search.coarse, alone.search.tried, alone.search.proven
			return laid{s, c}, true
		}
	}
	return laid{}, false
}

// isClearOf reports whether no seam of a layout comes near any of the lines.
func isClearOf(l *hanging.Layout, lines []Line) bool {
	for i := range l.Seams {
		s := &l.Seams[i]
		if slices.ContainsFunc(lines, func(o Line) bool { return o.Wall == s.Wall && (s.X-o.X).Abs() < liningClear }) {
			return false
		}
	}
	return true
}

// linedAlone finds out how a lining is best by itself.
func (p *Plan) linedAlone(i int, set []hanging.Setting) *linedAlone {
	s, err := p.searchUnder(i, set, nil)
	if err != nil {
		return &linedAlone{}
	}
	best, err := s.find()
	if err != nil {
		return &linedAlone{}
	}
	return &linedAlone{search: s, equals: s.equals(best)}
}

// equals returns layouts that weigh as much as the best, and that first.
func (s *search) equals(best candidate) []candidate {
	all := []candidate{best}
	t := *s
	t.open, t.tried, t.full = nil, 0, 0
	t.best.score++
	t.each = func(c candidate) {
		if c.score == best.score {
			all = append(all, s.anchored(c))
		}
		if len(all) == mostEquals {
			t.open = t.open[:0]
		}
	}
	t.halves.s = &t
	m := newCombiner(&t)
	m.renews = m.walls <= renewWalls || m.forced
	t.closeup = closeup{m: m}
	every := max(1, len(t.starts)/startsOfEquals)
	for i := 0; i < len(t.starts); i += every {
		m.start(i)
	}
	t.settle(untilSettled, never)
	t.halves.s = s
	return all
}
