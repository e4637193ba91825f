package sheet

import (
	"io"
	"strconv"

	"firstdrop/measure"
	"firstdrop/plan"
)

// RollMap writes the rolls of one paper as CSV, one row per cut in cutting
// order: roll by roll, and within a roll order by order where it has several.
// An order serves every roll that begins at a phase after start_after and up to
// start_up_to, counted round the repeat; equal figures mean every start. waste
// is what lies between a cut and the one before it. Places are rounded as in
// [CuttingList]. It is an error when the plan does not use the paper.
func RollMap(w io.Writer, p *plan.Plan, paper int, sys measure.System) error {
	c, err := newCuts(p, paper)
	if err != nil {
		return err
	}
	t := newTable(w, sys)
	length := p.Task.Papers[paper].RollLength
	for r, roll := range c.pp.Cutting.Rolls {
		for o, order := range roll.Orders {
			before := measure.Length(0)
			for n, cut := range order.Cuts {
				l, piece := c.piece(cut.Piece)
				t.text("roll", strconv.Itoa(r+1))
				t.text("order", strconv.Itoa(o+1))
				t.length("start_after", spot(order.After))
				t.length("start_up_to", spot(order.UpTo))
				t.length("shown_for_start", spot(order.At))
				t.text("cut", strconv.Itoa(n+1))
				t.length("waste", spot(cut.From)-spot(before))
				t.length("from", spot(cut.From))
				t.length("to", spot(cut.To))
				t.length("length", cut.To-cut.From)
				t.length("phase", piece.Phase)
				t.text("leading_end", leading(l, piece))
				t.text("piece", piece.Name)
				t.text("wall", l.Run.WallName(l.PieceWall(piece)))
				t.text("run", l.Run.Name)
				t.length("left_on_roll", spot(length-cut.To))
				t.end()
				before = cut.To
			}
		}
	}
	return t.write()
}
