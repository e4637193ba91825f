package picture

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"golang.org/x/image/colornames"
)

// style is how a shape is painted, as it comes down from the groups round it.
type style struct {
	fill, stroke                        string // as they are written; "none"
	fillOpacity, strokeOpacity, opacity float64
	strokeWidth, miter                  float64
	lineCap, lineJoin                   string
	evenOdd, hidden                     bool
}

// plainStyle is that of SVG where nothing is said.
var plainStyle = style{fill: "black", stroke: "none", fillOpacity: 1, strokeOpacity: 1, opacity: 1, strokeWidth: 1, miter: 4, lineCap: "butt", lineJoin: "miter"}

// silent lists properties that change nothing of what is painted here.
var silent = []string{"font", "text", "-inkscape", "letter-spacing", "word-spacing", "line-height", "color-rendering", "shape-rendering", "image-rendering", "enable-background", "overflow", "isolation", "color", "stop-", "paint-order", "vector-effect"}

// properties are the attributes that say how a shape is painted.
var properties = []string{
	"fill", "stroke", "fill-opacity", "stroke-opacity", "opacity", "stroke-width", "stroke-miterlimit", "stroke-linecap", "stroke-linejoin", "stroke-dasharray", "stroke-dashoffset",
	"fill-rule", "display", "visibility", "clip-path", "mask", "filter", "mix-blend-mode", "marker-start", "marker-mid", "marker-end", "marker",
}

// styled returns the style of an element below one of that style.
func (p *painter) styled(n *node, s style) (style, error) {
	if n.attrs["class"] != "" && n.attrs["style"] == "" {
		// Classes need a style sheet, which is refused; without one they say nothing.
		delete(n.attrs, "class")
	}
	for _, name := range properties {
		if value, ok := n.attrs[name]; ok {
			if err := s.set(n, name, value); err != nil {
				return s, err
			}
		}
	}
	for part := range strings.SplitSeq(n.attrs["style"], ";") {
		name, value, ok := strings.Cut(part, ":")
		name, value = strings.TrimSpace(name), strings.TrimSpace(value)
		if !ok || slices.ContainsFunc(silent, func(s string) bool { return strings.HasPrefix(name, s) }) {
			continue
		}
		if err := s.set(n, name, value); err != nil {
			return s, err
		}
	}
	return s, nil
}

// set sets one property.
func (s *style) set(n *node, name, value string) error {
	number := func(into *float64, most float64) error {
		v, err := size(value)
		if percent, ok := strings.CutSuffix(value, "%"); ok {
			if v, err = size(percent); err == nil {
				v /= 100
			}
		}
		if err != nil || v < 0 {
			return n.wrong("%s %q is not read", name, value)
		}
		*into = min(v, most)
		return nil
	}
	switch name {
	case "fill":
		s.fill = value
	case "stroke":
		s.stroke = value
	case "fill-opacity":
		return number(&s.fillOpacity, 1)
	case "stroke-opacity":
		return number(&s.strokeOpacity, 1)
	case "opacity":
		own := 1.0
		err := number(&own, 1)
		s.opacity *= own
		if own < 1 && len(n.below) > 0 {
			return n.wrong("opacity of a whole group is not read: give it to the shapes")
		}
		return err
	case "stroke-width":
		return number(&s.strokeWidth, math.MaxFloat64)
	case "stroke-miterlimit":
		return number(&s.miter, math.MaxFloat64)
	case "stroke-linecap":
		s.lineCap = value
	case "stroke-linejoin":
		s.lineJoin = value
	case "fill-rule":
		s.evenOdd = value == "evenodd"
	case "display":
		s.hidden = value == "none"
	default:
		return s.refuse(n, name, value)
	}
	return nil
}

// refuse names a property that is not read, unless it says what holds anyway.
func (s *style) refuse(n *node, name, value string) error {
	switch value {
	case "", "none", "normal", "visible", "0", "auto", "inherit":
		return nil
	}
	return n.wrong("%s: %s is not read", name, value)
}

// ink is what an outline is painted with: a colour, or one from place to place.
type ink struct {
	colour  [3]float64
	opacity float64
	shade   *shade
}

// at returns the colour of a square, and how much of the ground it hides.
func (k *ink) at(x, y float64) (c [3]float64, opacity float64) {
	if k.shade == nil {
		return k.colour, k.opacity
	}
	c, o := k.shade.at(x, y)
	return c, o * k.opacity
}

// ink reads a paint; ok is false for none.
func (p *painter) ink(n *node, text string, opacity float64, o path, at affine) (k ink, ok bool, err error) {
	if text == "none" || text == "transparent" || opacity <= 0 {
		return k, false, nil
	}
	if inner, is := strings.CutPrefix(text, "url("); is {
		id, _, _ := strings.Cut(strings.Trim(inner, " \"'"), ")")
		of := p.ids[strings.TrimPrefix(strings.Trim(id, " \"'"), "#")]
		if of == nil || of.name != "linearGradient" && of.name != "radialGradient" {
			return k, false, n.wrong("%s is not a gradient of this drawing", text)
		}
		s, err := p.shadeOf(of, o, at)
		return ink{opacity: opacity, shade: s}, err == nil, err
	}
	c, known := colour(text)
	if !known {
		return k, false, n.wrong("colour %q is not read", text)
	}
	return ink{colour: c, opacity: opacity}, true, nil
}

// colour reads a colour of CSS, with its parts from 0 to 1.
func colour(text string) (c [3]float64, ok bool) {
	text = strings.ToLower(strings.TrimSpace(text))
	if text == "currentcolor" {
		return c, true
	}
	if named, ok := colornames.Map[text]; ok {
		return [3]float64{float64(named.R) / 255, float64(named.G) / 255, float64(named.B) / 255}, true
	}
	if hex, is := strings.CutPrefix(text, "#"); is {
		if len(hex) == 3 {
			hex = string([]byte{hex[0], hex[0], hex[1], hex[1], hex[2], hex[2]})
		}
		v, err := strconv.ParseUint(hex, 16, 32)
		if err != nil || len(hex) != 6 {
			return c, false
		}
		return [3]float64{float64(v>>16) / 255, float64(v>>8&255) / 255, float64(v&255) / 255}, true
	}
	inner, is := strings.CutPrefix(text, "rgb(")
	parts := strings.FieldsFunc(strings.TrimSuffix(inner, ")"), func(r rune) bool { return r == ',' || r == ' ' })
	if !is || len(parts) != 3 {
		return c, false
	}
	for i, part := range parts {
		full := 255.0
		if p, is := strings.CutSuffix(part, "%"); is {
			part, full = p, 100
		}
		v, err := size(part)
		if err != nil {
			return c, false
		}
		c[i] = min(max(v/full, 0), 1)
	}
	return c, true
}

// shade is a gradient: from each square back to its own plane, and there a place
// between 0 and 1.
type shade struct {
	back     affine
	from, to dot // of a linear one
	radius   float64
	radial   bool
	stops    []stop
}

type stop struct {
	at, opacity float64
	colour      [3]float64
}

// at returns the colour of a square.
func (s *shade) at(x, y float64) ([3]float64, float64) {
	p := s.back.on(dot{x, y})
	t := 0.0
	if s.radial {
		t = math.Hypot(p.x-s.from.x, p.y-s.from.y) / s.radius
	} else {
		dx, dy := s.to.x-s.from.x, s.to.y-s.from.y
		t = ((p.x-s.from.x)*dx + (p.y-s.from.y)*dy) / (dx*dx + dy*dy)
	}
	before := s.stops[0]
	if !(t > before.at) {
		return before.colour, before.opacity
	}
	for _, next := range s.stops[1:] {
		if t < next.at {
			f := (t - before.at) / (next.at - before.at)
			var c [3]float64
			for i := range c {
				c[i] = before.colour[i] + f*(next.colour[i]-before.colour[i])
			}
			return c, before.opacity + f*(next.opacity-before.opacity)
		}
		before = next
	}
	return before.colour, before.opacity
}

// shadeOf reads a gradient for an outline.
func (p *painter) shadeOf(n *node, o path, at affine) (*shade, error) {
	s := &shade{radial: n.name == "radialGradient"}
	if spread := n.attrs["spreadMethod"]; spread != "" && spread != "pad" {
		return nil, n.wrong("spreadMethod %s is not read", spread)
	}
	if n.attrs["fx"] != "" || n.attrs["fy"] != "" || n.attrs["fr"] != "" {
		return nil, n.wrong("a gradient with its focus off its middle is not read")
	}
	if err := p.stops(n, s, 0); err != nil {
		return nil, err
	}
	plane := at
	if n.attrs["gradientUnits"] != "userSpaceOnUse" {
		lo, hi := o.reach()
		plane = at.after(affine{hi.x - lo.x, 0, 0, hi.y - lo.y, lo.x, lo.y})
	}
	if text := n.attrs["gradientTransform"]; text != "" {
		m, err := transform(text)
		if err != nil {
			return nil, n.wrong("gradientTransform: %v", err)
		}
		plane = plane.after(m)
	}
	ok := false
	if s.back, ok = plane.back(); !ok { // the outline has no inside
		s.back = affine{1, 0, 0, 1, 0, 0}
	}
	return s, s.place(n)
}

// place reads where a gradient runs.
func (s *shade) place(n *node) error {
	names, v := []string{"x1", "y1", "x2", "y2"}, []float64{0, 0, 1, 0}
	if s.radial {
		names, v = []string{"cx", "cy", "r"}, []float64{0.5, 0.5, 0.5}
	}
	for i, name := range names {
		text := n.attrs[name]
		percent, is := strings.CutSuffix(text, "%")
		if text == "" {
			continue
		}
		x, err := size(percent)
		if err != nil {
			return n.wrong("%s %q is not a number", name, text)
		}
		if v[i] = x; is {
			v[i] /= 100
		}
	}
	s.from = dot{v[0], v[1]}
	if s.radial {
		s.radius = max(v[2], 1e-9)
		return nil
	}
	s.to = dot{v[2], v[3]}
	if s.to == s.from {
		s.to.x += 1e-9
	}
	return nil
}

// stops reads the colours of a gradient, its own or those of another.
func (p *painter) stops(n *node, s *shade, depth int) error {
	for _, b := range n.below {
		if b.name != "stop" {
			continue
		}
		one, err := b.stop()
		if err != nil {
			return err
		}
		if k := len(s.stops); k > 0 {
			one.at = max(one.at, s.stops[k-1].at)
		}
		s.stops = append(s.stops, one)
	}
	of := p.ids[strings.TrimPrefix(n.attrs["href"], "#")]
	if len(s.stops) == 0 && of != nil && depth < mostDepth && strings.HasSuffix(of.name, "Gradient") {
		return p.stops(of, s, depth+1)
	}
	if len(s.stops) == 0 {
		return n.wrong("a gradient without colours")
	}
	return nil
}

// stop reads one colour of a gradient.
func (n *node) stop() (stop, error) {
	value := func(name, otherwise string) string {
		for part := range strings.SplitSeq(n.attrs["style"], ";") {
			if key, v, ok := strings.Cut(part, ":"); ok && strings.TrimSpace(key) == name {
				return strings.TrimSpace(v)
			}
		}
		if v := n.attrs[name]; v != "" {
			return v
		}
		return otherwise
	}
	share := func(text string) (float64, error) {
		percent, is := strings.CutSuffix(text, "%")
		v, err := size(percent)
		if is {
			v /= 100
		}
		return min(max(v, 0), 1), err
	}
	at, errAt := share(value("offset", "0"))
	opacity, errOpacity := share(value("stop-opacity", "1"))
	c, ok := colour(value("stop-color", "black"))
	if errAt != nil || errOpacity != nil || !ok {
		return stop{}, n.wrong("this colour of a gradient is not read")
	}
	return stop{at, opacity, c}, nil
}

// reach returns the corners of the box round a path.
func (p path) reach() (lo, hi dot) {
	first := true
	for _, l := range p.flat(affine{1, 0, 0, 1, 0, 0}) {
		for _, q := range l.points {
			if first {
				lo, hi, first = q, q, false
			}
			lo, hi = dot{min(lo.x, q.x), min(lo.y, q.y)}, dot{max(hi.x, q.x), max(hi.y, q.y)}
		}
	}
	return lo, hi
}
