package sheet

import (
	"cmp"
	"io"
	"slices"
	"strings"

	"firstdrop/cutting"
	"firstdrop/measure"
	"firstdrop/plan"
	"firstdrop/tell"
	"firstdrop/words"
)

// RollMap writes the map of the rolls of one paper as CSV: see [RollTable].
func RollMap(w io.Writer, p *plan.Plan, paper int, lang *words.Catalogue) error {
	t, err := RollTable(p, paper, lang)
	if err != nil {
		return err
	}
	return t.WriteCSV(w)
}

// RollTable lists the rolls of one paper, one row per cut in cutting order: roll by roll, and within a roll order by order where it has several.
// An order serves every roll that begins at a phase after start_after and up to
// start_up_to, counted round the repeat; equal figures mean every start. waste
// is what lies between a cut and the one before it. Flaws, and the places where
// another part of the roll begins, stand in rows of their own where they lie.
// Places are rounded as in [CuttingTable]. It is an error when the plan does not
// use the paper.
func RollTable(p *plan.Plan, paper int, lang *words.Catalogue) (*Table, error) {
	c, err := newCuts(p, paper, lang)
	if err != nil {
		return nil, err
	}
	t := newTable("roll-map", lang)
	for r := range c.rolls {
		for o := range c.rolls[r].Orders {
			before := measure.Length(0)
			for _, s := range c.stretches(&c.rolls[r], o) {
				c.stretchRow(t, &c.rolls[r], o, s, before)
				if s.cut != nil {
					before = s.To
				}
			}
		}
	}
	return t, nil
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
func (c *cuts) stretches(r *tell.Roll, order int) (all []stretch) {
	for _, f := range r.Flaws {
		all = append(all, stretch{From: f.From, To: f.To, word: c.words.Text("roll.flaw")})
	}
	for i, at := range r.Parts {
		all = append(all, stretch{From: at, To: at, word: c.words.Text("roll.part", "number", i+2)})
	}
	cuts := r.Orders[order].Cuts
	for n := range cuts {
		all = append(all, stretch{From: cuts[n].From, To: cuts[n].To, cut: &cuts[n], number: n + 1})
	}
	slices.SortStableFunc(all, func(a, b stretch) int { return cmp.Compare(a.From, b.From) })
	return all
}

func (c *cuts) stretchRow(t *Table, r *tell.Roll, order int, s stretch, before measure.Length) {
	o := &r.Orders[order]
	t.count("roll", r.Number)
	t.text("roll-name", r.Name)
	t.text("batch", r.Batch)
	t.text("in-hand", map[bool]string{true: c.words.Text("roll.in-hand")}[r.InHand])
	t.count("order", order+1)
	t.length("start-after", micro(o.After))
	t.length("start-up-to", micro(o.UpTo))
	t.length("shown-for-start", micro(o.At))
	if s.cut != nil {
		c.cutColumns(t, r, s, before)
	} else {
		c.bareColumns(t, s)
	}
	t.end()
}

// cutColumns fills in what a cut gives.
func (c *cuts) cutColumns(t *Table, r *tell.Roll, s stretch, before measure.Length) {
	gifts := r.Gifts(c.plan, *s.cut)
	var leads, walls, runs []string
	for _, g := range gifts {
		leads = append(leads, c.leading(g.Layout, g.Piece))
		walls = append(walls, c.words.Name(g.Layout.Run.WallName(g.Layout.PieceWall(g.Piece))))
		runs = append(runs, c.words.Name(g.Layout.Run.Name))
	}
	t.count("cut", s.number)
	t.length("waste", micro(s.From)-micro(before))
	t.length("from", micro(s.From))
	t.length("to", micro(s.To))
	t.length("length", s.To-s.From)
	t.length("phase", r.Phase(*s.cut))
	t.text("mark", tell.Mark(c.words, &c.plan.Task.Papers[c.paper], r.Phase(*s.cut)))
	t.text("leading-end", each(leads))
	t.text("piece", tell.Names(gifts))
	t.text("wall", each(walls))
	t.text("run", each(runs))
	t.length("left-on-roll", micro(r.Length-s.To))
}

// bareColumns fills in what is no cut.
func (c *cuts) bareColumns(t *Table, s stretch) {
	t.blank("cut", CountColumn, "")
	t.blank("waste", LengthColumn, "")
	t.length("from", micro(s.From))
	t.length("to", micro(s.To))
	t.length("length", s.To-s.From)
	t.blank("phase", LengthColumn, "")
	t.text("mark", "")
	t.text("leading-end", "")
	t.text("piece", s.word)
	t.text("wall", "")
	t.text("run", "")
	t.blank("left-on-roll", LengthColumn, "")
}

// each joins what stands side by side, as one where all are alike.
func each(texts []string) string {
	if len(slices.Compact(slices.Clone(texts))) == 1 {
		return texts[0]
	}
	return strings.Join(texts, " | ")
}
