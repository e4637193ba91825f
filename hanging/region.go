package hanging

import (
	"firstdrop/geom"
	"firstdrop/measure"
)

// What a part has to cover is the stripe of its sheet on the wall. A sheet that
// is folded round a corner covers its wall right up to the corner, however that
// leans. A sheet that leans itself covers a leaning stripe; the wall is then
// sheared until the stripe stands upright, and x counts across the sheet:
//
//	  wall          sheared by the skew
//	 ┌─────┐          ┌─────┐
//	 │/  / │         /│  │ /
//	 │/ /  │   ──►  / │  │/
//	 /_/___│       /__│__/
//
// Each corner of the wall moves by a whole number of nanometres.

// beyond is farther than any wall reaches.
const beyond = 2 * measure.MaxLength

// cover returns the wall's face as the part's sheet sees it, the stretch of it
// that the sheet covers, and where the sheet begins and ends on it at the
// nearest, for telling whether a cell reaches round the corner.
func (h *Hanger) cover(l *Layout, drop, part int) (face *geom.Sweep, x, ends geom.Interval) {
	d := &l.Drops[drop]
	p := &d.Parts[part]
	w := &h.walls[p.Wall]
	x = p.X
	ends = geom.Interval{Lo: max(x.Lo, 0, w.leanLeft-p.Skew), Hi: min(x.Hi, w.width, w.width+w.leanRight-p.Skew)}
	if p.Joined {
		x.Lo = -beyond
	}
	if part+1 < len(d.Parts) && d.Parts[part+1].Joined {
		x.Hi = beyond
	}
	if p.Skew == 0 {
		return w.face, x, ends
	}
	// Where hanging ends, a leaning sheet is trimmed along the line there, not
	// along its own edge.
	if drop == 0 && part == 0 && !l.inner[Left] {
		x.Lo = min(x.Lo, p.X.Lo-p.Across.Lo)
	}
	if drop == len(l.Drops)-1 && part == len(d.Parts)-1 && !l.inner[Right] {
		x.Hi = max(x.Hi, p.X.Hi+h.paper.Width-p.Across.Hi)
	}
	return h.sheared(l, drop, part), x, ends
}

// sheared returns the face of a part's wall, sheared by the part's skew over
// the height of the corner that its sheet has turned.
func (h *Hanger) sheared(l *Layout, drop, part int) *geom.Sweep {
	p := &l.Drops[drop].Parts[part]
	reach := h.walls[p.Wall].reachLeft
	if l.isBeforeStart(drop, part) {
		reach = h.walls[p.Wall].reachRight
	}
	face := h.run.Face(p.Wall)
	h.trim(&face, l, drop, part)
	if reach.Length() <= 0 {
		return face.Sweep()
	}
	shear := func(ring geom.Ring) geom.Ring {
		moved := make(geom.Ring, len(ring))
		for i, q := range ring {
			q.X -= (q.Y - reach.Lo).Scaled(int64(p.Skew), int64(reach.Length()))
			moved[i] = q
		}
		return moved
	}
	upright := geom.Polygon{Outline: shear(face.Outline)}
	for _, hole := range face.Holes {
		upright.Holes = append(upright.Holes, shear(hole))
	}
	return upright.Sweep()
}

// trim takes off the face what lies beyond a kill seam on it.
func (h *Hanger) trim(face *geom.Polygon, l *Layout, drop, part int) {
	k := l.Choice.Kill
	wall := l.Drops[drop].Parts[part].Wall
	if k.Kind != OnWall || k.Wall != wall {
		return
	}
	x, y := face.Outline.Bounds()
	off := geom.Interval{Lo: k.X, Hi: x.Hi + 1}
	if l.isBeforeStart(drop, part) {
		off = geom.Interval{Lo: x.Lo - 1, Hi: k.X}
	}
	face.Holes = append(face.Holes, geom.Ring{
		{X: off.Lo, Y: y.Lo - 1}, {X: off.Hi, Y: y.Lo - 1}, {X: off.Hi, Y: y.Hi + 1}, {X: off.Lo, Y: y.Hi + 1},
	})
}

// isBeforeStart reports whether a part lies to the left of where hanging
// starts, so that its sheet came to it from the right.
func (l *Layout) isBeforeStart(drop, part int) bool {
	d := &l.Drops[drop]
	if d.Index != 0 {
		return d.Index < 0
	}
	for k := part; k >= 0; k-- {
		if q := &d.Parts[k]; q.Wall == l.Choice.Start.Wall && q.X.Lo-q.Across.Lo == l.Choice.Start.X {
			return false
		}
	}
	return true
}
