// Package anyroom makes up rooms, papers and choices for property tests: crooked
// rooms within what houses show (corners out of plumb by up to 12 mm in all, as
// NHBC Standards 2020, 9.1.3, tolerate in new building, here on either wall of a
// corner), piers of 12 cm, openings that do not overlap, papers of every match.
package anyroom

import (
	"pgregory.net/rapid"

	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/room"
)

const mm = measure.Millimetre

func length(t *rapid.T, lo, hi int, label string) measure.Length {
	return measure.Length(rapid.IntRange(lo, hi).Draw(t, label)) * mm
}

// Run draws a run of one to eight walls, closed (three walls or more) or open.
func Run(t *rapid.T) *room.Run { return run(t, 8) }

// SmallRun draws a run of one to three walls.
func SmallRun(t *rapid.T) *room.Run { return run(t, 3) }

func run(t *rapid.T, most int) *room.Run {
	r := &room.Run{Name: "run", Closed: rapid.Bool().Draw(t, "closed")}
	least := 1
	if r.Closed {
		least = 3
	}
	n := rapid.IntRange(least, most).Draw(t, "walls")
	height := length(t, 2000, 3200, "height")
	for i := range n {
		r.Walls = append(r.Walls, wall(t, string(rune('A'+i)), height))
	}
	corners := n
	if !r.Closed {
		corners--
	}
	for range corners {
		r.Corners = append(r.Corners, corner(t))
	}
	return r
}

func wall(t *rapid.T, name string, height measure.Length) room.Wall {
	w := room.Wall{Name: name, Width: length(t, 120, 5000, "width"), Sight: room.Sight(rapid.IntRange(0, 2).Draw(t, "sight"))}
	left, right := height, height
	if rapid.IntRange(0, 4).Draw(t, "slope") == 0 {
		left, right = length(t, 1000, 3200, "left height"), length(t, 1000, 3200, "right height")
	}
	w.Outline = geom.Ring{{}, {X: w.Width}, {X: w.Width, Y: right}, {Y: left}}
	low := min(left, right)
	for x := 150 * mm; x+700*mm < w.Width && len(w.Openings) < 3; {
		x += length(t, 0, 900, "gap")
		width := length(t, 300, 1500, "opening")
		if x+width+20*mm >= w.Width {
			break
		}
		w.Openings = append(w.Openings, opening(t, x, width, low))
		x += width + 30*mm
	}
	return w
}

func opening(t *rapid.T, x, width, low measure.Length) room.Opening {
	sill := measure.Length(0)
	kind := room.OpeningKind(rapid.IntRange(int(room.Door), int(room.Window)).Draw(t, "kind"))
	if kind == room.Window {
		sill = length(t, 200, 500, "sill")
	}
	height := length(t, 100, int((low-sill)/mm)-50, "opening height")
	o := room.Opening{Name: "o", Kind: kind, Outline: geom.Ring{
		{X: x, Y: sill}, {X: x + width, Y: sill}, {X: x + width, Y: sill + height}, {X: x, Y: sill + height},
	}}
	if rapid.IntRange(0, 3).Draw(t, "returns") == 0 {
		o.Depth = min(length(t, 50, 150, "depth"), height/3, width/3)
		o.Sides = room.Sides{Left: true, Right: true, Head: true, Sill: kind == room.Window}
	}
	return o
}

func corner(t *rapid.T) room.Corner {
	c := room.Corner{Angle: 90 * measure.Degree}
	if rapid.IntRange(0, 3).Draw(t, "outside") == 0 {
		c = room.Corner{Kind: room.Outside, Angle: 270 * measure.Degree}
	}
	if rapid.Bool().Draw(t, "leans") {
		c.LeanLeft, c.LeanRight = length(t, -12, 12, "lean left"), length(t, -12, 12, "lean right")
	}
	return c
}

// Paper draws a paper of any match.
func Paper(t *rapid.T) *paper.Paper {
	p := &paper.Paper{
		Name: "paper", Width: length(t, 450, 1060, "paper width"), RollLength: length(t, 10050, 25000, "roll"), Pack: 1,
	}
	if p.Match.Kind = paper.MatchKind(rapid.IntRange(0, 2).Draw(t, "match")); p.Match.Kind != paper.Free {
		p.Repeat = length(t, 50, 1000, "repeat")
	}
	if p.Match.Kind == paper.Offset {
		p.Match.Num, p.Match.Den = 1, int64(rapid.IntRange(2, 4).Draw(t, "parts"))
	}
	p.Match.Reversing = rapid.IntRange(0, 3).Draw(t, "reversing") == 0
	return p
}

// Choice draws a choice for the run: a start on any wall wide enough to have
// one, and for a closed run a kill seam at any corner, or on the wall opposite
// the start.
func Choice(t *rapid.T, r *room.Run, p *paper.Paper) hanging.Choice {
	n := len(r.Walls)
	c := hanging.Choice{Start: hanging.Start{Wall: rapid.IntRange(0, n-1).Draw(t, "start wall")}}
	w := r.Walls[c.Start.Wall].Width
	c.Start.X = length(t, -int(p.Width/mm)+1, int(w/mm)-1, "start")
	if p.Repeat > 0 {
		c.Design = length(t, 0, int(p.Repeat/mm)-1, "design")
	}
	if !r.Closed {
		return c
	}
	c.Kill = hanging.Kill{Kind: hanging.AtCorner, Wall: rapid.IntRange(0, n-1).Draw(t, "kill"), Lap: hanging.Side(rapid.IntRange(0, 1).Draw(t, "lap"))}
	if rapid.Bool().Draw(t, "kill on wall") {
		k := (c.Start.Wall + n/2) % n
		c.Kill = hanging.Kill{Kind: hanging.OnWall, Wall: k, X: length(t, 1, int(r.Walls[k].Width/mm)-1, "kill x")}
	}
	return c
}

// Mirrored returns the choice for the mirrored run and paper that gives the
// mirrored layout.
func Mirrored(c hanging.Choice, r *room.Run, p *paper.Paper) hanging.Choice {
	n := len(r.Walls)
	m := c
	m.Start.Wall = n - 1 - c.Start.Wall
	m.Start.X = r.Walls[c.Start.Wall].Width - c.Start.X - p.Width
	switch c.Kill.Kind {
	case hanging.AtCorner:
		m.Kill.Wall = (2*n - 2 - c.Kill.Wall) % n
		m.Kill.Lap = c.Kill.Lap.Opposite()
	case hanging.OnWall:
		m.Kill.Wall = n - 1 - c.Kill.Wall
		m.Kill.X = r.Walls[c.Kill.Wall].Width - c.Kill.X
	}
	m.NewDrop = nil
	for _, k := range c.NewDrop {
		m.NewDrop = append(m.NewDrop, (2*n-2-k)%n)
	}
	return m
}
