package room

import (
	"slices"

	"firstdrop/geom"
	"firstdrop/measure"
)

// What one sees first in a room is the wall that one faces on coming in by its
// door. It follows from the plan where all corners are square:
//
//	┌────── first seen ──────┐
//	│            ▲           │
//	│            ┊           │
//	└──────────┤ door ├──────┘

// FirstSeen returns the walls of a closed run that one faces on coming in: for
// each door (without any, each arch) the nearest wall straight ahead of its middle,
// two where they meet there. There are none for an open run, one without a door,
// one whose corners are not all square, and one that does not close.
func (r *Run) FirstSeen() (walls []int) {
	if !r.Closed || len(r.Corners) != len(r.Walls) || !r.isSquare() {
		return nil
	}
	for _, kind := range []OpeningKind{Door, Arch} {
		for i := range r.Walls {
			for o := range r.Walls[i].Openings {
				if p := &r.Walls[i].Openings[o]; p.Kind == kind {
					reach, _ := p.Outline.Bounds()
					walls = append(walls, r.ahead(i, reach.Lo+reach.Length()/2)...)
				}
			}
		}
		if len(walls) > 0 {
			break
		}
	}
	slices.Sort(walls)
	return slices.Compact(walls)
}

// ahead returns the nearest walls straight ahead of x on a wall.
func (r *Run) ahead(wall int, x measure.Length) (walls []int) {
	ends := r.squarePlan(wall, x)
	var nearest measure.Length
	for i, w := range ends {
		// The door's middle is the origin, straight ahead is up the page, and a
		// wall that faces the door runs to the right.
		if w[0].X >= w[1].X || w[0].Y <= 0 || w[0].X > 0 || w[1].X < 0 {
			continue
		}
		if len(walls) == 0 || w[0].Y < nearest {
			walls, nearest = walls[:0], w[0].Y
		}
		if w[0].Y == nearest {
			walls = append(walls, i)
		}
	}
	return walls
}

// isSquare reports whether every corner is a right angle, or was not measured.
func (r *Run) isSquare() bool {
	for _, c := range r.Corners {
		if a := c.InteriorAngle(); a != squareInside && a != squareOutside {
			return false
		}
	}
	return true
}

// squarePlan returns both ends of every wall on the plan of a square room, seen
// from x on a wall with a door: that is the origin, and the wall runs to the right
// as one faces it from the room, so to the left as one comes in. It is nil for a
// plan that does not close within a hundredth of its girth.
func (r *Run) squarePlan(door int, x measure.Length) [][2]geom.Point {
	n := len(r.Walls)
	ends := make([][2]geom.Point, n)
	step := geom.Point{X: -1} // the direction of a wall, from its left end
	here := geom.Point{X: x}
	for k := range n {
		i := (door + k) % n
		w := r.Walls[i].Width
		next := geom.Point{X: here.X + step.X*w, Y: here.Y + step.Y*w}
		ends[i] = [2]geom.Point{here, next}
		here = next
		step = turned(step, r.Corners[i].Kind)
	}
	if gap := (here.X - x).Abs() + here.Y.Abs(); gap > r.Girth()/100 {
		return nil
	}
	return ends
}

// turned returns a direction after a corner: walls that follow to the right turn
// towards the room at an inside corner, away from it at an outside one.
func turned(step geom.Point, kind CornerKind) geom.Point {
	if kind == Outside {
		return geom.Point{X: -step.Y, Y: step.X}
	}
	return geom.Point{X: step.Y, Y: -step.X}
}
