package geom

import "firstdrop/measure"

// Polygon is an area with holes: every point inside Outline and outside all
// Holes. Holes may touch the outline (a door stands on the floor), poke out of
// it, and overlap one another.
type Polygon struct {
	Outline Ring
	Holes   []Ring
}

// Contains reports whether p lies inside the outline and inside no hole. The
// edges of the outline and of holes belong to the polygon, except where they
// run through the inside of another hole.
func (p Polygon) Contains(at Point) bool {
	if p.Outline.side(at) < 0 {
		return false
	}
	for _, hole := range p.Holes {
		if hole.side(at) > 0 {
			return false
		}
	}
	return true
}

// Bounds returns the stretches that the outline covers across and upwards;
// both are empty for a polygon without corners.
func (p Polygon) Bounds() (x, y Interval) { return p.Outline.Bounds() }

// Shifted returns the polygon moved by d.
func (p Polygon) Shifted(d Point) Polygon {
	return p.each(func(r Ring) Ring { return r.Shifted(d) })
}

// Mirrored returns the polygon as a mirror shows it, as [Ring.Mirrored] says.
func (p Polygon) Mirrored(width measure.Length) Polygon {
	return p.each(func(r Ring) Ring { return r.Mirrored(width) })
}

// each returns the polygon of changed rings; no holes stay no holes.
func (p Polygon) each(change func(Ring) Ring) Polygon {
	changed := Polygon{Outline: change(p.Outline)}
	for _, hole := range p.Holes {
		changed.Holes = append(changed.Holes, change(hole))
	}
	return changed
}
