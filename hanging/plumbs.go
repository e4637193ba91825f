package hanging

// addPlumbs lists the plumb lines in hanging order: one for drop 0, one for
// every part that is cut loose, one for the first drop after every corner and
// after a stretch without paper. A drop that needs no paper has none. A sheet is
// set by its far edge in the direction of hanging where that lies on the wall,
// as the first plumb line of a room stands one width from its corner; otherwise
// by its near edge.
func (l *Layout) addPlumbs(ahead, back []step) {
	l.plumbWay(ahead, Right)
	l.plumbWay(back, Left)
}

// plumbWay adds the lines of one way from the start.
func (l *Layout) plumbWay(steps []step, far Side) {
	before := 0
	for _, s := range steps {
		index, p := s.drop, Part{Wall: s.wall, X: s.t}
		if far == Left {
			index, p = -s.drop, l.faced(s)
		}
		// The drop before, seen from the start, is a guide only where it hangs.
		alone := index != before && !l.hangs(before)
		before = index
		if (s.plumb || alone) && l.hangs(index) {
			l.plumb(index, p, far)
		}
	}
}

// hangs reports whether the drop with that index needs paper.
func (l *Layout) hangs(index int) bool { return l.Drops[index-l.Drops[0].Index].Number > 0 }

// plumb adds the line for the part of the drop with that index that p is, or
// is the first half of.
func (l *Layout) plumb(index int, p Part, far Side) {
	drop := index - l.Drops[0].Index
	for i, q := range l.Drops[drop].Parts {
		if q.Wall != p.Wall || q.X.Intersection(p.X) != p.X {
			continue
		}
		width := l.Hung().Walls[q.Wall].Width
		b := Plumb{Wall: q.Wall, X: q.X.Hi, Drop: drop, Part: i, Edge: far, From: far.Opposite()}
		if far == Left {
			b.X = q.X.Lo
		}
		if b.X <= 0 || b.X >= width {
			b.X, b.Edge = q.X.Lo+q.X.Hi-b.X, far.Opposite()
		}
		l.Plumbs = append(l.Plumbs, b)
		return
	}
}
