package sheet

import (
	"firstdrop/draw"
	"firstdrop/draw/page"
	"firstdrop/hanging"
	"firstdrop/plan"
)

// cutting sets the cutting list of a paper, in both orders.
func (s *Set) cutting(paper int) error {
	c, err := newCuts(s.Plan, paper, s.words())
	if err != nil {
		return err
	}
	f := s.book.Begin(s.ofPaper(textCutting, paper), false)
	f.Text(page.Body, textCutIntro)
	f.Text(page.Body.Inked(page.Oxide), textCutBlade)
	f.Heading(textCutOrder)
	f.Table(s.cutOrder(c))
	f.Heading(textHangOrder)
	f.Table(s.hangOrder(c))
	return nil
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
	return textPaperTitle(title, s.Plan.Task.Papers[paper].Name)
}

// listType is how the less weighty columns of long lists are set.
var listType = page.Body.Sized(32 * mm / 10)

var pieceType = page.Strong.Sized(5 * mm)

// cutOrder lists the pieces as they come off the rolls.
func (s *Set) cutOrder(c *cuts) page.Table {
	t := page.Table{Title: textCutOrder, Columns: []page.Column{
		{Title: textColTick, Width: 9 * mm},
		{Title: textColPiece, Width: 17 * mm, Type: pieceType},
		{Title: textColLength, Width: 24 * mm, Type: page.Strong.At(draw.End)},
		{Title: textColMark, Share: 5, Type: listType},
		{Title: textColTop, Width: 17 * mm, Type: listType},
		{Title: textColWhere, Share: 5, Type: listType},
		{Title: textColOnRoll, Width: 27 * mm, Type: page.Small},
		{Title: textColLeft, Width: 19 * mm, Type: page.Small.At(draw.End)},
	}}
	var last *Roll
	missing := false
	for _, ref := range c.asCut() {
		at := c.at[ref]
		switch {
		case at.roll == nil && !missing:
			missing = true
			t.Rows = append(t.Rows, page.Row{Across: textMissingRow})
		case at.roll != last && at.roll != nil:
			last = at.roll
			t.Rows = append(t.Rows, page.Row{Across: s.rollHead(at.roll)})
			if n := len(at.roll.Orders); n > 1 {
				t.Rows = append(t.Rows, page.Row{Across: textOrderDepends(n)})
			}
		}
		t.Rows = append(t.Rows, page.Row{Cells: s.cutRow(c, ref, at)})
	}
	return t
}

func (s *Set) rollHead(r *Roll) string {
	return textRollHead(r.Title(), r.Batch, s.size(r.Length), s.size(r.Left), r.InHand)
}

func (s *Set) cutRow(c *cuts, ref plan.PieceRef, at stand) []string {
	l := c.plan.Runs[ref.Run].Layout
	p := &l.Pieces[ref.Piece]
	row := []string{page.Tick, p.Name, s.size(p.Length), "", textTop(l, p), textWhere(l.Run.WallName(l.PieceWall(p)), what(s.words(), l, p)), "", ""}
	if at.roll == nil {
		return row
	}
	row[3] = Mark(&c.plan.Task.Papers[c.paper], at.roll.Phase(at.cut), s.words())
	if len(at.gifts) > 1 {
		slit := c.plan.Across(ref)
		row[5] += textSideBySide(Names(at.gifts), textSpan(s.bare(slit.Lo), s.size(slit.Hi)))
	}
	row[6] = textSpan(s.bare(at.cut.From.RoundTo(mm/10)), s.size(at.cut.To.RoundTo(mm/10)))
	row[7] = s.size((at.roll.Length - at.cut.To).FloorTo(mm))
	return row
}

// textTop says which end of a piece comes off the roll first and where TOP goes.
func textTop(l *hanging.Layout, p *hanging.Piece) string {
	if l.Drops[p.Drop].Reversed {
		return textFootFirst
	}
	return textHeadFirst
}

// hangOrder lists the pieces as they hang.
func (s *Set) hangOrder(c *cuts) page.Table {
	t := page.Table{Title: textHangOrder, Columns: []page.Column{
		{Title: textColPiece, Width: 17 * mm, Type: pieceType},
		{Title: textColRoll, Width: 30 * mm},
		{Title: textColLength, Width: 25 * mm, Type: page.Strong.At(draw.End)},
		{Title: textColWhere, Share: 1, Type: listType},
		{Title: textColCovers, Width: 45 * mm, Type: page.Small},
	}}
	run := -1
	for _, ref := range c.asHung() {
		if ref.Run != run && len(c.plan.Runs) > 1 {
			t.Rows = append(t.Rows, page.Row{Across: c.plan.Runs[ref.Run].Layout.Run.Name})
		}
		run = ref.Run
		l := c.plan.Runs[ref.Run].Layout
		p := &l.Pieces[ref.Piece]
		from := ""
		if at := c.at[ref]; at.roll != nil {
			from = textRollCut(at.roll.Title(), at.number)
		}
		t.Rows = append(t.Rows, page.Row{Cells: []string{
			p.Name, from, s.size(p.Length), textWhere(l.Run.WallName(l.PieceWall(p)), what(s.words(), l, p)), textSpan(s.bare(p.Y.Lo), s.size(p.Y.Hi)),
		}})
	}
	return t
}
