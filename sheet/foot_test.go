package sheet

import (
	"fmt"
	"testing"

	"firstdrop/draw"
	"firstdrop/measure"
	"firstdrop/words"
)

func TestFigures(t *testing.T) {
	tests := []struct {
		run  string
		wall int
		want string
	}{
		{"A 2000x2400", 0, "[0 mm 530 mm 1060 mm 1590 mm 2000 mm]"},
		{"A 1975x2400 | B 1000x2400", 1, "[0 mm 133 mm 663 mm 1000 mm]"}, // 1975 + 12 − 3·530 = 397; 530 − 397 = 133
		{"A 530x2400", 0, "[0 mm 530 mm]"},
	}
	for _, tt := range tests {
		if got := fmt.Sprint(begun(t, tt.run, tt.wall).figures()); got != tt.want {
			t.Errorf("%s, wall %d: %s, want %s", tt.run, tt.wall, got, tt.want)
		}
	}
}

func TestFootSaysWhereItCountsFrom(t *testing.T) {
	tests := []struct {
		run  string
		wall int
		sys  measure.System
		want string
	}{
		{"A 2000x2400", 0, measure.Metric, "Seams, from the left end, in mm"},
		{"A 1975x2400 | B 1000x2400", 1, measure.Metric, "Seams, from corner A|B, in mm"},
		{"A 2000x2400", 0, measure.Imperial, "Seams, from the left end, to the nearest 1/16 in"},
	}
	for _, tt := range tests {
		e := begun(t, tt.run, tt.wall)
		e.words = words.For("").In(tt.sys)
		e.foot()
		items := e.scene.Layer("sizes").Items
		if got := items[len(items)-1].(draw.Text).Text; got != tt.want {
			t.Errorf("%s: %q, want %q", tt.run, got, tt.want)
		}
		if e.cursor >= -6*mm {
			t.Errorf("nothing below the foot: %v", e.cursor)
		}
	}
}

func TestBobHangsOnItsPoint(t *testing.T) {
	e := begun(t, "A 2000x2400", 0)
	e.plumbs()
	// The first drop's right edge, 530 mm from the left end, is set to the first line.
	items := e.scene.Layer("plumbs").Items
	line, tip := items[0].(draw.Line), items[1].Box()
	if line.Points[0].X != 530*mm/20 || line.Points[1].Y != 120*mm {
		t.Errorf("the line runs through %v", line.Points)
	}
	if tip.Y.Lo != 0 || tip.Middle().X != 530*mm/20 {
		t.Errorf("the bob hangs at %v", tip)
	}
	if want := "Start here. Plumb line 530 mm from the left end, for the right edge of drop 1."; e.notes[0].text != want {
		t.Errorf("%q, want %q", e.notes[0].text, want)
	}
}
