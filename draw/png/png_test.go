package png_test

import (
	"bytes"
	"encoding/binary"
	"image"
	"image/color"
	stdpng "image/png"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"firstdrop/draw"
	"firstdrop/draw/png"
	"firstdrop/geom"
	"firstdrop/internal/anypage"
	"firstdrop/measure"
)

const mm = measure.Millimetre

var black = draw.RGB(0)

// dpi at which a square is a tenth of a millimetre.
const dpi = 254

// rendered draws items on a page of that many millimetres at 10 squares to each.
func rendered(t testing.TB, width, height measure.Length, items ...draw.Item) *image.RGBA {
	t.Helper()
	m, err := png.Render(&draw.Scene{Title: "test", Window: draw.BoxAt(0, 0, width*mm, height*mm), Layers: []draw.Layer{{Items: items}}}, dpi)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// inked returns how much of the picture is black, in squares.
func inked(m *image.RGBA) float64 {
	sum := 0
	for i := 0; i < len(m.Pix); i += 4 {
		sum += 255 - int(m.Pix[i])
	}
	return float64(sum) / 255
}

func box(x, y, w, h measure.Length) geom.Ring { return draw.BoxAt(x*mm, y*mm, w*mm, h*mm).Ring() }

func near(got, want, within float64) bool { return got-want <= within && want-got <= within }

// Areas by hand, in squares of 0.1 mm, to what edges may round away.
func TestAreas(t *testing.T) {
	for _, tt := range []struct {
		name string
		item draw.Item
		want float64
	}{
		{"square", draw.Area{Shape: geom.Polygon{Outline: box(1, 1, 5, 5)}, Fill: black}, 2500},
		{"half squares", draw.Area{Shape: geom.Polygon{Outline: draw.BoxAt(1*mm+mm/20, 1*mm+mm/20, 5*mm, 5*mm).Ring()}, Fill: black}, 2500},
		{"with a hole", draw.Area{Shape: geom.Polygon{Outline: box(1, 1, 6, 6), Holes: []geom.Ring{box(2, 2, 2, 3)}}, Fill: black}, 3000},
		{"a hole on the floor", draw.Area{Shape: geom.Polygon{Outline: box(1, 1, 6, 6), Holes: []geom.Ring{box(2, 1, 2, 3)}}, Fill: black}, 3000},
		{"an island in a hole", draw.Area{Shape: geom.Polygon{Outline: box(1, 1, 7, 7), Holes: []geom.Ring{box(2, 2, 5, 5), box(3, 3, 1, 1)}}, Fill: black}, 2500},
		{"triangle", draw.Area{Shape: geom.Polygon{Outline: geom.Ring{{X: mm, Y: mm}, {X: 7 * mm, Y: mm}, {X: 4 * mm, Y: 9 * mm}}}, Fill: black}, 2400},
		{"beyond the page", draw.Area{Shape: geom.Polygon{Outline: box(-50, -50, 55, 300)}, Fill: black}, 5000},
		{"a line", draw.Segment(geom.Point{X: mm, Y: 5 * mm}, geom.Point{X: 9 * mm, Y: 5 * mm}, draw.Pen{Ink: black, Width: mm / 2}), 400},
		{"a slanting line", draw.Segment(geom.Point{X: mm, Y: mm}, geom.Point{X: 4 * mm, Y: 5 * mm}, draw.Pen{Ink: black, Width: mm}), 500},
		{"a corner is round", draw.Line{Points: []geom.Point{{X: mm, Y: 5 * mm}, {X: 5 * mm, Y: 5 * mm}, {X: 5 * mm, Y: mm}}, Pen: draw.Pen{Ink: black, Width: 2 * mm}}, 700 + 700 + 100*3.14159/4 + 100},
		{"dashes", draw.Segment(geom.Point{Y: 5 * mm}, geom.Point{X: 9 * mm, Y: 5 * mm}, draw.Pen{Ink: black, Width: mm, Dash: []measure.Length{2 * mm, mm}}), 600},
		{"an odd dash", draw.Segment(geom.Point{Y: 5 * mm}, geom.Point{X: 9 * mm, Y: 5 * mm}, draw.Pen{Ink: black, Width: mm, Dash: []measure.Length{2 * mm}}), 500},
		{"no ink", draw.Area{Shape: geom.Polygon{Outline: box(1, 1, 5, 5)}}, 0},
	} {
		if got := inked(rendered(t, 10, 10, tt.item)); !near(got, tt.want, tt.want/200+1) {
			t.Errorf("%s: %.1f squares, want %.0f", tt.name, got, tt.want)
		}
	}
}

// The area of any triangle, by the shoelace formula.
func TestTriangles(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var r geom.Ring
		for range 3 {
			r = append(r, geom.Point{X: measure.Length(rapid.Int64Range(0, int64(20*mm)).Draw(t, "x")), Y: measure.Length(rapid.Int64Range(0, int64(20*mm)).Draw(t, "y"))})
		}
		u := func(l measure.Length) float64 { return float64(l) / float64(mm/10) }
		want := (u(r[1].X-r[0].X)*u(r[2].Y-r[0].Y) - u(r[2].X-r[0].X)*u(r[1].Y-r[0].Y)) / 2
		if want < 0 {
			want = -want
		}
		m, err := png.Render(&draw.Scene{Window: draw.BoxAt(0, 0, 20*mm, 20*mm), Layers: []draw.Layer{{Items: []draw.Item{draw.Area{Shape: geom.Polygon{Outline: r}, Fill: black}}}}}, dpi)
		if err != nil {
			t.Fatal(err)
		}
		// Along its edges of at most 600 squares each may be off by what rounding to
		// 1/256 square and to 256 greys takes.
		if got := inked(m); !near(got, want, 4) {
			t.Fatalf("%v covers %.1f squares, want %.1f", r, got, want)
		}
	})
}

// alike reports whether two colours differ by no more than what neighbouring squares
// of a coarse picture give.
func alike(a, b color.RGBA) bool {
	return near(float64(a.R), float64(b.R), 26) && near(float64(a.G), float64(b.G), 26) && near(float64(a.B), float64(b.B), 26)
}

func TestTileStandsTrue(t *testing.T) {
	// Four squares of a picture: red over green, blue over white on the right.
	p := &draw.Picture{Width: 2, Height: 2, Pix: []uint8{255, 0, 0, 0, 0, 255, 0, 255, 0, 255, 255, 255}}
	red, green := color.RGBA{255, 0, 0, 255}, color.RGBA{0, 255, 0, 255}
	blue, white := color.RGBA{0, 0, 255, 255}, color.RGBA{255, 255, 255, 255}
	tile := draw.Tile{
		Shape: geom.Polygon{Outline: box(0, 0, 10, 10), Holes: []geom.Ring{box(4, 4, 1, 1)}}, Picture: p,
		At: geom.Point{X: mm, Y: 2 * mm}, Width: 4 * mm, Height: 4 * mm,
	}
	at := func(m *image.RGBA, x, y measure.Length) color.RGBA { return m.RGBAAt(int(x), 100-int(y)) }
	m := rendered(t, 10, 10, tile)
	for _, tt := range []struct {
		x, y measure.Length // in squares of 0.1 mm from the lower left
		want color.RGBA
	}{
		{20, 50, red}, {40, 52, blue}, {20, 30, green}, {40, 30, white}, {60, 50, red}, {20, 90, red}, {20, 10, red}, {45, 45, white},
	} {
		if got := at(m, tt.x, tt.y); !alike(got, tt.want) {
			t.Errorf("at %d, %d: %v, want %v", tt.x, tt.y, got, tt.want)
		}
	}
	tile.UpsideDown = true
	m = rendered(t, 10, 10, tile)
	if got := at(m, 40, 30); !alike(got, red) {
		t.Errorf("upside down: %v, want red", got)
	}
	tile.Fade = 50
	m = rendered(t, 10, 10, tile)
	if got := at(m, 40, 30); !alike(got, color.RGBA{255, 127, 127, 255}) {
		t.Errorf("faded: %v, want half red", got)
	}
}

// No white line stands where one repeat ends and the next begins.
func TestTileHasNoSeams(t *testing.T) {
	p := &draw.Picture{Width: 3, Height: 3, Pix: bytes.Repeat([]uint8{9, 9, 9}, 9)}
	m := rendered(t, 30, 30, draw.Tile{Shape: geom.Polygon{Outline: box(0, 0, 30, 30)}, Picture: p, Width: 7*mm + 12_345, Height: 5*mm + 6_789})
	for i := 0; i < len(m.Pix); i += 4 {
		if m.Pix[i] != 9 {
			t.Fatalf("square %d is %d, want 9", i/4, m.Pix[i])
		}
	}
}

func TestWrite(t *testing.T) {
	var b, again bytes.Buffer
	page := anypage.Page()
	if err := png.Write(&b, page, 100); err != nil {
		t.Fatal(err)
	}
	if err := png.Write(&again, page, 100); err != nil || !bytes.Equal(b.Bytes(), again.Bytes()) {
		t.Errorf("the same scene gives other bytes, err = %v", err)
	}
	m, err := stdpng.Decode(bytes.NewReader(b.Bytes()))
	if err != nil {
		t.Fatal(err)
	}
	// 297 mm are 1169.3 squares at 100 dpi.
	if m.Bounds() != image.Rect(0, 0, 1170, 827) {
		t.Errorf("A4 lying is %v", m.Bounds())
	}
	i := bytes.Index(b.Bytes(), []byte("pHYs"))
	if i < 0 || binary.BigEndian.Uint32(b.Bytes()[i+4:]) != 3937 { // 100 / 0.0254
		t.Error("does not say how large a square is")
	}
}

func TestRenderRefuses(t *testing.T) {
	small := &draw.Scene{Title: "small", Window: draw.BoxAt(0, 0, mm, mm)}
	for _, tt := range []struct {
		scene *draw.Scene
		dpi   int
		want  string
	}{
		{small, 0, "dots per inch"},
		{small, 5000, "dots per inch"},
		{&draw.Scene{Title: "none"}, 100, "no size"},
		{&draw.Scene{Window: draw.BoxAt(0, 0, measure.MaxLength, measure.MaxLength)}, 300, "too large"},
	} {
		if _, err := png.Render(tt.scene, tt.dpi); err == nil || !strings.Contains(err.Error(), tt.want) {
			t.Errorf("err = %v, want %q", err, tt.want)
		}
	}
}

// Whatever a drawing holds, nothing panics.
func TestAnyPlaces(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := func(name string) measure.Length {
			return measure.Length(rapid.OneOf(rapid.Int64Range(-50e6, 50e6), rapid.Int64Range(-1e18, 1e18)).Draw(t, name))
		}
		var ring geom.Ring
		for range rapid.IntRange(0, 6).Draw(t, "corners") {
			ring = append(ring, geom.Point{X: l("x"), Y: l("y")})
		}
		pen := draw.Pen{Ink: black, Width: l("width"), Dash: []measure.Length{30 * mm, 9 * mm}}
		p := &draw.Picture{Width: 1, Height: 1, Pix: []uint8{1, 2, 3}}
		s := &draw.Scene{Window: draw.BoxAt(0, 0, 20*mm, 20*mm), Layers: []draw.Layer{{Items: []draw.Item{
			draw.Area{Shape: geom.Polygon{Outline: ring}, Fill: black},
			draw.Line{Points: ring, Pen: draw.Pen{Ink: black, Width: pen.Width}},
			draw.Text{At: geom.Point{X: l("x"), Y: l("y")}, Text: rapid.String().Draw(t, "text"), Size: l("size"), Ink: black},
			draw.Tile{Shape: geom.Polygon{Outline: ring}, Picture: p, At: geom.Point{X: l("x"), Y: l("y")}, Width: l("w"), Height: l("h")},
		}}}}
		if _, err := png.Render(s, 50); err != nil {
			t.Fatal(err)
		}
	})
}
