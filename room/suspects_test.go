package room

import (
	"math/rand/v2"
	"slices"
	"testing"

	"firstdrop/measure"
)

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
