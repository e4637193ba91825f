package plan

import (
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/paper"
)

// Where an offset match shows the motif at several heights in turn, and it is tall,
// no design height may spare all drops. How many are cut at the least follows from
// how many drops meet the ceiling at each place of the turn:
//
//	──┬─────┬─────┬─────┬──  ceiling        at one height every even drop is cut,
//	  │  ▲  │     │  ▲  │                   at another every odd one, at none none
//	  │ ┌┴┐ │  ▲  │ ┌┴┐ │
//	  │ └─┘ │ ┌┴┐ │ └─┘ │

// motifCycle is a multiple of the turns that are told apart: of two, three and four
// drops. Others have no bound.
const motifCycle = 12

// motifBound is a bound for what the motifs cut at one level ceiling weigh. The
// zero value knows of none.
type motifBound struct {
	j      *judge
	line   measure.Length // the ceiling that most drops meet
	cycle  int            // 0: no bound
	cut    [][]bool       // the places of the turn that some design height cuts
	weight int64
}

// newMotifBound prepares the bound from any layout.
func (s *search) newMotifBound(l *hanging.Layout) (b motifBound) {
	p := s.judge.paper
	if p.Motif == nil || p.Repeat == 0 || p.Match.Reversing || motifCycle%p.Alternatives() != 0 {
		return b
	}
	n := map[measure.Length]int{}
	for _, line := range s.judge.cutLines(nil, l) {
		if line.isPlainCeiling() {
			if n[line.y]++; n[line.y] > n[b.line] || b.cycle == 0 {
				b.line, b.cycle = line.y, p.Alternatives()
			}
		}
	}
	if b.cycle == 0 {
		return b
	}
	b.j, b.weight = s.judge, s.task.Taste.Weights.MotifCut
	var at levels
	for i := range b.cycle {
		at = append(at, level{shift: (p.Phase(i, 0, b.line) - p.Motif.Head).Mod(p.Repeat)})
	}
	heights := at.heights(0, p)
	if d := s.run.Fixed.Design; d != nil {
		heights = []measure.Length{*d}
	}
	for _, d := range heights {
		b.cut = append(b.cut, at.cutAt(d, p))
	}
	return b
}

// cutAt tells which levels a design height cuts.
func (ls levels) cutAt(design measure.Length, p *paper.Paper) (cut []bool) {
	for i := range ls {
		cut = append(cut, cuts(p, ls[i].below(design, p), 0))
	}
	return cut
}

// isPlainCeiling reports whether a line is that of a level ceiling, over a drop that hangs
// as high as others.
func (line *cutLine) isPlainCeiling() bool {
	return line.what == "" && line.fall == 0 && line.lift == 0
}

// meets reports whether the motif of the one drop of a layout meets the ceiling.
func (b *motifBound) meets(l *hanging.Layout) bool {
	if b.cycle == 0 {
		return false
	}
	b.j.lines = b.j.cutLines(b.j.lines[:0], l)
	for _, line := range b.j.lines {
		if line.isPlainCeiling() && line.y == b.line {
			return true
		}
	}
	return false
}

// join adds the half to the left to that to the right, of which the first drop has an
// index, and what the motifs of both that are cut weigh at the least.
func (b *motifBound) join(right, left *sum, first int) {
	if b.cycle == 0 {
		right.add(left)
		return
	}
	var n [motifCycle]int64
	for i := range right.motif {
		n[i] += int64(right.motif[i])
		n[motifCycle-1-i] += int64(left.motif[i])
	}
	left.motif, left.some = [motifCycle]int16{}, false
	right.add(left)
	right.motif, right.some = [motifCycle]int16{}, false
	least := int64(-1)
	for _, cut := range b.cut {
		var total int64
		for i := range n {
			if cut[(i+first)%b.cycle] {
				total += n[i]
			}
		}
		if least < 0 || total < least {
			least = total
		}
	}
	right.cut += max(least, 0) * b.weight
}
