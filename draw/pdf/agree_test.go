package pdf_test

import (
	"bytes"
	"image"
	stdpng "image/png"
	"os"
	"path/filepath"
	"testing"

	"firstdrop/draw"
	"firstdrop/draw/pdf"
	"firstdrop/draw/png"
	"firstdrop/draw/svg"
	"firstdrop/internal/anypage"
	"firstdrop/internal/oracle"
)

const dpi = 100

// pictures returns the page as our own raster, the SVG as rsvg-convert draws it
// (Debian package librsvg2-bin, with the fonts of fonts-noto-core) and the PDF as
// pdftoppm does (poppler-utils).
func pictures(t *testing.T, s *draw.Scene) (own, fromSVG, fromPDF *image.RGBA) {
	t.Helper()
	dir := t.TempDir()
	own, err := png.Render(s, dpi)
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	if err := svg.Write(&b, s); err != nil {
		t.Fatal(err)
	}
	svgName := filepath.Join(dir, "a.svg")
	if err := os.WriteFile(svgName, b.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	oracle.Run(t, "rsvg-convert", "-d", "100", "-p", "100", svgName, "-o", filepath.Join(dir, "svg.png"))
	pdfName := saved(t, &pdf.Document{Pages: []pdf.Page{{Scene: s}}})
	oracle.Run(t, "pdftoppm", "-r", "100", "-png", "-singlefile", pdfName, filepath.Join(dir, "pdf"))
	return own, read(t, filepath.Join(dir, "svg.png")), read(t, filepath.Join(dir, "pdf.png"))
}

func read(t *testing.T, name string) *image.RGBA {
	t.Helper()
	data, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	m, err := stdpng.Decode(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	return draw.NewPicture(m).Image()
}

// coarse returns a picture made eight times smaller, so that what smooths an edge,
// or moves it by a part of a square, matters little.
func coarse(m *image.RGBA, width, height int) *draw.Picture {
	p := draw.NewPicture(m.SubImage(image.Rect(0, 0, width/8*8, height/8*8)))
	return p.Reduced(width/8, height/8)
}

// differ returns how many of a thousand squares differ by more than a tenth of the
// way from black to white, and the largest difference.
func differ(a, b *draw.Picture) (perMille, most int) {
	for i := 0; i < len(a.Pix); i += 3 {
		worst := 0
		for c := range 3 {
			n := int(a.Pix[i+c]) - int(b.Pix[i+c])
			worst = max(worst, n, -n)
		}
		if worst > 25 {
			perMille++
		}
		most = max(most, worst)
	}
	return perMille * 1000 / (len(a.Pix) / 3), most
}

// limits say how many of a thousand coarse squares may differ by a tenth, and how
// much the worst may: letters of the SVG are the machine's own, and signs that one
// font lacks come from another than ours.
var limits = map[string][2]int{"SVG": {10, 140}, "PDF": {1, 40}}

// The three formats show the same page. Letters that no font here holds stand as
// boxes in ours, and as whatever the machine has in the SVG: they are left out.
func TestFormatsAgree(t *testing.T) {
	s := anypage.Page()
	words := s.Layer("words")
	var kept []draw.Item
	for _, it := range words.Items {
		if text, ok := it.(draw.Text); !ok || text.Text != anypage.Words[len(anypage.Words)-1] {
			kept = append(kept, it)
		}
	}
	words.Items = kept
	own, fromSVG, fromPDF := pictures(t, s)
	w := min(own.Bounds().Dx(), fromSVG.Bounds().Dx(), fromPDF.Bounds().Dx())
	h := min(own.Bounds().Dy(), fromSVG.Bounds().Dy(), fromPDF.Bounds().Dy())
	for name, m := range map[string]*image.RGBA{"SVG": fromSVG, "PDF": fromPDF} {
		if d := m.Bounds().Size().Sub(own.Bounds().Size()); d.X*d.X > 1 || d.Y*d.Y > 1 {
			t.Errorf("the %s is %v, our picture %v", name, m.Bounds(), own.Bounds())
		}
		perMille, most := differ(coarse(own, w, h), coarse(m, w, h))
		t.Logf("%s: %d of 1000 squares differ by more than a tenth, at most %d of 255", name, perMille, most)
		if perMille > limits[name][0] || most > limits[name][1] {
			t.Errorf("the %s differs: %d of 1000 squares, at most by %d of 255", name, perMille, most)
		}
	}
	// What the measure is worth: a wall moved by 2 mm is noticed.
	moved := anypage.Page()
	moved.Window = moved.Window.Shifted(draw.BoxAt(-2*mm, 0, 0, 0).Middle())
	other, err := png.Render(moved, dpi)
	if err != nil {
		t.Fatal(err)
	}
	if perMille, _ := differ(coarse(own, w, h), coarse(other, w, h)); perMille < 100 {
		t.Errorf("a page moved by 2 mm differs in %d of 1000 squares only", perMille)
	}
}
