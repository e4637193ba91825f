package design

import (
	"math"

	"firstdrop/draw"
)

// quince lets one branch wind up the roll, with leaves, fruit and blossom, before
// the shadow of another. The next width stands half a repeat lower.
func quince(b *brush) {
	u := 1.4 * b.unit()
	shade := draw.RGB(0x28494a)
	stem := func(off float64) func(t float64) xy {
		return func(t float64) xy { return b.at(0.5+off+0.21*math.Sin(2*math.Pi*t), t) }
	}
	back := func(t float64) xy { return b.at(0.02+0.16*math.Sin(2*math.Pi*(t+0.30)), t) }
	b.line(shade, 0.9*u, traced(200, back))
	for k := range 14 {
		t := (float64(k) + 0.4) / 14
		s := 1 - 2*float64(k%2)
		b.leaf(back(t), slope(back, t)-s*0.13, 12*u, 5*u, s*0.15, shade, shade, draw.RGB(0x1f3b3d))
	}
	main := stem(0)
	b.line(draw.RGB(0x6b5138), 1.5*u, traced(200, main))
	b.line(draw.RGB(0x8d7050), 0.5*u, traced(200, func(t float64) xy { p := main(t); return xy{p.x - 0.3*u, p.y} }))
	for k := range 13 {
		t := (float64(k) + 0.5) / 13
		s := 1 - 2*float64(k%2)
		light, dark := draw.RGB(0x7fa07a), draw.RGB(0x55806a)
		if k%3 == 0 {
			light, dark = draw.RGB(0xa3b07a), draw.RGB(0x7d9465)
		}
		b.leaf(main(t), slope(main, t)-s*0.12, 13.5*u, 6.2*u, s*0.14, light, dark, draw.RGB(0xd3d8ae))
	}
	for k, t := range []float64{0.16, 0.41, 0.66, 0.91} {
		s := 1 - 2*float64(k/2%2)
		if k%2 == 0 {
			b.twig(main(t), 0.25-s*0.20, 15*u, u, b.fruit)
		} else {
			b.twig(main(t), 0.25+s*0.19, 14*u, u, b.blossom)
		}
	}
	for _, p := range [][2]float64{{0.93, 0.37}, {0.10, 0.66}, {0.90, 0.80}, {0.10, 0.07}, {0.95, 0.05}, {0.06, 0.40}} {
		b.blossomBud(b.at(p[0], p[1]), u)
	}
}

// slope returns the direction of a curve, as a part of a turn.
func slope(f func(float64) xy, t float64) float64 {
	a, c := f(t-0.002), f(t+0.002)
	return math.Atan2(c.y-a.y, c.x-a.x) / (2 * math.Pi)
}

// twig draws a short branch that bends upwards and what hangs on its end.
func (b *brush) twig(at xy, turn, long, u float64, end func(xy, float64, float64)) {
	points := turned(traced(20, func(t float64) xy { return xy{long * t, long * 0.22 * t * t} }), turn, at)
	b.line(draw.RGB(0x6b5138), 0.8*u, points)
	mid := points[10]
	b.leaf(mid, turn+0.12, 8*u, 3.6*u, -0.1, draw.RGB(0x7fa07a), draw.RGB(0x55806a), draw.RGB(0xd3d8ae))
	end(points[20], turn, u)
}

// fruit paints a quince that hangs from a place.
func (b *brush) fruit(at xy, turn, u float64) {
	middle := xy{at.x, at.y - 4.4*u}
	body := func(ink draw.Ink, size, dx float64) {
		b.fill(ink, turned(traced(60, func(t float64) xy {
			sin, cos := math.Sincos(2 * math.Pi * t)
			r := size * (1 + 0.10*math.Cos(2*2*math.Pi*t) + 0.07*sin)
			return xy{r*cos*0.95 + dx, r * sin}
		}), 0, middle))
	}
	body(draw.RGB(0xb98a2c), 5.6*u, 0)
	body(draw.RGB(0xdcb148), 5.0*u, -0.5*u)
	body(draw.RGB(0xedcf78), 2.6*u, -1.4*u)
	for k := -2; k <= 2; k++ {
		b.leaf(xy{middle.x, middle.y - 5.0*u}, 0.75+0.07*float64(k), 2.2*u, 0.9*u, 0, draw.RGB(0x6b5138), draw.RGB(0x50402e), draw.RGB(0x6b5138))
	}
	b.leaf(at, turn-0.05, 7.5*u, 3.4*u, 0.1, draw.RGB(0xa3b07a), draw.RGB(0x7d9465), draw.RGB(0xd3d8ae))
}

// blossom paints an open flower at a place.
func (b *brush) blossom(at xy, turn, u float64) {
	for k := range 5 {
		b.petal(at, turn+float64(k)/5, 5.2*u, draw.RGB(0xe9b9ab))
	}
	for k := range 5 {
		b.petal(at, turn+float64(k)/5, 3.9*u, draw.RGB(0xf6ded3))
	}
	for k := range 12 {
		tip := turned([]xy{{2.2 * u, 0}}, float64(k)/12, at)[0]
		b.line(draw.RGB(0xc8866f), 0.16*u, []xy{at, tip})
		b.disc(draw.RGB(0xd8a63c), tip, 0.30*u)
	}
	b.disc(draw.RGB(0x9db06a), at, 0.75*u)
}

func (b *brush) petal(at xy, turn, long float64, ink draw.Ink) {
	b.fill(ink, turned(traced(40, func(t float64) xy {
		sin, cos := math.Sincos(2 * math.Pi * t)
		return xy{long*0.55 + long*0.45*cos, long * 0.44 * sin * (1 + 0.35*cos)}
	}), turn, at))
}

// blossomBud paints a loose petal on the ground.
func (b *brush) blossomBud(at xy, u float64) {
	b.petal(at, at.x/b.width+at.y/b.repeat, 2.6*u, draw.RGB(0xe9b9ab))
	b.petal(at, at.x/b.width+at.y/b.repeat+0.04, 1.9*u, draw.RGB(0xf6ded3))
}
