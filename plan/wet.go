package plan

import (
	"firstdrop/finding"
	"firstdrop/hanging"
	"firstdrop/measure"
)

// Paper that is pasted and soaks grows in width. Everything is planned with the
// width as hung; whoever sets out with a dry strip finds the seams elsewhere, and
// the difference adds up from the plumb line outwards:
//
//	plumb line
//	│  520  │  520  │  520  │     as hung
//	│ 517  │ 517  │ 517  │         dry: 9 mm short after three widths

// WetGrowth is the finding that seams set out dry would stand elsewhere.
const WetGrowth finding.Code = "wet_growth"

// DrySeam is a seam as hung, and where it would stand if the paper did not grow.
type DrySeam struct {
	Wall   int
	X, Dry measure.Length // from the wall's left end
}

// DrySeams returns where the seams of a layout would stand dry, wall by wall from
// its plumb line, from left to right; nil for a paper that does not grow.
func DrySeams(l *hanging.Layout) (out []DrySeam) {
	p := l.Paper
	if p.DryWidth <= 0 || p.DryWidth == p.Width {
		return nil
	}
	for w := range l.Run.Walls {
		line, ok := lineOf(l, w)
		if !ok {
			continue
		}
		for _, x := range seamsOn(l, w) {
			out = append(out, DrySeam{w, x, line + dry(l, x-line)})
		}
	}
	return out
}

// dry returns what a distance across the paper as hung is before it grows.
func dry(l *hanging.Layout, across measure.Length) measure.Length {
	return across.Scaled(int64(l.Paper.DryWidth), int64(l.Paper.Width))
}

// lineOf returns the first plumb line of a wall.
func lineOf(l *hanging.Layout, wall int) (measure.Length, bool) {
	for _, b := range l.Plumbs {
		if b.Wall == wall {
			return b.X, true
		}
	}
	return 0, false
}

// raiseWet notes by how much the growth adds up at the far end of each wall.
func (j *judge) raiseWet(l *hanging.Layout) {
	if j.paper.DryWidth <= 0 || j.paper.DryWidth == j.paper.Width {
		return
	}
	for w := range j.walls {
		line, ok := lineOf(l, w)
		if !ok {
			continue
		}
		reach := max(line.Abs(), (j.walls[w].width - line).Abs())
		off := reach - dry(l, reach)
		if off.Abs() < measure.Millimetre {
			continue
		}
		j.raise(WetGrowth, finding.Note, 0, finding.Place{Wall: j.run.Walls[w].Name},
			size("hung", j.paper.Width), size("dry", j.paper.DryWidth), size("far", off))
	}
}
