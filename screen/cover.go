package screen

import (
	"cmp"
	"math"
	"slices"

	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
)

// What a sheet covers of a wall, as it will be trimmed: the wall's face less its
// openings, between the sheet's two edges. Most edges are plumb, and the stretch
// between them is cut out exactly. All sheets of a wall set to something else lean
// alike. A sheet that has turned a leaning corner leans by itself; the sheet beside
// it, hung later, is set plumb at the nearest point and lies over it:
//
//	 face of the wall     between plumb lines     cut along the leaning edges
//	┌─────────────────┐        ┌───────┐               ┌──────┐
//	│    ┌──┐         │   →    ├─┐     │      →        ├─┐   /
//	│    └──┘         │        ├─┘     │               ├─┘  /
//	└─────────────────┘        └───────┘               └───┘
//
// The leaning cut is made in floating point: it is for drawing.

// border is one edge of a sheet on a wall: at x over the foot of the corner that
// the sheet has turned, and by skew to the right of that at its head.
type border struct {
	x, skew measure.Length
	over    geom.Interval
}

// along returns the line at x along which the sheets of a wall stand.
func along(l *hanging.Layout, wall int, x measure.Length) border {
	_, y := l.Run.Walls[wall].Outline.Bounds()
	foot, head := l.OnWall(wall, geom.Point{X: x, Y: y.Lo}), l.OnWall(wall, geom.Point{X: x, Y: y.Hi})
	return border{foot.X, head.X - foot.X, geom.Interval{Lo: foot.Y, Hi: head.Y}}
}

func (b border) leans() bool { return b.skew != 0 && b.over.Length() > 0 }

// at returns where the edge stands at a height.
func (b border) at(y float64) float64 {
	if !b.leans() {
		return float64(b.x)
	}
	return float64(b.x) + float64(b.skew)*(y-float64(b.over.Lo))/float64(b.over.Length())
}

// within returns the stretch of x in which the edge stands over a stretch of
// height.
func (b border) within(y geom.Interval) geom.Interval {
	lo, hi := b.at(float64(y.Lo)), b.at(float64(y.Hi))
	return geom.Interval{Lo: measure.Length(math.Floor(min(lo, hi))), Hi: measure.Length(math.Ceil(max(lo, hi)))}
}

// lay is one part of a drop as it lies on a wall.
type lay struct {
	drop, part  int
	number      int
	left, right border
	// endsLeft and endsRight say that the sheet is cut off there by the kill seam.
	endsLeft, endsRight bool
}

// beyond is farther than a sheet leans.
const beyond = measure.Metre

// lays lists what lies on each wall of a layout, from left to right, drops without
// paper left out.
func lays(l *hanging.Layout) [][]lay {
	walls := make([][]lay, len(l.Run.Walls))
	for i := range l.Drops {
		d := &l.Drops[i]
		for k := range d.Parts {
			if d.Number > 0 {
				y := layOf(l, i, k)
				walls[d.Parts[k].Wall] = append(walls[d.Parts[k].Wall], y)
			}
		}
	}
	for _, on := range walls {
		slices.SortStableFunc(on, func(a, b lay) int { return cmp.Compare(a.left.x, b.left.x) })
		overlap(on)
	}
	return walls
}

// layOf finds where the edges of a part's sheet stand on its wall. A sheet that is
// folded round the corner goes on up to it, and what leans is cut where the run
// ends, not along its own edge.
func layOf(l *hanging.Layout, drop, part int) lay {
	d := &l.Drops[drop]
	p := &d.Parts[part]
	f := l.Fall(drop, part)
	y := lay{
		drop: drop, part: part, number: d.Number,
		left: border{p.X.Lo, f.Skew, f.Over}, right: border{p.X.Hi, f.Skew, f.Over},
	}
	first, last := part, part // of the sheet
	for first > 0 && d.Parts[first].Joined {
		first--
	}
	for last+1 < len(d.Parts) && d.Parts[last+1].Joined {
		last++
	}
	left, right := d.Parts[first].Across.Lo, d.Parts[last].Across.Hi
	isStart, isEnd := drop == 0 && first == 0, drop == len(l.Drops)-1 && last == len(d.Parts)-1
	if isStart && d.Parts[first].Skew != 0 {
		left = min(left, 0)
	}
	if isEnd && d.Parts[last].Skew != 0 {
		right = max(right, l.Paper.Width)
	}
	y.left.x, y.right.x = f.Edge+left, f.Edge+right
	if part > first { // folded, it covers the wall right up to the corner
		y.left.x -= beyond
	}
	if part < last {
		y.right.x += beyond
	}
	y.trim(l, isStart, isEnd, p.Wall)
	return y
}

// trim cuts a sheet off at a kill seam on its wall.
func (y *lay) trim(l *hanging.Layout, isStart, isEnd bool, wall int) {
	k := l.Choice.Kill
	if k.Kind != hanging.OnWall || k.Wall != wall {
		return
	}
	if isStart {
		y.left, y.endsLeft = along(l, wall, k.X), true
	}
	if isEnd {
		y.right, y.endsRight = along(l, wall, k.X), true
	}
}

// overlap trims, of two neighbours that lap because one of them leans, the one
// hung first along the edge of the other.
func overlap(on []lay) {
	for i := range max(len(on)-1, 0) {
		a, b := &on[i], &on[i+1]
		if a.endsRight || b.endsLeft || !a.right.leans() && !b.left.leans() {
			continue
		}
		if a.number < b.number {
			a.right = b.left
		} else {
			b.left = a.right
		}
	}
}

// rings returns what a sheet covers of a face, in millimetres, with the wall's left
// end at x.
func (y *lay) rings(face geom.Polygon, x float64) [][]Point {
	_, reach := face.Bounds()
	hull := geom.Interval{Lo: y.left.within(reach).Lo, Hi: y.right.within(reach).Hi}
	out := [][]Point{}
	for _, r := range geom.Outlines(face.Cells(hull)) {
		ring := floating(r)
		if y.left.leans() {
			ring = beside(ring, func(p Point) float64 { return p[0] - y.left.at(p[1]) })
		}
		if y.right.leans() {
			ring = beside(ring, func(p Point) float64 { return y.right.at(p[1]) - p[0] })
		}
		if len(ring) > 2 {
			out = append(out, drawn(ring, x))
		}
	}
	return out
}

// floating returns a ring in nanometres that are no longer whole.
func floating(r geom.Ring) []Point {
	out := make([]Point, len(r))
	for i, p := range r {
		out[i] = Point{float64(p.X), float64(p.Y)}
	}
	return out
}

// beside returns the part of a ring where depth, linear in the point, is 0 or
// more. Where it falls apart, the parts are joined along the cut.
func beside(r []Point, depth func(Point) float64) []Point {
	var out []Point
	for i, p := range r {
		q := r[(i+1)%len(r)]
		a, b := depth(p), depth(q)
		if a >= 0 {
			out = append(out, p)
		}
		if a < 0 != (b < 0) && a != 0 && b != 0 {
			t := a / (a - b)
			out = append(out, Point{p[0] + (q[0]-p[0])*t, p[1] + (q[1]-p[1])*t})
		}
	}
	return out
}

// drawn moves a ring in nanometres to the wall's place along the band.
func drawn(r []Point, x float64) []Point {
	for i, p := range r {
		r[i] = Point{rounded(p[0]/perMM + x), rounded(p[1] / perMM)}
	}
	return r
}

// tile returns the map from the design under a part to the band.
func tile(f hanging.Fall, width measure.Length, x float64) [6]float64 {
	slope, rise := 0.0, 0.0
	if f.Skew != 0 {
		slope = float64(f.Skew) / float64(f.Over.Length())
	}
	if f.Rise != 0 {
		rise = float64(f.Rise) / float64(f.Wide)
	}
	// Where the edge meets the row that begins a repeat.
	e, begins := mm(f.Edge), mm(f.Begins)
	if slope != 0 || rise != 0 {
		foot := mm(f.Edge) - slope*mm(f.Over.Lo)
		begins = (begins + rise*foot) / (1 - rise*slope)
		e = foot + slope*begins
	}
	if f.Reversed {
		w := mm(width)
		return [6]float64{-1, finely(-rise), finely(slope), 1, rounded(x + e + w), rounded(begins + rise*w)}
	}
	return [6]float64{1, finely(rise), finely(-slope), -1, rounded(x + e), rounded(begins)}
}

const perMM = float64(measure.Millimetre)

// mm returns a length in millimetres, to a thousandth.
func mm(l measure.Length) float64 { return rounded(float64(l) / perMM) }

// rounded keeps answers short: a thousandth of a millimetre is nothing to see.
func rounded(x float64) float64 { return math.Round(x*1000) / 1000 }

// finely rounds a slope.
func finely(x float64) float64 { return math.Round(x*1e9) / 1e9 }
