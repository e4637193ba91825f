package sheet_test

import (
	"bytes"
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"firstdrop/draw/dxf"
	"firstdrop/hanging"
	"firstdrop/internal/oracle"
	"firstdrop/sheet"
	"firstdrop/words"
)

// readDXF lists errors, layers, the unit and the upright lines of a DXF file.
const readDXF = `
import sys, json, ezdxf
d = ezdxf.readfile(sys.argv[1])
a = d.audit()
out = {"Errors": [e.message for e in a.errors + a.fixes], "Units": d.header["$INSUNITS"], "Layers": [l.dxf.name for l in d.layers], "Uprights": {}}
for e in d.modelspace():
    if e.dxftype() == "LINE" and e.dxf.start.x == e.dxf.end.x:
        out["Uprights"].setdefault(e.dxf.layer, []).append(e.dxf.start.x)
print(json.dumps(out))
`

// Another reader of DXF finds every seam of the plan on a layer of its own, in
// millimetres of the wall, whatever the language of the words.
func TestAnotherReaderOfWalls(t *testing.T) {
	p := samples[1].kept(t)
	l := p.Runs[0].Layout
	for _, tag := range words.Languages() {
		var b bytes.Buffer
		if err := dxf.Write(&b, sheet.Wall(p, 0, 1, sheet.Options{Lang: words.For(tag)})); err != nil {
			t.Fatal(err)
		}
		name := filepath.Join(t.TempDir(), "wall.dxf")
		if err := os.WriteFile(name, b.Bytes(), 0o600); err != nil {
			t.Fatal(err)
		}
		var got struct {
			Errors, Layers []string
			Units          int
			Uprights       map[string][]float64
		}
		if err := json.Unmarshal([]byte(oracle.Python(t, "ezdxf", readDXF, name)), &got); err != nil {
			t.Fatal(err)
		}
		if len(got.Errors) > 0 || got.Units != 4 {
			t.Errorf("%s: errors %q, unit %d, want 4 (millimetres)", tag, got.Errors, got.Units)
		}
		for _, layer := range []string{"SEAMS", "PLUMBS", "OUTLINE", "OPENINGS", "SIZES", "NUMBERS"} {
			if !slices.Contains(got.Layers, layer) {
				t.Errorf("%s: no layer %s among %v", tag, layer, got.Layers)
			}
		}
		seams := 0
		for _, s := range l.Seams {
			if s.Wall != 1 || s.InCorner || s.Kind == hanging.KillSeam {
				continue
			}
			seams++
			at := float64(s.X) / float64(mm)
			if !slices.ContainsFunc(got.Uprights["SEAMS"], func(x float64) bool { return math.Abs(x-at) < 0.01 }) {
				t.Errorf("%s: no seam at %v among %v", tag, s.X, got.Uprights["SEAMS"])
			}
		}
		if seams < 3 {
			t.Errorf("only %d seams on the wall", seams)
		}
	}
}
