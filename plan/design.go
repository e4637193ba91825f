package plan

import (
	"cmp"
	"slices"

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
// Where drops stand at different phases under one line (offset matches), or the
// ceiling is not level, no height may suit all; then the fewest are cut. After the
// ceiling, heads, sills and rails count. What a height cuts changes only where a
// line just touches the head or the foot of a motif, so only such heights are
// tried, and no better one lies between them.

// headRoom is how far above the motif's head the ceiling line is best: enough
// for a ceiling that is not quite level, not so much that the motif hangs low
// (common practice).
const headRoom = 40 * measure.Millimetre

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
	wanted := (zero + p.Motif.Head - headRoom).Mod(p.Repeat)
	levels := s.judge.levels(l)
	best, least := wanted, levels.cost(wanted, p)
	for _, d := range levels.heights(wanted, p) {
		if least == 0 {
			break
		}
		if cost := levels.cost(d, p); cost < least {
			best, least = d, cost
		}
	}
	return best
}

// level is all lines that cut the motif at the same design heights: the design
// shows at them at the design height d the phase d + shift below the motif's
// head, or shift − d where drops hang reversed.
type level struct {
	shift, fall measure.Length
	reversed    bool
	weight      int64
}

type levels []level

// levels gathers the lines that may cut the motifs of a layout.
func (j *judge) levels(l *hanging.Layout) (ls levels) {
	p := j.paper
	j.lines = j.cutLines(j.lines[:0], l)
	for _, line := range j.lines {
		d := &l.Drops[line.drop]
		n := level{fall: line.fall, reversed: d.Reversed, weight: j.taste.Weights.MotifCut}
		if line.what != "" {
			n.weight = j.taste.Weights.MotifCutLow
		}
		n.shift = (p.Phase(d.Index, 0, line.bottom(d)) - p.Motif.Head).Mod(p.Repeat)
		same := func(o level) bool { return o.shift == n.shift && o.fall == n.fall && o.reversed == n.reversed }
		if k := slices.IndexFunc(ls, same); k >= 0 {
			ls[k].weight += n.weight
		} else {
			ls = append(ls, n)
		}
	}
	return ls
}

// below returns which phase below the motif's head the lines of the level meet.
func (n *level) below(design measure.Length, p *paper.Paper) measure.Length {
	if n.reversed {
		return (n.shift - design).Mod(p.Repeat)
	}
	return (n.shift + design).Mod(p.Repeat)
}

// cost weighs the motifs that are cut at a design height.
func (ls levels) cost(design measure.Length, p *paper.Paper) (total int64) {
	for i := range ls {
		if cuts(p, ls[i].below(design, p), ls[i].fall) {
			total += ls[i].weight
		}
	}
	return total
}

// heights lists the design heights at which the cost may change, from the one
// wanted downwards, all round: those at which a line just touches the head or the
// foot of a motif.
func (ls levels) heights(wanted measure.Length, p *paper.Paper) (ds []measure.Length) {
	for i := range ls {
		n := &ls[i]
		for _, b := range [...]measure.Length{0, p.Motif.Tall, -n.fall} {
			d := b - n.shift
			if n.reversed {
				d = n.shift - b
			}
			ds = append(ds, d.Mod(p.Repeat))
		}
	}
	slices.SortFunc(ds, func(a, b measure.Length) int {
		return cmp.Compare((wanted - a).Mod(p.Repeat), (wanted - b).Mod(p.Repeat))
	})
	return slices.Compact(ds)
}

// cuts reports whether a line that meets the design at a phase below the motif's
// head, and what lies within fall of it, cuts a motif.
func cuts(p *paper.Paper, below, fall measure.Length) bool {
	m := p.Motif
	return below > 0 && below < m.Tall || m.Tall > 0 && below+fall > p.Repeat
}
