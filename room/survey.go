package room

import (
	"fmt"

	"firstdrop/measure"
)

// Survey is what was measured of the floor plan of a closed run: the width of
// every wall, the angle of every corner, and whatever else was measured across
// the room. It is a closed traverse: walls and corners in turn, and back to
// where one began.
//
//	corner 3 ____wall 0____ corner 0       Seen from above, turning to the
//	        |              |               right. Corner i stands at the right
//	 wall 3 |              | wall 1        end of wall i, as in a [Run].
//	        |______________|
//	corner 2     wall 2      corner 1
//
// A survey advises. Nothing it computes changes what is cut: walls keep the
// widths that were measured until somebody measures again.
type Survey struct {
	Widths    []LengthReading // one for each wall
	Angles    []AngleReading  // one for each corner, through the room
	Diagonals []Diagonal      // any number
}

// LengthReading is a measured length and how far it may be trusted.
type LengthReading struct {
	Length measure.Length
	// Sigma is its standard deviation; [TapeSigma] of the length when 0.
	Sigma measure.Length
}

// AngleReading is the angle of a corner and how far it may be trusted.
type AngleReading struct {
	Angle measure.Angle
	// Sigma is its standard deviation; [AssumedAngleSigma] when 0.
	Sigma measure.Angle
}

// Diagonal is a length measured from one corner to another, straight across
// the room: a diagonal proper, or a wall's width a second time.
type Diagonal struct {
	From, To int // corner numbers, not equal
	LengthReading
}

// How far measurements are trusted when nobody says. All three are common
// practice, not from a standard: a tape is read to about 2 mm and sags or
// stands askew by about 1 mm in a metre; a corner that is only taken for square
// is so within about half a degree, 26 mm over 3 m; one that was measured with
// a bevel and protractor, within about a fifth.
const (
	tapeReading        = 2 * measure.Millimetre
	tapePerMetre       = 1 * measure.Millimetre
	AssumedAngleSigma  = measure.Degree / 2
	MeasuredAngleSigma = measure.Degree / 5
)

// TapeSigma returns the standard deviation taken for a length measured with a
// tape: 2 mm and 1 mm in each metre.
func TapeSigma(l measure.Length) measure.Length {
	return tapeReading + l.Abs()/(measure.Metre/tapePerMetre)
}

// Survey returns the survey that a run's own measurements make, for diagonals
// to be added. Corners whose angle was not measured are taken for square.
func (r *Run) Survey() *Survey {
	s := &Survey{}
	for i := range r.Walls {
		s.Widths = append(s.Widths, LengthReading{Length: r.Walls[i].Width})
		corner := r.cornerAt(i)
		reading := AngleReading{Angle: corner.InteriorAngle(), Sigma: MeasuredAngleSigma}
		if corner.Angle == 0 {
			reading.Sigma = AssumedAngleSigma
		}
		s.Angles = append(s.Angles, reading)
	}
	return s
}

// SurveyError says why a survey cannot be adjusted.
type SurveyError struct {
	Measurement Measurement // the one at fault; its Kind is "" when it is none in particular
	Message     string
}

// Error returns the message.
func (e *SurveyError) Error() string { return e.Message }

// Check reports the first measurement that makes no sense by itself, as a
// *[SurveyError]: fewer than three walls, numbers of walls and corners that
// differ, lengths of 0 or less, angles not between 0 and 360°, a negative
// standard deviation, a diagonal that leads nowhere.
func (s *Survey) Check() error {
	if len(s.Widths) < 3 {
		return &SurveyError{Message: fmt.Sprintf("%d walls cannot close a room", len(s.Widths))}
	}
	if len(s.Angles) != len(s.Widths) {
		return &SurveyError{Message: fmt.Sprintf("%d walls have %d corners between them", len(s.Widths), len(s.Angles))}
	}
	for i, w := range s.Widths {
		if err := w.check(Measurement{MeasuredWidth, i}); err != nil {
			return err
		}
	}
	for i, a := range s.Angles {
		if a.Angle <= 0 || a.Angle >= 360*measure.Degree || a.Sigma < 0 {
			return &SurveyError{Measurement{MeasuredAngle, i}, fmt.Sprintf("angle %v ± %v of corner %d is none", a.Angle, a.Sigma, i)}
		}
	}
	for i, d := range s.Diagonals {
		if err := d.check(Measurement{MeasuredAcross, i}); err != nil {
			return err
		}
		if d.From == d.To || min(d.From, d.To) < 0 || max(d.From, d.To) >= len(s.Widths) {
			return &SurveyError{Measurement{MeasuredAcross, i}, fmt.Sprintf("diagonal %d leads from corner %d to corner %d", i, d.From, d.To)}
		}
	}
	return nil
}

func (l LengthReading) check(m Measurement) error {
	if l.Length <= 0 || l.Length > measure.MaxLength || l.Sigma < 0 {
		return &SurveyError{m, fmt.Sprintf("%s %d measures %v ± %v, which is no length", m.Kind, m.Index, l.Length, l.Sigma)}
	}
	return nil
}

// sigma returns the reading's standard deviation.
func (l LengthReading) sigma() measure.Length {
	if l.Sigma == 0 {
		return TapeSigma(l.Length)
	}
	return l.Sigma
}

func (a AngleReading) sigma() measure.Angle {
	if a.Sigma == 0 {
		return AssumedAngleSigma
	}
	return a.Sigma
}

// MeasurementKind is what was measured.
type MeasurementKind string

// The kinds of measurement in a survey.
const (
	MeasuredWidth  MeasurementKind = "width"    // of wall Index
	MeasuredAngle  MeasurementKind = "angle"    // of corner Index
	MeasuredAcross MeasurementKind = "diagonal" // Diagonals[Index]
)

// Measurement points at one measurement of a survey.
type Measurement struct {
	Kind  MeasurementKind
	Index int
}
