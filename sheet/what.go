package sheet

import (
	"strings"

	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/room"
)

// what says in a few words what a piece is: "full", "over door", "under
// window", "between window and door", "left reveal of window". A piece that is
// cut out round openings on the wall is full and says so.
func what(l *hanging.Layout, p *hanging.Piece) string {
	if r := p.Return; r != nil {
		return r.Side.String() + " of " + nameOf(&l.Run.Walls[r.Wall].Openings[r.Opening])
	}
	var over, under, round []string
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
				over = append(over, nameOf(o))
			case oy.Lo >= p.Y.Hi:
				under = append(under, nameOf(o))
			case oy.Overlaps(p.Y):
				round = append(round, nameOf(o))
			}
		}
	}
	var text string
	switch {
	case len(over) > 0 && len(under) > 0:
		text = "between " + listed(over) + " and " + listed(under)
	case len(over) > 0:
		text = "over " + listed(over)
	case len(under) > 0:
		text = "under " + listed(under)
	case !isFull(l, p):
		text = "short"
	default:
		text = "full"
	}
	if len(round) > 0 {
		text += ", cut out round " + listed(round)
	}
	return text
}

// listed joins names, each once.
func listed(names []string) string {
	var once []string
	seen := map[string]bool{}
	for _, n := range names {
		if !seen[n] {
			seen[n] = true
			once = append(once, n)
		}
	}
	return strings.Join(once, " and ")
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

// nameOf returns an opening's name, or what it is.
func nameOf(o *room.Opening) string {
	if o.Name != "" {
		return o.Name
	}
	return o.Kind.String()
}
