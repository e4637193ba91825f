package room

import (
	"math"
	"slices"

	"firstdrop/measure"
)

// The measurements of a closed plan are redundant: the last wall must end where
// the first began, in two directions, and the corners must turn once round. That
// is three conditions, and each diagonal adds one. The adjustment finds the
// smallest changes to the measurements, each weighed by its standard deviation,
// that fulfil them all: least squares with conditions.
//
// With l the measurements, Q their variances, f(l) = 0 the conditions and B the
// derivatives of f, the changes are
//
//	v = −Q Bᵀ k   with   (B Q Bᵀ) k = f(l₀) + B (l − l₀)
//
// taken again from the changed measurements l₀ until they stay. The system has
// as many unknowns as there are conditions, so a plan of a thousand walls is no
// harder than a room. Lengths count in metres and angles in radians; floats are
// good enough here, since nothing is cut by what comes out.
//
// A single blunder e in measurement i shows in all residuals, but in none so
// clearly, measured by what it may be, as in its own: |v| / σ(v) is greatest
// there, and its square is what the misfit loses when measurement i is left
// out. Where two measurements show in the same way (opposite walls of a
// rectangle), no computation can tell them apart, and both are suspects.

// Adjustment is what the redundancy of a survey tells. It is advice: nothing is
// cut by it.
type Adjustment struct {
	Closure
	// Widths, Angles and Diagonals as they would be after the smallest changes
	// that let the plan close, rounded to nanometres and microdegrees.
	Widths    []measure.Length
	Angles    []measure.Angle
	Diagonals []measure.Length
	// Residuals has one for each measurement: widths, angles, diagonals.
	Residuals []Residual
	// Suspects are the measurements most worth taking again: the one whose
	// standardised residual is greatest, and those that no computation can tell
	// from it, eight at most. Empty when everything fits to the nanometre.
	Suspects []Suspect
}

// Suspect is a measurement to take again, and what it should come to if it
// alone is wrong: the value that fits all others. It is 0 when the others do
// not fit without it either.
type Suspect struct {
	Residual
	Likely      measure.Length // of a width or a diagonal
	LikelyAngle measure.Angle
}

// Residual tells how one measurement stands against all others.
type Residual struct {
	Measurement
	// Change takes a width or a diagonal to its adjusted value, AngleChange an
	// angle.
	Change      measure.Length
	AngleChange measure.Angle
	// Standardised is the residual over its standard deviation, not negative.
	// Above [BlunderLimit] chance is no good explanation. 0 where nothing
	// checks the measurement.
	Standardised float64
}

// BlunderLimit is the standardised residual from which a measurement is taken
// for wrong: chance alone exceeds it once in a thousand measurements. The
// figure is Baarda's for that risk (A testing procedure for use in geodetic
// networks, 1968; value from memory, and that of the normal distribution).
const BlunderLimit = 3.29

// sameSuspect is how near the greatest standardised residual another must come
// to be as suspect: nearer than measuring can tell apart.
const sameSuspect = 0.99

// Adjust adjusts the survey. The closure is there even with an error, unless a
// measurement makes no sense by itself; the rest is not when the plan is so far
// from closing that small changes do not help: a wall or a corner is missing.
func (s *Survey) Adjust() (*Adjustment, error) {
	if err := s.Check(); err != nil {
		return nil, err
	}
	a := &Adjustment{Closure: s.closure()}
	if turn := a.Angular; max(turn, -turn) > mostAngular {
		return a, &SurveyError{Message: "the corners turn by " + turn.String() + " more or less than once round; a wall or a corner is missing"}
	}
	t := s.traverse()
	if !t.adjust() {
		return a, &SurveyError{Message: "no small changes let the plan close; a wall is missing, or several measurements are wrong"}
	}
	t.report(s, a)
	return a, nil
}

// mostAngular is how far the corners may turn too much or too little before a
// corner is taken for missing or of the wrong kind, which makes 90° or 180°.
const mostAngular = 45 * measure.Degree

// traverse is a survey in metres and radians: measurements in one row, widths,
// then angles, then diagonals.
type traverse struct {
	walls     int
	diagonals []Diagonal
	turns     float64   // what all angles add up to
	measured  []float64 // l
	variance  []float64 // the diagonal of Q
	adjusted  []float64 // l₀, in the end l + v
	checked   []float64 // the diagonal of Bᵀ (B Q Bᵀ)⁻¹ B
}

func (s *Survey) traverse() *traverse {
	t := &traverse{walls: len(s.Widths), diagonals: s.Diagonals, turns: radians(s.angleSum())}
	for _, w := range s.Widths {
		t.add(metres(w.Length), metres(w.sigma()))
	}
	for _, a := range s.Angles {
		t.add(radians(a.Angle), radians(a.sigma()))
	}
	for _, d := range s.Diagonals {
		t.add(metres(d.Length), metres(d.sigma()))
	}
	t.adjusted = slices.Clone(t.measured)
	return t
}

func (t *traverse) add(value, sigma float64) {
	t.measured = append(t.measured, value)
	t.variance = append(t.variance, sigma*sigma)
}

// adjust repeats the linear step until nothing moves by a tenth of a nanometre,
// and reports whether it came to that, with all lengths still lengths.
func (t *traverse) adjust() bool {
	for range 50 {
		moved, ok := t.step()
		if !ok || math.IsNaN(moved) || moved > 1e6 {
			return false
		}
		if moved < 1e-10 {
			return t.isPlan()
		}
	}
	return false
}

// isPlan reports whether no wall or diagonal has turned inside out.
func (t *traverse) isPlan() bool {
	for i, l := range t.adjusted {
		if !t.isAngle(i) && l <= 0 {
			return false
		}
	}
	return true
}

func (t *traverse) isAngle(i int) bool { return t.walls <= i && i < 2*t.walls }

// step solves the conditions once, linear at the adjusted values, and returns
// the greatest change of those.
func (t *traverse) step() (moved float64, ok bool) {
	f, b := t.conditions()
	for c := range f {
		for i := range t.measured {
			f[c] += b[c][i] * (t.measured[i] - t.adjusted[i])
		}
	}
	normal, ok := cholesky(t.normal(b))
	if !ok {
		return 0, false
	}
	k := normal.solve(f)
	t.checked = make([]float64, len(t.measured))
	column := make([]float64, len(b))
	for i := range t.measured {
		v := 0.0
		for c := range b {
			column[c] = b[c][i]
			v -= t.variance[i] * b[c][i] * k[c]
		}
		moved = max(moved, math.Abs(t.measured[i]+v-t.adjusted[i]))
		t.adjusted[i] = t.measured[i] + v
		t.checked[i] = normal.square(column)
	}
	return moved, true
}

// normal returns B Q Bᵀ.
func (t *traverse) normal(b [][]float64) [][]float64 {
	n := make([][]float64, len(b))
	for r := range b {
		n[r] = make([]float64, len(b))
		for c := range r + 1 {
			for i, q := range t.variance {
				n[r][c] += b[r][i] * q * b[c][i]
			}
		}
	}
	return n
}

// conditions returns how far the adjusted values miss the conditions, and the
// derivatives: the sum of angles, the two directions of the gap, and each
// diagonal.
func (t *traverse) conditions() (f []float64, b [][]float64) {
	n := t.walls
	heading := t.headings()
	f = make([]float64, 3+len(t.diagonals))
	b = make([][]float64, len(f))
	for c := range b {
		b[c] = make([]float64, len(t.measured))
	}
	f[0] = -t.turns
	for i := range n {
		f[0] += t.adjusted[n+i]
		b[0][n+i] = 1
	}
	gap := t.path(heading, 0, n, func(i int, d, rest vector) {
		b[1][i], b[2][i] = d.x, d.y
		if i > 0 {
			b[1][n+i-1], b[2][n+i-1] = -rest.y, rest.x
		}
	})
	f[1], f[2] = gap.x, gap.y
	for j, d := range t.diagonals {
		from, to := min(d.From, d.To)+1, max(d.From, d.To)+1
		row := b[3+j]
		across := t.path(heading, from, to, func(int, vector, vector) {})
		length := math.Hypot(across.x, across.y)
		unit := vector{across.x / length, across.y / length}
		t.path(heading, from, to, func(i int, d, rest vector) {
			row[i] = d.x*unit.x + d.y*unit.y
			if i > from {
				row[n+i-1] = -rest.y*unit.x + rest.x*unit.y
			}
		})
		f[3+j] = length - t.adjusted[2*n+j]
		row[2*n+j] = -1
	}
	return f, b
}

type vector struct{ x, y float64 }

// headings returns the direction of each wall; wall 0 runs along x, and an
// angle of less than 180° turns to the right.
func (t *traverse) headings() []float64 {
	h := make([]float64, t.walls)
	for i := 1; i < t.walls; i++ {
		h[i] = h[i-1] + t.adjusted[t.walls+i-1] - math.Pi
	}
	return h
}

// path returns the way from the left end of wall from to that of wall to. For
// each wall, the last first, it tells the direction and the way that is left
// from the wall's left end: opening the corner there by a small angle turns
// all that is left to the left.
func (t *traverse) path(heading []float64, from, to int, each func(i int, direction, rest vector)) vector {
	var rest vector
	for i := to - 1; i >= from; i-- {
		d := vector{math.Cos(heading[i]), math.Sin(heading[i])}
		rest.x += t.adjusted[i] * d.x
		rest.y += t.adjusted[i] * d.y
		each(i, d, rest)
	}
	return rest
}

// report writes down what the adjustment found.
func (t *traverse) report(s *Survey, a *Adjustment) {
	for i := range t.measured {
		r := t.residual(i)
		a.Residuals = append(a.Residuals, r)
		switch r.Kind {
		case MeasuredWidth:
			a.Widths = append(a.Widths, s.Widths[r.Index].Length+r.Change)
		case MeasuredAngle:
			a.Angles = append(a.Angles, s.Angles[r.Index].Angle+r.AngleChange)
		case MeasuredAcross:
			a.Diagonals = append(a.Diagonals, s.Diagonals[r.Index].Length+r.Change)
		}
	}
	a.Suspects = t.suspects(a.Residuals)
}

// residual returns that of measurement i. Its variance is q² · checked.
func (t *traverse) residual(i int) Residual {
	change, sigma := t.adjusted[i]-t.measured[i], t.variance[i]*math.Sqrt(t.checked[i])
	r := Residual{Measurement: t.measurement(i)}
	if math.Abs(change) > 1e-9 && sigma > 1e-9 { // a nanometre, or a tenth of a microdegree
		r.Standardised = math.Abs(change) / sigma
	}
	if t.isAngle(i) {
		r.AngleChange = angle(change)
	} else {
		r.Change = length(change)
	}
	return r
}

func (t *traverse) measurement(i int) Measurement {
	switch {
	case i < t.walls:
		return Measurement{MeasuredWidth, i}
	case t.isAngle(i):
		return Measurement{MeasuredAngle, i - t.walls}
	}
	return Measurement{MeasuredAcross, i - 2*t.walls}
}

// mostSuspects bounds the list of suspects: nobody measures more again.
const mostSuspects = 8

func (t *traverse) suspects(residuals []Residual) (suspects []Suspect) {
	most := 0.0
	for _, r := range residuals {
		most = max(most, r.Standardised)
	}
	for i, r := range residuals {
		if most == 0 || r.Standardised < sameSuspect*most || len(suspects) == mostSuspects {
			continue
		}
		suspect := Suspect{Residual: r}
		if value, ok := t.without(i); ok && t.isAngle(i) {
			suspect.LikelyAngle = angle(value)
		} else if ok {
			suspect.Likely = length(value)
		}
		suspects = append(suspects, suspect)
	}
	return suspects
}

// without returns what measurement i comes to when it is trusted a thousand
// times less than it was, which is next to leaving it out.
func (t *traverse) without(i int) (value float64, ok bool) {
	free := *t
	free.variance = slices.Clone(t.variance)
	free.variance[i] *= 1e6
	free.adjusted = slices.Clone(t.measured)
	if !free.adjust() {
		return 0, false
	}
	return free.adjusted[i], true
}

func metres(l measure.Length) float64 { return float64(l) / float64(measure.Metre) }
func radians(a measure.Angle) float64 { return float64(a) / float64(measure.Degree) * math.Pi / 180 }

func length(metres float64) measure.Length {
	return measure.Length(math.Round(metres * float64(measure.Metre)))
}

func angle(radians float64) measure.Angle {
	return measure.Angle(math.Round(radians * 180 / math.Pi * float64(measure.Degree)))
}
