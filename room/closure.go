package room

import (
	"math"
	"strings"

	"firstdrop/finding"
	"firstdrop/measure"
)

// Closure tells how far a closed plan is from closing, as it was measured.
type Closure struct {
	// Angular is the sum of the angles less what it must be: for a room of n
	// walls (n − 2)·180°, for a pillar seen from outside (n + 2)·180°,
	// whichever is nearer.
	Angular measure.Angle
	// MisclosureX and MisclosureY lead from where the plan begins, the left end
	// of wall 0, to where it ends instead: X along wall 0, Y to the left of it
	// (out of the room). The angles are first freed of Angular in equal parts.
	MisclosureX, MisclosureY measure.Length
	Misclosure               measure.Length // the gap itself, ≥ 0
	// Along are the walls that run along the gap, within 15° either way: one of
	// them is wrong if a single width is. Empty when there is no gap.
	Along []int
}

// alongCosine is the cosine of 15°.
const alongCosine = 0.9659

// closure returns how far the plan is from closing. A survey that fails
// [Survey.Check] is the caller's mistake, and gives figures without meaning.
func (s *Survey) closure() Closure {
	c := Closure{Angular: -s.angleSum()}
	for _, a := range s.Angles {
		c.Angular += a.Angle
	}
	t := s.traverse()
	for i := range s.Angles {
		t.adjusted[t.walls+i] -= radians(c.Angular) / float64(len(s.Angles))
	}
	heading := t.headings()
	gap := t.path(heading, 0, t.walls, func(int, vector, vector) {})
	size := math.Hypot(gap.x, gap.y)
	c.MisclosureX, c.MisclosureY, c.Misclosure = length(gap.x), length(gap.y), length(size)
	if c.Misclosure == 0 {
		return c
	}
	for i, h := range heading {
		if math.Abs(gap.x*math.Cos(h)+gap.y*math.Sin(h)) >= alongCosine*size {
			c.Along = append(c.Along, i)
		}
	}
	return c
}

// angleSum returns what the angles must add up to: that of a room or of a
// pillar, whichever is nearer.
func (s *Survey) angleSum() measure.Angle {
	n := measure.Angle(len(s.Angles))
	var sum measure.Angle
	for _, a := range s.Angles {
		sum += a.Angle
	}
	const straight = 180 * measure.Degree
	if sum > n*straight {
		return (n + 2) * straight
	}
	return (n - 2) * straight
}

// What is as good as closed: less than a tape and a protractor can tell.
const (
	misclosureNote = measure.Millimetre
	leastAngular   = measure.Degree / 10
)

// closureFindings tells how far a closed run is from closing, and which
// measurement is most worth taking again.
func (r *Run) closureFindings() []finding.Finding {
	if !r.Closed {
		return nil
	}
	return r.SurveyFindings(r.Survey())
}

// SurveyFindings adjusts a survey of this run, with diagonals or without, and
// returns what people must know of it: how far the angles and the plan are
// from closing, whether chance explains that, and what to measure again. A
// survey that makes no sense by itself has none; its Check tells why.
func (r *Run) SurveyFindings(s *Survey) (fs []finding.Finding) {
	a, err := s.Adjust()
	if a == nil {
		return nil
	}
	place := finding.Place{Run: r.Name}
	angular := max(a.Angular, -a.Angular)
	if angular >= leastAngular {
		f := finding.Finding{Code: CodeAngleMisclosure, Severity: finding.Note, Place: place, Word: a.Angular.String()}
		if angular > mostAngular {
			f.Severity = finding.Serious
		}
		fs = append(fs, f)
	}
	if err != nil {
		missing := "wall"
		if angular > mostAngular {
			missing = "corner"
		}
		return append(fs, finding.Finding{
			Code: CodePlanUnadjustable, Severity: finding.Serious, Place: place, Word: missing,
			Sizes: []finding.Size{size("misclosure", a.Misclosure)},
		})
	}
	if a.Misclosure < misclosureNote {
		return fs
	}
	return append(fs, r.misclosureFinding(s, a, place))
}

// misclosureFinding tells of a gap: a note where chance explains it, serious
// where it does not.
func (r *Run) misclosureFinding(s *Survey, a *Adjustment, place finding.Place) finding.Finding {
	f := finding.Finding{
		Code: CodeMisclosure, Severity: finding.Note, Place: place, Word: r.suspectNames(s, a.Suspects),
		Sizes: []finding.Size{size("misclosure", a.Misclosure), size("along", a.MisclosureX), size("across", a.MisclosureY)},
	}
	if len(a.Suspects) == 0 {
		return f
	}
	first := a.Suspects[0]
	if first.Standardised > BlunderLimit {
		f.Severity = finding.Serious
	}
	switch first.Kind {
	case MeasuredWidth:
		f.Place.Wall = r.WallName(first.Index)
		f.Sizes = append(f.Sizes, size("likely", nearest(first.Likely, measure.Millimetre)))
	case MeasuredAngle:
		f.Place.Corner = r.CornerName(first.Index)
	}
	return f
}

// nearest returns the multiple of step that is nearest to l.
func nearest(l, step measure.Length) measure.Length { return (l + step/2).FloorTo(step) }

// suspectNames names the measurements to take again: a wall by its name, an
// angle by its corner, a diagonal by its two corners.
func (r *Run) suspectNames(s *Survey, suspects []Suspect) string {
	names := make([]string, len(suspects))
	for i, suspect := range suspects {
		switch suspect.Kind {
		case MeasuredWidth:
			names[i] = r.WallName(suspect.Index)
		case MeasuredAngle:
			names[i] = r.CornerName(suspect.Index)
		case MeasuredAcross:
			d := s.Diagonals[suspect.Index]
			names[i] = r.CornerName(d.From) + "–" + r.CornerName(d.To)
		}
	}
	return strings.Join(names, ", ")
}
