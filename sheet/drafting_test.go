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

// scanDXF lists the unit and the upright lines of a DXF file, layer by layer.
const scanDXF = `
const Parser = require("dxf-parser");
const d = new Parser().parseSync(require("fs").readFileSync(process.argv[1], "utf8"));
const out = { Units: d.header["$INSUNITS"], Layers: Object.keys(d.tables.layer.layers), Uprights: {} };
for (const e of d.entities)
  if (e.type === "LINE" && e.vertices[0].x === e.vertices[1].x) (out.Uprights[e.layer] ??= []).push(e.vertices[0].x);
console.log(JSON.stringify(out));
`

// A second reader, in another language, finds the same seams in the same place.
func TestASecondReaderOfWalls(t *testing.T) {
	p := samples[1].kept(t)
	var b bytes.Buffer
	if err := dxf.Write(&b, sheet.Wall(p, 0, 1, sheet.Options{})); err != nil {
		t.Fatal(err)
	}
	name := filepath.Join(t.TempDir(), "wall.dxf")
	if err := os.WriteFile(name, b.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	var got struct {
		Layers   []string
		Units    int
		Uprights map[string][]float64
	}
	if err := json.Unmarshal([]byte(oracle.Node(t, "dxf-parser", scanDXF, name)), &got); err != nil {
		t.Fatal(err)
	}
	if got.Units != 4 || !slices.Contains(got.Layers, "PLUMBS") {
		t.Errorf("unit %d, layers %q", got.Units, got.Layers)
	}
	var want []float64
	for _, s := range p.Runs[0].Layout.Seams {
		if s.Wall == 1 && !s.InCorner && s.Kind != hanging.KillSeam {
			want = append(want, float64(s.X)/float64(mm))
		}
	}
	for _, at := range want {
		if !slices.ContainsFunc(got.Uprights["SEAMS"], func(x float64) bool { return math.Abs(x-at) < 0.01 }) {
			t.Errorf("no seam at %v mm among %v", at, got.Uprights["SEAMS"])
		}
	}
	if len(want) < 3 {
		t.Errorf("only %d seams on the wall", len(want))
	}
}
