package plan

import (
	"firstdrop/finding"
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
)

// The findings that one drop may raise.
const (
	Sliver    finding.Code = "sliver"     // a strip narrower than the minimum, at a corner or an end
	OffCentre finding.Code = "off_centre" // the leading motif does not stand on the centre
	Awkward   finding.Code = "awkward"    // a piece that is hard to handle: too long, or cut out on both sides
)

// drop weighs the parts of a drop.
func (j *judge) drop(l *hanging.Layout, i int) (total int64) {
	d := &l.Drops[i]
	for k := range d.Parts {
		total += j.narrow(l, i, k) + j.betweenHoles(l, i, k)
		if j.walls[d.Parts[k].Wall].centre != nil {
			total += j.offCentre(l, i, k)
		}
	}
	return total
}

// narrow weighs a part that is a strip of its own and too narrow.
func (j *judge) narrow(l *hanging.Layout, i, k int) int64 {
	parts := l.Drops[i].Parts
	p := &parts[k]
	w := &j.walls[p.Wall]
	seen := p.X.Intersection(geom.Interval{Lo: 0, Hi: w.width})
	joined := p.Joined || k+1 < len(parts) && parts[k+1].Joined
	if joined || seen.Length() >= j.taste.MinSliver || seen.Length() < 0 {
		return 0
	}
	g := j.slim(p.Wall, seen.Length())
	if j.out != nil {
		j.raise(Sliver, severity(g), g, j.at(l, i, p.Wall, seen.Lo), size("width", seen.Length()))
	}
	return g
}

// slim weighs a strip of a wall by its width.
func (j *judge) slim(wall int, width measure.Length) int64 {
	return j.walls[wall].regard.of(graded(j.taste.Weights.Sliver, width, j.taste.MinSliver))
}

// betweenHoles weighs a part into which two openings bite, one from each side:
//
//	┌────┬─────┬────┐
//	│    │     │    │   the drop is one piece, shaped like
//	├──┐ │     │ ┌──┤   a T or an I, and tears easily
//	│  │ │     │ │  │
//	│w1├─┤drop ├─┤w2│
func (j *judge) betweenHoles(l *hanging.Layout, i, k int) int64 {
	p := &l.Drops[i].Parts[k]
	w := &j.walls[p.Wall]
	left, right := -1, -1
	for o := range w.holes {
		x := w.holes[o].x
		if x.Lo < p.X.Lo && p.X.Lo < x.Hi && x.Hi < p.X.Hi {
			left = o
		}
		if x.Lo > p.X.Lo && x.Lo < p.X.Hi && p.X.Hi < x.Hi {
			right = o
		}
	}
	if left < 0 || right < 0 {
		return 0
	}
	if j.out != nil {
		j.raise(Awkward, severity(j.taste.Weights.Awkward), j.taste.Weights.Awkward, j.at(l, i, p.Wall, w.holes[left].x.Hi),
			size("between", w.holes[right].x.Lo-w.holes[left].x.Hi))
	}
	return j.taste.Weights.Awkward
}

// offCentre weighs how far the leading motif stands off the line that it should
// stand on, if that line goes through part k. A pair of motifs with the line in
// the middle between them is centred too: that is a seam, or the like, in the
// centre. So the most it can be off is a quarter of a width.
//
//	◆       ◆  │    ◆       the line is nearer to the middle between
//	◆       ◆  ┊    ◆       two motifs than to either of them
//	           └┄ off by
func (j *judge) offCentre(l *hanging.Layout, i, k int) int64 {
	d := &l.Drops[i]
	p := &d.Parts[k]
	off, g := j.offLine(p, d.Reversed)
	if off != 0 && j.out != nil {
		j.raise(OffCentre, severity(g), g, j.at(l, i, p.Wall, *j.walls[p.Wall].centre), size("off", off))
	}
	return g
}

// offLine returns how far the leading motif of a part stands off the line of its wall, and what
// that weighs; 0 where it is less than a tape tells, or no line goes through the part.
func (j *judge) offLine(p *hanging.Part, reversed bool) (off measure.Length, weight int64) {
	line := j.walls[p.Wall].centre
	if line == nil || j.paper.Motif == nil || *line < p.X.Lo || *line >= p.X.Hi {
		return 0, 0
	}
	off = offAxis(p.Across.Lo+*line-p.X.Lo-j.axis(reversed), j.paper.Width)
	if off.Abs() < measure.Millimetre {
		return 0, 0
	}
	return off, share(j.taste.Weights.OffCentre, off.Abs(), j.paper.Width/4)
}

// axis returns where the motif's axis lies across a drop.
func (j *judge) axis(reversed bool) measure.Length {
	if reversed {
		return j.paper.Width - j.paper.Motif.Axis
	}
	return j.paper.Motif.Axis
}

// offAxis returns how far a line stands to the right of the nearest motif, or of
// the nearest middle between two, when it stands so far right of some motif.
func offAxis(right, width measure.Length) measure.Length {
	half := width / 2
	off := right.Mod(width)
	if off >= half {
		off -= half
	}
	if off > half-off {
		off -= half
	}
	return off
}
