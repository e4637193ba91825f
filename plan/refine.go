package plan

import (
	"slices"

	"firstdrop/hanging"
	"firstdrop/room"
)

// anchored counts the drops of a layout from the one that a hanger would hang
// first: on stairs the longest, on a focal or centred wall the drop nearest to the
// line, otherwise the leftmost of those beside the start, so that the first plumb
// line stands one width from a corner. Where everything stands does not change by it.
func (s *search) anchored(best candidate) candidate {
	if s.run.Fixed.Start != nil || s.run.Fixed.Design != nil {
		return best
	}
	start := best.choice.Start
	w := s.task.Papers[s.run.Paper].Width
	wall := &s.run.Run.Walls[start.Wall]
	move := -(start.X + w - 1) / w // to the leftmost drop on the wall
	if start.X <= 0 {
		move = 0
	}
	switch {
	case s.run.Fixed.Centre != nil:
		return best
	case slices.ContainsFunc(s.run.Run.Walls, func(w room.Wall) bool { return w.IsStair() }):
		return s.fromLongest(best)
	case wall.Sight == room.Focal:
		move = (wall.Width/2 - w/2 - start.X + w/2).FloorTo(w) / w
	}
	for ; move != 0; move -= move / move.Abs() {
		c := best
		c.choice.Start.X = start.X + move*w
		if s.layOut(&c); c.layout != nil && sameGeometry(c.layout, best.layout) {
			c.score = best.score
			return c
		}
	}
	return best
}

// sameGeometry reports whether two layouts have every part at the same place, and the
// same drops upside down.
func sameGeometry(a, b *hanging.Layout) bool {
	same := func(x, y hanging.Drop) bool { return x.Reversed == y.Reversed }
	return sameParts(a, b) && slices.EqualFunc(a.Drops, b.Drops, same)
}

// sameParts reports whether two layouts have every part at the same place.
func sameParts(a, b *hanging.Layout) bool {
	same := func(x, y hanging.Drop) bool { return slices.Equal(x.Parts, y.Parts) }
	return slices.EqualFunc(a.Drops, b.Drops, same)
}
