package sheet

import (
	"fmt"
	"io"
	"strconv"
	"strings"

	"firstdrop/cutting"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/plan"
)

// ListOrder says in which order a cutting list stands.
type ListOrder int

// The orders of a cutting list.
const (
	AsHung ListOrder = iota // as the drops hang
	AsCut                   // roll by roll, as the pieces come off them
)

// CuttingList writes the pieces of one paper as CSV, one row per piece in
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
func CuttingList(w io.Writer, p *plan.Plan, paper int, by ListOrder, sys measure.System) error {
	c, err := newCuts(p, paper)
	if err != nil {
		return err
	}
	t := newTable(w, sys)
	pieces := c.asHung()
	if by == AsCut {
		pieces = c.asCut()
	}
	for _, ref := range pieces {
		c.row(t, ref)
	}
	return t.write()
}

// cuts is the cutting of one paper.
type cuts struct {
	plan  *plan.Plan
	paper int
	rolls []Roll
	at    map[plan.PieceRef]stand
}

// stand says where a piece is cut: in the first order of its roll. There is no
// roll for one that is missing.
type stand struct {
	roll   *Roll
	number int // of the cut, from 1
	cut    cutting.Cut
	gifts  []Gift // of the cut
	offset measure.Length
}

func newCuts(p *plan.Plan, paper int) (*cuts, error) {
	if len(p.Papers[paper].Batches) == 0 {
		return nil, fmt.Errorf("sheet: no piece is cut from paper %q", p.Task.Papers[paper].Name)
	}
	c := &cuts{plan: p, paper: paper, rolls: Rolls(p, paper), at: map[plan.PieceRef]stand{}}
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

func (c *cuts) row(t *table, ref plan.PieceRef) {
	l := c.plan.Runs[ref.Run].Layout
	p := &l.Pieces[ref.Piece]
	at := c.at[ref]
	t.text("piece", p.Name)
	t.text("drop", strconv.Itoa(l.Drops[p.Drop].Number))
	t.text("wall", l.Run.WallName(l.PieceWall(p)))
	t.text("run", l.Run.Name)
	c.spot(t, at)
	t.length("length", p.Length)
	t.length("phase", p.Phase)
	c.slit(t, at, ref)
	t.text("leading_end", leading(l, p))
	t.length("y_from", p.Y.Lo)
	t.length("y_to", p.Y.Hi)
	t.text("what", what(l, p))
	if at.roll == nil {
		t.blank("left_on_roll")
	} else {
		t.length("left_on_roll", micro(at.roll.Length-at.cut.To))
	}
	t.text("note", c.note(at))
	t.end()
}

// spot says from which roll a piece is cut, and where.
func (c *cuts) spot(t *table, at stand) {
	if at.roll == nil {
		t.text("roll", "missing")
		for _, column := range []string{"roll_name", "batch", "cut"} {
			t.text(column, "")
		}
		t.blank("from")
		t.blank("to")
		return
	}
	t.text("roll", strconv.Itoa(at.roll.Number))
	t.text("roll_name", at.roll.Name)
	t.text("batch", at.roll.Batch)
	t.text("cut", strconv.Itoa(at.number))
	t.length("from", micro(at.cut.From))
	t.length("to", micro(at.cut.To))
}

// slit says what to look for when cutting, and how a piece lies in a cut that
// it shares.
func (c *cuts) slit(t *table, at stand, ref plan.PieceRef) {
	if at.roll == nil {
		t.text("mark", "")
	} else {
		t.text("mark", Mark(&c.plan.Task.Papers[c.paper], at.roll.Phase(at.cut), t.sys))
	}
	if len(at.gifts) < 2 {
		t.blank("offset")
		t.blank("slit_from")
		t.blank("slit_to")
		return
	}
	across := c.plan.Across(ref)
	t.length("offset", at.offset)
	t.length("slit_from", across.Lo)
	t.length("slit_to", across.Hi)
}

// micro rounds a place on a roll.
func micro(l measure.Length) measure.Length { return l.RoundTo(measure.Micrometre) }

// leading says which end of a piece comes off the roll first, and where its
// mark goes so that it is not hung the wrong way up.
func leading(l *hanging.Layout, p *hanging.Piece) string {
	if l.Drops[p.Drop].Reversed {
		return "foot (mark the other end TOP)"
	}
	return "head (mark it TOP)"
}

// note says what else there is to know about a cut: that there is no paper for
// it, what lies beside it, that the roll needs different orders for different
// starts.
func (c *cuts) note(at stand) string {
	if at.roll == nil {
		return "no paper for this piece: find another roll of the batch before cutting"
	}
	var notes []string
	if len(at.gifts) > 1 {
		notes = append(notes, "cut right across, then slit: "+Names(at.gifts))
	}
	if text := c.orders(at.roll); text != "" {
		notes = append(notes, text)
	}
	return strings.Join(notes, "; ")
}

// orders tells the orders of a roll that needs several.
func (c *cuts) orders(r *Roll) string {
	if len(r.Orders) < 2 {
		return ""
	}
	texts := make([]string, len(r.Orders))
	for k, o := range r.Orders {
		names := make([]string, len(o.Cuts))
		for n, cut := range o.Cuts {
			names[n] = Names(r.Gifts(c.plan, cut))
		}
		texts[k] = fmt.Sprintf("after %v up to %v: %s", micro(o.After), micro(o.UpTo), strings.Join(names, ", "))
	}
	return "the order depends on the phase at which roll " + strconv.Itoa(r.Number) + " begins; " + strings.Join(texts, "; ")
}
