package page

import (
	"firstdrop/draw"
	"firstdrop/draw/pdf"
	"firstdrop/draw/text"
	"firstdrop/geom"
	"firstdrop/measure"
)

// Book is the pages of a document.
type Book struct {
	Format draw.Format
	Job    string // what all pages are about
	Words  Words
	Pages  []*Page
}

// Words are those that every page has.
type Words struct {
	Lang   string // as in BCP 47
	PageOf func(n, of int) string
	Ruler  string // what to do with the check ruler
}

// Measures of a page.
const (
	Margin   = 12 * mm
	headTall = 19 * mm
	footTall = 13 * mm
)

// Add opens a page of a sheet, upright or lying.
func (b *Book) Add(title string, lying bool) *Page {
	f := b.Format
	if lying {
		f = f.Landscape()
	}
	p := &Page{Box: f.Box(), Title: title, open: [][]draw.Item{nil}}
	p.Frame = FrameOf(f)
	b.Pages = append(b.Pages, p)
	return p
}

// FrameOf returns the frame of a page: where a sheet may draw.
func FrameOf(f draw.Format) draw.Box {
	frame := f.Box().Grown(-Margin)
	frame.Y = geom.Interval{Lo: frame.Y.Lo + footTall, Hi: frame.Y.Hi - headTall}
	return frame
}

// Document binds the pages.
func (b *Book) Document() *pdf.Document {
	d := &pdf.Document{Title: b.Job, Lang: b.Words.Lang}
	for i, s := range b.Scenes() {
		d.Pages = append(d.Pages, pdf.Page{Scene: s, Bookmarks: b.Pages[i].Marks})
	}
	return d
}

// Scenes finishes the pages.
func (b *Book) Scenes() []*draw.Scene {
	scenes := make([]*draw.Scene, len(b.Pages))
	for i, p := range b.Pages {
		scenes[i] = b.scene(p, i)
	}
	return scenes
}

func (b *Book) scene(p *Page, i int) *draw.Scene {
	s := &draw.Scene{ID: "page", Title: p.Title, Window: p.Box}
	if p.Bare {
		s.Layers = []draw.Layer{{Name: "page", Items: p.open[0]}}
		return s
	}
	content := p.open
	p.open = [][]draw.Item{nil}
	rooms := len(p.Rooms)
	b.head(p)
	b.foot(p, i)
	furniture := p.open[0]
	p.Rooms = p.Rooms[:rooms]
	p.open = content
	s.Layers = []draw.Layer{{Name: "furniture", Items: furniture}, {Name: "page", Items: content[0]}}
	return s
}

// head writes the sheet's title and the job's name over a rule.
func (b *Book) head(p *Page) {
	all := p.Box.Grown(-Margin)
	line := draw.Box{X: all.X, Y: geom.Interval{Lo: all.Y.Hi - 12*mm, Hi: all.Y.Hi}}
	title, job := line, line
	big, small := Title, Type{Size: 42 * mm / 10, Ink: Quiet, Anchor: draw.End}
	// Where both have no room beside each other, the title gives way first.
	room := all.X.Length() - 4*mm
	own := min(text.Width(draw.Clean(b.Job), small.Size, small.Bold), room*4/10)
	big = big.within(room-own, p.Title, 45*mm/10)
	title.X.Hi = title.X.Lo + min(text.Width(draw.Clean(p.Title), big.Size, big.Bold), room-own)
	title.Y.Hi -= (Title.Size - big.Size) * 108 / 100
	p.In(draw.Group{Role: draw.Heading}, func() { p.Set(title, big, p.Title) })
	job.X.Lo = title.X.Hi + 4*mm
	small = small.within(job.X.Length(), b.Job, 3*mm)
	job.Y.Hi -= 4*mm + (42*mm/10-small.Size)*108/100
	p.In(draw.Group{Role: draw.Furniture}, func() {
		p.Set(job, small, b.Job)
		y := all.Y.Hi - 13*mm
		p.Level(all.X, y, Rule)
		p.Add(b.edge(all.X, y)...)
	})
}

// edge draws the untrimmed edge of a paper under the rule: the row of short marks
// by which the next width is set.
func (b *Book) edge(x geom.Interval, y measure.Length) (items []draw.Item) {
	for at, k := x.Lo, 0; at <= x.Hi; at, k = at+4*mm, k+1 {
		deep := mm
		if k%5 == 0 {
			deep = 2 * mm
		}
		items = append(items, draw.Segment(geom.Point{X: at, Y: y}, geom.Point{X: at, Y: y - deep}, Frame))
	}
	return items
}

// foot writes the check ruler, the scale and the page's number.
func (b *Book) foot(p *Page, i int) {
	all := p.Box.Grown(-Margin)
	const size = 26 * mm / 10
	p.In(draw.Group{Role: draw.Furniture}, func() {
		ruler := draw.Ruler{
			At: geom.Point{X: all.X.Lo + 2*mm, Y: all.Y.Lo + 4*mm}, Size: size, Ink: Quiet, Pen: draw.Pen{Ink: Quiet, Width: 2 * mm / 10},
		}
		p.Add(ruler)
		words := draw.Box{X: geom.Interval{Lo: all.X.Lo + 115*mm, Hi: all.X.Hi - 22*mm}, Y: geom.Interval{Lo: all.Y.Lo, Hi: all.Y.Lo + 9*mm}}
		p.Lines(words, Small.Sized(25*mm/10), Wrap(Small.Sized(25*mm/10), b.Words.Ruler, words.X.Length(), 2))
		number := draw.Box{X: geom.Interval{Lo: all.X.Hi - 21*mm, Hi: all.X.Hi}, Y: geom.Interval{Lo: all.Y.Lo - mm, Hi: all.Y.Lo + 10*mm}}
		p.Set(number, Strong.Sized(45*mm/10).At(draw.End), p.Scale)
		number.Y.Hi -= Strong.Sized(45 * mm / 10).Line()
		if b.Words.PageOf != nil {
			p.Set(number, Small.At(draw.End), b.Words.PageOf(i+1, len(b.Pages)))
		}
	})
}
