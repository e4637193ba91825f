package draw_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"firstdrop/draw"
	"firstdrop/geom"
)

// everything is one item of every kind.
func everything() []draw.Item {
	shape := geom.Polygon{Outline: square(2, 3, 40), Holes: []geom.Ring{square(5, 6, 9)}}
	return []draw.Item{
		draw.Area{Shape: shape, Pen: pen},
		draw.Line{Points: []geom.Point{pt(1, 2), pt(3, 4)}, Pen: pen},
		draw.Text{At: pt(1, 2), Text: "words", Size: 3 * mm},
		draw.Tile{Shape: shape, Picture: grain, At: pt(1, 1), Width: mm, Height: mm},
		draw.Hatch{Shape: shape, Gap: 3 * mm, Pen: pen},
		draw.Dimension{From: pt(0, 0), To: pt(30, 0), Text: "30", Second: "1 in", Size: 3 * mm, Pen: pen},
		draw.Ruler{At: pt(0, 0), Size: 3 * mm, Pen: pen, Text: "measure"},
		draw.Group{ID: "g", Title: "a group", Items: []draw.Item{draw.Segment(pt(7, 7), pt(8, 8), pen)}},
	}
}

func TestShiftedMovesTheBox(t *testing.T) {
	d := geom.Point{X: 17*mm + 3, Y: -5*mm - 1}
	back := geom.Point{X: -d.X, Y: -d.Y}
	for _, it := range everything() {
		moved := draw.Shifted(it, d)
		if got, want := moved.Box(), it.Box().Shifted(d); got != want {
			t.Errorf("%T: box %v, want %v", it, got, want)
		}
		if _, ok := it.(draw.Compound); ok {
			continue
		}
		if diff := cmp.Diff(it, draw.Shifted(moved, back)); diff != "" {
			t.Errorf("%T moved there and back:\n%s", it, diff)
		}
	}
}

func TestPlaced(t *testing.T) {
	s := &draw.Scene{ID: "wall", Title: "Wall A", Desc: "A wall.", Window: draw.BoxAt(-10*mm, -20*mm, 50*mm, 50*mm), Layers: []draw.Layer{
		{Name: "seams", Title: "Seams", Items: []draw.Item{draw.Segment(pt(0, 0), pt(0, 9), pen)}},
	}}
	g := draw.Placed(s, pt(100, 100))
	want := draw.Group{ID: "wall", Title: "Wall A", Desc: "A wall.", Role: draw.Figure, Items: []draw.Item{
		draw.Group{ID: "seams", Title: "Seams", Items: []draw.Item{draw.Segment(pt(110, 120), pt(110, 129), pen)}},
	}}
	if diff := cmp.Diff(want, g); diff != "" {
		t.Error(diff)
	}
}
