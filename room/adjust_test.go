package room

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"firstdrop/measure"
)

// near reports whether two lengths differ by at most tolerance.
func near(a, b, tolerance measure.Length) bool { return (a - b).Abs() <= tolerance }

// A published closed traverse of five sides (Purdue University, "Traverse
// calculations", engineering.purdue.edu/~asm215/topics/travcalc.html): lengths
// in feet and azimuths as printed, with a misclosure of −0.71 in latitude
// (north) and +0.53 in departure (east), 0.89 together over 2466.05. Our X runs
// along the first side, at 26° 10'. The printed latitudes and departures are
// rounded to 0.01 each.
func TestClosureOfAPublishedTraverse(t *testing.T) {
	sides := []struct{ degrees, minutes, feet, hundredths int64 }{
		{26, 10, 285, 10}, {104, 35, 610, 45}, {195, 30, 720, 48}, {358, 18, 203, 0}, {306, 54, 647, 2},
	}
	s := &Survey{}
	azimuth := func(i int) measure.Angle {
		side := sides[i%len(sides)]
		return measure.Angle(side.degrees*60+side.minutes) * deg / 60
	}
	for i, side := range sides {
		s.Widths = append(s.Widths, LengthReading{Length: measure.Length(100*side.feet+side.hundredths) * measure.Foot / 100})
		turn := (azimuth(i+1) - azimuth(i)).Normalized() // to the right
		s.Angles = append(s.Angles, AngleReading{Angle: (180*deg - turn).Normalized()})
	}
	a, err := s.Adjust()
	if err != nil {
		t.Fatal(err)
	}
	const hundredth = measure.Foot / 100
	north, east, first := -0.71, 0.53, radians(azimuth(0))
	along := length((north*math.Cos(first) + east*math.Sin(first)) * metres(measure.Foot))
	left := length((north*math.Sin(first) - east*math.Cos(first)) * metres(measure.Foot))
	if max(a.Angular, -a.Angular) > 5 { // the minutes are no whole microdegrees
		t.Errorf("angular misclosure %v", a.Angular)
	}
	if !near(a.MisclosureX, along, 2*hundredth) || !near(a.MisclosureY, left, 2*hundredth) {
		t.Errorf("misclosure %v, %v; printed %v, %v", a.MisclosureX, a.MisclosureY, along, left)
	}
	if !near(a.Misclosure, 89*hundredth, hundredth) {
		t.Errorf("misclosure %v, printed %v", a.Misclosure, 89*hundredth)
	}
}

// A textbook traverse of five sides with measured angles (Ghilani and Wolf,
// Elementary Surveying, chapter 10; figures from memory): the angles miss by
// 11", and after they have their share the sides miss by 0.026 in departure and
// 0.077 in latitude, 0.081 ft together.
func TestClosureOfATraverseFromMemory(t *testing.T) {
	s := &Survey{}
	for _, side := range []struct{ feet, degrees, minutes, seconds int64 }{ // side to B, angle at B, ...
		{64725, 231, 23, 43}, {20303, 17, 12, 59}, {72035, 89, 3, 28}, {61024, 101, 34, 24}, {28513, 100, 45, 37},
	} {
		s.Widths = append(s.Widths, LengthReading{Length: measure.Length(side.feet) * measure.Foot / 100})
		seconds := side.degrees*3600 + side.minutes*60 + side.seconds
		s.Angles = append(s.Angles, AngleReading{Angle: measure.Angle(seconds) * deg / 3600})
	}
	c := s.closure()
	if want := 11 * deg / 3600; max(c.Angular-want, want-c.Angular) > 5 {
		t.Errorf("angular misclosure %v, want %v", c.Angular, want)
	}
	if want := 81 * measure.Foot / 1000; !near(c.Misclosure, want, measure.Foot/1000) {
		t.Errorf("misclosure %v, want %v", c.Misclosure, want)
	}
}

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

func TestExactPlansClose(t *testing.T) {
	for name, d := range map[string]drawing{
		"an L":           {{0, 4}, {5, 4}, {5, 2}, {3, 2}, {3, 0}, {0, 0}},
		"a bay":          {{0, 0}, {0, 3}, {1, 4}, {3, 4}, {4, 3}, {4, 0}},
		"a pillar":       {{0, 0}, {1, 0}, {1, 1}, {0, 1}}, // the room is outside
		"a triangle":     {{0, 0}, {0, 3}, {4, 0}},
		"chimney breast": {{0, 0}, {0, 3}, {1, 3}, {1, 2.6}, {2.5, 2.6}, {2.5, 3}, {4, 3}, {4, 0}},
	} {
		s := d.survey()
		s.Diagonals = append(s.Diagonals, d.across(0, 2), d.across(2, 1))
		a, err := s.Adjust()
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if max(a.Angular, -a.Angular) > 10 || a.Misclosure > 100*measure.Nanometre {
			t.Errorf("%s: misses by %v and %v", name, a.Angular, a.Misclosure)
		}
		for i, w := range a.Widths {
			if !near(w, s.Widths[i].Length, 100) {
				t.Errorf("%s: wall %d is changed to %v", name, i, w)
			}
		}
	}
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

// A blunder of half a metre in one length, or of 15° in one angle, among
// errors of the usual size: the first suspect is the measurement it was put
// into, and what it likely measures is what it measured before.
func TestSuspectIsThePlantedBlunder(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 4))
	for trial := range 50 {
		s := aDrawing(random, 5+trial%4).measured(random)
		half := 500 * mm * measure.Length(1-2*random.IntN(2))
		var planted Measurement
		var before, sigma measure.Length
		switch k := random.IntN(len(s.Widths)); trial % 3 {
		case 0:
			planted, before, sigma = Measurement{MeasuredWidth, k}, s.Widths[k].Length, s.Widths[k].sigma()
			s.Widths[k].Length += half
		case 1:
			planted = Measurement{MeasuredAngle, k}
			s.Angles[k].Angle += 15 * deg
		default:
			k = random.IntN(len(s.Diagonals))
			planted, before, sigma = Measurement{MeasuredAcross, k}, s.Diagonals[k].Length, s.Diagonals[k].sigma()
			s.Diagonals[k].Length += half
		}
		a, err := s.Adjust()
		if err != nil {
			t.Errorf("trial %d: %v", trial, err)
			continue
		}
		first := a.Suspects[0]
		if first.Measurement != planted || first.Standardised < BlunderLimit {
			t.Errorf("trial %d: suspect %+v, planted %+v", trial, first, planted)
		}
		if planted.Kind != MeasuredAngle && !near(first.Likely, before, 8*sigma) {
			t.Errorf("trial %d: likely %v, was %v", trial, first.Likely, before)
		}
	}
}

// Without diagonals a wrong width of a rectangle shows as its opposite does:
// both are suspects, and so says the direction of the gap.
func TestSuspectsThatNothingTellsApart(t *testing.T) {
	s := box(4*measure.Metre, 3*measure.Metre, measure.Metre).Survey()
	s.Widths[1].Length -= 100 * mm
	a, err := s.Adjust()
	if err != nil {
		t.Fatal(err)
	}
	var got []Measurement
	for _, suspect := range a.Suspects {
		got = append(got, suspect.Measurement)
	}
	if !slices.Equal(got, []Measurement{{MeasuredWidth, 1}, {MeasuredWidth, 3}}) || !slices.Equal(a.Along, []int{1, 3}) {
		t.Errorf("suspects %v, along %v", got, a.Along)
	}
	if !near(a.Suspects[0].Likely, 3*measure.Metre, 10*measure.Micrometre) || !near(a.Suspects[1].Likely, 2900*mm, 10*measure.Micrometre) {
		t.Errorf("likely %v, %v", a.Suspects[0].Likely, a.Suspects[1].Likely)
	}
	if a.MisclosureX != 0 || a.MisclosureY != -100*mm && a.MisclosureY != 100*mm {
		t.Errorf("gap %v, %v", a.MisclosureX, a.MisclosureY)
	}
}

// Under errors as assumed, standardised residuals have a mean square of 1 and
// pass the limit once in a thousand times, by the normal distribution.
func TestStandardisedResidualsAreStandard(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 6))
	var squares float64
	var count, beyond int
	for trial := range 400 {
		a, err := aDrawing(random, 4+trial%4).measured(random).Adjust()
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range a.Residuals {
			squares += r.Standardised * r.Standardised
			count++
			if r.Standardised > BlunderLimit {
				beyond++
			}
		}
	}
	if mean := squares / float64(count); mean < 0.9 || mean > 1.1 {
		t.Errorf("mean square %.3f of %d residuals", mean, count)
	}
	if share := float64(beyond) / float64(count); share > 0.003 || beyond == 0 {
		t.Errorf("%d of %d beyond the limit", beyond, count)
	}
}

func TestSurveyCheck(t *testing.T) {
	for _, c := range []struct {
		name  string
		spoil func(*Survey)
		at    Measurement
		want  string
	}{
		{"two walls", func(s *Survey) { s.Widths = s.Widths[:2] }, Measurement{}, "2 walls cannot close a room"},
		{"a corner too few", func(s *Survey) { s.Angles = s.Angles[:3] }, Measurement{}, "4 walls have 3 corners between them"},
		{"no width", func(s *Survey) { s.Widths[2].Length = 0 }, Measurement{MeasuredWidth, 2}, "width 2 measures 0 mm ± 0 mm, which is no length"},
		{"a negative deviation", func(s *Survey) { s.Widths[2].Sigma = -mm }, Measurement{MeasuredWidth, 2}, "width 2 measures 4000 mm ± -1 mm, which is no length"},
		{"no angle", func(s *Survey) { s.Angles[1].Angle = 0 }, Measurement{MeasuredAngle, 1}, "angle 0° ± 0.5° of corner 1 is none"},
		{"a diagonal to nowhere", func(s *Survey) { s.Diagonals[0].To = 4 }, Measurement{MeasuredAcross, 0}, "diagonal 0 leads from corner 0 to corner 4"},
		{"a diagonal back to its corner", func(s *Survey) { s.Diagonals[0].To = 0 }, Measurement{MeasuredAcross, 0}, "diagonal 0 leads from corner 0 to corner 0"},
		{"a diagonal without length", func(s *Survey) { s.Diagonals[0].Length = 0 }, Measurement{MeasuredAcross, 0}, "diagonal 0 measures 0 mm ± 0 mm, which is no length"},
	} {
		s := box(4*measure.Metre, 3*measure.Metre, measure.Metre).Survey()
		s.Diagonals = []Diagonal{{0, 2, LengthReading{Length: 5 * measure.Metre}}}
		c.spoil(s)
		a, err := s.Adjust()
		var survey *SurveyError
		if !errors.As(err, &survey) || survey.Measurement != c.at || err.Error() != c.want || a != nil {
			t.Errorf("%s: %v at %+v", c.name, err, survey)
		}
	}
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

func TestCholesky(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 8))
	for n := 1; n < 9; n++ {
		root, x, b := make([][]float64, n), make([]float64, n), make([]float64, n)
		full, lower := make([][]float64, n), make([][]float64, n)
		for i := range n {
			x[i] = random.NormFloat64()
			for range n + 2 {
				root[i] = append(root[i], random.NormFloat64())
			}
		}
		for i := range n {
			for j := range n {
				full[i] = append(full[i], dot(root[i], root[j]))
			}
			lower[i] = slices.Clone(full[i][:i+1])
			b[i] = dot(full[i], x)
		}
		l, ok := cholesky(lower)
		if !ok {
			t.Fatalf("%d: refused", n)
		}
		for i, got := range l.solve(b) {
			if math.Abs(got-x[i]) > 1e-6 {
				t.Errorf("%d: x[%d] = %g, want %g", n, i, got, x[i])
			}
		}
		if got, want := l.square(b), dot(x, b); math.Abs(got-want) > 1e-6*want {
			t.Errorf("%d: square %g, want %g", n, got, want)
		}
	}
	if _, ok := cholesky([][]float64{{4}, {2, 1}}); ok {
		t.Error("takes a matrix whose second row is half the first")
	}
	if _, ok := cholesky([][]float64{{math.NaN()}}); ok {
		t.Error("takes a matrix that is none")
	}
}
