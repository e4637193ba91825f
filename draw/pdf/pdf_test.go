package pdf_test

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"firstdrop/draw"
	"firstdrop/draw/pdf"
	"firstdrop/geom"
	"firstdrop/internal/anypage"
	"firstdrop/internal/oracle"
	"firstdrop/measure"
)

const mm = measure.Millimetre

// document is three pages with bookmarks, a table and names that mean harm.
func document() *pdf.Document {
	text := func(x, y measure.Length, words string) draw.Text {
		return draw.Text{At: geom.Point{X: x * mm, Y: y * mm}, Text: words, Size: 4 * mm, Ink: draw.RGB(0)}
	}
	row := func(y measure.Length, role draw.Role, cells ...string) draw.Item {
		g := draw.Group{Role: draw.Row}
		for i, c := range cells {
			g.Items = append(g.Items, draw.Group{Role: role, Items: []draw.Item{text(20+50*measure.Length(i), y, c)}})
		}
		return g
	}
	table := &draw.Scene{Title: "Cutting list", Window: draw.Letter.Box(), Layers: []draw.Layer{{Items: []draw.Item{
		draw.Group{Role: draw.Heading, Items: []draw.Item{text(20, 250, "Cutting list")}},
		draw.Group{Role: draw.Table, Items: []draw.Item{row(240, draw.HeaderCell, "Drop", "Length"), row(232, draw.Cell, "1", "2,560 mm"), row(224, draw.Cell, "2", "1,920 mm")}},
		text(20, 200, `) Tj ET (\ <script> %%EOF endstream`),
		draw.Group{Role: draw.Furniture, Items: []draw.Item{text(100, 10, "page 2")}},
	}}}}
	return &pdf.Document{Title: "Room “Süd” — שלום", Lang: "en-GB", Pages: []pdf.Page{
		{Scene: anypage.Page(), Bookmarks: []pdf.Bookmark{{Title: "Süd"}, {Title: "Wall A", Level: 1, Y: 100 * mm}, {Title: "deep", Level: 9}}},
		{Scene: table, Bookmarks: []pdf.Bookmark{{Title: "Cutting list"}}},
		{Scene: anypage.Wall()},
	}}
}

func written(t testing.TB, d *pdf.Document) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := d.Write(&b); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// saved writes the document to a file.
func saved(t testing.TB, d *pdf.Document) string {
	t.Helper()
	name := filepath.Join(t.TempDir(), "a.pdf")
	if err := os.WriteFile(name, written(t, d), 0o600); err != nil {
		t.Fatal(err)
	}
	return name
}

// plain returns the file's objects readable, one file with nothing compressed, as
// qpdf sees it (Debian package qpdf).
func plain(t testing.TB, d *pdf.Document) string {
	t.Helper()
	name := saved(t, d)
	oracle.Run(t, "qpdf", "--qdf", "--object-streams=disable", name, name+".qdf")
	data, err := os.ReadFile(name + ".qdf")
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

func TestSound(t *testing.T) {
	out := oracle.Run(t, "qpdf", "--check", saved(t, document()))
	if !strings.Contains(out, "No syntax or stream encoding errors found") {
		t.Error(out)
	}
}

func TestSameBytes(t *testing.T) {
	if !bytes.Equal(written(t, document()), written(t, document())) {
		t.Error("the same document gives other bytes")
	}
}

// At 1:20 the seam at 1,237 mm stands 61.85 mm from the wall's left end, and a page
// is as large as its paper: 297 mm are 841.89 points.
func TestPositions(t *testing.T) {
	d := &pdf.Document{Pages: []pdf.Page{{Scene: anypage.Wall()}, {Scene: anypage.Page()}}}
	out := plain(t, d)
	for _, want := range []string{
		"\n61.85 0 m\n61.85 45 l\nS\n",
		// The window begins 12 mm left of the wall and 14 mm below it: 34.01575 and 39.68504 points.
		"2.8346456693 0 0 2.8346456693 34.01575 39.68504 cm",
		"/MediaBox [\n    0\n    0\n    841.88976\n    595.27559\n  ]",
	} {
		if !strings.Contains(out, want) {
			t.Errorf("lacks %q", want)
		}
	}
}

// pdftotext (Debian package poppler-utils) finds every word. In lines that run both
// ways it keeps an order of its own, and it turns a ligature of lam and alef round;
// so words are looked for one by one.
func TestEveryWordIsFound(t *testing.T) {
	d := document()
	name := saved(t, d)
	oracle.Run(t, "pdftotext", "-raw", name, name+".txt")
	data, err := os.ReadFile(name + ".txt")
	if err != nil {
		t.Fatal(err)
	}
	marks := regexp.MustCompile("[\u202a-\u202e\u2066-\u2069]")
	out := marks.ReplaceAllString(string(data), "")
	for _, line := range append([]string{"Zimmer „Süd“ ½ Rapport Upwards ✓ שלום 100 mm Cutting list 2,560 1,920 page <script> endstream"}, anypage.Words...) {
		for _, w := range strings.Fields(line) {
			w = strings.Trim(w, "(),.")
			if composed := strings.NewReplacer("e\u0301", "é", "a\u0308", "ä").Replace(w); !strings.Contains(out, w) && !strings.Contains(out, composed) {
				t.Errorf("%q is not found", w)
			}
		}
	}
}

func TestLinesInOneDirectionComeBackWhole(t *testing.T) {
	for _, line := range []string{
		"Straße, Łódź, Århus, façade, naïve", "Τοίχος Ωμέγα", "Стена у окна", "कमरा: दीवार की ऊँचाई क्षत्रिय", "ห้องนอน ผนัง", "חדר שינה", "غرفة الجلوس",
		"壁紙 🧻", "office ffi fl",
	} {
		s := &draw.Scene{Window: draw.A4.Box(), Layers: []draw.Layer{{Items: []draw.Item{draw.Text{At: geom.Point{X: 20 * mm, Y: 200 * mm}, Text: line, Size: 5 * mm, Ink: draw.RGB(0)}}}}}
		name := saved(t, &pdf.Document{Pages: []pdf.Page{{Scene: s}}})
		out := regexp.MustCompile("[\u202a-\u202e\f\n]").ReplaceAllString(oracle.Run(t, "pdftotext", name, "-"), "")
		if out != line {
			t.Errorf("%q comes back as %q", line, out)
		}
	}
}

func TestFontsAreEmbedded(t *testing.T) {
	out := oracle.Run(t, "pdffonts", saved(t, document()))
	lines := strings.Split(strings.TrimSpace(out), "\n")[2:]
	if len(lines) < 6 {
		t.Errorf("%d fonts:\n%s", len(lines), out)
	}
	for _, l := range lines {
		if !strings.Contains(l, "yes yes yes") || !strings.Contains(l, "+NotoSans") {
			t.Errorf("not embedded as a subset with its letters: %s", l)
		}
	}
}

func TestStructure(t *testing.T) {
	name := saved(t, document())
	out := oracle.Run(t, "pdfinfo", "-struct-text", name)
	for _, want := range []string{
		"Document", "H1 (block)", "Zimmer „Süd“", "Figure", "TH", "\"Length\"", "TD", "\"2,560 mm\"", "TR",
	} {
		if !strings.Contains(out, want) {
			t.Errorf("lacks %q:\n%s", want, out)
		}
	}
	if strings.Contains(out, "page 2") {
		t.Error("a page number is read aloud")
	}
	info := oracle.Run(t, "pdfinfo", name)
	for _, want := range []string{"Title:           Room “Süd” — שלום", "Tagged:          yes", "Pages:           3", "Producer:        Firstdrop"} {
		if !strings.Contains(info, want) {
			t.Errorf("lacks %q:\n%s", want, info)
		}
	}
	if strings.Contains(info, "CreationDate") {
		t.Error("the file tells a time")
	}
}

func TestCatalogue(t *testing.T) {
	out := plain(t, document())
	alt := ""
	for _, r := range "Wall A. A wall 4.00 m wide" {
		alt += fmt.Sprintf("%04x", r)
	}
	for _, want := range []string{"/Lang (en-GB)", "/PrintScaling /None", "/DisplayDocTitle true", "/PageMode /UseOutlines", "/Alt <feff" + alt} {
		if !strings.Contains(out, want) {
			t.Errorf("lacks %q", want)
		}
	}
	// Each picture stands in the file once, though two pages show it many times.
	if n := strings.Count(out, "/Subtype /Image"); n != 3 {
		t.Errorf("%d pictures, want 3", n)
	}
	if n := strings.Count(out, "/Dest ["); n != 4 {
		t.Errorf("%d bookmarks, want 4", n)
	}
	d := document()
	d.Lang = "en) /OpenAction (x"
	if out := plain(t, d); strings.Contains(out, "OpenAction") {
		t.Error("a language that is none comes into the file")
	}
}

func TestWriteRefuses(t *testing.T) {
	var b bytes.Buffer
	tile := draw.Tile{Shape: geom.Polygon{Outline: draw.BoxAt(0, 0, mm, mm).Ring()}, Picture: &draw.Picture{Width: 1, Height: 1, Pix: []uint8{1, 2, 3}}, Width: 1, Height: 1}
	for _, tt := range []struct {
		d    *pdf.Document
		want string
	}{
		{&pdf.Document{}, "without pages"},
		{&pdf.Document{Pages: []pdf.Page{{}}}, "page 1: the scene has no size"},
		{&pdf.Document{Pages: []pdf.Page{{Scene: &draw.Scene{}}}}, "page 1: the scene has no size"},
		{&pdf.Document{Pages: []pdf.Page{{Scene: &draw.Scene{Window: draw.A4.Box(), Layers: []draw.Layer{{Items: []draw.Item{tile}}}}}}}, "too small"},
	} {
		if err := tt.d.Write(&b); err == nil || !strings.Contains(err.Error(), tt.want) {
			t.Errorf("err = %v, want %q", err, tt.want)
		}
	}
	if err := document().Write(broken{}); err == nil || err.Error() != "disk full" {
		t.Errorf("err = %v, want disk full", err)
	}
}

type broken struct{}

func (broken) Write([]byte) (int, error) { return 0, errors.New("disk full") }

func FuzzText(f *testing.F) {
	for _, w := range append(anypage.Words, "", "\x00\xff\xfe", "\u202egnp.exe", strings.Repeat("long שלום ", 40), "👷🏽\u200d🔧") {
		f.Add(w, true)
	}
	f.Fuzz(func(t *testing.T, words string, up bool) {
		turn := draw.Level
		if up {
			turn = draw.Upwards
		}
		s := &draw.Scene{Title: words, Desc: words, Scale: 20, Window: draw.A4.Box(), Layers: []draw.Layer{{Items: []draw.Item{draw.Text{Text: words, Size: 5 * mm, Ink: draw.RGB(0), Turn: turn, Bold: up}}}}}
		d := &pdf.Document{Title: words, Lang: words, Pages: []pdf.Page{{Scene: s, Bookmarks: []pdf.Bookmark{{Title: words}}}}}
		if err := d.Write(&bytes.Buffer{}); err != nil {
			t.Fatal(err)
		}
	})
}
