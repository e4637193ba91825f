package hanging

import "slices"

// join puts the two ways together: the drops from the left end of the run to
// the right end, every part as one faces its wall.
func (l *Layout) join(ahead, back []step) {
	l.parts = slices.Grow(l.parts, len(ahead)+len(back)) // never moved while drops point into it
	for i := len(back) - 1; i >= 0; i-- {
		s := back[i]
		p := l.faced(s)
		// What is joined to the step before it in the walk is joined, as one
		// faces it, the other way round: its right neighbour is joined to it.
		if i < len(back)-1 {
			p.Joined = back[i+1].joined
		}
		l.add(-s.drop, p)
	}
	for i, s := range ahead {
		p := Part{Wall: s.wall, X: s.t, Across: s.a, Joined: s.joined, Skew: s.skew}
		if i == 0 && len(back) > 0 && back[0].drop == 0 {
			if back[0].wall == s.wall { // two halves of one part
				last := &l.Drops[len(l.Drops)-1]
				left := &last.Parts[len(last.Parts)-1]
				left.X.Hi, left.Across.Hi = p.X.Hi, p.Across.Hi
				continue
			}
			p.Joined = back[0].joined
		}
		l.add(s.drop, p)
	}
}

// faced turns a step of the walk to the left into a part as one faces it.
func (l *Layout) faced(s step) Part {
	width := l.Hung().Walls[s.wall].Width
	return Part{
		Wall:   s.wall,
		X:      s.t.Mirrored().Shifted(width),
		Across: s.a.Mirrored().Shifted(l.Paper.Width),
		Skew:   -s.skew,
	}
}

// add appends a part to the drop of that index, which is the last drop or a
// new one.
func (l *Layout) add(index int, p Part) {
	l.parts = append(l.parts, p)
	if n := len(l.Drops); n > 0 && l.Drops[n-1].Index == index {
		d := &l.Drops[n-1]
		d.Parts = l.parts[len(l.parts)-1-len(d.Parts):]
		return
	}
	l.Drops = append(l.Drops, Drop{
		Index:    index,
		Reversed: l.Paper.IsReversed(index),
		Parts:    l.parts[len(l.parts)-1:],
	})
}
