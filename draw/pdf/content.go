package pdf

import (
	"bytes"
	"errors"
	"fmt"
	"slices"
	"strings"

	"firstdrop/draw"
	"firstdrop/geom"
)

// content is the marks of one page (7.8.2). Its unit is the millimetre.
type content struct {
	wr   *writer
	b    bytes.Buffer
	used map[string]int // resources by name: kind and name, to the object's number
	err  error
	// What was last set, so that it need not be set again.
	fill, ink draw.Ink
	pen       string
}

func newContent(wr *writer, s *draw.Scene) *content {
	c := &content{wr: wr, used: map[string]int{}}
	// The scene's millimetres on the page: 72 points to 25.4 of them, the window's
	// lower left corner at the origin; round joints throughout.
	c.op("2.8346456693 0 0 2.8346456693 ", points(-s.Window.X.Lo), " ", points(-s.Window.Y.Lo), " cm 1 j")
	return c
}

func (c *content) op(parts ...string) {
	for _, p := range parts {
		c.b.WriteString(p)
	}
	c.b.WriteByte('\n')
}

func (c *content) bytes() []byte { return c.b.Bytes() }

// use notes that the page needs a resource.
func (c *content) use(kind, name string, id int) { c.used[kind+" /"+name] = id }

// resources returns the page's resource dictionary.
func (c *content) resources() string {
	kinds := map[string][]string{}
	for name, id := range c.used {
		kind, name, _ := strings.Cut(name, " ")
		kinds[kind] = append(kinds[kind], fmt.Sprintf("%s %d 0 R", name, id))
	}
	var b strings.Builder
	b.WriteString("<<")
	for _, kind := range []string{"ExtGState", "Font", "XObject"} {
		if all := kinds[kind]; len(all) > 0 {
			slices.Sort(all)
			b.WriteString("/" + kind + "<<" + strings.Join(all, " ") + ">>")
		}
	}
	b.WriteString(">>")
	return b.String()
}

// scene draws all layers. A scene to scale is one figure.
func (c *content) scene(s *draw.Scene) {
	at := c.wr.tags.top
	if s.Scale > 0 {
		at = c.wr.tags.figure(at, s.Title, s.Desc, s.Window, s.Window)
	}
	for _, l := range s.Layers {
		c.items(l.Items, at, s.Window)
	}
	c.mark(nil)
}

func (c *content) items(items []draw.Item, at *tag, page draw.Box) {
	for _, it := range items {
		switch it := it.(type) {
		case draw.Group:
			c.items(it.Items, c.wr.tags.under(at, it, page), page)
		case draw.Compound:
			c.items(it.Parts(), at, page)
		case draw.Text:
			c.mark(c.wr.tags.forText(at))
			c.text(it)
		default:
			c.mark(c.wr.tags.forShape(at))
			c.shape(it)
		}
	}
}

// mark begins marked content for a tag where another or none was open (14.6).
func (c *content) mark(t *tag) {
	c.b.WriteString(c.wr.tags.mark(t))
}

func (c *content) shape(it draw.Item) {
	switch it := it.(type) {
	case draw.Area:
		c.area(it)
	case draw.Line:
		c.line(it)
	case draw.Tile:
		c.tile(it)
	}
}

func (c *content) area(a draw.Area) {
	if len(a.Shape.Outline) == 0 {
		return
	}
	paint := ""
	switch {
	case !a.Fill.IsNone() && !a.Pen.IsNone():
		paint = "B*"
	case !a.Fill.IsNone():
		paint = "f*"
	case !a.Pen.IsNone():
		paint = "S"
	default:
		return
	}
	c.setFill(a.Fill)
	c.setPen(a.Pen)
	c.polygon(a.Shape)
	c.op(paint)
}

func (c *content) line(l draw.Line) {
	if l.Pen.IsNone() || len(l.Points) < 2 {
		return
	}
	c.setPen(l.Pen)
	c.path(l.Points)
	c.op("S")
}

func (c *content) polygon(p geom.Polygon) {
	for _, ring := range append([]geom.Ring{p.Outline}, p.Holes...) {
		if len(ring) > 0 {
			c.path(ring)
			c.op("h")
		}
	}
}

func (c *content) path(points []geom.Point) {
	for i, p := range points {
		c.op(millimetres(p.X), " ", millimetres(p.Y), [...]string{" m", " l"}[min(i, 1)])
	}
}

func (c *content) setFill(ink draw.Ink) {
	if !ink.IsNone() && c.fill != ink {
		c.fill = ink
		c.op(colour(ink), " rg")
	}
}

func (c *content) setPen(p draw.Pen) {
	if p.IsNone() {
		return
	}
	if c.ink != p.Ink {
		c.ink = p.Ink
		c.op(colour(p.Ink), " RG")
	}
	var dash []string
	solid := true
	for _, d := range p.Dash {
		dash = append(dash, millimetres(max(d, 0)))
		solid = solid && d <= 0
	}
	if solid { // strokes of no length would draw nothing
		dash = nil
	}
	if pen := millimetres(p.Width) + " w [" + strings.Join(dash, " ") + "] 0 d"; c.pen != pen {
		c.pen = pen
		c.op(pen)
	}
}

// colour returns an ink's three parts, to a thousandth.
func colour(i draw.Ink) string {
	part := func(n uint8) string {
		return trimmed(fmt.Sprintf("%d.%03d", int(n)/255, (int(n)*1000+127)/255%1000))
	}
	r, g, b := i.RGB()
	return part(r) + " " + part(g) + " " + part(b)
}

var errTooSmall = errors.New("the repeat is too small on this page to be drawn")

// tile clips to the polygon and sets the picture, which the file holds once, into
// every repeat.
func (c *content) tile(t draw.Tile) {
	if t.IsNone() {
		return
	}
	boxes, ok := t.Repeats()
	if !ok {
		c.err = errTooSmall
		return
	}
	im := c.wr.image(t.Picture)
	c.use("XObject", im.name, im.id)
	c.op("q")
	c.polygon(t.Shape)
	c.op("W* n")
	if fade := min(max(t.Fade, 0), 100); fade > 0 {
		name, id := c.wr.fade(fade)
		c.use("ExtGState", name, id)
		c.op("/", name, " gs")
	}
	for _, b := range boxes {
		w, h := millimetres(t.Width), millimetres(t.Height)
		if t.UpsideDown {
			c.op("q -", w, " 0 0 -", h, " ", millimetres(b.X.Hi), " ", millimetres(b.Y.Hi), " cm /", im.name, " Do Q")
		} else {
			c.op("q ", w, " 0 0 ", h, " ", millimetres(b.X.Lo), " ", millimetres(b.Y.Lo), " cm /", im.name, " Do Q")
		}
	}
	c.op("Q")
}
