package plan

import (
	"firstdrop/geom"
	"firstdrop/measure"
	"firstdrop/room"
)

// How much a place is looked at comes from the survey: what is focal, what one
// sees first from the door, what an open door or furniture hides. What stands
// above eye level is seen half as much.

// regard is how much a place is looked at.
type regard int

// The regards.
const (
	ordinary regard = iota
	hidden
	firstSeen // from the door
	focal
)

// regardOf returns the regard of a place that is stated to be seen so, and may
// be what one sees first.
func regardOf(s room.Sight, first bool) regard {
	switch {
	case s == room.Hidden:
		return hidden
	case s == room.Focal:
		return focal
	case first:
		return firstSeen
	}
	return ordinary
}

// of returns what a weight is worth in a place: half of it where it is hidden,
// half as much again on a focal wall.
func (r regard) of(weight int64) int64 {
	switch r {
	case hidden:
		return weight / 2
	case focal:
		return weight * 3 / 2
	}
	return weight
}

// kill returns what a misfit along the height of a place weighs, by its weight a
// metre: a quarter where it is hidden, half as much again where one looks first,
// three times as much in a focal place.
func (r regard) kill(perMetre int64, height measure.Length) int64 {
	return int64(measure.Length(perMetre*r.quarters()/4).Scaled(int64(height), int64(measure.Metre)))
}

// killStep returns by how much that may differ where the weight a metre differs by one.
func (r regard) killStep(height measure.Length) int64 {
	return int64(measure.Length((r.quarters()+3)/4).Scaled(int64(height), int64(measure.Metre))) + 1
}

// quarters is how many quarters of its weight a misfit has.
func (r regard) quarters() int64 {
	return [...]int64{ordinary: 4, hidden: 1, firstSeen: 6, focal: 12}[r]
}

// hole is an opening prepared for judging.
type hole struct {
	x, y geom.Interval
	full measure.Length // how high the wall is there
	over measure.Length // how much of that is papered, over and under the opening
	seen measure.Length // of over, what is above eye level counted half
}

// hole prepares an opening of wall i.
func (j *judge) hole(i int, x, y geom.Interval) hole {
	inner := x.Intersection(geom.Interval{Lo: 1, Hi: j.run.Walls[i].Width - 1})
	middle := inner.Lo + inner.Length()/2
	return hole{
		x: x, y: y, full: j.reachAt(i, middle).Length(),
		over: heightAt(j.run, i, middle), seen: j.seenAt(i, middle),
	}
}

// reachAt returns from where to where wall i goes at x, its openings aside; for a
// wall that has breaks there, from its lowest to its highest point.
func (j *judge) reachAt(i int, x measure.Length) geom.Interval {
	y := geom.Interval{Lo: 0, Hi: -1}
	j.cells = j.walls[i].outline.AppendCells(j.cells[:0], geom.Interval{Lo: x, Hi: x + 1})
	for _, c := range j.cells {
		y = y.Union(c.Left)
	}
	return y
}

// seenAt returns how much of wall i is papered along the upright at x, with what
// is above eye level counted half.
func (j *judge) seenAt(i int, x measure.Length) (sum measure.Length) {
	w := &j.run.Walls[i]
	p := geom.Polygon{Outline: w.Outline}
	for o := range w.Openings {
		p.Holes = append(p.Holes, w.Openings[o].Outline)
	}
	eye := j.eyeLine()
	for _, c := range p.Cells(geom.Interval{Lo: x, Hi: x + 1}) {
		above := c.Left.Hi - max(c.Left.Lo, eye)
		sum += c.Left.Length() - max(above, 0)/2
	}
	return sum
}

// eyeLine returns the level of the eye above the datum. The floor is the lowest
// point of the walls, or the datum where paper begins above it, over a rail.
func (j *judge) eyeLine() measure.Length {
	floor := measure.Length(0)
	for i := range j.run.Walls {
		_, y := j.run.Walls[i].Outline.Bounds()
		floor = min(floor, y.Lo)
	}
	return floor + j.taste.EyeLevel
}
