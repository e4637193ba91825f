package page

import (
	"firstdrop/draw"
	"firstdrop/draw/pdf"
	"firstdrop/geom"
	"firstdrop/measure"
)

// Flow sets one thing below the other, from column to column and from page to page.
type Flow struct {
	*Page
	book    *Book
	title   string
	lying   bool
	columns int
	at      int      // the present column
	frame   draw.Box // that the columns share
	y       measure.Length
	top     measure.Length // where the column began
}

// columnGap is what lies between two columns.
const columnGap = 8 * mm

// Begin opens a page for a sheet and a flow on it; mark is the sheet's bookmark.
func (b *Book) Begin(title string, lying bool) *Flow {
	f := &Flow{book: b, title: title, lying: lying, columns: 1}
	f.turn()
	f.Marks = append(f.Marks, pdf.Bookmark{Title: title})
	return f
}

// turn opens the next page.
func (f *Flow) turn() {
	scale := ""
	if f.Page != nil {
		scale = f.Scale
	}
	f.Page = f.book.Add(f.title, f.lying)
	f.Scale = scale
	f.frame, f.at = f.Frame, 0
	f.y, f.top = f.frame.Y.Hi, f.frame.Y.Hi
}

// Turn opens the next page unless nothing stands on the present one.
func (f *Flow) Turn() {
	if f.y != f.Frame.Y.Hi || f.at > 0 {
		f.turn()
	}
	f.frame, f.top = f.Frame, f.y
}

// Columns sets what follows in so many columns, from here down.
func (f *Flow) Columns(n int) {
	if f.columns > 1 && f.at > 0 {
		f.y = f.frame.Y.Lo // what stood in columns ends the page
	}
	f.columns, f.at = n, 0
	f.frame.Y.Hi = f.y
	f.top = f.y
}

// Within keeps what follows to a part of the page, from its head.
func (f *Flow) Within(b draw.Box, columns int) {
	f.frame, f.columns, f.at, f.y, f.top = b, columns, 0, b.Y.Hi, b.Y.Hi
}

// X returns the width that the present column has.
func (f *Flow) X() geom.Interval {
	n := measure.Length(f.columns)
	w := (f.frame.X.Length() - (n-1)*columnGap) / n
	lo := f.frame.X.Lo + measure.Length(f.at)*(w+columnGap)
	return geom.Interval{Lo: lo, Hi: lo + w}
}

// Left returns how much height is left in the column.
func (f *Flow) Left() measure.Length { return f.y - f.frame.Y.Lo }

// Y returns where the next thing begins.
func (f *Flow) Y() measure.Length { return f.y }

// Need goes on to the next column, or page, unless so much height is left. What is
// taller than a whole column begins at the head of one.
func (f *Flow) Need(tall measure.Length) {
	if tall <= f.Left() || f.y == f.top && f.y == f.Frame.Y.Hi {
		return
	}
	if f.at+1 < f.columns {
		f.at++
		f.y = f.frame.Y.Hi
		f.top = f.y
		if tall <= f.Left() {
			return
		}
	}
	f.turn()
}

// Gap leaves some height free, but not at the head of a column.
func (f *Flow) Gap(tall measure.Length) {
	if f.y != f.top {
		f.y -= min(tall, f.Left())
	}
}

// Take takes so much height and returns its box.
func (f *Flow) Take(tall measure.Length) draw.Box {
	f.Need(tall)
	b := draw.Box{X: f.X(), Y: geom.Interval{Lo: f.y - tall, Hi: f.y}}
	f.y -= tall
	return b
}

const aboveHeading = 4 * mm

// Heading writes a heading that stays with what follows it, and marks it.
func (f *Flow) Heading(words string) {
	f.Gap(aboveHeading)
	f.Need(24 * mm)
	lines := Wrap(Sub, words, f.X().Length(), 2)
	b := f.Take(measure.Length(len(lines)) * Sub.Line())
	f.Marks = append(f.Marks, pdf.Bookmark{Title: words, Level: 1, Y: b.Y.Hi})
	f.In(draw.Group{Role: draw.Subheading}, func() { f.Lines(b, Sub, lines) })
	f.y -= min(mm, f.Left())
}

// Text writes a paragraph. Its lines may go on in the next column.
func (f *Flow) Text(t Type, words string) { f.lines(t, 0, nil, words) }

// Item writes a paragraph set in by a width, with something drawn beside its first
// line: a number, a box to tick.
func (f *Flow) Item(t Type, indent measure.Length, mark func(p *Page, b draw.Box), words string) {
	f.lines(t, indent, mark, words)
}

func (f *Flow) lines(t Type, indent measure.Length, mark func(p *Page, b draw.Box), words string) {
	lines := Wrap(t, words, f.X().Length()-indent, 0)
	if n := measure.Length(len(lines)); n <= 4 {
		f.Need(n * t.Line())
	}
	for i := 0; i < len(lines); {
		f.Need(t.Line())
		n := min(int(f.Left()/t.Line()), len(lines)-i)
		b := f.Take(measure.Length(n) * t.Line())
		if i == 0 && mark != nil {
			mark(f.Page, draw.Box{X: geom.Interval{Lo: b.X.Lo, Hi: b.X.Lo + indent}, Y: geom.Interval{Lo: b.Y.Hi - t.Line(), Hi: b.Y.Hi}})
		}
		b.X.Lo += indent
		f.In(draw.Group{Role: draw.Paragraph}, func() { f.Lines(b, t, lines[i:i+n]) })
		i += n
	}
	f.Gap(t.Size / 3)
}
