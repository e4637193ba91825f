package main

import (
	"fmt"
	"strings"

	"firstdrop/cutting"
	"firstdrop/hanging"
	"firstdrop/plan"
	"firstdrop/tell"
)

// firstLine tells where the first plumb line of a run stands, which edge of the
// paper is set to it, and which way the hanging goes.
func (pl *planned) firstLine(run int) string {
	return pl.named(run, strings.Join(tell.Start(pl.lang, pl.plan.Runs[run].Layout), " "))
}

// named puts the run's name before a text where there are several runs.
func (pl *planned) named(run int, text string) string {
	if len(pl.plan.Runs) > 1 {
		return pl.text("page.of", "title", pl.lang.Name(pl.plan.Runs[run].Layout.Run.Name), "name", text)
	}
	return text
}

// cutsShown is how many cuts the summary tells, over all runs.
const cutsShown = 3

// firstCuts tells how to begin cutting for a run: the first cuts, in their
// order, of the roll that drop 1 comes from.
func (pl *planned) firstCuts(run int, brief bool) []string {
	l := pl.plan.Runs[run].Layout
	r := tell.RollOf(pl.plan, plan.PieceRef{Run: run})
	if r == nil {
		return nil
	}
	cuts := r.Orders[0].Cuts
	var lines []string
	for _, c := range cuts[:min(max(1, cutsShown/len(pl.plan.Runs)), len(cuts))] {
		lines = append(lines, pl.cutLine(l, r, c))
	}
	if len(r.Orders) > 1 && !brief {
		lines = append(lines, pl.text("first.other-order", "roll", r.Number))
	}
	return lines
}

// cutLine tells one cut, for the one who hangs layout l.
func (pl *planned) cutLine(l *hanging.Layout, r *tell.Roll, c cutting.Cut) string {
	gifts := r.Gifts(pl.plan, c)
	of := gifts[0].Layout
	line := pl.text("first.cut", "roll", printable(r.Title()), "piece", pad(tell.Names(gifts), 3), "length", fmt.Sprintf("%10s", pl.lang.Length(c.To-c.From)))
	if mark := tell.Mark(pl.lang, of.Paper, r.Phase(c)); mark != "" {
		id := "first.head"
		if of.Drops[gifts[0].Piece.Drop].Reversed {
			id = "first.foot" // it comes off the roll first, and hangs head down
		}
		line = pl.text(id, "cut", line, "mark", mark)
	}
	if of != l {
		line = pl.text("first.of-run", "cut", line, "run", pl.lang.Name(of.Run.Name))
	}
	return line
}
