package svg_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"strings"
	"testing"

	"firstdrop/draw"
	"firstdrop/draw/svg"
	"firstdrop/geom"
	"firstdrop/measure"
)

const mm = measure.Millimetre

// hostile are names that must come out as nothing but text.
var hostile = []string{
	`<script>alert(1)</script>`, `"/><script>`, `]]><!--`, `&xxe;`, `javascript:alert(1)`, "a\x00b\x1b[31m", "\u202egnp.exe",
	"line\nbreak", `' onload='x`, strings.Repeat("long ", 60), "שלום دار 壁紙 🧻", "\xff\xfe",
}

func scene(name string) *draw.Scene {
	pen := draw.Pen{Ink: draw.RGB(0x123456), Width: mm / 2, Dash: []measure.Length{2 * mm, mm / 4}}
	return &draw.Scene{
		ID: name, Title: name, Desc: name, Scale: 20, Window: draw.BoxAt(-10*mm, -5*mm, 100*mm, 50*mm),
		Layers: []draw.Layer{{Name: name, Title: name, Items: []draw.Item{
			draw.Group{ID: name, Title: name, Items: []draw.Item{
				draw.Area{
					Shape: geom.Polygon{Outline: draw.BoxAt(0, 0, 30*mm, 20*mm).Ring(), Holes: []geom.Ring{draw.BoxAt(5*mm, 5*mm, mm, mm).Ring()}},
					Fill:  draw.RGB(0xffeedd), Pen: pen,
				},
				draw.Segment(geom.Point{X: 61_850_000, Y: -1}, geom.Point{X: 61_850_000, Y: 40 * mm}, pen),
				draw.Text{At: geom.Point{X: mm, Y: 2 * mm}, Text: name, Size: 5 * mm, Anchor: draw.Middle, Turn: draw.Upwards, Bold: true, Ink: draw.RGB(0)},
			}},
			draw.Hatch{Shape: geom.Polygon{Outline: draw.BoxAt(0, 0, 30*mm, 20*mm).Ring()}, Gap: 5 * mm, Pen: pen},
			draw.Dimension{From: geom.Point{}, To: geom.Point{X: 30 * mm}, Text: "600 mm", Size: 3 * mm, Pen: pen},
		}}},
	}
}

func write(t testing.TB, s *draw.Scene) string {
	t.Helper()
	var b bytes.Buffer
	if err := svg.Write(&b, s); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// allowed are the elements and attributes that a drawing needs; none of them
// can load or run anything (SVG 1.1, appendix on element and attribute index).
var allowed = map[string]string{
	"svg":   "xmlns xlink version width height viewBox role aria-labelledby font-family stroke-linejoin",
	"title": "id", "desc": "id", "g": "id",
	"rect": "x y width height fill",
	"path": "d fill fill-rule stroke stroke-width stroke-dasharray",
	"text": "x y font-size direction text-anchor font-weight transform fill",
	"defs": "", "image": "id width height preserveAspectRatio href", "pattern": "id patternUnits x y width height", "use": "href transform",
}

func TestNothingActiveWhateverNamesHold(t *testing.T) {
	for _, name := range hostile {
		out := write(t, scene(name))
		d := xml.NewDecoder(strings.NewReader(out))
		ids := map[string]bool{}
		texts := 0
		for {
			tok, err := d.Token()
			if errors.Is(err, io.EOF) {
				break
			}
			if err != nil {
				t.Fatalf("%q: not well-formed: %v\n%s", name, err, out)
			}
			switch tok := tok.(type) {
			case xml.StartElement:
				may, ok := allowed[tok.Name.Local]
				if !ok {
					t.Errorf("%q: element %s", name, tok.Name.Local)
				}
				for _, a := range tok.Attr {
					if !strings.Contains(" "+may+" ", " "+a.Name.Local+" ") {
						t.Errorf("%q: attribute %s of %s", name, a.Name.Local, tok.Name.Local)
					}
					if a.Name.Local == "id" && ids[a.Value] {
						t.Errorf("%q: id %q twice", name, a.Value)
					}
					if a.Name.Local == "id" {
						ids[a.Value] = true
					}
				}
				if tok.Name.Local == "text" {
					texts++
				}
			case xml.Comment, xml.Directive:
				t.Errorf("%q: %T", name, tok)
			}
		}
		if texts != 2 {
			t.Errorf("%q: %d texts, want 2", name, texts)
		}
	}
}

func TestTextComesBack(t *testing.T) {
	for name, want := range map[string]string{
		`<b> & "c" 'd'`: `<b> & "c" 'd'`,
		"8' 2 1/2\"":    "8' 2 1/2\"",
		"a\x01b":        "a\ufffdb",
		"x\u202ey":      "xy",
		"two\nlines":    "two lines",
		"שלום":          "שלום",
	} {
		var doc struct {
			Title string `xml:"title"`
			Desc  string `xml:"desc"`
		}
		if err := xml.Unmarshal([]byte(write(t, scene(name))), &doc); err != nil {
			t.Fatal(err)
		}
		if doc.Title != want || doc.Desc != want {
			t.Errorf("%q comes back as %q and %q, want %q", name, doc.Title, doc.Desc, want)
		}
	}
}

// At 1:20 the seam at 1,237 mm stands at 61.85 mm, y is turned over, and every
// number is exact.
func TestNumbers(t *testing.T) {
	out := write(t, scene("w"))
	for _, want := range []string{
		`width="100mm" height="50mm" viewBox="-10 -45 100 50"`,
		`d="M61.85 0.000001L61.85 -40"`,
		`stroke="#123456" stroke-width="0.5" stroke-dasharray="2 0.25"`,
		`d="M0 0L30 0L30 -20L0 -20ZM5 -5L6 -5L6 -6L5 -6Z" fill="#ffeedd" fill-rule="evenodd"`,
		`<text x="1" y="-2" font-size="5" text-anchor="middle" font-weight="bold" transform="rotate(-90 1 -2)" fill="#000000">w</text>`,
		`role="img" aria-labelledby="w-title w-desc"`,
		`<title id="w-title">w</title>`,
		`<g id="w-w">`,
		`<g id="w-w-2">`,
	} {
		if !strings.Contains(out, want) {
			t.Errorf("lacks %s", want)
		}
	}
	if strings.Contains(out, "http") && strings.Count(out, "http") != 2 {
		t.Error("an address other than the two name spaces")
	}
	if again := write(t, scene("w")); again != out {
		t.Error("the same scene gives other bytes")
	}
}

func TestNothingToDraw(t *testing.T) {
	s := scene("w")
	s.Layers = []draw.Layer{{Name: "a", Items: []draw.Item{
		draw.Segment(geom.Point{}, geom.Point{X: mm}, draw.Pen{}), draw.Line{Pen: draw.Pen{Ink: draw.RGB(0), Width: mm}},
	}}}
	if out := write(t, s); strings.Contains(out, "<path") {
		t.Errorf("a line without a pen, or without points, is drawn:\n%s", out)
	}
}

type broken struct{ left int }

func (b *broken) Write(p []byte) (int, error) {
	if b.left -= len(p); b.left < 0 {
		return 0, errors.New("disk full")
	}
	return len(p), nil
}

func TestWriteReportsTheWriter(t *testing.T) {
	if err := svg.Write(&broken{10}, scene("w")); err == nil || err.Error() != "disk full" {
		t.Errorf("err = %v, want disk full", err)
	}
}

func FuzzWrite(f *testing.F) {
	for _, name := range hostile {
		f.Add(name)
	}
	f.Fuzz(func(t *testing.T, name string) {
		var doc struct {
			XMLName xml.Name
			Scripts []string `xml:"script"`
		}
		if err := xml.Unmarshal([]byte(write(t, scene(name))), &doc); err != nil || len(doc.Scripts) > 0 {
			t.Fatalf("%q: %v %v", name, err, doc.Scripts)
		}
	})
}
