package design

import (
	"fmt"

	"firstdrop/draw"
	"firstdrop/draw/png"
	"firstdrop/geom"
	"firstdrop/measure"
)

// Design is one of our own.
type Design struct {
	Name  string // a word for programs: "quince"
	Title string // for people
	// Num and Den are the drop of its match, as a part of the repeat: 0/1 straight,
	// 1/2 half drop, 1/3 third drop.
	Num, Den int64
	// Width and Repeat are the sizes that suit it best.
	Width, Repeat measure.Length

	ground draw.Ink
	paint  func(b *brush)
}

// All lists the designs.
func All() []Design {
	return []Design{
		{
			Name: "tulips", Title: "Tulips in a net", Num: 0, Den: 1, Width: 530 * mm, Repeat: 530 * mm,
			ground: draw.RGB(0xf3ead9), paint: tulips,
		},
		{
			Name: "quince", Title: "Quince branches", Num: 1, Den: 2, Width: 530 * mm, Repeat: 640 * mm,
			ground: draw.RGB(0x1f3b3d), paint: quince,
		},
		{
			Name: "ginkgo", Title: "Falling ginkgo leaves", Num: 1, Den: 3, Width: 520 * mm, Repeat: 600 * mm,
			ground: draw.RGB(0xe9dccb), paint: ginkgo,
		},
	}
}

// Named returns the design of that name; ok is false when there is none.
func Named(name string) (d Design, ok bool) {
	for _, d := range All() {
		if d.Name == name {
			return d, true
		}
	}
	return Design{}, false
}

const mm = measure.Millimetre

// Scene returns one repeat of the design on paper of a width, at full size. Both
// lengths must be positive.
func (d Design) Scene(width, repeat measure.Length) *draw.Scene {
	b := &brush{window: draw.BoxAt(0, 0, width, repeat), width: float64(width), repeat: float64(repeat), drop: float64(d.Num) / float64(d.Den)}
	b.items = append(b.items, draw.Area{Shape: geom.Polygon{Outline: b.window.Ring()}, Fill: d.ground})
	d.paint(b)
	return &draw.Scene{
		ID: d.Name, Title: d.Title, Window: b.window, Scale: 1,
		Layers: []draw.Layer{{Name: "design", Title: d.Title, Items: b.items}},
	}
}

// Picture returns one repeat as a picture of so many squares across; as many up as
// keep them square, to the nearest.
func (d Design) Picture(width, repeat measure.Length, across int) (*draw.Picture, error) {
	if width <= 0 || repeat <= 0 || across < 1 {
		return nil, fmt.Errorf("design %s: a repeat of %v × %v in %d squares cannot be drawn", d.Name, width, repeat, across)
	}
	up := max(repeat.Scaled(int64(across), int64(width)), 1)
	m, err := png.RenderSized(d.Scene(width, repeat), across, int(up))
	if err != nil {
		return nil, fmt.Errorf("design %s: %w", d.Name, err)
	}
	return draw.NewPicture(m), nil
}
