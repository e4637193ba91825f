package audit

import (
	"firstdrop/finding"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/plan"
	"firstdrop/room"
)

// leastTrim is what must be left to trim of the allowances of a drop that is hung by the
// ceiling: a finger's breadth (common practice).
const leastTrim = 15 * measure.Millimetre

// judgeLifts: drops are hung higher or lower only in a design of isolated motifs, on
// plumb walls; each so that its motifs keep, to half a millimetre, the distance from the
// ceiling that all motifs keep under the same ceiling; and enough of the allowances is
// left. Where drops of a wall are moved it is told, and by how much at the most.
func judgeLifts(b *book, p *plan.Plan, i int) {
	l := p.Runs[i].Layout
	if l.Lifts == nil {
		return
	}
	if l.Paper.Lines != paper.LinesIsolated || len(l.Turns) > 0 || len(l.Lifts) != len(l.Drops) {
		b.note(Faithful, Place{}, "drops hung by the ceiling", "plumb, of isolated motifs, and all told of", len(l.Lifts))
		return
	}
	moved := make([]span, len(l.Run.Walls))
	var keep span // distances kept so far under this ceiling, as heights of it over the motifs
	known := -1   // the wall of the drop before; −1: it hangs under another ceiling
	for d := range l.Drops {
		at, lift := Place{Drop: d + 1}, int64(l.Lifts[d])
		if left := min(l.Rules.Head, l.Rules.Foot) - lengthOf(int64(size(lift))); left < leastTrim {
			b.note(Faithful, at, "allowance left to trim", figure(leastTrim)+" or more", left)
		}
		wall, over, level := ceilingOverDrop(l, d)
		if !level || l.Drops[d].Number == 0 {
			known = -1
			b.same(Faithful, at, "moved without a ceiling to follow", measure.Length(0), l.Lifts[d])
			continue
		}
		if known < 0 || !goesOn(l.Run, known, wall) {
			keep = span{over - lift, over - lift}
		}
		keep = span{min(keep.lo, over-lift), max(keep.hi, over-lift)}
		if keep.length() > int64(measure.Millimetre)+2 {
			b.note(Faithful, at, "distance of its motifs from the ceiling", "that of the others", keep)
		}
		known = wall
		moved[wall] = span{min(moved[wall].lo, lift), max(moved[wall].hi, lift)}
	}
	judgeLiftsTold(b, p, l, moved)
}

// ceilingOverDrop returns the wall on which most of a drop hangs and how high the
// ceiling stands over the middle of it there; level is false where it is none that is
// meant level.
func ceilingOverDrop(l *hanging.Layout, drop int) (wall int, over int64, level bool) {
	var widest span
	for k, p := range l.Drops[drop].Parts {
		on := span{max(0, int64(p.X.Lo)), min(int64(l.Run.Walls[p.Wall].Width), int64(p.X.Hi))}
		if k == 0 || on.length() > widest.length() {
			widest, wall = on, p.Wall
		}
	}
	left, right, level := levelEnds(l.Run, wall)
	return wall, left + nearest(right-left, widest.lo+widest.hi, 2*int64(l.Run.Walls[wall].Width)), level
}

// levelEnds returns the heights of a wall's ceiling at both its ends, if it is meant
// level.
func levelEnds(run *room.Run, wall int) (left, right int64, level bool) {
	w := &run.Walls[wall]
	left, right, ok := endsOf(w)
	return left, right, ok && int64(size(right-left))*room.Steepest <= int64(w.Width)
}

// goesOn reports whether the ceiling of a wall goes on over another, the same or the
// next.
func goesOn(run *room.Run, from, to int) bool {
	if from == to {
		return true
	}
	_, end, _ := levelEnds(run, from)
	begin, _, _ := levelEnds(run, to)
	return (from+1)%len(run.Walls) == to && end == begin
}

// judgeLiftsTold: what drops are moved by is told wall by wall.
func judgeLiftsTold(b *book, p *plan.Plan, l *hanging.Layout, moved []span) {
	if !knownByName(p) {
		return
	}
	for w := range moved {
		told := 0
		for _, f := range p.Findings {
			if f.Code != plan.Relevel || f.Place.Wall != l.Run.Walls[w].Name {
				continue
			}
			told++
			b.judgeMoved(Place{Wall: w + 1}, &f, moved[w])
		}
		b.same(Findings, Place{Wall: w + 1}, "findings of drops hung by the ceiling", boolean(moved[w] != span{}), told)
	}
}

// judgeMoved: a finding tells how far drops are moved down and up.
func (b *book) judgeMoved(at Place, f *finding.Finding, moved span) {
	lower, _ := f.Size("lower")
	higher, _ := f.Size("higher")
	b.same(Findings, at, "drops hung lower", lengthOf(-moved.lo), lower)
	b.same(Findings, at, "drops hung higher", lengthOf(moved.hi), higher)
}
