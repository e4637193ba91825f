package plan

import (
	"slices"

	"firstdrop/finding"
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/room"
)

// A judge adds up what is wrong with a layout. Every rule is local: it sees one
// drop, one seam, the two end strips of one wall, the kill seam, or one piece,
// and nothing else of the layout. So the sum can be taken in any order, and
// where a layout changes in one place only, only that place is judged again.
//
//	┌────┬─────────┬─────────┬───┐ ┌────     strips   Sliver, Awkward, OffCentre
//	│    │         │  ┌───┐  │   │ │         seams    SeamNearEdge, SliverBeside …
//	│end │  drop   │  │   │  │end│ │ corner  corners  Wedge, RenewedMiss, LapShadow …
//	│    │       seam └───┘  │   │ │         walls    UnequalEnds, Drift
//	└────┴─────────┴─────────┴───┘ └────     pieces   MotifCut, Awkward
//
// The files rules_*.go hold the rules, each kind of place in its own; rules.go
// lists them all with their weights' names and sources.

// judge weighs layouts of one run. It prepares what the walls say once.
type judge struct {
	run      *room.Run // as the sheets see it
	surveyed *room.Run
	set      []hanging.Setting // nil: all plumb
	turns    []room.Turn
	paper    *paper.Paper
	taste    Taste
	walls    []judged
	corners  []fold
	focal    bool       // some wall is focal
	lining   bool       // the run is a lining
	level    *levelling // nil where drops are not hung by their ceilings
	// out collects findings, when they are wanted.
	out   *[]finding.Finding
	fixed *Fixed
	cells []geom.Cell // used again and again
	lines []cutLine
}

// judged is a wall prepared for judging.
type judged struct {
	width       measure.Length
	outline     *geom.Sweep // the wall without its openings
	edges       []edge
	focal       bool
	first       bool // what one sees first from the door
	regard      regard
	left, right bool            // an outside corner stands at that end
	centre      *measure.Length // the line that the motif should stand on
	lining      []measure.Length
	top         ceiling
	holes       []hole
}

// edge is an upright side of an opening.
type edge struct {
	x       measure.Length
	opening int
	left    bool // the opening's left side: the opening lies to the right of it
}

// newJudge returns a judge of one run in its paper, as a hanger sets its walls.
func newJudge(rt *RunTask, p *paper.Paper, taste Taste, h *hanging.Hanger) *judge {
	run := h.Run()
	j := &judge{
		fixed: &rt.Fixed, lining: len(rt.Over) > 0, run: run, surveyed: rt.Run, set: h.Set(), turns: h.Turns(),
		paper: p, taste: taste, walls: make([]judged, len(run.Walls)),
	}
	j.level = levellingOf(rt.Run, p, h.Rules())
	first := run.FirstSeen()
	for i := range run.Walls {
		j.walls[i].outline = geom.Polygon{Outline: run.Walls[i].Outline}.Sweep()
		j.walls[i] = j.wall(i, &run.Walls[i], slices.Contains(first, i))
		j.focal = j.focal || j.walls[i].focal
	}
	if c := rt.Fixed.Centre; c != nil {
		j.walls[c.Wall].centre = &c.X
	}
	for _, line := range rt.Lining {
		j.walls[line.Wall].lining = append(j.walls[line.Wall].lining, line.X)
	}
	for i := range run.Corners {
		j.corners = append(j.corners, j.fold(i))
	}
	return j
}

// wall prepares wall i.
func (j *judge) wall(i int, w *room.Wall, first bool) judged {
	g := judged{
		width: w.Width, outline: j.walls[i].outline, focal: w.Sight == room.Focal, first: first, regard: regardOf(w.Sight, first),
		left: j.isOutside(i - 1), right: j.isOutside(i), top: ceilingOf(w),
	}
	if g.focal {
		centre := w.Width / 2
		g.centre = &centre
	}
	for o := range w.Openings {
		x, y := w.Openings[o].Outline.Bounds()
		g.holes = append(g.holes, j.hole(i, x, y))
		if x.Lo > 0 && x.Lo < w.Width {
			g.edges = append(g.edges, edge{x.Lo, o, true})
		}
		if x.Hi > 0 && x.Hi < w.Width {
			g.edges = append(g.edges, edge{x.Hi, o, false})
		}
	}
	return g
}

// isOutside reports whether an outside corner stands at the right end of wall i,
// which may be −1 for what lies before the first.
func (j *judge) isOutside(i int) bool {
	if i < 0 && j.run.Closed {
		i += len(j.run.Walls)
	}
	return i >= 0 && i < len(j.run.Corners) && j.run.Corners[i].Kind == room.Outside
}

// isDesigned reports whether there is a design that can miss.
func (j *judge) isDesigned() bool { return j.paper.Match.Kind != paper.Free }

// score returns what the drops, seams and walls of a layout weigh, without its
// pieces, design height and rolls.
func (j *judge) score(l *hanging.Layout, kill *killPlace) int64 {
	total := int64(len(l.Drops)) * j.taste.Weights.Drop
	for i := range l.Drops {
		total += j.drop(l, i)
	}
	for i := range l.Seams {
		total += j.seam(l, &l.Seams[i], kill)
	}
	return total + j.ends(l)
}

// seam weighs one seam.
func (j *judge) seam(l *hanging.Layout, s *hanging.Seam, kill *killPlace) int64 {
	switch {
	case s.Kind == hanging.KillSeam:
		return j.kill(l, s, kill)
	case s.InCorner:
		return j.corner(l, s)
	}
	return j.onWall(l, s)
}

// at names a place on a wall, and the drop that stands there.
func (j *judge) at(l *hanging.Layout, drop, wall int, x measure.Length) finding.Place {
	return finding.Place{Wall: j.run.Walls[wall].Name, Drop: l.Drops[drop].Number, X: &x}
}

// raise notes a finding and what it weighs, if findings are wanted. A place is
// made only then: at is called with what it needs to make one. It is called from many
// places, and seldom, and not worth being copied to all of them.
//
//go:noinline
func (j *judge) raise(code finding.Code, s finding.Severity, weight int64, at finding.Place, sizes ...finding.Size) {
	at.Run = j.run.Name
	*j.out = append(*j.out, finding.Finding{Code: code, Severity: s, Weight: weight, Place: at, Sizes: sizes})
}

// severity grades a finding by its weight: what costs a quarter of a roll or
// more is serious, what costs less than a fortieth is a note.
func severity(weight int64) finding.Severity {
	switch {
	case weight >= 250:
		return finding.Serious
	case weight < 25:
		return finding.Note
	}
	return finding.Caution
}

// cornerName names the corner at the right end of wall i: "A|B".
func (j *judge) cornerName(i int) string { return j.run.CornerName(i) }

// widest returns the end of the interval that is farther from 0.
func widest(i geom.Interval) measure.Length {
	if i.Lo.Abs() > i.Hi.Abs() {
		return i.Lo
	}
	return i.Hi
}

// size is a named figure of a finding.
func size(name string, value measure.Length) finding.Size {
	return finding.Size{Name: name, Value: value}
}
