package sheet

import (
	"firstdrop/draw"
	"firstdrop/geom"
	"firstdrop/measure"
)

// Figures along a line stand in rows. Each has a leader: a thin upright from
// its place on the line to its row.
//
//	───┬──┬───────────┬─────────┬─┬───   the line
//	   │  │         1035        │ │      row 0
//	   0  48                 1975 2023
//
// A figure stands under the end of its leader or to either side of it, and in
// the first row where it overlaps no other figure and no leader.

// slot is where a figure stands.
type slot struct {
	row    int
	anchor draw.Anchor // where the text stands against the leader: Start is right of it
	at     measure.Length
	span   geom.Interval
}

// beside is the air between a leader and a figure next to it.
const beside = 7 * mm / 10

// spread places figures of the given widths at the given places, in ascending
// order, within bounds if that is possible.
func spread(xs, widths []measure.Length, bounds geom.Interval) []slot {
	s := spreading{xs: xs, widths: widths, slots: make([]slot, len(xs)), placed: make([]bool, len(xs)), bounds: bounds}
	for left := len(xs); left > 0; {
		n := s.round()
		if n == 0 { // nothing has room: the outermost may stand beyond the bounds
			s.bounds = geom.Interval{Lo: -measure.MaxLength, Hi: measure.MaxLength}
		}
		left -= n
	}
	return s.slots
}

type spreading struct {
	xs, widths []measure.Length
	slots      []slot
	placed     []bool
	bounds     geom.Interval
}

// round places every figure that hides no leader still to be drawn, and returns
// how many those are: at least one, since the leftmost may stand on the left.
func (s *spreading) round() (n int) {
	for i := range s.xs {
		if !s.placed[i] && s.place(i) {
			s.placed[i] = true
			n++
		}
	}
	return n
}

func (s *spreading) place(i int) bool {
	for row := 0; row <= len(s.xs); row++ {
		for _, anchor := range []draw.Anchor{draw.Middle, draw.Start, draw.End} {
			c := slot{row: row, anchor: anchor}
			x, w := s.xs[i], s.widths[i]
			switch anchor {
			case draw.Middle:
				c.at, c.span = x, geom.Interval{Lo: x - w/2, Hi: x - w/2 + w}
			case draw.Start:
				c.at, c.span = x+beside, geom.Interval{Lo: x + beside, Hi: x + beside + w}
			case draw.End:
				c.at, c.span = x-beside, geom.Interval{Lo: x - beside - w, Hi: x - beside}
			}
			if s.fits(i, c) {
				s.slots[i] = c
				return true
			}
		}
	}
	return false
}

// fits reports whether figure i may stand in a slot. No figure placed before it
// lies across its leader, since none may hide a leader still to be drawn.
func (s *spreading) fits(i int, c slot) bool {
	if c.span.Union(s.bounds) != s.bounds {
		return false
	}
	air := geom.Interval{Lo: c.span.Lo - beside, Hi: c.span.Hi + beside}
	for j := range s.xs {
		if j == i {
			continue
		}
		hidden := air.Lo < s.xs[j] && s.xs[j] < air.Hi
		if !s.placed[j] {
			if hidden {
				return false
			}
			continue
		}
		o := s.slots[j]
		switch {
		case hidden && o.row >= c.row: // its leader would run through this figure
			return false
		case o.row == c.row && o.span.Overlaps(air):
			return false
		}
	}
	return true
}
