package audit

import (
	"firstdrop/geom"
	"firstdrop/hanging"
)

// join is a seam as the sheets make it: between two lays that are neighbours
// along the run, or the two ends of a closed one.
type join struct {
	left, right *lay
	seam        hanging.Seam
}

// joins works out every seam from the left end of the run to its right end,
// the kill seam last.
func (h *hung) joins() []join {
	var all []join
	for k := 1; k < len(h.lays); k++ {
		if p, q := &h.lays[k-1], &h.lays[k]; p.sheet != q.sheet {
			all = append(all, h.join(p, q, h.kind(p, q)))
		}
	}
	if h.l.Choice.Kill.Kind != hanging.NoKill {
		all = append(all, h.join(&h.lays[len(h.lays)-1], &h.lays[0], hanging.KillSeam))
	}
	return all
}

// kind tells the kind of the seam between neighbours.
func (h *hung) kind(p, q *lay) hanging.SeamKind {
	switch {
	case p.drop == q.drop:
		return hanging.Carried
	case p.a.hi < h.width || q.a.lo > 0:
		return hanging.Renewed
	case p.skew != 0 || q.skew != 0:
		return hanging.Turned
	}
	return hanging.Butt
}

// join works out place and misfit of a seam. The design runs on across the
// drops as if they lay edge to edge, drop i from i widths to i+1. At the seam
// line the left sheet shows one point of that, the right sheet another; the
// misfit is what lies between. Line and sheets may lean, each evenly from foot
// to head, so the ends decide.
func (h *hung) join(p, q *lay, kind hanging.SeamKind) join {
	s := hanging.Seam{Kind: kind, Wall: q.wall, Left: p.drop, Right: q.drop}
	kill := h.l.Choice.Kill
	lineLeft, lineRight := q.x.lo, q.x.lo // of the seam on either wall, at the foot
	leanLeft, leanRight := int64(0), int64(0)
	switch {
	case kind == hanging.KillSeam && kill.Kind == hanging.OnWall:
		lineLeft, lineRight = int64(kill.X), int64(kill.X)
	case p.wall != q.wall || kind == hanging.KillSeam:
		s.InCorner = true
		lineLeft, lineRight = h.walls[p.wall].width, 0
		leanLeft, leanRight = h.walls[p.wall].right.leanLeft, h.walls[q.wall].left.leanRight
	case q.skew != 0: // hung from the right: the edge of the plumb sheet is seen
		lineLeft, lineRight = p.x.hi, p.x.hi
	}
	s.X = lengthOf(lineRight)
	onLeft := int64(p.index)*h.width + p.a.lo + lineLeft - p.x.lo
	onRight := int64(q.index)*h.width + q.a.lo + lineRight - q.x.lo
	foot := onRight - onLeft
	more := (leanRight - q.skew) - (leanLeft - p.skew) // at the head
	if kind == hanging.KillSeam || kind == hanging.Renewed {
		var along int64
		foot, along = h.reduced(foot, q.index)
		s.Along = lengthOf(along)
	}
	if s.InCorner {
		s.Along = lengthOf(h.centredStep(int64(s.Along), p.wall))
	}
	s.Across = geom.Interval{Lo: lengthOf(min(foot, foot+more)), Hi: lengthOf(max(foot, foot+more))}
	return join{p, q, s}
}

// centredStep adds the step of the design in the corner at the right of a wall to
// a misfit along.
func (h *hung) centredStep(along int64, wall int) int64 {
	step := h.step(wall)
	if step == 0 || h.l.Paper.Repeat == 0 {
		return along
	}
	return centred(along+step, int64(h.l.Paper.Repeat))
}

// reduced takes whole widths of the design off a misfit at the foot: where
// drop i hangs but drop i−n would have matched, what is left across is the
// misfit, and the design on the right stands too high by what drop i stands
// higher than drop i−n.
func (h *hung) reduced(foot int64, right int) (across, along int64) {
	p := h.l.Paper
	across = centred(foot, h.width)
	widths := int((foot - across) / h.width)
	design := int64(h.l.Choice.Design)
	along = centred(standing(p, design, right)-standing(p, design, right-widths), int64(p.Repeat))
	if a := int64(p.Across); a > 0 && a < h.width {
		across = centred(across, a)
	}
	return across, along
}

// judgeSeams: the seams listed are those that the sheets make.
func (h *hung) judgeSeams() {
	joins := h.joins()
	listed := make([]bool, len(h.l.Seams))
	before := -1
	for n := range joins {
		want := &joins[n].seam
		at := joins[n].right.at()
		i := h.listed(want, listed, n)
		if i < 0 {
			h.note(SeamMissing, at, "seam between drop "+figure(want.Left+1)+" and drop "+figure(want.Right+1), "listed", "not")
			continue
		}
		listed[i] = true
		at.Seam = i + 1
		if i < before && want.Kind != hanging.KillSeam {
			h.note(SeamExtra, at, "place in the list", "from left to right", "before another")
		}
		before = max(before, i)
		h.judgeSeam(at, want, &h.l.Seams[i])
	}
	for i, done := range listed {
		if !done {
			h.note(SeamExtra, Place{Seam: i + 1}, "seam", "one that the sheets make", "none of them")
		}
	}
}

// listed returns the first seam not yet accounted for that lies between the
// same drops on the same wall, or failing that between the same drops; −1 when
// there is none. It looks at the seam numbered likely first.
func (h *hung) listed(want *hanging.Seam, done []bool, likely int) int {
	if likely < len(done) && !done[likely] {
		s := &h.l.Seams[likely]
		if s.Left == want.Left && s.Right == want.Right && s.Wall == want.Wall && s.InCorner == want.InCorner && s.Kind == want.Kind {
			return likely
		}
	}
	other := -1
	for i := range h.l.Seams {
		s := &h.l.Seams[i]
		if done[i] || s.Left != want.Left || s.Right != want.Right {
			continue
		}
		if (s.Kind == hanging.KillSeam) != (want.Kind == hanging.KillSeam) && len(h.l.Drops) <= 2 {
			continue
		}
		if s.Wall == want.Wall && s.InCorner == want.InCorner {
			return i
		}
		if other < 0 {
			other = i
		}
	}
	return other
}

func (h *hung) judgeSeam(at Place, want, got *hanging.Seam) {
	h.same(SeamKind, at, "kind", want.Kind, got.Kind)
	h.same(SeamPlace, at, "wall", want.Wall+1, got.Wall+1)
	h.same(SeamPlace, at, "in a corner", want.InCorner, got.InCorner)
	h.same(SeamPlace, at, "distance from the wall's left end", want.X, got.X)
	h.same(SeamMisfit, at, "least misfit across", want.Across.Lo, got.Across.Lo)
	h.same(SeamMisfit, at, "most misfit across", want.Across.Hi, got.Across.Hi)
	h.same(SeamMisfit, at, "misfit along", want.Along, got.Along)
}
