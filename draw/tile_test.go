package draw_test

import (
	"testing"

	"pgregory.net/rapid"

	"firstdrop/draw"
	"firstdrop/geom"
	"firstdrop/measure"
)

var grain = &draw.Picture{Width: 1, Height: 1, Pix: []uint8{1, 2, 3}}

func TestRepeatsCoverTheBox(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := func(name string, lo, hi int) measure.Length {
			return measure.Length(rapid.IntRange(lo, hi).Draw(t, name))
		}
		tile := draw.Tile{
			Shape: geom.Polygon{Outline: draw.BoxAt(n("x", -50, 50), n("y", -50, 50), n("w", 1, 60), n("h", 1, 60)).Ring()}, Picture: grain,
			At: pt(n("atx", -99, 99), n("aty", -99, 99)), Width: n("width", 1, 40), Height: n("height", 1, 40),
		}
		boxes, ok := tile.Repeats()
		if !ok {
			t.Fatal("too many")
		}
		all := draw.NoBox
		area := measure.Length(0)
		for _, b := range boxes {
			if (b.X.Lo-tile.At.X).Mod(tile.Width) != 0 || (b.Y.Lo-tile.At.Y).Mod(tile.Height) != 0 {
				t.Fatalf("%v is off the grid", b)
			}
			if !b.Overlaps(tile.Box()) {
				t.Fatalf("%v shows nothing of %v", b, tile.Box())
			}
			all = all.Union(b)
			area += b.X.Length() * b.Y.Length()
		}
		if !all.Contains(tile.Box()) || area != all.X.Length()*all.Y.Length() {
			t.Fatalf("repeats cover %v, area %d", all, area)
		}
	})
}

func TestRepeatsTooManyOrNone(t *testing.T) {
	tile := draw.Tile{Shape: geom.Polygon{Outline: square(0, 0, 1000)}, Picture: grain, Width: 1, Height: 1}
	if boxes, ok := tile.Repeats(); ok || boxes != nil {
		t.Errorf("%d repeats of a nanometre", len(boxes))
	}
	for _, none := range []draw.Tile{{}, {Shape: tile.Shape, Width: mm, Height: mm}, {Shape: tile.Shape, Picture: grain, Width: mm}, {Picture: grain, Width: mm, Height: mm}} {
		if boxes, ok := none.Repeats(); !ok || boxes != nil || !none.IsNone() {
			t.Errorf("%v: %d repeats, want none", none, len(boxes))
		}
	}
}
