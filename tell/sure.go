package tell

import (
	"fmt"
	"strings"

	"firstdrop/order"
	"firstdrop/paper"
	"firstdrop/words"
)

// Planned says how many rolls of a batch the plan wants: those to buy, where some
// are in hand already.
func Planned(c *words.Catalogue, inHand, rolls int) string {
	if inHand == 0 {
		return c.Text("planned.rolls", "rolls", Rolled(c, rolls))
	}
	return c.Text("planned.in-hand", "rolls", Rolled(c, inHand), "buy", rolls)
}

// CountOrder says which rolls a number of them means, where they are of several
// sizes or come in packs; else it says nothing.
func CountOrder(c *words.Catalogue, label *paper.Paper, k *order.Curve) (lines []string) {
	var plan []string
	pack, several := k.Spare.Pack, len(k.Buys) > 1
	for _, s := range k.Buys {
		pack = max(pack, s.Pack)
		several = several || k.Spare.Pack > 0 && s.Length != k.Spare.Length
		plan = append(plan, c.Text("sure.size", "rolls", Rolled(c, s.Rolls), "size", RollSize(c, label, s.Length)))
	}
	if several {
		id := "sure.counted"
		switch {
		case k.Spare.Pack == 0:
			id = "sure.counted-all"
		case label.InOrder:
			id = "sure.counted-in-order"
		}
		lines = append(lines, c.Text(id, "plan", strings.Join(plan, ", "), "spare", RollSize(c, label, k.Spare.Length)))
	}
	if pack > 1 {
		lines = append(lines, c.Text("sure.in-packs"))
	}
	return lines
}

// Advice names the count of rolls for those who want to be surer, and in how many
// jobs no count was enough.
func Advice(c *words.Catalogue, k *order.Curve, inHand int) (lines []string) {
	id, never := "sure.want", "sure.never"
	if inHand > 0 {
		id, never = "sure.want-to-buy", "sure.never-in-hand"
	}
	for _, perMille := range []int{950, 990} {
		if rolls, ok := k.Fewest(perMille); ok {
			lines = append(lines, c.Text(id, "share", perMille/10, "rolls", Rolled(c, rolls)))
		}
	}
	if k.Never > 0 {
		lines = append(lines, c.Text(never, "jobs", c.Text("count.job", "n", k.Never)))
	}
	return lines
}

// Assumed says in a sentence what may turn out otherwise.
func Assumed(c *words.Catalogue, of order.Chances) string {
	return c.Text("sure.assumed", "length", c.Number(fmt.Sprintf("%d.%d", of.Length/10, of.Length%10)),
		"measuring", of.Measuring, "spoiled", of.Spoiled)
}

// Cliff says at which change of a quantity the count of rolls changes, and to
// what: "8 mm lower walls", "8 rolls, 1 saved".
func Cliff(c *words.Catalogue, k order.Cliff, planned int) (change, effect string) {
	id := "cliff." + strings.ReplaceAll(k.Quantity.String(), " ", "-")
	if k.Change > 0 {
		id += "-more"
	} else {
		id += "-less"
	}
	return c.Text(id), cliffEffect(c, k, planned)
}

func cliffEffect(c *words.Catalogue, k order.Cliff, planned int) (text string) {
	switch {
	case k.NoFit:
		return c.Text("cliff.no-fit")
	case k.Missing > 0:
		return c.Text("cliff.missing", "cuts", c.Text("count.cut", "n", k.Missing))
	case k.Rolls < planned:
		text = c.Text("cliff.saved", "rolls", Rolled(c, k.Rolls), "off", planned-k.Rolls)
	default:
		text = c.Text("cliff.more", "rolls", Rolled(c, k.Rolls), "off", k.Rolls-planned)
	}
	if !k.Proven {
		text = c.Text("cliff.not-proven", "cliff", text)
	}
	return text
}
