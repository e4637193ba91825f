package audit

// cell is what a sheet covers of a band in a column.
type cell struct {
	lay  int
	x    span
	band band
	need rise // from its lowest to its highest point
	part int  // number of the connected part it belongs to
}

// between returns what the lay covers of the band on the upright at half/2.
func (h *hung) between(k int, b band, half int64) rise {
	return b.at(half).common(h.lays[k].covers(half))
}

// cellsOf returns the region of drop i, cell by cell, along the run.
func (h *hung) cellsOf(dst []cell, from, to int) []cell {
	for k := from; k < to; k++ {
		cols := h.columns[h.lays[k].wall]
		for c := range cols {
			col := &cols[c]
			for _, b := range col.bands {
				mid := h.between(k, b, col.middle())
				if mid.empty() {
					continue
				}
				for _, end := range []int64{2 * col.x.lo, 2 * col.x.hi} {
					if r := h.between(k, b, end); !r.head.below(r.foot) {
						mid = mid.hull(r)
					}
				}
				dst = append(dst, cell{lay: k, x: col.x, band: b, need: mid, part: len(dst)})
			}
		}
	}
	return dst
}

// connect gives all cells of a drop that are cut as one the same number: that
// of the first of them. A drop is cut from the roll whole and slit afterwards,
// so what hangs together across a corner or a cut is one piece too.
func (h *hung) connect(cells []cell, loose bool) {
	for j := range cells {
		for i := range j {
			a, b := cells[i].part, cells[j].part
			if a == b || !h.touch(&cells[i], &cells[j], loose) {
				continue
			}
			from, to := max(a, b), min(a, b)
			for k := range cells {
				if cells[k].part == from {
					cells[k].part = to
				}
			}
		}
	}
}

// touch reports whether two cells of one drop, p to the left of q, share more
// than a point. Across a corner, loose asks only that both reach it and share
// heights somewhere.
func (h *hung) touch(p, q *cell, loose bool) bool {
	if p.lay == q.lay {
		if p.x.hi != q.x.lo {
			return false
		}
		at := 2 * p.x.hi
		return !h.between(p.lay, p.band, at).common(h.between(q.lay, q.band, at)).empty()
	}
	a, b := &h.lays[p.lay], &h.lays[q.lay]
	if q.lay != p.lay+1 {
		return false
	}
	if a.wall == b.wall {
		return p.x.hi >= b.x.lo && q.x.lo <= a.x.hi && !p.need.common(q.need).empty()
	}
	if loose {
		left, right := &h.walls[a.wall], &h.walls[b.wall]
		reach := p.x.hi >= min(a.x.hi, left.width, left.width+left.right.leanLeft) && q.x.lo <= max(b.x.lo, 0, right.left.leanRight)
		return reach && !p.need.common(q.need).empty()
	}
	return !h.inFold(p, true).common(h.inFold(q, false)).empty()
}

// inFold returns the stretch of the corner at one end of its wall that a cell
// touches. Where the corner leans, a cell between its foot and its head counts
// whole.
func (h *hung) inFold(c *cell, rightEnd bool) rise {
	w := &h.walls[h.lays[c.lay].wall]
	at, lean := int64(0), w.left.leanRight
	if rightEnd {
		at, lean = w.width, w.right.leanLeft
	}
	switch lo, hi := at+min(0, lean), at+max(0, lean); {
	case lean != 0 && lo <= c.x.lo && c.x.hi <= hi:
		return c.need
	case lean == 0 && rightEnd && c.x.hi == at, lean == 0 && !rightEnd && c.x.lo == at:
		return h.between(c.lay, c.band, 2*at)
	}
	return rise{highest, lowest}
}

// need is what one piece must cover: a connected part of a drop's region.
type need struct {
	y      rise
	across span
	leans  int64 // the largest skew of a part in it, or lean of a corner it begins or ends at
	lays   span  // its first and its last lay
}

// needs lists what the pieces of drop i must cover, by its first cell. cells
// is scratch and is returned.
func (h *hung) needs(cells []cell, from, to int, loose bool) ([]need, []cell) {
	cells = h.cellsOf(cells[:0], from, to)
	h.connect(cells, loose)
	var all []need
	number := make([]int, len(cells))
	for i := range cells {
		c := &cells[i]
		y := &h.lays[c.lay]
		across := span{c.x.lo - y.x.lo + y.a.lo, c.x.hi - y.x.lo + y.a.lo}.common(y.a)
		leans := h.leaning(y)
		if c.part == i {
			number[i] = len(all)
			all = append(all, need{c.need, across, leans, span{int64(c.lay), int64(c.lay)}})
			continue
		}
		n := &all[number[c.part]]
		n.lays.hi = max(n.lays.hi, int64(c.lay))
		n.y = n.y.hull(c.need)
		n.across = span{min(n.across.lo, across.lo), max(n.across.hi, across.hi)}
		n.leans = max(n.leans, leans)
	}
	return all, cells
}

// steep is the slope from which on an edge counts as a side that leans.
const steep = 10

// leaning returns the most by which a part's edges may be taken to lean.
func (h *hung) leaning(y *lay) int64 {
	w := &h.walls[y.wall]
	leans := uint64(h.mostLean(y))
	for i := range w.slopes { // the sides of openings may lean too
		s := &w.slopes[i]
		if s.x2 >= y.x.lo && s.x1 <= y.x.hi && size(s.y2-s.y1) > steep*size(s.x2-s.x1) {
			leans = max(leans, size(s.x2-s.x1))
		}
	}
	if y.x.lo == 0 {
		leans = max(leans, size(w.left.leanRight))
	}
	if y.x.hi == w.width {
		leans = max(leans, size(w.right.leanLeft))
	}
	return int64(leans)
}

// nearby returns from where to where there is paper on the walls of a need,
// over its parts and as far beside each as something leans there.
func (h *hung) nearby(n *need) rise {
	all := rise{highest, lowest}
	for k := n.lays.lo; k <= n.lays.hi; k++ {
		y := &h.lays[k]
		leans, cols := h.leaning(y), h.columns[y.wall]
		for c := range cols {
			bands := cols[c].bands
			if x := cols[c].x; x.hi <= y.x.lo-leans || x.lo >= y.x.hi+leans || len(bands) == 0 {
				continue
			}
			for _, end := range []int64{2 * cols[c].x.lo, 2 * cols[c].x.hi} {
				all = all.hull(rise{bands[0].foot.at(end), bands[len(bands)-1].head.at(end)})
			}
		}
	}
	return all
}
