package png

import (
	"firstdrop/draw"
	"firstdrop/draw/text"
)

// text draws a line of letters.
func (c *canvas) text(t draw.Text) {
	if t.Ink.IsNone() || t.Size <= 0 {
		return
	}
	l := text.Shape(draw.Clean(t.Text), t.Bold)
	at := c.place(t.At)
	scale := float64(c.parts(t.Size)) / text.Em
	start := 0.0
	switch t.Anchor {
	case draw.Middle:
		start = -float64(l.Width) / 2
	case draw.End:
		start = -float64(l.Width)
	}
	for _, r := range l.Runs {
		x := float64(r.X) + start
		for _, g := range r.Glyphs {
			for _, ring := range r.Font.Outline(g.ID) {
				c.letterRing(ring, at, x+float64(g.X-r.X), float64(g.Y), scale, t.Turn)
			}
			c.fill(nonZero, t.Ink)
		}
	}
}

// letterRing adds one ring of a glyph whose origin stands at dx, dy from the
// text's own, in thousandths of the size.
func (c *canvas) letterRing(ring []text.Place, at point, dx, dy, scale float64, turn draw.Turn) {
	points := make([]point, len(ring))
	for i, p := range ring {
		along, up := (dx+float64(p.X))*scale, (dy+float64(p.Y))*scale
		s := spot{float64(at.x) + along, float64(at.y) - up}
		if turn == draw.Upwards {
			s = spot{float64(at.x) - up, float64(at.y) - along}
		}
		points[i] = s.rounded()
	}
	c.cover.add(points)
}
