package sheet

import (
	"strconv"
	"strings"

	"firstdrop/draw"
	"firstdrop/draw/page"
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/tell"
)

// bandAbove and bandBelow are what stands round the walls of the band.
const (
	bandAbove = 8 * mm
	bandBelow = 8 * mm
)

// band draws all walls of a run side by side, within a width and height.
func (s *Set) band(r int, width, height measure.Length) *draw.Scene {
	l := s.Plan.Runs[r].Layout
	y := across(0, -1)
	for w := range l.Run.Walls {
		_, b := l.Run.Face(w).Bounds()
		y = y.Union(b)
	}
	n := fitting(l.Run.Girth(), y.Length(), width-4*mm, height-bandAbove-bandBelow-page.Sub.Line(), s.System)
	b := &bandDrawing{s: s, layout: l, width: width, y: across(y.Lo.Scaled(1, n), y.Hi.Scaled(1, n)), wide: l.Run.Girth().Scaled(1, n)}
	x := measure.Length(0)
	for w := range l.Run.Walls {
		b.wall(r, w, n, x.Scaled(1, n))
		x += l.Run.Walls[w].Width
	}
	b.ends(x.Scaled(1, n))
	window := draw.Box{X: across(-b.spare(), b.wide+b.spare()), Y: across(b.y.Lo-bandBelow, b.y.Hi+bandAbove)}
	return &draw.Scene{
		ID: "band" + strconv.Itoa(r+1), Title: s.text("page.band"), Desc: s.text("page.band-desc"), Scale: n, Window: window,
		Layers: []draw.Layer{{Name: "walls", Title: s.text("page.band"), Items: b.items}, {Name: "words", Items: b.words}},
	}
}

type bandDrawing struct {
	s      *Set
	layout *hanging.Layout
	y      geom.Interval // of all walls, on the page
	wide   measure.Length
	width  measure.Length // that the page has
	items  []draw.Item
	words  []draw.Item
	board  board
}

// spare is what the page has on either side of the walls.
func (b *bandDrawing) spare() measure.Length { return max(2*mm, (b.width-b.wide)/2) }

// wall draws one wall with its left end at x.
func (b *bandDrawing) wall(r, w int, n int64, x measure.Length) {
	e := newElevation(b.s.Plan, r, w, Options{System: b.s.System, Lang: b.s.Lang, Scale: n, Repeat: b.s.repeat(b.s.Plan.Task.Runs[r].Paper)})
	e.strips()
	e.patterned()
	e.bareOpenings()
	for i := range e.layout.Seams {
		q := &e.layout.Seams[i]
		if q.Wall != w || q.InCorner || q.Kind == hanging.KillSeam {
			continue
		}
		for _, l := range e.stretches(q.X) {
			e.add("seams", draw.Segment(l[0], l[1], draw.Pen{Ink: quiet, Width: 25 * mm / 100}))
		}
	}
	for _, p := range e.plan.Runs[r].Layout.Plumbs[:min(1, len(e.layout.Plumbs))] {
		if p.Wall == w {
			for _, l := range e.stretches(p.X) {
				e.add("plumbs", draw.Segment(l[0], l[1], plumbPen))
			}
			x := e.lineAt(p.X, e.reach.Y.Hi)
			e.add("plumbs", draw.Segment(pt(x, e.reach.Y.Hi+mm/2), pt(x, e.reach.Y.Hi+2*mm), plumbPen))
		}
	}
	b.killSeam(e)
	for _, layer := range e.scene.Layers {
		for _, it := range layer.Items {
			b.items = append(b.items, draw.Shifted(it, pt(x, 0)))
		}
	}
	b.numbers(e, x)
	b.names(e, x)
}

// killSeam draws the teeth of the kill seam where it stands on the wall or at its
// left end.
func (b *bandDrawing) killSeam(e *elevation) {
	q := tell.KillOf(e.layout)
	if q == nil || q.Wall != e.index {
		return
	}
	for _, l := range e.stretches(q.X) {
		e.add("kill", draw.Segment(l[0], l[1], draw.Pen{Ink: oxide, Width: mm, Dash: []measure.Length{mm, 6 * mm / 10}}))
	}
}

// bareOpenings draws openings without words.
func (e *elevation) bareOpenings() {
	for _, hole := range e.face.Holes {
		shape := geom.Polygon{Outline: e.ring(hole)}
		e.add("openings", draw.Area{Shape: shape, Fill: white}, draw.Hatch{Shape: shape, Gap: 3 * mm, Pen: hatchPen}, draw.Area{Shape: shape, Pen: finePen})
	}
}

// numbers writes the drops' numbers, each on a light plate, at half height or where
// there is paper.
func (b *bandDrawing) numbers(e *elevation, x measure.Length) {
	done := map[int]bool{}
	for _, p := range e.parts() {
		if p.drop.Number == 0 || done[p.of] {
			continue
		}
		size := min(page.Sub.Size, e.on(p.seen.Length())*6/10)
		if size < 2*mm {
			continue
		}
		done[p.of] = true
		t := draw.Text{Text: strconv.Itoa(p.drop.Number), Size: size, Bold: true, Anchor: draw.Middle, Ink: graphite}
		for draw.TextWidth(t.Text, t.Size, true) > e.on(p.seen.Length())-mm/2 && t.Size > 2*mm {
			t.Size -= mm / 4
		}
		if t = b.seat(e, p, t); t.Text == "" {
			continue
		}
		t.At.X += x
		b.words = append(b.words, draw.Area{Shape: geom.Polygon{Outline: t.Box().Ring()}, Fill: white}, t)
	}
}

// seat returns a number where there is paper for it: high on the drop and as large as
// it can be, in the middle or to one side; without text where there is no room.
func (b *bandDrawing) seat(e *elevation, p part, t draw.Text) draw.Text {
	for ; t.Size >= 2*mm; t.Size -= mm / 2 {
		half := draw.TextWidth(t.Text, t.Size, true) / 2
		lo, hi := e.on(p.seen.Lo)+half, e.on(p.seen.Hi)-half
		for d := t.Size + mm/2; d < e.reach.Y.Length(); d += mm {
			for _, x := range []measure.Length{lo + (hi-lo)/2, lo, hi} {
				t.At = pt(x, e.reach.Y.Hi-d)
				if lo <= hi && e.isPapered(t.Box()) {
					return t
				}
			}
		}
	}
	return draw.Text{}
}

// names writes the wall's name below it and its left corner above.
func (b *bandDrawing) names(e *elevation, x measure.Length) {
	b.words = append(b.words, b.name(e, x)...)
	b.words = append(b.words, draw.Segment(pt(x, b.y.Lo-3*mm), pt(x, b.y.Hi+2*mm), foldPen))
	for _, p := range e.layout.Plumbs[:min(1, len(e.layout.Plumbs))] {
		if p.Wall == e.index {
			b.flag(x+e.on(p.X), b.s.text("page.start-mark"), chalk)
		}
	}
	if q := tell.KillOf(e.layout); q != nil && q.Wall == e.index {
		b.flag(x+e.on(q.X), b.s.text("page.kill-mark"), oxide)
	}
}

// name returns a wall's name below it; that of an outer wall may go on beyond the
// band, and others are set smaller, and in two lines, before they are cut off.
func (b *bandDrawing) name(e *elevation, x measure.Length) []draw.Item {
	width := e.on(e.wall.Width)
	t := draw.Text{At: pt(x+width/2, b.y.Lo-55*mm/10), Text: draw.Clean(e.name()), Size: 42 * mm / 10, Bold: true, Anchor: draw.Middle, Ink: graphite}
	room := width - mm
	if draw.TextWidth(t.Text, t.Size, true) > room {
		switch e.index {
		case 0:
			t.At.X, t.Anchor, room = x+width-mm, draw.End, width+b.spare()
		case len(e.run.Walls) - 1:
			t.At.X, t.Anchor, room = x+mm, draw.Start, width+b.spare()-mm
		}
	}
	const least = 26 * mm / 10
	lines := draw.Wrapped(t.Text, least, true, room)
	switch {
	case len(lines) < 2:
		return []draw.Item{t.Within(room, least)}
	case len(lines) > 2 || strings.Join(lines, " ") != t.Text: // not even single words have room
		t.At, t.Size, t.Anchor, t.Turn = pt(x+width/2+least*36/100, e.reach.Y.Lo+2*mm), least, draw.Start, draw.Upwards
		t.Text = draw.Fitted(t.Text, t.Size, true, e.reach.Y.Length()*3/4)
		return []draw.Item{draw.Area{Shape: geom.Polygon{Outline: t.Box().Ring()}, Fill: white}, t}
	}
	t.Size = 3 * mm
	second := t
	t.Text, t.At.Y = lines[0], b.y.Lo-4*mm
	second.Text, second.At.Y = strings.Join(lines[1:], " "), t.At.Y-33*mm/10
	return []draw.Item{t.Within(room, least), second.Within(room, least)}
}

// flag writes a word over the walls, within the band; a second one that would touch
// the first stands higher.
func (b *bandDrawing) flag(x measure.Length, word string, ink draw.Ink) {
	t := draw.Text{At: pt(x, b.y.Hi+3*mm), Text: word, Size: 31 * mm / 10, Bold: true, Anchor: draw.Middle, Ink: ink}
	if half := draw.TextWidth(word, t.Size, true) / 2; b.wide > 2*half {
		t.At.X = min(max(x, half), b.wide-half)
	}
	if !b.board.isFree(t.Box()) {
		t.At.Y += 4 * mm
	}
	b.board.take(t.Box())
	b.words = append(b.words, t)
}

// ends draws the fold at the right end.
func (b *bandDrawing) ends(x measure.Length) {
	b.words = append(b.words, draw.Segment(pt(x, b.y.Lo-3*mm), pt(x, b.y.Hi+2*mm), foldPen))
}

var foldPen = draw.Pen{Ink: graphite, Width: 3 * mm / 10, Dash: []measure.Length{2 * mm, mm}}
