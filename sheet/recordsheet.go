package sheet

import (
	"slices"
	"strings"

	"firstdrop/draw"
	"firstdrop/draw/page"
	"firstdrop/measure"
	"firstdrop/plan"
	"firstdrop/tell"
)

// record sets what whoever lives with the paper must know years later.
func (s *Set) record() (*page.Flow, error) {
	f := s.book.Begin(s.text("page.record"), false)
	f.Text(page.Body, s.text("page.record-intro"))
	table, err := s.hungTable()
	if err != nil {
		return nil, err
	}
	f.Headed(table)
	f.Headed(s.leftTable())
	f.Heading(s.text("page.care-head"))
	for _, words := range []string{s.text("page.care-label"), s.text("page.care-paste"), s.text("page.care-patch")} {
		f.Text(page.Body, words)
	}
	f.Need(s.air(76*mm, 50*mm))
	f.Heading(s.text("page.fill-head"))
	blanks(f, []string{s.text("page.fill-done"), s.text("page.fill-paste"), s.text("page.fill-batch"), s.text("page.fill-change"), s.text("page.fill-rest"), s.text("page.fill-signed")})
	b := f.Take(s.air(30*mm, min(18*mm, f.Left())))
	f.Fill(b, 0, draw.Pen{Ink: faint, Width: 3 * mm / 10, Dash: []measure.Length{2 * mm, mm}})
	f.Centred(b, page.Small, s.text("page.stick-label"))
	return f, nil
}

// hungTable lists, wall by wall, which drops hang there and from which rolls.
func (s *Set) hungTable() (page.Table, error) {
	t := page.Table{Title: s.text("page.hung-head"), Snug: s.tight, Columns: []page.Column{
		{Title: s.text("page.col-wall"), Share: 3, Type: page.Strong},
		{Title: s.text("page.col-paper"), Share: 3},
		{Title: s.text("page.col-drops"), Share: 4},
		{Title: s.text("page.col-rolls"), Share: 4},
		{Title: s.text("page.col-batch"), Share: 2},
	}}
	for r := range s.Plan.Runs {
		l := s.Plan.Runs[r].Layout
		if len(l.Pieces) == 0 {
			continue
		}
		c, err := newCuts(s.Plan, s.Plan.Task.Runs[r].Paper, s.words())
		if err != nil {
			return t, err
		}
		for w := range l.Run.Walls {
			t.Rows = append(t.Rows, page.Row{Cells: s.hungRow(c, r, w)})
		}
	}
	return t, nil
}

func (s *Set) hungRow(c *cuts, r, w int) []string {
	l := s.Plan.Runs[r].Layout
	var drops []int
	for _, d := range l.Drops {
		for _, p := range d.Parts {
			if p.Wall == w && d.Number > 0 {
				drops = append(drops, d.Number)
			}
		}
	}
	var rolls, batches []string
	for k := range l.Pieces {
		at := c.at[plan.PieceRef{Run: r, Piece: k}]
		if at.roll == nil || !slices.Contains(drops, l.Drops[l.Pieces[k].Drop].Number) {
			continue
		}
		rolls = append(rolls, at.roll.Title())
		batches = append(batches, at.roll.Batch)
	}
	name := s.words().Name(l.Run.WallName(w))
	if len(s.Plan.Runs) > 1 {
		name += ", " + s.words().Name(l.Run.Name)
	}
	batch := strings.Join(tell.Distinct(batches), ", ")
	if strings.Trim(batch, ", ") == "" {
		batch = page.Blank
	}
	return []string{name, l.Paper.Name, tell.Numbers(drops), strings.Join(tell.Distinct(rolls), ", "), batch}
}

// leftTable lists what is left of every roll and which drops it can give again.
func (s *Set) leftTable() page.Table {
	t := page.Table{Title: s.text("page.left-head"), Snug: s.tight, Columns: []page.Column{
		{Title: s.text("page.col-roll-no"), Width: 26 * mm, Type: page.Strong},
		{Title: s.text("page.col-paper"), Share: 2},
		{Title: s.text("page.col-left-len"), Width: 28 * mm, Type: page.Body.At(draw.End)},
		{Title: s.text("page.col-patch"), Share: 4},
	}}
	for i := range s.Plan.Papers {
		for _, r := range tell.Rolls(s.Plan, i) {
			t.Rows = append(t.Rows, page.Row{Cells: []string{
				r.Title(), s.Plan.Task.Papers[i].Name, s.size(r.Left.FloorTo(mm)), s.patchWords(&r, i),
			}})
		}
	}
	return t
}

// patchWords says which pieces a roll's left-over gives again, each by itself.
func (s *Set) patchWords(r *tell.Roll, paper int) string {
	if r.Patches(s.Plan, paper) {
		return s.text("page.patch-all")
	}
	var names []string
	for i := range s.Plan.Runs {
		if s.Plan.Task.Runs[i].Paper != paper {
			continue
		}
		for k := range s.Plan.Runs[i].Layout.Pieces {
			if q := &s.Plan.Runs[i].Layout.Pieces[k]; r.PatchesOne(q) {
				names = append(names, q.Name)
			}
		}
	}
	if len(names) == 0 {
		return s.text("page.patch-none")
	}
	return strings.Join(tell.Distinct(names), ", ")
}
