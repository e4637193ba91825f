package audit

import (
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/plan"
)

// judgePanels: the drops of a run that asks for equal panels are all of one width, a
// whole number of which reaches from end to end with less than a nanometre for each to
// spare; the first begins where the run does; and what is asked for is cut off both
// edges of the paper. It returns the paper as such panels are of.
func judgePanels(b *book, rt *plan.RunTask, label *paper.Paper, l *hanging.Layout) *paper.Paper {
	wide, n := int64(l.Paper.Width), int64(len(l.Drops))
	from, to := panelEnds(l)
	if least := int64(label.Width) - wide; wide <= 0 || least < 2*int64(rt.Panels.Trim) {
		b.note(Faithful, Place{}, "what is cut off the edges of a panel", figure(2*rt.Panels.Trim)+" or more", lengthOf(least))
	}
	if over := n*wide - (to - from); over < 0 || over >= n {
		b.note(Faithful, Place{}, "width of "+figure(n)+" equal panels", lengthOf((to-from+n-1)/max(n, 1)), lengthOf(wide))
	}
	if first := &l.Drops[0].Parts[0]; int64(first.X.Lo)-int64(first.Across.Lo) != from {
		b.note(Faithful, Place{Drop: 1}, "left edge of the first panel", lengthOf(from), first.X.Lo-first.Across.Lo)
	}
	panel := *label
	panel.Width = l.Paper.Width
	panel.DryWidth = measure.Length(nearest(int64(label.DryWidth), wide, max(int64(label.Width), 1)))
	return &panel
}

// panelEnds returns from where to where a run reaches, from the left end of its first
// wall: as far as its ends lean outwards beyond its walls.
func panelEnds(l *hanging.Layout) (from, to int64) {
	run := l.Run
	for i := range run.Walls {
		to += int64(run.Walls[i].Width)
	}
	left := run.Ends.Left.LeanRight
	right := run.Ends.Right.LeanLeft
	return min(0, int64(left)), to + max(0, int64(right))
}
