package room

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"firstdrop/measure"
)

// near reports whether two lengths differ by at most tolerance.
func near(a, b, tolerance measure.Length) bool { return (a - b).Abs() <= tolerance }

// The 3-4-5 rectangle by hand: angles all but certain, lengths all alike, and
// the diagonal 10 mm too long. Widths change in pairs, so that the condition is
// 0.8 a + 0.6 b − d = 10 mm with variances ½, ½ and 1:
//
//	k = 10 / (0.64/2 + 0.36/2 + 1) = 6.667 mm
//	a = 0.8/2 · k = 2.667, b = 0.6/2 · k = 2.000, d = −6.667 mm
func TestAdjustByHand(t *testing.T) {
	s := box(4*measure.Metre, 3*measure.Metre, measure.Metre).Survey()
	for i := range s.Widths {
		s.Widths[i].Sigma = 5 * mm
		s.Angles[i].Sigma = 1 // a microdegree
	}
	s.Diagonals = []Diagonal{{0, 2, LengthReading{5010 * mm, 5 * mm}}}
	a, err := s.Adjust()
	if err != nil {
		t.Fatal(err)
	}
	got := append(slices.Clone(a.Widths), a.Diagonals...)
	for i, want := range []float64{4002.667, 3002.000, 4002.667, 3002.000, 5003.333} {
		if !near(got[i], length(want/1000), 10*measure.Micrometre) {
			t.Errorf("measurement %d: %v, want %v", i, got[i], want)
		}
	}
	if a.Misclosure != 0 || len(a.Along) != 0 {
		t.Errorf("closes by itself, but not by %v along %v", a.Misclosure, a.Along)
	}
	if a.Suspects[0].Measurement != (Measurement{MeasuredAcross, 0}) || !near(a.Suspects[0].Likely, 5*measure.Metre, 10*measure.Micrometre) {
		t.Errorf("suspect %+v", a.Suspects[0])
	}
}

// aDrawing returns a plan of n corners that lie round a middle, 2 to 4 m away
// from it, clockwise.
func aDrawing(random *rand.Rand, n int) drawing {
	var d drawing
	for i := range n {
		at := -2 * math.Pi * (float64(i) + 0.6*random.Float64()) / float64(n)
		far := 2 + 2*random.Float64()
		d = append(d, [2]float64{far * math.Cos(at), far * math.Sin(at)})
	}
	return d
}

// measured returns the survey of a drawing with the errors that its standard
// deviations lead one to expect, and all its diagonals.
func (d drawing) measured(random *rand.Rand) *Survey {
	s := d.survey()
	for i := range d {
		for j := i + 2; j < len(d) && !(i == 0 && j == len(d)-1); j++ {
			s.Diagonals = append(s.Diagonals, d.across(i, j))
		}
	}
	off := func(l *LengthReading) { l.Length += measure.Length(float64(l.sigma()) * random.NormFloat64()) }
	for i := range s.Widths {
		off(&s.Widths[i])
		s.Angles[i].Angle += measure.Angle(float64(s.Angles[i].sigma()) * random.NormFloat64())
	}
	for i := range s.Diagonals {
		off(&s.Diagonals[i].LengthReading)
	}
	return s
}

// The second road: the same least squares by coordinates instead of
// conditions. Unknown are the places of all corners; measurements are functions
// of them, differentiated by small steps; the equations are eliminated by
// Gauss. It shares nothing with the adjustment but the measurements.
func TestAdjustAgainstCoordinates(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	for trial := range 50 {
		d := aDrawing(random, 3+trial%6)
		s := d.measured(random)
		a, err := s.Adjust()
		if err != nil {
			t.Fatalf("trial %d: %v", trial, err)
		}
		want := byCoordinates(d, s)
		for i, w := range a.Widths {
			if !near(w, want.Widths[i].Length, measure.Micrometre) {
				t.Errorf("trial %d: wall %d is %v, by coordinates %v", trial, i, w, want.Widths[i].Length)
			}
			if got, want := a.Angles[i], want.Angles[i].Angle; max(got-want, want-got) > 50 {
				t.Errorf("trial %d: angle %d is %v, by coordinates %v", trial, i, got, want)
			}
		}
		for i, w := range a.Diagonals {
			if !near(w, want.Diagonals[i].Length, measure.Micrometre) {
				t.Errorf("trial %d: diagonal %d is %v, by coordinates %v", trial, i, w, want.Diagonals[i].Length)
			}
		}
	}
}

// byCoordinates adjusts a survey by moving the corners of a first drawing.
func byCoordinates(d drawing, s *Survey) *Survey {
	d = slices.Clone(d)
	n := len(d)
	model := func() (values []float64) { // of all measurements, in metres and radians
		for i := range d {
			from, to, beyond := d[(i+n-1)%n], d[i], d[(i+1)%n]
			values = append(values, math.Hypot(to[0]-from[0], to[1]-from[1]))
			turn := math.Atan2(beyond[1]-to[1], beyond[0]-to[0]) - math.Atan2(to[1]-from[1], to[0]-from[0])
			values = append(values, math.Mod(turn+5*math.Pi, 2*math.Pi))
		}
		for _, diagonal := range s.Diagonals {
			a, b := d[diagonal.From], d[diagonal.To]
			values = append(values, math.Hypot(a[0]-b[0], a[1]-b[1]))
		}
		return values
	}
	var measured, weight []float64
	take := func(value, sigma float64) {
		measured, weight = append(measured, value), append(weight, 1/(sigma*sigma))
	}
	for i := range d {
		take(metres(s.Widths[i].Length), metres(s.Widths[i].sigma()))
		take(radians(s.Angles[i].Angle), radians(s.Angles[i].sigma()))
	}
	for _, diagonal := range s.Diagonals {
		take(metres(diagonal.Length), metres(diagonal.sigma()))
	}
	unknown := 2*n - 3 // corner 0 and the x of corner 1 stay where they are
	for range 8 {
		now := model()
		slope := make([][]float64, unknown)
		for u := range unknown {
			c := &d[(u+3)/2][(u+3)%2]
			const step = 1e-6
			*c += step
			ahead := model()
			*c -= 2 * step
			behind := model()
			*c += step
			for i := range now {
				slope[u] = append(slope[u], (ahead[i]-behind[i])/(2*step))
			}
		}
		equations := make([][]float64, unknown)
		for u := range unknown {
			equations[u] = make([]float64, unknown+1)
			for i := range now {
				for v := range unknown {
					equations[u][v] += slope[u][i] * weight[i] * slope[v][i]
				}
				equations[u][unknown] += slope[u][i] * weight[i] * (measured[i] - now[i])
			}
		}
		for u, change := range eliminate(equations) {
			d[(u+3)/2][(u+3)%2] += change
		}
	}
	adjusted := d.survey()
	for _, diagonal := range s.Diagonals {
		adjusted.Diagonals = append(adjusted.Diagonals, d.across(diagonal.From, diagonal.To))
	}
	return adjusted
}

// eliminate solves equations that end in their right sides.
func eliminate(m [][]float64) []float64 {
	n := len(m)
	for c := range n {
		for r := c + 1; r < n; r++ {
			if math.Abs(m[r][c]) > math.Abs(m[c][c]) {
				m[r], m[c] = m[c], m[r]
			}
		}
		for r := range n {
			if r == c {
				continue
			}
			f := m[r][c] / m[c][c]
			for k := c; k <= n; k++ {
				m[r][k] -= f * m[c][k]
			}
		}
	}
	x := make([]float64, n)
	for i := range x {
		x[i] = m[i][n] / m[i][i]
	}
	return x
}

func TestAdjustGivesUpHonestly(t *testing.T) {
	s := box(4*measure.Metre, 3*measure.Metre, measure.Metre).Survey()
	s.Widths[0].Length = 40 * measure.Metre // longer than all others together
	for i := range s.Widths {
		s.Widths[i].Sigma = 1
	}
	a, err := s.Adjust()
	if err == nil || a == nil || !near(a.Misclosure, 36*measure.Metre, mm) || a.Widths != nil {
		t.Errorf("%+v, %v", a, err)
	}
	s = box(4*measure.Metre, 3*measure.Metre, measure.Metre).Survey()
	s.Angles[0].Angle = 270 * deg
	if a, err = s.Adjust(); err == nil || a == nil || a.Angular != 180*deg {
		t.Errorf("%+v, %v", a, err)
	}
}
