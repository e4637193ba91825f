package room

import (
	"errors"
	"testing"

	"firstdrop/measure"
)

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

func TestTapeSigma(t *testing.T) {
	for _, c := range []struct{ length, want measure.Length }{
		{0, 2 * mm},
		{measure.Metre, 3 * mm},
		{4500 * mm, 6500 * measure.Micrometre},
		{-4500 * mm, 6500 * measure.Micrometre},
	} {
		if got := TapeSigma(c.length); got != c.want {
			t.Errorf("TapeSigma(%v) = %v, want %v", c.length, got, c.want)
		}
	}
}

// What a run says of its corners decides how far their angles are trusted.
func TestSurveyOfARun(t *testing.T) {
	r := box(4*measure.Metre, 3*measure.Metre, measure.Metre)
	r.Corners[1] = Corner{Kind: Outside}
	r.Corners[2].Angle = 89 * deg
	s := r.Survey()
	want := []AngleReading{
		{90 * deg, AssumedAngleSigma}, {270 * deg, AssumedAngleSigma}, {89 * deg, MeasuredAngleSigma}, {90 * deg, AssumedAngleSigma},
	}
	for i, got := range s.Angles {
		if got != want[i] {
			t.Errorf("corner %d: %v, want %v", i, got, want[i])
		}
	}
	for i, got := range s.Widths {
		if got.Length != r.Walls[i].Width || got.sigma() != TapeSigma(got.Length) {
			t.Errorf("wall %d: %v ± %v", i, got.Length, got.sigma())
		}
	}
	if (AngleReading{}).sigma() != AssumedAngleSigma || (LengthReading{Sigma: 7}).sigma() != 7 {
		t.Error("standard deviations given or not")
	}
}
