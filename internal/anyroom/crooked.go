package anyroom

import (
	"pgregory.net/rapid"

	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/room"
)

// Crooked draws a run as [Run] does whose ceilings are a little out of level and
// whose openings a little out of true, and settings for its walls; nil settings
// where those drawn cannot be.
func Crooked(t *rapid.T) (*room.Run, []hanging.Setting) {
	r := Run(t)
	n := len(r.Walls)
	set := make([]hanging.Setting, n)
	for i := range r.Walls {
		w := &r.Walls[i]
		if o := w.Outline; len(o) == 4 {
			fall := w.Width / 60 / mm
			o[2].Y = o[3].Y - length(t, 0, int(fall), "fall")
		}
		for k := range w.Openings {
			w.Openings[k].Outline = leaning(t, w.Openings[k].Outline)
		}
		set[i] = setting(t, w)
	}
	if turns, err := hanging.Turns(r, set); err != nil || turns == nil {
		return r, nil
	}
	return r, set
}

// leaning moves the head of a rectangle a little.
func leaning(t *rapid.T, o geom.Ring) geom.Ring {
	if len(o) != 4 {
		return o
	}
	off := length(t, -4, 4, "casing")
	if (o[2].Y-o[1].Y)/50 < off.Abs() {
		off = 0
	}
	return geom.Ring{o[0], o[1], {X: o[2].X + off, Y: o[2].Y}, {X: o[3].X + off, Y: o[3].Y}}
}

func setting(t *rapid.T, w *room.Wall) hanging.Setting {
	s := hanging.Setting{
		To:    hanging.SetTo(rapid.IntRange(0, 4).Draw(t, "set to")),
		Meets: hanging.Meets(rapid.IntRange(0, 2).Draw(t, "meets")),
		Side:  hanging.Side(rapid.IntRange(0, 1).Draw(t, "casing side")),
	}
	left, right, ok := w.Ceiling()
	if s.To == hanging.ToCeiling && !(ok && w.IsLevelCeiling(left, right)) || s.To == hanging.ToCasing && len(w.Openings) == 0 {
		s.To = hanging.ToPlumb
	}
	if s.To == hanging.ToCasing {
		s.Opening = rapid.IntRange(0, len(w.Openings)-1).Draw(t, "casing of")
	}
	return s
}
