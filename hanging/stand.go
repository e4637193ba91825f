package hanging

import (
	"firstdrop/geom"
	"firstdrop/measure"
)

// A layout sees each wall turned until its sheets stand upright. To draw it, or to
// find a place of it on the wall, everything is turned back:
//
//	as its sheets see it       as it stands
//	┌──────────────┐          ┌────────┬─┬─_
//	│  │  │  │  │  │          │   /   /  /   │
//	│  │  │  │  │  │  ──►     │  /   /  /    │
//	└──/───────────/          └─/───/──/─────┘

// stand is how the sheets of a wall stand, as surveyed. The zero value is upright.
type stand struct {
	lean, rise, lift    measure.Length // as of the wall's [room.Turn]
	width, height, foot measure.Length // of the wall; foot is that of its left corner
}

// standOf returns how the sheets of a wall stand.
func (l *Layout) standOf(wall int) (s stand) {
	if l.Turns == nil {
		return s
	}
	w, t := &l.Run.Walls[wall], &l.Turns[wall]
	left, _ := l.Run.Reach(wall)
	_, y := w.Outline.Bounds()
	return stand{t.Lean, t.Rise, t.Lift, w.Width, y.Length(), left.Lo}
}

// OnWall returns where on the wall as surveyed a point of the layout lies, to within
// 2 nm: the inverse of what [room.Run.Turned] does. A wall without a turn keeps it.
func (l *Layout) OnWall(wall int, p geom.Point) geom.Point {
	s := l.standOf(wall)
	if s.lean == 0 && s.rise == 0 {
		return geom.Point{X: p.X, Y: p.Y + s.lift}
	}
	q := p
	for range 4 { // each round is exact to a thousandth of the one before: slopes are 1 in 50 at most
		q.X = p.X + s.off(q.Y)
		q.Y = p.Y + s.lift + s.rise.Scaled(int64(q.X), int64(s.width))
	}
	return q
}

// off returns how far the edge of a sheet stands off plumb at a height.
func (s *stand) off(y measure.Length) measure.Length {
	if s.lean == 0 {
		return 0
	}
	return s.lean.Scaled(int64(y-s.foot), int64(s.height))
}
