package main

import (
	"fmt"
	"strings"

	"firstdrop/cutting"
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/plan"
	"firstdrop/room"
	"firstdrop/tell"
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
	right, left := l.Ways()
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
		return pl.named(run, where+": no design that could miss.")
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
func (pl *planned) firstCuts(run int, brief bool) []string {
	l := pl.plan.Runs[run].Layout
	r := pl.rollOf(plan.PieceRef{Run: run})
	if r == nil {
		return nil
	}
	cuts := r.Orders[0].Cuts
	var lines []string
	for _, c := range cuts[:min(max(1, cutsShown/len(pl.plan.Runs)), len(cuts))] {
		lines = append(lines, pl.cutLine(l, r, c))
	}
	if len(r.Orders) > 1 && !brief {
		lines = append(lines, fmt.Sprintf("in another order if roll %d begins elsewhere: see the roll map", r.Number))
	}
	return lines
}

// cutLine tells one cut, for the one who hangs layout l.
func (pl *planned) cutLine(l *hanging.Layout, r *tell.Roll, c cutting.Cut) string {
	gifts := r.Gifts(pl.plan, c)
	of := gifts[0].Layout
	line := fmt.Sprintf("roll %s: piece %-3s %10s", printable(r.Title()), tell.Names(gifts), (c.To - c.From).Format(pl.units))
	if mark := tell.Mark(pl.lang, of.Paper, r.Phase(c)); mark != "" {
		end := "head"
		if of.Drops[gifts[0].Piece.Drop].Reversed {
			end = "foot" // it comes off the roll first, and hangs head down
		}
		line += ", " + end + " " + mark
	}
	if of != l {
		line += " (" + of.Run.Name + ")"
	}
	return line
}

// rollOf returns the roll that a piece is cut from; nil when there is none.
func (pl *planned) rollOf(want plan.PieceRef) *tell.Roll {
	rolls := tell.Rolls(pl.plan, pl.plan.Task.Runs[want.Run].Paper)
	for i := range rolls {
		for _, c := range rolls[i].Orders[0].Cuts {
			for _, g := range rolls[i].Gifts(pl.plan, c) {
				if g.PieceRef == want {
					return &rolls[i]
				}
			}
		}
	}
	return nil
}
