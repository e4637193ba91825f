package geom

// Ring is a simple closed polygon given by its corners in order, either way
// round, the last joined to the first. It has at least three corners.
type Ring []Point

// Polygon is an area with holes: every point inside Outline and outside all
// Holes. Holes may touch the outline (a door stands on the floor) and may
// overlap one another.
type Polygon struct {
	Outline Ring
	Holes   []Ring
}
