package plan

import (
	"cmp"
	"slices"

	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
)

// On most of a wall nothing is near, no corner, no opening, no fitting, no line, and a seam
// between two drops there weighs nothing:
//
//	│       ┌─────┐                          │
//	├──╌╌───┤     ├───╌╌────────────────╌╌───┤
//	        │door │   │◄──── quiet ────►│
//	        └─────┘

// busyStretches lists where on a wall a seam may weigh anything, from left to right, apart
// from each other: near edges of openings, outside corners, the middle of a focal wall and
// seams of a lining, on fittings, and where none may stand.
func (v *halves) busyStretches(wall int) (busy []geom.Interval) {
	j, t := v.j, &v.j.taste
	w := &j.walls[wall]
	around := func(x, by measure.Length) { busy = append(busy, geom.Interval{Lo: x - by, Hi: x + by}) }
	for i := range w.edges {
		around(w.edges[i].x, max(t.SeamClearance, t.MinSliver, t.Overrun))
	}
	if w.left {
		around(0, t.SeamClearance)
	}
	if w.right {
		around(w.width, t.SeamClearance)
	}
	if w.focal {
		around(w.width/2, t.SeamClearance)
	}
	for _, x := range w.lining {
		around(x, liningClear)
	}
	for i := range j.run.Walls[wall].Fittings {
		f := &j.run.Walls[wall].Fittings[i]
		around(f.At.X, f.Size.X/2)
	}
	for _, s := range j.fixed.KeepOff {
		if s.Wall == wall {
			busy = append(busy, s.X)
		}
	}
	slices.SortFunc(busy, compareBegins)
	apart := busy[:0]
	for _, b := range busy {
		if n := len(apart); n > 0 && b.Lo <= apart[n-1].Hi {
			apart[n-1].Hi = max(apart[n-1].Hi, b.Hi)
		} else {
			apart = append(apart, b)
		}
	}
	return apart
}

// compareBegins puts what begins farther left first.
func compareBegins(a, b geom.Interval) int { return cmp.Compare(a.Lo, b.Lo) }

// isQuiet reports whether the seam between two parts, that on the left first, weighs
// nothing: both hang plumb on one wall, and nothing is near.
func (v *halves) isQuiet(left, right *hanging.Part) bool {
	x, wall := right.X.Lo, right.Wall
	return left.Wall == wall && left.X.Hi == x && left.Skew == 0 && right.Skew == 0 && v.isClear(wall, x)
}

// isClear reports whether nothing is near a place on a wall that asks anything of a seam.
func (v *halves) isClear(wall int, x measure.Length) bool {
	if x <= 0 || x >= v.j.walls[wall].width {
		return false
	}
	for i := range v.busy[wall] {
		if b := &v.busy[wall][i]; x <= b.Hi {
			return x < b.Lo
		}
	}
	return true
}

// seamOn returns what any seam weighs at the least that stands at a place on a wall between
// its corners, whatever drops it stands between.
func (v *halves) seamOn(wall int, x measure.Length) int64 {
	width := v.j.walls[wall].width
	if x <= 0 || x >= width || v.isClear(wall, x) {
		return 0
	}
	v.before = [2]hanging.Part{{Wall: -1}, {Wall: wall, X: geom.Interval{Hi: x}, Across: geom.Interval{Hi: x}}}
	v.beside = [2]hanging.Part{{Wall: wall, X: geom.Interval{Lo: x, Hi: width}, Across: geom.Interval{Hi: width - x}}, {Wall: -1}}
	v.h.Beside(&v.l, hanging.Strip{Index: v.middle, Parts: v.before[:]}, hanging.Strip{Index: v.middle + 1, Parts: v.beside[:]})
	return v.j.seam(&v.l, &v.l.Seams[0], nil)
}
