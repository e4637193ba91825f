// Package svg answers the question: what does a scene look like as SVG?
//
// The file is SVG 1.1 that needs nothing from outside: no scripts, no styles, no
// fonts, no links. One user unit is one millimetre, the viewBox is the scene's
// window, and every number is exact. What a name holds is only ever text.
package svg

import (
	"bufio"
	"io"
	"strconv"
	"strings"

	"golang.org/x/text/unicode/bidi"

	"firstdrop/draw"
	"firstdrop/geom"
	"firstdrop/measure"
)

// Write writes the scene. The same scene gives the same bytes.
func Write(w io.Writer, s *draw.Scene) error {
	e := &encoder{w: bufio.NewWriter(w), ids: map[string]bool{}, prefix: identifier(s.ID)}
	e.open(s)
	e.pictures(s)
	for _, l := range s.Layers {
		e.group(draw.Group{ID: l.Name, Title: l.Title, Items: l.Items})
	}
	e.put("</svg>\n")
	return e.w.Flush() // a bufio.Writer keeps the first error
}

// encoder writes one scene.
type encoder struct {
	w      *bufio.Writer
	ids    map[string]bool
	prefix string
	images map[*draw.Picture]string // ids
	tiles  int
}

func (e *encoder) put(parts ...string) {
	for _, p := range parts {
		e.w.WriteString(p)
	}
}

// open writes everything before the first layer.
func (e *encoder) open(s *draw.Scene) {
	width, height := millimetres(s.Window.X.Length()), millimetres(s.Window.Y.Length())
	left, top := millimetres(s.Window.X.Lo), millimetres(-s.Window.Y.Hi)
	title, desc := e.id("title"), e.id("desc")
	e.put(`<?xml version="1.0" encoding="UTF-8"?>`, "\n")
	e.put(`<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" version="1.1" width="`, width, `mm" height="`, height, `mm"`)
	e.put(` viewBox="`, left, " ", top, " ", width, " ", height, `"`)
	e.put(` role="img" aria-labelledby="`, title, " ", desc, `"`)
	e.put(` font-family="'Noto Sans', sans-serif" stroke-linejoin="round">`, "\n")
	e.put(`<title id="`, title, `">`, escaped(s.Title), "</title>\n")
	e.put(`<desc id="`, desc, `">`, escaped(s.Desc), "</desc>\n")
	e.put(`<rect x="`, left, `" y="`, top, `" width="`, width, `" height="`, height, `" fill="#ffffff"/>`, "\n")
}

// group writes a layer or a group.
func (e *encoder) group(g draw.Group) {
	e.put("<g")
	if g.ID != "" {
		e.put(` id="`, e.id(g.ID), `"`)
	}
	e.put(">\n")
	if g.Title != "" {
		e.put("<title>", escaped(g.Title), "</title>\n")
	}
	if g.Desc != "" {
		e.put("<desc>", escaped(g.Desc), "</desc>\n")
	}
	for _, it := range g.Items {
		e.item(it)
	}
	e.put("</g>\n")
}

// item writes one item. A compound one becomes a group of its parts.
func (e *encoder) item(it draw.Item) {
	switch it := it.(type) {
	case draw.Area:
		e.area(it)
	case draw.Line:
		e.line(it)
	case draw.Text:
		e.text(it)
	case draw.Tile:
		e.tile(it)
	case draw.Group:
		e.group(it)
	case draw.Compound:
		e.group(draw.Group{Items: it.Parts()})
	}
}

func (e *encoder) area(a draw.Area) { e.polygon(a.Shape, a.Fill.String(), a.Pen) }

// polygon writes a polygon with holes. fill is a colour or where one is found.
func (e *encoder) polygon(p geom.Polygon, fill string, pen draw.Pen) {
	var b strings.Builder
	for _, ring := range append([]geom.Ring{p.Outline}, p.Holes...) {
		path(&b, ring)
		b.WriteString("Z")
	}
	e.put(`<path d="`, b.String(), `" fill="`, fill, `"`)
	if len(p.Holes) > 0 {
		e.put(` fill-rule="evenodd"`)
	}
	e.pen(pen)
	e.put("/>\n")
}

func (e *encoder) line(l draw.Line) {
	if l.Pen.IsNone() || len(l.Points) < 2 {
		return
	}
	var b strings.Builder
	path(&b, l.Points)
	e.put(`<path d="`, b.String(), `" fill="none"`)
	e.pen(l.Pen)
	e.put("/>\n")
}

// path appends a path through the points.
func path(b *strings.Builder, points []geom.Point) {
	for i, p := range points {
		b.WriteString([...]string{"M", "L"}[min(i, 1)])
		b.WriteString(millimetres(p.X))
		b.WriteByte(' ')
		b.WriteString(millimetres(-p.Y))
	}
}

func (e *encoder) pen(p draw.Pen) {
	if p.IsNone() {
		return
	}
	e.put(` stroke="`, p.Ink.String(), `" stroke-width="`, millimetres(p.Width), `"`)
	for i, d := range p.Dash {
		e.put([...]string{` stroke-dasharray="`, " "}[min(i, 1)], millimetres(d))
	}
	if len(p.Dash) > 0 {
		e.put(`"`)
	}
}

func (e *encoder) text(t draw.Text) {
	x, y := millimetres(t.At.X), millimetres(-t.At.Y)
	e.put(`<text x="`, x, `" y="`, y, `" font-size="`, millimetres(t.Size), `"`)
	anchor := t.Anchor
	if isRightToLeft(t.Text) { // then SVG's start is the right end
		e.put(` direction="rtl"`)
		anchor = draw.End - anchor
	}
	if anchor != draw.Start {
		e.put(` text-anchor="`, [...]string{"start", "middle", "end"}[anchor], `"`)
	}
	if t.Bold {
		e.put(` font-weight="bold"`)
	}
	if t.Turn == draw.Upwards {
		e.put(` transform="rotate(-90 `, x, " ", y, `)"`)
	}
	e.put(` fill="`, t.Ink.String(), `">`, escaped(t.Text), "</text>\n")
}

// isRightToLeft reports whether a text's first strong letter runs from right to
// left, as the other writers see it.
func isRightToLeft(text string) bool {
	for _, r := range text {
		p, _ := bidi.LookupRune(r)
		switch p.Class() {
		case bidi.L:
			return false
		case bidi.R, bidi.AL:
			return true
		}
	}
	return false
}

// id returns a unique id made from a name.
func (e *encoder) id(name string) string {
	id := e.prefix + "-" + identifier(name)
	for n := 2; e.ids[id]; n++ {
		id = e.prefix + "-" + identifier(name) + "-" + strconv.Itoa(n)
	}
	e.ids[id] = true
	return id
}

// millimetres writes a length as an exact decimal number of millimetres.
func millimetres(l measure.Length) string { return strings.TrimSuffix(l.String(), " mm") }
