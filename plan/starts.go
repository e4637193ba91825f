package plan

import (
	"cmp"
	"slices"

	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/room"
)

// How much is tried. Every start is tried with every kill place, which grows as
// the square of the walls. In a run of some seventy walls and more the grid of
// starts is made coarser, so that it stays within a number of pairs, and the
// starts round the best are tried on the fine grid after that.
const mostPairs = 8_000_000

// allStarts lists the starts to try, in the order of the run.
func (s *search) allStarts() []hanging.Start {
	lines := s.lines()
	n := 0
	for _, l := range lines {
		n += l.starts()
	}
	times := max(1, (n*len(s.kills)+mostPairs-1)/mostPairs)
	s.coarse = s.step * measure.Length(times)
	starts := make([]hanging.Start, 0, 3*n/times+len(lines)) // room for those beside kill seams
	for _, l := range lines {
		for x := l.from; x < l.to; x += l.step * measure.Length(times) {
			starts = append(starts, hanging.Start{Wall: l.wall, X: x})
		}
	}
	s.own = len(starts)
	if s.run.Fixed.Start == nil && s.run.Fixed.Centre == nil && s.run.Run.Closed {
		for _, l := range lines {
			starts = s.besideKill(starts, l)
		}
	}
	return starts
}

// besideKill appends the starts of the same seams as those of a line that make a
// difference where the kill seam stands on the start's own wall, and are tried
// with such kill places only: at the wall's last seam, since seams left of the kill
// are then those that come all the way round; and with drop 0 left of the first
// seam, where the kill seam would else lie under it.
//
//	  kill                     from the left, seams right of the kill are
//	├──┬──┬──╳──┬──┬──┬──┤     those that come all the way round; from
//	   start      or start     the right, those left of it are
func (s *search) besideKill(starts []hanging.Start, l line) []hanging.Start {
	w, width := s.task.Papers[s.run.Paper].Width, s.run.Run.Walls[l.wall].Width
	var spans []geom.Interval // where kill seams may stand on the wall
	for i := range s.kills {
		if k := &s.kills[i]; k.kill.Kind == hanging.OnWall && k.kill.Wall == l.wall {
			spans = append(spans, k.span)
		}
	}
	if len(spans) == 0 {
		return starts
	}
	under := func(first measure.Length) bool {
		return slices.ContainsFunc(spans, func(x geom.Interval) bool { return x.Lo < first+w && first < x.Hi })
	}
	for x := l.from; x < l.to; x += s.coarse {
		first, last := x, x+(width-1-x).FloorTo(w)
		if x > w {
			first = x.Mod(w)
		}
		for _, at := range [...]measure.Length{first, last} {
			if at != x {
				starts = append(starts, hanging.Start{Wall: l.wall, X: at})
			}
		}
		if first > 0 && under(first) {
			starts = append(starts, hanging.Start{Wall: l.wall, X: first - w})
		}
	}
	return starts
}

// startsNear lists the starts of the fine grid round one of the coarse.
func (s *search) startsNear(start hanging.Start) (starts []hanging.Start) {
	for d := s.step; d < s.coarse; d += s.step {
		for _, x := range [...]measure.Length{start.X - d, start.X + d} {
			if x >= 0 && x < s.run.Run.Walls[start.Wall].Width {
				starts = append(starts, hanging.Start{Wall: start.Wall, X: x})
			}
		}
	}
	return starts
}

// line is a row of starts on one wall: every step from from, before to.
type line struct {
	wall           int
	from, to, step measure.Length
}

// starts counts the starts of a line.
func (l line) starts() int { return int((l.to - l.from + l.step - 1) / l.step) }

// lines returns the starts to try: what is fixed, or on each wall where hanging may
// begin one width of starts and the centre lines of focal walls.
func (s *search) lines() []line {
	w := s.task.Papers[s.run.Paper].Width
	f := s.run.Fixed
	if f.Start != nil {
		return []line{{f.Start.Wall, f.Start.X, f.Start.X + 1, 1}}
	}
	if f.Centre != nil {
		return s.centred(*f.Centre)
	}
	narrow, begins := s.narrow(), s.beginsOn()
	var ls []line
	for i := range s.run.Run.Walls {
		wall := &s.run.Run.Walls[i]
		if wall.Width < w && !narrow || !begins(i) {
			continue // the drops that pass over a narrow one are those of its neighbours
		}
		ls = append(ls, line{i, min(0, wall.Width-w), min(w, wall.Width), s.step})
		if wall.Sight == room.Focal {
			ls = append(ls, s.centred(Centre{Wall: i, X: wall.Width / 2})...)
		}
	}
	return ls
}

// narrow reports whether every wall of the run is narrower than the paper.
func (s *search) narrow() bool {
	widest := slices.MaxFunc(s.run.Run.Walls, func(a, b room.Wall) int { return cmp.Compare(a.Width, b.Width) })
	return widest.Width < s.task.Papers[s.run.Paper].Width
}

// centred returns the starts that put a drop, a seam or the motif on a line.
func (s *search) centred(c Centre) []line {
	p := &s.task.Papers[s.run.Paper]
	one := func(x measure.Length) line { return line{c.Wall, x, x + 1, 1} }
	drop, seam := one(c.X-p.Width/2), one(c.X)
	if c.X >= s.run.Run.Walls[c.Wall].Width {
		seam = one(c.X - p.Width)
	}
	axis := drop
	if p.Motif != nil {
		axis = one(c.X - p.Motif.Axis)
	}
	switch c.Of {
	case DropCentre:
		return []line{drop}
	case SeamCentre:
		return []line{seam}
	case MotifAxis:
		return []line{axis}
	}
	if axis != drop {
		return []line{axis, drop, seam}
	}
	return []line{drop, seam}
}
