package hanging

import (
	"firstdrop/geom"
	"firstdrop/measure"
)

// Fall is how the design falls on a wall, as surveyed, under one part of a drop:
// where the left edge of the whole width would stand, trimmed or not, and at what
// height a repeat begins. Whoever draws the design, on paper or on a screen, takes it
// from here. A sheet leans where its wall is turned, and where it has turned a
// leaning corner.
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
	// Begins is a height over the datum at which a repeat begins at the wall's left end,
	// or would if the design went on up to there: one of many. On a reversed drop the
	// design runs up from there. Over the length Wide a row of the design rises by Rise
	// to the right; Wide is 0 where rows are level.
	Begins, Rise, Wide measure.Length
	Reversed           bool
}

// Fall returns how the design falls under a part of a drop.
func (l *Layout) Fall(drop, part int) Fall {
	d := &l.Drops[drop]
	p := &d.Parts[part]
	s := l.standOf(p.Wall)
	f := Fall{
		Edge: p.X.Lo - p.Across.Lo, Begins: l.Choice.Design + l.Paper.Shift(d.Index) + s.lift, Reversed: d.Reversed,
	}
	if l.Lifts != nil {
		f.Begins += l.Lifts[drop]
	}
	if s.rise != 0 {
		f.Rise, f.Wide = s.rise, s.width
	}
	if p.Skew != 0 {
		if f.Over = l.turnedOver(drop, part); f.Over.Length() > 0 {
			f.Skew = p.Skew
		}
	}
	return f.leaning(&s)
}

// leaning adds what the sheets of the wall lean.
func (f Fall) leaning(s *stand) Fall {
	if s.lean == 0 {
		return f
	}
	if f.Skew == 0 {
		f.Over = geom.Interval{Lo: s.foot, Hi: s.foot + s.height}
	}
	f.Edge += s.off(f.Over.Lo)
	f.Skew += s.off(f.Over.Hi) - s.off(f.Over.Lo)
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

// RowAt returns the height of the row that begins a repeat at Begins, so far from the
// wall's left end.
func (f *Fall) RowAt(x measure.Length) measure.Length {
	if f.Rise == 0 {
		return f.Begins
	}
	return f.Begins + f.Rise.Scaled(int64(x), int64(f.Wide))
}
