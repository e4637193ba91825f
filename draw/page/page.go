package page

import (
	"firstdrop/draw"
	"firstdrop/draw/pdf"
	"firstdrop/draw/text"
	"firstdrop/geom"
	"firstdrop/measure"
)

// Page is one page in the making.
type Page struct {
	Box   draw.Box // all of the paper
	Frame draw.Box // where a sheet may draw and write
	Title string   // of the sheet
	Scale string   // what the page says of its scale; "" for none
	// Bare says that nothing is printed beside what the sheet draws, not even the
	// check ruler.
	Bare  bool
	Marks []pdf.Bookmark
	// Rooms lists every text that was set and the room that it was given.
	Rooms []Room

	open [][]draw.Item // of the groups that are open, the page first
}

// Room is a text and the room that it must not leave.
type Room struct {
	Box  draw.Box
	Text draw.Text
}

// Add draws items on the page.
func (p *Page) Add(items ...draw.Item) {
	top := len(p.open) - 1
	p.open[top] = append(p.open[top], items...)
}

// In draws a group: everything that do draws. An empty group is left out.
func (p *Page) In(g draw.Group, do func()) {
	p.open = append(p.open, nil)
	do()
	top := len(p.open) - 1
	g.Items = p.open[top]
	p.open = p.open[:top]
	if len(g.Items) > 0 {
		p.Add(g)
	}
}

// Place draws a scene with the lower left corner of its window at a point.
func (p *Page) Place(s *draw.Scene, at geom.Point) { p.Add(draw.Placed(s, at)) }

// Fill draws a box: its ground, its edge, or both.
func (p *Page) Fill(b draw.Box, ground draw.Ink, edge draw.Pen) {
	p.Add(draw.Area{Shape: geom.Polygon{Outline: b.Ring()}, Fill: ground, Pen: edge})
}

// Level draws a level line.
func (p *Page) Level(x geom.Interval, y measure.Length, pen draw.Pen) {
	p.Add(draw.Segment(geom.Point{X: x.Lo, Y: y}, geom.Point{X: x.Hi, Y: y}, pen))
}

// Set writes one line at the head of a box, cut off where it has no room.
func (p *Page) Set(b draw.Box, t Type, words string) {
	words = text.Fitted(draw.Clean(words), t.Size, t.Bold, b.X.Length())
	if words == "" || t.Line() > b.Y.Length() {
		return
	}
	x := b.X.Lo
	switch t.Anchor {
	case draw.Middle:
		x += b.X.Length() / 2
	case draw.End:
		x = b.X.Hi
	}
	set := draw.Text{At: geom.Point{X: x, Y: b.Y.Hi - t.base()}, Text: words, Size: t.Size, Bold: t.Bold, Anchor: t.Anchor, Ink: t.Ink}
	p.Rooms = append(p.Rooms, Room{b, set})
	p.Add(set)
}

// Centred writes one line in the middle of a box.
func (p *Page) Centred(b draw.Box, t Type, words string) {
	head := b.Middle().Y + t.Line()/2
	line := draw.Box{X: b.X, Y: geom.Interval{Lo: head - t.Line(), Hi: head}}
	if b.Y.Length() < t.Line() {
		return
	}
	p.Set(line, t.At(draw.Middle), words)
}

// Largest writes one line in the middle of a box in the largest letters that have
// room, of at most a size.
func (p *Page) Largest(b draw.Box, t Type, words string) {
	words = draw.Clean(words)
	for least := 2 * mm; t.Size > least; t.Size -= mm / 2 {
		if t.Line() <= b.Y.Length() && text.Width(words, t.Size, t.Bold) <= b.X.Length() {
			break
		}
	}
	p.Centred(b, t, words)
}

// Wrap breaks words into lines for a width, at most so many; the last ends in an
// ellipsis where there are more. most 0 is any number.
func Wrap(t Type, words string, width measure.Length, most int) []string {
	lines := text.Wrapped(draw.Clean(words), t.Size, t.Bold, width)
	if most > 0 && len(lines) > most {
		lines = lines[:most]
		last := lines[most-1] + "…"
		if text.Width(last, t.Size, t.Bold) > width {
			last = text.Fitted(lines[most-1]+" …………", t.Size, t.Bold, width)
		}
		lines[most-1] = last
	}
	return lines
}

// Lines writes lines below each other from the head of a box and returns where the
// next may begin. What has no room in the box's height is not written.
func (p *Page) Lines(b draw.Box, t Type, lines []string) measure.Length {
	for _, l := range lines {
		if b.Y.Length() < t.Line() {
			break
		}
		p.Set(b, t, l)
		b.Y.Hi -= t.Line()
	}
	return b.Y.Hi
}

// Paragraph writes words into a box, broken into lines, and returns where the next
// may begin; where the box ends early the last line shows it by an ellipsis.
func (p *Page) Paragraph(b draw.Box, t Type, words string) (y measure.Length) {
	most := int(b.Y.Length() / t.Line())
	if most < 1 {
		return b.Y.Hi
	}
	p.In(draw.Group{Role: draw.Paragraph}, func() { y = p.Lines(b, t, Wrap(t, words, b.X.Length(), most)) })
	return y
}

// Upright writes one line running upwards, centred in a box.
func (p *Page) Upright(b draw.Box, t Type, words string) {
	words = text.Fitted(draw.Clean(words), t.Size, t.Bold, b.Y.Length())
	if words == "" || t.Size > b.X.Length() {
		return
	}
	m := b.Middle()
	p.Add(draw.Text{
		At: geom.Point{X: m.X + t.Size*36/100, Y: m.Y}, Text: words, Size: t.Size, Bold: t.Bold,
		Anchor: draw.Middle, Turn: draw.Upwards, Ink: t.Ink,
	})
}
