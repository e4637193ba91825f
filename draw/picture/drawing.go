package picture

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"strings"

	"firstdrop/draw"
	"firstdrop/message"
)

// A drawing is an SVG file of a safe kind: it draws paths and basic shapes with
// plain colours and gradients, in groups, with transforms, and once drawn things
// again with use. It is painted here; nothing outside of the file is ever read.
//
//	file ──► nodes, with their lines ──► outlines on the canvas ──► squares
//	         (what is not known stops      (lines are laid out as
//	          it, and is named)             outlines too)
//
// What another program keeps in the file for itself, in a namespace of its own,
// draws nothing and is passed over.

// Limits of drawings.
const (
	mostDrawingBytes = 4 << 20
	mostNodes        = 20_000      // with all that use repeats
	mostDepth        = 40          // of groups within groups
	mostPoints       = 400_000     // of all outlines
	mostPainting     = 200_000_000 // squares that are looked at
	mostCrossings    = 8_000_000   // of one shape with strips
	drawingSide      = 1440        // squares along the longer side of the picture
)

const svgSpace = "http://www.w3.org/2000/svg"

// drawingError says what a drawing has that is not read here, and where.
type drawingError struct {
	line int // from 1
	what string
}

func (e *drawingError) Error() string { return e.Said().Error() }

// Said returns where the trouble is, to be said in any language; what it is, is named
// in the words of SVG.
func (e *drawingError) Said() message.Message {
	return message.New("drawing_line", "line {line}: {what}", "line", e.line, "what", e.what)
}

// node is an element of the file.
type node struct {
	name  string
	attrs map[string]string
	line  int
	below []*node
}

func (n *node) wrong(format string, args ...any) error {
	return &drawingError{n.line, fmt.Sprintf(format, args...)}
}

// isDrawing reports whether a file seems to be an SVG drawing.
func isDrawing(data []byte) bool {
	head := bytes.TrimLeft(bytes.TrimPrefix(data, []byte("\ufeff")), " \t\r\n")
	return bytes.HasPrefix(head, []byte("<")) && bytes.Contains(data[:min(len(data), 2000)], []byte("<svg"))
}

// decodeDrawing paints an SVG drawing.
func decodeDrawing(data []byte) (*draw.Picture, error) {
	if len(data) > mostDrawingBytes {
		return nil, message.New("drawing_bytes", "the drawing is larger than {most} MB: simplify it, or save it as PNG", "most", mostDrawingBytes>>20)
	}
	root, err := parseDrawing(data)
	if err != nil {
		return nil, err
	}
	p := &painter{ids: map[string]*node{}}
	if err := p.know(root); err != nil {
		return nil, err
	}
	return p.paint(root)
}

// parseDrawing reads the elements of the file.
func parseDrawing(data []byte) (*node, error) {
	d := xml.NewDecoder(bytes.NewReader(data))
	d.Entity = map[string]string{}
	var open []*node
	var root *node
	count := 0
	for {
		line, _ := d.InputPos()
		token, err := d.Token()
		switch {
		case errors.Is(err, io.EOF) && root != nil && len(open) == 0:
			return root, nil
		case err != nil:
			line, _ = d.InputPos()
			return nil, &drawingError{line, "the drawing is broken: " + strings.TrimPrefix(err.Error(), "XML syntax error on ")}
		}
		switch t := token.(type) {
		case xml.Directive:
			if bytes.ContainsAny(t, "[<") {
				return nil, &drawingError{line, "declarations of its own are not read"}
			}
		case xml.ProcInst:
			if t.Target != "xml" {
				return nil, &drawingError{line, fmt.Sprintf("the instruction %q is not read", t.Target)}
			}
		case xml.StartElement:
			if t.Name.Space != svgSpace {
				if root == nil {
					return nil, &drawingError{line, "it does not begin with svg in the namespace of SVG"}
				}
				if err := d.Skip(); err != nil {
					return nil, &drawingError{line, "the drawing is broken"}
				}
				continue
			}
			n := &node{name: t.Name.Local, attrs: map[string]string{}, line: line}
			if count++; count > mostNodes || len(open) >= mostDepth {
				return nil, n.wrong("it has more than %d parts, or groups more than %d deep: simplify it, or save it as PNG", mostNodes, mostDepth)
			}
			for _, a := range t.Attr {
				if a.Name.Space == "" || a.Name.Local == "href" {
					n.attrs[a.Name.Local] = strings.TrimSpace(a.Value)
				}
			}
			if len(open) > 0 {
				over := open[len(open)-1]
				over.below = append(over.below, n)
			} else if root != nil {
				return nil, n.wrong("a second drawing begins")
			} else {
				root = n
			}
			open = append(open, n)
		case xml.EndElement:
			if t.Name.Space == svgSpace && len(open) > 0 {
				open = open[:len(open)-1]
			}
		}
	}
}

// painter paints a drawing.
type painter struct {
	canvas *canvas
	ids    map[string]*node
	nodes  int
	points int
}

// mute lists what draws nothing.
var mute = map[string]bool{"title": true, "desc": true, "metadata": true, "defs": true, "linearGradient": true, "radialGradient": true}

// known lists the elements that are read, besides those that draw nothing.
var known = map[string]bool{"svg": true, "g": true, "use": true, "path": true, "rect": true, "circle": true, "ellipse": true, "line": true, "polyline": true, "polygon": true, "stop": true}

// know finds the names in a drawing, and refuses what is not read.
func (p *painter) know(n *node) error {
	if !known[n.name] && !mute[n.name] {
		return n.wrong("%q is not read: turn it into a path, or save the drawing as PNG", n.name)
	}
	if n.name == "metadata" || n.name == "title" || n.name == "desc" {
		return nil
	}
	if id := n.attrs["id"]; id != "" {
		p.ids[id] = n
	}
	for name := range n.attrs {
		if strings.HasPrefix(strings.ToLower(name), "on") {
			return n.wrong("%q would be a script", name)
		}
	}
	for _, b := range n.below {
		if err := p.know(b); err != nil {
			return err
		}
	}
	return nil
}

// paint paints the whole drawing on white.
func (p *painter) paint(root *node) (*draw.Picture, error) {
	if root.name != "svg" {
		return nil, root.wrong("it begins with %q, not with svg", root.name)
	}
	box, err := viewBox(root)
	if err != nil {
		return nil, err
	}
	scale := drawingSide / max(box[2], box[3])
	wide, high := max(1, int(math.Round(box[2]*scale))), max(1, int(math.Round(box[3]*scale)))
	if wide < 8 || high < 8 {
		return nil, root.wrong("the drawing is far longer one way than the other")
	}
	p.canvas = newCanvas(wide, high)
	at := affine{float64(wide) / box[2], 0, 0, float64(high) / box[3], -box[0] * float64(wide) / box[2], -box[1] * float64(high) / box[3]}
	if err := p.children(root, at, plainStyle, 0); err != nil {
		return nil, err
	}
	return p.canvas.picture(), nil
}

// viewBox returns what of the drawing's plane is shown: x, y, width, height.
func viewBox(root *node) (box [4]float64, err error) {
	if text := root.attrs["viewBox"]; text != "" {
		all, err := numbers(text)
		if err != nil || len(all) != 4 || !(all[2] >= 1e-3 && all[3] >= 1e-3) {
			return box, root.wrong("viewBox %q is not four numbers", text)
		}
		return [4]float64(all), nil
	}
	for i, name := range []string{"width", "height"} {
		if box[2+i], err = root.length(name, 0); err != nil || !(box[2+i] >= 1e-3) {
			return box, root.wrong("it has neither a viewBox nor width and height")
		}
	}
	return box, nil
}

// children paints what is in an element.
func (p *painter) children(n *node, at affine, s style, depth int) error {
	for _, b := range n.below {
		if err := p.node(b, at, s, depth+1); err != nil {
			return err
		}
	}
	return nil
}

// node paints an element.
func (p *painter) node(n *node, at affine, s style, depth int) error {
	if mute[n.name] {
		return nil
	}
	if p.nodes++; p.nodes > mostNodes || depth > mostDepth {
		return n.wrong("use repeats too much, or itself")
	}
	s, err := p.styled(n, s)
	if err != nil || s.hidden {
		return err
	}
	if text := n.attrs["transform"]; text != "" {
		move, err := transform(text)
		if err != nil {
			return n.wrong("transform: %v", err)
		}
		at = at.after(move)
	}
	switch n.name {
	case "g":
		return p.children(n, at, s, depth)
	case "svg":
		return n.wrong("a drawing within the drawing is not read")
	case "use":
		return p.use(n, at, s, depth)
	}
	outline, err := n.outline()
	if err != nil {
		return err
	}
	return p.shape(n, outline, at, s)
}

// use paints another element once more.
func (p *painter) use(n *node, at affine, s style, depth int) error {
	href := n.attrs["href"]
	of := p.ids[strings.TrimPrefix(href, "#")]
	if !strings.HasPrefix(href, "#") || of == nil {
		return n.wrong("use of %q: only what the drawing holds itself is used", href)
	}
	x, errX := n.length("x", 0)
	y, errY := n.length("y", 0)
	if err := errors.Join(errX, errY); err != nil {
		return err
	}
	return p.node(of, at.after(affine{1, 0, 0, 1, x, y}), s, depth+1)
}

// shape paints an outline: its inside, then its line.
func (p *painter) shape(n *node, o path, at affine, s style) error {
	lines := o.flat(at)
	for _, l := range lines {
		p.points += len(l.points)
	}
	if p.points > mostPoints {
		return n.wrong("its outlines have more than %d points: simplify it, or save it as PNG", mostPoints)
	}
	if fill, ok, err := p.ink(n, s.fill, s.fillOpacity*s.opacity, o, at); err != nil {
		return err
	} else if ok && n.name != "line" {
		p.canvas.fill(lines, s.evenOdd, fill)
	}
	width := s.strokeWidth * at.size()
	if stroke, ok, err := p.ink(n, s.stroke, s.strokeOpacity*s.opacity, o, at); err != nil {
		return err
	} else if ok && width > 0 {
		laid := stroked(lines, width, s)
		for _, l := range laid {
			p.points += len(l.points)
		}
		if p.points > mostPoints*4 {
			return n.wrong("its lines have too many points: simplify it, or save it as PNG")
		}
		p.canvas.fill(laid, false, stroke)
	}
	if p.canvas.painted > mostPainting {
		return n.wrong("it paints over itself too often: simplify it, or save it as PNG")
	}
	return nil
}
