// Package anypage makes a page for tests that holds everything a drawing may hold:
// a wall of an invented room with a sloping ceiling, a window and a door, papered
// with three designs; sizes, hatching, marks, and words in many scripts.
package anypage

import (
	"math"
	"sync"

	"firstdrop/draw"
	"firstdrop/draw/design"
	"firstdrop/geom"
	"firstdrop/measure"
)

const mm = measure.Millimetre

// Words are lines in scripts that join, stack or run from right to left, and some
// that no font here holds.
var Words = []string{
	"Straße, Łódź, Århus, façade, naïve, Ωmega, Τοίχος, Стена, ⌀ → ≤ ✓ ⚠",
	"غرفة الجلوس 12 الجدار (أ) — قص الورق بعد القياس",
	"חדר שינה 3, קיר א׳ (12.5 ס״מ)",
	"wall ABC שלום 12 high",
	"कमरा: दीवार की ऊँचाई २.४० मी, क्षत्रिय",
	"ห้องนอน ผนัง, ოთახი, սենյակ",
	"Emoji 🧻👷🏽, 壁紙, e\u0301 a\u0308",
}

// X is where a seam stands on the wall, and OnPaper where at 1:20.
const (
	X       = 1237 * mm
	OnPaper = 61_850 * measure.Micrometre
)

var (
	black = draw.RGB(0x111111)
	grey  = draw.RGB(0x555555)
	fine  = draw.Pen{Ink: grey, Width: mm / 8}
)

func pt(x, y measure.Length) geom.Point { return geom.Point{X: x, Y: y} }

// face is the papered part of the wall at 1:20.
var face = geom.Polygon{
	Outline: geom.Ring{pt(0, 0), pt(200*mm, 0), pt(200*mm, 95*mm), pt(170*mm, 120*mm), pt(0, 120*mm)},
	Holes:   []geom.Ring{draw.BoxAt(60*mm, 45*mm, 55*mm, 50*mm).Ring(), draw.BoxAt(140*mm, 0, 40*mm, 80*mm).Ring()},
}

// pictures are the three designs, painted once.
var pictures = sync.OnceValue(func() (all []*draw.Picture) {
	for _, d := range design.All() {
		p, err := d.Picture(d.Width, d.Repeat, 300)
		if err != nil {
			panic(err)
		}
		all = append(all, p)
	}
	return all
})

// tile returns a third of the wall in one of the designs.
func tile(i int, lo, hi measure.Length) draw.Tile {
	d := design.All()[i]
	return draw.Tile{Shape: clipped(lo, hi), Picture: pictures()[i], At: pt(lo, 7*mm), Width: d.Width / 20, Height: d.Repeat / 20}
}

// Wall returns the wall at 1:20.
func Wall() *draw.Scene {
	second := tile(1, 66*mm, 132*mm)
	second.UpsideDown = true
	third := tile(2, 132*mm, 200*mm)
	third.Fade = 40
	return &draw.Scene{
		ID: "wall", Title: "Wall A", Desc: "A wall 4.00 m wide and 2.40 m high, with a window and a door. The ceiling slopes on the right.",
		Scale: 20, Window: draw.BoxAt(-12*mm, -14*mm, 224*mm, 144*mm),
		Layers: []draw.Layer{
			{Name: "paper", Title: "Paper", Items: []draw.Item{tile(0, 0, 66*mm), second, third}},
			{Name: "seams", Title: "Seams", Items: []draw.Item{
				draw.Segment(pt(OnPaper, 0), pt(OnPaper, 45*mm), draw.Pen{Ink: draw.RGB(0xcc0000), Width: mm / 5}),
				draw.Segment(pt(132*mm, 0), pt(132*mm, 120*mm), draw.Pen{Ink: black, Width: mm / 5, Dash: []measure.Length{2 * mm, mm}}),
			}},
			{Name: "outline", Title: "Outline", Items: []draw.Item{draw.Area{Shape: face, Pen: draw.Pen{Ink: black, Width: mm / 2}}}},
			{Name: "openings", Title: "Openings", Items: []draw.Item{
				draw.Hatch{Shape: geom.Polygon{Outline: face.Holes[0], Holes: []geom.Ring{draw.BoxAt(66*mm, 51*mm, 43*mm, 38*mm).Ring()}}, Gap: 2 * mm, Pen: fine},
				draw.Hatch{Shape: geom.Polygon{Outline: face.Holes[1]}, Gap: 3 * mm, Slope: draw.Falling, Pen: fine},
			}},
			{Name: "sizes", Title: "Sizes", Items: []draw.Item{
				draw.Dimension{From: pt(0, -5*mm), To: pt(200*mm, -5*mm), Size: 3 * mm, Pen: draw.Pen{Ink: black, Width: mm / 4}}.InBoth(4*measure.Metre, measure.Metric),
				draw.Dimension{From: pt(206*mm, 0), To: pt(206*mm, 95*mm), Size: 3 * mm, Pen: draw.Pen{Ink: black, Width: mm / 4}}.InBoth(1900*mm, measure.Imperial),
			}},
			{Name: "marks", Title: "Marks", Items: []draw.Item{
				mark(pt(33*mm, 106*mm), "1"),
				mark(pt(99*mm, 106*mm), "12"),
			}},
		},
	}
}

// clipped returns the face between two uprights.
func clipped(lo, hi measure.Length) geom.Polygon {
	slope := func(x measure.Length) measure.Length { return 120*mm - max(x-170*mm, 0)*25/30 }
	p := geom.Polygon{Outline: geom.Ring{pt(lo, 0), pt(hi, 0), pt(hi, slope(hi))}}
	if lo < 170*mm && hi > 170*mm {
		p.Outline = append(p.Outline, pt(170*mm, slope(170*mm)))
	}
	p.Outline = append(p.Outline, pt(lo, slope(lo)))
	for _, h := range face.Holes {
		b := draw.BoxOf(h)
		if b.X = b.X.Intersection(geom.Interval{Lo: lo, Hi: hi}); b.X.Length() > 0 {
			p.Holes = append(p.Holes, b.Ring())
		}
	}
	return p
}

// Page returns an A4 page with the wall, a heading, words and a check ruler.
func Page() *draw.Scene {
	p := onPage(Wall())
	heading := draw.Text{At: pt(14*mm, 196*mm), Text: "Zimmer „Süd“ – ½ Rapport", Size: 6 * mm, Bold: true, Ink: black}
	items := []draw.Item{draw.Group{Role: draw.Heading, Items: []draw.Item{heading}}}
	for i, w := range Words {
		items = append(items, draw.Text{
			At: pt([...]measure.Length{14 * mm, 160 * mm}[i%2], 189*mm-measure.Length(i/2)*6*mm), Text: w, Size: 4 * mm, Ink: black, Bold: i == 2,
		})
	}
	items = append(items, draw.Text{At: pt(288*mm, 105*mm), Text: "Upwards ✓ שלום", Size: 4 * mm, Ink: black, Turn: draw.Upwards, Anchor: draw.Middle})
	p.Layers = append(p.Layers, draw.Layer{Name: "words", Title: "Words", Items: items})
	return p
}

// onPage returns a page that holds a drawing in the middle above a check ruler.
func onPage(s *draw.Scene) *draw.Scene {
	const size = 3 * mm
	f := draw.A4.Landscape()
	room := f.Box().Grown(-12 * mm)
	room.Y.Lo += size * 45 / 10
	w, h := s.Window.X.Length(), s.Window.Y.Length()
	at := geom.Point{X: room.X.Lo + (room.X.Length()-w)/2, Y: room.Y.Lo + (room.Y.Length()-h)/2}
	ruler := draw.Ruler{
		At:   pt(12*mm+size, 12*mm+size*2),
		Size: size, Ink: grey, Pen: draw.Pen{Ink: grey, Width: size / 15}, Text: "Measure this: it must be 100 mm or 4 in long.",
	}
	return &draw.Scene{ID: s.ID, Title: s.Title, Desc: s.Desc, Window: f.Box(), Layers: []draw.Layer{
		{Name: "drawing", Title: s.Title, Items: []draw.Item{draw.Placed(s, at)}},
		{Name: "ruler", Items: []draw.Item{draw.Group{Role: draw.Furniture, Items: []draw.Item{ruler}}}},
	}}
}

// mark is a number in a ring.
func mark(at geom.Point, text string) draw.Item {
	const size = 5 * mm
	r := max(size*7/10, draw.TextWidth(text, size, true)*6/10)
	return draw.Group{Items: []draw.Item{
		draw.Area{Shape: geom.Polygon{Outline: disc(at, r)}, Fill: draw.RGB(0xffffff), Pen: draw.Pen{Ink: black, Width: mm / 4}},
		draw.Text{At: geom.Point{X: at.X, Y: at.Y - size*36/100}, Text: text, Size: size, Anchor: draw.Middle, Bold: true, Ink: black},
	}}
}

// disc is a circle as a ring of many corners.
func disc(middle geom.Point, radius measure.Length) geom.Ring {
	const corners = 72
	ring := make(geom.Ring, corners)
	for i := range ring {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / corners)
		ring[i] = geom.Point{
			X: middle.X + measure.Length(math.Round(cos*float64(radius))),
			Y: middle.Y + measure.Length(math.Round(sin*float64(radius))),
		}
	}
	return ring
}
