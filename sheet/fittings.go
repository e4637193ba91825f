package sheet

import (
	"firstdrop/draw"
	"firstdrop/geom"
	"firstdrop/room"
	"firstdrop/tell"
)

// fittings draws sockets, switches and the like at their true size, crossed as
// they will be cut, each with its name.
func (e *elevation) fittings() {
	boxes := make([]draw.Box, len(e.wall.Fittings))
	for i, f := range e.wall.Fittings {
		m := e.at(f.At.X, f.At.Y)
		w, h := max(e.on(f.Size.X), 2*mm), max(e.on(f.Size.Y), 2*mm)
		b := draw.BoxAt(m.X-w/2, m.Y-h/2, w, h)
		boxes[i] = b
		e.board.take(b)
		e.add("fittings", draw.Group{Title: tell.Fitting(e.words, &f), Items: []draw.Item{
			draw.Area{Shape: geom.Polygon{Outline: b.Ring()}, Fill: white, Pen: seamPen},
			draw.Segment(geom.Point{X: b.X.Lo, Y: b.Y.Lo}, geom.Point{X: b.X.Hi, Y: b.Y.Hi}, finePen),
			draw.Segment(geom.Point{X: b.X.Lo, Y: b.Y.Hi}, geom.Point{X: b.X.Hi, Y: b.Y.Lo}, finePen),
		}})
	}
	for i := range e.wall.Fittings {
		e.fittingLabel(&e.wall.Fittings[i], boxes[i])
	}
	e.power()
}

// fittingLabel writes a fitting's name beside it.
func (e *elevation) fittingLabel(f *room.Fitting, b draw.Box) {
	m := b.Middle()
	level := m.Y - small/3
	for _, t := range []draw.Text{
		{At: geom.Point{X: b.X.Hi + mm, Y: level}},
		{At: geom.Point{X: b.X.Lo - mm, Y: level}, Anchor: draw.End},
		{At: geom.Point{X: m.X, Y: b.Y.Hi + 2*mm}, Anchor: draw.Middle},
		{At: geom.Point{X: m.X, Y: b.Y.Lo - small}, Anchor: draw.Middle},
	} {
		t.Text, t.Size, t.Ink = draw.Fitted(tell.Fitting(e.words, f), small, false, 60*mm), small, quiet
		box := t.Box()
		if e.board.isFree(box) && e.isPapered(box) {
			e.add("fittings", draw.Area{Shape: geom.Polygon{Outline: box.Ring()}, Fill: tints[0]})
			e.write("words", t)
			return
		}
	}
	e.notes = append(e.notes, note{text: e.text("fitting.note", "from", e.fromLeft(f.At.X), "fitting", tell.Fitting(e.words, f))})
}

// power adds the caution about electricity where there is some.
func (e *elevation) power() {
	for _, f := range e.wall.Fittings {
		if f.Kind == room.Socket || f.Kind == room.Switch || f.Kind == room.Light {
			e.notes = append(e.notes, note{mark: cautionMark, text: e.text("caution.power")})
			return
		}
	}
}
