package ui_test

import (
	"bytes"
	"flag"
	"image/png"
	"os"
	"path/filepath"
	"testing"

	"firstdrop/draw/design"
)

var update = flag.Bool("update", false, "draw the demo designs anew")

// across is how many squares of a picture cover the width of the paper: enough for a
// for each millimetre, as fine as the screen shows it.
const across = 300

// The screen shows the demo designs as package design draws them.
func TestDesignsAreOurs(t *testing.T) {
	for _, d := range design.All() {
		p, err := d.Picture(d.Width, d.Repeat, across)
		if err != nil {
			t.Fatal(err)
		}
		var want bytes.Buffer
		encoder := png.Encoder{CompressionLevel: png.BestCompression}
		if err := encoder.Encode(&want, p.Image()); err != nil {
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
