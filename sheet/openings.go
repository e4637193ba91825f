package sheet

import (
	"firstdrop/draw"
	"firstdrop/geom"
	"firstdrop/measure"
	"firstdrop/tell"
)

// openings draws what keeps paper off the wall, and the returns that are
// papered, laid open into their opening.
func (e *elevation) openings() {
	for i, hole := range e.face.Holes {
		shape := geom.Polygon{Outline: e.ring(hole)}
		title := e.text("opening")
		if i < len(e.wall.Openings) {
			title = e.openingName(i)
		}
		e.add("openings", draw.Group{Title: title, Items: []draw.Item{
			draw.Area{Shape: shape, Fill: white},
			draw.Hatch{Shape: shape, Gap: 4 * mm, Pen: hatchPen},
			draw.Area{Shape: shape, Pen: seamPen},
		}})
	}
	e.returns()
	for i := range e.wall.Openings {
		e.openingLabel(i)
	}
}

// returns draws the returns with the names of their pieces.
func (e *elevation) returns() {
	var names string
	for i := range e.layout.Pieces {
		p := &e.layout.Pieces[i]
		r := p.Return
		if r == nil || r.Wall != e.index {
			continue
		}
		box := draw.Box{X: geom.Interval{Lo: e.on(r.X.Lo), Hi: e.on(r.X.Hi)}, Y: geom.Interval{Lo: e.on(r.Y.Lo), Hi: e.on(r.Y.Hi)}}
		tint := tints[e.layout.Drops[p.Drop].Index&1]
		e.add("openings", draw.Area{Shape: geom.Polygon{Outline: box.Ring()}, Fill: tint, Pen: returnPen})
		e.patternedReturn(p, box)
		e.returnLabel(p.Name, box)
		e.board.take(box.Grown(-mm / 2))
		if names != "" {
			names += ", "
		}
		names += e.text("returns.piece", "piece", p.Name, "return", tell.Return(e.words, r.Side, e.openingName(r.Opening)))
	}
	if names != "" {
		e.notes = append(e.notes, note{mark: dashedMark, text: e.text("returns.note", "pieces", names)})
	}
}

// returnLabel writes a piece's name into its return where there is room.
func (e *elevation) returnLabel(name string, box draw.Box) {
	m := box.Middle()
	for _, t := range []draw.Text{
		{At: geom.Point{X: m.X, Y: m.Y - small/3}, Text: name, Size: small, Anchor: draw.Middle, Bold: true, Ink: graphite},
		{At: geom.Point{X: m.X + small/3, Y: m.Y}, Text: name, Size: small, Anchor: draw.Middle, Bold: true, Ink: graphite, Turn: draw.Upwards},
	} {
		if b := t.Box(); box.Contains(b) && e.board.isFree(b) {
			e.write("numbers", t)
			return
		}
	}
}

// openingLabel writes name and sizes into an opening; into the notes where it
// is too small.
func (e *elevation) openingLabel(i int) {
	o := &e.wall.Openings[i]
	x, y := o.Outline.Bounds()
	lines := []string{e.openingName(i), e.text("opening.size", "width", e.figure(x.Length()), "height", e.size(y.Length()))}
	if sill := y.Lo - e.footAt(x); sill > 0 {
		lines = append(lines, e.text("opening.sill", "size", e.size(sill)))
	}
	box := draw.BoxOf(e.ring(e.face.Holes[i]))
	box = draw.Box{X: box.X.Intersection(e.reach.X), Y: box.Y.Intersection(e.reach.Y)}
	narrow := append([]string{e.openingName(i), e.text("opening.wide", "size", e.figure(x.Length())), e.text("opening.high", "size", e.figure(y.Length()))}, lines[2:]...)
	for _, turn := range []draw.Turn{draw.Level, draw.Upwards} {
		for _, lines := range [][]string{lines, narrow} {
			for _, size := range []measure.Length{body, small} {
				if e.plate(lines, size, turn, box) {
					return
				}
			}
		}
	}
	text := e.text("opening.note", "opening", e.openingName(i), "from", e.size(x.Lo), "size", lines[1])
	if len(lines) > 2 {
		text = e.text("opening.note-sill", "opening", e.openingName(i), "from", e.size(x.Lo), "size", lines[1], "sill", lines[2])
	}
	e.notes = append(e.notes, note{text: text})
}

// footAt returns the lowest point of the wall over a stretch of it.
func (e *elevation) footAt(x geom.Interval) measure.Length {
	y := geom.Interval{Lo: 0, Hi: -1}
	for _, c := range (geom.Polygon{Outline: e.face.Outline}).Cells(x) {
		y = y.Union(c.Y())
	}
	return y.Lo
}

// plate writes a few lines on a white ground in the middle of a box, or as near
// to it as there is room, and reports whether there was.
func (e *elevation) plate(lines []string, size measure.Length, turn draw.Turn, box draw.Box) bool {
	pitch := size * 13 / 10
	w, h := measure.Length(0), measure.Length(len(lines))*pitch
	for i, l := range lines {
		w = max(w, draw.TextWidth(l, size, i == 0))
	}
	w += mm
	if turn == draw.Upwards {
		w, h = h, w
	}
	if w > box.X.Length()-mm || h > box.Y.Length()-mm {
		return false
	}
	at, ok := e.seat(w, h, box)
	if !ok {
		return false
	}
	e.board.take(at)
	e.add("openings", draw.Area{Shape: geom.Polygon{Outline: at.Ring()}, Fill: white})
	for i, l := range lines {
		step := measure.Length(i)*pitch + size*9/10
		p := geom.Point{X: at.Middle().X, Y: at.Y.Hi - step}
		if turn == draw.Upwards {
			p = geom.Point{X: at.X.Lo + step, Y: at.Middle().Y}
		}
		e.add("words", draw.Text{At: p, Text: l, Size: size, Anchor: draw.Middle, Turn: turn, Bold: i == 0, Ink: graphite})
	}
	return true
}

// seat returns a free place of that size in a box, the nearest to its middle.
func (e *elevation) seat(w, h measure.Length, box draw.Box) (draw.Box, bool) {
	m := box.Middle()
	for d := measure.Length(0); 2*d <= max(box.X.Length(), box.Y.Length()); d += 2 * mm {
		for _, by := range []geom.Point{{Y: d}, {Y: -d}, {X: -d}, {X: d}} {
			at := draw.BoxAt(m.X-w/2, m.Y-h/2, w, h).Shifted(by)
			if box.Contains(at) && e.board.isFree(at) {
				return at, true
			}
		}
	}
	return draw.NoBox, false
}
