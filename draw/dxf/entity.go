package dxf

import (
	"fmt"
	"strings"
	"unicode/utf16"

	"firstdrop/draw"
	"firstdrop/geom"
)

// capital is the height of a capital letter in thousandths of a text's size: that of
// Noto Sans.
const capital = 714

func (e *encoder) item(it draw.Item) {
	switch it := it.(type) {
	case draw.Area:
		e.polygon(it.Shape, it.Pen)
	case draw.Tile:
		e.polygon(it.Shape, draw.Pen{})
	case draw.Line:
		e.line(it)
	case draw.Text:
		e.text(it)
	}
}

func (e *encoder) line(l draw.Line) {
	switch {
	case l.Pen.IsNone() || len(l.Points) < 2:
	case len(l.Points) == 2:
		e.entity("LINE", l.Pen)
		e.point(10, l.Points[0])
		e.point(11, l.Points[1])
	default:
		e.polyline(l.Points, false, l.Pen)
	}
}

// polygon draws the edges of an area, whether it has a pen or not.
func (e *encoder) polygon(p geom.Polygon, pen draw.Pen) {
	for _, ring := range append([]geom.Ring{p.Outline}, p.Holes...) {
		if len(ring) > 0 {
			e.polyline(ring, true, pen)
		}
	}
}

func (e *encoder) polyline(points []geom.Point, closed bool, pen draw.Pen) {
	e.entity("POLYLINE", pen)
	e.number(66, 1) // corners follow
	e.point(10, geom.Point{})
	e.number(70, map[bool]int{true: 1}[closed])
	for _, p := range points {
		e.pair(0, "VERTEX")
		e.pair(8, e.layer)
		e.point(10, p)
	}
	e.pair(0, "SEQEND")
	e.pair(8, e.layer)
}

// entity begins an entity on its layer, in its pen's colour and kind of line.
func (e *encoder) entity(kind string, pen draw.Pen) {
	e.pair(0, kind)
	e.pair(8, e.layer)
	if name := e.styles[fmt.Sprint(pen.Dash)]; name != "" {
		e.pair(6, name)
	}
	if !pen.IsNone() {
		e.number(62, colour(pen.Ink))
	}
}

func (e *encoder) text(t draw.Text) {
	words := strings.TrimSpace(draw.Clean(t.Text))
	if words == "" || t.Ink.IsNone() || t.Size <= 0 {
		return
	}
	e.pair(0, "TEXT")
	e.pair(8, e.layer)
	e.number(62, colour(t.Ink))
	e.point(10, t.At)
	e.length(40, t.Size*capital/1000)
	e.pair(1, escaped(words))
	if t.Turn == draw.Upwards {
		e.pair(50, "90.0")
	}
	if t.Anchor != draw.Start {
		e.number(72, int(t.Anchor))
		e.point(11, t.At)
	}
}

// longest is how many bytes a text may have in release 12.
const longest = 255

// escaped returns text in ASCII: other letters by their numbers in UTF-16, as
// drafting programs write them. What would be too long is cut off.
func escaped(text string) string {
	var b strings.Builder
	last := ' '
	for _, r := range text {
		part := string(r)
		switch before := last; {
		case r == '\\' || r == '^' || r == '%' && before == '%' || r > '~': // what begins codes of DXF's own, too
			part = ""
			for _, u := range utf16.Encode([]rune{r}) {
				part += fmt.Sprintf(`\U+%04X`, u)
			}
		}
		last = r
		if b.Len()+len(part) > longest {
			break
		}
		b.WriteString(part)
	}
	return b.String()
}

// colours are the first of DXF's numbered colours; 7 is black on white paper.
var colours = []struct {
	number  int
	r, g, b int
}{{1, 255, 0, 0}, {2, 255, 255, 0}, {3, 0, 255, 0}, {4, 0, 255, 255}, {5, 0, 0, 255}, {6, 255, 0, 255}, {7, 0, 0, 0}, {7, 255, 255, 255}, {8, 128, 128, 128}, {9, 192, 192, 192}}

// colour returns the number of the colour nearest to an ink.
func colour(i draw.Ink) int {
	r, g, b := i.RGB()
	best, least := 7, 1<<30
	for _, c := range colours {
		dr, dg, db := int(r)-c.r, int(g)-c.g, int(b)-c.b
		if d := dr*dr + dg*dg + db*db; d < least {
			best, least = c.number, d
		}
	}
	return best
}
