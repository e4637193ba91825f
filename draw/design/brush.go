package design

import (
	"math"

	"firstdrop/draw"
	"firstdrop/geom"
	"firstdrop/measure"
)

// brush paints on one repeat: whatever it paints comes again one repeat higher and
// one width further on.
type brush struct {
	items         []draw.Item
	window        draw.Box
	width, repeat float64 // in nanometres
	drop          float64 // part of the repeat by which the next width is lower on the roll
}

// xy is a place on the paper: x in widths, y in repeats upwards, for places; or
// both in nanometres, for shapes.
type xy struct{ x, y float64 }

// at returns a place, given in widths and repeats, in nanometres.
func (b *brush) at(x, y float64) xy { return xy{x * b.width, y * b.repeat} }

// unit is the size that motifs are made in: so that many stand side by side.
func (b *brush) unit() float64 { return math.Sqrt(b.width*b.repeat) / 100 }

// again returns the moves that bring a shape of that box into the window.
func (b *brush) again(box draw.Box) []geom.Point {
	var moves []geom.Point
	for i := -2; i <= 2; i++ {
		for j := -3; j <= 3; j++ {
			d := geom.Point{
				X: measure.Length(math.Round(float64(i) * b.width)),
				Y: measure.Length(math.Round((float64(j) + float64(i)*b.drop) * b.repeat)),
			}
			if b.window.Overlaps(box.Shifted(d)) {
				moves = append(moves, d)
			}
		}
	}
	return moves
}

// fill paints the inside of a ring.
func (b *brush) fill(ink draw.Ink, ring []xy) {
	a := draw.Area{Shape: geom.Polygon{Outline: rounded(ring)}, Fill: ink}
	for _, d := range b.again(a.Box()) {
		b.items = append(b.items, draw.Shifted(a, d))
	}
}

// line draws a line.
func (b *brush) line(ink draw.Ink, width float64, points []xy) {
	w := measure.Length(width)
	l := draw.Line{Points: rounded(points), Pen: draw.Pen{Ink: ink, Width: w}}
	for _, d := range b.again(l.Box().Grown(w)) {
		b.items = append(b.items, draw.Shifted(l, d))
	}
}

func rounded(points []xy) []geom.Point {
	out := make([]geom.Point, len(points))
	for i, p := range points {
		out[i] = geom.Point{X: measure.Length(math.Round(p.x)), Y: measure.Length(math.Round(p.y))}
	}
	return out
}

// turned returns a shape made at the origin along x, turned by an angle (a full
// turn is 1, counter-clockwise) and moved to a place.
func turned(points []xy, turn float64, to xy) []xy {
	sin, cos := math.Sincos(2 * math.Pi * turn)
	out := make([]xy, len(points))
	for i, p := range points {
		out[i] = xy{to.x + p.x*cos - p.y*sin, to.y + p.x*sin + p.y*cos}
	}
	return out
}

// traced returns n+1 points of a curve whose parameter runs from 0 to 1.
func traced(n int, f func(t float64) xy) []xy {
	out := make([]xy, n+1)
	for i := range out {
		out[i] = f(float64(i) / float64(n))
	}
	return out
}

// joined returns a ring that goes along one side and back along the other.
func joined(there, back []xy) []xy {
	ring := append([]xy(nil), there...)
	for i := len(back) - 1; i >= 0; i-- {
		ring = append(ring, back[i])
	}
	return ring
}

// disc paints a round spot.
func (b *brush) disc(ink draw.Ink, at xy, radius float64) {
	b.fill(ink, turned(traced(48, func(t float64) xy {
		sin, cos := math.Sincos(2 * math.Pi * t)
		return xy{radius * cos, radius * sin}
	}), 0, at))
}

// leaf paints a pointed leaf from its stalk on, one half darker, with a rib. It
// bends to the left by a part of its length.
func (b *brush) leaf(at xy, turn, long, wide, bend float64, light, dark, rib draw.Ink) {
	spine := func(t float64) xy { return xy{long * t, long * bend * t * t} }
	side := func(s float64) []xy {
		return turned(traced(28, func(t float64) xy {
			p := spine(t)
			return xy{p.x, p.y + s*wide/2*math.Sin(math.Pi*math.Pow(t, 0.8))*(1-0.15*t)}
		}), turn, at)
	}
	middle := turned(traced(28, spine), turn, at)
	b.fill(light, joined(side(1), middle))
	b.fill(dark, joined(middle, side(-1)))
	b.line(rib, wide/22, middle[:26])
	for _, s := range []float64{1, -1} {
		for k := 1; k <= 4; k++ {
			t := 0.12 + 0.16*float64(k)
			from, reach := spine(t), s*wide*0.30*math.Sin(math.Pi*math.Pow(t, 0.8))
			b.line(rib, wide/40, turned([]xy{from, {from.x + long*0.10, from.y + reach}}, turn, at))
		}
	}
}
