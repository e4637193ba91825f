package screen

import (
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/job"
	"firstdrop/measure"
	"firstdrop/room"
	"firstdrop/tell"
	"firstdrop/words"
)

// sketcher draws rooms for one answer.
type sketcher struct {
	c *words.Catalogue
}

// survey draws the room as measured, as far as it makes sense.
func (s *sketcher) survey(d *job.Draft) *Survey {
	out := &Survey{Runs: []Band{}, Floor: s.floor(d), Findings: []Finding{}}
	for i := range d.Bands {
		out.Runs = append(out.Runs, s.band(d, &d.Bands[i]))
	}
	return out
}

// band unrolls one run.
func (s *sketcher) band(d *job.Draft, b *job.Band) Band {
	out := Band{Name: s.c.Name(b.Run.Name), Hang: b.Hang, Paper: paperOf(d.Job, b.Hang), Closed: b.Run.Closed, Walls: []Wall{}}
	y, x := geom.Interval{Lo: 0, Hi: -1}, measure.Length(0)
	for n := range b.Run.Walls {
		_, own := b.Run.Walls[n].Outline.Bounds()
		y = y.Union(own)
		wall := s.wall(b, n, x)
		wall.KeepOff = s.keepOff(d.Job, b.Hang, &wall)
		out.Walls = append(out.Walls, wall)
		x += b.Run.Walls[n].Width
	}
	out.Width, out.Low, out.High = mm(x), mm(y.Lo), mm(max(y.Hi, y.Lo))
	return out
}

// paperOf names the paper of an entry of hang.
func paperOf(j *job.Job, hang int) string {
	switch {
	case hang >= 0 && hang < len(j.Hang):
		return j.Hang[hang].Paper
	case len(j.Papers) > 0 && len(j.Hang) == 0:
		return j.Papers[0].Name
	}
	return ""
}

// wall draws wall n of a band with its left end at x.
func (s *sketcher) wall(b *job.Band, n int, x measure.Length) Wall {
	w := &b.Run.Walls[n]
	_, y := w.Outline.Bounds()
	out := Wall{
		Name: w.Name, Index: b.Walls[n], X: mm(x), Width: mm(w.Width), Outline: []Point{},
		Sizes: s.c.Text("opening.size", "width", s.c.Figure(w.Width), "height", s.c.Plain(max(y.Length(), 0))),
	}
	if w.Outline != nil {
		out.Outline = drawn(floating(b.Run.Face(n).Outline), out.X)
	}
	for i := range w.Openings {
		out.Openings = append(out.Openings, s.opening(&w.Openings[i], b.Openings[n][i], out.X))
	}
	for i := range w.Fittings {
		out.Fittings = append(out.Fittings, s.fitting(&w.Fittings[i], b.Fittings[n][i], out.X))
	}
	out.Corner = s.corner(b.Run, n)
	return out
}

// keepOff draws where no seam may stand on a wall, as far as the job says it soundly.
func (s *sketcher) keepOff(j *job.Job, hang int, w *Wall) (all []Stretch) {
	if hang < 0 || hang >= len(j.Hang) {
		return nil
	}
	for i, k := range j.Hang[hang].KeepOff {
		if k.Wall == w.Name && k.From < k.To {
			all = append(all, Stretch{
				Index: i, From: rounded(w.X + mm(k.From)), To: rounded(w.X + mm(k.To)),
				Label: s.c.Text("screen.keep-off", "from", s.c.Plain(k.From), "to", s.c.Plain(k.To), "wall", s.c.Name(w.Name)),
			})
		}
	}
	return all
}

func (s *sketcher) opening(o *room.Opening, index int, x float64) Opening {
	across, up := o.Outline.Bounds()
	name := tell.Opening(s.c, o)
	return Opening{
		Index: index, Name: name, Kind: o.Kind.String(), Outline: drawn(floating(o.Outline), x),
		Label: s.c.Text("describe.opening", "opening", name, "from", s.c.Plain(across.Lo), "to", s.c.Plain(across.Hi), "height", s.c.Plain(up.Length())),
	}
}

func (s *sketcher) fitting(f *room.Fitting, index int, x float64) Fitting {
	name := tell.Fitting(s.c, f)
	return Fitting{
		Index: index, Name: name, Kind: f.Kind.String(),
		At: Point{rounded(x + mm(f.At.X)), mm(f.At.Y)}, Size: Point{mm(f.Size.X), mm(f.Size.Y)},
		Label: s.c.Text("describe.fitting", "fitting", name, "size", s.c.Plain(f.At.X), "height", s.c.Plain(f.At.Y)),
	}
}

// corner draws the fold at the right end of wall n; nil at the end of an open run.
func (s *sketcher) corner(run *room.Run, n int) *Corner {
	c, name, beyond, ok := tell.End(run, n, hanging.Right)
	if !ok {
		return nil
	}
	out := &Corner{
		Name: name, Kind: c.Kind.String(), Angle: float64(c.InteriorAngle()) / float64(measure.Degree),
		Lean: [2]float64{mm(c.LeanLeft), mm(c.LeanRight)},
	}
	left, right := s.leans(c.LeanLeft), s.leans(c.LeanRight)
	switch {
	case left == "" && right == "":
	case c.LeanLeft == c.LeanRight:
		out.Text = left
	case right == "":
		out.Text = s.c.Text("screen.leans-on", "lean", left, "wall", s.c.Name(run.WallName(n)))
	case left == "":
		out.Text = s.c.Text("screen.leans-on", "lean", right, "wall", s.c.Name(beyond))
	default:
		out.Text = s.c.Text("list.and",
			"first", s.c.Text("screen.leans-on", "lean", left, "wall", s.c.Name(run.WallName(n))),
			"last", s.c.Text("screen.leans-on", "lean", right, "wall", s.c.Name(beyond)))
	}
	return out
}

// leans says which way a corner's head stands off; "" when it is plumb.
func (s *sketcher) leans(l measure.Length) string {
	switch {
	case l < 0:
		return s.c.Text("end.leans-left", "size", s.c.Plain(-l))
	case l > 0:
		return s.c.Text("end.leans-right", "size", s.c.Plain(l))
	}
	return ""
}
