package hanging

import "firstdrop/measure"

// Rules are the measures of the craft that a layout keeps to. Each is a
// setting with a default, since good hangers differ.
type Rules struct {
	Head, Foot     measure.Length // allowance: surplus at the head and foot of every piece, trimmed on the wall
	Wrap           measure.Length // paper turned round an inside corner under the next part; 0: cut in the corner
	WrapLimit      measure.Length // a remainder up to this turns an inside corner whole
	OutsideWrap    measure.Length // paper kept round an outside corner that is out of plumb, before the cut
	PlumbTolerance measure.Length // an outside corner leaning no more than this is papered round in one
	Overlap        measure.Length // paper turned round the kill corner by the drop hung first
	CutStep        measure.Length // lengths to cut are rounded up to this
}

// DefaultRules returns the measures of planning-model 5 and 6: allowance 50 mm
// at each end, remainder limit 25 mm, first plumb line one width less 25 mm
// from the corner (all common practice), wrap 12 mm (half an inch, within the
// range that published advice gives), wide wrap 50 mm, cutting to the
// millimetre. The plumb tolerance of 3 mm is common practice.
func DefaultRules() Rules {
	return Rules{
		Head:           50 * measure.Millimetre,
		Foot:           50 * measure.Millimetre,
		Wrap:           12 * measure.Millimetre,
		WrapLimit:      25 * measure.Millimetre,
		OutsideWrap:    50 * measure.Millimetre,
		PlumbTolerance: 3 * measure.Millimetre,
		Overlap:        25 * measure.Millimetre,
		CutStep:        1 * measure.Millimetre,
	}
}

// RulesIn returns the same for those who measure in a system of units: in inches the whole
// inches and parts of one that the trade's texts give, so that every place lies on a mark
// of the tape: 2 in for what is trimmed and for the wide wrap, 1 in for the remainder and
// the first plumb line, a wrap of 1/2 in, 1/8 in of plumb; lengths in sixteenths.
func RulesIn(system measure.System) Rules {
	if system != measure.Imperial {
		return DefaultRules()
	}
	return Rules{
		Head:           2 * measure.Inch,
		Foot:           2 * measure.Inch,
		Wrap:           measure.Inch / 2,
		WrapLimit:      measure.Inch,
		OutsideWrap:    2 * measure.Inch,
		PlumbTolerance: measure.Inch / 8,
		Overlap:        measure.Inch,
		CutStep:        measure.Sixteenth,
	}
}
