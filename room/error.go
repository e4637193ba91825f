package room

import (
	"fmt"
	"strings"

	"firstdrop/finding"
	"firstdrop/measure"
	"firstdrop/message"
)

// Rule names what a survey must fulfil before anything is planned from it.
type Rule string

// The rules, in the order in which [Run.Check] looks at a wall, its openings
// and fittings, and the corner on its right.
const (
	RuleWalls          Rule = "walls"           // a run has a wall; a closed one has three
	RuleCorners        Rule = "corners"         // a corner between any two walls
	RuleWidth          Rule = "width"           // a wall is wider than 0, and no wider than measure.MaxLength
	RuleOutline        Rule = "outline"         // its outline is a simple polygon
	RuleOutlineWidth   Rule = "outline_width"   // that stays between its corners
	RuleOpening        Rule = "opening"         // an opening's outline is a simple polygon
	RuleOpeningWidth   Rule = "opening_width"   // no wider than its wall
	RuleOpeningPlace   Rule = "opening_place"   // inside its wall
	RuleOpeningOverlap Rule = "opening_overlap" // and clear of the others
	RuleDepth          Rule = "depth"           // its returns go back from the wall
	RuleFitting        Rule = "fitting"         // a fitting's size is not negative
	RuleAngle          Rule = "angle"           // a corner's angle lies between 0 and 360°
	RuleCornerKind     Rule = "corner_kind"     // below 180° inside, above 180° outside
	RuleLean           Rule = "lean"            // a corner leans by less than the walls beside it are wide
)

// Error is one measurement that cannot be right. Its text names the wall, the
// opening or the corner, says what is wrong, and which measurement to take
// again.
type Error struct {
	Rule Rule
	// Place has names: that of a wall without one is "wall 3", counted from 1;
	// a corner is "A|B" between walls A and B.
	Place finding.Place
	// Wall, Opening, Fitting and Corner are the indexes that belong to Place;
	// −1 where the error is about none. Opening and Fitting count within Wall;
	// an end of an open run has no index.
	Wall, Opening, Fitting, Corner int
	// Got is the measurement at fault, Limit what it has to stay within; both
	// are 0 where the rule is not about a length.
	Got, Limit measure.Length
	// Why says what is wrong and what to measure again, without the place.
	Why message.Message
	// Cause is the fault of an outline, a *geom.RingError; nil otherwise.
	Cause error
}

// Error returns the place and why.
func (e *Error) Error() string {
	var where []string
	for _, s := range []string{e.Place.Run, e.Place.Wall, e.Place.Opening} {
		if s != "" {
			where = append(where, s)
		}
	}
	if e.Place.Corner != "" {
		where = append(where, "corner "+e.Place.Corner)
	}
	return strings.Join(append(where, e.Why.Error()), ": ")
}

// Unwrap returns the cause.
func (e *Error) Unwrap() error { return e.Cause }

// Errors are all errors of a run, in the order of the run. It is never empty
// when it is returned as an error.
type Errors []*Error

// Error returns one line for each error.
func (es Errors) Error() string {
	lines := make([]string, len(es))
	for i, e := range es {
		lines[i] = e.Error()
	}
	return strings.Join(lines, "\n")
}

// Unwrap returns the single errors, for errors.As and errors.Is.
func (es Errors) Unwrap() []error {
	single := make([]error, len(es))
	for i, e := range es {
		single[i] = e
	}
	return single
}

// WallName returns the name of wall i, or "wall 3" (counted from 1) for a wall
// without one.
func (r *Run) WallName(i int) string {
	if name := r.Walls[i].Name; name != "" {
		return name
	}
	return fmt.Sprintf("wall %d", i+1)
}

// CornerName returns the name of the corner at the right end of wall i, "A|B"
// between walls A and B. The last corner of a closed run leads back to the
// first wall; beyond the end of an open run stands nothing: "B|".
func (r *Run) CornerName(i int) string {
	switch {
	case i+1 < len(r.Walls):
		return r.WallName(i) + "|" + r.WallName(i+1)
	case r.Closed:
		return r.WallName(i) + "|" + r.WallName(0)
	}
	return r.WallName(i) + "|"
}

// openingName returns the name of an opening of wall i, or "window 2" (counted
// from 1 within the wall) for one without.
func (r *Run) openingName(i, j int) string {
	o := &r.Walls[i].Openings[j]
	if o.Name != "" {
		return o.Name
	}
	return fmt.Sprintf("%v %d", o.Kind, j+1)
}
