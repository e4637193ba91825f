package draw

import (
	"fmt"

	"firstdrop/geom"
	"firstdrop/measure"
)

// PageSetup is how a drawing stands on a page.
type PageSetup struct {
	Format Format
	Margin measure.Length
	Size   measure.Length // of the letters at the ruler
	Ruler  string         // what to do with the check ruler
	Ink    Ink
}

// rulerRoom is the height that the check ruler takes, in tenths of its letters.
const rulerRoom = 45

// OnPage returns a page that holds a drawing at its own scale, in the middle above a
// check ruler: upright where it fits, else lying. An error says how much room there
// is and how much is wanted.
func OnPage(s *Scene, p PageSetup) (*Scene, error) {
	foot := p.Size * rulerRoom / 10
	for _, f := range []Format{p.Format, p.Format.Landscape()} {
		room := f.Box().Grown(-p.Margin)
		room.Y.Lo += foot
		w, h := s.Window.X.Length(), s.Window.Y.Length()
		if w > room.X.Length() || h > room.Y.Length() {
			continue
		}
		at := geom.Point{X: room.X.Lo + (room.X.Length()-w)/2, Y: room.Y.Lo + (room.Y.Length()-h)/2}
		ruler := Ruler{
			At:   geom.Point{X: p.Margin + p.Size, Y: p.Margin + p.Size*2},
			Size: p.Size, Ink: p.Ink, Pen: Pen{Ink: p.Ink, Width: p.Size / 15}, Text: p.Ruler,
		}
		return &Scene{ID: s.ID, Title: s.Title, Desc: s.Desc, Window: f.Box(), Layers: []Layer{
			{Name: "drawing", Title: s.Title, Items: []Item{Placed(s, at)}},
			{Name: "ruler", Items: []Item{Group{Role: Furniture, Items: []Item{ruler}}}},
		}}, nil
	}
	return nil, fmt.Errorf("the drawing %q is %v × %v, more than %s has room for: take a smaller scale or larger paper",
		s.Title, s.Window.X.Length(), s.Window.Y.Length(), p.Format.Name)
}
