package plan

import (
	"cmp"
	"slices"

	"firstdrop/geom"
	"firstdrop/measure"
	"firstdrop/room"
)

// On stairs the longest drop is hung first: it is the hardest to handle and to set plumb,
// and all others are butted to it, shorter and shorter, to both sides.
//
//	     ┌──────────────
//	   ／│  │  │  │  │
//	 ／│ │  │  │  │  │      Hanging begins at ①, on the wall on which the highest
//	┌──│①│ │  │  ┌──┘      upright stands; elsewhere no start is tried, unless
//	│  │ │  │ ┌──┘          start or centre line is fixed.
//	└──┴─┴──┘

// beginsOn reports on which walls hanging may begin: on all of them in a run without
// stairs; else where the highest upright stands.
func (s *search) beginsOn() func(wall int) bool {
	run := s.run.Run
	if !slices.ContainsFunc(run.Walls, func(w room.Wall) bool { return w.IsStair() }) {
		return func(int) bool { return true }
	}
	tallest := make([]measure.Length, len(run.Walls))
	for i := range run.Walls {
		if run.Walls[i].Width >= s.task.Papers[s.run.Paper].Width || s.narrow() {
			tallest[i] = highestUpright(&run.Walls[i])
		}
	}
	most := slices.Max(tallest)
	return func(wall int) bool { return tallest[wall] == most }
}

// highestUpright returns how long the longest upright line on a wall is, openings
// included.
func highestUpright(w *room.Wall) (most measure.Length) {
	cells := geom.Polygon{Outline: w.Outline}.Sweep().AppendCells(nil, geom.Interval{Lo: 0, Hi: w.Width})
	for _, c := range cells {
		most = max(most, c.Left.Length(), c.Right.Length())
	}
	return most
}

// fromLongest counts the drops of a layout on stairs from the longest on the wall where
// it begins; of equals from the leftmost, so that the first plumb line stands one width
// from a corner. Where everything stands does not change by it; which drops hang upside
// down may, where that is all the same.
func (s *search) fromLongest(best candidate) candidate {
	longest := make([]measure.Length, len(best.layout.Drops))
	for i := range best.layout.Pieces {
		p := &best.layout.Pieces[i]
		if p.Return == nil {
			longest[p.Drop] = max(longest[p.Drop], p.Length)
		}
	}
	order := make([]int, len(longest))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(longest[b], longest[a]) })
	w := s.task.Papers[s.run.Paper].Width
	for _, i := range order {
		c := best
		c.choice.Start.X += measure.Length(best.layout.Drops[i].Index) * w
		if x := c.choice.Start.X; x <= -w || x >= s.run.Run.Walls[c.choice.Start.Wall].Width {
			continue
		}
		if s.layOut(&c); c.layout == nil || !sameParts(c.layout, best.layout) {
			continue
		}
		if s.judge.paper.Repeat == 0 || sameGeometry(c.layout, best.layout) {
			c.score = best.score
			return c
		}
	}
	return best
}
