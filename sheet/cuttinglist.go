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

// CuttingList writes the pieces of one paper as CSV, one row per piece in
// hanging order. Places on a roll are those of the worst start: a roll that
// begins elsewhere in the design gives the same pieces in the same order, each
// no later. They are rounded to a micrometre, since the worst start lies a
// nanometre past a phase. phase is how far the leading end, the one that comes off the roll
// first, lies behind the place where the design begins. It is an error when the
// plan does not use the paper.
func CuttingList(w io.Writer, p *plan.Plan, paper int, sys measure.System) error {
	c, err := newCuts(p, paper)
	if err != nil {
		return err
	}
	t := newTable(w, sys)
	for i := range c.pp.Pieces {
		c.row(t, i)
	}
	return t.write()
}

// cuts is the cutting of one paper.
type cuts struct {
	plan  *plan.Plan
	pp    *plan.PaperPlan
	paper int
	at    []place // of each piece
}

// place says where a piece is cut: in the first order of its roll.
type place struct {
	roll, number int // from 1
	cut          cutting.Cut
}

func newCuts(p *plan.Plan, paper int) (*cuts, error) {
	c := &cuts{plan: p, pp: &p.Papers[paper], paper: paper}
	if c.pp.Cutting == nil {
		return nil, fmt.Errorf("sheet: no piece is cut from paper %q", p.Task.Papers[paper].Name)
	}
	c.at = make([]place, len(c.pp.Pieces))
	for r, roll := range c.pp.Cutting.Rolls {
		for n, cut := range roll.Orders[0].Cuts {
			c.at[cut.Piece] = place{roll: r + 1, number: n + 1, cut: cut}
		}
	}
	return c, nil
}

// piece returns cutting piece i as the layout has it.
func (c *cuts) piece(i int) (*hanging.Layout, *hanging.Piece) {
	ref := c.pp.Pieces[i]
	l := c.plan.Runs[ref.Run].Layout
	return l, &l.Pieces[ref.Piece]
}

func (c *cuts) row(t *table, i int) {
	l, p := c.piece(i)
	at := c.at[i]
	t.text("piece", p.Name)
	t.text("drop", strconv.Itoa(l.Drops[p.Drop].Number))
	t.text("wall", l.Run.WallName(l.PieceWall(p)))
	t.text("run", l.Run.Name)
	t.text("roll", strconv.Itoa(at.roll))
	t.text("cut", strconv.Itoa(at.number))
	t.length("from", spot(at.cut.From))
	t.length("to", spot(at.cut.To))
	t.length("length", p.Length)
	t.length("phase", p.Phase)
	t.text("leading_end", leading(l, p))
	t.length("y_from", p.Y.Lo)
	t.length("y_to", p.Y.Hi)
	t.text("what", what(l, p))
	t.length("left_on_roll", spot(c.plan.Task.Papers[c.paper].RollLength-at.cut.To))
	t.text("note", c.note(at.roll-1))
	t.end()
}

// spot rounds a place on a roll.
func spot(l measure.Length) measure.Length { return l.RoundTo(measure.Micrometre) }

// leading says which end of a piece comes off the roll first, and where its
// mark goes so that it is not hung the wrong way up.
func leading(l *hanging.Layout, p *hanging.Piece) string {
	if l.Drops[p.Drop].Reversed {
		return "foot (mark the other end TOP)"
	}
	return "head (mark it TOP)"
}

// note says when a roll needs different orders for different starts.
func (c *cuts) note(roll int) string {
	orders := c.pp.Cutting.Rolls[roll].Orders
	if len(orders) < 2 {
		return ""
	}
	texts := make([]string, len(orders))
	for k, o := range orders {
		names := make([]string, len(o.Cuts))
		for n, cut := range o.Cuts {
			_, p := c.piece(cut.Piece)
			names[n] = p.Name
		}
		texts[k] = fmt.Sprintf("after %v up to %v: %s", spot(o.After), spot(o.UpTo), strings.Join(names, ", "))
	}
	return "the order depends on the phase at which roll " + strconv.Itoa(roll+1) + " begins; " + strings.Join(texts, "; ")
}
