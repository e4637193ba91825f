package draw

import "firstdrop/geom"

// Shifted returns the item moved by d.
func Shifted(it Item, d geom.Point) Item {
	switch it := it.(type) {
	case Area:
		it.Shape = it.Shape.Shifted(d)
		return it
	case Line:
		it.Points = geom.Ring(it.Points).Shifted(d)
		return it
	case Text:
		it.At = moved(it.At, d)
		return it
	case Tile:
		it.Shape, it.At = it.Shape.Shifted(d), moved(it.At, d)
		return it
	case Group:
		it.Items = shiftedAll(it.Items, d)
		return it
	case Compound:
		return Group{Items: shiftedAll(it.Parts(), d)}
	}
	return it
}

func moved(p, d geom.Point) geom.Point { return geom.Point{X: p.X + d.X, Y: p.Y + d.Y} }

func shiftedAll(items []Item, d geom.Point) []Item {
	out := make([]Item, len(items))
	for i, it := range items {
		out[i] = Shifted(it, d)
	}
	return out
}

// Placed returns a scene as one figure of another: the lower left corner of its
// window comes to stand at a point. What lies outside the window is kept.
func Placed(s *Scene, at geom.Point) Group {
	d := geom.Point{X: at.X - s.Window.X.Lo, Y: at.Y - s.Window.Y.Lo}
	g := Group{ID: s.ID, Role: Figure, Title: s.Title, Desc: s.Desc}
	for _, l := range s.Layers {
		g.Items = append(g.Items, Group{ID: l.Name, Title: l.Title, Items: shiftedAll(l.Items, d)})
	}
	return g
}
