package audit

import (
	"slices"

	"firstdrop/hanging"
)

// A sheet is what hangs in one: the parts of a drop that are folded round
// corners, not cut apart. Seen in the plane of a wall it is an upright stripe,
// or a leaning one where it has turned a corner out of plumb:
//
//	wall A      | wall B            The sheet's right edge as it would stand
//	            |                   on wall A if that went on, and its left
//	 ┌──────────|───────┐           edge as it would stand on wall B if that
//	 │  part 1  | part 2│           began earlier, are left and right. What
//	 │          |       │           the wall does not have the sheet does not
//	 └──────────|───────┘           cover.

// lay is a part of a drop as it lies on its wall.
type lay struct {
	drop, part int // indexes into Layout.Drops, Drop.Parts
	index      int // of the drop, from drop 0
	wall       int
	x, a       span // stretch of the wall, stretch of the width
	joined     bool
	skew       int64
	foot, head int64 // where the skew is meant: of the corner turned
	sheet      int   // its sheet's number
	left       int64 // where the sheet's left edge stands on this wall, at the foot
	right      int64
	trim       span // beyond these uprights the sheet is cut away: a kill seam on the wall
}

func (y *lay) at() Place { return Place{Wall: y.wall + 1, Drop: y.drop + 1, Part: y.part + 1} }

// edge returns a sheet's edge that stands at x, as a line; it must be skewed.
func (y *lay) edge(x int64) (slope, bool) {
	return through(x, y.foot, x+y.skew, y.head, 0)
}

// covers returns the heights at which the sheet covers the upright at half/2.
func (y *lay) covers(half int64) rise {
	if half < 2*y.trim.lo || half > 2*y.trim.hi {
		return rise{highest, lowest}
	}
	if l, ok := y.edge(y.left); y.skew != 0 && ok && y.foot != y.head {
		r, _ := y.edge(y.right)
		if y.skew > 0 {
			return rise{r.at(half), l.at(half)}
		}
		return rise{l.at(half), r.at(half)}
	}
	if 2*y.left <= half && half <= 2*y.right {
		return rise{lowest, highest}
	}
	return rise{highest, lowest}
}

// hung is a layout laid on its ground.
type hung struct {
	*book
	*ground
	l       *hanging.Layout
	width   int64
	lays    []lay   // along the run
	first   []int   // the first lay of each drop
	onWall  [][]int // the lays of each wall
	columns [][]column
	turns   []turning // of each wall; nil: all plumb
	anchor  int       // the lay of drop 0 that stands at the start; −1 when none does
}

func newHung(b *book, l *hanging.Layout) *hung {
	h := &hung{book: b, l: l, width: int64(l.Paper.Width), anchor: -1}
	if len(l.Choice.Set) == 0 {
		h.ground = newGround(l.Run)
	} else {
		h.turns, _ = turnings(l.Run, l.Choice.Set)
		h.ground = newGround(turned(l.Run, h.turns))
	}
	h.onWall = make([][]int, len(h.walls))
	for i := range l.Drops {
		d := &l.Drops[i]
		h.first = append(h.first, len(h.lays))
		for j := range d.Parts {
			p := &d.Parts[j]
			y := lay{
				drop: i, part: j, index: d.Index, wall: p.Wall, joined: p.Joined && j > 0, skew: int64(p.Skew),
				x: span{int64(p.X.Lo), int64(p.X.Hi)}, a: span{int64(p.Across.Lo), int64(p.Across.Hi)},
			}
			y.sheet = len(h.lays)
			if y.joined {
				y.sheet = h.lays[len(h.lays)-1].sheet
			}
			if h.anchor < 0 && d.Index == 0 && p.Wall == l.Choice.Start.Wall && p.X.Lo-p.Across.Lo == l.Choice.Start.X {
				h.anchor = len(h.lays)
			}
			h.onWall[p.Wall] = append(h.onWall[p.Wall], len(h.lays))
			h.lays = append(h.lays, y)
		}
	}
	h.stretch()
	h.columns = make([][]column, len(h.walls))
	for i := range h.walls {
		h.columns[i] = h.walls[i].columns(h.breaks(i))
	}
	return h
}

// stretch finds where each sheet's edges stand on each of its walls, and at
// which corner it took on its skew.
func (h *hung) stretch() {
	for i := 0; i < len(h.lays); {
		n := i + 1
		for n < len(h.lays) && h.lays[n].sheet == h.lays[i].sheet {
			n++
		}
		plumb := h.plumbLay(i, n)
		for k := i; k < n; k++ {
			y := &h.lays[k]
			y.left = y.x.lo - (y.a.lo - h.lays[i].a.lo)
			y.right = y.x.hi + (h.lays[n-1].a.hi - y.a.hi)
			turned := h.walls[y.wall].left
			if k < plumb {
				turned = h.walls[y.wall].right
			}
			y.foot, y.head = turned.foot, turned.head
			y.trim = span{-farthest, farthest}
		}
		i = n
	}
	h.trimEnds()
}

// trimEnds: where hanging ends, paper is trimmed along the line where it ends.
// A sheet that leans there has its edge where its full width ends, if that is
// before the line.
func (h *hung) trimEnds() {
	last := len(h.lays) - 1
	first, end := h.lays[0], h.lays[last]
	for k := range h.lays {
		y := &h.lays[k]
		if y.sheet == first.sheet && first.skew != 0 {
			y.left -= max(0, first.a.lo)
		}
		if y.sheet == end.sheet && end.skew != 0 {
			y.right += max(0, h.width-end.a.hi)
		}
	}
	kill := h.l.Choice.Kill
	if kill.Kind != hanging.OnWall {
		return
	}
	for k := 0; k <= last && h.lays[k].wall == kill.Wall; k++ {
		h.lays[k].trim.lo = int64(kill.X)
	}
	for k := last; k >= 0 && h.lays[k].wall == kill.Wall; k-- {
		h.lays[k].trim.hi = int64(kill.X)
	}
}

// plumbLay returns which of the lays from i to n, one sheet, is set plumb: the
// one nearest to the start, from which hanging comes.
func (h *hung) plumbLay(i, n int) int {
	switch {
	case h.anchor >= n:
		return n - 1
	case h.anchor > i:
		return h.anchor
	}
	return i
}

// breaks returns every x at which something changes on wall i.
func (h *hung) breaks(i int) []int64 {
	w := &h.walls[i]
	all := slices.Clone(w.breaks)
	lo, hi := all[0], all[len(all)-1]
	var leaning []slope
	for _, k := range h.onWall[i] {
		y := &h.lays[k]
		for _, x := range []int64{y.left, y.right, y.trim.lo, y.trim.hi} {
			if e, ok := y.edge(x); ok && y.foot != y.head {
				leaning = append(leaning, e)
				continue
			}
			if lo < x && x < hi {
				all = append(all, x)
			}
		}
	}
	for a := range leaning {
		for s := range w.slopes {
			e := &w.slopes[s]
			all = appendCrossing(all, e, &leaning[a], span{e.x1, e.x2})
		}
		for b := range a {
			all = appendCrossing(all, &leaning[b], &leaning[a], span{lo, hi})
		}
	}
	slices.Sort(all)
	return slices.Compact(all)
}
