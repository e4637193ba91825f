package sheet

import (
	"firstdrop/cutting"
	"firstdrop/draw"
	"firstdrop/draw/page"
	"firstdrop/geom"
	"firstdrop/measure"
	"firstdrop/tell"
)

// rollMap sets the map of a paper's rolls: each roll a strip to scale, its cuts in it.
func (s *Set) rollMap(paper int) (*page.Flow, error) {
	c, err := newCuts(s.Plan, paper, s.words())
	if err != nil {
		return nil, err
	}
	rolls := c.rolls
	f := s.book.Begin(s.ofPaper(s.text("page.roll-map"), paper), false)
	f.Text(page.Body, s.text("page.roll-intro"))
	f.Gap(2 * mm)
	longest := measure.Length(0)
	for i := range rolls {
		longest = max(longest, rolls[i].Length)
	}
	n := int64((longest+f.X().Length()-1)/f.X().Length()+4) / 5 * 5
	f.Scale = scaleOf(n)
	for i := range rolls {
		for o := range rolls[i].Orders {
			s.rollStrip(f, c, &rolls[i], o, n)
		}
	}
	return f, nil
}

// rollStrip draws a roll in one of its orders.
func (s *Set) rollStrip(f *page.Flow, c *cuts, r *tell.Roll, order int, n int64) {
	label := &s.Plan.Task.Papers[c.paper]
	wide := max(label.Width.Scaled(1, n), 6*mm)
	o := &r.Orders[order]
	words := s.rollWords(r, o)
	lines := page.Wrap(page.Strong, words, f.X().Length(), 6)
	b := f.Take(measure.Length(len(lines))*page.Strong.Line() + wide + s.air(9*mm, 7*mm))
	f.Lines(b, page.Strong, lines)
	strip := draw.Box{X: across(b.X.Lo, b.X.Lo+r.Length.Scaled(1, n)), Y: across(b.Y.Lo+s.air(6*mm, 5*mm), b.Y.Lo+s.air(6*mm, 5*mm)+wide)}
	f.In(draw.Group{Role: draw.Figure, Title: words, Desc: s.rollDesc(r, o)}, func() {
		d := &stripDrawing{s: s, p: f.Page, r: r, n: n, box: strip}
		d.ground(label.Repeat, o)
		for _, q := range c.stretches(r, order) {
			d.stretch(q)
		}
		d.rest(o)
	})
}

// rollWords says what is known of a roll, and when an order of it holds.
func (s *Set) rollWords(r *tell.Roll, o *cutting.Order) string {
	words := s.rollHead(r)
	if len(r.Orders) > 1 {
		words += ", " + s.text("page.roll-order", "after", s.size(micro(o.After)), "upto", s.size(micro(o.UpTo)))
	}
	for _, q := range r.Flaws {
		words += ", " + s.text("page.flaw", "from", s.bare(q.From), "to", s.size(q.To))
	}
	for k, at := range r.Parts {
		words += ", " + s.text("page.part", "number", k+2, "from", s.size(at))
	}
	return words
}

// rollDesc tells the cuts of a roll in order.
func (s *Set) rollDesc(r *tell.Roll, o *cutting.Order) (text string) {
	for _, c := range o.Cuts {
		text += tell.Names(r.Gifts(s.Plan, c)) + " " + span(s.size(micro(c.From)), s.size(micro(c.To))) + ". "
	}
	return text
}

// stripDrawing is a roll being drawn.
type stripDrawing struct {
	s   *Set
	p   *page.Page
	r   *tell.Roll
	n   int64
	box draw.Box
}

// on returns a stretch of the roll on the page.
func (d *stripDrawing) on(from, to measure.Length) draw.Box {
	return draw.Box{X: across(d.box.X.Lo+from.Scaled(1, d.n), d.box.X.Lo+to.Scaled(1, d.n)), Y: d.box.Y}
}

// ground draws the roll, what falls away, and where the repeat begins.
func (d *stripDrawing) ground(repeat measure.Length, o *cutting.Order) {
	d.p.Fill(d.box, white, draw.Pen{})
	d.p.Add(draw.Hatch{Shape: geom.Polygon{Outline: d.box.Ring()}, Gap: 16 * mm / 10, Pen: hatchPen})
	d.p.Fill(d.box, 0, finePen)
	if repeat <= 0 || len(d.r.Parts) > 0 || repeat.Scaled(1, d.n) < 2*mm {
		return
	}
	for x := (-o.At).Mod(repeat); x <= d.r.Length; x += repeat {
		at := d.on(x, x).X.Lo
		top := d.box.Y.Hi
		d.p.Add(draw.Area{Fill: quiet, Shape: geom.Polygon{Outline: geom.Ring{pt(at, top), pt(at+7*mm/10, top+12*mm/10), pt(at-7*mm/10, top+12*mm/10)}}})
	}
}

// stretch draws a cut with its pieces, a flaw, or the beginning of a part.
func (d *stripDrawing) stretch(q stretch) {
	b := d.on(q.From, q.To)
	switch {
	case q.cut != nil:
		d.cut(q, b)
	case q.From == q.To:
		d.p.Add(draw.Segment(pt(b.X.Lo, b.Y.Lo-mm), pt(b.X.Lo, b.Y.Hi+mm), killPen))
	default:
		d.p.Fill(b, white, killPen)
		d.p.Add(draw.Segment(pt(b.X.Lo, b.Y.Lo), pt(b.X.Hi, b.Y.Hi), killPen), draw.Segment(pt(b.X.Lo, b.Y.Hi), pt(b.X.Hi, b.Y.Lo), killPen))
	}
}

// cut draws a cut, the pieces side by side where it gives several.
func (d *stripDrawing) cut(q stretch, b draw.Box) {
	gifts := d.r.Gifts(d.s.Plan, *q.cut)
	label := gifts[0].Layout.Paper
	d.p.Fill(b, tints[0], draw.Pen{})
	for _, g := range gifts {
		part := b
		if len(gifts) > 1 {
			x := d.s.Plan.Across(g.PieceRef)
			wide := b.Y.Length()
			part.Y = across(b.Y.Hi-wide.Scaled(int64(x.Hi), int64(label.Width)), b.Y.Hi-wide.Scaled(int64(x.Lo), int64(label.Width)))
			part.X = d.on(q.From+g.Offset, q.From+g.Offset+g.Piece.Length).X
		}
		d.p.Fill(part, tints[q.number%2], seamPen)
		d.p.Largest(part.Grown(-mm/2), page.Large.Sized(min(55*mm/10, part.Y.Length()*7/10)), g.Piece.Name)
		if g.Layout.Drops[g.Piece.Drop].Reversed {
			d.p.Level(across(part.X.Hi-15*mm/10, part.X.Hi-mm/2), part.Middle().Y, tagPen)
		}
	}
	foot := draw.Box{X: b.X, Y: across(b.Y.Lo-5*mm, b.Y.Lo-mm/2)}
	foot.X.Lo += mm / 2
	foot.X.Hi -= mm / 2
	length := d.s.size(q.To - q.From)
	if t := page.Small.Sized(24 * mm / 10); draw.TextWidth(length, t.Size, false) <= foot.X.Length() {
		d.p.Set(foot, t.At(draw.Middle), length)
	}
}

// rest says how much is left behind the last cut.
func (d *stripDrawing) rest(o *cutting.Order) {
	if len(o.Cuts) == 0 || d.r.Left <= 0 {
		return
	}
	b := d.on(d.r.Length-d.r.Left, d.r.Length)
	foot := draw.Box{X: across(b.X.Lo+mm/2, b.X.Hi), Y: across(b.Y.Lo-5*mm, b.Y.Lo-mm/2)}
	t := page.Small.Sized(24 * mm / 10)
	words := d.s.text("page.left", "size", d.s.size(d.r.Left.FloorTo(mm)))
	if w := draw.TextWidth(words, t.Size, false); w > foot.X.Length() {
		return
	}
	d.p.Set(foot, t.At(draw.End), words)
}
