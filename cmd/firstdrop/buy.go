package main

import (
	"fmt"
	"slices"
	"strings"

	"firstdrop/measure"
	"firstdrop/order"
	"firstdrop/paper"
	"firstdrop/plan"
	"firstdrop/tell"
)

// buy tells what to buy of a paper, why fewer rolls are impossible, what other
// ways of counting would have said, and what is left over. brief leaves out
// what can be read elsewhere.
func (pl *planned) buy(i int, brief bool) []string {
	lines, others := pl.orders(i), []string{pl.proof(i), pl.byArea(i, brief), pl.saved(i), pl.bySide(i), pl.leftOver(i)}
	if brief {
		proof, _, more := strings.Cut(others[0], ": ")
		if more {
			proof += "."
		}
		others = []string{strings.TrimSpace(proof + " " + others[1])}
	}
	return append(lines, slices.DeleteFunc(others, func(l string) bool { return l == "" })...)
}

// orders counts rolls, or packs where rolls are sold together, for each size
// that is to be bought.
func (pl *planned) orders(i int) (lines []string) {
	label, pp := &pl.plan.Task.Papers[i], &pl.plan.Papers[i]
	for _, line := range pp.Orders {
		if line.Rolls > 0 {
			lines = append(lines, pl.order(label, line))
		}
	}
	if len(lines) > 0 {
		return lines
	}
	if pp.Missing() > 0 {
		return []string{"no roll of " + label.Name + " is to be had."}
	}
	return []string{fmt.Sprintf("nothing of %s: what is in hand will do.", label.Name)}
}

func (pl *planned) order(label *paper.Paper, line order.Line) string {
	size := pl.size(label, line.RollLength)
	text := fmt.Sprintf("%s of %s, %s", count(line.Rolls, "roll"), label.Name, size)
	if line.PerPack > 1 {
		text = fmt.Sprintf("%s of %d rolls of %s, each roll %s; %d needed", count(line.Packs, "pack"), line.PerPack, label.Name, size, line.Rolls)
		if line.Spare > 0 {
			text += fmt.Sprintf(", %d to spare", line.Spare)
		}
	}
	if line.Cost.IsStated() {
		text += fmt.Sprintf(": %v", line.Cost)
	}
	return text
}

// size writes how wide and long a roll is, metric in metres: "0.53 × 10.05 m".
func (pl *planned) size(label *paper.Paper, roll measure.Length) string {
	if pl.units == measure.Imperial {
		return label.Width.Format(measure.Imperial) + " × " + roll.Format(measure.Imperial)
	}
	const metre = int64(measure.Metre)
	return fmt.Sprintf("%s × %s m", decimal(int64(label.Width), metre), decimal(int64(roll), metre))
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
	pp := &pl.plan.Papers[i]
	rolls, least := pp.Buy(), pp.LowerBound()
	switch {
	case pp.Missing() > 0 || rolls == 0:
		return ""
	case !pp.Proven() && rolls > least:
		return fmt.Sprintf("At least %d are needed; this plan is within %d of the fewest.", least, rolls-least)
	case !pp.Proven():
		return "Fewer will not do; that nothing cheaper will is not proven."
	case isMixed(pp) && rolls == 1:
		return "What is in hand will not do by itself (proven)."
	case isMixed(pp) && rolls > least:
		return "Nothing cheaper will do (proven)."
	case isMixed(pp):
		return fmt.Sprintf("%d will not do (proven), however the rolls are cut.", rolls-1)
	case rolls == 1:
		return "Fewer than one is none (proven)."
	case pp.Batches[0].Cutting.Certificate.Exhausted > 0:
		return fmt.Sprintf("%d will not do (proven): every way to cut them was tried.", rolls-1)
	case rolls == 2:
		return "1 will not do (proven): however cut, it does not yield the whole job."
	}
	return fmt.Sprintf("%d will not do (proven): however cut, no roll yields 1/%d of the job.", rolls-1, rolls-1)
}

// isMixed reports whether rolls of several kinds or batches are cut, so that
// what proves their number is no share of one roll.
func isMixed(pp *plan.PaperPlan) bool {
	return len(pp.Batches) > 1 || len(pp.Batches[0].Cutting.Problem.Spec().Stock) > 0
}

// byArea sets the common estimate beside the count, and says what to ask for.
func (pl *planned) byArea(i int, brief bool) string {
	label, pp := &pl.plan.Task.Papers[i], &pl.plan.Papers[i]
	if len(label.Rolls) > 0 {
		return askFor(label, pp)
	}
	if brief {
		return fmt.Sprintf("By area one would buy %d. %s", pp.AreaRolls, askFor(label, pp))
	}
	estimate := fmt.Sprintf("By area (%s) one would buy %d", pp.Net.Format(pl.units), pp.AreaRolls)
	switch off := pp.AreaRolls - pp.Buy(); {
	case off < 0:
		estimate += fmt.Sprintf(": %d too few.", -off)
	case off > 0:
		estimate += fmt.Sprintf(": %d too many.", off)
	default:
		estimate += " too."
	}
	return estimate + " " + askFor(label, pp)
}

// saved tells what exact cutting saves against cutting in hanging order and
// against cutting every drop as long as the longest.
func (pl *planned) saved(i int) string {
	label, pp := &pl.plan.Task.Papers[i], &pl.plan.Papers[i]
	buy, inOrder, full := pp.Buy(), pp.InOrderRolls, pp.FullDropRolls
	if label.InOrder {
		inOrder = 0 // it is what the plan does
	}
	if len(label.Rolls) > 0 {
		full = 0 // it knows nothing of rolls in hand
	}
	switch {
	case inOrder > buy && full > buy:
		return fmt.Sprintf("Exact cutting saves %s on hanging order, %d on full drops.", count(inOrder-buy, "roll"), full-buy)
	case inOrder > buy && full == buy:
		return fmt.Sprintf("Exact cutting saves %s on hanging order, none on full drops.", count(inOrder-buy, "roll"))
	case inOrder > buy:
		return fmt.Sprintf("Exact cutting saves %s on hanging order.", count(inOrder-buy, "roll"))
	case full > buy && inOrder == buy:
		return fmt.Sprintf("Exact cutting saves %s on full drops, none on hanging order.", count(full-buy, "roll"))
	case full > buy:
		return fmt.Sprintf("Exact cutting saves %s on full drops.", count(full-buy, "roll"))
	case inOrder == buy && full == buy && buy > 0:
		return "Cut in hanging order, or in full drops, it takes as many."
	case inOrder == buy && buy > 0:
		return "Cut in hanging order it takes as many."
	}
	return ""
}

// bySide tells what narrow pieces cut side by side save.
func (pl *planned) bySide(i int) string {
	if n := pl.plan.Papers[i].SavedBySide(); n > 0 {
		return fmt.Sprintf("Narrow pieces side by side save %s.", count(n, "roll"))
	}
	return ""
}

// askFor says which batch to ask for.
func askFor(label *paper.Paper, pp *plan.PaperPlan) string {
	switch {
	case pp.Buy() == 0:
		return ""
	case len(label.Rolls) > 0 && label.Batch != "":
		return "Ask for batch " + label.Batch + "."
	}
	return "Ask for one batch."
}

// leftOver tells the longest left-over, and whether it can patch a drop that is
// damaged later.
func (pl *planned) leftOver(i int) string {
	l, ok := tell.LongestLeftover(pl.plan, i)
	if !ok || l.Length <= 0 {
		return ""
	}
	text := fmt.Sprintf("Longest rest: %s on roll %s", l.Length.FloorTo(measure.Millimetre).Format(pl.units), printable(l.Roll.Title()))
	switch gap := l.Bound - l.Length; {
	case gap == 0:
		text += " (proven)"
	case gap > 0 && l.Bound < l.Roll.Length:
		text += fmt.Sprintf(" (within %s)", gap.Format(pl.units))
	}
	if l.Patches {
		return text + ", can still patch any drop."
	}
	return text + ", cannot patch every drop."
}

// isPlainPaper reports whether there is no design to meet.
func isPlainPaper(p *paper.Paper) bool { return p.Match.Kind == paper.Free && p.Repeat == 0 }
