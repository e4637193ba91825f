package plan

import (
	"slices"

	"firstdrop/hanging"
	"firstdrop/measure"
)

// What a drop covers changes only where one of its edges, or the axis of its motif, comes to
// an upright of the wall. All drops of a wall stand a width apart, so where one of them moves
// on without coming to any, whole widths aside, none changes, and a row of them is summed up
// but once:
//
//	   ┌──────┐              ┌──────┐
//	──┬┼─────┬┼──────┬──────┬┼─────┬┼──     the same row a little farther on: its drops
//	  ╎┼─────╎┼──────╎──────╎┼─────╎┼       weigh what they did before, but for the
//	──┴┼─────┴┼──────┴──────┴┼─────┴┼──     seams near edges
//	   │      │              │      │
//
// Left to be weighed are the seams near which anything is, and how far a motif stands off a
// line that it is to be centred on.

// alikeRows are the rows of drops of one wall.
type alikeRows struct {
	cuts  []measure.Length // where drops change, less whole widths, in order
	cells [][2][2][]like   // between two cuts and on each, by side, for even drops and odd ones; by place
}

// like is what the drops come to that stand alike, from one on to the last in a row.
type like struct {
	sum  sum
	run  int  // how many they are; 0: even the first is like no other
	told bool // somebody has looked
}

// newAlikeRows lists where the drops of a wall change.
func (v *halves) newAlikeRows(wall int) (rows alikeRows) {
	cut := func(x measure.Length) { rows.cuts = append(rows.cuts, x.Mod(v.width)) }
	for _, x := range append(v.h.Uprights(wall), 0, v.j.walls[wall].width) {
		cut(x)
		if m := v.j.paper.Motif; m != nil {
			cut(x - m.Axis)
			if v.turns {
				cut(x + m.Axis)
			}
		}
	}
	slices.Sort(rows.cuts)
	rows.cuts = slices.Compact(rows.cuts)
	rows.cells = make([][2][2][]like, 2*len(rows.cuts)+1)
	return rows
}

// noneAlike is what comes to nothing: where no whole drop stands on the wall.
var noneAlike like

// row sums up the drops from the whole one at a node on that stand alike, but for their
// seams and centring.
func (v *halves) row(n *node) *like {
	rows := &v.alike[n.spot.Wall]
	cell, on := slices.BinarySearch(rows.cuts, v.left(n.spot).Mod(v.width))
	if cell *= 2; on {
		cell++
	}
	return v.alikeAt(&rows.cells[cell], n.spot, n.odd)
}

// alikeAt looks at the drop in a row that begins at a spot, and at those after it.
func (v *halves) alikeAt(rows *[2][2][]like, spot hanging.Spot, odd bool) *like {
	x, width := v.left(spot), v.j.walls[spot.Wall].width
	if x < 0 || x+v.width > width {
		return &noneAlike
	}
	row := &rows[spot.Side][0]
	if odd {
		row = &rows[spot.Side][1]
	}
	if *row == nil {
		*row = make([]like, width/v.width+1)
	}
	a := &(*row)[x/v.width]
	if a.told {
		return a
	}
	a.told = true
	sum, ok := v.likeOthers(v.stripAt(spot, odd))
	if !ok {
		return a
	}
	spot.T += v.width
	next := v.alikeAt(rows, spot, !odd && v.turns)
	a.sum, a.run = sum, 1+next.run
	a.sum.add(&next.sum)
	return a
}

// betweenAlike weighs what is left in a row of so many drops from a node on: the seams between
// them, and how far a motif stands off the line of its wall.
func (v *halves) betweenAlike(n *node, run int) (total int64) {
	spot, odd := n.spot, n.odd
	for range run - 1 {
		spot.T, odd = spot.T+v.width, !odd && v.turns
		total += v.seamBefore(spot, odd)
	}
	line := v.j.walls[n.spot.Wall].centre
	if line == nil {
		return total
	}
	i := (*line - v.left(n.spot)).FloorTo(v.width) / v.width
	if n.spot.Side == hanging.Left {
		i = -i
	}
	if i >= 0 && i < measure.Length(run) {
		spot = n.spot
		spot.T += i * v.width
		s := v.stripAt(spot, v.oddAfter(n, int(i)) && v.turns)
		total += v.centring(&s)
	}
	return total
}

// seamBefore weighs the seam between two whole drops, of which the one that is hung later
// begins at a spot.
func (v *halves) seamBefore(spot hanging.Spot, odd bool) int64 {
	x := v.h.X(spot)
	if v.isClear(spot.Wall, x) {
		return 0
	}
	known := v.between.at(spot.Wall, x)
	if known == nil || *known == 0 {
		before := spot
		before.T -= v.width
		seam := v.weighSeam(v.stripAt(before, !odd && v.turns), v.stripAt(spot, odd), spot.Side)
		if known == nil {
			return seam
		}
		*known = seam + 1
	}
	return *known - 1
}

// seamTable holds what the seams between whole drops weigh that are not clear, plus one, by
// wall and place; 0: not known.
type seamTable struct {
	step  measure.Length
	walls [][]int64
}

// at returns the cell of a place on a wall; nil if it has none.
func (t *seamTable) at(wall int, x measure.Length) *int64 {
	if x%t.step != 0 {
		return nil
	}
	cells := t.walls[wall]
	if at := int(x / t.step); at < len(cells) {
		return &cells[at]
	}
	return nil
}
