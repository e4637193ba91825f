package tell

import (
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/room"
	"firstdrop/words"
)

// Piece says in a few words what a piece is: "full", "over door", "under
// window", "between window and door", "left reveal of window". A piece that is
// cut out round openings on the wall is full and says so.
func Piece(c *words.Catalogue, l *hanging.Layout, p *hanging.Piece) string {
	if r := p.Return; r != nil {
		return Return(c, r.Side, Opening(c, &l.Run.Walls[r.Wall].Openings[r.Opening]))
	}
	over, under, round := neighbours(c, l, p)
	var text string
	switch {
	case len(over) > 0 && len(under) > 0:
		text = c.Text("what.between", "below", listed(c, over), "above", listed(c, under))
	case len(over) > 0:
		text = c.Text("what.over", "openings", listed(c, over))
	case len(under) > 0:
		text = c.Text("what.under", "openings", listed(c, under))
	case !isFull(l, p):
		text = c.Text("what.short")
	default:
		text = c.Text("what.full")
	}
	if len(round) > 0 {
		text = c.Text("what.round", "what", text, "openings", listed(c, round))
	}
	return text
}

// neighbours names the openings that a piece hangs over, hangs under, and is
// cut out round.
func neighbours(c *words.Catalogue, l *hanging.Layout, p *hanging.Piece) (over, under, round []string) {
	for _, q := range l.Drops[p.Drop].Parts {
		x := p.Across.Shifted(q.X.Lo - q.Across.Lo).Intersection(q.X)
		for i := range l.Run.Walls[q.Wall].Openings {
			o := &l.Run.Walls[q.Wall].Openings[i]
			ox, oy := o.Outline.Bounds()
			if !ox.Overlaps(x) {
				continue
			}
			switch {
			case oy.Hi <= p.Y.Lo:
				over = append(over, Opening(c, o))
			case oy.Lo >= p.Y.Hi:
				under = append(under, Opening(c, o))
			case oy.Overlaps(p.Y):
				round = append(round, Opening(c, o))
			}
		}
	}
	return over, under, round
}

// listed joins names, each once.
func listed(c *words.Catalogue, names []string) (text string) {
	seen := map[string]bool{}
	for _, n := range names {
		switch {
		case seen[n]:
		case text == "":
			text = n
		default:
			text = c.Text("list.and", "first", text, "last", n)
		}
		seen[n] = true
	}
	return text
}

// isFull reports whether a piece reaches from the foot to the head of the wall
// over some of its width.
func isFull(l *hanging.Layout, p *hanging.Piece) bool {
	for _, q := range l.Drops[p.Drop].Parts {
		x := p.Across.Shifted(q.X.Lo - q.Across.Lo).Intersection(q.X)
		if x.Length() <= 0 {
			continue
		}
		y := geom.Interval{Lo: 0, Hi: -1}
		for _, c := range (geom.Polygon{Outline: l.Run.Face(q.Wall).Outline}).Cells(x) {
			y = y.Union(c.Y())
		}
		if !y.IsEmpty() && p.Y.Union(y).Length()-p.Y.Length() <= measure.Millimetre {
			return true
		}
	}
	return false
}

// Opening returns an opening's name, or what it is.
func Opening(c *words.Catalogue, o *room.Opening) string {
	if o.Name != "" {
		return c.Name(o.Name)
	}
	return c.Name(o.Kind.String())
}

// Return names a return of an opening: "left reveal of window".
func Return(c *words.Catalogue, side hanging.ReturnSide, opening string) string {
	return c.Text("what.return", "return", c.Name(side.String()), "opening", opening)
}

// Fitting returns a fitting's name, or what it is.
func Fitting(c *words.Catalogue, f *room.Fitting) string {
	if f.Name != "" {
		return c.Name(f.Name)
	}
	return c.Name(f.Kind.String())
}
