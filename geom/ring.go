package geom

import (
	"slices"

	"firstdrop/measure"
)

// Ring is a simple closed polygon given by its corners in order, either way
// round, the last joined to the first. It has at least three corners.
// [Ring.Check] tells whether a ring is what it should be; the other methods
// answer for any ring without panic, but only a checked one has an inside.
type Ring []Point

// after returns the corner that follows corner i.
func (r Ring) after(i int) Point {
	if i+1 == len(r) {
		return r[0]
	}
	return r[i+1]
}

// Bounds returns the stretches that the ring covers across and upwards; both
// are empty for a ring without corners.
func (r Ring) Bounds() (x, y Interval) {
	x, y = Interval{0, -1}, Interval{0, -1}
	for _, p := range r {
		x = x.Union(Interval{p.X, p.X})
		y = y.Union(Interval{p.Y, p.Y})
	}
	return x, y
}

// Contains reports whether p lies inside the ring or on its edge.
func (r Ring) Contains(p Point) bool { return r.side(p) >= 0 }

// Shifted returns the ring moved by d.
func (r Ring) Shifted(d Point) Ring {
	shifted := slices.Clone(r)
	for i := range shifted {
		shifted[i].X += d.X
		shifted[i].Y += d.Y
	}
	return shifted
}

// Mirrored returns the ring as a mirror shows it, left and right exchanged:
// every x becomes width − x, so that a wall of that width comes to stand on its
// own place. Corners come in reverse order, which keeps the way round.
// Mirroring twice gives the same ring again.
func (r Ring) Mirrored(width measure.Length) Ring {
	mirrored := slices.Clone(r)
	slices.Reverse(mirrored)
	for i := range mirrored {
		mirrored[i].X = width - mirrored[i].X
	}
	return mirrored
}

// side returns −1, 0 or 1 as p lies outside, on the edge of, or inside the
// ring: inside means that an odd number of edges runs above p.
func (r Ring) side(p Point) int {
	above := 0
	for i := range r {
		a, b := r[i], r.after(i)
		e, ok := edgeBetween(a, b, 0)
		if e.left.X > p.X || e.right.X < p.X {
			continue
		}
		if !ok {
			if min(a.Y, b.Y) <= p.Y && p.Y <= max(a.Y, b.Y) {
				return 0
			}
			continue
		}
		switch side := e.side(p); {
		case side == 0:
			return 0
		case side < 0 && p.X < e.right.X: // a corner belongs to the edge on its right
			above++
		}
	}
	return above%2*2 - 1
}

// cross returns twice the area of the triangle o, a, b: positive when one turns
// left from a to b as seen from o, 0 when the three stand in a line.
func cross(o, a, b Point) wide {
	return product(a.X-o.X, b.Y-o.Y).minus(product(a.Y-o.Y, b.X-o.X))
}
