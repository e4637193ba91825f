package plan

import (
	"cmp"
	"slices"

	"firstdrop/measure"
	"firstdrop/room"
)

// How much is tried. A sketch costs as much as the run has walls, so the grid
// of starts is as fine as a number of visits to walls allows: every millimetre
// in a room of four or five walls, every coarsest step in one of eight. Beyond
// that, each kill place is tried only with the walls beside it and the focal
// walls, and in the end only the best kill places are.
const (
	wallVisits    = 160_000
	sketchesLeast = 400
	coarsest      = 5 // steps of the fine grid
)

// pair is a kill place and a line of starts to try it with.
type pair struct {
	kill killPlace
	line line
}

// line is a row of starts on one wall: every step from from, before to.
type line struct {
	wall           int
	from, to, step measure.Length
}

// starts counts the starts of a line.
func (l line) starts() int { return int((l.to - l.from + l.step - 1) / l.step) }

// isGrid reports whether the line is more than one start that is set.
func (l line) isGrid() bool { return l.to-l.from > 1 }

// pairs lists what to try, in the order of the run.
func (s *search) pairs() []pair {
	kills := killPlaces(s.run.Run, s.run.Fixed.Kill)
	lines := s.lines()
	starts := 0
	for _, l := range lines {
		starts += l.starts()
	}
	allowed := max(sketchesLeast, wallVisits/len(s.run.Run.Walls))
	times := max(1, (len(kills)*starts+allowed-1)/allowed)
	for i := range lines {
		if lines[i].isGrid() {
			lines[i].step = s.step * measure.Length(min(times, coarsest))
		}
	}
	beside := times > coarsest && len(lines) > 3
	if beside {
		kills = s.fewKills(kills, lines, allowed)
	}
	ps := make([]pair, 0, len(kills)*min(len(lines), 8))
	for _, k := range kills {
		for _, l := range lines {
			if !beside || s.isBeside(k, l) {
				ps = append(ps, pair{k, l})
			}
		}
	}
	return ps
}

// fewKills keeps as many of the best kill places as may be tried with two walls
// each, in the order of the run.
func (s *search) fewKills(kills []killPlace, lines []line, allowed int) []killPlace {
	most := max(2, allowed/(2*lines[0].starts()+1))
	if len(kills) <= most {
		return kills
	}
	price := func(k *killPlace) int64 { return int64(k.height/measure.Millimetre) * k.visibility() }
	prices := make([]int64, len(kills))
	for i := range kills {
		prices[i] = price(&kills[i])
	}
	slices.Sort(prices)
	limit := prices[most-1]
	kept := make([]killPlace, 0, most)
	for i := range kills {
		if len(kept) < most && price(&kills[i]) <= limit {
			kept = append(kept, kills[i])
		}
	}
	return kept
}

// isBeside reports whether a line of starts lies on a wall beside the kill
// place, or is one of the centre lines of a focal wall.
func (s *search) isBeside(k killPlace, l line) bool {
	n := len(s.run.Run.Walls)
	return l.wall == k.kill.Wall || l.wall == (k.kill.Wall+1)%n || !l.isGrid()
}

// lines returns the starts to try: what is fixed, or on each wall one width of
// starts and the centre lines of focal walls.
func (s *search) lines() []line {
	w := s.task.Papers[s.run.Paper].Width
	f := s.run.Fixed
	if f.Start != nil {
		return []line{{f.Start.Wall, f.Start.X, f.Start.X + 1, 1}}
	}
	if f.Centre != nil {
		return s.centred(*f.Centre)
	}
	narrow := s.narrow()
	var ls []line
	for i := range s.run.Run.Walls {
		wall := &s.run.Run.Walls[i]
		if wall.Width < w && !narrow {
			continue // the drops that pass over it are those of its neighbours
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
