package sheet

import (
	"fmt"
	"io"
	"strings"

	"firstdrop/cutting"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/plan"
	"firstdrop/tell"
	"firstdrop/words"
)

// ListOrder says in which order a cutting list stands.
type ListOrder int

// The orders of a cutting list.
const (
	AsHung ListOrder = iota // as the drops hang
	AsCut                   // roll by roll, as the pieces come off them
)

// CuttingList writes the pieces of one paper as CSV: see [CuttingTable].
func CuttingList(w io.Writer, p *plan.Plan, paper int, by ListOrder, lang *words.Catalogue) error {
	t, err := CuttingTable(p, paper, by, lang)
	if err != nil {
		return err
	}
	return t.WriteCSV(w)
}

// CuttingTable lists the pieces of one paper, one row per piece in
// hanging order or in cutting order. Places on a roll are those of the worst
// start: a roll that begins elsewhere in the design gives the same pieces in the
// same order, each no later. They are rounded to a micrometre, since the worst
// start lies a nanometre past a phase.
//
// phase is how far the leading end, the one that comes off the roll first, lies
// behind the place where the design begins, and mark says what to look for there
// when the cut is made. Narrow pieces that share a cut have a row each, with the
// same roll, cut, from and to: offset is how far a piece's leading end lies
// behind that of the cut, slit_from and slit_to where it lies across the paper,
// from the left edge with the cut's leading end upwards and the design in sight.
//
// A piece for which there is no paper has the word missing for its roll. It is
// an error when the plan does not use the paper.
func CuttingTable(p *plan.Plan, paper int, by ListOrder, lang *words.Catalogue) (*Table, error) {
	c, err := newCuts(p, paper, lang)
	if err != nil {
		return nil, err
	}
	t, pieces := newTable("as-hung", lang), c.asHung()
	if by == AsCut {
		t, pieces = newTable("as-cut", lang), c.asCut()
	}
	for _, ref := range pieces {
		c.row(t, ref)
	}
	return t, nil
}

// cuts is the cutting of one paper.
type cuts struct {
	plan  *plan.Plan
	paper int
	words *words.Catalogue
	rolls []tell.Roll
	at    map[plan.PieceRef]stand
}

// stand says where a piece is cut: in the first order of its roll. There is no
// roll for one that is missing.
type stand struct {
	roll   *tell.Roll
	number int // of the cut, from 1
	cut    cutting.Cut
	gifts  []tell.Gift // of the cut
	offset measure.Length
}

func newCuts(p *plan.Plan, paper int, lang *words.Catalogue) (*cuts, error) {
	if len(p.Papers[paper].Batches) == 0 {
		return nil, fmt.Errorf("sheet: no piece is cut from paper %q", p.Task.Papers[paper].Name)
	}
	c := &cuts{plan: p, paper: paper, words: lang, rolls: tell.Rolls(p, paper), at: map[plan.PieceRef]stand{}}
	for r := range c.rolls {
		roll := &c.rolls[r]
		for n, cut := range roll.Orders[0].Cuts {
			gifts := roll.Gifts(p, cut)
			for _, g := range gifts {
				c.at[g.PieceRef] = stand{roll, n + 1, cut, gifts, g.Offset}
			}
		}
	}
	return c, nil
}

// asHung lists the paper's pieces as they hang.
func (c *cuts) asHung() (refs []plan.PieceRef) {
	for r := range c.plan.Runs {
		if c.plan.Task.Runs[r].Paper != c.paper {
			continue
		}
		for i := range c.plan.Runs[r].Layout.Pieces {
			refs = append(refs, plan.PieceRef{Run: r, Piece: i})
		}
	}
	return refs
}

// asCut lists them as they are cut; those that are missing come last.
func (c *cuts) asCut() (refs []plan.PieceRef) {
	for r := range c.rolls {
		for _, cut := range c.rolls[r].Orders[0].Cuts {
			for _, g := range c.rolls[r].Gifts(c.plan, cut) {
				refs = append(refs, g.PieceRef)
			}
		}
	}
	for _, ref := range c.asHung() {
		if c.at[ref].roll == nil {
			refs = append(refs, ref)
		}
	}
	return refs
}

func (c *cuts) row(t *Table, ref plan.PieceRef) {
	l := c.plan.Runs[ref.Run].Layout
	p := &l.Pieces[ref.Piece]
	at := c.at[ref]
	t.text("piece", p.Name)
	t.count("drop", l.Drops[p.Drop].Number)
	t.text("wall", c.words.Name(l.Run.WallName(l.PieceWall(p))))
	t.text("run", c.words.Name(l.Run.Name))
	c.spot(t, at)
	t.length("length", p.Length)
	t.length("phase", p.Phase)
	c.slit(t, at, ref)
	t.text("leading-end", c.leading(l, p))
	t.length("y-from", p.Y.Lo)
	t.length("y-to", p.Y.Hi)
	t.text("what", tell.Piece(c.words, l, p))
	if at.roll == nil {
		t.blank("left-on-roll", LengthColumn, "")
	} else {
		t.length("left-on-roll", micro(at.roll.Length-at.cut.To))
	}
	t.text("note", c.note(at))
	t.end()
}

// spot says from which roll a piece is cut, and where.
func (c *cuts) spot(t *Table, at stand) {
	if at.roll == nil {
		t.blank("roll", CountColumn, c.words.Text("cut.missing"))
		t.text("roll-name", "")
		t.text("batch", "")
		t.blank("cut", CountColumn, "")
		t.blank("from", LengthColumn, "")
		t.blank("to", LengthColumn, "")
		return
	}
	t.count("roll", at.roll.Number)
	t.text("roll-name", at.roll.Name)
	t.text("batch", at.roll.Batch)
	t.count("cut", at.number)
	t.length("from", micro(at.cut.From))
	t.length("to", micro(at.cut.To))
}

// slit says what to look for when cutting, and how a piece lies in a cut that
// it shares.
func (c *cuts) slit(t *Table, at stand, ref plan.PieceRef) {
	if at.roll == nil {
		t.text("mark", "")
	} else {
		t.text("mark", tell.Mark(c.words, &c.plan.Task.Papers[c.paper], at.roll.Phase(at.cut)))
	}
	if len(at.gifts) < 2 {
		t.blank("offset", LengthColumn, "")
		t.blank("slit-from", LengthColumn, "")
		t.blank("slit-to", LengthColumn, "")
		return
	}
	across := c.plan.Across(ref)
	t.length("offset", at.offset)
	t.length("slit-from", across.Lo)
	t.length("slit-to", across.Hi)
}

// micro rounds a place on a roll.
func micro(l measure.Length) measure.Length { return l.RoundTo(measure.Micrometre) }

// leading says which end of a piece comes off the roll first, and where its
// mark goes so that it is not hung the wrong way up.
func (c *cuts) leading(l *hanging.Layout, p *hanging.Piece) string {
	if l.Drops[p.Drop].Reversed {
		return c.words.Text("cut.foot-first")
	}
	return c.words.Text("cut.head-first")
}

// note says what else there is to know about a cut: that there is no paper for
// it, what lies beside it, that the roll needs different orders for different
// starts.
func (c *cuts) note(at stand) string {
	if at.roll == nil {
		return c.words.Text("cut.no-paper")
	}
	var notes []string
	if len(at.gifts) > 1 {
		notes = append(notes, c.words.Text("cut.slit", "pieces", tell.Names(at.gifts)))
	}
	if text := c.orders(at.roll); text != "" {
		notes = append(notes, text)
	}
	return strings.Join(notes, "; ")
}

// orders tells the orders of a roll that needs several.
func (c *cuts) orders(r *tell.Roll) string {
	if len(r.Orders) < 2 {
		return ""
	}
	texts := make([]string, len(r.Orders))
	for k, o := range r.Orders {
		names := make([]string, len(o.Cuts))
		for n, cut := range o.Cuts {
			names[n] = tell.Names(r.Gifts(c.plan, cut))
		}
		texts[k] = c.words.Text("cut.order",
			"after", c.words.Exact(micro(o.After)), "upto", c.words.Exact(micro(o.UpTo)), "pieces", strings.Join(names, ", "))
	}
	return c.words.Text("cut.orders", "roll", r.Number, "orders", strings.Join(texts, "; "))
}
