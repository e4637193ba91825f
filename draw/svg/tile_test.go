package svg_test

import (
	"strings"
	"testing"

	"firstdrop/draw"
	"firstdrop/geom"
)

// The picture stands in the file once; each tile places it by a pattern of its own,
// measured down from the head as SVG counts.
func TestTile(t *testing.T) {
	p := &draw.Picture{Width: 1, Height: 1, Pix: []uint8{1, 2, 3}}
	tile := draw.Tile{
		Shape:   geom.Polygon{Outline: draw.BoxAt(0, 0, 30*mm, 20*mm).Ring(), Holes: []geom.Ring{draw.BoxAt(5*mm, 5*mm, mm, mm).Ring()}},
		Picture: p, At: geom.Point{X: 3 * mm, Y: 4 * mm}, Width: 26*mm + mm/2, Height: 32 * mm,
	}
	turned := tile
	turned.UpsideDown, turned.Fade = true, 40
	out := write(t, &draw.Scene{ID: "w", Window: draw.BoxAt(0, 0, 40*mm, 40*mm), Layers: []draw.Layer{{Items: []draw.Item{tile, turned, draw.Tile{}}}}})
	for _, want := range []string{
		`<image id="w-picture" width="1" height="1" preserveAspectRatio="none" xlink:href="data:image/png;base64,`,
		`<pattern id="w-tile1" patternUnits="userSpaceOnUse" x="3" y="-36" width="26.5" height="32"><use xlink:href="#w-picture" transform="matrix(26.5 0 0 32 0 0)"/></pattern>`,
		`transform="matrix(-26.5 0 0 -32 26.5 32)"`, `<g opacity="0.6">`, `fill="url(#w-tile2)" fill-rule="evenodd"`,
	} {
		if !strings.Contains(out, want) {
			t.Errorf("lacks %s in\n%s", want, out)
		}
	}
	if n := strings.Count(out, "<image"); n != 1 {
		t.Errorf("%d pictures, want one", n)
	}
	p.Photo = true
	if out := write(t, &draw.Scene{Window: draw.BoxAt(0, 0, mm, mm), Layers: []draw.Layer{{Items: []draw.Item{tile}}}}); !strings.Contains(out, "data:image/jpeg") {
		t.Error("a photograph is not kept as one")
	}
}

// The start of a text is its left end whatever its direction; SVG's is where reading
// begins.
func TestRightToLeft(t *testing.T) {
	for _, tt := range []struct {
		text   string
		anchor draw.Anchor
		want   string
	}{
		{"12 שלום a", draw.Start, ` direction="rtl" text-anchor="end"`},
		{"غرفة", draw.Middle, ` direction="rtl" text-anchor="middle"`},
		{"שלום", draw.End, ` direction="rtl" fill`},
		{"a שלום", draw.End, ` font-size="3" text-anchor="end"`},
	} {
		out := write(t, &draw.Scene{Layers: []draw.Layer{{Items: []draw.Item{draw.Text{Text: tt.text, Size: 3 * mm, Anchor: tt.anchor}}}}})
		if !strings.Contains(out, tt.want) {
			t.Errorf("%s: lacks %s", tt.text, tt.want)
		}
	}
}
