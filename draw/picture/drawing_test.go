package picture_test

import (
	"bytes"
	"fmt"
	"image"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"firstdrop/draw"
	"firstdrop/draw/picture"
	"firstdrop/internal/oracle"
)

func svg(inside string) []byte {
	return []byte(`<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" viewBox="0 0 100 80">` + inside + `</svg>`)
}

// drawings are of everything that is read.
var drawings = map[string]string{
	"shapes":    `<rect x="5" y="5" width="40" height="30" fill="#c33"/><circle cx="70" cy="25" r="18" fill="navy"/><ellipse cx="30" cy="60" rx="25" ry="12" fill="rgb(20%,60%,30%)"/><polygon points="60,50 95,50 78,76" fill="#fa0"/>`,
	"rounded":   `<rect x="10" y="10" width="80" height="60" rx="20" ry="10" fill="teal"/><rect x="30" y="30" width="40" height="20" ry="8" fill="white"/>`,
	"paths":     `<path d="M10 10h30v20l-30 10zM50,20c10-20 30-20 40,0s-10,30-20 10q-10-20-20-10t-5 25z" fill="#345"/><path d="m20 50a20 12 30 0 1 30 10a9 9 0 10-20 5z" fill="purple"/>`,
	"rules":     `<path d="M10 10h60v60h-60z M20 20h40v40h-40z" fill="#c33" fill-rule="evenodd"/><path d="M75 10h20v30h-20z M80 15h10v20h-10z" fill="#33c"/>`,
	"strokes":   `<g fill="none" stroke="#222" stroke-width="6"><path d="M10 70L30 20 50 70" stroke-linejoin="miter"/><path d="M55 70l15-50 15 50" stroke-linejoin="round" stroke-linecap="round"/><path d="M10 10h30" stroke-linecap="square"/></g><circle cx="80" cy="12" r="8" stroke="red" stroke-width="3" fill="none"/><polyline points="50,5 60,15 50,15" fill="none" stroke="green" stroke-width="4" stroke-linejoin="bevel"/>`,
	"transform": `<g transform="translate(50 40) rotate(30)"><rect x="-20" y="-10" width="40" height="20" fill="#288"/><g transform="skewX(20) scale(.5,1.5)"><rect x="-5" y="-5" width="10" height="10" fill="#fff"/></g></g><rect width="10" height="10" transform="matrix(1 .2 .3 1 80 60)"/>`,
	"use":       `<defs><g id="a"><circle r="8"/><path d="M-8 0h16" stroke="white" stroke-width="2"/></g></defs><use href="#a" x="20" y="20" fill="brown"/><use xlink:href="#a" transform="translate(60 50) scale(2)"/>`,
	"linear":    `<defs><linearGradient id="g" x2="100%"><stop offset="0" stop-color="red"/><stop offset="50%" stop-color="#ff0"/><stop offset="1" style="stop-color:blue;stop-opacity:.5"/></linearGradient><linearGradient id="h" href="#g" gradientUnits="userSpaceOnUse" x1="0" y1="40" x2="0" y2="80" gradientTransform="rotate(10)"/></defs><rect x="10" y="5" width="80" height="30" fill="url(#g)"/><ellipse cx="50" cy="60" rx="40" ry="15" fill="url(#h)"/>`,
	"radial":    `<radialGradient id="r" cx=".4" cy=".4" r=".6"><stop stop-color="white"/><stop offset="1" stop-color="#226"/></radialGradient><rect x="5" y="5" width="90" height="70" fill="url(#r)"/>`,
	"opacity":   `<rect width="60" height="60" fill="red" opacity=".5"/><rect x="30" y="20" width="60" height="50" style="fill:#00f;fill-opacity:40%;font-family:x"/><g stroke-opacity=".5"><path d="M5 70h90" stroke="black" stroke-width="8"/></g>`,
	"foreign":   `<metadata><x xmlns="http://example.invalid/x"/></metadata><x:view xmlns:x="http://example.invalid/x" onload="no"><x:deep/></x:view><rect width="50" height="50" x="10" y="10" x:note="n" xmlns:x="http://example.invalid/x"/>`,
}

// What is painted is what rsvg-convert paints, but for the softness of edges.
func TestDrawingsLookAsElsewhere(t *testing.T) {
	all := map[string][]byte{}
	for name, inside := range drawings {
		all[name] = svg(inside)
	}
	for _, name := range []string{"leaves", "waves"} {
		data, err := os.ReadFile("../../examples/" + name + ".svg")
		if err != nil {
			t.Fatal(err)
		}
		all[name] = data
	}
	for name, data := range all {
		p, err := picture.Decode(data)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		file := filepath.Join(t.TempDir(), name)
		if err := os.WriteFile(file+".svg", data, 0o666); err != nil {
			t.Fatal(err)
		}
		oracle.Run(t, "rsvg-convert", "-w", fmt.Sprint(p.Width), "-h", fmt.Sprint(p.Height), "-b", "white", file+".svg", "-o", file+".png")
		out, err := os.ReadFile(file + ".png")
		if err != nil {
			t.Fatal(err)
		}
		m, err := png.Decode(bytes.NewReader(out))
		if err != nil {
			t.Fatal(err)
		}
		if mean, far := apart(p, m); mean > 0.6 || far > 2 {
			t.Errorf("%s: squares differ by %.2f of 255 on the average, and %.2f in 1000 by more than 40", name, mean, far)
		}
	}
}

// apart returns by how much pictures differ: the mean of all colours, and how many
// in a thousand squares differ by much.
func apart(p *draw.Picture, m image.Image) (mean, far float64) {
	sum, many := 0, 0
	for y := range p.Height {
		for x := range p.Width {
			r, g, b, _ := m.At(x, y).RGBA()
			most := 0
			for i, v := range []uint32{r, g, b} {
				d := int(v>>8) - int(p.Pix[3*(y*p.Width+x)+i])
				d = max(d, -d)
				sum += d
				most = max(most, d)
			}
			if most > 40 {
				many++
			}
		}
	}
	n := float64(p.Width * p.Height)
	return float64(sum) / n / 3, float64(many) / n * 1000
}

// What is not read is named, with its line, and nothing outside the file is touched.
func TestDrawingsRefused(t *testing.T) {
	deep := strings.Repeat("<g>", 60) + strings.Repeat("</g>", 60)
	for name, tt := range map[string]struct {
		data []byte
		want string
	}{
		"script":      {svg("\n<script>x()</script>"), `line 2: "script" is not read`},
		"event":       {svg("\n\n<rect onclick='x()'/>"), `line 3: "onclick" would be a script`},
		"image":       {svg(`<image href="file:///etc/passwd"/>`), `"image" is not read`},
		"text":        {svg(`<text>a</text>`), `"text" is not read: turn it into a path`},
		"style sheet": {svg(`<style>*{}</style>`), `"style" is not read`},
		"elsewhere":   {svg(`<use href="other.svg#a"/>`), `only what the drawing holds itself`},
		"nowhere":     {svg(`<use href="#a"/>`), `only what the drawing holds itself`},
		"loop":        {svg(`<g id="a"><use href="#a"/></g>`), "use repeats too much, or itself"},
		"laughs":      {svg(`<defs><g id="a"><use href="#b"/><use href="#b"/></g>` + laughs() + `</defs><use href="#a"/>`), "use repeats too much"},
		"deep":        {svg(deep), "more than 40 deep"},
		"entity":      {[]byte("<!DOCTYPE svg [<!ENTITY a SYSTEM 'file:///etc/passwd'>]>\n<svg xmlns='http://www.w3.org/2000/svg'>&a;</svg>"), "line 1: declarations of its own"},
		"sheet":       {[]byte("<?xml-stylesheet href='x.css'?><svg xmlns='http://www.w3.org/2000/svg'/>"), `the instruction "xml-stylesheet"`},
		"clip":        {svg(`<rect clip-path="url(#c)"/>`), "clip-path: url(#c) is not read"},
		"dash":        {svg(`<path d="M0 0h9" stroke-dasharray="3 2"/>`), "stroke-dasharray: 3 2 is not read"},
		"paint":       {svg(`<rect width="9" height="9" fill="url(#p)"/>`), "is not a gradient of this drawing"},
		"colour":      {svg(`<rect width="9" height="9" fill="octarine"/>`), `colour "octarine" is not read`},
		"path":        {svg("\n<path d='M0 0 B9 9'/>"), "line 2: path: "},
		"percent":     {svg(`<rect width="50%" height="9"/>`), `width "50%" is not a number`},
		"group":       {svg(`<g opacity=".5"><rect/></g>`), "opacity of a whole group"},
		"broken":      {svg(`<rect`), "the drawing is broken"},
		"thin":        {[]byte(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9000 1"/>`), "far longer one way"},
		"plane":       {[]byte(`<svg/>`), "namespace of SVG"},
		"over":        {svg(strings.Repeat(`<rect width="100" height="80"/>`, 400)), "paints over itself too often"},
	} {
		if _, err := picture.Decode(tt.data); err == nil || !strings.Contains(err.Error(), tt.want) {
			t.Errorf("%s: err = %v, want %q", name, err, tt.want)
		}
	}
}

// laughs are groups that each use the next twice.
func laughs() (text string) {
	for c := 'b'; c < 'z'; c++ {
		text += fmt.Sprintf(`<g id="%c"><use href="#%c"/><use href="#%c"/></g>`, c, c+1, c+1)
	}
	return text + `<g id="z"><rect width="1" height="1"/></g>`
}

func FuzzDrawing(f *testing.F) {
	for _, inside := range drawings {
		f.Add(svg(inside))
	}
	f.Add(svg(`<path d="M1e9 1e9 A1 1e9 1 1 1 -1e9 0zL0 0" stroke="red" stroke-width="1e9" transform="scale(1e9) scale(1e9) scale(1e9)"/>`))
	f.Fuzz(func(t *testing.T, data []byte) {
		p, err := picture.Decode(data)
		if err == nil && (p.Width < 1 || p.Height < 1 || len(p.Pix) != 3*p.Width*p.Height) {
			t.Fatalf("%d × %d with %d bytes", p.Width, p.Height, len(p.Pix))
		}
	})
}
