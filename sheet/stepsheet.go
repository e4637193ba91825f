package sheet

import (
	"strconv"
	"strings"

	"firstdrop/draw"
	"firstdrop/draw/page"
	"firstdrop/hanging"
	"firstdrop/plan"
	"firstdrop/tell"
)

// steps sets the work in its order: cautions, making ready, every drop, the end.
func (s *Set) steps() (*page.Flow, error) {
	f := s.book.Begin(s.text("page.steps"), false)
	s.cautions(f)
	n := 0
	f.Heading(s.text("page.ready"))
	for _, words := range tell.Ready(s.words(), s.Plan) {
		n++
		s.numbered(f, n, words)
	}
	for _, r := range tell.Runs(s.Plan) {
		l := s.Plan.Runs[r].Layout
		if len(l.Pieces) == 0 {
			continue
		}
		f.Heading(s.ofRun(s.text("page.hang"), l.Run.Name))
		n++
		s.numbered(f, n, tell.Paste(s.words(), l.Paper))
		table, err := s.dropTable(r)
		if err != nil {
			return nil, err
		}
		f.Table(table)
		if wet := s.wetTable(r); len(wet.Rows) > 0 {
			f.Heading(s.ofRun(s.text("table.seams"), l.Run.Name))
			f.Text(page.Small, s.text("wet.why", "line", s.text("wet.line")))
			f.Table(wet)
		}
	}
	f.Heading(s.text("page.after"))
	for _, words := range tell.After(s.words()) {
		n++
		s.numbered(f, n, words)
	}
	return f, nil
}

// numbered writes a step with its number and a box to tick.
func (s *Set) numbered(f *page.Flow, n int, words string) {
	f.Item(page.Body, 14*mm, func(p *page.Page, b draw.Box) {
		p.TickBox(draw.BoxAt(b.X.Lo, b.Y.Hi-44*mm/10, 35*mm/10, 35*mm/10))
		b.X.Lo += 5 * mm
		b.X.Hi -= 2 * mm
		p.Set(b, page.Strong.At(draw.End), strconv.Itoa(n))
	}, words)
	f.Gap(s.air(mm, 0))
}

// cautions writes those that apply, beside a bar.
func (s *Set) cautions(f *page.Flow) {
	f.Heading(s.text("page.before"))
	top := f.Y()
	pageBefore := f.Page
	for _, words := range tell.Cautions(s.words(), s.Plan) {
		f.Item(page.Body, 5*mm, nil, words)
		f.Gap(s.air(mm, mm/4))
	}
	if f.Page == pageBefore {
		x := f.X().Lo
		f.Fill(draw.Box{X: across(x, x+2*mm), Y: across(f.Y()+mm, top-mm)}, oxide, draw.Pen{})
	}
}

// dropTable lists the drops of a run in hanging order.
func (s *Set) dropTable(r int) (page.Table, error) {
	l := s.Plan.Runs[r].Layout
	t := page.Table{Title: s.text("page.hang"), Snug: s.tight, Columns: []page.Column{
		{Title: "", Width: 8 * mm},
		{Title: s.text("page.col-drop"), Width: 17 * mm, Type: page.Strong.Sized(5 * mm)},
		{Title: s.text("page.col-from"), Width: 24 * mm, Type: page.Small},
		{Title: s.text("page.col-length"), Width: 24 * mm, Type: page.Strong.At(draw.End)},
		{Title: s.doWords(l.Paper.SoakMin), Share: 1},
	}}
	c, err := newCuts(s.Plan, s.Plan.Task.Runs[r].Paper, s.words())
	if err != nil {
		return t, err
	}
	h := &hangSteps{s: s, c: c, run: r, l: l}
	way := 0
	for _, i := range tell.Drops(l) {
		if d := &l.Drops[i]; d.Index > 0 && way < 1 {
			way = 1
			t.Rows = append(t.Rows, page.Row{Across: s.text("page.rightward")})
		} else if d.Index < 0 && way >= 0 {
			way = -1
			t.Rows = append(t.Rows, page.Row{Across: s.text("page.leftward")})
		}
		t.Rows = append(t.Rows, page.Row{Cells: h.row(i)})
	}
	return t, nil
}

// hangSteps says what to do with each drop of a run.
type hangSteps struct {
	s   *Set
	c   *cuts
	run int
	l   *hanging.Layout
}

// row tells one drop: its pieces, where they come from, how long, what to do.
func (h *hangSteps) row(i int) []string {
	var names, from, lengths []string
	for k := range h.l.Pieces {
		p := &h.l.Pieces[k]
		if p.Drop != i {
			continue
		}
		names = append(names, p.Name)
		lengths = append(lengths, h.s.size(p.Length))
		if at := h.c.at[plan.PieceRef{Run: h.run, Piece: k}]; at.roll != nil {
			from = append(from, rollCut(at))
		}
	}
	return []string{page.Tick, strings.Join(names, " "), strings.Join(from, ", "), strings.Join(lengths, ", "), strings.Join(tell.Drop(h.s.words(), h.s.Plan, h.run, i), " ")}
}

// doWords heads the column of what to do.
func (s *Set) doWords(soak int) string {
	if soak <= 0 {
		return s.text("page.col-do")
	}
	return s.text("page.do-soak", "n", soak)
}
