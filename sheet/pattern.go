package sheet

import (
	"slices"

	"firstdrop/draw"
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
)

// The design on the wall. A drop shows its picture repeated at its true phase, and
// what of it is seen is what will be: clipped by the ends of the wall, its ceiling
// and floor, its openings, and by the edges of the drop.
//
// Where a drop leans, as its wall is set or because it has turned a leaning corner, the
// picture is drawn in level bands, each set off by its share of the lean, no more than
// a tenth of a millimetre of paper from band to band. Its rows are drawn level, as
// high as they stand in the middle of the drop: on it they rise by a few millimetres.

// bandStep is how far the picture jumps at most from band to band.
const bandStep = mm / 10

// fade is how much of the ground shows through the design, in per cent, so that
// numbers and lines can be read over it.
const fade = 40

// patterned draws the design on the wall, if there is a picture of it. A drop that is
// hung later lies over one hung before.
func (e *elevation) patterned() {
	if e.repeat == nil {
		return
	}
	parts := e.parts()
	slices.SortStableFunc(parts, func(a, b part) int { return a.drop.Number - b.drop.Number })
	for _, p := range parts {
		if p.drop.Number > 0 {
			e.patternedPart(p)
		}
	}
}

func (e *elevation) patternedPart(p part) {
	bands := int64(min(max(e.on(p.fall.Skew.Abs())/bandStep, 1), 40))
	_, reach := e.face.Bounds()
	for k := range bands {
		y := geom.Interval{
			Lo: reach.Lo + reach.Length().Scaled(k, bands), Hi: reach.Lo + reach.Length().Scaled(k+1, bands),
		}
		off := p.fall.EdgeAt(y.Lo+y.Length()/2) - (p.X.Lo - p.Across.Lo)
		e.tile("pattern", p, p.X.Shifted(off), y)
	}
}

// tile draws the part of a drop that lies within a stretch of the wall.
func (e *elevation) tile(layer string, p part, x, y geom.Interval) {
	within := func(r geom.Ring) geom.Ring { return cropped(e.ring(r), e.box(x, y)) }
	shape := geom.Polygon{Outline: within(e.face.Outline)}
	if len(shape.Outline) < 3 {
		return
	}
	for _, h := range e.face.Holes {
		if ring := within(h); len(ring) > 2 {
			shape.Holes = append(shape.Holes, ring)
		}
	}
	e.add(layer, e.tiled(shape, p, x.Lo-p.Across.Lo))
}

// tiled returns a drop's design within a shape on the page; edge is where the drop's
// left edge stands on the wall.
func (e *elevation) tiled(shape geom.Polygon, p part, edge measure.Length) draw.Tile {
	// The picture's lower edge is the end of a repeat, and so stands where one begins.
	return draw.Tile{
		Shape: shape, Picture: e.repeat, At: e.at(edge, p.fall.RowAt(p.X.Lo+p.X.Length()/2)),
		Width: e.on(e.label.Width), Height: e.on(e.repeatTall()), UpsideDown: p.fall.Reversed, Fade: fade,
	}
}

// repeatTall is the height of one picture: the repeat, or, for a paper without one, a
// square.
func (e *elevation) repeatTall() measure.Length {
	if e.label.Repeat > 0 {
		return e.label.Repeat
	}
	return e.label.Width
}

// box returns a box of the wall on the page.
func (e *elevation) box(x, y geom.Interval) draw.Box {
	return draw.Box{X: geom.Interval{Lo: e.on(x.Lo), Hi: e.on(x.Hi)}, Y: geom.Interval{Lo: e.on(y.Lo), Hi: e.on(y.Hi)}}
}

// cropped returns the part of a ring that lies within a box.
func cropped(r geom.Ring, b draw.Box) geom.Ring {
	r = within(r, b.X)
	r = beyond(r, func(p geom.Point) measure.Length { return p.Y - b.Y.Lo })
	return beyond(r, func(p geom.Point) measure.Length { return b.Y.Hi - p.Y })
}

// patternedReturn draws the design on a return that is laid open into its opening.
func (e *elevation) patternedReturn(p *hanging.Piece, box draw.Box) {
	if e.repeat == nil {
		return
	}
	for _, q := range e.parts() {
		if q.of == p.Drop && q.X.Overlaps(p.Return.X) {
			e.add("openings", e.tiled(geom.Polygon{Outline: box.Ring()}, q, q.fall.Edge))
			e.add("openings", draw.Area{Shape: geom.Polygon{Outline: box.Ring()}, Pen: returnPen})
			return
		}
	}
}

// plates lays a light ground under every word that stands on the design.
func (e *elevation) plates() {
	if e.repeat == nil {
		return
	}
	var plates []draw.Item
	e.scene.Walk(func(layer string, it draw.Item) {
		t, ok := it.(draw.Text)
		if !ok || layer == "marks" {
			return
		}
		if b := t.Box(); e.reach.Overlaps(b) {
			plates = append(plates, draw.Area{Shape: geom.Polygon{Outline: b.Grown(mm / 4).Ring()}, Fill: white})
		}
	})
	e.add("plates", plates...)
}

// grid draws, for a paper with a design and no picture of it, where the repeat
// begins on every drop, and the motif's axis.
func (e *elevation) grid() {
	if e.label.Repeat <= 0 || e.repeat != nil || e.on(e.label.Repeat) < 3*mm {
		return
	}
	for _, p := range e.parts() {
		if p.drop.Number == 0 {
			continue
		}
		for _, y := range e.recurs(p.of) {
			e.gridLine(p.seen, y)
		}
	}
}

// gridLine draws a line along a row where there is paper.
func (e *elevation) gridLine(x geom.Interval, y measure.Length) {
	for _, c := range e.hung.Cells(x) {
		if span := c.Left.Intersection(c.Right); span.Lo <= y && y <= span.Hi {
			e.add("pattern", draw.Segment(e.hang(c.X.Lo, y), e.hang(c.X.Hi, y), gridPen))
		}
	}
}

var gridPen = draw.Pen{Ink: faint, Width: 15 * mm / 100, Dash: []measure.Length{mm / 2, mm}}
