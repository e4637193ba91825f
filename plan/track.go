package plan

import "firstdrop/hanging"

// Where no new drops are tried, a half goes on from a corner as every half does that comes
// to it so. So halves are not followed one by one: the way on from a corner is followed
// once, and what lies between two corners is the difference of what lies before them:
//
//	      ►───┬───────┬───────┬───────┬───        a track, and what comes before
//	          0      2.1     4.0     6.2          each of its corners
//	start ────────────┘       ▲                   from here to there: 4.1
//	                  └───────┘

// track is the way on from a corner to the corners behind it.
type track struct {
	steps []step
}

// step is one of its corners.
type step struct {
	view   *view
	before row  // of the drops from the first corner to this one
	walls  int  // how many walls it is from the first corner
	comes  ends // to which the drop that meets the corner comes
	passed ends // those of them that it passes
}

// stop is where on a track a corner is.
type stop struct {
	track *track
	at    int
}

// stopAt returns where on a track the corner is to which drops from a node on come.
func (o *outlook) stopAt(n *node) stop {
	v := o.view(n)
	if v.stop.track == nil {
		v.stop = stop{track: &track{steps: []step{o.newStep(n.corner, row{}, 0)}}}
	}
	return v.stop
}

// newStep returns a corner after a row, so many walls from the first.
func (o *outlook) newStep(corner *node, before row, walls int) step {
	v := o.view(corner)
	s := step{view: v, before: before, walls: walls, comes: allEnds}
	if to := v.edge.to; to != nil {
		s.passed = o.passed(corner, v.edge)
		s.comes = s.passed.or(o.on[corner.spot.Side][to.spot.Wall])
	}
	return s
}

// step returns a corner on the way; nil where the way ends.
func (o *outlook) step(t *track, at int) *step {
	for len(t.steps) <= at {
		last := &t.steps[len(t.steps)-1]
		to := last.view.edge.to
		if to == nil {
			return nil
		}
		before := last.before
		before.append(&last.view.on, o)
		next := o.newStep(to.corner, before, last.walls+last.view.edge.corners)
		if next.view.stop.track == nil {
			next.view.stop = stop{t, len(t.steps)}
		}
		t.steps = append(t.steps, next)
	}
	return &t.steps[at]
}

// since returns what comes between two corners of a track, after a row before the first.
func (o *outlook) since(sums *row, from, to *step) row {
	a, drops := to.before.ahead, to.before.drops-from.before.drops
	a.sub(&from.before.ahead)
	if o.turn.lanes > 0 {
		a.motifs = o.turn.by(a.motifs, int32(o.turn.lanes)-from.before.drops%int32(o.turn.lanes))
	}
	r := *sums
	r.append(&row{a, drops}, o)
	return r
}

// before returns a corner before which drops come to no wall that is so many walls from here.
func (p stop) before(walls int) int {
	steps := p.track.steps
	far, at := steps[p.at].walls+walls, min(p.at+walls-1, len(steps)-1)
	for at > p.at && steps[at].walls >= far {
		at--
	}
	return at
}

// nearest returns how many walls from a node's the nearest is on which some ends are; its own
// counts as one comes to it all the way round.
func (o *outlook) nearest(n *node, asked ends) (walls int) {
	walls = o.m.walls
	for !asked.isEmpty() {
		var e int
		e, asked = asked.next()
		d := o.ends[e].wall[n.spot.Side] - n.spot.Wall
		if n.spot.Side == hanging.Left {
			d = -d
		}
		if d <= 0 {
			d += o.m.walls
		}
		walls = min(walls, d)
	}
	return walls
}

// walk goes from where a half begins to some ends, and returns what lies ahead of it on the
// way to each, what its first row comes to included.
func (o *outlook) walk(n *node, sums *row, asked ends) []tail {
	side, stop := n.spot.Side, o.stopAt(n)
	if o.walked[side] == nil {
		o.walked[side] = make([]tail, len(o.ends))
	}
	tails := o.walked[side]
	for at := stop.before(o.nearest(n, asked)); !asked.isEmpty(); at++ {
		here := o.step(stop.track, at)
		come := here.comes.and(asked)
		if come.isEmpty() {
			continue
		}
		h := &here.view.hop
		asked = asked.without(come)
		so := o.since(sums, &stop.track.steps[stop.at], here)
		for !come.isEmpty() {
			var e int
			e, come = come.next()
			t, end := &tails[e], &o.ends[e]
			switch {
			case h.edge.to == nil, here.passed.has(e) && end.place.kill.Kind != hanging.AtCorner:
				*t = o.lostSight(end, side)
			case here.passed.has(e):
				*t = o.passing(h, end, side)
			default:
				*t = o.landed(h, e)
			}
			t.after(&so, o)
		}
	}
	return tails
}
