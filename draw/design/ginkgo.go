package design

import (
	"math"

	"firstdrop/draw"
)

// fans are the leaves of the ginkgo design: place in widths and repeats, turn,
// size in units.
var fans = [][4]float64{
	{0.20, 0.10, 0.62, 17},
	{0.66, 0.03, 0.12, 15},
	{0.46, 0.33, 0.88, 18},
	{0.93, 0.28, 0.35, 14},
	{0.16, 0.55, 0.20, 16},
	{0.70, 0.60, 0.70, 18},
	{0.40, 0.80, 0.40, 14},
	{0.92, 0.86, 0.95, 16},
}

// ginkgo lets leaves fall before thin arcs of wind. The next width stands a third
// of the repeat lower.
func ginkgo(b *brush) {
	u := b.unit()
	for k := range 6 {
		off := float64(k) / 6
		b.line(draw.RGB(0xdcc9b0), 0.35*u, traced(160, func(t float64) xy {
			return b.at(t, off+b.drop*t+0.035*math.Sin(2*math.Pi*(t+off)))
		}))
	}
	for k := range 27 {
		x, y := math.Mod(0.13+0.618*float64(k), 1), math.Mod(0.07+0.377*float64(k), 1)
		b.disc(draw.RGB(0xc9a96a), b.at(x, y), (0.28+0.16*float64(k%3))*u)
	}
	for k, f := range fans {
		tones := [][2]draw.Ink{
			{draw.RGB(0xb8863b), draw.RGB(0x8d6427)},
			{draw.RGB(0x7c8b6f), draw.RGB(0x59684f)},
			{draw.RGB(0xc0765a), draw.RGB(0x96523c)},
		}[k%3]
		b.fan(b.at(f[0], f[1]), f[2], f[3]*u, u, tones[0], tones[1])
	}
}

// fan paints a ginkgo leaf: two lobes spread from the stalk, with fine ribs.
func (b *brush) fan(at xy, turn, size, u float64, light, dark draw.Ink) {
	const spread = 0.17 // of a turn, to each side
	edge := func(t float64) float64 {
		notch := 0.32 * math.Exp(-math.Pow((t-0.5)/0.035, 2))
		round := 1 - 0.16*math.Pow(2*t-1, 4)
		return size * (round - notch + 0.018*math.Sin(2*math.Pi*7*t) + 0.010*math.Sin(2*math.Pi*17*t))
	}
	rim := func(t float64) xy {
		sin, cos := math.Sincos(2 * math.Pi * spread * (2*t - 1))
		return xy{edge(t) * cos, edge(t) * sin}
	}
	half := func(from, to float64) []xy {
		ring := []xy{{0, 0}}
		for i := range 81 {
			ring = append(ring, rim(from+(to-from)*float64(i)/80))
		}
		return turned(ring, turn, at)
	}
	b.fill(light, half(0, 1))
	b.fill(dark, half(0, 0.18))
	for k := 1; k < 24; k++ {
		t := float64(k) / 24
		p := rim(t)
		b.line(dark, 0.14*u, turned([]xy{{p.x * 0.12, p.y * 0.12}, {p.x * 0.93, p.y * 0.93}}, turn, at))
	}
	b.line(dark, 0.55*u, turned(traced(24, func(t float64) xy {
		return xy{-size * 0.75 * t, size * 0.16 * t * t}
	}), turn, at))
}
