package sheet

import (
	"strconv"

	"firstdrop/draw"
	"firstdrop/draw/page"
	"firstdrop/geom"
	"firstdrop/measure"
	"firstdrop/order"
	"firstdrop/paper"
	"firstdrop/tell"
)

// orders sets the order sheet: what to buy, of which batch, why so much, and how
// sure that is.
func (s *Set) orders() (*page.Flow, error) {
	f := s.book.Begin(s.text("page.order"), false)
	f.Headed(s.orderTable())
	f.Heading(s.text("page.batch"))
	for i := range s.Plan.Papers {
		if label := &s.Plan.Task.Papers[i]; label.Batch != "" && s.Plan.Papers[i].Buy() > 0 {
			f.Text(page.Strong, s.text("page.ask-batch", "paper", label.Name, "batch", label.Batch))
		}
	}
	f.Text(page.Body, s.text("page.one-batch"))
	f.Text(page.Body, s.text("page.short-pieces"))
	for i := range s.Plan.Papers {
		if len(s.Plan.Papers[i].Batches) > 0 {
			s.why(f, i)
			s.sure(f, i)
		}
	}
	s.arrival(f)
	return f, nil
}

func (s *Set) orderTable() page.Table {
	t := page.Table{Title: s.text("page.order-list"), Columns: []page.Column{
		{Title: s.text("page.col-paper"), Share: 3, Type: page.Strong},
		{Title: s.text("page.col-size"), Width: 43 * mm},
		{Title: s.text("page.col-needed"), Width: 24 * mm, Type: page.Body.At(draw.End)},
		{Title: s.text("page.col-sold"), Width: 23 * mm},
		{Title: s.text("page.col-buy"), Width: 27 * mm, Type: page.Strong.Sized(45 * mm / 10)},
		{Title: s.text("page.col-spare"), Width: 13 * mm, Type: page.Body.At(draw.End)},
		{Title: s.text("page.col-cost"), Width: 26 * mm, Type: page.Body.At(draw.End)},
	}}
	for i := range s.Plan.Papers {
		label := &s.Plan.Task.Papers[i]
		any := false
		for _, line := range s.Plan.Papers[i].Orders {
			if line.Bought() > 0 {
				any = true
				t.Rows = append(t.Rows, page.Row{Cells: s.orderRow(label, line)})
			}
			if line.Kept > 0 {
				t.Rows = append(t.Rows, page.Row{Across: s.text("page.order-kept", "rolls", tell.Rolled(s.words(), line.Kept))})
			}
		}
		if !any && len(s.Plan.Papers[i].Batches) > 0 {
			t.Rows = append(t.Rows, page.Row{Across: s.text("buy.nothing", "paper", label.Name)})
		}
	}
	return t
}

func (s *Set) orderRow(label *paper.Paper, line order.Line) []string {
	cost := ""
	if line.Cost.IsStated() {
		cost = s.words().Money(line.Cost)
	}
	return []string{
		label.Name, s.size(label.Width) + " × " + s.size(line.RollLength), strconv.Itoa(line.Rolls), tell.SoldIn(s.words(), line.PerPack),
		tell.Packs(s.words(), line.Packs, line.PerPack), strconv.Itoa(line.Spare), cost,
	}
}

// why draws the rolls by area above the rolls by drops.
func (s *Set) why(f *page.Flow, paper int) {
	pp := &s.Plan.Papers[paper]
	rolls := tell.Rolls(s.Plan, paper)
	tall := s.air(33*mm, 21*mm)
	f.Need(2*tall + 20*mm)
	f.Heading(s.ofPaper(s.text("page.why"), paper))
	wide := min(f.X().Length()/measure.Length(max(len(rolls), pp.AreaRolls, 1)), 13*mm)
	label := &s.Plan.Task.Papers[paper]
	f.In(draw.Group{Role: draw.Figure, Title: s.text("page.why"), Desc: s.text("page.why-desc") + " " + tell.ByArea(s.words(), pp) + ". " + s.text("page.by-drops", "drops", pp.Drops, "rolls", tell.Rolled(s.words(), len(rolls))) + "."}, func() {
		f.Set(f.Take(page.Body.Line()), page.Strong, tell.ByArea(s.words(), pp))
		b := f.Take(tall * 6 / 10)
		s.areaRolls(f.Page, b, wide, label, pp.Net)
		f.Gap(2 * mm)
		f.Set(f.Take(page.Body.Line()), page.Strong, s.text("page.by-drops", "drops", pp.Drops, "rolls", tell.Rolled(s.words(), len(rolls))))
		b = f.Take(tall)
		s.dropRolls(f.Page, b, wide, label, rolls)
	})
	f.Gap(mm)
	if pp.Missing() == 0 && pp.Buy() > 1 {
		words := s.text("page.not-proven", "rolls", tell.Rolled(s.words(), pp.LowerBound()))
		if pp.Proven() && pp.LowerBound() == pp.Buy() {
			words = s.text("page.proven", "rolls", tell.Rolled(s.words(), pp.Buy()-1))
			if len(label.Rolls) > 0 {
				words = s.text("page.proven-beside", "rolls", tell.Rolled(s.words(), pp.Buy()-1))
			}
		}
		f.Text(page.Body, words)
	}
	f.Text(page.Small, s.text("page.why-note"))
}

// longestRoll is what both rows are scaled by.
func longestRoll(label *paper.Paper, rolls []tell.Roll) measure.Length {
	longest := label.RollLength
	for i := range rolls {
		longest = max(longest, rolls[i].Length)
	}
	return longest
}

// areaRolls draws the area as rolls that are used to the last scrap.
func (s *Set) areaRolls(p *page.Page, b draw.Box, wide measure.Length, label *paper.Paper, net measure.Area) {
	roll := label.RollLength.Times(label.Width)
	if roll <= 0 {
		return
	}
	x := b.X.Lo
	for left := net; left > 0 && x+wide <= b.X.Hi+mm; left -= roll {
		box := draw.BoxAt(x, b.Y.Lo, wide*85/100, b.Y.Length()-mm)
		p.Fill(box, white, finePen)
		box.Y.Hi = box.Y.Lo + box.Y.Length().Scaled(int64(min(left, roll)), int64(roll))
		p.Fill(box, faint, draw.Pen{})
		x += wide
	}
}

// dropRolls draws the rolls with their pieces.
func (s *Set) dropRolls(p *page.Page, b draw.Box, wide measure.Length, label *paper.Paper, rolls []tell.Roll) {
	longest := longestRoll(label, rolls)
	for i := range rolls {
		r := &rolls[i]
		x := b.X.Lo + measure.Length(i)*wide
		box := draw.BoxAt(x, b.Y.Lo+5*mm, wide*85/100, (b.Y.Length()-6*mm).Scaled(int64(r.Length), int64(longest)))
		p.Fill(box, white, draw.Pen{})
		p.Add(draw.Hatch{Shape: geom.Polygon{Outline: box.Ring()}, Gap: 14 * mm / 10, Pen: hatchPen})
		p.Fill(box, 0, finePen)
		for k, c := range r.Orders[0].Cuts {
			y := across(box.Y.Lo+box.Y.Length().Scaled(int64(c.From), int64(r.Length)), box.Y.Lo+box.Y.Length().Scaled(int64(c.To), int64(r.Length)))
			piece := draw.Box{X: box.X, Y: y}
			p.Fill(piece, tints[k%2], seamPen)
			p.Largest(piece.Grown(-mm/4), page.Strong.Sized(4*mm), tell.Names(r.Gifts(s.Plan, c)))
		}
		p.Centred(draw.BoxAt(x, b.Y.Lo, wide*85/100, 5*mm), page.Small, strconv.Itoa(r.Number))
	}
}

// sure draws how sure each count is.
func (s *Set) sure(f *page.Flow, paper int) {
	for k := range s.Plan.Papers[paper].Batches {
		c := s.curve(paper, k)
		if c == nil {
			continue
		}
		title := s.ofPaper(s.text("page.sure"), paper)
		if b := s.Plan.Papers[paper].Batches[k].Batch; b != "" {
			title += " " + b
		}
		f.Need(24*mm + measure.Length(len(c.Enough))*s.air(7*mm, 6*mm))
		f.Heading(title)
		f.Text(page.Small, s.text("page.sure-intro", "jobs", c.Jobs))
		for _, l := range tell.CountOrder(s.words(), &s.Plan.Task.Papers[paper], c) {
			f.Text(page.Small, l)
		}
		for _, point := range c.Enough {
			s.sureBar(f, c, point)
		}
		f.Gap(2 * mm)
	}
}

func (s *Set) sureBar(f *page.Flow, c *order.Curve, point order.Point) {
	b := f.Take(s.air(7*mm, 6*mm))
	f.In(draw.Group{Role: draw.Paragraph}, func() {
		kind := page.Body
		words := tell.Rolled(s.words(), point.Rolls)
		if point.Rolls == c.Rolls {
			kind = page.Strong
			words += ", " + s.text("page.planned")
		}
		name, share := b, b
		name.X.Hi = b.X.Lo + 40*mm
		bar := draw.BoxAt(name.X.Hi, b.Y.Lo+mm, b.X.Length()-60*mm, 5*mm)
		share.X.Lo = bar.X.Hi + 3*mm
		f.Set(name, kind, words)
		f.Set(share, kind.At(draw.End), tell.Share(s.words(), point.Jobs, c.Jobs))
		f.Fill(bar, white, page.Thin)
		bar.X.Hi = bar.X.Lo + bar.X.Length().Scaled(int64(point.Jobs), int64(max(c.Jobs, 1)))
		f.Fill(bar, faint, draw.Pen{})
		if point.Rolls == c.Rolls {
			f.Fill(bar, graphite, draw.Pen{})
		}
	})
}

// arrival leaves blanks to fill when the rolls come.
func (s *Set) arrival(f *page.Flow) {
	f.Need(35 * mm)
	f.Heading(s.text("page.ordered"))
	f.Text(page.Small, s.text("page.order-keep"))
	blanks(f, []string{s.text("page.blank-shop"), s.text("page.blank-batch"), s.text("page.blank-rolls"), s.text("page.blank-fault")})
}

// blanks leaves lines to write on behind a few words each, two beside each other.
func blanks(f *page.Flow, all []string) {
	half := (len(all) + 1) / 2
	for i := range half {
		b := f.Take(9 * mm)
		blank(f, across(b.X.Lo, b.Middle().X-4*mm), b.Y, all[i])
		if i+half < len(all) {
			blank(f, across(b.Middle().X+4*mm, b.X.Hi), b.Y, all[i+half])
		}
	}
	f.Gap(2 * mm)
}

func blank(f *page.Flow, x, y geom.Interval, words string) {
	name := draw.Box{X: across(x.Lo, x.Lo+x.Length()*55/100), Y: across(y.Lo, y.Lo+page.Body.Line()+mm)}
	f.Set(name, page.Body, words)
	f.Level(across(name.X.Hi, x.Hi), y.Lo+mm, page.Frame)
}
