package geom

import "firstdrop/measure"

// A polygon with holes becomes a row of upright trapezoids, the cells. An
// upright is drawn through every corner of the outline and of every hole;
// between two neighbouring uprights no edge begins or ends, so the paper there
// stands in plain stretches, one above the other:
//
//	      ______________________            ______________________
//	    /|                      |         /|    |    b    |       |
//	   / |     ._________.      |        / |    |_________|       |
//	  /  |     |         |      |   →   /  | c  |         |   f   |
//	 |         |  window |      |      | a |    |_________|       |
//	 |         |_________|      |      |   |    |    d    |       |
//	 |__________________________|      |___|____|_________|_______|
//
// The stretches are found from below: an edge of the outline switches "on the
// wall" on and off, an edge of hole h switches "in hole h", and paper is where
// one is on the wall and in no hole. Holes that stand on the floor, poke out of
// the wall or overlap each other need no case of their own.
//
// Where two edges cross between corners, as when a hole pokes through a slope,
// uprights stand at the whole nanometres just left and right of the crossing
// (at the crossing itself if it is whole). In the slab of 1 nm between the two
// the order changes, and a cell is what remains of it.
//
// Heights at an upright are rounded once, to the nearest nanometre, from the
// ends of the edge as given and never from a rounded height. So both
// neighbours of an upright see the same height, and corners keep theirs.

// Cell is an upright trapezoid: what a polygon has between two neighbouring
// uprights. Left and Right are its y-stretches at X.Lo and X.Hi (either may
// have length 0, not both); X is longer than 0.
type Cell struct{ X, Left, Right Interval }

// Y returns the stretch from the cell's lowest to its highest point.
func (c Cell) Y() Interval { return c.Left.Union(c.Right) }

// Contains reports whether p lies in the cell, its sides included.
func (c Cell) Contains(p Point) bool {
	if !c.X.Contains(p.X) {
		return false
	}
	foot := edge{left: Point{c.X.Lo, c.Left.Lo}, right: Point{c.X.Hi, c.Right.Lo}}
	head := edge{left: Point{c.X.Lo, c.Left.Hi}, right: Point{c.X.Hi, c.Right.Hi}}
	return foot.side(p) >= 0 && head.side(p) <= 0
}

// At returns the cell's y-stretch at x, rounded to whole nanometres; empty
// where the cell does not reach.
func (c Cell) At(x measure.Length) Interval {
	if !c.X.Contains(x) {
		return Interval{0, -1}
	}
	foot := edge{left: Point{c.X.Lo, c.Left.Lo}, right: Point{c.X.Hi, c.Right.Lo}}
	head := edge{left: Point{c.X.Lo, c.Left.Hi}, right: Point{c.X.Hi, c.Right.Hi}}
	return Interval{foot.height(x), head.height(x)}
}

// doubleArea returns twice the cell's area in square nanometres.
func (c Cell) doubleArea() wide {
	return product(c.X.Length(), c.Left.Length()).plus(product(c.X.Length(), c.Right.Length()))
}

// Cells cuts the part of the polygon with x in the given stretch into upright
// trapezoids, by X.Lo, then bottom to top. Together they cover it exactly once,
// to the nanometre. A stretch that is empty or a single position has none.
func (p Polygon) Cells(x Interval) []Cell { return p.AppendCells(nil, x) }

// AppendCells appends the cells of [Polygon.Cells] to dst. Whoever asks again
// and again asks the polygon's [Sweep] instead.
func (p Polygon) AppendCells(dst []Cell, x Interval) []Cell { return p.Sweep().AppendCells(dst, x) }

// Parcels groups cells that touch along an upright by more than a point: the
// connected parts. parcel[i] is the parcel number of cell i; the n parcels are
// numbered from 0 by their first cell. The cells must stand in the order in
// which Cells returns them.
func Parcels(cells []Cell) (parcel []int, n int) {
	return AppendParcels(make([]int, 0, len(cells)), cells)
}

// AppendParcels appends the parcel numbers of [Parcels] to dst.
func AppendParcels(dst []int, cells []Cell) (parcels []int, n int) {
	parcel := dst[len(dst):]
	for i := range cells {
		parcel = append(parcel, i)
	}
	before, first := 0, 0 // the previous slab is cells[before:first]
	for i, c := range cells {
		if c.X.Lo != cells[first].X.Lo {
			before, first = first, i
		}
		for j := before; j < first; j++ {
			if cells[j].X.Hi == c.X.Lo && cells[j].Right.Overlaps(c.Left) {
				join(parcel, i, j)
			}
		}
	}
	n = number(parcel)
	return append(dst, parcel...), n
}

// join makes the parcels of cells i and j one. A cell points to another cell of
// its parcel that stands earlier; the first cell of a parcel points to itself.
func join(parcel []int, i, j int) {
	for parcel[i] != i {
		i = parcel[i]
	}
	for parcel[j] != j {
		j = parcel[j]
	}
	parcel[max(i, j)] = min(i, j)
}

// number turns pointers to earlier cells into parcel numbers, and counts them.
func number(parcel []int) (n int) {
	for i, earlier := range parcel {
		parcel[i] = parcel[earlier]
	}
	for i, first := range parcel {
		if first == i {
			parcel[i] = n
			n++
		} else {
			parcel[i] = parcel[first]
		}
	}
	return n
}
