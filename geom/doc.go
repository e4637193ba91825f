// Package geom answers the question: where on the wall?
//
// Points are exact lengths: x runs to the right as one faces the wall from
// inside the room, y upwards from the datum. The package knows neither rooms
// nor paper.
//
// An [Interval] is a stretch of positions, a [Cycle] a stretch of positions
// modulo a repeat. A [Polygon] is an outline with holes, each a [Ring]; it is
// cut into upright trapezoids, its [Cell]s, and cells that hang together make
// parcels. A [Sweep] is a polygon prepared for being cut again and again.
//
// Coordinates up to ±measure.MaxLength are safe, and [Ring.Check] refuses
// others. Nothing panics for any ring. Products of lengths are taken in 128
// bits, and a height on a slope is rounded once, to the nearest nanometre.
package geom
