package design

import (
	"math"

	"firstdrop/draw"
)

// tulips fills the eyes of a net of waving bands with flowers, two columns to a
// width, every other one half a repeat higher. The net matches straight across.
func tulips(b *brush) {
	u := b.unit()
	band := func(k, off float64) []xy {
		sign := 1 - 2*math.Mod(k, 2)
		return traced(160, func(t float64) xy {
			p := b.at((k+sign*0.38*math.Cos(2*math.Pi*t))/2, t)
			return xy{p.x + off, p.y}
		})
	}
	for k := range 2 {
		b.line(draw.RGB(0xd9c79f), 3.4*u, band(float64(k), 0))
		b.line(draw.RGB(0xb08d4a), 0.5*u, band(float64(k), -1.3*u))
		b.line(draw.RGB(0xb08d4a), 0.5*u, band(float64(k), 1.3*u))
	}
	for k := range 2 {
		for bead := range 24 {
			t := (float64(bead) + 0.5) / 24
			x := float64(k) + (1-2*float64(k))*0.38*math.Cos(2*math.Pi*t)
			b.disc(draw.RGB(0x8c3b2a), b.at(x/2, t), 0.55*u)
		}
		b.tulip(b.at(0.25+0.5*float64(k), 0.5*float64(1+k)-0.02), 1.55*u)
		b.sprig(b.at(0.25+0.5*float64(k), 0.5*float64(k)), 1.25*u)
	}
}

// tulip paints a flower with two leaves, its middle at a place.
func (b *brush) tulip(at xy, u float64) {
	red, deep, pale := draw.RGB(0xb4472f), draw.RGB(0x8c3b2a), draw.RGB(0xd9825f)
	green, dark, rib := draw.RGB(0x6d8464), draw.RGB(0x4d6650), draw.RGB(0xa9b58f)
	b.line(dark, 0.9*u, []xy{{at.x, at.y - 14*u}, {at.x, at.y + 4*u}})
	for _, s := range []float64{1, -1} {
		b.bud(xy{at.x, at.y - 9*u}, s, u)
		b.leaf(xy{at.x, at.y - 13*u}, 0.25-s*0.085, 17*u, 5.4*u, -s*0.30, green, dark, rib)
		b.leaf(xy{at.x, at.y - 12*u}, 0.25-s*0.16, 10*u, 3.6*u, s*0.35, green, dark, rib)
	}
	petal := func(ink draw.Ink, lean, long, wide float64) {
		b.fill(ink, turned(joined(
			traced(30, func(t float64) xy {
				return xy{long * t, wide / 2 * math.Pow(math.Sin(math.Pi*math.Pow(t, 0.62)), 0.75)}
			}),
			traced(30, func(t float64) xy {
				return xy{long * t, -wide / 2 * math.Pow(math.Sin(math.Pi*math.Pow(t, 0.62)), 0.75)}
			})), 0.25+lean, xy{at.x, at.y + 2*u}))
	}
	petal(deep, 0.075, 14*u, 5.5*u)
	petal(deep, -0.075, 14*u, 5.5*u)
	petal(red, 0.035, 13.4*u, 6*u)
	petal(red, -0.035, 13.4*u, 6*u)
	petal(pale, 0, 11.5*u, 5*u)
	for _, lean := range []float64{-0.018, 0, 0.018} {
		b.line(red, 0.25*u, turned([]xy{{2.5 * u, 0}, {8.5 * u, 0}}, 0.25+lean, xy{at.x, at.y + 2*u}))
	}
}

// bud paints a closed flower on a stalk that bends out to one side.
func (b *brush) bud(at xy, side, u float64) {
	stalk := traced(20, func(t float64) xy {
		return xy{at.x + side*9.5*u*math.Sin(math.Pi/2*t), at.y - 3*u + 9*u*t*t}
	})
	b.line(draw.RGB(0x4d6650), 0.5*u, stalk)
	tip := stalk[20]
	b.leaf(tip, 0.25-side*0.02, 6.2*u, 3.2*u, 0, draw.RGB(0xc96a4c), draw.RGB(0xa5432f), draw.RGB(0xe0a184))
	for _, s := range []float64{1, -1} {
		b.leaf(xy{tip.x, tip.y - 0.5*u}, 0.25+s*0.06, 3*u, 1.1*u, s*0.2, draw.RGB(0x6d8464), draw.RGB(0x4d6650), draw.RGB(0xa9b58f))
	}
}

// sprig paints the small ornament where the net is narrow.
func (b *brush) sprig(at xy, u float64) {
	for k := range 8 {
		turn := float64(k) / 8
		long := 3.4 * u
		if k%2 == 1 {
			long = 2.2 * u
		}
		b.leaf(at, turn, long, 1.3*u, 0, draw.RGB(0xc9a45c), draw.RGB(0xb08d4a), draw.RGB(0x8f7038))
	}
	b.disc(draw.RGB(0x8c3b2a), at, 0.7*u)
}
