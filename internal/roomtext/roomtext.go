// Package roomtext is a compact notation for runs of walls, for tests only, so
// that a room fits on a line of a table and a failure can be pasted back.
//
//	closed: A 4200x2400 door(300+800 0+2000) | B 3000x2400 > C 350x2400
//
// Lengths are millimetres. After an opening's kind come left edge + width and
// sill + height; a third number is the depth of its returns. "|" is an inside
// corner, ">" an outside corner; "|-3,8" leans by −3 mm on its left wall and by
// 8 mm on its right wall. A closed run ends with its last corner. A wall may
// have two heights, "2400/2100", for a ceiling that slopes from its left end to
// its right end, and "!" or "?" after its size for focal or hidden.
package roomtext

import (
	"fmt"
	"strconv"
	"strings"

	"firstdrop/geom"
	"firstdrop/measure"
	"firstdrop/room"
)

// Run reads the notation. It panics on text that is none.
func Run(text string) *room.Run {
	r := &room.Run{Name: "run"}
	if rest, ok := strings.CutPrefix(text, "closed:"); ok {
		r.Closed, text = true, rest
	}
	for text = strings.TrimSpace(text); text != ""; {
		i := strings.IndexAny(text, "|>")
		if i < 0 {
			r.Walls = append(r.Walls, wall(text))
			break
		}
		r.Walls = append(r.Walls, wall(text[:i]))
		var c room.Corner
		c, text = corner(text[i:])
		r.Corners = append(r.Corners, c)
	}
	if r.Closed != (len(r.Corners) == len(r.Walls)) {
		panic("roomtext: a closed run has as many corners as walls, an open run one fewer")
	}
	return r
}

func corner(text string) (room.Corner, string) {
	c := room.Corner{Angle: 90 * measure.Degree}
	if text[0] == '>' {
		c = room.Corner{Kind: room.Outside, Angle: 270 * measure.Degree}
	}
	lean, rest, _ := strings.Cut(text[1:], " ")
	if a, b, ok := strings.Cut(lean, ","); ok {
		c.LeanLeft, c.LeanRight = mm(a), mm(b)
	}
	return c, strings.TrimSpace(rest)
}

func wall(text string) room.Wall {
	fields := strings.Fields(text)
	size := strings.TrimRight(fields[1], "!?")
	w := room.Wall{Name: fields[0]}
	switch strings.TrimPrefix(fields[1], size) {
	case "!":
		w.Sight = room.Focal
	case "?":
		w.Sight = room.Hidden
	}
	width, height, _ := strings.Cut(size, "x")
	left, right, ok := strings.Cut(height, "/")
	if !ok {
		right = left
	}
	w.Width = mm(width)
	w.Outline = geom.Ring{{}, {X: w.Width}, {X: w.Width, Y: mm(right)}, {Y: mm(left)}}
	for _, o := range strings.Split(strings.Join(fields[2:], " "), ")") {
		if o = strings.TrimSpace(o); o != "" {
			w.Openings = append(w.Openings, opening(o))
		}
	}
	return w
}

func opening(text string) room.Opening {
	kind, sizes, _ := strings.Cut(text, "(")
	kinds := map[string]room.OpeningKind{"door": room.Door, "window": room.Window, "furniture": room.Furniture, "fireplace": room.Fireplace}
	k, ok := kinds[kind]
	if !ok {
		panic("roomtext: no such opening: " + kind)
	}
	f := strings.Fields(sizes)
	left, width, _ := strings.Cut(f[0], "+")
	sill, height, _ := strings.Cut(f[1], "+")
	x, y := mm(left), mm(sill)
	o := room.Opening{Name: kind, Kind: k, Outline: geom.Ring{
		{X: x, Y: y}, {X: x + mm(width), Y: y}, {X: x + mm(width), Y: y + mm(height)}, {X: x, Y: y + mm(height)},
	}}
	if len(f) > 2 {
		o.Depth = mm(f[2])
		o.Sides = room.Sides{Left: true, Right: true, Head: true}
	}
	return o
}

func mm(text string) measure.Length {
	n, err := strconv.Atoi(strings.TrimSpace(text))
	if err != nil {
		panic(fmt.Sprintf("roomtext: %q is no number of millimetres", text))
	}
	return measure.Length(n) * measure.Millimetre
}
