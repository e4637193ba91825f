package geom

// IsRectangle reports whether the ring is an upright rectangle given by its
// four corners.
func (r Ring) IsRectangle() bool {
	if len(r) != 4 {
		return false
	}
	x, y := r.Bounds()
	for i, p := range r {
		q := r.after(i)
		onCorner := (p.X == x.Lo || p.X == x.Hi) && (p.Y == y.Lo || p.Y == y.Hi)
		alongSide := (p.X == q.X) != (p.Y == q.Y)
		if !onCorner || !alongSide {
			return false
		}
	}
	return x.Length() > 0 && y.Length() > 0
}
