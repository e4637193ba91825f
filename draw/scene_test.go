package draw_test

import (
	"testing"

	"firstdrop/draw"
	"firstdrop/geom"
	"firstdrop/measure"
)

const mm = measure.Millimetre

var pen = draw.Pen{Ink: draw.RGB(0), Width: mm}

func pt(x, y measure.Length) geom.Point { return geom.Point{X: x * mm, Y: y * mm} }

func square(x, y, side measure.Length) geom.Ring {
	return draw.BoxAt(x*mm, y*mm, side*mm, side*mm).Ring()
}

func TestWalkOpensGroupsAndCompounds(t *testing.T) {
	s := draw.Scene{Layers: []draw.Layer{
		{Name: "under", Items: []draw.Item{draw.Area{Shape: geom.Polygon{Outline: square(0, 0, 10)}}}},
		{Name: "over", Items: []draw.Item{draw.Group{Items: []draw.Item{
			draw.Dimension{From: pt(0, 0), To: pt(10, 0), Text: "10", Size: 2 * mm, Pen: pen},
			draw.Text{Text: "a", Size: mm},
		}}}},
	}}
	count := map[string]int{}
	s.Walk(func(layer string, it draw.Item) {
		switch it.(type) {
		case draw.Area:
			count[layer+" area"]++
		case draw.Line:
			count[layer+" line"]++
		case draw.Text:
			count[layer+" text"]++
		default:
			t.Errorf("Walk visits a %T", it)
		}
	})
	want := map[string]int{"under area": 1, "over line": 3, "over text": 2} // a line, two ticks
	for k, n := range want {
		if count[k] != n {
			t.Errorf("%s: %d, want %d", k, count[k], n)
		}
	}
}

func TestSceneBox(t *testing.T) {
	s := draw.Scene{Layers: []draw.Layer{
		{Name: "a", Items: []draw.Item{draw.Segment(pt(1, 2), pt(-3, 4), pen)}},
		{Name: "b", Items: []draw.Item{draw.Group{Items: []draw.Item{draw.Segment(pt(0, 9), pt(0, 0), pen)}}}},
	}}
	want := draw.Box{X: geom.Interval{Lo: -3 * mm, Hi: 1 * mm}, Y: geom.Interval{Lo: 0, Hi: 9 * mm}}
	if got := s.Box(); got != want {
		t.Errorf("Box = %v, want %v", got, want)
	}
	if got := (&draw.Scene{}).Box(); !got.IsEmpty() {
		t.Errorf("an empty scene has box %v", got)
	}
}

func TestSceneLayer(t *testing.T) {
	s := draw.Scene{Layers: []draw.Layer{{Name: "a"}, {Name: "b"}}}
	if l := s.Layer("b"); l != &s.Layers[1] {
		t.Errorf("Layer(b) is not the second")
	}
	if l := s.Layer("c"); l != nil {
		t.Errorf("Layer(c) = %v, want none", l)
	}
}
