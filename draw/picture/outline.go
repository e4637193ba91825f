package picture

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"
)

// affine is a transform: x' = a·x + c·y + e, y' = b·x + d·y + f.
type affine struct{ a, b, c, d, e, f float64 }

// after returns the transform that does move first and then t.
func (t affine) after(m affine) affine {
	return affine{
		t.a*m.a + t.c*m.b, t.b*m.a + t.d*m.b,
		t.a*m.c + t.c*m.d, t.b*m.c + t.d*m.d,
		t.a*m.e + t.c*m.f + t.e, t.b*m.e + t.d*m.f + t.f,
	}
}

func (t affine) on(p dot) dot { return dot{t.a*p.x + t.c*p.y + t.e, t.b*p.x + t.d*p.y + t.f} }

// size is how much longer things get, on the average over all directions.
func (t affine) size() float64 { return math.Sqrt(math.Abs(t.a*t.d - t.b*t.c)) }

// back returns the transform that undoes t; ok is false where nothing does.
func (t affine) back() (m affine, ok bool) {
	det := t.a*t.d - t.b*t.c
	if math.Abs(det) < 1e-12 {
		return m, false
	}
	return affine{t.d / det, -t.b / det, -t.c / det, t.a / det, (t.c*t.f - t.d*t.e) / det, (t.b*t.e - t.a*t.f) / det}, true
}

type dot struct{ x, y float64 }

// transform reads a list of transforms.
func transform(text string) (affine, error) {
	all := affine{1, 0, 0, 1, 0, 0}
	for text = strings.Trim(text, " ,\t\r\n"); text != ""; text = strings.TrimLeft(text, " ,\t\r\n") {
		name, rest, ok := strings.Cut(text, "(")
		inner, after, closed := strings.Cut(rest, ")")
		v, err := numbers(inner)
		if !ok || !closed || err != nil {
			return all, fmt.Errorf("%q is not read", text)
		}
		one, ok := move(strings.TrimSpace(name), v)
		if !ok {
			return all, fmt.Errorf("%q is not read", name)
		}
		all, text = all.after(one), after
	}
	return all, nil
}

// move returns one transform.
func move(name string, v []float64) (m affine, ok bool) {
	sin, cos := 0.0, 1.0
	if len(v) > 0 {
		sin, cos = math.Sincos(v[0] * math.Pi / 180)
	}
	switch {
	case name == "translate" && len(v) == 1:
		return affine{1, 0, 0, 1, v[0], 0}, true
	case name == "translate" && len(v) == 2:
		return affine{1, 0, 0, 1, v[0], v[1]}, true
	case name == "scale" && len(v) == 1:
		return affine{v[0], 0, 0, v[0], 0, 0}, true
	case name == "scale" && len(v) == 2:
		return affine{v[0], 0, 0, v[1], 0, 0}, true
	case name == "rotate" && len(v) == 1:
		return affine{cos, sin, -sin, cos, 0, 0}, true
	case name == "rotate" && len(v) == 3:
		to, from := affine{1, 0, 0, 1, v[1], v[2]}, affine{1, 0, 0, 1, -v[1], -v[2]}
		return to.after(affine{cos, sin, -sin, cos, 0, 0}).after(from), true
	case name == "skewX" && len(v) == 1 && cos != 0:
		return affine{1, 0, sin / cos, 1, 0, 0}, true
	case name == "skewY" && len(v) == 1 && cos != 0:
		return affine{1, sin / cos, 0, 1, 0, 0}, true
	case name == "matrix" && len(v) == 6:
		return affine{v[0], v[1], v[2], v[3], v[4], v[5]}, true
	}
	return m, false
}

// numbers reads numbers with spaces or commas between.
func numbers(text string) (all []float64, err error) {
	s := scanner{text: text}
	for s.more() {
		v, err := s.number()
		if err != nil {
			return nil, err
		}
		all = append(all, v)
	}
	return all, nil
}

// length returns an attribute that is a number, in the drawing's own units.
func (n *node) length(name string, otherwise float64) (float64, error) {
	text, ok := n.attrs[name]
	if !ok || text == "" {
		return otherwise, nil
	}
	v, err := size(text)
	if err != nil {
		return 0, n.wrong("%s %q is not a number", name, text)
	}
	return v, nil
}

// size reads a number with or without a unit of CSS, which has 96 px to the inch.
func size(text string) (float64, error) {
	scale := 1.0
	for unit, px := range map[string]float64{"px": 1, "mm": 96 / 25.4, "cm": 960 / 25.4, "in": 96, "pt": 96.0 / 72, "pc": 16} {
		if rest, ok := strings.CutSuffix(text, unit); ok {
			text, scale = rest, px
			break
		}
	}
	v, err := strconv.ParseFloat(strings.TrimSpace(text), 64)
	if err != nil || math.IsNaN(v) || math.Abs(v) > 1e9 {
		return 0, errors.New("no number")
	}
	return v * scale, nil
}

// outline returns the outline of a shape.
func (n *node) outline() (path, error) {
	var v [6]float64
	names := map[string][]string{
		"rect": {"x", "y", "width", "height", "rx", "ry"}, "circle": {"cx", "cy", "r"}, "ellipse": {"cx", "cy", "rx", "ry"}, "line": {"x1", "y1", "x2", "y2"},
	}
	for i, name := range names[n.name] {
		var err error
		if v[i], err = n.length(name, 0); err != nil {
			return nil, err
		}
	}
	switch n.name {
	case "path":
		p, err := parsePath(n.attrs["d"])
		if err != nil {
			return nil, n.wrong("path: %v", err)
		}
		return p, nil
	case "polyline", "polygon":
		return n.poly()
	case "rect":
		return n.rect(v), nil
	case "circle":
		return ellipse(v[0], v[1], v[2], v[2]), nil
	case "ellipse":
		return ellipse(v[0], v[1], v[2], v[3]), nil
	case "line":
		return path{{'M', [3]dot{{v[0], v[1]}}}, {'L', [3]dot{{v[2], v[3]}}}}, nil
	}
	return nil, n.wrong("%q is not read here", n.name)
}

func (n *node) poly() (p path, err error) {
	v, err := numbers(n.attrs["points"])
	if err != nil || len(v)%2 != 0 {
		return nil, n.wrong("points are not pairs of numbers")
	}
	for i := 0; i < len(v); i += 2 {
		letter := byte('L')
		if i == 0 {
			letter = 'M'
		}
		p = append(p, step{letter, [3]dot{{v[i], v[i+1]}}})
	}
	if n.name == "polygon" && len(p) > 0 {
		p = append(p, step{letter: 'Z'})
	}
	return p, nil
}

// round is how far the handles of a curve stand off, for a quarter of a circle.
const round = 0.5522847498

func ellipse(x, y, rx, ry float64) path {
	if !(rx > 0 && ry > 0) {
		return nil
	}
	kx, ky := rx*round, ry*round
	return path{
		{'M', [3]dot{{x + rx, y}}},
		{'C', [3]dot{{x + rx, y + ky}, {x + kx, y + ry}, {x, y + ry}}},
		{'C', [3]dot{{x - kx, y + ry}, {x - rx, y + ky}, {x - rx, y}}},
		{'C', [3]dot{{x - rx, y - ky}, {x - kx, y - ry}, {x, y - ry}}},
		{'C', [3]dot{{x + kx, y - ry}, {x + rx, y - ky}, {x + rx, y}}},
		{letter: 'Z'},
	}
}

// rect returns a rectangle: x, y, width, height, and the radii of its corners.
func (n *node) rect(v [6]float64) path {
	x, y, w, h, rx, ry := v[0], v[1], v[2], v[3], v[4], v[5]
	if !(w > 0 && h > 0) {
		return nil
	}
	if _, ok := n.attrs["rx"]; !ok {
		rx = ry
	}
	if _, ok := n.attrs["ry"]; !ok {
		ry = rx
	}
	rx, ry = min(rx, w/2), min(ry, h/2)
	if !(rx > 0 && ry > 0) {
		return path{{'M', [3]dot{{x, y}}}, {'L', [3]dot{{x + w, y}}}, {'L', [3]dot{{x + w, y + h}}}, {'L', [3]dot{{x, y + h}}}, {letter: 'Z'}}
	}
	kx, ky := rx*(1-round), ry*(1-round)
	return path{
		{'M', [3]dot{{x + rx, y}}},
		{'L', [3]dot{{x + w - rx, y}}},
		{'C', [3]dot{{x + w - kx, y}, {x + w, y + ky}, {x + w, y + ry}}},
		{'L', [3]dot{{x + w, y + h - ry}}},
		{'C', [3]dot{{x + w, y + h - ky}, {x + w - kx, y + h}, {x + w - rx, y + h}}},
		{'L', [3]dot{{x + rx, y + h}}},
		{'C', [3]dot{{x + kx, y + h}, {x, y + h - ky}, {x, y + h - ry}}},
		{'L', [3]dot{{x, y + ry}}},
		{'C', [3]dot{{x, y + ky}, {x + kx, y}, {x + rx, y}}},
		{letter: 'Z'},
	}
}
