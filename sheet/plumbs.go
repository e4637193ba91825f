package sheet

import (
	"firstdrop/draw"
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/tell"
)

// plumbs draws the plumb lines of this wall: a chalked line with a bob at its
// foot, and how far it stands from its corner.
func (e *elevation) plumbs() {
	for i := range e.layout.Plumbs {
		b := &e.layout.Plumbs[i]
		if b.Wall != e.index {
			continue
		}
		far := b.X
		if b.From == hanging.Right {
			far = e.wall.Width - b.X
		}
		lines := e.stretches(b.X)
		for k, l := range lines {
			e.add("plumbs", draw.Segment(l[0], l[1], plumbPen))
			if k == 0 {
				e.add("plumbs", bob(l[0], 4*mm)...)
			}
		}
		text := e.from(far, b.From)
		for k := len(lines) - 1; k >= 0; k-- { // the tallest clear stretch first
			foot, head := lines[k][0], lines[k][1]
			y := geom.Interval{Lo: foot.Y + 8*mm, Hi: head.Y}
			if e.along("plumbs", draw.Text{Text: text, Ink: chalk, Bold: i == 0}, foot.X+(head.X-foot.X)/2, y) {
				break
			}
		}
		say := e.text("plumb.set-"+tell.SetEdge(b), "from", text, "drop", e.layout.Drops[b.Drop].Number, "beyond", e.words.Plain(b.Beyond))
		if lean := tell.LineLean(e.words, e.layout, b.Wall); lean != "" {
			say += " " + lean
		}
		if i == 0 {
			say = e.text("plumb.start", "plumb", say)
		}
		e.notes = append(e.notes, note{mark: plumbMark, text: say})
	}
}

// bob returns a plumb bob with its tip at a point, half its size wide.
func bob(tip geom.Point, size measure.Length) []draw.Item {
	w := size / 4
	at := func(dx, dy measure.Length) geom.Point { return geom.Point{X: tip.X + dx, Y: tip.Y + dy} }
	return []draw.Item{draw.Area{Fill: chalk, Pen: draw.Pen{Ink: white, Width: mm / 5}, Shape: geom.Polygon{Outline: geom.Ring{
		tip, at(w, size*5/8), at(w, size*7/8), at(w/3, size), at(w/3, size*5/4), at(-w/3, size*5/4), at(-w/3, size), at(-w, size*7/8), at(-w, size*5/8),
	}}}}
}
