package png

import (
	"image"

	"firstdrop/draw"
	"firstdrop/geom"
	"firstdrop/measure"
)

// canvas is a picture in the making.
type canvas struct {
	window draw.Box
	across ratio // parts of a square to a nanometre
	down   ratio
	image  *image.RGBA
	cover  coverage
	tiles  map[*draw.Picture]*draw.Picture // reduced to what can be seen
}

// ratio is a number of parts for a length.
type ratio struct{ parts, length int64 }

// farthest keeps points far outside the canvas, which no square shows, within what
// can be multiplied.
const farthest = 1 << 28

// of returns a length in parts of a square, to the nearest.
func (r ratio) of(l measure.Length) int {
	const most = measure.Length(1) << 42 // some kilometres
	l = min(max(l, -most), most)
	return min(max(int(l.Scaled(r.parts, r.length)), -farthest), farthest)
}

// place returns a point of the scene on the canvas, to the nearest part.
func (c *canvas) place(p geom.Point) point {
	return point{c.across.of(p.X - c.window.X.Lo), c.down.of(c.window.Y.Hi - p.Y)}
}

// parts returns the width of a pen or the size of letters in parts of a square.
func (c *canvas) parts(l measure.Length) int { return c.across.of(l) }

func (c *canvas) ring(r []geom.Point) []point {
	out := make([]point, len(r))
	for i, p := range r {
		out[i] = c.place(p)
	}
	return out
}

// fill paints what the rings added so far cover.
func (c *canvas) fill(r rule, ink draw.Ink) {
	red, green, blue := ink.RGB()
	c.cover.each(r, func(x, y int, cover []int32) {
		pix := c.image.Pix[c.image.PixOffset(x, y):]
		for i, n := range cover {
			mix(pix[4*i:], n, red, green, blue)
		}
	})
}

// mix lays a colour over a square, covering n of full.
func mix(square []uint8, n int32, r, g, b uint8) {
	switch {
	case n <= 0:
	case n >= full:
		square[0], square[1], square[2] = r, g, b
	default:
		square[0] = blend(square[0], r, n)
		square[1] = blend(square[1], g, n)
		square[2] = blend(square[2], b, n)
	}
}

func blend(under, over uint8, n int32) uint8 {
	return uint8((int32(under)*(full-n) + int32(over)*n + full/2) / full)
}

func (c *canvas) item(it draw.Item) {
	switch it := it.(type) {
	case draw.Area:
		c.area(it)
	case draw.Line:
		c.stroke(it.Points, false, it.Pen)
	case draw.Text:
		c.text(it)
	case draw.Tile:
		c.tile(it)
	}
}

func (c *canvas) area(a draw.Area) {
	if !a.Fill.IsNone() {
		c.shape(a.Shape)
		c.fill(evenOdd, a.Fill)
	}
	c.stroke(a.Shape.Outline, true, a.Pen)
	for _, h := range a.Shape.Holes {
		c.stroke(h, true, a.Pen)
	}
}

// shape adds the rings of a polygon.
func (c *canvas) shape(p geom.Polygon) {
	c.cover.add(c.ring(p.Outline))
	for _, h := range p.Holes {
		c.cover.add(c.ring(h))
	}
}
