package screen

import (
	"math"

	"firstdrop/job"
	"firstdrop/measure"
	"firstdrop/room"
)

// floor draws the floor from above: wall 0 runs to the right along the far side,
// and the room lies nearer to the reader. The smallest changes are made that let a
// closed room close, and none where that cannot be told.
func (s *sketcher) floor(d *job.Draft) Floor {
	run := d.Room
	if run == nil && len(d.Bands) > 0 {
		run = d.Bands[0].Run
	}
	out := Floor{Walls: []Edge{}}
	if run == nil {
		return out
	}
	out.Closed = run.Closed
	widths, angles := measured(run)
	if d.Survey != nil {
		if a, err := d.Survey.Adjust(); err == nil {
			widths, angles = a.Widths, a.Angles
		}
	}
	x, y, heading := 0.0, 0.0, 0.0
	for i := range run.Walls {
		w := &run.Walls[i]
		e := Edge{Wall: w.Name, From: Point{rounded(x), rounded(y)}, Width: s.c.Plain(w.Width)}
		if w.Sight != room.Plain {
			e.Sight = w.Sight.String()
		}
		x += float64(widths[i]) / perMM * math.Cos(heading)
		y -= float64(widths[i]) / perMM * math.Sin(heading)
		e.To = Point{rounded(x), rounded(y)}
		out.Walls = append(out.Walls, e)
		if i < len(angles) {
			heading += math.Pi * (1 - float64(angles[i])/float64(180*measure.Degree))
		}
	}
	return out
}

// measured returns the widths of the walls and the angles between them.
func measured(run *room.Run) (widths []measure.Length, angles []measure.Angle) {
	for i := range run.Walls {
		widths = append(widths, run.Walls[i].Width)
	}
	for _, c := range run.Corners {
		angles = append(angles, c.InteriorAngle())
	}
	return widths, angles
}
