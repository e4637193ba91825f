package sheet

import (
	"strings"

	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/tell"
)

// describe says in sentences what the drawing shows, for those who cannot see
// it.
func (e *elevation) describe() string {
	var b strings.Builder
	say := func(id string, args ...any) { b.WriteString(" " + e.text(id, args...)) }
	b.WriteString(e.text("describe.wall", "wall", e.title(), "run", e.words.Name(e.run.Name), "width", e.size(e.wall.Width), "scale", int(e.scale)))
	for _, side := range []hanging.Side{hanging.Left, hanging.Right} {
		say("describe."+side.String(), "what", strings.Join(e.neighbour(side, measure.MaxLength), ", "))
		if h := e.tall(side); h > 0 {
			say("describe.height", "size", e.size(h))
		}
	}
	for i := range e.wall.Openings {
		x, y := e.wall.Openings[i].Outline.Bounds()
		say("describe.opening", "opening", e.openingName(i), "from", e.size(x.Lo), "to", e.size(x.Hi), "height", e.size(y.Length()))
	}
	for i := range e.wall.Fittings {
		f := &e.wall.Fittings[i]
		say("describe.fitting", "fitting", tell.Fitting(e.words, f), "size", e.size(f.At.X), "height", e.size(f.At.Y))
	}
	say("describe.course", "steps", strings.Join(e.course(), ", "))
	for _, n := range e.notes {
		if n.number != "" {
			say("describe.finding", "number", n.number, "words", n.text)
			continue
		}
		b.WriteString(" " + n.text)
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
				steps = append(steps, e.text("step.seam", "size", e.size(figures[0])))
			}
			figures = figures[1:]
		}
		name := e.text("step.drop", "drop", p.drop.Number)
		if p.drop.Number == 0 {
			name = e.text("step.bare")
		}
		if p.drop.Reversed {
			name = e.text("step.upside-down", "drop", name)
		}
		steps = append(steps, name)
	}
	return steps
}
