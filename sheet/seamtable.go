package sheet

import (
	"io"

	"firstdrop/draw"
	"firstdrop/draw/page"
	"firstdrop/measure"
	"firstdrop/plan"
	"firstdrop/tell"
	"firstdrop/words"
)

// SeamList writes what [SeamTable] lists as CSV.
func SeamList(w io.Writer, p *plan.Plan, lang *words.Catalogue) error {
	return SeamTable(p, lang).WriteCSV(w)
}

// SeamTable lists, for papers that grow when they soak, wall by wall from left to right
// where every seam stands as hung and where it would stand if it were set out with dry
// paper, from the wall's left end, and by how much it is off; the ends of the wall among
// them, where the growth has added up. It has no rows where no paper grows.
func SeamTable(p *plan.Plan, lang *words.Catalogue) *Table {
	t := newTable("seams", lang)
	for r := range p.Runs {
		l := p.Runs[r].Layout
		for _, w := range plan.WetWalls(l) {
			eachSeam(lang, &w, func(what string, s plan.DrySeam) {
				t.text("run", lang.Name(l.Run.Name))
				t.text("wall", l.Run.WallName(w.Wall))
				t.text("what", what)
				t.length("hung", s.X)
				t.length("dry", s.Dry)
				t.length("off", s.X-s.Dry)
				t.end()
			})
		}
	}
	return t
}

// eachSeam calls row with the left end of a wall, its seams and its right end, and with
// what each of them is.
func eachSeam(lang *words.Catalogue, w *plan.WetWall, row func(what string, s plan.DrySeam)) {
	row(lang.Text("wet.left"), w.Left)
	for _, s := range w.Seams {
		id := "wet.seam"
		if s.X == w.Line {
			id = "wet.line"
		}
		row(lang.Text(id), s)
	}
	row(lang.Text("wet.right"), w.Right)
}

// HasSeamTable reports whether a paper of the plan grows, so that there is something
// to list.
func HasSeamTable(p *plan.Plan) bool {
	for r := range p.Runs {
		if len(plan.WetWalls(p.Runs[r].Layout)) > 0 {
			return true
		}
	}
	return false
}

// wetTable lists the seams of a run as hung and dry.
func (s *Set) wetTable(r int) page.Table {
	l := s.Plan.Runs[r].Layout
	t := page.Table{Title: s.text("table.seams"), Columns: []page.Column{
		{Title: "", Width: 30 * mm},
		{Title: s.text("column.hung"), Width: 30 * mm, Type: page.Strong.At(draw.End)},
		{Title: s.text("column.dry"), Width: 30 * mm, Type: page.Body.At(draw.End)},
		{Title: s.text("column.off"), Width: 30 * mm, Type: page.Body.At(draw.End)},
		{Title: "", Share: 1},
	}}
	for _, w := range plan.WetWalls(l) {
		t.Rows = append(t.Rows, page.Row{Across: tell.Capital(tell.Wall(s.words(), l.Run, w.Wall))})
		eachSeam(s.words(), &w, func(what string, d plan.DrySeam) {
			t.Rows = append(t.Rows, page.Row{Cells: []string{what, s.size(d.X), s.size(d.Dry), s.signed(d.X - d.Dry), ""}})
		})
	}
	return t
}

// signed writes a length with its sign where it is not 0.
func (s *Set) signed(l measure.Length) string {
	switch {
	case l > 0:
		return "+" + s.size(l)
	case l < 0:
		return "−" + s.size(-l)
	}
	return s.size(l)
}
