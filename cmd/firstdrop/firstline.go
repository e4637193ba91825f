package main

import (
	"fmt"
	"slices"
	"strings"

	"firstdrop/cutting"
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/plan"
	"firstdrop/room"
)

// firstLine tells where the first plumb line of a run stands, which edge of the
// paper is set to it, and which way the hanging goes.
func (pl *planned) firstLine(run int) []string {
	l := pl.plan.Runs[run].Layout
	if len(l.Plumbs) == 0 || len(l.Pieces) == 0 {
		return []string{pl.named(run, "there is nothing to hang: openings take all of it.")}
	}
	b := &l.Plumbs[0]
	where := fmt.Sprintf("plumb line on %s, %s.", theWall(l.Run, b.Wall), pl.fromCorner(l.Run, b))
	set := fmt.Sprintf("Drop %d: %v edge on the line%s.", l.Drops[b.Drop].Number, b.Edge, direction(l))
	return []string{pl.named(run, where), set}
}

// named puts the run's name before a text where there are several runs.
func (pl *planned) named(run int, text string) string {
	if len(pl.plan.Runs) > 1 {
		return fmt.Sprintf("%s: %s", pl.plan.Runs[run].Layout.Run.Name, text)
	}
	return upperFirst(text)
}

// fromCorner measures a plumb line from the corner that it is measured from.
func (pl *planned) fromCorner(run *room.Run, b *hanging.Plumb) string {
	at, distance := b.Wall-1, b.X
	if b.From == hanging.Right {
		at, distance = b.Wall, run.Walls[b.Wall].Width-b.X
	}
	end := "its " + b.From.String() + " end"
	n := len(run.Walls)
	if run.Closed || at >= 0 && at+1 < n {
		end += " (corner " + run.CornerName((at+n)%n) + ")"
	}
	if distance == 0 {
		return "at " + end
	}
	return fmt.Sprintf("%s from %s", distance.Format(pl.units), end)
}

// direction tells which way the drops follow drop 1: to the right first, then
// to the left.
func direction(l *hanging.Layout) string {
	right, left := 0, 0
	for _, d := range l.Drops {
		switch {
		case d.Number == 0 || d.Index == 0:
		case d.Index > 0:
			right++
		default:
			left++
		}
	}
	switch {
	case left == 0 && right == 0:
		return "; it is the only one"
	case left == 0:
		return "; all others follow to the right"
	case right == 0:
		return "; all others follow to the left"
	}
	return fmt.Sprintf("; then %d to the right, %d to the left", right, left)
}

// killSeam tells where a closed run cannot meet and by how much; "" for an open
// run.
func (pl *planned) killSeam(run int) string {
	l := pl.plan.Runs[run].Layout
	n := len(l.Seams)
	if n == 0 || l.Seams[n-1].Kind != hanging.KillSeam {
		return ""
	}
	s := &l.Seams[n-1]
	where := killPlace(l, s)
	switch {
	case isPlainPaper(l.Paper):
		return pl.named(run, where+"; this paper has no design that could miss.")
	case s.Meets():
		return pl.named(run, where+"; the design meets even there.")
	}
	return pl.named(run, fmt.Sprintf("%s the design cannot meet: it is out by %s.", where, pl.misfit(s)))
}

// killPlace names the corner or the opening where the run closes.
func killPlace(l *hanging.Layout, s *hanging.Seam) string {
	if s.InCorner {
		n := len(l.Run.Walls)
		return "in the corner " + l.Run.CornerName((s.Wall+n-1)%n)
	}
	w := &l.Run.Walls[s.Wall]
	for i := range w.Openings {
		if x, _ := w.Openings[i].Outline.Bounds(); x.Contains(s.X) {
			return fmt.Sprintf("at the %s on %s", openingName(&w.Openings[i]), theWall(l.Run, s.Wall))
		}
	}
	return "on " + theWall(l.Run, s.Wall)
}

// theWall names a wall in a sentence: "wall A", but "the window wall".
func theWall(run *room.Run, i int) string {
	name := run.WallName(i)
	if strings.Contains(strings.ToLower(name), "wall") {
		return "the " + name
	}
	return "wall " + name
}

// openingName returns an opening's name, or its kind where it has none.
func openingName(o *room.Opening) string {
	if o.Name != "" {
		return o.Name
	}
	return o.Kind.String()
}

// misfit tells how far the design misses at a seam.
func (pl *planned) misfit(s *hanging.Seam) string {
	across := s.Across.Hi
	if s.Across.Lo.Abs() > across.Abs() {
		across = s.Across.Lo
	}
	a, b := across.Abs().Format(pl.units), s.Along.Abs().Format(pl.units)
	switch {
	case s.Along == 0:
		return a + " sideways"
	case s.Across == geom.Interval{}:
		return b + " in height"
	}
	return a + " sideways and " + b + " in height"
}

// cutsShown is how many cuts the summary tells, over all runs.
const cutsShown = 3

// firstCuts tells how to begin cutting for a run: the first cuts, in their
// order, of the roll that drop 1 comes from.
func (pl *planned) firstCuts(run int) []string {
	l := pl.plan.Runs[run].Layout
	pp := &pl.plan.Papers[pl.plan.Task.Runs[run].Paper]
	r := pl.rollOf(pp, plan.PieceRef{Run: run, Piece: 0})
	if r < 0 {
		return nil
	}
	orders := pp.Cutting.Rolls[r].Orders
	cuts := orders[0].Cuts
	var lines []string
	for _, c := range cuts[:min(max(1, cutsShown/len(pl.plan.Runs)), len(cuts))] {
		ref := pp.Pieces[c.Piece]
		of := pl.plan.Runs[ref.Run].Layout
		p := &of.Pieces[ref.Piece]
		line := fmt.Sprintf("roll %d: piece %-3s %10s%s", r+1, p.Name, p.Length.Format(pl.units), pl.designAt(of, p))
		if of != l {
			line += " (" + of.Run.Name + ")"
		}
		lines = append(lines, line)
	}
	if len(orders) > 1 {
		lines = append(lines, fmt.Sprintf("in another order if roll %d begins elsewhere: see the roll map", r+1))
	}
	return lines
}

// rollOf returns the index of the roll that a piece is cut from; −1 when there
// is none.
func (pl *planned) rollOf(pp *plan.PaperPlan, want plan.PieceRef) int {
	if pp.Cutting == nil {
		return -1
	}
	return slices.IndexFunc(pp.Cutting.Rolls, func(r cutting.RollPlan) bool {
		return slices.ContainsFunc(r.Orders[0].Cuts, func(c cutting.Cut) bool { return pp.Pieces[c.Piece] == want })
	})
}

// designAt tells where in the design a piece is cut, "" where there is none.
func (pl *planned) designAt(l *hanging.Layout, p *hanging.Piece) string {
	label := l.Paper
	if label.Repeat == 0 {
		return ""
	}
	end := "head"
	if l.Drops[p.Drop].Reversed {
		end = "foot" // it comes off the roll first, and hangs head down
	}
	if m := label.Motif; m != nil {
		return fmt.Sprintf(", %s %s above the motif", end, (m.Head - p.Phase).Mod(label.Repeat).Format(pl.units))
	}
	return fmt.Sprintf(", %s %s into the repeat", end, p.Phase.Format(pl.units))
}
