package sheet_test

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"math"
	"strings"
	"testing"

	"firstdrop/draw"
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/plan"
	"firstdrop/room"
	"firstdrop/sheet"
)

// element is an element of an SVG file.
type element struct {
	XMLName xml.Name
	ID      string    `xml:"id,attr"`
	D       string    `xml:"d,attr"`
	Fill    string    `xml:"fill,attr"`
	Size    string    `xml:"font-size,attr"`
	Text    string    `xml:",chardata"`
	Inner   []element `xml:",any"`
}

func parsed(t testing.TB, s *draw.Scene) element {
	t.Helper()
	var root element
	if err := xml.Unmarshal(written(t, s), &root); err != nil {
		t.Fatal(err)
	}
	return root
}

// layer returns the elements of the layer of that name, at any depth.
func (e element) layer(scene *draw.Scene, name string) (all []element) {
	for _, g := range e.Inner {
		if g.ID == scene.ID+"-"+name {
			return g.flat()
		}
	}
	return nil
}

func (e element) flat() (all []element) {
	for _, c := range e.Inner {
		all = append(append(all, c), c.flat()...)
	}
	return all
}

// texts returns the texts among elements.
func texts(es []element) (out []string) {
	for _, e := range es {
		if e.XMLName.Local == "text" {
			out = append(out, e.Text)
		}
	}
	return out
}

// The figures of issue 5: the seam at 1,237 mm stands at 61.85 mm at 1:20.
func TestSeamStandsAtScale(t *testing.T) {
	s := sample{name: "scale", run: "A 3000x2400", label: plainLabel, fixed: plan.Fixed{Start: &hanging.Start{X: 177 * mm}}}
	p := s.plan(t)
	scene := sheet.Wall(p, 0, 0, sheet.Options{Scale: 20})
	root := parsed(t, scene)
	var found bool
	for _, e := range root.layer(scene, "seams") {
		found = found || e.D == "M61.85 0L61.85 -120"
	}
	if !found {
		t.Errorf("no seam at 61.85: %v", root.layer(scene, "seams"))
	}
	if scene.Scale != 20 {
		t.Errorf("scale 1:%d", scene.Scale)
	}
}

// lineAt reports whether a layer has an upright line at x on the page.
func lineAt(s *draw.Scene, layer string, x measure.Length) bool {
	found := false
	s.Walk(func(l string, it draw.Item) {
		if line, ok := it.(draw.Line); ok && l == layer && line.Box().X == (geom.Interval{Lo: x, Hi: x}) {
			found = true
		}
	})
	return found
}

// Every seam of the layout is drawn at its place and its distance is written;
// every plumb line likewise; every piece carries its name.
func TestEverythingIsThere(t *testing.T) {
	eachWall(t, func(t *testing.T, s sample, p *plan.Plan, wall int, scene *draw.Scene) {
		l := p.Runs[0].Layout
		w := &l.Run.Walls[wall]
		root := parsed(t, scene)
		sizes := strings.Join(texts(root.layer(scene, "sizes")), "\n") + "\n"
		words := strings.ReplaceAll(strings.Join(texts(root.layer(scene, "words")), " "), "\u00a0", " ")
		on := func(x measure.Length) measure.Length { return x.Scaled(1, scene.Scale) }
		shown := func(x measure.Length) string { return strings.TrimPrefix(x.Format(s.sys), "≈ ") }
		for _, m := range l.Seams {
			if m.Wall != wall || m.InCorner || m.X <= 0 || m.X >= w.Width {
				continue
			}
			if m.Kind != hanging.KillSeam && !lineAt(scene, "seams", on(m.X)) {
				t.Errorf("no seam drawn at %v", m.X)
			}
			if text := strings.TrimSuffix(shown(m.X), " mm"); !strings.Contains("\n"+sizes, "\n"+text+"\n") {
				t.Errorf("seam distance %s is not written: %q", text, sizes)
			}
			if !strings.Contains(scene.Desc, "seam at "+shown(m.X)) && m.Kind == hanging.Butt {
				t.Errorf("the description lacks the seam at %s: %s", shown(m.X), scene.Desc)
			}
		}
		for _, b := range l.Plumbs {
			if b.Wall != wall {
				continue
			}
			far := b.X
			if b.From == hanging.Right {
				far = w.Width - b.X
			}
			if !lineAt(scene, "plumbs", on(b.X)) || !strings.Contains(words, "lumb line "+shown(far)+" from ") {
				t.Errorf("plumb line %v from the %v is not drawn or not told: %s", far, b.From, words)
			}
		}
	})
}

// number of drops and pieces drawn equals the layout's.
func TestEveryPieceIsNamedOnce(t *testing.T) {
	eachWall(t, func(t *testing.T, _ sample, p *plan.Plan, wall int, scene *draw.Scene) {
		l := p.Runs[0].Layout
		face, _ := l.Run.Face(wall).Bounds()
		want := map[string]int{}
		for _, piece := range l.Pieces {
			if piece.Return != nil {
				continue
			}
			for _, q := range l.Drops[piece.Drop].Parts {
				x := piece.Across.Shifted(q.X.Lo - q.Across.Lo).Intersection(q.X).Intersection(face)
				if q.Wall == wall && x.Length() > 0 {
					want[piece.Name] = 1
				}
			}
		}
		got := map[string]int{}
		for _, name := range texts(parsed(t, scene).layer(scene, "numbers")) {
			got[name]++
		}
		for _, piece := range l.Pieces {
			if piece.Return != nil { // named where there is room, and in the notes
				delete(got, piece.Name)
			}
		}
		if fmt.Sprint(got) != fmt.Sprint(want) {
			t.Errorf("numbers %v, want %v", got, want)
		}
	})
}

// No text covers another, and all lie on the page. Widths are those of the
// widest usual typeface.
func TestWordsKeepApart(t *testing.T) {
	eachWall(t, func(t *testing.T, _ sample, _ *plan.Plan, _ int, scene *draw.Scene) {
		var all []draw.Text
		scene.Walk(func(_ string, it draw.Item) {
			if text, ok := it.(draw.Text); ok {
				all = append(all, text)
			}
		})
		for i, a := range all {
			if !scene.Window.Contains(a.Box()) {
				t.Errorf("%q leaves the page: %v, %v", a.Text, a.Box(), scene.Window)
			}
			for _, b := range all[:i] {
				if a.Box().Grown(-mm / 10).Overlaps(b.Box().Grown(-mm / 10)) {
					t.Errorf("%q covers %q", a.Text, b.Text)
				}
			}
		}
	})
}

// No line of seams, plumb lines, sizes or design runs through a number or a
// size.
func TestLinesKeepOffFigures(t *testing.T) {
	figures := map[string]bool{"numbers": true, "sizes": true, "plumbs": true, "turns": true}
	lines := map[string]bool{"seams": true, "plumbs": true, "sizes": true, "design": true}
	eachWall(t, func(t *testing.T, _ sample, _ *plan.Plan, _ int, scene *draw.Scene) {
		var boxes []draw.Text
		var strokes []draw.Line
		scene.Walk(func(layer string, it draw.Item) {
			switch it := it.(type) {
			case draw.Text:
				if figures[layer] {
					boxes = append(boxes, it)
				}
			case draw.Line:
				if lines[layer] && len(it.Points) == 2 {
					strokes = append(strokes, it)
				}
			}
		})
		for _, text := range boxes {
			core := text.Box().Grown(-mm / 4)
			for _, l := range strokes {
				b := l.Box()
				b.X.Hi, b.Y.Hi = max(b.X.Hi, b.X.Lo+1), max(b.Y.Hi, b.Y.Lo+1)
				if b.Overlaps(core) {
					t.Errorf("a line %v runs through %q %v", l.Points, text.Text, text.Box())
				}
			}
		}
	})
}

func TestLeaningEdges(t *testing.T) {
	// The corner leans by −8 mm on wall B and by 6 mm at its right end: 0.4 and 0.3 mm at 1:20.
	s := sample{name: "lean", run: "A 3075x2400 |-4,-8 B 2600x2400 |6,3 C 3075x2400", label: plainLabel}
	scene := sheet.Wall(s.plan(t), 0, 1, sheet.Options{Scale: 20})
	root := parsed(t, scene)
	if got, want := root.layer(scene, "outline")[1].D, "M0 0L130 0L130.3 -120L-0.4 -120Z"; got != want {
		t.Errorf("outline %s, want %s", got, want)
	}
	all := strings.Join(texts(root.layer(scene, "words")), "\n")
	for _, want := range []string{"head leans 8 mm left", "head leans 6 mm right", "to wall A", "inside corner B|C"} {
		if !strings.Contains(all, want) {
			t.Errorf("lacks %q", want)
		}
	}
}

func TestKillSeamIsTold(t *testing.T) {
	eachWall(t, func(t *testing.T, s sample, p *plan.Plan, wall int, scene *draw.Scene) {
		l := p.Runs[0].Layout
		k := l.Choice.Kill
		here := k.Kind != hanging.NoKill && (k.Wall == wall || k.Kind == hanging.AtCorner && (k.Wall+1)%len(l.Run.Walls) == wall)
		words := strings.Join(texts(parsed(t, scene).layer(scene, "words")), " ")
		if got := strings.Contains(words, "Kill seam"); got != here {
			t.Errorf("kill seam told: %v, want %v: %s", got, here, words)
		}
		if drawn := len(scene.Layer("kill").Items) > 0; drawn != here {
			t.Errorf("kill seam drawn: %v, want %v", drawn, here)
		}
		if here && s.label.Match.Kind != paper.Free && !strings.Contains(scene.Desc, "the design ") {
			t.Errorf("its misfit is not told: %s", scene.Desc)
		}
	})
}

func TestReversedDropsPointDown(t *testing.T) {
	p := samples[9].kept(t)
	scene := sheet.Wall(p, 0, 0, sheet.Options{})
	l := p.Runs[0].Layout
	seen := 0
	for _, it := range scene.Layer("numbers").Items {
		g, ok := it.(draw.Group)
		if !ok {
			continue
		}
		shaft, barbs := g.Items[2].(draw.Line), g.Items[3].(draw.Line)
		down := barbs.Points[1].Y < barbs.Points[0].Y
		if shaft.Points[1] != barbs.Points[1] {
			t.Errorf("%s: the arrow's head is not at the shaft's end", g.Title)
		}
		name := g.Items[0].(draw.Text).Text
		for _, d := range l.Drops {
			if fmt.Sprint(d.Number) == name {
				seen++
				if d.Reversed != down || strings.Contains(g.Title, "upside down") != down {
					t.Errorf("drop %s reversed %v, arrow down %v, %q", name, d.Reversed, down, g.Title)
				}
			}
		}
	}
	if seen < 4 {
		t.Errorf("%d arrows", seen)
	}
}

// Names that are hostile, long or in other scripts stay text and on the page.
func TestOddNames(t *testing.T) {
	for _, name := range []string{`<script>alert(1)</script>`, strings.Repeat("very long name ", 20), "غرفة", "壁 🧻", ""} {
		s := sample{name: "odd", run: "A 3000x2400 door(300+850 0+2050) | B 2000x2400", label: halfLabel, alter: func(r *room.Run) {
			furnish(r)
			r.Name, r.Walls[0].Name, r.Walls[0].Openings[0].Name, r.Walls[0].Fittings[0].Name = name, name, name, name
		}}
		s.label.Name = name
		p := s.plan(t)
		scene := sheet.Wall(p, 0, 0, sheet.Options{})
		parsed(t, scene)
		scene.Walk(func(_ string, it draw.Item) {
			if text, ok := it.(draw.Text); ok && !scene.Window.Contains(text.Box()) {
				t.Errorf("%q leaves the page", text.Text)
			}
		})
	}
}

// Every ink that words are written in stands out from the lightest and darkest
// ground it may stand on by 4.5 to 1, the contrast of WCAG 2.2, success
// criterion 1.4.3, by the definitions of contrast ratio and relative luminance at
// w3.org/TR/WCAG22.
func TestInksAreLegible(t *testing.T) {
	linear := func(c uint8) float64 {
		v := float64(c) / 255
		if v <= 0.04045 {
			return v / 12.92
		}
		return math.Pow((v+0.055)/1.055, 2.4)
	}
	light := func(i draw.Ink) float64 {
		r, g, b := i.RGB()
		return 0.2126*linear(r) + 0.7152*linear(g) + 0.0722*linear(b)
	}
	grounds := map[draw.Ink]bool{draw.RGB(0xffffff): true}
	inks := map[draw.Ink]bool{}
	eachWall(t, func(_ *testing.T, _ sample, _ *plan.Plan, _ int, scene *draw.Scene) {
		scene.Walk(func(layer string, it draw.Item) {
			switch it := it.(type) {
			case draw.Area:
				if layer == "paper" {
					grounds[it.Fill] = true
				}
			case draw.Text:
				if layer != "marks" && it.Ink.Luma() < 250 {
					inks[it.Ink] = true
				}
			}
		})
	})
	for ink := range inks {
		for ground := range grounds {
			a, b := light(ground)+0.05, light(ink)+0.05
			if a/b < 4.5 {
				t.Errorf("%v on %v: contrast %.2f", ink, ground, a/b)
			}
		}
	}
	if len(inks) < 3 || len(grounds) != 3 {
		t.Errorf("%d inks on %d grounds", len(inks), len(grounds))
	}
}

func TestSameInputSameBytes(t *testing.T) {
	p, q := samples[1].plan(t), samples[1].plan(t)
	for w := range p.Runs[0].Layout.Run.Walls {
		if !bytes.Equal(written(t, sheet.Wall(p, 0, w, sheet.Options{})), written(t, sheet.Wall(q, 0, w, sheet.Options{}))) {
			t.Errorf("wall %d differs", w)
		}
	}
}

func TestElectricityHasItsCaution(t *testing.T) {
	p := samples[1].kept(t)
	with, without := sheet.Wall(p, 0, 0, sheet.Options{}), sheet.Wall(p, 0, 1, sheet.Options{})
	const want = "switch the circuit off at the board"
	if !strings.Contains(with.Desc, want) || strings.Contains(without.Desc, want) {
		t.Errorf("the caution stands on the wrong wall")
	}
}
