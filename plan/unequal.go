package plan

import (
	"firstdrop/measure"
)

// The end strips of a focal wall follow from where drops come to it and where one meets
// the corner at its end, if neither a start nor a kill seam is between:
//
//	│ near │       │       │       │ far│      what the strips differ by
//	│ strip│ whole │ whole │ whole │    │
//	corner ►                       ►    corner
//
// Strips so narrow that they may be turned round the corner tell nothing.

// toldEnds tells of which walls the end strips are weighed, and follow from the drops:
// focal ones wider than the paper, in inside corners that are plumb.
func (m *combiner) toldEnds() (told []bool) {
	run, j := m.s.run.Run, m.v.j
	told = make([]bool, len(run.Walls))
	for i := range run.Walls {
		left, right := run.LeanAt(i)
		told[i] = j.walls[i].focal && left == 0 && right == 0 && run.Walls[i].Width > m.v.width &&
			!j.isOutside(i-1) && !j.isOutside(i)
	}
	return told
}

// unequal returns what the end strips of a wall weigh at the least: drops begin so far from
// one corner, and the one that meets the other begins so far from that.
func (m *combiner) unequal(wall int, near, far measure.Length) int64 {
	if !m.told[wall] {
		return 0
	}
	a, ok := m.endStrip(near)
	b, also := m.endStrip(far)
	if !ok || !also {
		return 0
	}
	return m.v.j.unequal(wall, a, b)
}

// endStrip returns how wide a strip in a corner is beyond a seam: a whole drop, if the seam
// is no farther than where that begins; false if it is not known.
func (m *combiner) endStrip(seam measure.Length) (strip measure.Length, ok bool) {
	switch {
	case seam > m.s.task.Rules.WrapLimit && seam <= m.v.width:
		return seam, true
	case seam <= 0 && -seam < m.v.width/2:
		return seam + m.v.width, true
	}
	return 0, false
}

// unequalOn returns the same of the wall on which drops go on from a node.
func (m *combiner) unequalOn(n *node) int64 {
	if !m.told[n.spot.Wall] {
		return 0
	}
	return m.unequal(n.spot.Wall, n.spot.T, m.s.run.Run.Walls[n.spot.Wall].Width-n.corner.spot.T)
}

// unequalAt returns the same of the wall of a start, from its halves.
func (m *combiner) unequalAt(right, left *node) int64 {
	wall := right.spot.Wall
	if !m.told[wall] {
		return 0
	}
	width := m.s.run.Run.Walls[wall].Width
	return m.unequal(wall, width-left.corner.spot.T, width-right.corner.spot.T)
}

// crossed returns the same of the wall on which a half comes to a corner, if it came to the
// wall round one.
func (m *combiner) crossed(k *link) int64 {
	if k.in == nil || k.inBefore.edge == nil || k.inBefore.edge.corners != 1 || !m.told[k.in.spot.Wall] {
		return 0
	}
	return m.unequal(k.in.spot.Wall, k.in.spot.T, m.s.run.Run.Walls[k.in.spot.Wall].Width-k.at.spot.T)
}

// addCrossed adds to the links of a half what is told of the walls behind them.
func (m *combiner) addCrossed(links []link) {
	behind := int64(0)
	for i := range links {
		k := &links[i]
		k.sum.score += behind
		k.inSum.score += behind
		behind += m.crossed(k)
	}
}
