package sheet

import (
	"firstdrop/draw"
	"firstdrop/draw/page"
	"firstdrop/draw/pdf"
	"firstdrop/geom"
	"firstdrop/measure"
	"firstdrop/tell"
)

// Grid is how labels lie on their sheet. The zero value is plain paper.
type Grid struct {
	Name          string
	Format        draw.Format
	Across, Down  int
	Width, Height measure.Length // of a label
	Left, Top     measure.Length // from the paper's edges to the first label
	StepX, StepY  measure.Length // from label to label
	First         int            // row in which printing begins: those above carry the check ruler
}

// Grids lists the grids of sheets of labels that shops everywhere sell. Their
// measures are common practice; take one print on plain paper and hold it against
// the sheet first.
func Grids() []Grid {
	return []Grid{
		{Name: "3x8", Format: draw.A4, Across: 3, Down: 8, Width: 70 * mm, Height: 37 * mm, Top: mm / 2, StepX: 70 * mm, StepY: 37 * mm, First: 1},
		{
			Name: "3x7", Format: draw.A4, Across: 3, Down: 7, Width: 635 * mm / 10, Height: 381 * mm / 10,
			Left: 72 * mm / 10, Top: 1515 * mm / 100, StepX: 66 * mm, StepY: 381 * mm / 10,
		},
		{
			Name: "3x10", Format: draw.Letter, Across: 3, Down: 10, Width: 21 * measure.Inch / 8, Height: measure.Inch,
			Left: 3 * measure.Inch / 16, Top: measure.Inch / 2, StepX: 11 * measure.Inch / 4, StepY: measure.Inch,
		},
	}
}

// GridNamed returns the grid of that name; "plain" is plain paper. ok is false for
// an unknown one.
func GridNamed(name string) (g Grid, ok bool) {
	if name == "plain" {
		return Grid{}, true
	}
	for _, g := range Grids() {
		if g.Name == name {
			return g, true
		}
	}
	return Grid{}, false
}

// box returns the box of label i of a page.
func (g *Grid) box(i int) draw.Box {
	x := g.Left + measure.Length(i%g.Across)*g.StepX
	y := g.Format.Height - g.Top - measure.Length(i/g.Across)*g.StepY
	return draw.BoxAt(x, y-g.Height, g.Width, g.Height)
}

// plain returns a grid for plain paper within a page's frame.
func plainGrid(frame draw.Box, format draw.Format, head measure.Length) Grid {
	const across, tall = 2, 38 * mm
	g := Grid{Format: format, Across: across, Width: frame.X.Length() / across, Height: tall, StepX: frame.X.Length() / across, StepY: tall}
	g.Left, g.Top = frame.X.Lo, format.Height-frame.Y.Hi+head
	g.Down = int((frame.Y.Length() - head) / tall)
	return g
}

// labels sets a label for every piece of every paper.
func (s *Set) labels() error {
	all, err := s.stickers()
	if err != nil {
		return err
	}
	isPlain := s.Labels.Name == ""
	const head = 8 * mm
	g := s.Labels
	if isPlain {
		g = plainGrid(s.frame(false), s.Format, head)
	}
	per := g.Across*g.Down - g.First*g.Across
	for i := 0; i < len(all); i += per {
		p := s.labelPage(g, isPlain, i == 0)
		for k, l := range all[i:min(i+per, len(all))] {
			b := g.box(k + g.First*g.Across)
			if isPlain {
				p.Fill(b, 0, cutPen)
			}
			s.sticker(p, b.Grown(-labelAir), l)
		}
	}
	s.tick()
	return nil
}

// labelAir is what stays free round a label: printers reach no nearer to the edge of
// the paper than about 3 mm (common practice).
const labelAir = 3 * mm

var cutPen = draw.Pen{Ink: faint, Width: 2 * mm / 10, Dash: []measure.Length{2 * mm, 2 * mm}}

// labelPage opens a page of labels. Those of a grid keep to the grid: the check ruler
// stands in the margin over it, or in the row left free.
func (s *Set) labelPage(g Grid, isPlain, first bool) *page.Page {
	if isPlain {
		p := s.book.Add(s.text("page.labels"), false)
		p.Set(p.Frame, page.Body, s.text("page.labels-intro"))
		s.markFirst(p, first)
		return p
	}
	format := s.book.Format
	s.book.Format = g.Format
	p := s.book.Add(s.text("page.labels"), false)
	s.book.Format = format
	p.Bare = true
	y := p.Box.Y.Hi - 6*mm
	size := 2 * mm
	if g.First > 0 {
		y, size = p.Box.Y.Hi-g.Top-g.Height/2, 3*mm
	}
	p.In(draw.Group{Role: draw.Furniture}, func() {
		p.Add(draw.Ruler{At: pt(14*mm, y), Size: size, Ink: quiet, Pen: draw.Pen{Ink: quiet, Width: 2 * mm / 10}})
		words := draw.Box{X: across(125*mm, p.Box.X.Hi-10*mm), Y: across(y-3*mm, y+3*mm)}
		p.Lines(words, page.Small.Sized(2*mm), page.Wrap(page.Small.Sized(2*mm), s.text("page.ruler"), words.X.Length(), 2))
	})
	s.markFirst(p, first)
	return p
}

func (s *Set) markFirst(p *page.Page, first bool) {
	if first {
		p.Marks = append(p.Marks, pdf.Bookmark{Title: s.text("page.labels")})
	}
}

// label is what stands on one label.
type label struct {
	piece, wall, length, what, from, mark string
	reversed                              bool
}

// stickers lists the labels, paper by paper in hanging order.
func (s *Set) stickers() (all []label, err error) {
	for i := range s.Plan.Papers {
		if len(s.Plan.Papers[i].Batches) == 0 {
			continue
		}
		c, err := newCuts(s.Plan, i, s.words())
		if err != nil {
			return nil, err
		}
		for _, ref := range c.asHung() {
			l := s.Plan.Runs[ref.Run].Layout
			p := &l.Pieces[ref.Piece]
			one := label{
				piece: p.Name, wall: tell.WallTitle(s.words(), l.Run.WallName(l.PieceWall(p))), length: s.size(p.Length), what: tell.Piece(s.words(), l, p),
				reversed: l.Drops[p.Drop].Reversed,
			}
			if at := c.at[ref]; at.roll != nil {
				one.from = s.text("page.label-from", "roll", at.roll.Title(), "cut", at.number)
				one.mark = tell.Mark(s.words(), &s.Plan.Task.Papers[i], at.roll.Phase(at.cut))
			}
			all = append(all, one)
		}
	}
	return all, nil
}

// sticker draws a label: the piece's number large on the left under an arrow to its
// TOP, the rest on the right.
func (s *Set) sticker(p *page.Page, b draw.Box, l label) {
	left := b
	left.X.Hi = b.X.Lo + b.X.Length()*38/100
	top := left
	top.Y.Lo = top.Y.Hi - min(6*mm, b.Y.Length()/4)
	p.Add(draw.Area{Fill: graphite, Shape: geom.Polygon{Outline: geom.Ring{
		pt(top.X.Lo, top.Y.Lo), pt(top.X.Lo+4*mm, top.Y.Lo), pt(top.X.Lo+2*mm, top.Y.Lo+3*mm),
	}}})
	words := top
	words.X.Lo += 5 * mm
	words.Y.Hi = words.Y.Lo + page.Small.Line() + mm/2
	p.Set(words, page.Strong.Sized(29*mm/10), s.text("page.label-top"))
	number := left
	number.Y.Hi = top.Y.Lo
	p.Largest(number, page.Large.Sized(14*mm), l.piece)
	right := b
	right.X.Lo = left.X.Hi + 2*mm
	t := page.Body
	if b.Y.Length() < 25*mm {
		t = page.Small.Inked(page.Graphite)
	}
	for i, words := range []string{l.length, l.wall, l.what, l.from, l.mark} {
		kind := t
		kind.Bold = i == 0
		if words != "" && right.Y.Length() >= kind.Line() {
			right.Y.Hi = p.Lines(right, kind, page.Wrap(kind, words, right.X.Length(), 2))
		}
	}
}
