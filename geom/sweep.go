package geom

import (
	"cmp"
	"slices"

	"firstdrop/measure"
)

// Sweep is a polygon prepared for cutting it into cells again and again, for
// one stretch after another. It keeps nothing of the polygon it was made from,
// never changes, and may be used by several goroutines. The zero value has no
// cells.
type Sweep struct {
	slabs []slab
	bands []band // those of all slabs, in the order of their cells
}

// slab is what stands between two neighbouring uprights: bands[from:to].
type slab struct {
	x        Interval
	from, to int
}

// band is one stretch of paper in a slab, between two edges.
type band struct {
	foot, head edge
	cell       Cell // over the whole slab
}

// Sweep prepares the polygon.
func (p Polygon) Sweep() *Sweep {
	edges := p.edges()
	uprights := p.uprights(edges)
	s := &Sweep{}
	var standing []edge
	for i := 1; i < len(uprights); i++ {
		x := Interval{uprights[i-1], uprights[i]}
		standing = slices.DeleteFunc(standing, func(e edge) bool { return e.right.X <= x.Lo })
		for len(edges) > 0 && edges[0].left.X <= x.Lo {
			standing = append(standing, edges[0])
			edges = edges[1:]
		}
		s.addSlab(x, standing, len(p.Holes))
	}
	return s
}

// edges returns all sides of the polygon that are not upright, by their left
// ends.
func (p Polygon) edges() []edge {
	var edges []edge
	collect := func(ring Ring, number int) {
		for i := range ring {
			if e, ok := edgeBetween(ring[i], ring.after(i), number); ok {
				edges = append(edges, e)
			}
		}
	}
	collect(p.Outline, 0)
	for i, hole := range p.Holes {
		collect(hole, i+1)
	}
	slices.SortStableFunc(edges, func(a, b edge) int { return cmp.Compare(a.left.X, b.left.X) })
	return edges
}

// uprights returns the places of all uprights, from left to right.
func (p Polygon) uprights(edges []edge) []measure.Length {
	var xs []measure.Length
	for _, e := range edges {
		xs = append(xs, e.left.X, e.right.X)
	}
	for i := range edges {
		for j := i + 1; j < len(edges) && edges[j].left.X < edges[i].right.X; j++ {
			if edges[i].ring == edges[j].ring {
				continue
			}
			if at := edges[i].crossing(&edges[j]); !at.IsEmpty() {
				xs = append(xs, at.Lo, at.Hi)
			}
		}
	}
	slices.Sort(xs)
	return slices.Compact(xs)
}

// crossed is an edge with its heights at both sides of a slab.
type crossed struct {
	edge        edge
	left, right measure.Length
}

// below puts the edges of a slab in order: those that are lower in the middle
// come first. Edges of the same heights compare equal.
func (c crossed) below(other crossed) int {
	return cmp.Or(
		cmp.Compare(c.left/2+c.right/2, other.left/2+other.right/2),
		cmp.Compare(c.left, other.left),
		cmp.Compare(c.right, other.right))
}

// addSlab finds the bands between the uprights at x, given the edges that
// stand there. Edges of the same heights are passed together: what lies
// between them is nothing.
func (s *Sweep) addSlab(x Interval, standing []edge, holes int) {
	order := make([]crossed, len(standing))
	for i := range standing {
		order[i] = crossed{standing[i], standing[i].height(x.Lo), standing[i].height(x.Hi)}
	}
	slices.SortStableFunc(order, crossed.below)
	from := len(s.bands)
	inside := make([]bool, holes+1) // of the outline, then of each hole
	within := 0                     // how many holes one is in
	foot := -1                      // the edge at which paper began, or −1
	for i, c := range order {
		inside[c.edge.ring] = !inside[c.edge.ring]
		switch {
		case c.edge.ring > 0 && inside[c.edge.ring]:
			within++
		case c.edge.ring > 0:
			within--
		}
		if i+1 < len(order) && c.below(order[i+1]) == 0 {
			continue
		}
		switch paper := inside[0] && within == 0; {
		case paper && foot < 0:
			foot = i
		case !paper && foot >= 0:
			s.addBand(x, order[foot], c)
			foot = -1
		}
	}
	if len(s.bands) > from {
		s.slabs = append(s.slabs, slab{x, from, len(s.bands)})
	}
}

// addBand adds the band between two edges, unless it is too thin to be there.
// Where the edges cross in the slab, it ends in a point on that side.
func (s *Sweep) addBand(x Interval, foot, head crossed) {
	cell := Cell{
		X:     x,
		Left:  Interval{foot.left, max(foot.left, head.left)},
		Right: Interval{foot.right, max(foot.right, head.right)},
	}
	if cell.Left.Length() > 0 || cell.Right.Length() > 0 {
		s.bands = append(s.bands, band{foot.edge, head.edge, cell})
	}
}

// AppendCells appends to dst the cells of the polygon with x in the given
// stretch, in the order of [Polygon.Cells]. It allocates nothing but what dst
// needs to grow.
func (s *Sweep) AppendCells(dst []Cell, x Interval) []Cell {
	for i := s.firstAfter(x.Lo); i < len(s.slabs); i++ {
		slab := &s.slabs[i]
		part := slab.x.Intersection(x)
		if part.Length() <= 0 {
			break
		}
		bands := s.bands[slab.from:slab.to]
		for j := range bands {
			if part == slab.x {
				dst = append(dst, bands[j].cell)
			} else if c := bands[j].within(part); c.Left.Length() > 0 || c.Right.Length() > 0 {
				dst = append(dst, c)
			}
		}
	}
	return dst
}

// Cells returns the cells of the polygon with x in the given stretch.
func (s *Sweep) Cells(x Interval) []Cell { return s.AppendCells(nil, x) }

// Bounds returns the stretch of x from the first to the last cell; empty when
// there are none.
func (s *Sweep) Bounds() Interval {
	if len(s.slabs) == 0 {
		return Interval{0, -1}
	}
	return Interval{s.slabs[0].x.Lo, s.slabs[len(s.slabs)-1].x.Hi}
}

// firstAfter returns the first slab that reaches beyond x.
func (s *Sweep) firstAfter(x measure.Length) int {
	lo, hi := 0, len(s.slabs)
	for lo < hi {
		middle := (lo + hi) / 2
		if s.slabs[middle].x.Hi <= x {
			lo = middle + 1
		} else {
			hi = middle
		}
	}
	return lo
}

// within returns the part of the band's cell between two uprights in its slab.
func (b *band) within(x Interval) Cell {
	return Cell{X: x, Left: b.at(x.Lo), Right: b.at(x.Hi)}
}

// at returns the band's y-stretch at x.
func (b *band) at(x measure.Length) Interval {
	switch x {
	case b.cell.X.Lo:
		return b.cell.Left
	case b.cell.X.Hi:
		return b.cell.Right
	}
	foot := b.foot.height(x)
	return Interval{foot, max(foot, b.head.height(x))}
}
