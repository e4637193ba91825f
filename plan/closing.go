package plan

import (
	"firstdrop/finding"
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
)

// Closing tells, before a drop hangs, how a run that goes all the way round will
// close: by how much the design misses at the kill seam, and what the corners
// can do about it. Each corner that takes a little more paper round takes as much
// off the design; with offset matches a whole width more or less changes the
// misfit along as well.
type Closing struct {
	Run    string
	Place  finding.Place
	Height measure.Length // how much paper meets there
	Across geom.Interval  // how far the design misses across, least and most along the height
	Along  measure.Length // how far the design on the right stands too high
	Weight int64          // what that weighs
	// Corners is in how many corners the paper is cut and wrapped: where a little
	// more or less can be taken.
	Corners int
	// Turns says what the misfit becomes if each of those corners takes so much
	// more (positive) or less.
	Turns []Turn
	// Spread is how much more each of those corners must take for the design to
	// meet across; negative: less. 0 without such corners.
	Spread measure.Length
	// Least is the place where a kill seam would weigh least if it missed by as
	// much as one can see.
	Least finding.Place
}

// Turn is the misfit when every corner takes more or less paper.
type Turn struct {
	More   measure.Length // round each corner
	Across measure.Length // the farthest from 0
	Along  measure.Length
}

// turnSteps are how much more or less a corner may well take: a hanger's hand is
// no surer than a millimetre or two (common practice).
var turnSteps = []measure.Length{-2 * measure.Millimetre, -1 * measure.Millimetre, 1 * measure.Millimetre, 2 * measure.Millimetre}

// Closing returns how run i closes; false for a run with two ends, and for a
// paper without a design that could miss.
func (p *Plan) Closing(i int) (Closing, bool) {
	l := p.Runs[i].Layout
	h, err := hanging.NewSet(l.Run, l.Choice.Set, l.Paper, l.Rules)
	if err != nil {
		return Closing{}, false
	}
	j := newJudge(&p.Task.Runs[i], l.Paper, p.Task.Taste, h)
	if !l.Run.Closed || !j.isDesigned() {
		return Closing{}, false
	}
	kill := placeOf(l.Hung(), l.Choice.Kill)
	s := &l.Seams[len(l.Seams)-1]
	c := Closing{Run: l.Run.Name, Place: kill.place(j), Height: kill.height, Across: s.Across, Along: s.Along}
	c.Place.Run = l.Run.Name
	if misfit(s) > 0 {
		regard, seen := j.killSeen(&kill)
		c.Weight = regard.kill(share(j.taste.Weights.KillMetre, misfit(s), fullMiss), seen)
	}
	c.Corners = wrapped(l)
	for _, more := range turnSteps {
		if t, ok := turned(l, more); ok && c.Corners > 0 {
			c.Turns = append(c.Turns, t)
		}
	}
	if c.Corners > 0 {
		c.Spread = -(s.Across.Lo + s.Across.Length()/2) / measure.Length(c.Corners)
	}
	c.Least = j.leastSeen()
	return c, true
}

// wrapped counts the corners in which a drop is cut apart and wrapped.
func wrapped(l *hanging.Layout) (n int) {
	if l.Rules.Wrap == 0 {
		return 0
	}
	for i := range l.Seams {
		if l.Seams[i].Kind == hanging.Carried && l.Seams[i].InCorner {
			n++
		}
	}
	return n
}

// turned lays the same choice out with more paper round every inside corner, and
// returns how it closes then; false when it cannot be laid out so.
func turned(l *hanging.Layout, more measure.Length) (Turn, bool) {
	rules := l.Rules
	if rules.Wrap += more; rules.Wrap < 0 {
		return Turn{}, false
	}
	h, err := hanging.NewSet(l.Run, l.Choice.Set, l.Paper, rules)
	if err != nil {
		return Turn{}, false
	}
	other, err := h.Layout(l.Choice)
	if err != nil {
		return Turn{}, false
	}
	s := &other.Seams[len(other.Seams)-1]
	return Turn{More: more, Across: widest(s.Across), Along: s.Along}, true
}

// leastSeen returns the kill place that weighs least by its height and how much
// it is looked at; the first of equals.
func (j *judge) leastSeen() finding.Place {
	var best finding.Place
	least := int64(-1)
	for _, k := range killPlaces(j.run, nil) {
		regard, seen := j.killSeen(&k)
		if w := regard.kill(j.taste.Weights.KillMetre, seen); least < 0 || w < least {
			best, least = k.place(j), w
		}
	}
	best.Run = j.run.Name
	return best
}
