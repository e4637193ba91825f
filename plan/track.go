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
//	   ►──┬───────┬──╯                            another, up to where it joins the first

// track is the way on from a corner to the corners behind it, up to one that is on another track,
// or on this one already.
type track struct {
	corners []*view
	joins   *view
}

// stop is where on a track a corner is, and what comes of the drop that meets it there.
type stop struct {
	track    *track
	at       int
	before   row    // of the drops from the first corner of the track to this one
	walls    int    // how many walls it is from the first corner
	goes     int    // how many it is to the next one; 0: the way ends
	comes    ends   // to which the drop comes: all, if it goes nowhere
	arrivals []tail // what lies ahead on the way to each of these, in their order; nil: nobody has asked
}

// follow returns the corner after one on its track; nil where the way ends.
func (o *outlook) follow(v *view) *view {
	t := v.track
	switch at := v.at + 1; {
	case at < len(t.corners):
		return t.corners[at]
	case t.joins != nil || v.goes == 0:
		return t.joins
	}
	next := o.view(v.edge.to)
	if next.track != nil {
		t.joins = next
		return next
	}
	before := v.before
	before.append(&v.hop.on, o)
	o.put(next, t, before, v.walls+v.goes)
	return next
}

// put puts a corner at the end of a track, after a row, so many walls from the first.
func (o *outlook) put(v *view, t *track, before row, walls int) {
	v.stop = stop{track: t, at: len(t.corners), before: before, walls: walls, comes: o.all}
	if to := v.edge.to; to != nil {
		v.goes = v.edge.corners
		v.comes = o.passed(v.corner, v.edge).or(o.on[v.corner.spot.Side][to.spot.Wall])
	}
	t.corners = append(t.corners, v)
}

// journey is a half on its way from corner to corner.
type journey struct {
	from, here *view // on one track
	before     row   // what it comes to before from
}

// so returns what it comes to before the corner at which it is.
func (j *journey) so(o *outlook) row {
	from := &j.from.stop
	a, drops := j.here.before.ahead, j.here.before.drops-from.before.drops
	a.sub(&from.before.ahead)
	if o.turn.lanes > 0 {
		a.motifs = o.turn.by(a.motifs, int32(o.turn.lanes)-from.before.drops%int32(o.turn.lanes))
	}
	r := j.before
	r.append(&row{a, drops}, o)
	return r
}

// on goes on to the next corner.
func (j *journey) on(o *outlook) {
	next := o.follow(j.here)
	if next.track != j.here.track || next.at <= j.here.at {
		so := j.so(o)
		so.append(&j.here.hop.on, o)
		j.from, j.before = next, so
	}
	j.here = next
}

// skip goes on to a corner before which drops come to no wall that is so many walls from here.
func (j *journey) skip(o *outlook, walls int) {
	for walls > 1 {
		here := &j.here.stop
		corners := here.track.corners
		far, at := here.walls+walls, min(here.at+walls-1, len(corners)-1)
		for at > here.at && corners[at].walls >= far {
			at--
		}
		last := corners[at]
		walls -= last.walls - here.walls
		if j.here = last; last.goes == 0 || last.goes >= walls {
			return
		}
		walls -= last.goes
		j.on(o)
	}
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
// way to each, what its first row comes to included; of new drops nothing is told.
func (o *outlook) walk(n *node, sums *row, asked ends) []tail {
	side, from := n.spot.Side, o.view(n)
	if o.walked[side] == nil {
		o.walked[side] = make([]tail, len(o.ends))
	}
	if from.track == nil {
		o.put(from, &track{}, row{}, 0)
	}
	tails, j := o.walked[side], journey{from, from, *sums}
	for j.skip(o, o.nearest(n, asked)); ; j.on(o) {
		comes := j.here.comes
		if come := comes.and(asked); !come.isEmpty() {
			o.comeTo(&j, come, tails)
		}
		if asked = asked.without(comes); asked.isEmpty() {
			return tails
		}
	}
}

// comeTo fills in what lies ahead of a half on its way to ends to which the drop comes that
// meets the corner at which it is.
func (o *outlook) comeTo(j *journey, come ends, tails []tail) {
	so, arrivals, comes := j.so(o), o.arrive(j.here), j.here.comes
	for k := range arrivals {
		var e int
		if e, comes = comes.next(); come.has(e) {
			tails[e] = arrivals[k]
			tails[e].carried.after(&so, o)
		}
	}
}

// arrive returns what lies ahead of a corner on the way to each of the ends to which the drop
// that meets it comes, in their order.
func (o *outlook) arrive(v *view) []tail {
	if v.arrivals != nil {
		return v.arrivals
	}
	comes, passed, side := v.comes, o.passed(v.corner, v.edge), v.corner.spot.Side
	v.arrivals = o.someTails(comes.count())
	for k := range v.arrivals {
		var e int
		e, comes = comes.next()
		switch end := &o.ends[e]; {
		case v.edge.to == nil, passed.has(e) && end.place.kill.Kind != hanging.AtCorner:
			v.arrivals[k] = o.lostSight(end, side)
		case passed.has(e):
			v.arrivals[k] = o.passing(&v.hop, end, side)
		default:
			v.arrivals[k] = o.landed(&v.hop, e)
		}
	}
	return v.arrivals
}
