package dxf_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"firstdrop/draw"
	"firstdrop/draw/dxf"
	"firstdrop/geom"
	"firstdrop/internal/anypage"
	"firstdrop/internal/oracle"
	"firstdrop/measure"
)

const mm = measure.Millimetre

func write(t testing.TB, s *draw.Scene) string {
	t.Helper()
	var b bytes.Buffer
	if err := dxf.Write(&b, s); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// At 1:20 the seam drawn 61.85 mm from the wall's left end is 1,237 mm of the wall.
func TestSizesAreTheWalls(t *testing.T) {
	out := strings.ReplaceAll(write(t, anypage.Wall()), "\r\n", "\n")
	for _, want := range []string{
		"LINE\n8\nSEAMS\n62\n1\n10\n1237.0\n20\n0.0\n30\n0.0\n11\n1237.0\n21\n900.0\n31\n0.0\n",
		"$INSUNITS\n70\n4\n", "6\nDASHED1\n", "49\n40.0\n49\n-20.0\n",
		"40\n42.84\n1\n4000 mm\n72\n1\n", // letters of 3 mm: capitals of 2.142 mm, times 20
		"1\n\\U+2248 13' 1 1/2\"\n",
	} {
		if !strings.Contains(out, want) {
			t.Errorf("lacks %q", want)
		}
	}
	if again := write(t, anypage.Wall()); strings.ReplaceAll(again, "\r\n", "\n") != out {
		t.Error("the same scene gives other bytes")
	}
}

// ezdxf is an independent reader of DXF (MIT licence, Debian package python3-ezdxf):
// it finds nothing to mend, and reads back what was drawn.
const reader = `
import sys, json, ezdxf
from ezdxf.lldxf.encoding import decode_dxf_unicode
doc = ezdxf.readfile(sys.argv[1])
audit = doc.audit()
out = {"errors": [e.message for e in audit.errors], "fixes": [e.message for e in audit.fixes], "units": doc.units,
       "layers": sorted(l.dxf.name for l in doc.layers), "lines": {}, "rings": [], "texts": []}
for e in doc.modelspace():
    kind = e.dxftype()
    if kind == "LINE":
        out["lines"].setdefault(e.dxf.layer, []).append([e.dxf.start.x, e.dxf.start.y, e.dxf.end.x, e.dxf.end.y])
    elif kind == "POLYLINE" and e.is_closed:
        out["rings"].append([e.dxf.layer, len(e)])
    elif kind == "TEXT":
        out["texts"].append(decode_dxf_unicode(e.dxf.text))
print(json.dumps(out))
`

type content struct {
	Errors, Fixes, Layers, Texts []string
	Units                        int
	Lines                        map[string][][4]float64
	Rings                        [][2]any
}

func readBack(t *testing.T, s *draw.Scene) content {
	t.Helper()
	oracle.Tool(t, "ezdxf")
	name := filepath.Join(t.TempDir(), "a.dxf")
	if err := os.WriteFile(name, []byte(write(t, s)), 0o600); err != nil {
		t.Fatal(err)
	}
	var c content
	if err := json.Unmarshal([]byte(oracle.Run(t, "/usr/bin/python3", "-c", reader, name)), &c); err != nil {
		t.Fatal(err)
	}
	return c
}

func TestAnotherReader(t *testing.T) {
	s := anypage.Wall()
	s.Layers = append(s.Layers, draw.Layer{Name: "seams", Items: []draw.Item{
		draw.Text{Text: `50 % \P %%d ^J "Łódź" שלום 🧻`, Size: 5 * mm, Ink: draw.RGB(0)},
	}})
	c := readBack(t, s)
	if len(c.Errors)+len(c.Fixes) > 0 || c.Units != 4 {
		t.Errorf("errors %q, mended %q, units %d", c.Errors, c.Fixes, c.Units)
	}
	have := strings.Join(c.Layers, " ")
	for _, want := range []string{"PAPER", "SEAMS", "SEAMS2", "OUTLINE", "OPENINGS", "SIZES", "MARKS"} {
		if !strings.Contains(" "+have+" ", " "+want+" ") {
			t.Errorf("no layer %s among %s", want, have)
		}
	}
	if l := c.Lines["SEAMS"]; len(l) != 2 || l[0] != [4]float64{1237, 0, 1237, 900} {
		t.Errorf("seams %v", l)
	}
	outline := 0
	for _, r := range c.Rings {
		if r[0] == "OUTLINE" {
			outline++
		}
	}
	if outline != 3 {
		t.Errorf("the outline has %d rings, want 3", outline)
	}
	texts := strings.Join(c.Texts, "|")
	for _, want := range []string{"4000 mm", "12", "≈ 13' 1 1/2\"", `50 % \P %%d ^J "Łódź" שלום`} {
		if !strings.Contains(texts, want) {
			t.Errorf("no text %q among %s", want, texts)
		}
	}
}

func TestNothingToDraw(t *testing.T) {
	s := &draw.Scene{Layers: []draw.Layer{{Items: []draw.Item{
		draw.Segment(geom.Point{}, geom.Point{X: mm}, draw.Pen{}), draw.Text{Text: " ", Size: mm, Ink: draw.RGB(0)}, draw.Area{},
	}}}}
	out := write(t, s)
	for _, kind := range []string{"LINE\r\n8", "TEXT\r\n8", "VERTEX"} {
		if strings.Contains(out, kind) {
			t.Errorf("has a %s", kind)
		}
	}
}

type broken struct{}

func (broken) Write([]byte) (int, error) { return 0, errors.New("disk full") }

func TestWriteReportsTheWriter(t *testing.T) {
	if err := dxf.Write(broken{}, anypage.Wall()); err == nil || err.Error() != "disk full" {
		t.Errorf("err = %v, want disk full", err)
	}
}

// Whatever a name holds, groups stay in pairs: every other line is a number.
func FuzzText(f *testing.F) {
	for _, w := range append(anypage.Words, "", "0\r\nEOF\r\n", strings.Repeat("long שלום ", 40)) {
		f.Add(w)
	}
	f.Fuzz(func(t *testing.T, words string) {
		s := &draw.Scene{Layers: []draw.Layer{{Name: words, Items: []draw.Item{draw.Text{Text: words, Size: mm, Ink: draw.RGB(0)}}}}}
		lines := strings.Split(write(t, s), "\r\n")
		for i := 0; i+1 < len(lines); i += 2 {
			if code := strings.TrimLeft(lines[i], "0123456789"); code != "" || len(lines[i+1]) > 260 {
				t.Fatalf("line %d is %q, then %q", i, lines[i], lines[i+1])
			}
		}
	})
}
