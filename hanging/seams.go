package hanging

import (
	"firstdrop/geom"
	"firstdrop/measure"
	"firstdrop/room"
)

// Where two sheets meet, the design agrees if the paper carries on as if the
// wall were flat and the drops lay edge to edge on a table. Count across that
// table from the left edge of drop 0: drop i lies from i·w to (i+1)·w. At a
// seam, the left sheet shows the point uL of the table and the right sheet the
// point uR; what lies between is lost, or shown twice when uR < uL:
//
//	misfit across = uR − uL        (both taken at the seam line)
//
// The seam line may lean, and so may a sheet that has turned a leaning corner:
// the misfit then changes evenly from the foot to the head. At a kill seam
// whole design widths are no loss: they are taken off, and since each of them
// is one drop's width of offset, they decide the misfit along the drop.

// addSeams lists the seams from the left end of the run to its right end. The
// kill seam comes last.
func (l *Layout) addSeams(h *Hanger) {
	for i := range l.Drops {
		l.addInner(h, i)
		d := &l.Drops[i]
		if i+1 < len(l.Drops) {
			left, right := &d.Parts[len(d.Parts)-1], &l.Drops[i+1].Parts[0]
			l.Seams = append(l.Seams, l.seam(h, l.between(h, i, left, right), i, left, i+1, right))
		}
	}
	if l.Choice.Kill.Kind != NoKill {
		last := len(l.Drops) - 1
		parts := l.Drops[last].Parts
		l.Seams = append(l.Seams, l.seam(h, KillSeam, last, &parts[len(parts)-1], 0, &l.Drops[0].Parts[0]))
	}
}

// addInner adds the seams within drop i.
func (l *Layout) addInner(h *Hanger, i int) {
	parts := l.Drops[i].Parts
	for j := 1; j < len(parts); j++ {
		if !parts[j].Joined {
			l.Seams = append(l.Seams, l.seam(h, Carried, i, &parts[j-1], i, &parts[j]))
		}
	}
}

// between returns the kind of the seam between a drop and the next.
func (l *Layout) between(h *Hanger, i int, left, right *Part) SeamKind {
	w := h.paper.Width
	switch {
	case left.Across.Hi < w || right.Across.Lo > 0:
		return Renewed
	case left.Skew != 0 || right.Skew != 0:
		return Turned
	}
	return Butt
}

// seam describes the seam between two sheets.
func (l *Layout) seam(h *Hanger, kind SeamKind, i int, left *Part, j int, right *Part) Seam {
	s := Seam{Kind: kind, Wall: right.Wall, X: right.X.Lo, Left: i, Right: j}
	var lineLeft, lineRight, leanLeft, leanRight measure.Length // the seam line on either wall
	var step measure.Length                                     // of the design's height in a corner
	switch {
	case left.Wall != right.Wall || kind == KillSeam && l.Choice.Kill.Kind == AtCorner:
		s.InCorner, s.X = true, 0
		step = room.StepAt(h.turns, left.Wall)
		lineLeft, leanLeft = h.walls[left.Wall].width, h.walls[left.Wall].leanRight
		leanRight = h.walls[right.Wall].leanLeft
	case kind == KillSeam:
		s.X = l.Choice.Kill.X
		lineLeft, lineRight = s.X, s.X
	case l.Drops[i].Index < 0 || kind == Carried && left.Skew == 0: // laid towards the left
		s.X = left.X.Hi
		lineLeft, lineRight = s.X, s.X
	default:
		lineLeft, lineRight = s.X, s.X
	}
	table := measure.Length(l.Drops[j].Index-l.Drops[i].Index) * h.paper.Width
	foot := table + right.Across.Lo + lineRight - right.X.Lo - (left.Across.Lo + lineLeft - left.X.Lo)
	head := foot + leanRight - right.Skew - (leanLeft - left.Skew)
	if kind == KillSeam || kind == Renewed {
		foot, head, s.Along = h.closing(foot, head, l.Drops[j].Index)
	}
	if step != 0 && h.paper.Repeat > 0 {
		s.Along = centred(s.Along+step, h.paper.Repeat)
	}
	s.Across = geom.Interval{Lo: min(foot, head), Hi: max(foot, head)}
	return s
}

// closing takes whole widths of the design off a misfit and returns what is
// left across, and the misfit along that those widths bring with them. right
// is the index of the drop on the right.
func (h *Hanger) closing(foot, head measure.Length, right int) (f, e, along measure.Length) {
	w := h.paper.Width
	rest := centred(foot, w)
	widths := int((foot - rest) / w)
	along = h.paper.Shift(right) - h.paper.Shift(right-widths)
	if a := h.paper.Across; a > 0 && a < w {
		rest = centred(rest, a)
	}
	return rest, head - foot + rest, centred(along, h.paper.Repeat)
}

// centred returns l reduced modulo p to (−p/2, p/2]; 0 without a repeat.
func centred(l, p measure.Length) measure.Length {
	m := l.Mod(p)
	if 2*m > p {
		m -= p
	}
	return m
}
