package room

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"firstdrop/measure"
)

// aSurvey draws surveys of plans of four to eight walls with errors as
// expected, some with all their diagonals and some with none.
var aSurvey = rapid.Custom(func(t *rapid.T) *Survey {
	random := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 0))
	s := aDrawing(random, rapid.IntRange(4, 8).Draw(t, "walls")).measured(random)
	if rapid.Bool().Draw(t, "no diagonals") {
		s.Diagonals = nil
	}
	return s
})

func adjusted(t *rapid.T, s *Survey) *Adjustment {
	a, err := s.Adjust()
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// What comes out closes, and its diagonals are those of the plan it makes.
func TestAdjustedPlansClose(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := aSurvey.Draw(t, "survey")
		a := adjusted(t, s)
		again := &Survey{}
		for i := range a.Widths {
			again.Widths = append(again.Widths, LengthReading{Length: a.Widths[i]})
			again.Angles = append(again.Angles, AngleReading{Angle: a.Angles[i]})
		}
		for i, d := range s.Diagonals {
			again.Diagonals = append(again.Diagonals, Diagonal{d.From, d.To, LengthReading{Length: a.Diagonals[i]}})
		}
		b := adjusted(t, again)
		if b.Misclosure > measure.Micrometre || max(b.Angular, -b.Angular) > 10 {
			t.Fatalf("still misses by %v and %v", b.Misclosure, b.Angular)
		}
		for _, r := range b.Residuals {
			if r.Change.Abs() > measure.Micrometre {
				t.Fatalf("%v %d would change again by %v", r.Kind, r.Index, r.Change)
			}
		}
	})
}

// square is what least squares make least: changes over standard deviations,
// squared and added.
func square(s *Survey, widths []measure.Length, angles []measure.Angle) (sum float64) {
	for i, w := range s.Widths {
		sum += math.Pow(float64(widths[i]-w.Length)/float64(w.sigma()), 2)
	}
	for i, a := range s.Angles {
		sum += math.Pow(float64(angles[i]-a.Angle)/float64(a.sigma()), 2)
	}
	return sum
}

// No plan near the adjusted one that closes as well fits the measurements
// better: corners are moved by a little, which leaves the plan closed.
func TestAdjustedPlansFitBest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := aSurvey.Draw(t, "survey")
		s.Diagonals = nil
		a := adjusted(t, s)
		best := square(s, a.Widths, a.Angles)
		d := planOf(a)
		corner, side := rapid.IntRange(0, len(d)-1).Draw(t, "corner"), rapid.IntRange(0, 1).Draw(t, "side")
		d[corner][side] += rapid.SampledFrom([]float64{-0.02, -0.002, 0.002, 0.02}).Draw(t, "by")
		moved := d.survey()
		widths, angles := make([]measure.Length, len(d)), make([]measure.Angle, len(d))
		for i := range d {
			widths[i], angles[i] = moved.Widths[i].Length, moved.Angles[i].Angle
		}
		if other := square(s, widths, angles); other <= best {
			t.Fatalf("moving a corner makes %g of %g", other, best)
		}
	})
}

// planOf draws the corners of an adjusted plan.
func planOf(a *Adjustment) drawing {
	d := make(drawing, len(a.Widths))
	var x, y, heading float64
	for i, w := range a.Widths {
		x += metres(w) * math.Cos(heading)
		y += metres(w) * math.Sin(heading)
		heading += radians(a.Angles[i]) - math.Pi
		d[i] = [2]float64{x, y}
	}
	return d
}

// It makes no difference at which wall one began.
func TestAdjustBeginsAnywhere(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := aSurvey.Draw(t, "survey")
		n := len(s.Widths)
		k := rapid.IntRange(1, n-1).Draw(t, "first")
		turned := &Survey{
			Widths: slices.Concat(s.Widths[k:], s.Widths[:k]),
			Angles: slices.Concat(s.Angles[k:], s.Angles[:k]),
		}
		for _, d := range s.Diagonals {
			d.From, d.To = (d.From+n-k)%n, (d.To+n-k)%n
			turned.Diagonals = append(turned.Diagonals, d)
		}
		a, b := adjusted(t, s), adjusted(t, turned)
		if !near(a.Misclosure, b.Misclosure, 5) || a.Angular != b.Angular {
			t.Fatalf("misses by %v and %v", a.Misclosure, b.Misclosure)
		}
		for i := range n {
			if !near(a.Widths[(i+k)%n], b.Widths[i], 100) {
				t.Fatalf("wall %d: %v and %v", i, a.Widths[(i+k)%n], b.Widths[i])
			}
			if p, q := a.Residuals[(i+k)%n].Standardised, b.Residuals[i].Standardised; math.Abs(p-q) > 1e-4 {
				t.Fatalf("wall %d stands out by %g and %g", i, p, q)
			}
		}
	})
}

// Nor does it if the room is measured in the mirror: the walls the other way
// round, each corner at the other end of its wall.
func TestAdjustInTheMirror(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := aSurvey.Draw(t, "survey")
		s.Diagonals = nil
		n := len(s.Widths)
		m := &Survey{}
		for i := range n {
			m.Widths = append(m.Widths, s.Widths[n-1-i])
			m.Angles = append(m.Angles, s.Angles[(2*n-2-i)%n])
		}
		a, b := adjusted(t, s), adjusted(t, m)
		for i := range n {
			if !near(a.Widths[n-1-i], b.Widths[i], 100) {
				t.Fatalf("wall %d: %v and %v", i, a.Widths[n-1-i], b.Widths[i])
			}
		}
	})
}

// Any survey at all is adjusted or refused, and twice in the same way.
func FuzzAdjust(f *testing.F) {
	f.Add([]byte{4, 40, 90, 30, 90, 40, 90, 30, 90, 0, 2, 50}, false)
	f.Add([]byte{3, 30, 60, 30, 60, 30, 60, 0, 1, 200, 1, 2, 9}, true)
	f.Add([]byte{5, 1, 179, 255, 1, 255, 179, 1, 1, 255, 255}, true)
	f.Fuzz(func(t *testing.T, data []byte, trusted bool) {
		next := func() int {
			if len(data) == 0 {
				return 1
			}
			b := data[0]
			data = data[1:]
			return int(b)
		}
		s := &Survey{}
		sigma := measure.Length(0)
		if trusted {
			sigma = 1
		}
		for range next() % 12 {
			s.Widths = append(s.Widths, LengthReading{measure.Length(next()) * 100 * mm, sigma})
			s.Angles = append(s.Angles, AngleReading{Angle: measure.Angle(next()) * 3 * deg / 2})
		}
		for len(data) > 2 && len(s.Diagonals) < 9 {
			s.Diagonals = append(s.Diagonals, Diagonal{next() % 16, next() % 16, LengthReading{measure.Length(next()) * 100 * mm, sigma}})
		}
		a, err := s.Adjust()
		again, _ := s.Adjust()
		switch {
		case (a == nil) != (s.Check() != nil):
			t.Fatalf("adjustment %v, check %v", a, s.Check())
		case a == nil:
			return
		case a.Misclosure != again.Misclosure || !slices.Equal(a.Widths, again.Widths) || !slices.Equal(a.Suspects, again.Suspects):
			t.Fatal("not the same twice")
		case err == nil && len(a.Residuals) != 2*len(s.Widths)+len(s.Diagonals):
			t.Fatalf("%d residuals", len(a.Residuals))
		}
		for _, r := range a.Residuals {
			if math.IsNaN(r.Standardised) || r.Standardised < 0 {
				t.Fatalf("%+v", r)
			}
		}
		for _, w := range a.Widths {
			if w <= 0 {
				t.Fatalf("a wall of %v", w)
			}
		}
	})
}
