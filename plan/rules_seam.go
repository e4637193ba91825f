package plan

import (
	"firstdrop/finding"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/room"
)

// The findings that a seam on a wall may raise.
const (
	SeamNearEdge  finding.Code = "seam_near_edge"  // a seam too near an opening's edge
	SeamNearFold  finding.Code = "seam_near_fold"  // a seam too near an outside corner
	SliverBeside  finding.Code = "sliver_beside"   // a strip too narrow between a seam and an opening
	HeaderOverrun finding.Code = "header_overrun"  // a drop over an opening runs past its edge by little, and so is cut as a full drop
	FocalSeam     finding.Code = "focal_seam"      // a seam down the middle of a focal wall
	LiningSeam    finding.Code = "lining_seam"     // a seam over one of the lining paper
	SeamOnFitting finding.Code = "seam_on_fitting" // a seam across a socket, a switch or the like
)

// onWall weighs a seam that stands on a wall.
func (j *judge) onWall(l *hanging.Layout, s *hanging.Seam) (total int64) {
	if j.fixed.isKeptOff(s.Wall, s.X) {
		total += offWeight
	}
	w := &j.walls[s.Wall]
	for k := range w.edges {
		total += j.nearEdge(l, s, &w.edges[k])
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
			j.raise(FocalSeam, finding.Note, j.taste.Weights.FocalSeam, j.at(l, s.Right, s.Wall, s.X))
		}
	}
	for _, x := range w.lining {
		total += j.onLining(l, s, x)
	}
	if s.Kind == hanging.Turned && j.isDesigned() {
		total += j.wedge(s, func() finding.Place { return j.turnedAt(l, s) })
	}
	for k := range j.run.Walls[s.Wall].Fittings {
		total += j.onFitting(l, s, &j.run.Walls[s.Wall].Fittings[k])
	}
	return total
}

// turnedAt names the corner by which the leaning sheet at a seam came to its wall.
func (j *judge) turnedAt(l *hanging.Layout, s *hanging.Seam) finding.Place {
	parts, corner := l.Drops[s.Left].Parts, s.Wall
	if parts[len(parts)-1].Skew != 0 {
		n := len(j.run.Walls)
		corner = (s.Wall - 1 + n) % n
	}
	return finding.Place{Corner: j.cornerName(corner), Drop: l.Drops[s.Right].Number}
}

// nearEdge weighs what a seam does beside one side of an opening. The strip
// between them belongs to the drop that lies over the opening:
//
//	   seam
//	───┬──────────────┬──
//	   │  ┌───────┐   │    d < clearance   the seam is too near the edge
//	   │d │       │        d < MinSliver   the leg is a sliver
//	   │  │ door  │        d < Overrun     the drop is cut full length for
//	   │  │       │                        the sake of the leg alone
func (j *judge) nearEdge(l *hanging.Layout, s *hanging.Seam, e *edge) int64 {
	total := j.near(l, s, SeamNearEdge, (s.X - e.x).Abs(), e.opening)
	d := s.X - e.x
	if e.left {
		d = -d
	}
	if d <= 0 {
		return total // on the edge, or over the opening
	}
	w := &j.walls[s.Wall]
	if d < j.taste.MinSliver {
		g := w.regard.of(graded(j.taste.Weights.SliverBeside, d, j.taste.MinSliver))
		total += g
		if j.out != nil {
			j.raise(SliverBeside, severity(g), g, j.beside(l, s, e), size("width", d))
		}
	}
	if d < j.taste.Overrun && j.overruns(l, s, e) {
		total += j.taste.Weights.Overrun
		if j.out != nil {
			h := &w.holes[e.opening]
			j.raise(HeaderOverrun, finding.Caution, j.taste.Weights.Overrun, j.beside(l, s, e),
				size("past", d), size("full", h.full), size("header", h.over))
		}
	}
	return total
}

// overruns reports whether the drop between the seam and the opening lies over
// the opening with all the rest of its width, so that without what runs past
// the edge it would be cut as short as the header.
func (j *judge) overruns(l *hanging.Layout, s *hanging.Seam, e *edge) bool {
	h := &j.walls[s.Wall].holes[e.opening]
	if h.over <= 0 {
		return false
	}
	i := s.Left
	if e.left {
		i = s.Right
	}
	parts := l.Drops[i].Parts
	p := &parts[0]
	if !e.left {
		p = &parts[len(parts)-1]
	}
	if p.Wall != s.Wall || len(parts) > 1 {
		return false
	}
	return e.left && p.X.Hi <= h.x.Hi || !e.left && p.X.Lo >= h.x.Lo
}

// beside names the place of a seam beside an opening.
func (j *judge) beside(l *hanging.Layout, s *hanging.Seam, e *edge) finding.Place {
	drop := s.Left
	if e.left {
		drop = s.Right
	}
	place := j.at(l, drop, s.Wall, s.X)
	place.Opening = j.run.Walls[s.Wall].Openings[e.opening].Name
	return place
}

// near weighs a seam that stands at distance d from an edge it should keep
// clear of: that of an opening, or (−1) an outside corner.
func (j *judge) near(l *hanging.Layout, s *hanging.Seam, code finding.Code, d measure.Length, opening int) int64 {
	if d >= j.taste.SeamClearance {
		return 0
	}
	g := j.walls[s.Wall].regard.of(graded(j.taste.Weights.SeamNear, d, j.taste.SeamClearance))
	if j.out != nil {
		place := j.at(l, s.Right, s.Wall, s.X)
		if opening >= 0 {
			place.Opening = j.run.Walls[s.Wall].Openings[opening].Name
		}
		j.raise(code, severity(g), g, place, size("distance", d))
	}
	return g
}

// onLining weighs a seam by its distance from a seam of the lining; or, of a lining,
// from a seam of the paper over it.
func (j *judge) onLining(l *hanging.Layout, s *hanging.Seam, x measure.Length) int64 {
	g := graded(j.taste.Weights.LiningSeam, (s.X - x).Abs(), liningClear)
	if g > 0 && j.out != nil {
		j.raise(LiningSeam, severity(g), g, j.at(l, s.Right, s.Wall, s.X), size("distance", (s.X-x).Abs()))
		if j.lining {
			(*j.out)[len(*j.out)-1].Word = "under"
		}
	}
	return g
}

// onFitting weighs a seam that crosses a fitting. Behind a radiator nobody sees
// one.
func (j *judge) onFitting(l *hanging.Layout, s *hanging.Seam, f *room.Fitting) int64 {
	if f.Kind == room.Radiator || 2*(s.X-f.At.X).Abs() > f.Size.X {
		return 0
	}
	if j.out != nil {
		y := f.At.Y
		place := j.at(l, s.Right, s.Wall, s.X)
		place.Y = &y
		j.raise(SeamOnFitting, finding.Note, j.taste.Weights.SeamFitting, place, size("width", f.Size.X))
		(*j.out)[len(*j.out)-1].Word = fittingName(f)
	}
	return j.taste.Weights.SeamFitting
}

// fittingName returns what a fitting is called: its name, or what it is.
func fittingName(f *room.Fitting) string {
	if f.Name != "" {
		return f.Name
	}
	return f.Kind.String()
}
