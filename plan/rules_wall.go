package plan

import (
	"firstdrop/finding"
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/room"
)

// UnequalEnds is the finding that the end strips of a focal wall differ in width.
const UnequalEnds finding.Code = "unequal_ends"

// ends weighs the end strips of all focal walls.
func (j *judge) ends(l *hanging.Layout) (total int64) {
	if !j.focal {
		return 0
	}
	for i := range j.walls {
		if j.walls[i].focal {
			left, right := j.endStrips(l, i)
			total += j.unequal(i, left, right)
		}
	}
	return total
}

// endStrips returns how wide the strips at the left and right end of a wall are,
// as far as they are on it.
func (j *judge) endStrips(l *hanging.Layout, wall int) (left, right measure.Length) {
	width := j.walls[wall].width
	e := endStrips{first: width}
	for i := range l.Drops {
		parts := l.Drops[i].Parts
		for k := range parts {
			if parts[k].Wall == wall {
				e.see(parts, k, width, l.Rules.WrapLimit)
			}
		}
	}
	return e.left, e.right
}

// endStrips are the strips at the ends of a wall, as far as one has looked.
type endStrips struct {
	first, last measure.Length // where the first begins and the last ends
	left, right measure.Length // how wide they are
}

// see looks whether a part on a wall of that width is at one of its ends.
func (e *endStrips) see(parts []hanging.Part, k int, width, wrapLimit measure.Length) {
	seen := parts[k].X.Intersection(geom.Interval{Hi: width})
	if seen.Length() <= 0 || turnedOnly(parts, k, seen, wrapLimit) {
		return
	}
	if seen.Lo <= e.first {
		e.first, e.left = seen.Lo, seen.Length()
	}
	if seen.Hi >= e.last {
		e.last, e.right = seen.Hi, seen.Length()
	}
}

// turnedOnly reports whether what is seen of a part is no strip, but the few
// millimetres by which a drop of the next wall has turned the corner.
func turnedOnly(parts []hanging.Part, k int, seen geom.Interval, wrapLimit measure.Length) bool {
	joined := parts[k].Joined || k+1 < len(parts) && parts[k+1].Joined
	return joined && seen.Length() <= wrapLimit
}

// unequal weighs the difference between the end strips of a focal wall.
func (j *judge) unequal(wall int, left, right measure.Length) int64 {
	d := (left - right).Abs()
	if d < measure.Millimetre {
		return 0
	}
	g := share(j.taste.Weights.UnequalEnds, d, j.paper.Width)
	if j.out != nil {
		j.raise(UnequalEnds, severity(g), g, finding.Place{Wall: j.run.Walls[wall].Name}, size("left", left), size("right", right))
	}
	return g
}

// ceiling is the upper edge of a wall where it is one straight line.
type ceiling struct {
	straight    bool
	left, right measure.Length // its height at the wall's ends
	width       measure.Length
	height      measure.Length // of the wall, from its lowest to its highest point
}

// ceilingOf returns the upper edge of a wall with four corners.
func ceilingOf(w *room.Wall) (c ceiling) {
	_, y := w.Outline.Bounds()
	c.width, c.height = w.Width, y.Length()
	c.left, c.right, c.straight = w.Ceiling()
	return c
}

// isUnlevel reports whether the edge is meant to be level and is not.
func (c *ceiling) isUnlevel() bool {
	d := (c.right - c.left).Abs()
	return c.straight && d > 0 && d*room.Steepest <= c.width
}

// at returns the edge's height at x.
func (c *ceiling) at(x measure.Length) measure.Length {
	return c.left + (c.right-c.left).Scaled(int64(x), int64(c.width))
}

// fall returns by how much the edge of a ceiling out of level rises or falls over
// a stretch of the wall; 0 for all others.
func (c *ceiling) fall(x geom.Interval) measure.Length {
	if !c.isUnlevel() {
		return 0
	}
	x = x.Intersection(geom.Interval{Lo: 0, Hi: c.width})
	return (c.at(x.Hi) - c.at(x.Lo)).Abs()
}

// raiseLayout notes all that a finished layout wants people to know.
func (j *judge) raiseLayout(l *hanging.Layout, kill *killPlace) {
	j.score(l, kill)
	j.pieces(l)
	j.standing()
	j.raiseWet(l)
}
