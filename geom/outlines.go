package geom

import (
	"cmp"
	"maps"
	"slices"

	"firstdrop/measure"
)

// Cells are put together again by what bounds them. Each cell is walked round
// with its inside on the left; where two cells touch along an upright, one walks
// up and the other down, and there the two are struck out:
//
//	 ┌──────┬───┐        ┌──────────┐
//	 │      │   │        │          │
//	 │      └───┤   →    │      ┌───┘
//	 │      │           │      │
//	 └──────┘            └──────┘
//
// What is left goes round the cells, and is followed from corner to corner until
// every way has come back to where it began.

// Outlines returns the rings that bound cells which do not overlap: counter-
// clockwise round what they cover, clockwise round the holes in it. Filled by the
// even-odd rule they give what the cells cover. Corners on a straight line are
// left out. A ring may touch itself or another in a point.
func Outlines(cells []Cell) []Ring {
	w := ways{from: map[Point][]Point{}}
	uprights := map[measure.Length][]rung{}
	for _, c := range cells {
		w.add(Point{c.X.Lo, c.Left.Lo}, Point{c.X.Hi, c.Right.Lo})
		w.add(Point{c.X.Hi, c.Right.Hi}, Point{c.X.Lo, c.Left.Hi})
		uprights[c.X.Hi] = append(uprights[c.X.Hi], rung{c.Right.Lo, 1}, rung{c.Right.Hi, -1})
		uprights[c.X.Lo] = append(uprights[c.X.Lo], rung{c.Left.Lo, -1}, rung{c.Left.Hi, 1})
	}
	for _, x := range slices.Sorted(maps.Keys(uprights)) {
		w.upright(x, uprights[x])
	}
	var rings []Ring
	for _, start := range w.order {
		for len(w.from[start]) > 0 {
			if r := straightened(w.round(start)); len(r) > 2 {
				rings = append(rings, r)
			}
		}
	}
	return rings
}

// rung is a height on an upright from which on so many more cells walk up than
// down.
type rung struct {
	y  measure.Length
	up int
}

// ways are the sides that have not been walked yet, by where they begin.
type ways struct {
	from  map[Point][]Point
	order []Point // of the beginnings
}

func (w *ways) add(a, b Point) {
	if a == b {
		return
	}
	if _, known := w.from[a]; !known {
		w.order = append(w.order, a)
	}
	w.from[a] = append(w.from[a], b)
}

// upright adds what is left of the sides on one upright.
func (w *ways) upright(x measure.Length, rungs []rung) {
	slices.SortFunc(rungs, func(a, b rung) int { return cmp.Compare(a.y, b.y) })
	up := 0
	for i, t := range rungs {
		if i > 0 && rungs[i-1].y < t.y {
			a, b := Point{x, rungs[i-1].y}, Point{x, t.y}
			switch {
			case up > 0:
				w.add(a, b)
			case up < 0:
				w.add(b, a)
			}
		}
		up += t.up
	}
}

// round walks from a corner until it is back there.
func (w *ways) round(start Point) Ring {
	r := Ring{start}
	for at := start; ; {
		next := w.from[at]
		if len(next) == 0 {
			return nil // not closed: the cells overlap
		}
		w.from[at] = next[1:]
		if at = next[0]; at == start {
			return r
		}
		r = append(r, at)
	}
}

// straightened leaves out corners on a straight line.
func straightened(r Ring) Ring {
	var kept Ring
	for i, p := range r {
		before := r[(i+len(r)-1)%len(r)]
		if n := len(kept); n > 0 {
			before = kept[n-1]
		}
		if cross(before, p, r.after(i)) != (wide{}) {
			kept = append(kept, p)
		}
	}
	return kept
}
