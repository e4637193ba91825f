package picture

import (
	"cmp"
	"math"
	"slices"

	"firstdrop/draw"
)

// canvas is what a drawing is painted on: white squares.
//
// A row of squares is cut into strips. Along each strip an outline is inside from
// crossing to crossing, exact to the float; the strips of a row are averaged.
type canvas struct {
	wide, high int
	pix        []float64 // red, green, blue of each square, 0 to 1
	painted    int       // squares looked at so far
}

// strips is how many strips a row has.
const strips = 5

func newCanvas(wide, high int) *canvas {
	c := &canvas{wide: wide, high: high, pix: make([]float64, 3*wide*high)}
	for i := range c.pix {
		c.pix[i] = 1
	}
	return c
}

// crossing is where an edge crosses a strip, and which way it runs.
type crossing struct {
	strip int
	x     float64
	turn  int
}

// fill paints the inside of outlines.
func (c *canvas) fill(lines []polyline, evenOdd bool, with ink) {
	var all []crossing
	for _, l := range lines {
		for i, a := range l.points {
			all = c.cross(all, a, l.points[(i+1)%len(l.points)])
		}
		if len(all) > mostCrossings {
			c.painted = mostPainting + 1
			return
		}
	}
	slices.SortFunc(all, func(a, b crossing) int {
		return cmp.Or(cmp.Compare(a.strip, b.strip), cmp.Compare(a.x, b.x), cmp.Compare(a.turn, b.turn))
	})
	row := make([]float64, c.wide)
	for len(all) > 0 && c.painted <= mostPainting {
		y := all[0].strip / strips
		n := slices.IndexFunc(all, func(k crossing) bool { return k.strip/strips != y })
		if n < 0 {
			n = len(all)
		}
		lo, hi := c.row(row, all[:n], evenOdd)
		c.blend(row, y, lo, hi, with)
		all = all[n:]
	}
}

// cross adds where an edge crosses the middles of strips.
func (c *canvas) cross(all []crossing, a, b dot) []crossing {
	a, b = tame(a), tame(b)
	turn := 1
	if a.y > b.y {
		a, b, turn = b, a, -1
	}
	first := max(math.Ceil(a.y*strips-0.5), 0)
	last := min(math.Ceil(b.y*strips-0.5), float64(c.high*strips))
	for s := first; s < last; s++ {
		y := (s + 0.5) / strips
		all = append(all, crossing{int(s), a.x + (b.x-a.x)*(y-a.y)/(b.y-a.y), turn})
	}
	c.painted += int(max(0, last-first))
	return all
}

// tame keeps a place near enough to the canvas for numbers to hold it.
func tame(p dot) dot {
	near := func(v float64) float64 {
		if math.IsNaN(v) {
			return 0
		}
		return min(max(v, -1e6), 1e6)
	}
	return dot{near(p.x), near(p.y)}
}

// row adds up how much of each square of a row is inside, and between which.
func (c *canvas) row(row []float64, all []crossing, evenOdd bool) (lo, hi int) {
	clear(row)
	lo, hi = c.wide, 0
	depth := 0
	for i, k := range all {
		if c.painted > mostPainting {
			break
		}
		if i > 0 && all[i-1].strip != k.strip {
			depth = 0
		}
		if inside := depth != 0 && (!evenOdd || depth&1 != 0); inside {
			from, to := min(max(all[i-1].x, 0), float64(c.wide)), min(max(k.x, 0), float64(c.wide))
			for x := int(from); x < c.wide && float64(x) < to; x++ {
				row[x] += (min(to, float64(x+1)) - max(from, float64(x))) / strips
			}
			lo, hi = min(lo, int(from)), max(hi, min(int(math.Ceil(to)), c.wide))
			c.painted += int(to-from) + 1
		}
		if evenOdd {
			depth++
		} else {
			depth += k.turn
		}
	}
	return lo, hi
}

// blend lays an ink over a row.
func (c *canvas) blend(row []float64, y, lo, hi int, with ink) {
	for x := lo; x < hi; x++ {
		if row[x] <= 0 {
			continue
		}
		colour, opacity := with.at(float64(x)+0.5, float64(y)+0.5)
		share := min(row[x], 1) * opacity
		p := c.pix[3*(y*c.wide+x):][:3]
		for i := range p {
			p[i] += share * (colour[i] - p[i])
		}
	}
}

// picture returns what is painted.
func (c *canvas) picture() *draw.Picture {
	p := &draw.Picture{Width: c.wide, Height: c.high, Pix: make([]uint8, len(c.pix))}
	for i, v := range c.pix {
		p.Pix[i] = uint8(math.Round(min(max(v, 0), 1) * 255))
	}
	return p
}

// stroked lays lines of a width out as outlines: a box along every piece, and at
// every joint and end what its style asks for. They overlap, all turned alike.
func stroked(lines []polyline, width float64, s style) (out []polyline) {
	r := width / 2
	for _, l := range lines {
		points := slices.CompactFunc(slices.Clone(l.points), func(a, b dot) bool { return a == b })
		if l.closed && len(points) > 1 && points[0] == points[len(points)-1] {
			points = points[:len(points)-1]
		}
		n := len(points)
		if n == 1 && s.lineCap != "butt" {
			out = append(out, disc(points[0], r))
		}
		pieces := n - 1
		if l.closed && n > 2 {
			pieces = n
		}
		for i := range max(pieces, 0) {
			a, b := points[i], points[(i+1)%n]
			open := pieces == n-1
			out = append(out, box(a, b, r, open && i == 0 && s.lineCap == "square", open && i == pieces-1 && s.lineCap == "square"))
			if open && i == pieces-1 {
				break
			}
			out = append(out, joint(a, b, points[(i+2)%n], r, s)...)
		}
		if pieces == n-1 && n > 1 && s.lineCap == "round" {
			out = append(out, disc(points[0], r), disc(points[n-1], r))
		}
	}
	return out
}

// box is a straight piece, longer by half its width at an end that asks for it.
func box(a, b dot, r float64, longA, longB bool) polyline {
	d := math.Hypot(b.x-a.x, b.y-a.y)
	ux, uy := (b.x-a.x)/d*r, (b.y-a.y)/d*r
	if longA {
		a = dot{a.x - ux, a.y - uy}
	}
	if longB {
		b = dot{b.x + ux, b.y + uy}
	}
	return turned(dot{a.x - uy, a.y + ux}, dot{a.x + uy, a.y - ux}, dot{b.x + uy, b.y - ux}, dot{b.x - uy, b.y + ux})
}

// joint is what fills the gap where two pieces meet.
func joint(a, b, c dot, r float64, s style) []polyline {
	if s.lineJoin == "round" {
		return []polyline{disc(b, r)}
	}
	d, e := math.Hypot(b.x-a.x, b.y-a.y), math.Hypot(c.x-b.x, c.y-b.y)
	ux, uy, vx, vy := (b.x-a.x)/d, (b.y-a.y)/d, (c.x-b.x)/e, (c.y-b.y)/e
	side := r
	if ux*vy-uy*vx > 0 {
		side = -r
	}
	p, q := dot{b.x - uy*side, b.y + ux*side}, dot{b.x - vy*side, b.y + vx*side}
	out := []polyline{turned(b, p, q)}
	half := math.Sqrt(max(0, (1+ux*vx+uy*vy)/2)) // cosine of half the turn
	if s.lineJoin == "miter" && half > 0 && 1/half <= s.miter {
		mx, my := (p.x+q.x)/2-b.x, (p.y+q.y)/2-b.y
		if m := math.Hypot(mx, my); m > 0 {
			k := r / half / m
			out = append(out, turned(p, dot{b.x + mx*k, b.y + my*k}, q))
		}
	}
	return out
}

// disc is a round spot.
func disc(at dot, r float64) polyline {
	n := int(min(max(r*3, 8), 64))
	l := polyline{closed: true}
	for i := range n {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		l.points = append(l.points, dot{at.x + r*cos, at.y + r*sin})
	}
	return l
}

// turned is an outline turned as all are: what is to its left is inside.
func turned(points ...dot) polyline {
	area := 0.0
	for i, a := range points {
		b := points[(i+1)%len(points)]
		area += a.x*b.y - a.y*b.x
	}
	if area < 0 {
		slices.Reverse(points)
	}
	return polyline{points, true}
}
