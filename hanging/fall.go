package hanging

import (
	"firstdrop/geom"
	"firstdrop/measure"
)

// Fall is how the design falls on a wall under one part of a drop: where the left
// edge of the whole width would stand, trimmed or not, and at what height a repeat
// begins. Whoever draws the design, on paper or on a screen, takes it from here.
//
//	     Edge + Skew
//	    /      the design upright: x to the right of the edge, y down from Begins.
//	   /       Reversed: x to the left of the edge + Width, y up from Begins.
//	  / ── Begins
//	 /
//	Edge
type Fall struct {
	// Edge is where the left edge stands at Over.Lo, from the wall's left end. At
	// Over.Hi it stands Skew to the right of that.
	Edge, Skew measure.Length
	Over       geom.Interval
	// Begins is a height over the datum at which a repeat begins: one of many. On a
	// reversed drop the design runs up from there.
	Begins   measure.Length
	Reversed bool
}

// Fall returns how the design falls under a part of a drop.
func (l *Layout) Fall(drop, part int) Fall {
	d := &l.Drops[drop]
	p := &d.Parts[part]
	f := Fall{
		Edge: p.X.Lo - p.Across.Lo, Begins: l.Choice.Design + l.Paper.Shift(d.Index), Reversed: d.Reversed,
	}
	if p.Skew != 0 {
		if f.Over = l.turnedOver(drop, part); f.Over.Length() > 0 {
			f.Skew = p.Skew
		}
	}
	return f
}

// turnedOver returns the heights of the corner by which a sheet came to a part's
// wall.
func (l *Layout) turnedOver(drop, part int) geom.Interval {
	left, right := l.Run.Reach(l.Drops[drop].Parts[part].Wall)
	if l.isBeforeStart(drop, part) {
		return right
	}
	return left
}

// EdgeAt returns where the left edge stands at a height, rounded to whole
// nanometres.
func (f *Fall) EdgeAt(y measure.Length) measure.Length {
	if f.Skew == 0 {
		return f.Edge
	}
	return f.Edge + (y-f.Over.Lo).Scaled(int64(f.Skew), int64(f.Over.Length()))
}
