package plan

import (
	"slices"

	"firstdrop/finding"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/room"
)

// The findings that a seam in a corner may raise.
const (
	EndInFold   finding.Code = "end_in_fold"  // a drop ends exactly in an inside corner
	Wedge       finding.Code = "wedge"        // the design misses unevenly in a leaning corner
	CornerLoss  finding.Code = "corner_loss"  // the design misses evenly in a corner
	RenewedMiss finding.Code = "renewed_miss" // the design misses where a new drop begins in a corner
	LapShadow   finding.Code = "lap_shadow"   // a lap turns its edge away from the light
)

// fold is a corner prepared for judging.
type fold struct {
	height measure.Length // how much paper meets there
	seen   measure.Length // the same, with what is above eye level counted half
	regard regard
	light  light
}

// fold prepares the corner at the right end of wall i.
func (j *judge) fold(i int) fold {
	next := (i + 1) % len(j.run.Walls)
	sight := cornerSight(j.run, i)
	first := sight == room.Plain && (j.walls[i].first || j.walls[next].first)
	return fold{
		height: cornerHeight(j.run, i),
		seen:   min(j.seenAt(i, j.run.Walls[i].Width-1), j.seenAt(next, 1)),
		regard: regardOf(sight, first), light: j.lightAt(i),
	}
}

// cornerOf returns the index of the corner in which a seam stands.
func (j *judge) cornerOf(s *hanging.Seam) int {
	n := len(j.run.Walls)
	return (s.Wall - 1 + n) % n
}

// corner weighs a seam that stands in a corner.
func (j *judge) corner(l *hanging.Layout, s *hanging.Seam) (total int64) {
	at := j.cornerOf(s)
	outside := j.run.Corners[at].Kind == room.Outside
	w := &j.taste.Weights
	place := func() finding.Place {
		return finding.Place{Corner: j.cornerName(at), Drop: l.Drops[s.Right].Number}
	}
	switch {
	case outside:
		total += w.SeamNear
		if j.out != nil {
			j.raise(SeamNearFold, finding.Serious, w.SeamNear, place(), size("distance", 0))
		}
	case s.Kind == hanging.Butt:
		total += w.EndInFold
		if j.out != nil {
			j.raise(EndInFold, finding.Caution, w.EndInFold, place())
		}
	case s.Kind == hanging.Carried && l.Rules.Wrap > 0:
		total += j.lap(l, s, at, walkedRight(l, s))
	}
	if !j.isDesigned() {
		return total
	}
	if s.Kind == hanging.Renewed {
		total += j.renewed(s, at, place)
	}
	return total + j.wedge(s, place)
}

// wedge weighs what the lean of a corner, or a wrap, does to the design.
func (j *judge) wedge(s *hanging.Seam, place func() finding.Place) int64 {
	total := int64(s.Across.Length()/measure.Millimetre) * j.taste.Weights.Wedge
	switch {
	case j.out == nil:
	case s.Across.Length() > 0:
		j.raise(Wedge, finding.Caution, total, place(), size("least", s.Across.Lo), size("most", s.Across.Hi))
	case s.Kind != hanging.Renewed && (s.Across.Hi != 0 || s.Along != 0):
		j.raise(CornerLoss, finding.Note, 0, place(), size("across", s.Across.Hi), size("along", s.Along))
	}
	return total
}

// renewed weighs the misfit where a new drop begins, as that of a kill seam: by
// its length, how far it misses and how much the corner is looked at.
func (j *judge) renewed(s *hanging.Seam, at int, place func() finding.Place) int64 {
	miss := misfit(s)
	if miss == 0 {
		return 0
	}
	f := &j.corners[at]
	total := j.renews(f, miss)
	if j.out != nil {
		j.raise(RenewedMiss, severity(total), total, place(),
			size("across", widest(s.Across)), size("along", s.Along), size("height", f.height))
	}
	return total
}

// renews returns what it weighs that the design misses by so much where a new drop begins
// in a corner.
func (j *judge) renews(f *fold, miss measure.Length) int64 {
	return f.regard.kill(share(j.taste.Weights.RenewMetre, miss, fullMiss), f.seen)
}

// newStep returns by how much what a new drop weighs may differ, in any corner, where the
// design misses by a nanometre more or less.
func (j *judge) newStep() (step int64) {
	for i := range j.corners {
		step = max(step, j.corners[i].regard.killStep(j.corners[i].seen))
	}
	return step
}

// misfit returns by how much a seam misses where it misses most.
func misfit(s *hanging.Seam) measure.Length {
	return max(s.Across.Lo.Abs(), s.Across.Hi.Abs(), s.Along.Abs())
}

// light is what falls on the laps of a corner.
type light struct {
	left, right    measure.Length // how far the nearest window is, going left and right from the corner; < 0: none
	onLeft, byLeft string         // not used by rules: the window's wall and name, on the left
	onRight        string
	byRight        string
}

// lightAt finds the nearest windows on either side of the corner at the right end
// of wall i, as one walks along the run.
func (j *judge) lightAt(i int) light {
	lt := light{left: -1, right: -1}
	n := len(j.run.Walls)
	var way measure.Length
	for k := 1; k <= n && lt.right < 0; k++ {
		at := i + k
		if at >= n && !j.run.Closed {
			break
		}
		w := &j.run.Walls[at%n]
		if x, o := nearestWindow(w, false); o != nil {
			lt.right, lt.onRight, lt.byRight = way+x, w.Name, o.Name
		}
		way += w.Width
	}
	way = 0
	for k := 0; k < n && lt.left < 0; k++ {
		at := i - k
		if at < 0 && !j.run.Closed {
			break
		}
		w := &j.run.Walls[(at+n)%n]
		if x, o := nearestWindow(w, true); o != nil {
			lt.left, lt.onLeft, lt.byLeft = way+x, w.Name, o.Name
		}
		way += w.Width
	}
	return lt
}

// nearestWindow returns the window of a wall that is nearest to its left, or its
// right, end, and how far it is from there; nil without any.
func nearestWindow(w *room.Wall, fromRight bool) (way measure.Length, found *room.Opening) {
	for o := range w.Openings {
		if w.Openings[o].Kind != room.Window {
			continue
		}
		x, _ := w.Openings[o].Outline.Bounds()
		d := x.Lo
		if fromRight {
			d = w.Width - x.Hi
		}
		if found == nil || d < way {
			way, found = d, &w.Openings[o]
		}
	}
	return way, found
}

// lap weighs a lap in a corner. The sheet hung first turns the corner, the other
// covers it, and the cover's edge lies in the corner. Seen from the side of the
// sheet below, that edge is lit; seen from the cover's own side it throws a
// shadow. Older handbooks therefore work away from the daylight:
//
//	window                          first sheet │╲ cover
//	▓▓▓▓▓▓▓ ─ ─ ─ light ─ ─ ─ ─ ─ ─ ─►          │ ╲    good: the light comes
//	                                                   to the edge, not over it
func (j *judge) lap(l *hanging.Layout, s *hanging.Seam, at int, coverRight bool) int64 {
	lt := &j.corners[at].light
	cover, below, wall, window := lt.right, lt.left, lt.onRight, lt.byRight
	if !coverRight {
		cover, below, wall, window = below, cover, lt.onLeft, lt.byLeft
	}
	if cover < 0 || below >= 0 && below <= cover {
		return 0
	}
	if j.out != nil {
		j.raise(LapShadow, finding.Note, j.taste.Weights.LapShadow,
			finding.Place{Corner: j.cornerName(at), Wall: wall, Opening: window, Drop: l.Drops[s.Right].Number})
	}
	return j.taste.Weights.LapShadow
}

// walkedRight reports whether the sheet on the right of a seam was hung after
// that on its left.
func walkedRight(l *hanging.Layout, s *hanging.Seam) bool {
	left, right := &l.Drops[s.Left], &l.Drops[s.Right]
	switch {
	case left.Index != 0 || right.Index != 0:
		return left.Index >= 0 && right.Index > 0
	}
	// Both parts are drop 0's: that on the start's wall was set first.
	start := l.Choice.Start
	anchor := max(start.X, 0)
	at := max(0, slices.IndexFunc(left.Parts, func(p hanging.Part) bool {
		return p.Wall == start.Wall && p.X.Lo <= anchor && anchor < p.X.Hi
	}))
	for k := range left.Parts {
		if p := &left.Parts[k]; k > 0 && p.Wall == s.Wall && left.Parts[k-1].Wall != s.Wall {
			return at < k
		}
	}
	return true
}
