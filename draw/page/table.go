package page

import (
	"firstdrop/draw"
	"firstdrop/geom"
	"firstdrop/measure"
)

// Column is one column of a table.
type Column struct {
	Title string
	Width measure.Length // 0: a share of what is left
	Share int            // of what is left; 0 counts as 1
	Type  Type           // of its cells; the zero value is Body
}

// Row is one row of a table: a text for each column.
type Row struct {
	Cells []string
	// Across is a text over all columns, in place of cells.
	Across string
	// Dark sets the row on a ground.
	Dark bool
}

// Cells that are drawn instead of written.
const (
	Tick  = "\x01" // a box to tick
	Blank = "\x02" // a line to write on
)

// Table is rows under a head, which is repeated on every page.
type Table struct {
	Title   string // for those who have the page read to them
	Columns []Column
	Rows    []Row
	Tall    measure.Length // least height of a row; 0: as its lines need
	Snug    bool           // with less air in its rows
}

// Measures of tables.
const (
	cellSide  = 3 * mm / 2
	cellAbove = mm
	mostLines = 10 // in a cell
)

// Headed sets a table under its title as a heading, which stays with its first rows.
func (f *Flow) Headed(t Table) {
	if len(t.Rows) > 0 {
		lines := Wrap(Sub, t.Title, f.X().Length(), 2)
		f.Need(aboveHeading + measure.Length(len(lines))*Sub.Line() + t.beginning(0, t.widths(f.X().Length())))
	}
	f.Heading(t.Title)
	f.Table(t)
}

// Table sets a table.
func (f *Flow) Table(t Table) {
	for i := 0; i < len(t.Rows); {
		widths := t.widths(f.X().Length())
		head := t.headTall(widths)
		f.Need(t.beginning(i, widths))
		f.In(draw.Group{Role: draw.Table, Title: t.Title}, func() {
			t.head(f, widths, head)
			for first := i; i < len(t.Rows); i++ {
				tall := t.tall(t.Rows[i], widths)
				if i > first && tall+t.after(i, widths) > f.Left() {
					return
				}
				t.row(f, t.Rows[i], widths, tall)
			}
		})
	}
	f.Gap(3 * mm)
}

// beginning returns the height of the least that stands on a page from row i on.
func (t *Table) beginning(i int, widths []measure.Length) measure.Length {
	return t.headTall(widths) + t.tall(t.Rows[i], widths) + t.after(i, widths)
}

// after returns the height that must follow row i: that of rows across and of the
// first with cells below them, since no row across may end a page.
func (t *Table) after(i int, widths []measure.Length) (tall measure.Length) {
	for ; t.Rows[i].Across != "" && i+1 < len(t.Rows); i++ {
		tall += t.tall(t.Rows[i+1], widths)
	}
	return tall
}

// widths shares out the width.
func (t *Table) widths(all measure.Length) []measure.Length {
	widths := make([]measure.Length, len(t.Columns))
	shares := measure.Length(0)
	for i, c := range t.Columns {
		widths[i] = c.Width
		all -= c.Width
		if c.Width == 0 {
			shares += measure.Length(max(c.Share, 1))
		}
	}
	for i, c := range t.Columns {
		if c.Width == 0 {
			widths[i] = max(all, 0) * measure.Length(max(c.Share, 1)) / shares
		}
	}
	return widths
}

func (c *Column) kind() Type {
	if c.Type.Size == 0 {
		return Body.At(c.Type.Anchor)
	}
	return c.Type
}

// headKind is the type of column titles.
func (c *Column) headKind() Type { return Small.At(c.kind().Anchor) }

func (t *Table) headTall(widths []measure.Length) measure.Length {
	lines := 1
	for i := range t.Columns {
		lines = max(lines, len(Wrap(Small, t.Columns[i].Title, widths[i]-2*cellSide, 3)))
	}
	return measure.Length(lines)*Small.Line() + cellAbove
}

// above returns the air above and below what stands in a row.
func (t *Table) above() measure.Length {
	if t.Snug {
		return cellAbove / 2
	}
	return cellAbove
}

// tall returns a row's height.
func (t *Table) tall(r Row, widths []measure.Length) measure.Length {
	if r.Across != "" {
		return Strong.Line() + 2*t.above()
	}
	tall := t.Tall
	for i, words := range r.Cells {
		k := t.Columns[i].kind()
		n := max(len(Wrap(k, words, widths[i]-2*cellSide, mostLines)), 1)
		if words == Tick || words == Blank {
			n = 1
		}
		tall = max(tall, measure.Length(n)*k.Line()+2*t.above())
	}
	return tall
}

// head writes the titles of the columns over a rule.
func (t *Table) head(f *Flow, widths []measure.Length, tall measure.Length) {
	b := f.Take(tall)
	x := b.X.Lo
	f.In(draw.Group{Role: draw.Row}, func() {
		for i := range t.Columns {
			cell := draw.Box{X: geom.Interval{Lo: x + cellSide, Hi: x + widths[i] - cellSide}, Y: b.Y}
			kind := t.Columns[i].headKind()
			f.In(draw.Group{Role: draw.HeaderCell}, func() { f.Lines(cell, kind, Wrap(kind, t.Columns[i].Title, cell.X.Length(), 3)) })
			x += widths[i]
		}
	})
	f.Level(b.X, b.Y.Lo, Rule)
}

// row writes a row over a thin rule.
func (t *Table) row(f *Flow, r Row, widths []measure.Length, tall measure.Length) {
	b := f.Take(tall)
	if r.Across != "" || r.Dark {
		f.Fill(b, Linen, draw.Pen{})
	}
	f.In(draw.Group{Role: draw.Row}, func() {
		if r.Across != "" {
			in := b
			in.X = geom.Interval{Lo: b.X.Lo + cellSide, Hi: b.X.Hi - cellSide}
			in.Y.Hi -= t.above()
			f.In(draw.Group{Role: draw.Cell}, func() { f.Set(in, Strong, r.Across) })
			return
		}
		x := b.X.Lo
		for i, words := range r.Cells {
			cell := draw.Box{X: geom.Interval{Lo: x + cellSide, Hi: x + widths[i] - cellSide}, Y: geom.Interval{Lo: b.Y.Lo, Hi: b.Y.Hi - t.above()}}
			f.In(draw.Group{Role: draw.Cell}, func() { t.cell(f.Page, cell, t.Columns[i].kind(), words) })
			x += widths[i]
		}
	})
	f.Level(b.X, b.Y.Lo, Thin)
}

func (t *Table) cell(p *Page, b draw.Box, k Type, words string) {
	switch words {
	case Tick:
		p.TickBox(draw.BoxAt(b.X.Lo, b.Y.Hi-4*mm, 35*mm/10, 35*mm/10))
	case Blank:
		p.Level(b.X, b.Y.Lo+2*mm, Thin)
	default:
		p.Lines(b, k, Wrap(k, words, b.X.Length(), mostLines))
	}
}

// TickBox draws a box to tick.
func (p *Page) TickBox(b draw.Box) { p.Fill(b, White, Frame) }
