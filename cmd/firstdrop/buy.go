package main

import (
	"fmt"
	"strings"

	"firstdrop/measure"
	"firstdrop/paper"
)

// buy tells what to buy of a paper, why fewer rolls are impossible, and what
// dividing areas would have said.
func (pl *planned) buy(i int) []string {
	return []string{pl.order(i), pl.proof(i), pl.byArea(i)}
}

// order counts rolls, or packs where rolls are sold together.
func (pl *planned) order(i int) string {
	label, pp := &pl.plan.Task.Papers[i], &pl.plan.Papers[i]
	size := pl.size(label)
	rolls := len(pp.Cutting.Rolls)
	text := fmt.Sprintf("%s of %s, %s", count(rolls, "roll"), label.Name, size)
	line := pp.Order
	if line.PerPack > 1 {
		text = fmt.Sprintf("%s of %d rolls of %s, each roll %s; %d needed", count(line.Packs, "pack"), line.PerPack, label.Name, size, rolls)
		if line.Spare > 0 {
			text += fmt.Sprintf(", %d to spare", line.Spare)
		}
	}
	if line.Cost.IsStated() {
		text += fmt.Sprintf(": %v", line.Cost)
	}
	return text
}

// size writes what a label says of a roll, metric in metres: "0.53 × 10.05 m".
func (pl *planned) size(label *paper.Paper) string {
	if pl.units == measure.Imperial {
		return label.Width.Format(measure.Imperial) + " × " + label.RollLength.Format(measure.Imperial)
	}
	const metre = int64(measure.Metre)
	return fmt.Sprintf("%s × %s m", decimal(int64(label.Width), metre), decimal(int64(label.RollLength), metre))
}

// decimal writes n/unit with at least two decimals and no more than it needs.
func decimal(n, unit int64) string {
	text := fmt.Sprintf("%d.%09d", n/unit, n%unit*(1_000_000_000/unit))
	for strings.HasSuffix(text, "0") && len(text)-strings.IndexByte(text, '.') > 3 {
		text = text[:len(text)-1]
	}
	return text
}

// proof tells in a line why fewer rolls are impossible, or how far the count may
// be from the fewest. The weights of a certificate say it: where weights prove
// n rolls, no roll carries one part in n − 1 of them.
func (pl *planned) proof(i int) string {
	sol := pl.plan.Papers[i].Cutting
	rolls := len(sol.Rolls)
	switch {
	case !sol.Proven:
		return fmt.Sprintf("At least %d are needed; this plan is within %d of the fewest.", sol.LowerBound, rolls-sol.LowerBound)
	case rolls == 1:
		return "Fewer than one is none (proven)."
	case sol.Certificate.Exhausted > 0:
		return fmt.Sprintf("%d will not do (proven): every way to cut them was tried.", rolls-1)
	case rolls == 2:
		return "1 will not do (proven): however cut, it does not yield the whole job."
	}
	return fmt.Sprintf("%d will not do (proven): however cut, no roll yields 1/%d of the job.", rolls-1, rolls-1)
}

// byArea sets the common estimate beside the count.
func (pl *planned) byArea(i int) string {
	const batch = " Ask for one batch."
	pp := &pl.plan.Papers[i]
	off := pp.AreaRolls - len(pp.Cutting.Rolls)
	area := pp.Net.Format(pl.units)
	estimate := fmt.Sprintf("By area (%s) one would buy %d", area, pp.AreaRolls)
	switch {
	case off < 0:
		return fmt.Sprintf("%s: %d too few.", estimate, -off) + batch
	case off > 0:
		return fmt.Sprintf("%s: %d too many.", estimate, off) + batch
	}
	return estimate + " too." + batch
}

// isPlainPaper reports whether there is no design to meet.
func isPlainPaper(p *paper.Paper) bool { return p.Match.Kind == paper.Free && p.Repeat == 0 }
