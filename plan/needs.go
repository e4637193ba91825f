package plan

import (
	"slices"

	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/room"
)

// needs is what a wall asks of a drop, roughly: good enough to tell starts
// that cost paper from starts that do not, before anything is laid out in full.
type needs struct {
	columns []geom.Interval // heights from column to column, every columnWidth; one if all are alike
	headers []header
}

// header is an opening wide enough that a drop may lie wholly over or under it.
type header struct {
	x      geom.Interval
	height measure.Length // the opening's own
}

const columnWidth = 20 * measure.Millimetre

// newNeeds prepares the walls of a run.
func newNeeds(run *room.Run) []needs {
	ns := make([]needs, len(run.Walls))
	for i := range run.Walls {
		w := &run.Walls[i]
		plain := geom.Polygon{Outline: w.Outline}
		for x := measure.Length(0); x < w.Width; x += columnWidth {
			y := geom.Interval{Lo: 0, Hi: -1}
			for _, c := range plain.Cells(geom.Interval{Lo: x, Hi: min(x+columnWidth, w.Width)}) {
				y = y.Union(c.Y())
			}
			ns[i].columns = append(ns[i].columns, y)
		}
		if all := slices.Compact(slices.Clone(ns[i].columns)); len(all) == 1 {
			ns[i].columns = all
		}
		for o := range w.Openings {
			x, y := w.Openings[o].Outline.Bounds()
			ns[i].headers = append(ns[i].headers, header{x, y.Length()})
		}
	}
	return ns
}

// length returns the paper that a part at x on the wall takes, allowances
// aside.
func (n *needs) length(x geom.Interval) measure.Length {
	if len(n.columns) == 0 {
		return 0
	}
	last := len(n.columns) - 1
	from := min(max(int(x.Lo/columnWidth), 0), last)
	to := min(max(int((x.Hi-1)/columnWidth), 0), last)
	y := n.columns[from]
	for i := from + 1; i <= to; i++ {
		y = y.Union(n.columns[i])
	}
	length := y.Length()
	for _, h := range n.headers {
		if h.x.Lo <= x.Lo && x.Hi <= h.x.Hi {
			length -= h.height
		}
	}
	return max(length, 0)
}

// paper returns what the drops of a sketch take, weighed as rolls: a drop of
// which k come out of a roll counts a k-th of one.
func (s *search) paper(l *hanging.Layout) int64 {
	var total int64
	p := &s.task.Papers[s.run.Paper]
	allowance := s.task.Rules.Head + s.task.Rules.Foot
	for i := range l.Drops {
		var length measure.Length
		for _, part := range l.Drops[i].Parts {
			length = max(length, s.need[part.Wall].length(part.X))
		}
		if length == 0 {
			continue
		}
		pitch := (length + allowance).CeilTo(p.Repeat)
		if k := int64(p.RollLength / pitch); k > 0 {
			total += s.task.Taste.Weights.Roll / k
		} else {
			total += s.task.Taste.Weights.Roll
		}
	}
	return total
}
