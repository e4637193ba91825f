package dxf

import (
	"bufio"
	"fmt"
	"io"
	"strconv"
	"strings"

	"firstdrop/draw"
	"firstdrop/geom"
	"firstdrop/measure"
)

// Write writes the scene. The same scene gives the same bytes.
func Write(w io.Writer, s *draw.Scene) error {
	e := &encoder{w: bufio.NewWriter(w), scale: measure.Length(max(s.Scale, 1)), styles: map[string]string{}}
	e.layers(s)
	s.Walk(func(_ string, it draw.Item) { e.style(it) })
	e.header(s)
	e.tables()
	e.section("ENTITIES")
	i := 0
	for _, l := range s.Layers {
		e.layer = e.names[i]
		i++
		one := draw.Scene{Layers: []draw.Layer{l}}
		one.Walk(func(_ string, it draw.Item) { e.item(it) })
	}
	e.pair(0, "ENDSEC")
	e.pair(0, "EOF")
	return e.w.Flush() // a bufio.Writer keeps the first error
}

// encoder writes one scene.
type encoder struct {
	w      *bufio.Writer
	scale  measure.Length
	names  []string // of the scene's layers
	layer  string
	styles map[string]string // names of kinds of dashed line, by their dashes
	dashes []draw.Pen        // in the order in which they were found
}

// pair writes a group: what it is by its code, and its value.
func (e *encoder) pair(code int, value string) {
	e.w.WriteString(strconv.Itoa(code) + "\r\n" + value + "\r\n")
}

func (e *encoder) number(code, value int) { e.pair(code, strconv.Itoa(value)) }

// length writes a length of the wall in millimetres.
func (e *encoder) length(code int, l measure.Length) { e.pair(code, e.millimetres(l)) }

func (e *encoder) millimetres(l measure.Length) string {
	s := strings.TrimSuffix((l * e.scale).String(), " mm")
	if !strings.Contains(s, ".") {
		s += ".0"
	}
	return s
}

// point writes a point whose x has that code.
func (e *encoder) point(code int, p geom.Point) {
	e.length(code, p.X)
	e.length(code+10, p.Y)
	e.pair(code+20, "0.0")
}

func (e *encoder) section(name string) {
	e.pair(0, "SECTION")
	e.pair(2, name)
}

// header tells version, units and reach. $INSUNITS came with a later release, but
// readers ask for it wherever it stands: 4 is millimetres.
func (e *encoder) header(s *draw.Scene) {
	e.section("HEADER")
	e.pair(9, "$ACADVER")
	e.pair(1, "AC1009")
	e.pair(9, "$INSUNITS")
	e.number(70, 4)
	e.pair(9, "$EXTMIN")
	e.point(10, geom.Point{X: s.Window.X.Lo, Y: s.Window.Y.Lo})
	e.pair(9, "$EXTMAX")
	e.point(10, geom.Point{X: s.Window.X.Hi, Y: s.Window.Y.Hi})
	e.pair(0, "ENDSEC")
}

// layers names the scene's layers: capitals, digits and "_", at most 31, each once.
func (e *encoder) layers(s *draw.Scene) {
	seen := map[string]bool{}
	for _, l := range s.Layers {
		base := strings.Map(func(r rune) rune {
			if r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || r == '_' {
				return r
			}
			return '_'
		}, strings.ToUpper(l.Name))
		base = base[:min(len(base), 28)]
		if base == "" {
			base = "LAYER"
		}
		name := base
		for n := 2; seen[name]; n++ {
			name = fmt.Sprintf("%s%d", base, n)
		}
		seen[name] = true
		e.names = append(e.names, name)
	}
}

// style notes the dashes of an item's pen.
func (e *encoder) style(it draw.Item) {
	var p draw.Pen
	switch it := it.(type) {
	case draw.Area:
		p = it.Pen
	case draw.Line:
		p = it.Pen
	}
	if key := fmt.Sprint(p.Dash); len(p.Dash) > 0 && e.styles[key] == "" {
		e.dashes = append(e.dashes, p)
		e.styles[key] = fmt.Sprintf("DASHED%d", len(e.dashes))
	}
}

// tables writes the kinds of line, the layers and the letters.
func (e *encoder) tables() {
	e.section("TABLES")
	e.table("LTYPE", 1+len(e.dashes))
	e.pair(0, "LTYPE")
	e.lineType("CONTINUOUS", "Solid line", nil)
	for i, p := range e.dashes {
		e.pair(0, "LTYPE")
		e.lineType(fmt.Sprintf("DASHED%d", i+1), "Dashed", p.Dash)
	}
	e.pair(0, "ENDTAB")
	e.table("LAYER", len(e.names))
	for _, name := range e.names {
		e.pair(0, "LAYER")
		e.pair(2, name)
		e.number(70, 0)
		e.number(62, 7)
		e.pair(6, "CONTINUOUS")
	}
	e.pair(0, "ENDTAB")
	e.table("STYLE", 1)
	for _, p := range []struct {
		code  int
		value string
	}{{0, "STYLE"}, {2, "STANDARD"}, {70, "0"}, {40, "0.0"}, {41, "1.0"}, {50, "0.0"}, {71, "0"}, {42, "2.5"}, {3, "txt"}, {4, ""}} {
		e.pair(p.code, p.value)
	}
	e.pair(0, "ENDTAB")
	e.pair(0, "ENDSEC")
}

func (e *encoder) table(name string, n int) {
	e.pair(0, "TABLE")
	e.pair(2, name)
	e.number(70, n)
}

// lineType writes a kind of line: strokes count positive, gaps negative.
func (e *encoder) lineType(name, words string, dash []measure.Length) {
	if len(dash)%2 == 1 {
		dash = append(append([]measure.Length(nil), dash...), dash...)
	}
	sum := measure.Length(0)
	for _, d := range dash {
		sum += d
	}
	e.pair(2, name)
	e.number(70, 0)
	e.pair(3, words)
	e.number(72, 65)
	e.number(73, len(dash))
	e.length(40, sum)
	for i, d := range dash {
		e.length(49, d*measure.Length(1-2*(i%2)))
	}
}
