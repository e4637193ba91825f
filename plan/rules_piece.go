package plan

import (
	"firstdrop/finding"
	"firstdrop/hanging"
	"firstdrop/measure"
)

// The findings that pieces and the design on them may raise.
const (
	MotifCut     finding.Code = "motif_cut"      // the leading motif is cut at the ceiling line
	MotifCutLow  finding.Code = "motif_cut_low"  // the leading motif is cut at a rail, a sill or a head
	ReturnByHand finding.Code = "return_by_hand" // a return that is not planned: an arch
)

// pieces weighs the pieces of a layout and the motifs that they cut.
func (j *judge) pieces(l *hanging.Layout) int64 {
	total := int64(len(l.Pieces)) * j.taste.Weights.Piece
	for i := range l.Pieces {
		total += j.long(l, &l.Pieces[i])
	}
	return total + j.motifs(l, l.Choice.Design)
}

// long weighs a piece that is too long for one person.
func (j *judge) long(l *hanging.Layout, p *hanging.Piece) int64 {
	if p.Length <= j.taste.LongPiece {
		return 0
	}
	if j.out != nil {
		x := l.Drops[p.Drop].Parts[0].X.Lo
		j.raise(Awkward, finding.Note, j.taste.Weights.Awkward, j.at(l, p.Drop, l.PieceWall(p), max(x, 0)), size("length", p.Length))
	}
	return j.taste.Weights.Awkward
}

// The lines that may cut a motif, all where its axis stands on the wall:
//
//	─ ─ ─ ─ ─ ┬ ─ ─ ─  ceiling      where the ceiling is out of level, all of
//	          │ axis                its heights over the drop count
//	      ────┼────    sill of a window above, head of a door below
//	          │
//	──────────┴──────  rail, where the paper does not go down to the floor
//
// A motif is cut when a line falls between its head and its foot. A drop that is hung
// higher, by a ceiling out of level, has its motifs as much higher under all of them.

// cutLine is a line that may cut the motif of a drop.
type cutLine struct {
	drop int
	wall int
	x    measure.Length // of the motif's axis
	y    measure.Length // the line's height; its highest point
	fall measure.Length // how far its lowest point over the drop lies below that
	lift measure.Length // how much higher the drop hangs than others
	what string         // "" for the ceiling
}

// motifs weighs the motifs that a design height cuts.
func (j *judge) motifs(l *hanging.Layout, design measure.Length) (total int64) {
	if j.paper.Motif == nil || j.paper.Repeat == 0 {
		return 0
	}
	j.lines = j.cutLines(j.lines[:0], l)
	for _, line := range j.lines {
		if j.isCut(l, &line, design) {
			total += j.cut(l, &line)
		}
	}
	return total
}

// cut weighs one motif that is cut.
func (j *judge) cut(l *hanging.Layout, line *cutLine) int64 {
	code, weight, s := MotifCut, j.taste.Weights.MotifCut, finding.Caution
	if line.what != "" {
		code, weight, s = MotifCutLow, j.taste.Weights.MotifCutLow, finding.Note
	}
	if j.out != nil {
		y := line.y
		j.raise(code, s, weight, finding.Place{
			Wall: j.run.Walls[line.wall].Name, Drop: l.Drops[line.drop].Number, X: &line.x, Y: &y,
		})
		(*j.out)[len(*j.out)-1].Word = line.what
	}
	return weight
}

// isCut reports whether a line goes through the motif at a design height.
func (j *judge) isCut(l *hanging.Layout, line *cutLine, design measure.Length) bool {
	d := &l.Drops[line.drop]
	below := (j.paper.Phase(d.Index, design, line.bottom(d)) - j.paper.Motif.Head).Mod(j.paper.Repeat)
	return cuts(j.paper, below, line.fall)
}

// bottom returns the end of the line at which the least of the design's phase is
// seen: its highest point, on a reversed drop its lowest; as high as it would stand if
// the drop did not hang higher.
func (line *cutLine) bottom(d *hanging.Drop) measure.Length {
	if d.Reversed {
		return line.y - line.fall - line.lift
	}
	return line.y - line.lift
}

// cutLines appends the lines that may cut the motifs of a layout's drops.
func (j *judge) cutLines(dst []cutLine, l *hanging.Layout) []cutLine {
	for i := range l.Drops {
		d := &l.Drops[i]
		if d.Number == 0 {
			continue
		}
		axis, first := j.axis(d.Reversed), len(dst)
		for k := range d.Parts {
			if p := &d.Parts[k]; p.Across.Lo < axis && axis < p.Across.Hi {
				dst = j.linesAt(dst, i, p, p.X.Lo+axis-p.Across.Lo)
			}
		}
		if j.level != nil && j.turns == nil {
			for k := first; k < len(dst); k++ {
				dst[k].lift = j.level.lift(l, i)
			}
		}
	}
	return dst
}

// linesAt appends the lines where the motif's axis of part p stands at x.
func (j *judge) linesAt(dst []cutLine, drop int, p *hanging.Part, x measure.Length) []cutLine {
	w := &j.walls[p.Wall]
	if x <= 0 || x >= w.width {
		return dst
	}
	line := cutLine{drop: drop, wall: p.Wall, x: x}
	reach := j.reachAt(p.Wall, x)
	top, foot := true, reach.Lo > 0
	for o := range w.holes {
		h := &w.holes[o]
		if x <= h.x.Lo || x >= h.x.Hi {
			continue
		}
		top, foot = top && h.y.Hi < reach.Hi, foot && h.y.Lo > reach.Lo
		if h.y.Hi < reach.Hi {
			line.y, line.what = h.y.Hi, "head"
			dst = append(dst, line)
		}
		if h.y.Lo > reach.Lo {
			line.y, line.what = h.y.Lo, "sill"
			dst = append(dst, line)
		}
	}
	if foot {
		line.y, line.what = reach.Lo, "rail"
		dst = append(dst, line)
	}
	if top {
		line.y, line.what = reach.Hi, ""
		if w.top.isUnlevel() {
			line.fall = w.top.fall(p.X)
			line.y = max(w.top.at(max(p.X.Lo, 0)), w.top.at(min(p.X.Hi, w.width)))
		}
		dst = append(dst, line)
	}
	return dst
}
