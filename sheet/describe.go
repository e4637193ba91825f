package sheet

import (
	"fmt"
	"strings"

	"firstdrop/hanging"
)

// describe says in sentences what the drawing shows, for those who cannot see
// it.
func (e *elevation) describe() string {
	var b strings.Builder
	say := func(format string, args ...any) { fmt.Fprintf(&b, format, args...) }
	say("%s of %s, %s wide, at 1:%d.", e.title(), e.run.Name, e.size(e.wall.Width), e.scale)
	for _, side := range []hanging.Side{hanging.Left, hanging.Right} {
		say(" On the %v: %s.", side, strings.Join(e.neighbour(side), ", "))
		if h := e.tall(side); h > 0 {
			say(" Height there %s.", e.size(h))
		}
	}
	for i := range e.wall.Openings {
		x, y := e.wall.Openings[i].Outline.Bounds()
		say(" %s from %s to %s, %s high.", e.openingName(i), e.size(x.Lo), e.size(x.Hi), e.size(y.Length()))
	}
	for i := range e.wall.Fittings {
		f := &e.wall.Fittings[i]
		say(" %s at %s, %s above the datum.", fittingName(f), e.size(f.At.X), e.size(f.At.Y))
	}
	say(" From left to right: %s.", strings.Join(e.course(), ", "))
	for _, n := range e.notes {
		if n.number != "" {
			say(" Finding %s:", n.number)
		}
		say(" %s", n.text)
	}
	return b.String()
}

// course lists drops and seams from left to right.
func (e *elevation) course() []string {
	var steps []string
	figures := e.figures()
	for _, p := range e.parts() {
		for len(figures) > 1 && figures[0] <= p.seen.Lo {
			if figures[0] > 0 {
				steps = append(steps, "seam at "+e.size(figures[0]))
			}
			figures = figures[1:]
		}
		name := fmt.Sprintf("drop %d", p.drop.Number)
		if p.drop.Number == 0 {
			name = "no paper"
		}
		if p.drop.Reversed {
			name += " upside down"
		}
		steps = append(steps, name)
	}
	return steps
}
