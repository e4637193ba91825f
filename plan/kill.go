package plan

import (
	"firstdrop/finding"
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/room"
)

// killPlace is a place where a closed run may be cut open, with what makes it
// good or bad.
type killPlace struct {
	kill    hanging.Kill
	opening int            // OnWall: the opening it stands over, or −1
	span    geom.Interval  // OnWall: where on the wall the seam may stand
	height  measure.Length // how much paper meets there
	sight   room.Sight
}

// place names it for a finding.
func (k *killPlace) place(j *judge) finding.Place {
	if k.kill.Kind == hanging.AtCorner {
		return finding.Place{Corner: j.cornerName(k.kill.Wall)}
	}
	w := &j.run.Walls[k.kill.Wall]
	x := k.kill.X
	p := finding.Place{Wall: w.Name, X: &x}
	if k.opening >= 0 {
		p.Opening = w.Openings[k.opening].Name
	}
	return p
}

// killPlaces lists where the run may be cut open: nowhere for an open run,
// otherwise at each inside corner, lapped from either side, and over each
// opening. A fixed kill leaves only its own place, and what is free there.
func killPlaces(run *room.Run, fixed *Kill) []killPlace {
	if !run.Closed {
		return []killPlace{{opening: -1}}
	}
	var places []killPlace
	for i := range run.Walls {
		for _, lap := range []hanging.Side{hanging.Right, hanging.Left} {
			k := hanging.Kill{Kind: hanging.AtCorner, Wall: i, Lap: lap}
			if fixed != nil && (fixed.Kind != hanging.AtCorner || fixed.Wall != i || !fixed.Free && fixed.Lap != lap) {
				continue
			}
			if run.Corners[i].Kind == room.Outside && fixed == nil {
				continue // paper never ends on an outside corner where avoidable
			}
			places = append(places, inCorner(run, k))
		}
		for o := range run.Walls[i].Openings {
			if fixed == nil {
				places = append(places, overOpening(run, i, o))
			}
		}
	}
	if fixed != nil && fixed.Kind == hanging.OnWall {
		place := fixedOnWall(run, fixed.Kill)
		if !fixed.Free {
			place.span = geom.Interval{Lo: fixed.X, Hi: fixed.X}
		}
		places = append(places, place)
	}
	return places
}

// inCorner returns the kill place of a seam in a corner.
func inCorner(run *room.Run, k hanging.Kill) killPlace {
	return killPlace{kill: k, opening: -1, height: cornerHeight(run, k.Wall), sight: cornerSight(run, k.Wall)}
}

// placeOf returns the kill place of any kill seam.
func placeOf(run *room.Run, k hanging.Kill) killPlace {
	switch k.Kind {
	case hanging.OnWall:
		return fixedOnWall(run, k)
	case hanging.AtCorner:
		return inCorner(run, k)
	}
	return killPlace{opening: -1}
}

// overOpening returns the kill place over (and under) opening o of wall i.
func overOpening(run *room.Run, i, o int) killPlace {
	w := &run.Walls[i]
	x, _ := w.Openings[o].Outline.Bounds()
	x = x.Intersection(geom.Interval{Lo: 1, Hi: w.Width - 1})
	middle := x.Lo + x.Length()/2
	sight := w.Sight
	if w.Openings[o].Sight != room.Plain {
		sight = w.Openings[o].Sight
	}
	return killPlace{
		kill:    hanging.Kill{Kind: hanging.OnWall, Wall: i, X: middle},
		opening: o, span: x, height: heightAt(run, i, middle), sight: sight,
	}
}

// fixedOnWall returns the kill place of a seam on a wall: over the opening that X
// lies in, or just there.
func fixedOnWall(run *room.Run, k hanging.Kill) killPlace {
	w := &run.Walls[k.Wall]
	for o := range w.Openings {
		if x, _ := w.Openings[o].Outline.Bounds(); x.Contains(k.X) {
			p := overOpening(run, k.Wall, o)
			p.kill.X = k.X
			return p
		}
	}
	return killPlace{
		kill: k, opening: -1, span: geom.Interval{Lo: k.X, Hi: k.X},
		height: heightAt(run, k.Wall, k.X), sight: w.Sight,
	}
}

// cornerHeight returns how much paper meets in the corner right of wall i: the
// lesser of what the two walls have there.
func cornerHeight(run *room.Run, i int) measure.Length {
	next := (i + 1) % len(run.Walls)
	return min(heightAt(run, i, run.Walls[i].Width-1), heightAt(run, next, 1))
}

// cornerSight returns how visible the corner right of wall i is: as stated; a
// corner between two focal walls is focal.
func cornerSight(run *room.Run, i int) room.Sight {
	if s := run.Corners[i].Sight; s != room.Plain {
		return s
	}
	a, b := run.Walls[i].Sight, run.Walls[(i+1)%len(run.Walls)].Sight
	switch {
	case a == room.Focal || b == room.Focal:
		return room.Focal
	case a == room.Hidden && b == room.Hidden:
		return room.Hidden
	}
	return room.Plain
}

// heightAt returns how much of wall i is papered along the upright at x, less
// openings, as if its corners were plumb.
func heightAt(run *room.Run, i int, x measure.Length) measure.Length {
	w := &run.Walls[i]
	p := geom.Polygon{Outline: w.Outline}
	for o := range w.Openings {
		p.Holes = append(p.Holes, w.Openings[o].Outline)
	}
	var sum measure.Length
	for _, c := range p.Cells(geom.Interval{Lo: x, Hi: x + 1}) {
		sum += c.Left.Length()
	}
	return sum
}
