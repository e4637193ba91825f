package tell

import (
	"slices"
	"strings"

	"firstdrop/measure"
	"firstdrop/order"
	"firstdrop/paper"
	"firstdrop/plan"
	"firstdrop/words"
)

// Buy tells what to buy of a paper, why fewer rolls are impossible, what other
// ways of counting would have said, and what is left over, each in a line. brief
// leaves out what can be read elsewhere.
func Buy(c *words.Catalogue, p *plan.Plan, i int, brief bool) []string {
	b := &buying{c, p, i, &p.Task.Papers[i], &p.Papers[i]}
	others := []string{b.proof(brief), b.byArea(brief)}
	if brief {
		others = []string{strings.TrimSpace(strings.Join(others, " "))}
	} else {
		others = append(others, b.saved(), b.bySide(), b.leftOver())
	}
	return append(b.orders(), slices.DeleteFunc(others, func(l string) bool { return l == "" })...)
}

// ByLabel tells how many rolls one would have bought by a label that is wrong.
func ByLabel(c *words.Catalogue, byLabel, buy int) string {
	switch rolls, off := Rolled(c, byLabel), byLabel-buy; {
	case off < 0:
		return c.Text("by-label.few", "rolls", rolls, "off", -off)
	case off > 0:
		return c.Text("by-label.many", "rolls", rolls, "off", off)
	default:
		return c.Text("by-label.same", "rolls", rolls)
	}
}

// buying says what is bought of one paper.
type buying struct {
	*words.Catalogue
	plan  *plan.Plan
	at    int
	label *paper.Paper
	pp    *plan.PaperPlan
}

func (b *buying) rolls(n int) string { return Rolled(b.Catalogue, n) }

// orders counts rolls, or packs where rolls are sold together, for each size
// that is to be bought.
func (b *buying) orders() (lines []string) {
	for _, line := range b.pp.Orders {
		if line.Bought() > 0 {
			lines = append(lines, b.order(line))
		}
	}
	switch {
	case len(lines) > 0:
		return lines
	case b.pp.Missing() > 0:
		return []string{b.Text("buy.not-to-be-had", "paper", b.label.Name)}
	}
	return []string{b.Text("buy.nothing", "paper", b.label.Name)}
}

func (b *buying) order(line order.Line) string {
	size := RollSize(b.Catalogue, b.label, line.RollLength)
	text := b.Text("buy.rolls", "rolls", b.rolls(line.Bought()), "paper", b.label.Name, "size", size)
	keep := "buy.keep"
	if line.PerPack > 1 {
		text = b.Text("buy.packs", "packs", Packs(b.Catalogue, line.Packs, line.PerPack), "paper", b.label.Name, "size", size, "needed", line.Rolls)
		keep = "buy.keep-more"
	}
	if line.Kept > 0 {
		text = b.Text(keep, "order", text, "needed", line.Rolls, "kept", line.Kept)
	}
	if line.Spare > 0 {
		text = b.Text("buy.spare", "order", text, "spare", line.Spare)
	}
	if line.Cost.IsStated() {
		text = b.Text("buy.cost", "order", text, "cost", line.Cost)
	}
	return text
}

// RollSize writes how wide and long a roll is, metric in metres: "0.53 × 10.05 m".
func RollSize(c *words.Catalogue, label *paper.Paper, length measure.Length) string {
	if c.Units() == measure.Imperial {
		return c.Length(label.Width) + " × " + c.Length(length)
	}
	const metre = int64(measure.Metre)
	return c.Decimal(int64(label.Width), metre) + " × " + c.Decimal(int64(length), metre) + " m"
}

// proof tells in a line why fewer rolls are impossible, or how far the count may
// be from the fewest. The weights of a certificate say it: where weights prove
// n rolls, no roll carries one part in n − 1 of them.
func (b *buying) proof(brief bool) string {
	rolls, least := b.pp.Buy(), b.pp.LowerBound()
	switch {
	case b.pp.Missing() > 0 || rolls == 0:
		return ""
	case !b.pp.Proven() && rolls > least:
		return b.Text("proof.open", "least", least, "gap", rolls-least)
	case !b.pp.Proven():
		return b.Text("proof.cheaper-open")
	case isMixed(b.pp) && rolls == 1:
		return b.Text("proof.in-hand")
	case isMixed(b.pp) && rolls > least:
		return b.Text("proof.cheapest")
	case rolls == 1:
		return b.Text("proof.one")
	}
	return b.Text(b.why(rolls, brief), "n", rolls-1)
}

// why names the sentence that says why one roll less will not do.
func (b *buying) why(rolls int, brief bool) string {
	switch {
	case brief:
		return "proof.brief"
	case isMixed(b.pp):
		return "proof.mixed"
	case b.pp.Batches[0].Cutting.Certificate.Exhausted > 0:
		return "proof.tried"
	case rolls == 2:
		return "proof.whole"
	}
	return "proof.share"
}

// isMixed reports whether rolls of several kinds or batches are cut, so that
// what proves their number is no share of one roll.
func isMixed(pp *plan.PaperPlan) bool {
	return len(pp.Batches) > 1 || len(pp.Batches[0].Cutting.Problem.Spec().Stock) > 0
}

// byArea sets the common estimate beside the count, and says what to ask for.
func (b *buying) byArea(brief bool) string {
	if len(b.label.Rolls) > 0 {
		return b.askFor()
	}
	area, rolls := b.Number(b.pp.Net.Format(b.Units())), b.pp.AreaRolls
	text := ""
	switch off := b.pp.AreaRolls - b.pp.Buy(); {
	case brief:
		text = b.Text("area.brief", "rolls", rolls)
	case off < 0:
		text = b.Text("area.few", "area", area, "rolls", rolls, "off", -off)
	case off > 0:
		text = b.Text("area.many", "area", area, "rolls", rolls, "off", off)
	default:
		text = b.Text("area.same", "area", area, "rolls", rolls)
	}
	return strings.TrimSpace(text + " " + b.askFor())
}

// saved tells what exact cutting saves against cutting in hanging order and
// against cutting every drop as long as the longest.
func (b *buying) saved() string {
	buy, inOrder, full := b.pp.Buy(), b.pp.InOrderRolls, b.pp.FullDropRolls
	if b.label.InOrder {
		inOrder = 0 // it is what the plan does
	}
	if len(b.label.Rolls) > 0 {
		full = 0 // it knows nothing of rolls in hand
	}
	switch {
	case inOrder > buy && full > buy:
		return b.Text("saved.both", "rolls", b.rolls(inOrder-buy), "full", full-buy)
	case inOrder > buy && full == buy:
		return b.Text("saved.order-only", "rolls", b.rolls(inOrder-buy))
	case inOrder > buy:
		return b.Text("saved.order", "rolls", b.rolls(inOrder-buy))
	case full > buy && inOrder == buy:
		return b.Text("saved.full-only", "rolls", b.rolls(full-buy))
	case full > buy:
		return b.Text("saved.full", "rolls", b.rolls(full-buy))
	case inOrder == buy && full == buy && buy > 0:
		return b.Text("saved.neither")
	case inOrder == buy && buy > 0:
		return b.Text("saved.not-order")
	}
	return ""
}

// bySide tells what narrow pieces cut side by side save.
func (b *buying) bySide() string {
	if n := b.pp.SavedBySide(); n > 0 {
		return b.Text("saved.by-side", "rolls", b.rolls(n))
	}
	return ""
}

// askFor says which batch to ask for.
func (b *buying) askFor() string {
	switch {
	case b.pp.Buy() == 0:
		return ""
	case len(b.label.Rolls) > 0 && b.label.Batch != "":
		return b.Text("ask.batch", "batch", b.label.Batch)
	}
	return b.Text("ask.one-batch")
}

// leftOver tells the longest left-over, and whether it can patch a drop that is
// damaged later.
func (b *buying) leftOver() string {
	l, ok := LongestLeftover(b.plan, b.at)
	if !ok || l.Length <= 0 {
		return ""
	}
	text := b.Text("rest", "size", l.Length.FloorTo(measure.Millimetre), "roll", l.Roll.Title())
	switch gap := l.Bound - l.Length; {
	case gap == 0:
		text = b.Text("rest.proven", "rest", text)
	case gap > 0 && l.Bound < l.Roll.Length:
		text = b.Text("rest.within", "rest", text, "gap", gap)
	}
	switch {
	case l.Patches:
		return b.Text("rest.patches", "rest", text)
	case b.label.Keep > 0:
		return b.Text("rest.patches-kept", "rest", text)
	}
	return b.Text("rest.patches-not", "rest", text)
}
