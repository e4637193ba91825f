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
func (o *outlook) toldEnds() (told []bool) {
	run, j := o.m.s.run.Run, o.v.j
	told = make([]bool, len(run.Walls))
	for i := range run.Walls {
		left, right := run.LeanAt(i)
		told[i] = j.walls[i].focal && left == 0 && right == 0 && run.Walls[i].Width > o.v.width &&
			!j.isOutside(i-1) && !j.isOutside(i)
	}
	return told
}

// unequal returns what the end strips of a wall weigh at the least: drops begin so far from
// one corner, and the one that meets the other begins so far from that.
func (o *outlook) unequal(wall int, near, far measure.Length) int64 {
	if !o.told[wall] {
		return 0
	}
	a, ok := o.endStrip(near)
	b, also := o.endStrip(far)
	if !ok || !also {
		return 0
	}
	return o.v.j.unequal(wall, a, b)
}

// endStrip returns how wide a strip in a corner is beyond a seam: a whole drop, if the seam
// is no farther than where that begins; false if it is not known.
func (o *outlook) endStrip(seam measure.Length) (strip measure.Length, ok bool) {
	switch {
	case seam > o.m.s.task.Rules.WrapLimit && seam <= o.v.width:
		return seam, true
	case seam <= 0 && -seam < o.v.width/2:
		return seam + o.v.width, true
	}
	return 0, false
}

// unequalOn returns the same of the wall on which drops go on from a node.
func (o *outlook) unequalOn(n *node) int64 {
	if !o.told[n.spot.Wall] {
		return 0
	}
	return o.unequal(n.spot.Wall, n.spot.T, o.m.s.run.Run.Walls[n.spot.Wall].Width-n.corner.spot.T)
}

// unequalAt returns the same of the wall of a start, from its halves.
func (o *outlook) unequalAt(right, left *node) int64 {
	wall := right.spot.Wall
	if !o.told[wall] {
		return 0
	}
	width := o.m.s.run.Run.Walls[wall].Width
	return o.unequal(wall, width-left.corner.spot.T, width-right.corner.spot.T)
}
