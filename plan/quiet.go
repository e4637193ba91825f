package plan

import (
	"cmp"
	"slices"

	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
)

// On most of a wall nothing is near: no corner, no opening, no fitting, no line to be
// centred on. Drops there weigh the same wherever they stand, and the seams between them
// nothing, so a row of them need not be walked drop by drop:
//
//	│       ┌─────┐                          │
//	├──╌╌───┤     ├───╌╌────────────────╌╌───┤
//	        │door │   │◄──── quiet ────►│
//	        └─────┘

// quiet is a stretch of wall, and what each whole drop in it comes to, even ones and odd
// ones.
type quiet struct {
	x     geom.Interval
	sums  [2]sum
	known [2]bool
}

// quietStretches lists where on a wall nothing is near, from left to right.
func (v *halves) quietStretches(wall int) (qs []quiet) {
	w := &v.j.walls[wall]
	busy := slices.Clone(v.busy[wall])
	for i := range w.holes {
		busy = append(busy, geom.Interval{Lo: w.holes[i].x.Lo, Hi: w.holes[i].x.Lo}, geom.Interval{Lo: w.holes[i].x.Hi, Hi: w.holes[i].x.Hi})
	}
	if w.centre != nil {
		busy = append(busy, geom.Interval{Lo: *w.centre, Hi: *w.centre})
	}
	slices.SortFunc(busy, compareBegins)
	for _, x := range v.h.LevelStretches(wall) {
		x = x.Intersection(geom.Interval{Hi: w.width})
		x = geom.Interval{Lo: x.Lo + 1, Hi: x.Hi - 1}
		for _, b := range busy {
			if b.Hi < x.Lo {
				continue
			}
			qs = appendQuiet(qs, geom.Interval{Lo: x.Lo, Hi: min(x.Hi, b.Lo-1)}, 2*v.width)
			x.Lo = b.Hi + 1
		}
		qs = appendQuiet(qs, x, 2*v.width)
	}
	return qs
}

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

// appendQuiet appends a stretch unless it is narrower than two drops.
func appendQuiet(qs []quiet, x geom.Interval, least measure.Length) []quiet {
	if x.Hi-x.Lo < least {
		return qs
	}
	return append(qs, quiet{x: x})
}

// quietFrom returns the stretch in which the whole drop that begins at a node stands, and
// how many stand there in a row from it on; 0 if it stands in none.
func (v *halves) quietFrom(n *node) (q *quiet, drops int) {
	qs := v.quiets[n.spot.Wall]
	if len(qs) == 0 {
		return nil, 0
	}
	x := v.left(n.spot)
	for i := range qs {
		if q = &qs[i]; q.x.Lo <= x && x+v.width <= q.x.Hi {
			room := q.x.Hi - x
			if n.spot.Side == hanging.Left {
				room = x + v.width - q.x.Lo
			}
			return q, int(room / v.width)
		}
	}
	return nil, 0
}

// followQuietly sums up the row of drops in a quiet stretch from a node on; false where
// there is none.
func (v *halves) followQuietly(n *node) bool {
	q, drops := v.quietFrom(n)
	if drops < 2 {
		return false
	}
	odd := n.odd
	n.sums = *v.quietly(q, n)
	for range drops - 1 {
		odd = !odd && v.turns
		n.sums.add(v.quietly(q, &node{spot: n.spot, odd: odd}))
	}
	n.run = drops
	return true
}

// quietly returns what a whole drop in a quiet stretch comes to that is even or odd as that
// at a node in it.
func (v *halves) quietly(q *quiet, n *node) *sum {
	at := 0
	if n.odd {
		at = 1
	}
	if !q.known[at] {
		q.sums[at], q.known[at] = v.weighStrip(v.strip(n)), true
	}
	return &q.sums[at]
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
