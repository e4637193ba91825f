package sheet

import (
	"fmt"
	"strings"

	"firstdrop/draw"
	"firstdrop/draw/page"
	"firstdrop/hanging"
	"firstdrop/plan"
	"firstdrop/tell"
)

// cutting sets the cutting list of a paper, in both orders.
func (s *Set) cutting(paper int) (*page.Flow, error) {
	c, err := newCuts(s.Plan, paper, s.words())
	if err != nil {
		return nil, err
	}
	f := s.book.Begin(s.ofPaper(s.text("page.cutting"), paper), false)
	f.Text(page.Body, s.text("page.cut-intro"))
	f.Text(page.Body.Inked(page.Oxide), s.text("page.cut-blade"))
	f.Headed(s.cutOrder(c))
	f.Headed(s.hangOrder(c))
	return f, nil
}

// ofPaper adds the paper's name to a title where there are several papers.
func (s *Set) ofPaper(title string, paper int) string {
	used := 0
	for i := range s.Plan.Papers {
		if len(s.Plan.Papers[i].Batches) > 0 {
			used++
		}
	}
	if used < 2 {
		return title
	}
	return s.text("page.of", "title", title, "name", s.Plan.Task.Papers[paper].Name)
}

// listType is how the less weighty columns of long lists are set.
var listType = page.Body.Sized(32 * mm / 10)

var pieceType = page.Strong.Sized(5 * mm)

// cutOrder lists the pieces as they come off the rolls.
func (s *Set) cutOrder(c *cuts) page.Table {
	t := page.Table{Title: s.text("page.cut-order"), Snug: s.tight, Columns: []page.Column{
		{Title: s.text("page.col-tick"), Width: 9 * mm},
		{Title: s.text("page.col-piece"), Width: 17 * mm, Type: pieceType},
		{Title: s.text("page.col-length"), Width: 24 * mm, Type: page.Strong.At(draw.End)},
		{Title: s.text("page.col-mark"), Share: 5, Type: listType},
		{Title: s.text("page.col-top"), Width: 17 * mm, Type: listType},
		{Title: s.text("page.col-where"), Share: 5, Type: listType},
		{Title: s.text("page.col-on-roll"), Width: 27 * mm, Type: page.Small},
		{Title: s.text("page.col-left"), Width: 19 * mm, Type: page.Small.At(draw.End)},
	}}
	var last *tell.Roll
	missing := false
	for _, ref := range c.asCut() {
		at := c.at[ref]
		switch {
		case at.roll == nil && !missing:
			missing = true
			t.Rows = append(t.Rows, page.Row{Across: s.text("page.missing-row")})
		case at.roll != last && at.roll != nil:
			last = at.roll
			t.Rows = append(t.Rows, page.Row{Across: s.rollHead(at.roll)})
			if n := len(at.roll.Orders); n > 1 {
				t.Rows = append(t.Rows, page.Row{Across: s.text("page.orders-depend", "orders", n)})
			}
		}
		t.Rows = append(t.Rows, page.Row{Cells: s.cutRow(c, ref, at)})
	}
	return t
}

func (s *Set) rollHead(r *tell.Roll) string {
	parts := []string{s.text("page.roll", "roll", r.Title())}
	if r.Batch != "" {
		parts = append(parts, s.text("page.roll-batch", "batch", r.Batch))
	}
	parts = append(parts, s.size(r.Length))
	if r.InHand {
		parts = append(parts, s.text("page.roll-in-hand"))
	}
	return s.text("page.roll-left", "roll", strings.Join(parts, ", "), "left", s.size(r.Left))
}

func (s *Set) cutRow(c *cuts, ref plan.PieceRef, at stand) []string {
	l := c.plan.Runs[ref.Run].Layout
	p := &l.Pieces[ref.Piece]
	row := []string{page.Tick, p.Name, s.size(p.Length), "", s.topWords(l, p), s.whereWords(l, p), "", ""}
	if at.roll == nil {
		return row
	}
	row[3] = tell.Mark(s.words(), &c.plan.Task.Papers[c.paper], at.roll.Phase(at.cut))
	if len(at.gifts) > 1 {
		slit := c.plan.Across(ref)
		row[5] += " · " + s.text("page.side-by-side", "pieces", tell.Names(at.gifts), "slit", span(s.bare(slit.Lo), s.size(slit.Hi)))
	}
	row[6] = span(s.bare(at.cut.From.RoundTo(mm/10)), s.size(at.cut.To.RoundTo(mm/10)))
	row[7] = s.size((at.roll.Length - at.cut.To).FloorTo(mm))
	return row
}

// topWords says which end of a piece comes off the roll first and where TOP goes.
func (s *Set) topWords(l *hanging.Layout, p *hanging.Piece) string {
	if l.Drops[p.Drop].Reversed {
		return s.text("page.foot-first")
	}
	return s.text("page.head-first")
}

// hangOrder lists the pieces as they hang.
func (s *Set) hangOrder(c *cuts) page.Table {
	t := page.Table{Title: s.text("page.hang-order"), Snug: s.tight, Columns: []page.Column{
		{Title: s.text("page.col-piece"), Width: 17 * mm, Type: pieceType},
		{Title: s.text("page.col-roll"), Width: 30 * mm},
		{Title: s.text("page.col-length"), Width: 25 * mm, Type: page.Strong.At(draw.End)},
		{Title: s.text("page.col-where"), Share: 1, Type: listType},
		{Title: s.text("page.col-covers"), Width: 45 * mm, Type: page.Small},
	}}
	run := -1
	for _, ref := range c.asHung() {
		if ref.Run != run && len(c.plan.Runs) > 1 {
			t.Rows = append(t.Rows, page.Row{Across: s.words().Name(c.plan.Runs[ref.Run].Layout.Run.Name)})
		}
		run = ref.Run
		l := c.plan.Runs[ref.Run].Layout
		p := &l.Pieces[ref.Piece]
		from := ""
		if at := c.at[ref]; at.roll != nil {
			from = rollCut(at)
		}
		t.Rows = append(t.Rows, page.Row{Cells: []string{
			p.Name, from, s.size(p.Length), s.whereWords(l, p), span(s.bare(p.Y.Lo), s.size(p.Y.Hi)),
		}})
	}
	return t
}

// whereWords says on which wall a piece hangs, and what it is.
func (s *Set) whereWords(l *hanging.Layout, p *hanging.Piece) string {
	return s.words().Name(l.Run.WallName(l.PieceWall(p))) + " · " + tell.Piece(s.words(), l, p)
}

// rollCut names the roll and the cut that give a piece: "4 (A1) · 3".
func rollCut(at stand) string { return fmt.Sprintf("%s · %d", at.roll.Title(), at.number) }

// span writes where something begins and ends.
func span(from, to string) string { return from + " – " + to }
