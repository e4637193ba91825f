package draw_test

import (
	"strings"
	"testing"

	"firstdrop/draw"
	"firstdrop/geom"
	"firstdrop/measure"
)

func TestOnPage(t *testing.T) {
	setup := draw.PageSetup{Format: draw.A4, Margin: 10 * mm, Size: 3 * mm, Ruler: "measure", Ink: draw.RGB(0)}
	for _, tt := range []struct {
		width, height measure.Length
		want          draw.Format
	}{
		{180 * mm, 200 * mm, draw.A4},
		{250 * mm, 120 * mm, draw.A4.Landscape()},
	} {
		s := &draw.Scene{Title: "Wall", Scale: 20, Window: draw.BoxAt(-5*mm, -5*mm, tt.width, tt.height), Layers: []draw.Layer{{Items: []draw.Item{draw.Area{Shape: geom.Polygon{Outline: draw.BoxAt(-5*mm, -5*mm, tt.width, tt.height).Ring()}, Pen: pen}}}}}
		p, err := draw.OnPage(s, setup)
		if err != nil {
			t.Fatal(err)
		}
		if p.Window != tt.want.Box() {
			t.Errorf("%v × %v stands on %v", tt.width, tt.height, p.Window)
		}
		on := p.Layers[0].Items[0].Box()
		if on.X.Length() != tt.width || on.Y.Length() != tt.height {
			t.Errorf("the drawing became %v", on)
		}
		ruler := p.Layers[1].Items[0].Box()
		if inner := p.Window.Grown(-10 * mm); !inner.Contains(on) || !inner.Contains(ruler) || on.Overlaps(ruler) {
			t.Errorf("drawing %v and ruler %v on %v", on, ruler, inner)
		}
	}
	_, err := draw.OnPage(&draw.Scene{Title: "Wall", Window: draw.BoxAt(0, 0, 400*mm, 100*mm)}, setup)
	if err == nil || !strings.Contains(err.Error(), "A4") {
		t.Errorf("err = %v", err)
	}
}
