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

// DrySeam is a place on a wall as hung, and where it would stand if the paper did not
// grow.
type DrySeam struct {
	Wall   int
	X, Dry measure.Length // from the wall's left end
}

// WetWall is a wall with its seams in paper that grows: set out from its plumb line,
// where nothing is off, to its two ends, where most is.
type WetWall struct {
	Wall        int
	Line        measure.Length // the first plumb line of the wall, from its left end
	Seams       []DrySeam      // from left to right
	Left, Right DrySeam        // the ends of the wall
}

// WetWalls lists the walls of a layout that have a plumb line; nil for a paper that
// does not grow.
func WetWalls(l *hanging.Layout) (out []WetWall) {
	p := l.Paper
	if p.DryWidth <= 0 || p.DryWidth == p.Width {
		return nil
	}
	for w := range l.Run.Walls {
		line, ok := lineOf(l, w)
		if !ok {
			continue
		}
		at := func(x measure.Length) DrySeam { return DrySeam{w, x, line + dry(l, x-line)} }
		wall := WetWall{Wall: w, Line: line, Left: at(0), Right: at(l.Hung().Walls[w].Width)}
		for _, x := range seamsOn(l, w) {
			wall.Seams = append(wall.Seams, at(x))
		}
		out = append(out, wall)
	}
	return out
}

// DrySeams returns where the seams of a layout would stand dry, wall by wall from
// its plumb line, from left to right; nil for a paper that does not grow.
func DrySeams(l *hanging.Layout) (out []DrySeam) {
	for _, w := range WetWalls(l) {
		out = append(out, w.Seams...)
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
