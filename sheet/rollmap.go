package sheet

import (
	"cmp"
	"io"
	"slices"
	"strconv"
	"strings"

	"firstdrop/cutting"
	"firstdrop/measure"
	"firstdrop/plan"
)

// RollMap writes the rolls of one paper as CSV, one row per cut in cutting
// order: roll by roll, and within a roll order by order where it has several.
// An order serves every roll that begins at a phase after start_after and up to
// start_up_to, counted round the repeat; equal figures mean every start. waste
// is what lies between a cut and the one before it. Flaws, and the places where
// another part of the roll begins, stand in rows of their own where they lie.
// Places are rounded as in [CuttingList]. It is an error when the plan does not
// use the paper.
func RollMap(w io.Writer, p *plan.Plan, paper int, sys measure.System) error {
	c, err := newCuts(p, paper)
	if err != nil {
		return err
	}
	t := newTable(w, sys)
	for r := range c.rolls {
		for o := range c.rolls[r].Orders {
			before := measure.Length(0)
			for _, s := range c.rolls[r].stretches(o) {
				c.stretchRow(t, &c.rolls[r], o, s, before)
				if s.cut != nil {
					before = s.To
				}
			}
		}
	}
	return t.write()
}

// stretch is what a row of the roll map is about: a cut, a flaw, or the place
// where a part begins.
type stretch struct {
	From, To measure.Length
	cut      *cutting.Cut // nil for others
	number   int          // of the cut
	word     string       // for others, what it is
}

// stretches lists what lies on the roll in one of its orders, from its
// beginning.
func (r *Roll) stretches(order int) (all []stretch) {
	for _, f := range r.Flaws {
		all = append(all, stretch{From: f.From, To: f.To, word: "flaw: do not use"})
	}
	for i, at := range r.Parts {
		all = append(all, stretch{From: at, To: at, word: "part " + strconv.Itoa(i+2) + " begins"})
	}
	cuts := r.Orders[order].Cuts
	for n := range cuts {
		all = append(all, stretch{From: cuts[n].From, To: cuts[n].To, cut: &cuts[n], number: n + 1})
	}
	slices.SortStableFunc(all, func(a, b stretch) int { return cmp.Compare(a.From, b.From) })
	return all
}

func (c *cuts) stretchRow(t *table, r *Roll, order int, s stretch, before measure.Length) {
	o := &r.Orders[order]
	t.text("roll", strconv.Itoa(r.Number))
	t.text("roll_name", r.Name)
	t.text("batch", r.Batch)
	t.text("in_hand", map[bool]string{true: "yes"}[r.InHand])
	t.text("order", strconv.Itoa(order+1))
	t.length("start_after", micro(o.After))
	t.length("start_up_to", micro(o.UpTo))
	t.length("shown_for_start", micro(o.At))
	if s.cut != nil {
		c.cutColumns(t, r, s, before)
	} else {
		c.bareColumns(t, s)
	}
	t.end()
}

// cutColumns fills in what a cut gives.
func (c *cuts) cutColumns(t *table, r *Roll, s stretch, before measure.Length) {
	gifts := r.Gifts(c.plan, *s.cut)
	var leads, walls, runs []string
	for _, g := range gifts {
		leads = append(leads, leading(g.Layout, g.Piece))
		walls = append(walls, g.Layout.Run.WallName(g.Layout.PieceWall(g.Piece)))
		runs = append(runs, g.Layout.Run.Name)
	}
	t.text("cut", strconv.Itoa(s.number))
	t.length("waste", micro(s.From)-micro(before))
	t.length("from", micro(s.From))
	t.length("to", micro(s.To))
	t.length("length", s.To-s.From)
	t.length("phase", r.Phase(*s.cut))
	t.text("mark", Mark(&c.plan.Task.Papers[c.paper], r.Phase(*s.cut), t.sys))
	t.text("leading_end", each(leads))
	t.text("piece", Names(gifts))
	t.text("wall", each(walls))
	t.text("run", each(runs))
	t.length("left_on_roll", micro(r.Length-s.To))
}

// bareColumns fills in what is no cut.
func (c *cuts) bareColumns(t *table, s stretch) {
	t.text("cut", "")
	t.blank("waste")
	t.length("from", micro(s.From))
	t.length("to", micro(s.To))
	t.length("length", s.To-s.From)
	t.blank("phase")
	t.text("mark", "")
	t.text("leading_end", "")
	t.text("piece", s.word)
	t.text("wall", "")
	t.text("run", "")
	t.blank("left_on_roll")
}

// each joins what stands side by side, as one where all are alike.
func each(texts []string) string {
	if len(slices.Compact(slices.Clone(texts))) == 1 {
		return texts[0]
	}
	return strings.Join(texts, " | ")
}
