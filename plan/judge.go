package plan

import (
	"firstdrop/finding"
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/room"
)

// The findings that a layout may raise.
const (
	Sliver       finding.Code = "sliver"         // a strip narrower than the minimum, at a corner or an end
	SeamNearEdge finding.Code = "seam_near_edge" // a seam too near an opening's edge
	SeamNearFold finding.Code = "seam_near_fold" // a seam too near an outside corner
	FocalSeam    finding.Code = "focal_seam"     // a seam down the middle of a focal wall
	EndInFold    finding.Code = "end_in_fold"    // a drop ends exactly in an inside corner
	KillMisfit   finding.Code = "kill_misfit"    // the design misses at the kill seam
	KillMeets    finding.Code = "kill_meets"     // the run closes: the design meets all the way round
	Wedge        finding.Code = "wedge"          // the design misses unevenly in a leaning corner
	CornerLoss   finding.Code = "corner_loss"    // the design misses evenly in a corner
	MotifCut     finding.Code = "motif_cut"      // the leading motif is cut at the ceiling line
	ReturnByHand finding.Code = "return_by_hand" // a return that is not planned: an arch
)

// judge weighs layouts of one run. It prepares what the walls say once.
type judge struct {
	run   *room.Run
	paper *paper.Paper
	taste Taste
	walls []judged
	// out collects findings, when they are wanted.
	out *[]finding.Finding
}

// judged is a wall prepared for judging.
type judged struct {
	width       measure.Length
	edges       []edge
	focal       bool
	left, right bool // an outside corner stands at that end
}

// edge is an upright side of an opening.
type edge struct {
	x       measure.Length
	opening int
}

func newJudge(run *room.Run, p *paper.Paper, taste Taste) *judge {
	j := &judge{run: run, paper: p, taste: taste, walls: make([]judged, len(run.Walls))}
	n := len(run.Walls)
	outside := func(corner int) bool {
		return corner >= 0 && corner < len(run.Corners) && run.Corners[corner].Kind == room.Outside
	}
	for i := range run.Walls {
		w := &run.Walls[i]
		before := i - 1
		if run.Closed {
			before = (i - 1 + n) % n
		}
		g := &j.walls[i]
		*g = judged{width: w.Width, focal: w.Sight == room.Focal, left: outside(before), right: outside(i)}
		for o := range w.Openings {
			x, _ := w.Openings[o].Outline.Bounds()
			for _, at := range []measure.Length{x.Lo, x.Hi} {
				if at > 0 && at < w.Width {
					g.edges = append(g.edges, edge{at, o})
				}
			}
		}
	}
	return j
}

// score returns what the drops and seams of a layout weigh, without its
// pieces, design height and rolls.
func (j *judge) score(l *hanging.Layout, kill *killPlace) int64 {
	total := int64(len(l.Drops)) * j.taste.Weights.Drop
	for i := range l.Drops {
		total += j.drop(l, i)
	}
	for i := range l.Seams {
		total += j.seam(l, &l.Seams[i], kill)
	}
	return total
}

// drop weighs the strips of a drop.
func (j *judge) drop(l *hanging.Layout, i int) (total int64) {
	d := &l.Drops[i]
	for k := range d.Parts {
		p := &d.Parts[k]
		joined := p.Joined || k+1 < len(d.Parts) && d.Parts[k+1].Joined
		seen := p.X.Intersection(geom.Interval{Lo: 0, Hi: j.walls[p.Wall].width})
		if joined || seen.Length() >= j.taste.MinSliver || seen.Length() < 0 {
			continue
		}
		w := graded(j.taste.Weights.Sliver, seen.Length(), j.taste.MinSliver)
		total += w
		if j.out != nil {
			j.raise(Sliver, severity(w), j.at(l, i, p.Wall, seen.Lo), finding.Size{Name: "width", Value: seen.Length()})
		}
	}
	return total
}

// seam weighs one seam.
func (j *judge) seam(l *hanging.Layout, s *hanging.Seam, kill *killPlace) int64 {
	switch {
	case s.Kind == hanging.KillSeam:
		return j.kill(s, kill)
	case s.InCorner:
		return j.corner(l, s)
	}
	return j.onWall(l, s)
}

// onWall weighs a seam by its distances from outside corners and openings.
func (j *judge) onWall(l *hanging.Layout, s *hanging.Seam) (total int64) {
	w := &j.walls[s.Wall]
	for _, e := range w.edges {
		total += j.near(l, s, SeamNearEdge, (s.X - e.x).Abs(), e.opening)
	}
	if w.left {
		total += j.near(l, s, SeamNearFold, s.X, -1)
	}
	if w.right {
		total += j.near(l, s, SeamNearFold, w.width-s.X, -1)
	}
	if w.focal && (2*s.X-w.width).Abs() < 2*j.taste.SeamClearance {
		total += j.taste.Weights.FocalSeam
		if j.out != nil {
			j.raise(FocalSeam, finding.Note, j.at(l, s.Right, s.Wall, s.X))
		}
	}
	return total
}

// near weighs a seam that stands at distance d from an edge it should keep
// clear of: that of an opening, or (−1) an outside corner.
func (j *judge) near(l *hanging.Layout, s *hanging.Seam, code finding.Code, d measure.Length, opening int) int64 {
	if d >= j.taste.SeamClearance {
		return 0
	}
	g := graded(j.taste.Weights.SeamNear, d, j.taste.SeamClearance)
	if j.out != nil {
		place := j.at(l, s.Right, s.Wall, s.X)
		if opening >= 0 {
			place.Opening = j.run.Walls[s.Wall].Openings[opening].Name
		}
		j.raise(code, severity(g), place, finding.Size{Name: "distance", Value: d})
	}
	return g
}

// corner weighs a seam that stands in a corner.
func (j *judge) corner(l *hanging.Layout, s *hanging.Seam) (total int64) {
	n := len(j.run.Walls)
	at := (s.Wall - 1 + n) % n
	outside := j.run.Corners[at].Kind == room.Outside
	ends := !outside && s.Kind == hanging.Butt
	if outside {
		total += j.taste.Weights.SeamNear
	} else if ends {
		total += j.taste.Weights.EndInFold
	}
	designed := j.paper.Match.Kind != paper.Free
	if designed {
		total += int64(s.Across.Length()/measure.Millimetre) * j.taste.Weights.Wedge
	}
	if j.out == nil {
		return total
	}
	place := finding.Place{Corner: j.cornerName(at), Drop: l.Drops[s.Right].Number}
	if outside {
		j.raise(SeamNearFold, finding.Serious, place, finding.Size{Name: "distance"})
	} else if ends {
		j.raise(EndInFold, finding.Caution, place)
	}
	switch {
	case !designed:
	case s.Across.Length() > 0:
		j.raise(Wedge, finding.Caution, place,
			finding.Size{Name: "least", Value: s.Across.Lo}, finding.Size{Name: "most", Value: s.Across.Hi})
	case s.Across.Hi != 0 || s.Along != 0:
		j.raise(CornerLoss, finding.Note, place,
			finding.Size{Name: "across", Value: s.Across.Hi}, finding.Size{Name: "along", Value: s.Along})
	}
	return total
}

// kill weighs the kill seam: its length, how far the design misses, and how
// visible the place is. A misfit counts in full from 20 mm on, where anybody
// sees it.
func (j *judge) kill(s *hanging.Seam, kill *killPlace) int64 {
	if j.paper.Match.Kind == paper.Free {
		return 0
	}
	miss := max(s.Across.Lo.Abs(), s.Across.Hi.Abs(), s.Along.Abs())
	if miss == 0 {
		if j.out != nil {
			j.raise(KillMeets, finding.Note, kill.place(j))
		}
		return 0
	}
	const full = 20 * measure.Millimetre
	perMetre := j.taste.Weights.KillMetre * kill.visibility() / 4
	total := int64(measure.Length(perMetre).Scaled(int64(min(miss, full)), int64(full)))
	total = int64(measure.Length(total).Scaled(int64(kill.height), int64(measure.Metre)))
	if j.out != nil {
		j.raise(KillMisfit, finding.Caution, kill.place(j),
			finding.Size{Name: "across", Value: widest(s.Across)},
			finding.Size{Name: "along", Value: s.Along},
			finding.Size{Name: "height", Value: kill.height})
	}
	return total
}

// at names a place on a wall, and the drop that stands there.
func (j *judge) at(l *hanging.Layout, drop, wall int, x measure.Length) finding.Place {
	return finding.Place{Wall: j.run.Walls[wall].Name, Drop: l.Drops[drop].Number, X: &x}
}

// raise notes a finding.
func (j *judge) raise(code finding.Code, s finding.Severity, at finding.Place, sizes ...finding.Size) {
	at.Run = j.run.Name
	*j.out = append(*j.out, finding.Finding{Code: code, Severity: s, Place: at, Sizes: sizes})
}

// severity grades a finding by its weight: what costs a quarter of a roll or
// more is serious.
func severity(weight int64) finding.Severity {
	if weight >= 250 {
		return finding.Serious
	}
	return finding.Caution
}

// cornerName names the corner at the right end of wall i: "A|B".
func (j *judge) cornerName(i int) string {
	return j.run.Walls[i].Name + "|" + j.run.Walls[(i+1)%len(j.run.Walls)].Name
}

// widest returns the end of the interval that is farther from 0.
func widest(i geom.Interval) measure.Length {
	if i.Lo.Abs() > i.Hi.Abs() {
		return i.Lo
	}
	return i.Hi
}
