package audit

// judgeCoverage: midway in every column, every point of every band lies under
// a sheet, and under one only, unless it is one of two neighbours of which one
// leans, where they lap by no more than the lean.
func (h *hung) judgeCoverage() {
	var over []int
	var gaps []rise
	for i := range h.walls {
		for c := range h.columns[i] {
			col := &h.columns[i][c]
			if len(col.bands) == 0 {
				continue
			}
			over = h.appendOver(over[:0], i, col)
			for _, b := range col.bands {
				gaps = h.judgeBand(i, col, b.at(col.middle()), over, gaps)
			}
		}
	}
}

// appendOver appends the lays of wall i that cover some of a column.
func (h *hung) appendOver(dst []int, i int, col *column) []int {
	for _, k := range h.onWall[i] {
		if !h.lays[k].covers(col.middle()).empty() {
			dst = append(dst, k)
		}
	}
	return dst
}

// judgeBand judges the upright midway in one band. gaps is scratch.
func (h *hung) judgeBand(i int, col *column, paper rise, over []int, gaps []rise) []rise {
	gaps = append(gaps[:0], paper)
	for n, k := range over {
		y := &h.lays[k]
		covered := y.covers(col.middle())
		gaps = without(gaps, covered)
		for _, j := range over[:n] {
			twice := covered.common(h.lays[j].covers(col.middle())).common(paper)
			if !twice.empty() && !h.mayLap(j, k) {
				h.note(DoubleCover, y.at(), "sheets over the stretch "+figure(col.x), "one", "two, with drop "+figure(h.lays[j].drop+1))
			}
		}
	}
	for _, g := range gaps {
		h.note(Coverage, Place{Wall: i + 1}, "the stretch "+figure(col.x)+" from "+figure(g.foot)+" to "+figure(g.head), "covered", "bare")
	}
	return gaps
}

// without takes a stretch out of stretches.
func without(from []rise, taken rise) []rise {
	if taken.empty() {
		return from
	}
	n := len(from)
	for i := range n {
		r := from[i]
		if r.common(taken).empty() {
			continue
		}
		above := rise{taken.head, r.head}
		from[i] = rise{r.foot, taken.foot}
		if from[i].empty() {
			from[i] = above
		} else if !above.empty() {
			from = append(from, above)
		}
	}
	kept := from[:0]
	for _, r := range from {
		if !r.empty() {
			kept = append(kept, r)
		}
	}
	return kept
}

// mayLap reports whether two sheets may lap: they are neighbours, one of them
// leans, and somewhere between foot and head of the corner it leans by, or of
// the wall, they only touch.
func (h *hung) mayLap(j, k int) bool {
	p, q := &h.lays[j], &h.lays[k]
	apart := p.skew - q.skew // how far more the left one leans to the right
	if k != j+1 || apart == 0 {
		return false
	}
	lap := p.x.hi - q.x.lo // at the foot
	if lap <= 0 || lap+apart <= 0 {
		return true
	}
	leaning := p
	if p.skew == 0 {
		leaning = q
	}
	if leaning.foot == leaning.head {
		return false
	}
	w := &h.walls[p.wall]
	for _, y := range []int64{w.low, w.high} {
		beyond := y < leaning.foot || y > leaning.head
		if beyond && lap+nearest(apart, y-leaning.foot, leaning.head-leaning.foot) <= 1 {
			return true
		}
	}
	return false
}
