package sheet

import (
	"strings"
	"testing"

	"firstdrop/draw"
	"firstdrop/geom"
	"firstdrop/measure"
	"firstdrop/room"
	"firstdrop/words"
)

// words returns the texts of a layer.
func wordsOn(e *elevation, layer string) string {
	var all []string
	e.scene.Walk(func(l string, it draw.Item) {
		if text, ok := it.(draw.Text); ok && l == layer {
			all = append(all, text.Text)
		}
	})
	return strings.Join(all, " / ")
}

func TestOpeningsSayNameAndSize(t *testing.T) {
	tests := []struct {
		run   string
		sys   measure.System
		words string
		note  string
	}{
		{"A 3000x2400 window(800+1200 900+1100)", measure.Metric, "window / 1200 × 1100 mm / sill 900 mm", ""},
		{"A 3000x2400 door(800+800 0+2000)", measure.Metric, "door / 800 × 2000 mm", ""},
		{"A 3000x2400 door(800+560 0+2000)", measure.Metric, "door / 560 wide / 2000 high", ""},
		{"A 3000x2400 door(800+300 0+2000)", measure.Metric, "door / 300 × 2000 mm", ""}, // upwards
		{"A 3000x2400 window(800+100 2000+100)", measure.Metric, "", "window from 800 mm: 100 × 100 mm, sill 2000 mm."},
		{"A 3000x2400 door(800+813 0+2032)", measure.Imperial, `door / 2' 8" × 6' 8"`, ""},
	}
	for _, tt := range tests {
		e := begun(t, tt.run, 0)
		e.words = words.For("").In(tt.sys)
		e.openings()
		if got := wordsOn(e, "words"); got != tt.words {
			t.Errorf("%s: %q, want %q", tt.run, got, tt.words)
		}
		note := ""
		if len(e.notes) > 0 {
			note = e.notes[0].text
		}
		if note != tt.note {
			t.Errorf("%s: note %q, want %q", tt.run, note, tt.note)
		}
	}
}

func TestOpeningIsHatchedWhereItIs(t *testing.T) {
	e := begun(t, "A 3000x2400 window(800+1200 900+1100)", 0)
	e.openings()
	g := e.scene.Layer("openings").Items[0].(draw.Group)
	want := draw.BoxAt(40*mm, 45*mm, 60*mm, 55*mm) // 800, 900, 1200 and 1100 by 20
	if got := g.Items[1].(draw.Hatch).Box(); got != want || g.Title != "window" {
		t.Errorf("%q is hatched at %v, want %v", g.Title, got, want)
	}
}

func TestReturnsAreNamed(t *testing.T) {
	e := begun(t, "A 530x2400 window(0+530 900+1000 200)", 0)
	e.openings()
	const want = "Returns, drawn laid open into their opening: 1c left reveal of window, 1d right reveal of window, 1e soffit of window."
	if len(e.notes) == 0 || e.notes[0].text != want {
		t.Errorf("notes %v, want %q", e.notes, want)
	}
}

func TestFittings(t *testing.T) {
	e := begun(t, "A 3000x2400", 0)
	e.wall.Fittings = []room.Fitting{
		{Name: "socket by the bed", Kind: room.Socket, At: geom.Point{X: 600 * mm, Y: 300 * mm}, Size: geom.Point{X: 160 * mm, Y: 80 * mm}},
		{Kind: room.Vent, At: geom.Point{X: 2000 * mm, Y: 2000 * mm}, Size: geom.Point{X: 10 * mm, Y: 10 * mm}},
	}
	e.fittings()
	if got, want := e.scene.Layer("fittings").Items[0].Box(), draw.BoxAt(26*mm, 13*mm, 8*mm, 4*mm); got != want {
		t.Errorf("the socket is drawn at %v, want %v", got, want)
	}
	if got, want := wordsOn(e, "words"), "socket by the bed / vent"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if len(e.notes) != 1 || e.notes[0].mark != cautionMark {
		t.Errorf("notes %v, want the caution about electricity alone", e.notes)
	}
}
