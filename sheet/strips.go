package sheet

import (
	"firstdrop/draw"
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
)

// part is a part of a drop that lies on the wall.
type part struct {
	drop *hanging.Drop
	of   int // index of the drop
	*hanging.Part
	seen geom.Interval // of the wall, in its coordinates, as much as one sees
	fall hanging.Fall  // of the design
}

// parts lists the parts on this wall from left to right.
func (e *elevation) parts() []part {
	x, _ := e.face.Bounds()
	var ps []part
	for i := range e.layout.Drops {
		d := &e.layout.Drops[i]
		for k := range d.Parts {
			p := part{drop: d, of: i, Part: &d.Parts[k], fall: e.layout.Fall(i, k)}
			if p.seen = p.X.Intersection(x); p.Wall == e.index && p.seen.Length() > 0 {
				ps = append(ps, p)
			}
		}
	}
	return ps
}

// strips draws the paper: every drop in its tint, light and less light in turn,
// the same on both sides of a corner.
func (e *elevation) strips() {
	outline := e.ring(e.face.Outline)
	e.add("paper", draw.Area{Shape: geom.Polygon{Outline: outline}, Fill: tints[0]})
	for _, p := range e.parts() {
		if p.drop.Index%2 == 0 {
			continue
		}
		if strip := e.between(outline, p.seen); len(strip) > 2 {
			e.add("paper", draw.Area{Shape: geom.Polygon{Outline: strip}, Fill: tints[1]})
		}
	}
	e.add("outline", draw.Area{Shape: geom.Polygon{Outline: outline}, Pen: outlinePen})
}

// between returns the part of a ring on the page that lies between the lines of a
// sheet's two edges.
func (e *elevation) between(r geom.Ring, x geom.Interval) geom.Ring {
	low, high := e.hang(0, e.reach.Y.Lo*measure.Length(e.scale)), e.hang(0, e.reach.Y.Hi*measure.Length(e.scale))
	lean, tall := high.X-low.X, max(high.Y-low.Y, 1)
	if lean == 0 {
		return within(r, geom.Interval{Lo: e.on(x.Lo), Hi: e.on(x.Hi)})
	}
	off := func(p geom.Point) measure.Length { return p.X - low.X - lean.Scaled(int64(p.Y-low.Y), int64(tall)) }
	r = beyond(r, func(p geom.Point) measure.Length { return off(p) - e.on(x.Lo) })
	return beyond(r, func(p geom.Point) measure.Length { return e.on(x.Hi) - off(p) })
}

// within returns the part of a ring that lies within a stretch of x. Where it
// falls apart, the parts are joined along the stretch's sides.
func within(r geom.Ring, x geom.Interval) geom.Ring {
	r = beyond(r, func(p geom.Point) measure.Length { return p.X - x.Lo })
	return beyond(r, func(p geom.Point) measure.Length { return x.Hi - p.X })
}

// beyond returns the part of a ring where depth is 0 or more. depth must be
// linear in the point.
func beyond(r geom.Ring, depth func(geom.Point) measure.Length) geom.Ring {
	var out geom.Ring
	for i, p := range r {
		q := r[(i+1)%len(r)]
		a, b := depth(p), depth(q)
		if a >= 0 {
			out = append(out, p)
		}
		if (a < 0) != (b < 0) && a != 0 && b != 0 {
			out = append(out, geom.Point{
				X: p.X + (q.X-p.X).Scaled(int64(a), int64(a-b)),
				Y: p.Y + (q.Y-p.Y).Scaled(int64(a), int64(a-b)),
			})
		}
	}
	return out
}

// numbers writes the name of every piece near its head: the drop's number,
// with a letter where the drop has several. What is too narrow carries its name
// above the wall.
func (e *elevation) numbers() {
	var xs []measure.Length
	var names []string
	parts := e.parts()
	for i := range e.layout.Pieces {
		p := &e.layout.Pieces[i]
		if p.Return != nil {
			continue
		}
		at, ok := e.widest(parts, p)
		if !ok || e.tag(p, at) {
			continue
		}
		xs, names = append(xs, e.hang(at.Lo+at.Length()/2, p.Y.Hi).X), append(names, p.Name)
	}
	e.above(xs, names)
}

// widest returns the widest stretch of the wall that a piece covers.
func (e *elevation) widest(parts []part, p *hanging.Piece) (x geom.Interval, ok bool) {
	for _, q := range parts {
		if q.of != p.Drop {
			continue
		}
		s := p.Across.Shifted(q.X.Lo - q.Across.Lo).Intersection(q.seen)
		if s.Length() > 0 && (!ok || s.Length() > x.Length()) {
			x, ok = s, true
		}
	}
	return x, ok
}

// tag writes a piece's name into its stretch of the wall, as high and as large
// as it has room, and reports whether it had. Large a little below the head comes
// before small near it, small near it before large far below.
func (e *elevation) tag(p *hanging.Piece, x geom.Interval) bool {
	near := p.Y.Hi - min(p.Y.Length()/2, 300*mm) // where the lines lean to
	within := geom.Interval{Lo: e.hang(x.Lo, near).X + mm, Hi: e.hang(x.Hi, near).X - mm}
	head, foot := e.on(min(p.Y.Hi, e.top(x)))-mm, e.on(p.Y.Lo)+mm/2
	most, middle := e.tagSize(), large-2*mm
	for _, try := range []struct{ near, least measure.Length }{{6 * mm, middle}, {30 * mm, middle}, {30 * mm, body}, {head - foot, body}} {
		for size := most; size >= try.least; size -= 2 * mm {
			for d := measure.Length(0); d <= try.near; d += mm {
				if e.tagAt(p, size, within, geom.Interval{Lo: foot, Hi: head - d}) {
					return true
				}
			}
		}
	}
	return false
}

// tagAt writes a piece's name at the top of a stretch of height, in the middle of
// its width or to one side, and reports whether it had room.
func (e *elevation) tagAt(p *hanging.Piece, size measure.Length, x, y geom.Interval) bool {
	w, h := draw.TextWidth(p.Name, size, true), size+mm
	if e.label.Match.Reversing {
		h += arrowTall
	}
	if w > x.Length() || h > y.Length() {
		return false
	}
	for _, quarters := range []measure.Length{2, 1, 3, 0, 4} {
		box := draw.BoxAt(x.Lo+(x.Length()-w)*quarters/4, y.Hi-h, w, h)
		if e.board.isFree(box) && e.marks.isFree(box) && e.isPapered(box) && !e.isCrossed(box) {
			e.board.take(box)
			e.mark(p.Name, size, box, e.layout.Drops[p.Drop].Reversed)
			return true
		}
	}
	return false
}

// tagSize returns the size of letters in which the longest name on the wall has
// room on a drop of full width, so that most names come out alike; never the
// smallest, which is for what has no room otherwise.
func (e *elevation) tagSize() measure.Length {
	size := large
	for ; size > large-2*mm; size -= 2 * mm {
		fits := true
		for i := range e.layout.Pieces {
			p := &e.layout.Pieces[i]
			if p.Return == nil && e.layout.PieceWall(p) == e.index && draw.TextWidth(p.Name, size, true)+2*mm > e.on(e.label.Width) {
				fits = false
			}
		}
		if fits {
			break
		}
	}
	return size
}

// top returns the highest point of the wall over a stretch of it.
func (e *elevation) top(x geom.Interval) measure.Length {
	y := geom.Interval{Lo: 0, Hi: -1}
	for _, c := range e.face.Cells(x) {
		y = y.Union(c.Y())
	}
	return y.Hi
}

// arrowTall is the height of the arrow that tells which way up a drop hangs.
const arrowTall = 8 * mm

// mark draws a name with a pencil's flourish under it and, for a paper whose
// alternate drops are reversed, an arrow to the end that came off the roll
// first.
func (e *elevation) mark(name string, size measure.Length, box draw.Box, reversed bool) {
	x, y := box.Middle().X, box.Y.Hi-size*4/5
	w := box.X.Length()
	items := []draw.Item{
		draw.Text{At: geom.Point{X: x, Y: y}, Text: name, Size: size, Anchor: draw.Middle, Bold: true, Ink: graphite},
		draw.Line{Points: []geom.Point{
			{X: box.X.Lo, Y: y - mm}, {X: box.X.Hi - w/5, Y: y - 7*mm/10}, {X: box.X.Hi, Y: y + mm/5},
		}, Pen: tagPen},
	}
	title := e.text("drop.title", "piece", name)
	if e.label.Match.Reversing {
		items = append(items, arrow(geom.Point{X: x, Y: box.Y.Lo + mm/2}, arrowTall-2*mm, reversed)...)
		title = e.text(map[bool]string{false: "drop.head-up", true: "drop.upside-down"}[reversed], "piece", name)
	}
	e.add("numbers", draw.Group{Title: title, Items: items})
}

// arrow returns an upright arrow with its lower end at a point.
func arrow(at geom.Point, tall measure.Length, down bool) []draw.Item {
	foot, head, barb := at, geom.Point{X: at.X, Y: at.Y + tall}, -2*mm
	if down {
		foot, head, barb = head, foot, 2*mm
	}
	return []draw.Item{
		draw.Segment(foot, head, tagPen),
		draw.Line{Points: []geom.Point{{X: head.X - 3*mm/2, Y: head.Y + barb}, head, {X: head.X + 3*mm/2, Y: head.Y + barb}}, Pen: tagPen},
	}
}

// above writes names in rows over the wall, each with a leader to its strip.
func (e *elevation) above(xs []measure.Length, names []string) {
	if len(xs) == 0 {
		return
	}
	widths := make([]measure.Length, len(xs))
	for i := range xs {
		widths[i] = draw.TextWidth(names[i], body, true)
	}
	order := ascending(xs)
	base := e.crown + 2*mm
	rows := 0
	for k, s := range spread(pick(xs, order), pick(widths, order), e.page.X) {
		i := order[k]
		y := base + measure.Length(s.row)*line
		rows = max(rows, s.row+1)
		tip := y
		if s.anchor != draw.Middle {
			tip += body / 2
		}
		e.add("numbers", draw.Segment(geom.Point{X: xs[i], Y: e.headAt(xs[i]) - 2*mm}, geom.Point{X: xs[i], Y: tip}, finePen))
		e.write("numbers", draw.Text{At: geom.Point{X: s.at, Y: y + mm}, Text: names[i], Size: body, Anchor: s.anchor, Bold: true, Ink: graphite})
	}
	e.crown = base + measure.Length(rows)*line
}

// headAt returns the highest point of the wall at x, both on the page.
func (e *elevation) headAt(x measure.Length) measure.Length {
	ys := columns(&e.face, x*measure.Length(e.scale))
	if len(ys) == 0 {
		return e.reach.Y.Hi
	}
	return e.on(ys[len(ys)-1].Hi)
}
