package screen

import (
	"fmt"

	"firstdrop/finding"
	"firstdrop/geom"
	"firstdrop/job"
	"firstdrop/plan"
)

// spotOn returns where a place is on wall n of a band, from the wall's left end,
// and the path of what is measured there.
func spotOn(place *finding.Place, b *job.Band, n int, p *plan.Plan, run int) (at geom.Point, path string) {
	w := &b.Run.Walls[n]
	_, y := w.Outline.Bounds()
	at = geom.Point{X: w.Width / 2, Y: y.Lo + y.Length()*11/20}
	path = fmt.Sprintf("room.walls[%d]", b.Walls[n])
	switch {
	case place.X != nil:
		at.X = *place.X
	case place.Corner != "" && place.Corner == cornerAt(b.Run, n):
		at.X, path = w.Width, path+".corner"
	case place.Corner != "":
		at.X = 0
	case place.Opening != "":
		if i := openingNamed(b, n, place.Opening); i >= 0 {
			x, y := w.Openings[i].Outline.Bounds()
			at, path = geom.Point{X: x.Lo + x.Length()/2, Y: y.Hi}, fmt.Sprintf("%s.openings[%d]", path, b.Openings[n][i])
		}
	case place.Drop > 0 && p != nil:
		if x, ok := dropOn(p, run, n, place.Drop); ok {
			at.X = x.Lo + x.Length()/2
		}
	}
	if place.Y != nil {
		at.Y = *place.Y
	}
	if p != nil && (place.X != nil || place.Drop > 0) {
		at = p.Runs[run].Layout.OnWall(n, at)
	}
	return at, path
}

// openingNamed returns the index of an opening of wall n; −1 without one.
func openingNamed(b *job.Band, n int, name string) int {
	for i := range b.Run.Walls[n].Openings {
		if b.Run.Walls[n].Openings[i].Name == name {
			return i
		}
	}
	return -1
}

// dropOn returns where a drop hangs on a wall.
func dropOn(p *plan.Plan, run, wall, number int) (geom.Interval, bool) {
	l := p.Runs[run].Layout
	for i := range l.Drops {
		for _, part := range l.Drops[i].Parts {
			if x := part.X.Intersection(geom.Interval{Lo: 0, Hi: l.Run.Walls[wall].Width}); l.Drops[i].Number == number && part.Wall == wall && x.Length() > 0 {
				return x, true
			}
		}
	}
	return geom.Interval{}, false
}
