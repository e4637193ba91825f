package png

import (
	"math"

	"firstdrop/draw"
	"firstdrop/geom"
)

// spot is a place on the canvas before it is rounded.
type spot struct{ x, y float64 }

func (s spot) rounded() point { return point{int(math.Round(s.x)), int(math.Round(s.y))} }

// stroke draws a line with a pen. Ends are square with the points, corners round.
func (c *canvas) stroke(points []geom.Point, closed bool, pen draw.Pen) {
	if pen.IsNone() || len(points) < 2 {
		return
	}
	path := make([]spot, 0, len(points)+1)
	for _, p := range c.ring(points) {
		path = append(path, spot{float64(p.x), float64(p.y)})
	}
	if closed {
		path = append(path, path[0])
	}
	half := float64(c.parts(pen.Width)) / 2
	dashes := c.dashes(pen)
	for _, part := range dashed(path, dashes) {
		for i := 1; i < len(part); i++ {
			c.bar(part[i-1], part[i], half)
			if i+1 < len(part) {
				c.joint(part[i], half)
			}
		}
		if closed && len(dashes) == 0 {
			c.joint(path[0], half)
		}
	}
	c.fill(nonZero, pen.Ink)
}

// dashes returns strokes and gaps in turn, in parts of a square; none for a whole
// line, and for dashes too short to be seen.
func (c *canvas) dashes(pen draw.Pen) []float64 {
	var out []float64
	sum := 0.0
	for _, d := range pen.Dash {
		out = append(out, float64(max(c.parts(d), 0)))
		sum += out[len(out)-1]
	}
	if sum < parts/4 {
		return nil
	}
	if len(out)%2 == 1 { // an odd list is run through twice, as SVG and PDF do
		out = append(out, out...)
	}
	return out
}

// bar adds the rectangle that a straight stroke covers.
func (c *canvas) bar(a, b spot, half float64) {
	long := math.Hypot(b.x-a.x, b.y-a.y)
	if long == 0 {
		return
	}
	dx, dy := (b.y-a.y)/long*half, -(b.x-a.x)/long*half
	c.cover.add([]point{
		spot{a.x + dx, a.y + dy}.rounded(),
		spot{b.x + dx, b.y + dy}.rounded(),
		spot{b.x - dx, b.y - dy}.rounded(),
		spot{a.x - dx, a.y - dy}.rounded(),
	})
}

// joint adds a disc, which runs round the same way as a bar.
func (c *canvas) joint(at spot, half float64) {
	const corners = 16
	ring := make([]point, corners)
	for i := range ring {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / corners)
		ring[i] = spot{at.x + half*cos, at.y + half*sin}.rounded()
	}
	c.cover.add(ring)
}

// dashed cuts a path into its strokes; the path itself where there are no dashes.
func dashed(path []spot, dashes []float64) [][]spot {
	if len(dashes) == 0 {
		return [][]spot{path}
	}
	var out [][]spot
	d, left := 0, dashes[0]
	stroke := []spot{path[0]}
	for i := 1; i < len(path); i++ {
		a, b := path[i-1], path[i]
		long := math.Hypot(b.x-a.x, b.y-a.y)
		for at := 0.0; at < long; {
			step := min(left, long-at)
			at, left = at+step, left-step
			p := spot{a.x + (b.x-a.x)*at/long, a.y + (b.y-a.y)*at/long}
			if d%2 == 0 {
				stroke = append(stroke, p)
			}
			for left <= 0 {
				if d%2 == 0 && len(stroke) > 1 {
					out = append(out, stroke)
				}
				d = (d + 1) % len(dashes)
				left = dashes[d]
				stroke = []spot{p}
			}
		}
	}
	if d%2 == 0 && len(stroke) > 1 {
		out = append(out, stroke)
	}
	return out
}
