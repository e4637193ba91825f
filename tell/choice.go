package tell

import (
	"cmp"
	"slices"
	"strings"

	"firstdrop/finding"
	"firstdrop/measure"
	"firstdrop/plan"
	"firstdrop/words"
)

// Taken counts what a plan takes: "9 rolls, 31 drops in 34 pieces".
func Taken(c *words.Catalogue, p *plan.Plan) string {
	buy := 0
	for i := range p.Papers {
		buy += p.Papers[i].Buy()
	}
	return Rolled(c, buy) + ", " + Counted(c, p)
}

// BestIn says what a plan is best in; "" for nothing.
func BestIn(c *words.Catalogue, vs []plan.Virtue) string {
	texts := make([]string, len(vs))
	for i, v := range vs {
		texts[i] = c.Text("best." + strings.ReplaceAll(string(v), " ", "-"))
	}
	return strings.Join(texts, ", ")
}

// Beginning says where the first drop of a run stands, as a choice.
func Beginning(c *words.Catalogue, p *plan.Plan, run int) string {
	l := p.Runs[run].Layout
	start, wall := l.Choice.Start, Wall(c, l.Run, l.Choice.Start.Wall)
	if start.X < 0 {
		return c.Text("begins.beyond", "wall", wall, "size", start.X.Abs())
	}
	return c.Text("begins.at", "wall", wall, "size", start.X)
}

// Closing says where a run closes and by how much the design misses there; ""
// for one with two ends.
func Closing(c *words.Catalogue, p *plan.Plan, run int) string {
	k, ok := p.Closing(run)
	switch {
	case !ok:
		return ""
	case k.Height == 0:
		return c.Text("closes.bare", "place", Place(c, k.Place))
	case k.Weight == 0:
		return c.Text("closes.meets", "place", Place(c, k.Place))
	}
	return c.Text("closes.misses", "place", Place(c, k.Place), "height", k.Height,
		"missed", missed(c, max(k.Across.Lo.Abs(), k.Across.Hi.Abs()), k.Along))
}

// Place names the place of a closing.
func Place(c *words.Catalogue, p finding.Place) string {
	wall := c.Name(p.Wall)
	switch {
	case p.Corner != "":
		return c.Text("closes.corner", "corner", c.Name(p.Corner))
	case p.Opening != "":
		return c.Text("closes.over", "opening", c.Name(p.Opening), "wall", wall)
	case p.X != nil:
		return c.Text("closes.along", "wall", wall, "x", *p.X)
	}
	return c.Text("closes.wall", "wall", wall)
}

// Traded lists what a plan costs and what it saves: rolls, drops and pieces, and
// the dearest findings, at most so many of each.
func Traded(c *words.Catalogue, t plan.Trade, most int) (costs, saves []string) {
	amount := func(n int, what string) {
		switch {
		case n > 0:
			costs = append(costs, c.Text("trade.more", "things", c.Text(what, "n", n)))
		case n < 0:
			saves = append(saves, c.Text(what, "n", -n))
		}
	}
	amount(t.Rolls, "page.rolls")
	amount(t.Drops, "count.drop")
	amount(t.Pieces, "count.piece")
	return append(costs, dearest(c, t.Worse, most)...), append(saves, dearest(c, t.Better, most)...)
}

// Trade says what [Traded] lists, each in a line. ok is false where a plan neither
// costs nor saves anything.
func Trade(c *words.Catalogue, t plan.Trade, most int) (costs, saves string, ok bool) {
	said := func(texts []string) string {
		if len(texts) == 0 {
			return c.Text("trade.nothing")
		}
		return Joined(c, texts)
	}
	dear, cheap := Traded(c, t, most)
	return said(dear), said(cheap), len(dear)+len(cheap) > 0
}

// Joined joins texts that are too long for commas.
func Joined(c *words.Catalogue, texts []string) (text string) {
	for i, t := range texts {
		if i == 0 {
			text = t
			continue
		}
		text = c.Text("list.semicolon", "first", text, "last", t)
	}
	return text
}

// dearest says the dearest kinds of findings, and how many more there are.
func dearest(c *words.Catalogue, fs []finding.Finding, most int) (said []string) {
	for i, k := range Alike(fs) {
		if i == most {
			return append(said, c.Text("trade.lesser"))
		}
		f := k.First
		f.Place.Run = ""
		text := strings.TrimSuffix(Finding(c, f), ".")
		if !opensWithPlace[f.Code] {
			text, _, _ = strings.Cut(text, ":")
			text = strings.TrimSpace(text)
		}
		if k.Count > 1 {
			text = c.Text("trade.like", "finding", text, "more", k.Count-1)
		}
		said = append(said, c.Within(text))
	}
	return said
}

// opensWithPlace lists the findings whose sentences say what matters after their
// colon.
var opensWithPlace = map[finding.Code]bool{
	plan.KillMisfit: true, plan.Awkward: true, plan.MotifCut: true, plan.MotifCutLow: true, plan.WetGrowth: true,
}

// Like is all findings of one kind: the first, and how many.
type Like struct {
	First finding.Finding
	Count int
}

// Words says the first, and how many more there are.
func (k Like) Words(c *words.Catalogue) string {
	text := Finding(c, k.First)
	if k.Count > 1 {
		text += " " + c.Text("findings.like", "n", k.Count-1)
	}
	return text
}

// Alike groups findings of a code, with the weight of all, dearest first.
func Alike(fs []finding.Finding) []Like {
	var ks []Like
	for _, f := range fs {
		i := slices.IndexFunc(ks, func(k Like) bool { return k.First.Code == f.Code })
		if i < 0 {
			ks = append(ks, Like{f, 1})
			continue
		}
		ks[i].Count++
		ks[i].First.Weight += f.Weight
	}
	slices.SortStableFunc(ks, func(a, b Like) int { return cmp.Compare(b.First.Weight, a.First.Weight) })
	return ks
}

// Kinds groups findings of a code and severity, in the order of the first of
// each.
func Kinds(fs []finding.Finding) []Like {
	var ks []Like
	for _, f := range fs {
		i := slices.IndexFunc(ks, func(k Like) bool { return k.First.Code == f.Code && k.First.Severity == f.Severity })
		if i < 0 {
			ks = append(ks, Like{f, 1})
		} else {
			ks[i].Count++
		}
	}
	return ks
}

// Each lists findings one by one.
func Each(fs []finding.Finding) []Like {
	ks := make([]Like, len(fs))
	for i, f := range fs {
		ks[i] = Like{f, 1}
	}
	return ks
}

// fewAlike is up to how many findings of a code are listed one by one.
const fewAlike = 3

// Folded lists findings in their order; where there are many of a code, the first stands
// for all of them.
func Folded(fs []finding.Finding) (ks []Like) {
	many := map[finding.Code]int{}
	for _, f := range fs {
		many[f.Code]++
	}
	for _, f := range fs {
		switch n := many[f.Code]; {
		case n <= 0: // told with the first
		case n <= fewAlike:
			ks = append(ks, Like{f, 1})
		default:
			ks = append(ks, Like{f, n})
			many[f.Code] = 0
		}
	}
	return ks
}

// Turned says how the misfit of a closing moves when corners take two
// millimetres more or less.
func Turned(c *words.Catalogue, k plan.Closing) string {
	var texts []string
	for _, t := range k.Turns {
		if t.More.Abs() == 2*measure.Millimetre {
			texts = append(texts, turn(c, &k, t))
		}
	}
	return turns(c, &k, strings.Join(texts, ", "))
}

// Eased says what is left of the misfit of a closing when every corner takes as much
// more or less paper as helps most; "" where that is no help.
func Eased(c *words.Catalogue, k plan.Closing) string {
	best := plan.Turn{Across: max(k.Across.Lo.Abs(), k.Across.Hi.Abs()), Along: k.Along}
	for _, t := range k.Turns {
		if t.Across.Abs() < best.Across.Abs() && t.Along.Abs() <= best.Along.Abs() {
			best = t
		}
	}
	if best.More == 0 {
		return ""
	}
	return turns(c, &k, turn(c, &k, best))
}

func turns(c *words.Catalogue, k *plan.Closing, text string) string {
	return c.Text("turns", "corners", c.Text("count.corner", "n", k.Corners), "turns", text)
}

// turn says what one turn of the corners comes to.
func turn(c *words.Catalogue, k *plan.Closing, t plan.Turn) string {
	id := "turns.more"
	if t.More < 0 {
		id = "turns.less"
	}
	text := c.Text(id, "size", t.More.Abs(), "across", t.Across.Abs())
	if t.Along != k.Along {
		text = c.Text("turns.along", "turn", text, "along", t.Along.Abs())
	}
	return text
}
