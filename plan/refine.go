package plan

import (
	"slices"

	"firstdrop/hanging"
	"firstdrop/room"
)

// renewed tries, in a run too long to try it everywhere, to begin a new drop
// instead of carrying the remainder on at inside corners beside which a part of
// the best layout is a sliver, and keeps what helps.
func (s *search) renewed(best candidate) candidate {
	for _, i := range s.renewable(best.layout) {
		if !mayRenew(s.run.Run, &best.choice, i) || slices.Contains(s.run.Fixed.Carry, i) {
			continue
		}
		c := best
		c.choice.NewDrop = append(slices.Clone(best.choice.NewDrop), i)
		s.tried++
		s.layOut(&c)
		if c.layout == nil || s.leastTotal(&c) >= best.score {
			continue
		}
		if total, err := s.total(&c); err == nil && total < best.score {
			c.score = total
			best = c
		}
	}
	return best
}

// mostRenewed is in how many corners of a long run a new drop is tried.
const mostRenewed = 16

// renewable lists the corners at which a new drop is worth trying.
func (s *search) renewable(l *hanging.Layout) (corners []int) {
	n := len(s.run.Run.Walls)
	for i := range l.Drops {
		parts := l.Drops[i].Parts
		for k := 1; k < len(parts) && len(corners) < mostRenewed; k++ {
			a, b := &parts[k-1], &parts[k]
			if a.Wall != b.Wall && !b.Joined && min(a.X.Length(), b.X.Length()) < s.task.Taste.MinSliver {
				corners = append(corners, (b.Wall-1+n)%n)
			}
		}
	}
	return corners
}

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
