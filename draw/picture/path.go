package picture

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// path is an outline in steps: M begins at a point, L goes straight to one, C on a
// cubic curve with two handles, Z back to where it began. Everything else that path
// data of SVG may hold is turned into these.
type path []step

type step struct {
	letter byte
	to     [3]dot // the last that the letter needs is where it ends
}

// scanner reads path data.
type scanner struct {
	text string
	at   int
}

// more skips spaces and commas and reports whether there is something behind.
func (s *scanner) more() bool {
	for s.at < len(s.text) && strings.IndexByte(" ,\t\r\n", s.text[s.at]) >= 0 {
		s.at++
	}
	return s.at < len(s.text)
}

// number reads a number as SVG writes it: ".5", "-1e-3", without a space before a
// sign or a second point.
func (s *scanner) number() (float64, error) {
	s.more()
	from, point, exponent := s.at, false, false
	for ; s.at < len(s.text); s.at++ {
		c := s.text[s.at]
		switch {
		case c >= '0' && c <= '9':
		case (c == '-' || c == '+') && (s.at == from || s.text[s.at-1]|0x20 == 'e'):
		case c == '.' && !point && !exponent:
			point = true
		case c|0x20 == 'e' && !exponent && s.at > from:
			exponent = true
		default:
			return s.parsed(from)
		}
	}
	return s.parsed(from)
}

func (s *scanner) parsed(from int) (float64, error) {
	v, err := strconv.ParseFloat(s.text[from:s.at], 64)
	if err != nil || math.IsNaN(v) || math.Abs(v) > 1e9 {
		return 0, fmt.Errorf("a number is expected at character %d", from+1)
	}
	return v, nil
}

// flag reads one digit, 0 or 1, which may stand without a space after it.
func (s *scanner) flag() (bool, error) {
	if !s.more() || s.text[s.at] != '0' && s.text[s.at] != '1' {
		return false, fmt.Errorf("0 or 1 is expected at character %d", s.at+1)
	}
	s.at++
	return s.text[s.at-1] == '1', nil
}

// takes says how many numbers follow each letter.
var takes = map[byte]int{'M': 2, 'L': 2, 'H': 1, 'V': 1, 'C': 6, 'S': 4, 'Q': 4, 'T': 2, 'A': 7, 'Z': 0}

// parsePath reads path data.
func parsePath(text string) (path, error) {
	r := pathReader{scanner: scanner{text: text}}
	var letter byte
	for r.more() {
		c := r.text[r.at]
		if c|0x20 >= 'a' && c|0x20 <= 'z' && c|0x20 != 'e' {
			letter = c
			r.at++
		} else if letter == 0 || letter|0x20 == 'z' {
			return nil, fmt.Errorf("a letter is expected at character %d", r.at+1)
		}
		n, ok := takes[letter&^0x20]
		if !ok || len(r.out) == 0 && letter&^0x20 != 'M' {
			return nil, fmt.Errorf("%q is not read at character %d", letter, r.at)
		}
		if err := r.step(letter, n); err != nil {
			return nil, err
		}
		if letter&^0x20 == 'M' {
			letter-- // further pairs are lines
		}
	}
	return r.out, nil
}

// pathReader turns path data into steps.
type pathReader struct {
	scanner
	out         path
	here, begun dot
	handle      dot  // the last handle of a curve
	was         byte // the letter before, a capital
}

// step reads the numbers of a letter and adds its steps.
func (r *pathReader) step(letter byte, n int) error {
	var v [7]float64
	for i := range n {
		var err error
		if letter|0x20 == 'a' && (i == 3 || i == 4) {
			var on bool
			if on, err = r.flag(); on {
				v[i] = 1
			}
		} else {
			v[i], err = r.number()
		}
		if err != nil {
			return err
		}
	}
	base := dot{}
	if letter >= 'a' {
		base = r.here
	}
	p := func(i int) dot { return dot{base.x + v[i], base.y + v[i+1]} }
	mirrored := func(of ...byte) dot {
		for _, b := range of {
			if r.was == b {
				return dot{2*r.here.x - r.handle.x, 2*r.here.y - r.handle.y}
			}
		}
		return r.here
	}
	capital := letter &^ 0x20
	switch capital {
	case 'M':
		r.begun = p(0)
		r.add('M', p(0))
	case 'L':
		r.add('L', p(0))
	case 'H':
		r.add('L', dot{base.x + v[0], r.here.y})
	case 'V':
		r.add('L', dot{r.here.x, base.y + v[0]})
	case 'C':
		r.curve(p(0), p(2), p(4))
	case 'S':
		r.curve(mirrored('C', 'S'), p(0), p(2))
	case 'Q':
		r.quad(p(0), p(2))
	case 'T':
		r.quad(mirrored('Q', 'T'), p(0))
	case 'A':
		r.arc(v[0], v[1], v[2], v[3] == 1, v[4] == 1, p(5))
	case 'Z':
		r.out = append(r.out, step{letter: 'Z'})
		r.here = r.begun
	}
	r.was = capital
	return nil
}

func (r *pathReader) add(letter byte, to dot) {
	r.out = append(r.out, step{letter, [3]dot{to}})
	r.here = to
}

func (r *pathReader) curve(a, b, to dot) {
	r.out = append(r.out, step{'C', [3]dot{a, b, to}})
	r.handle, r.here = b, to
}

// quad adds a curve with one handle, as one with two.
func (r *pathReader) quad(h, to dot) {
	third := func(p dot) dot { return dot{p.x + (h.x-p.x)*2/3, p.y + (h.y-p.y)*2/3} }
	r.curve(third(r.here), third(to), to)
	r.handle = h
}

// arc adds a part of an ellipse as curves, as the notes on implementation of SVG 1.1
// (F.6) find its middle.
func (r *pathReader) arc(rx, ry, turn float64, large, sweep bool, to dot) {
	rx, ry = math.Abs(rx), math.Abs(ry)
	from := r.here
	if rx == 0 || ry == 0 || from == to {
		r.add('L', to)
		return
	}
	sin, cos := math.Sincos(turn * math.Pi / 180)
	hx, hy := (from.x-to.x)/2, (from.y-to.y)/2
	x, y := cos*hx+sin*hy, -sin*hx+cos*hy
	if over := x*x/(rx*rx) + y*y/(ry*ry); over > 1 {
		rx, ry = rx*math.Sqrt(over), ry*math.Sqrt(over)
	}
	k := math.Sqrt(max(0, rx*rx*ry*ry/(rx*rx*y*y+ry*ry*x*x)-1))
	if large == sweep {
		k = -k
	}
	cx, cy := k*rx*y/ry, -k*ry*x/rx
	begin := math.Atan2((y-cy)/ry, (x-cx)/rx)
	by := math.Atan2((-y-cy)/ry, (-x-cx)/rx) - begin
	if sweep && by < 0 {
		by += 2 * math.Pi
	} else if !sweep && by > 0 {
		by -= 2 * math.Pi
	}
	mid := dot{cos*cx - sin*cy + (from.x+to.x)/2, sin*cx + cos*cy + (from.y+to.y)/2}
	on := affine{cos * rx, sin * rx, -sin * ry, cos * ry, mid.x, mid.y}
	n := int(math.Ceil(math.Abs(by)/(math.Pi/2) - 1e-9))
	part := by / float64(max(n, 1))
	stand := math.Tan(part/4) * 4 / 3
	for i := range n {
		s0, c0 := math.Sincos(begin + float64(i)*part)
		s1, c1 := math.Sincos(begin + float64(i+1)*part)
		end := on.on(dot{c1, s1})
		if i == n-1 {
			end = to
		}
		r.curve(on.on(dot{c0 - stand*s0, s0 + stand*c0}), on.on(dot{c1 + stand*s1, s1 - stand*c1}), end)
	}
}

// polyline is a path in straight pieces on the canvas.
type polyline struct {
	points []dot
	closed bool
}

// flat returns a path in straight pieces, transformed.
func (p path) flat(at affine) (all []polyline) {
	var one polyline
	keep := func(closed bool) {
		if len(one.points) > 0 {
			one.closed = closed
			all = append(all, one)
		}
		one = polyline{}
	}
	for _, s := range p {
		switch s.letter {
		case 'M':
			keep(false)
			one.points = []dot{at.on(s.to[0])}
		case 'L':
			one.points = append(one.points, at.on(s.to[0]))
		case 'C':
			one.points = bent(one.points, at.on(s.to[0]), at.on(s.to[1]), at.on(s.to[2]))
		case 'Z':
			first := dot{}
			if len(one.points) > 0 {
				first = one.points[0]
			}
			keep(true)
			one.points = []dot{first}
		}
	}
	if len(one.points) > 1 || len(all) == 0 {
		keep(false)
	}
	return all
}

// bent adds a curve in straight pieces of two squares or so.
func bent(points []dot, b, c, d dot) []dot {
	a := points[len(points)-1]
	long := math.Hypot(b.x-a.x, b.y-a.y) + math.Hypot(c.x-b.x, c.y-b.y) + math.Hypot(d.x-c.x, d.y-c.y)
	n := int(min(max(long/2, 4), 200))
	for i := 1; i <= n; i++ {
		t := float64(i) / float64(n)
		u := 1 - t
		f, g, h, k := u*u*u, 3*u*u*t, 3*u*t*t, t*t*t
		points = append(points, dot{f*a.x + g*b.x + h*c.x + k*d.x, f*a.y + g*b.y + h*c.y + k*d.y})
	}
	return points
}
