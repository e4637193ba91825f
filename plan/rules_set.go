package plan

import (
	"firstdrop/finding"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/room"
)

// What is said of how a crooked room is hung. All of it follows from how the walls
// are set, and is the same wherever on them the seams stand:
//
//	drift       rows against the ceiling, over the wall's width
//	off plumb   edges against a plumb line, over the wall's height
//	off casing  edges against the side of a door or window, over the wall's height
//	step        the design's height on one side of a corner against the other

// The findings that the setting of walls may raise.
const (
	Drift      finding.Code = "drift"       // rows of the design run off along a ceiling
	OffPlumb   finding.Code = "off_plumb"   // edges run off plumb
	OffCasing  finding.Code = "off_casing"  // edges run off a casing
	CornerStep finding.Code = "corner_step" // the design steps up or down in a corner
	MixedWays  finding.Code = "mixed_ways"  // walls that meet in a corner in sight are set in different ways
)

// eighths is how much of a weight counts for a design with such lines.
type eighths struct{ drift, plumb, casing int64 }

var linesCount = [...]eighths{
	paper.LinesUnstated: {},
	paper.LinesLoose:    {1, 1, 1},
	paper.LinesLevel:    {8, 2, 2},
	paper.LinesUpright:  {1, 2, 8},
	paper.LinesBoth:     {8, 2, 8},
	paper.LinesIsolated: {8, 2, 2},
}

// perMillimetre returns what so many eighths of a weight come to for a length.
func perMillimetre(weight, eighths int64, l measure.Length) int64 {
	return int64(l.Abs().Scaled(weight*eighths, int64(8*measure.Millimetre)))
}

// standing weighs how the walls are set.
func (j *judge) standing() (total int64) {
	for i := range j.walls {
		total += j.drift(i) + j.offPlumb(i)
		for o := range j.run.Walls[i].Openings {
			total += j.offCasing(i, o)
		}
	}
	for i := range j.run.Corners {
		total += j.step(i) + j.mixed(i)
	}
	return total
}

// drift weighs how far rows run off the ceiling of a wall, from left to right;
// positive where the ceiling rises off them. Told with it is how far drops would lean
// against those that hang, were they set along the ceiling: the drift that it would be
// exchanged for.
func (j *judge) drift(i int) int64 {
	c := &j.walls[i].top
	if !c.isUnlevel() || !j.isDesigned() && j.paper.Lines == paper.LinesUnstated {
		return 0
	}
	if j.level != nil && j.turns == nil { // the drops are hung by it
		return 0
	}
	d := c.right - c.left
	g := j.walls[i].regard.of(perMillimetre(j.taste.Weights.Drift, linesCount[j.paper.Lines].drift, d))
	if j.out != nil {
		s := severity(g)
		if d.Abs() > 5*measure.Millimetre || j.walls[i].focal {
			s = max(s, finding.Caution)
		}
		j.raise(Drift, s, g, finding.Place{Wall: j.run.Walls[i].Name}, size("drift", d), size("width", c.width), size("height", c.height), size("lean", -d.Scaled(int64(c.height), int64(c.width))))
	}
	return g
}

// offPlumb weighs how far the edges of a wall's sheets run off plumb.
func (j *judge) offPlumb(i int) int64 {
	if j.turns == nil || j.turns[i].Lean == 0 {
		return 0
	}
	t := &j.turns[i]
	g := j.walls[i].regard.of(perMillimetre(j.taste.Weights.OffPlumb, linesCount[j.paper.Lines].plumb, t.Lean))
	if j.out != nil {
		_, y := j.surveyed.Walls[i].Outline.Bounds()
		j.raise(OffPlumb, max(severity(g), finding.Caution), g, finding.Place{Wall: j.run.Walls[i].Name},
			size("off", t.Lean), size("height", y.Length()), size("rise", t.Rise), size("width", j.surveyed.Walls[i].Width))
		(*j.out)[len(*j.out)-1].Word = j.set[i].To.String()
	}
	return g
}

// offCasing weighs how far edges run off the sides of an opening: the worse side,
// reckoned over the wall's height; positive where the casing's head stands to the
// right of the edge that it touches at its foot. Less than a millimetre is none.
func (j *judge) offCasing(i, o int) int64 {
	off, ok := casingOff(&j.run.Walls[i], &j.surveyed.Walls[i], o)
	if !ok || off.Abs() < measure.Millimetre || !j.isDesigned() && j.paper.Lines == paper.LinesUnstated {
		return 0
	}
	g := j.walls[i].regard.of(perMillimetre(j.taste.Weights.OffCasing, linesCount[j.paper.Lines].casing, off))
	if j.out != nil {
		_, y := j.surveyed.Walls[i].Outline.Bounds()
		j.raise(OffCasing, severity(g), g, finding.Place{Wall: j.run.Walls[i].Name, Opening: j.run.Walls[i].Openings[o].Name},
			size("off", off), size("height", y.Length()))
	}
	return g
}

// casingOff returns how far the worse side of an opening leans against the sheets
// of its wall, reckoned over the height that the wall was surveyed with.
func casingOff(w, surveyed *room.Wall, o int) (off measure.Length, ok bool) {
	if k := w.Openings[o].Kind; k != room.Door && k != room.Window {
		return 0, false
	}
	_, y := surveyed.Outline.Bounds()
	for _, right := range [2]bool{false, true} {
		lean, tall, straight := w.Openings[o].Casing(right)
		if !straight {
			return 0, false
		}
		if over := lean.Scaled(int64(y.Length()), int64(tall)); over.Abs() > off.Abs() {
			off = over
		}
	}
	return off, true
}

// step weighs how far the design steps up or down in the corner at the right end
// of wall i, less whole repeats.
func (j *judge) step(i int) int64 {
	d := room.StepAt(j.turns, i)
	if j.paper.Repeat > 0 {
		if d = d.Mod(j.paper.Repeat); 2*d > j.paper.Repeat {
			d -= j.paper.Repeat
		}
	}
	if d == 0 || !j.isDesigned() {
		return 0
	}
	f := &j.corners[i]
	g := f.regard.of(perMillimetre(j.taste.Weights.CornerStep, 8, d))
	if j.out != nil {
		j.raise(CornerStep, severity(g), g, finding.Place{Corner: j.cornerName(i)}, size("along", d), size("height", f.height))
	}
	return g
}

// mixed weighs an inside corner in sight between walls that keep to different
// lines: one to the plumb line, say, the other to its ceiling. A wall with a level
// ceiling keeps to both.
func (j *judge) mixed(i int) int64 {
	next := (i + 1) % len(j.walls)
	if j.turns == nil || j.run.Corners[i].Kind != room.Inside || j.corners[i].regard == hidden ||
		j.paper.Lines == paper.LinesUnstated || j.keepsTo(i)&j.keepsTo(next) != 0 || follows(j.set, i, next) {
		return 0
	}
	g := j.taste.Weights.MixedWays
	if j.out != nil {
		j.raise(MixedWays, severity(g), g, finding.Place{Corner: j.cornerName(i)})
	}
	return g
}

// What a wall may keep to.
const (
	keepsPlumb = 1 << iota
	keepsCeiling
	keepsCasing
)

// keepsTo returns all that wall i keeps to; to its casings where it has none too.
func (j *judge) keepsTo(i int) (lines int) {
	if j.turns[i].Lean == 0 {
		lines |= keepsPlumb
	}
	if !j.walls[i].top.isUnlevel() {
		lines |= keepsCeiling
	}
	for o := range j.run.Walls[i].Openings {
		if off, ok := casingOff(&j.run.Walls[i], &j.surveyed.Walls[i], o); ok && off.Abs() >= measure.Millimetre {
			return lines
		}
	}
	return lines | keepsCasing
}

// follows reports whether one of two neighbours, the left one first, is set to the
// other: their sheets stand alike in the corner.
func follows(set []hanging.Setting, left, right int) bool {
	return set[left].To == hanging.ToRight || set[right].To == hanging.ToLeft
}
