package sheet

import (
	"strings"

	"firstdrop/draw"
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/plan"
	"firstdrop/tell"
)

// seams draws the seams that stand on this wall: those in its corners are its
// edges.
func (e *elevation) seams() {
	for i := range e.layout.Seams {
		s := &e.layout.Seams[i]
		if s.Wall != e.index || s.InCorner || s.Kind == hanging.KillSeam {
			continue
		}
		for _, l := range e.stretches(s.X) {
			e.add("seams", draw.Segment(l[0], l[1], seamPen))
		}
		if !s.Meets() && e.label.Match.Kind != paper.Free {
			e.notes = append(e.notes, note{text: e.text("seam.misses", "from", e.fromLeft(s.X), "misses", tell.Misses(e.words, s.Across, s.Along))})
		}
	}
}

// wetSeams tells where the seams of the wall stand as hung and where they would
// stand dry, for a paper that grows when it soaks.
func (e *elevation) wetSeams() {
	var pairs []string
	for _, s := range plan.DrySeams(e.layout) {
		if s.Wall == e.index {
			pairs = append(pairs, e.figure(s.X)+" ("+e.figure(s.Dry)+")")
		}
	}
	if len(pairs) > 0 {
		e.notes = append(e.notes, note{text: e.text("seam.wet", "seams", strings.Join(pairs, ", "))})
	}
}

// killSeam draws the kill seam where it stands on this wall or in one of its
// corners: a line with teeth, its name beside it, its misfit in the notes.
func (e *elevation) killSeam() {
	n := len(e.layout.Seams)
	if n == 0 || e.layout.Seams[n-1].Kind != hanging.KillSeam {
		return
	}
	s := &e.layout.Seams[n-1]
	last := e.layout.Choice.Kill.Wall
	switch {
	case !s.InCorner && s.Wall == e.index:
		for _, l := range e.stretches(s.X) {
			e.teeth(l[0], l[1])
			e.killName(l[0].X+(l[1].X-l[0].X)/2, geom.Interval{Lo: l[0].Y, Hi: l[1].Y})
		}
		e.killNote(e.text("kill.on-wall", "from", e.fromLeft(s.X)), s)
	case s.InCorner && (s.Wall == e.index || last == e.index):
		for _, side := range []hanging.Side{hanging.Left, hanging.Right} {
			if side == hanging.Left && s.Wall != e.index || side == hanging.Right && last != e.index {
				continue
			}
			if foot, head, ok := e.edge(side); ok {
				e.teeth(foot, head)
				e.killName(foot.X, geom.Interval{Lo: foot.Y, Hi: head.Y})
			}
			e.killNote(e.killIn(side), s)
		}
	}
}

// killIn names the kill seam in a corner of the wall.
func (e *elevation) killIn(side hanging.Side) string {
	if _, name, _, ok := e.corner(side); ok {
		return e.text("kill.in-corner", "corner", e.words.Name(name))
	}
	return e.text("kill.in-" + side.String())
}

// teeth draws the kill seam's line from foot to head.
func (e *elevation) teeth(foot, head geom.Point) {
	const pitch, deep = 2 * mm, mm
	tall := head.Y - foot.Y
	n := int64(max(tall/pitch, 1))
	points := []geom.Point{foot}
	for k := range n {
		p := geom.Point{X: foot.X + (head.X-foot.X).Scaled(2*k+1, 2*n), Y: foot.Y + tall.Scaled(2*k+1, 2*n)}
		p.X += deep * measure.Length(1-2*(k%2))
		points = append(points, p)
	}
	e.add("kill", draw.Line{Points: append(points, head), Pen: killPen})
}

// killName writes what it is along the seam, on the side that has room.
func (e *elevation) killName(x measure.Length, y geom.Interval) {
	name := e.text("kill.name")
	if n := e.killNumber(); n > 0 {
		name = e.text("kill.name-numbered", "number", n)
	}
	e.along("kill", draw.Text{Text: name, Bold: true, Ink: oxide}, x, y)
}

// killNumber returns the number of what the plan finds at the run's kill seam; 0
// for nothing.
func (e *elevation) killNumber() int {
	for _, f := range e.plan.Findings {
		if (f.Code == plan.KillMisfit || f.Code == plan.KillMeets) && f.Place.Run == e.run.Name {
			return f.Number
		}
	}
	return 0
}

// along writes a text upwards beside an upright line at x, within a stretch of
// height, clear of the design's marks if it can, nearer to the line if that helps, and
// reports whether it had room.
func (e *elevation) along(layer string, t draw.Text, x measure.Length, y geom.Interval) bool {
	t.Anchor, t.Turn = draw.Middle, draw.Upwards
	m := y.Lo + y.Length()/2
	for _, try := range []struct {
		avoid *board
		off   measure.Length
	}{{&e.marks, 3 * mm / 2}, {&e.marks, mm / 2}, {&board{}, 3 * mm / 2}} {
		for _, t.Size = range []measure.Length{body, small} {
			left, right := x-t.Size*240/1000-try.off, x+t.Size*760/1000+try.off
			for d := measure.Length(0); 2*d < y.Length(); d += 2 * mm {
				for _, t.At = range []geom.Point{{X: right, Y: m - d}, {X: left, Y: m - d}, {X: right, Y: m + d}, {X: left, Y: m + d}} {
					if box := t.Box(); e.board.isFree(box) && try.avoid.isFree(box) && e.isPapered(box) && !e.isCrossed(box) {
						e.write(layer, t)
						return true
					}
				}
			}
		}
	}
	return false
}

// isCrossed reports whether a seam or a plumb line crosses a box on the page, at half
// its height.
func (e *elevation) isCrossed(box draw.Box) bool {
	within := func(wall int, at measure.Length) bool {
		if wall != e.index {
			return false
		}
		x := e.lineAt(at, box.Middle().Y)
		return box.X.Lo < x && x < box.X.Hi
	}
	for i := range e.layout.Seams {
		if s := &e.layout.Seams[i]; !s.InCorner && within(s.Wall, s.X) {
			return true
		}
	}
	for _, b := range e.layout.Plumbs {
		if within(b.Wall, b.X) {
			return true
		}
	}
	return false
}

// killNote says how far the design misses.
func (e *elevation) killNote(where string, s *hanging.Seam) {
	if n := e.killNumber(); n > 0 {
		where = e.text("kill.numbered", "kill", where, "number", n)
	}
	text := e.text("kill.misses", "kill", where, "misses", tell.Misses(e.words, s.Across, s.Along))
	switch {
	case e.label.Match.Kind == paper.Free:
		text = e.text("kill.free", "kill", where)
	case s.Meets():
		text = e.text("kill.meets", "kill", where)
	}
	e.notes = append(e.notes, note{mark: killMark, text: text})
}
