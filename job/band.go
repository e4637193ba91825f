package job

import (
	"slices"

	"firstdrop/geom"
	"firstdrop/measure"
	"firstdrop/room"
)

// band is the part of a room between two heights over the datum: the wall above
// or below a dado rail. nil is no limit.
type band struct{ from, to *measure.Length }

func (b band) isAll() bool { return b.from == nil && b.to == nil }

// clipped returns the part of a wall within the band, with the openings that
// reach into it and the fittings whose middle is there, and which of the wall's
// those are. A return that the limit cuts off is not papered. ok is false when
// nothing of the wall is there.
func (b band) clipped(w room.Wall) (part room.Wall, openings, fittings []int, ok bool) {
	part = w
	if b.isAll() {
		return part, upTo(len(w.Openings)), upTo(len(w.Fittings)), true
	}
	if part.Outline = b.ring(w.Outline); part.Outline == nil {
		return part, nil, nil, false
	}
	part.Openings, part.Fittings = nil, nil
	for i, o := range w.Openings {
		_, before := o.Outline.Bounds()
		if o.Outline = b.ring(o.Outline); o.Outline == nil || shared(o.Outline, part.Outline) <= leastShared {
			continue
		}
		_, after := o.Outline.Bounds()
		o.Sides.Head = o.Sides.Head && after.Hi == before.Hi
		o.Sides.Sill = o.Sides.Sill && after.Lo == before.Lo
		part.Openings, openings = append(part.Openings, o), append(openings, i)
	}
	for i, f := range w.Fittings {
		if (b.from == nil || f.At.Y >= *b.from) && (b.to == nil || f.At.Y <= *b.to) {
			part.Fittings, fittings = append(part.Fittings, f), append(fittings, i)
		}
	}
	return part, openings, fittings, true
}

// upTo lists the numbers from 0 to below n.
func upTo(n int) []int {
	list := make([]int, n)
	for i := range list {
		list[i] = i
	}
	return list
}

// leastShared is the area that an opening must take from a wall to count: less
// is rounding, and [room.Run.Check] takes it for an opening that is elsewhere.
const leastShared = measure.SquareMillimetre

// shared returns the area that two rings have in common.
func shared(a, b geom.Ring) measure.Area {
	outside := geom.Polygon{Outline: a, Holes: []geom.Ring{b}}
	x, _ := outside.Bounds()
	return a.Area() - geom.AreaOf(outside.Cells(x))
}

// ring returns the part of a ring within the band; nil when it has no area. A
// ring that the limit cuts into several parts comes back as one, joined along
// the limit, which [geom.Ring.Check] refuses.
func (b band) ring(r geom.Ring) geom.Ring {
	if b.from != nil {
		r = above(r, *b.from)
	}
	if b.to != nil {
		r = below(r, *b.to)
	}
	r = slices.CompactFunc(r, func(p, q geom.Point) bool { return p == q })
	if len(r) > 1 && r[0] == r[len(r)-1] {
		r = r[:len(r)-1]
	}
	if len(r) < 3 || r.Area() == 0 {
		return nil
	}
	return fromFoot(r)
}

// fromFoot returns the ring with its lowest corner first, the left one of
// several, so that the same shape is written in the same way however it came
// about.
func fromFoot(r geom.Ring) geom.Ring {
	first := 0
	for i, p := range r {
		if p.Y < r[first].Y || p.Y == r[first].Y && p.X < r[first].X {
			first = i
		}
	}
	return slices.Concat(r[first:], r[:first])
}

func below(r geom.Ring, y measure.Length) geom.Ring {
	return upsideDown(above(upsideDown(r), -y))
}

func upsideDown(r geom.Ring) geom.Ring {
	turned := make(geom.Ring, len(r))
	for i, p := range r {
		turned[len(r)-1-i] = geom.Point{X: p.X, Y: -p.Y}
	}
	return turned
}

// above walks round the ring, keeps the corners at or above y, and puts one
// where an edge crosses it, rounded to the nearest nanometre.
func above(r geom.Ring, y measure.Length) geom.Ring {
	var kept geom.Ring
	for i, p := range r {
		q := r[(i+1)%len(r)]
		if p.Y >= y {
			kept = append(kept, p)
		}
		if (p.Y > y) != (q.Y > y) && p.Y != y && q.Y != y {
			x := p.X + (q.X-p.X).Scaled(int64(y-p.Y), int64(q.Y-p.Y))
			kept = append(kept, geom.Point{X: x, Y: y})
		}
	}
	return kept
}
