package ui_test

import (
	"bytes"
	"cmp"
	"flag"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"maps"
	"math"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"firstdrop/draw/design"
)

var update = flag.Bool("update", false, "draw the demo designs anew")

// across is how many squares of a picture cover the width of the paper, as fine as the
// screen shows it; colours is in how many it is kept: all that a design is drawn with,
// and shades enough for soft edges. Pictures are part of a first visit.
const (
	across  = 300
	colours = 64
)

// inFewColours returns a picture in a palette, each colour shown as the nearest in it.
func inFewColours(m image.Image) *image.Paletted {
	few := image.NewPaletted(m.Bounds(), palette(m))
	draw.Draw(few, few.Rect, m, few.Rect.Min, draw.Src)
	return few
}

// palette chooses colours of a picture one after the other: each time the one that is
// shown worst by those before, by its distance times how often it is there.
func palette(m image.Image) (chosen color.Palette) {
	count := map[color.RGBA]int{}
	b := m.Bounds()
	for i := range b.Dx() * b.Dy() {
		count[color.RGBAModel.Convert(m.At(b.Min.X+i%b.Dx(), b.Min.Y+i/b.Dx())).(color.RGBA)]++
	}
	all := slices.SortedFunc(maps.Keys(count), func(p, q color.RGBA) int {
		return cmp.Or(count[q]-count[p], int(p.R)-int(q.R), int(p.G)-int(q.G), int(p.B)-int(q.B))
	})
	off := make([]int, len(all)) // how far each is from the nearest that is chosen
	for i := range off {
		off[i] = math.MaxInt32
	}
	for len(chosen) < min(colours, len(all)) {
		worst := 0
		for i, c := range all {
			if off[i]*count[c] > off[worst]*count[all[worst]] {
				worst = i
			}
		}
		chosen = append(chosen, all[worst])
		for i, c := range all {
			off[i] = min(off[i], apart(c, all[worst]))
		}
	}
	return chosen
}

// apart returns the square of the distance of two colours.
func apart(p, q color.RGBA) int {
	r, g, b := int(p.R)-int(q.R), int(p.G)-int(q.G), int(p.B)-int(q.B)
	return r*r + g*g + b*b
}

// The screen shows the demo designs as package design draws them.
func TestDesignsAreOurs(t *testing.T) {
	for _, d := range design.All() {
		p, err := d.Picture(d.Width, d.Repeat, across)
		if err != nil {
			t.Fatal(err)
		}
		var want bytes.Buffer
		encoder := png.Encoder{CompressionLevel: png.BestCompression}
		if err := encoder.Encode(&want, inFewColours(p.Image())); err != nil {
			t.Fatal(err)
		}
		file := filepath.Join("src", "parts", "designs", d.Name+".png")
		if *update {
			if err := os.WriteFile(file, want.Bytes(), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		if got, err := os.ReadFile(file); err != nil || !bytes.Equal(got, want.Bytes()) {
			t.Errorf("%s (%v) is not the design of that name: run go test ./web/ui -update", file, err)
		}
	}
}
