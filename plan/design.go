package plan

import (
	"firstdrop/finding"
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/paper"
)

// The height of the design is free until the first piece is cut: moving it
// moves every phase alike. What decides is the line at the ceiling. A motif is
// cut there when the line falls between its head and its foot:
//
//	───────────── ceiling ─────────────     good: the line stands a little
//	    ▲ head room                         above the motif's head
//	   ┌─┴─┐ head
//	   │   │ motif
//	   └───┘ foot
//
// Where drops stand at different phases under one line (offset matches), or
// the ceiling is not level, no height may suit all; then the fewest are cut.

// headRoom is how far above the motif's head the ceiling line is best: enough
// for a ceiling that is not quite level, not so much that the motif hangs low
// (common practice).
const headRoom = 40 * measure.Millimetre

// designStep is the grid on which design heights are tried.
const designStep = measure.Millimetre

// design returns the best design height for a layout: the phase that drop 0
// shows at the datum. Without a motif, the design begins at the top of drop 0.
func (s *search) design(l *hanging.Layout) measure.Length {
	p := &s.task.Papers[s.run.Paper]
	if p.Repeat == 0 || len(l.Pieces) == 0 {
		return 0
	}
	line := l.Pieces[0].Y.Hi
	zero := (line - p.Shift(l.Drops[l.Pieces[0].Drop].Index)).Mod(p.Repeat)
	if p.Motif == nil {
		return zero
	}
	// From the height with the right head room downwards, all round.
	wanted := zero + p.Motif.Head - headRoom
	best, least := wanted.Mod(p.Repeat), int64(-1)
	for d := measure.Length(0); d < p.Repeat; d += designStep {
		design := (wanted - d).Mod(p.Repeat)
		if cost := s.cuts(l, design); least < 0 || cost < least {
			best, least = design, cost
		}
		if least == 0 {
			break
		}
	}
	return best
}

// cuts weighs the motifs that a design height cuts at the ceiling line.
func (s *search) cuts(l *hanging.Layout, design measure.Length) (total int64) {
	for i := range l.Pieces {
		if isCut(s.judge.paper, l, &l.Pieces[i], design) {
			total += s.task.Taste.Weights.MotifCut
		}
	}
	return total
}

// isCut reports whether the piece's ceiling line goes through its motif. Only
// the highest piece of a drop meets the ceiling.
func isCut(p *paper.Paper, l *hanging.Layout, piece *hanging.Piece, design measure.Length) bool {
	m := p.Motif
	if m == nil || p.Repeat == 0 || piece.Return != nil || len(piece.Name) > 0 && piece.Name[len(piece.Name)-1] > 'a' {
		return false
	}
	if piece.Across != (geom.Interval{}) && (piece.Across.Hi <= m.Axis || piece.Across.Lo >= m.Axis) {
		return false // the motif itself is not on this strip
	}
	d := &l.Drops[piece.Drop]
	below := (p.Phase(d.Index, design, piece.Y.Hi) - m.Head).Mod(p.Repeat)
	return below > 0 && below < m.Tall
}

// raiseCuts notes the motifs that the layout cuts.
func (s *search) raiseCuts(l *hanging.Layout) {
	for i := range l.Pieces {
		p := &l.Pieces[i]
		if !isCut(s.judge.paper, l, p, l.Choice.Design) {
			continue
		}
		d := &l.Drops[p.Drop]
		y := p.Y.Hi
		s.judge.raise(MotifCut, finding.Caution, finding.Place{
			Wall: s.run.Run.Walls[d.Parts[0].Wall].Name, Drop: d.Number, Y: &y,
		})
	}
}
