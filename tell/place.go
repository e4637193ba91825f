package tell

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/room"
	"firstdrop/words"
)

// End returns the corner at one end of a wall of a run, its name and the wall
// beyond; ok is false at the end of an open run.
func End(run *room.Run, wall int, side hanging.Side) (c room.Corner, name, beyond string, ok bool) {
	n := len(run.Walls)
	at, next := wall, (wall+1)%n
	if side == hanging.Left {
		at, next = (wall-1+n)%n, (wall-1+n)%n
	}
	if at >= len(run.Corners) || !run.Closed && at == n-1 {
		return room.Corner{}, "", "", false
	}
	return run.Corners[at], run.CornerName(at), run.WallName(next), true
}

// Corner names an end of a wall: "corner D|A", "the left end".
func Corner(c *words.Catalogue, run *room.Run, wall int, side hanging.Side) string {
	if _, name, _, ok := End(run, wall, side); ok {
		return c.Text("page.corner", "corner", c.Name(name))
	}
	return c.Text("page.end-" + side.String())
}

// From says how far something stands from an end of a wall, given that distance:
// "150 mm from corner D|A", "150 mm from the left end".
func From(c *words.Catalogue, run *room.Run, wall int, distance measure.Length, side hanging.Side) string {
	if _, name, _, ok := End(run, wall, side); ok {
		return c.Text("from.corner", "size", c.Plain(distance), "corner", c.Name(name))
	}
	return c.Text("from."+side.String(), "size", c.Plain(distance))
}

// FromEnd says the same of the place x on the wall.
func FromEnd(c *words.Catalogue, run *room.Run, wall int, x measure.Length, side hanging.Side) string {
	if side == hanging.Right {
		x = run.Walls[wall].Width - x
	}
	return From(c, run, wall, x, side)
}

// WallTitle names a wall as a title: "Wall A", but "Landing wall".
func WallTitle(c *words.Catalogue, name string) string {
	name = c.Name(name)
	if saysWall(name) {
		return Capital(name)
	}
	return c.Text("wall.named", "wall", name)
}

// Wall names a wall of a run within a sentence: "wall A", "the landing wall".
func Wall(c *words.Catalogue, run *room.Run, wall int) string {
	name := c.Name(run.WallName(wall))
	if saysWall(name) {
		return c.Text("page.the-wall", "wall", name)
	}
	return c.Text("page.wall", "wall", name)
}

// saysWall reports whether a name says, in any language, that it is a wall's.
func saysWall(name string) bool {
	for part := range strings.FieldsSeq(strings.ToLower(name)) {
		for _, tag := range words.Languages() {
			if part == strings.ToLower(words.For(tag).Text("kind.wall")) {
				return true
			}
		}
	}
	return false
}

// Capital begins a text with a capital.
func Capital(text string) string {
	r, n := utf8.DecodeRuneInString(text)
	return string(unicode.ToUpper(r)) + text[n:]
}

// LineLean says how far the lines of a wall lean to which its drops are set; ""
// where they are plumb.
func LineLean(c *words.Catalogue, l *hanging.Layout, wall int) string {
	if l.Turns == nil || l.Turns[wall].Lean == 0 {
		return ""
	}
	lean, side := l.Turns[wall].Lean, hanging.Right
	if lean < 0 {
		side = hanging.Left
	}
	_, y := l.Run.Walls[wall].Outline.Bounds()
	return c.Text("plumb.leans-"+side.String(), "height", c.Length(y.Length()), "size", c.Length(lean.Abs()))
}
