package room

import (
	"math"

	"pgregory.net/rapid"

	"firstdrop/geom"
	"firstdrop/measure"
)

const (
	mm  = measure.Millimetre
	deg = measure.Degree
)

// box returns a closed rectangular room of invented walls North, East, South
// and West.
func box(width, depth, height measure.Length) *Run {
	r := &Run{Name: "Study", Closed: true, Corners: make([]Corner, 4)}
	for i, name := range []string{"North", "East", "South", "West"} {
		w := width
		if i%2 == 1 {
			w = depth
		}
		r.Walls = append(r.Walls, Wall{Name: name, Width: w, Outline: Rectangle(w, height)})
	}
	return r
}

// aRun draws runs of one to five walls, plain, stepped or sloping, with
// openings, fittings and leans; they pass the check.
var aRun = rapid.Custom(func(t *rapid.T) *Run {
	r := &Run{Name: rapid.StringMatching("[A-Z][a-z]{0,3}").Draw(t, "name"), Closed: rapid.Bool().Draw(t, "closed")}
	least := 1
	if r.Closed {
		least = 3
	}
	n := rapid.IntRange(least, 5).Draw(t, "walls")
	for range n {
		r.Walls = append(r.Walls, aWall.Draw(t, "wall"))
	}
	if !r.Closed {
		r.Ends.Left, r.Ends.Right = aCorner.Draw(t, "left end"), aCorner.Draw(t, "right end")
		n--
	}
	for range n {
		r.Corners = append(r.Corners, aCorner.Draw(t, "corner"))
	}
	return r
})

var aCorner = rapid.Custom(func(t *rapid.T) Corner {
	lean := rapid.Map(rapid.Int64Range(-40e6, 40e6), func(n int64) measure.Length { return measure.Length(n) })
	c := Corner{LeanLeft: lean.Draw(t, "lean left"), LeanRight: lean.Draw(t, "lean right")}
	if rapid.Bool().Draw(t, "outside") {
		c.Kind = Outside
	}
	c.Sight = Sight(rapid.IntRange(0, 2).Draw(t, "sight"))
	return c
})

var aWall = rapid.Custom(func(t *rapid.T) Wall {
	millimetres := func(name string, lo, hi int) measure.Length {
		return measure.Length(rapid.IntRange(lo, hi).Draw(t, name)) * mm
	}
	w := Wall{Width: millimetres("width", 300, 5000), Sight: Sight(rapid.IntRange(0, 2).Draw(t, "sight"))}
	left, right, foot := millimetres("left head", 1200, 3000), millimetres("right head", 1200, 3000), millimetres("foot", -50, 50)
	w.Outline = geom.Ring{{X: 0, Y: foot}, {X: w.Width, Y: 0}, {X: w.Width, Y: right}, {X: 0, Y: left}}
	x := measure.Length(0)
	for range rapid.IntRange(0, 3).Draw(t, "openings") {
		x += millimetres("gap", 0, 400)
		width := millimetres("opening", 100, 900)
		if x+width > w.Width {
			break
		}
		w.Openings = append(w.Openings, Opening{
			Kind:    OpeningKind(rapid.IntRange(0, 5).Draw(t, "kind")),
			Outline: Rect(x, millimetres("sill", 0, 900), width, millimetres("opening height", 100, 2100)),
			Depth:   millimetres("depth", 0, 200),
			Sides:   Sides{Left: rapid.Bool().Draw(t, "left"), Sill: rapid.Bool().Draw(t, "sill papered")},
		})
		x += width
	}
	if rapid.Bool().Draw(t, "socket") {
		w.Fittings = append(w.Fittings, Fitting{At: geom.Point{X: millimetres("at", 0, 300), Y: 300 * mm}, Size: geom.Point{X: 80 * mm, Y: 80 * mm}})
	}
	return w
})

// corners of a plan in metres, as drawn; its walls run from corner to corner.
type drawing [][2]float64

// survey measures the drawing without any error, to the nanometre and the
// microdegree. The drawing goes clockwise, so that the room is on the right.
func (d drawing) survey() *Survey {
	s := &Survey{}
	n := len(d)
	for i := range d {
		from, to, beyond := d[(i+n-1)%n], d[i], d[(i+1)%n]
		s.Widths = append(s.Widths, LengthReading{Length: length(math.Hypot(to[0]-from[0], to[1]-from[1]))})
		turn := math.Atan2(beyond[1]-to[1], beyond[0]-to[0]) - math.Atan2(to[1]-from[1], to[0]-from[0])
		turn = math.Mod(turn+5*math.Pi, 2*math.Pi) // the corner's angle on the right
		s.Angles = append(s.Angles, AngleReading{Angle: angle(turn), Sigma: MeasuredAngleSigma})
	}
	return s
}

// across measures a diagonal of the drawing.
func (d drawing) across(from, to int) Diagonal {
	a, b := d[from], d[to]
	return Diagonal{From: from, To: to, LengthReading: LengthReading{Length: length(math.Hypot(b[0]-a[0], b[1]-a[1]))}}
}
