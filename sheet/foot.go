package sheet

import (
	"firstdrop/draw"
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
)

// figures lists what the running dimension along the foot shows: the wall's
// ends and every seam between them, in ascending order.
func (e *elevation) figures() []measure.Length {
	xs := []measure.Length{0}
	for _, i := range ascending(seamXs(e.layout.Seams)) {
		s := &e.layout.Seams[i]
		if s.Wall == e.index && !s.InCorner && s.X > xs[len(xs)-1] && s.X < e.wall.Width {
			xs = append(xs, s.X)
		}
	}
	return append(xs, e.wall.Width)
}

func seamXs(seams []hanging.Seam) []measure.Length {
	xs := make([]measure.Length, len(seams))
	for i := range seams {
		xs[i] = seams[i].X
	}
	return xs
}

// foot draws the running dimension: how far every seam stands from the wall's
// left end.
func (e *elevation) foot() {
	figures := e.figures()
	base := e.reach.Y.Lo - 6*mm
	xs := make([]measure.Length, len(figures))
	rounded := false
	for i, x := range figures {
		xs[i] = e.on(x)
		rounded = rounded || x.Rounded(e.words.Units()) != x
	}
	size, slots, rows := e.rows(figures, xs)
	e.add("sizes", draw.Segment(geom.Point{X: xs[0], Y: base}, geom.Point{X: xs[len(xs)-1], Y: base}, finePen))
	first := base - 3*mm/2 - size*3/4
	for i, s := range slots {
		y := first - measure.Length(s.row)*line
		tip := y + size*3/4 + mm/2
		if s.anchor != draw.Middle {
			tip = y
		}
		e.add("sizes",
			draw.Segment(geom.Point{X: xs[i], Y: e.reach.Y.Lo - mm}, geom.Point{X: xs[i], Y: tip}, finePen),
			draw.Segment(geom.Point{X: xs[i] - mm, Y: base - mm}, geom.Point{X: xs[i] + mm, Y: base + mm}, seamPen))
		seam := i > 0 && i < len(xs)-1
		e.write("sizes", draw.Text{At: geom.Point{X: s.at, Y: y}, Text: e.figure(figures[i]), Size: size, Anchor: s.anchor, Bold: seam, Ink: endInk(seam)})
	}
	text := e.seamsFrom(rounded)
	y := first - measure.Length(rows)*line
	room := e.page.X.Length() - 2*margin
	e.write("sizes", draw.Text{At: geom.Point{X: e.page.X.Lo + margin, Y: y}, Text: text, Size: small, Ink: quiet}.Within(room, leastBody))
	e.cursor = y - small/2
}

// seamsFrom says what the figures are and where they are measured from.
func (e *elevation) seamsFrom(rounded bool) string {
	text := e.text("foot.from-left")
	if _, name, _, ok := e.corner(hanging.Left); ok {
		text = e.text("foot.from-corner", "corner", e.words.Name(name))
	}
	isMetric := e.words.Units() == measure.Metric
	switch {
	case !isMetric && rounded:
		return e.text("foot.sixteenths", "seams", text)
	case isMetric && rounded:
		return e.text("foot.tenths", "seams", text)
	case isMetric:
		return e.text("foot.mm", "seams", text)
	}
	return text
}

// rows places the figures in as few rows as they need: in letters of the usual
// size, or in small ones where that saves a row.
func (e *elevation) rows(figures, xs []measure.Length) (size measure.Length, slots []slot, rows int) {
	bounds := geom.Interval{Lo: e.page.X.Lo + mm, Hi: e.page.X.Hi - mm}
	for _, try := range []measure.Length{body, small} {
		widths := make([]measure.Length, len(figures))
		for i, x := range figures {
			widths[i] = draw.TextWidth(e.figure(x), try, true)
		}
		placed := spread(xs, widths, bounds)
		n := 0
		for _, s := range placed {
			n = max(n, s.row+1)
		}
		if slots == nil || n < rows {
			size, slots, rows = try, placed, n
		}
	}
	return size, slots, rows
}
