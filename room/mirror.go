package room

import "slices"

// Mirrored returns the run as a mirror shows it: walls in reverse order, every
// x counted from the other end, leans and sides exchanged and reversed.
// Mirroring twice gives the same run again. The two share no memory.
func (r *Run) Mirrored() *Run {
	m := &Run{Name: r.Name, Closed: r.Closed, Walls: slices.Clone(r.Walls), Corners: slices.Clone(r.Corners)}
	slices.Reverse(m.Walls)
	for i := range m.Walls {
		m.Walls[i] = m.Walls[i].mirrored()
	}
	// The corner that leads back to the first wall stays the last.
	between := m.Corners
	if r.Closed && len(between) == len(r.Walls) && len(between) > 0 {
		between = between[:len(between)-1]
	}
	slices.Reverse(between)
	for i := range m.Corners {
		m.Corners[i] = m.Corners[i].mirrored()
	}
	m.Ends.Left, m.Ends.Right = r.Ends.Right.mirrored(), r.Ends.Left.mirrored()
	m.Beyond.Left, m.Beyond.Right = r.Beyond.Right, r.Beyond.Left
	return m
}

// mirrored returns the corner with its sides exchanged: what stood to the
// right of the foot now stands to the left of it.
func (c Corner) mirrored() Corner {
	c.LeanLeft, c.LeanRight = -c.LeanRight, -c.LeanLeft
	return c
}

// mirrored returns the wall with every x counted from its other end. Openings
// and fittings stay in the order in which they were listed.
func (w Wall) mirrored() Wall {
	w.Outline = w.Outline.Mirrored(w.Width)
	w.Openings = slices.Clone(w.Openings)
	for i := range w.Openings {
		o := &w.Openings[i]
		o.Outline = o.Outline.Mirrored(w.Width)
		o.Sides.Left, o.Sides.Right = o.Sides.Right, o.Sides.Left
	}
	w.Fittings = slices.Clone(w.Fittings)
	for i := range w.Fittings {
		w.Fittings[i].At.X = w.Width - w.Fittings[i].At.X
	}
	return w
}
