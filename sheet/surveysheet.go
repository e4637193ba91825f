package sheet

import (
	"slices"
	"strconv"

	"firstdrop/draw"
	"firstdrop/draw/page"
	"firstdrop/geom"
	"firstdrop/measure"
	"firstdrop/plan"
	"firstdrop/room"
	"firstdrop/tell"
)

// survey sets what to measure in this kind of room and where, with boxes to write
// in. Without a plan it serves any room.
func (s *Set) survey() {
	f := s.book.Begin(s.text("page.survey"), false)
	f.Heading(s.text("page.how-head"))
	s.surveyWall(f)
	walls := s.walls()
	for i, words := range s.surveyPoints(walls) {
		f.Item(page.Body, 8*mm, func(p *page.Page, b draw.Box) {
			b.X.Hi -= 2 * mm
			p.Set(b, page.Strong.At(draw.End), strconv.Itoa(i+1))
		}, words)
		f.Gap(mm / 2)
	}
	if s.Plan != nil {
		f.Gap(mm)
		f.Text(page.Small, s.text("page.surv-known"))
	}
	f.Turn()
	f.Headed(s.wallTable(walls))
	f.Headed(s.openingTable(walls))
	f.Headed(s.fittingTable(walls))
	if s.Plan == nil || slices.ContainsFunc(s.Plan.Runs, isClosed) {
		f.Headed(blankTable(s.text("page.across-head"), []string{s.text("page.surv-from"), s.text("page.surv-to"), s.text("page.surv-length")}, 3))
	}
	s.surveyLabels(f)
	s.sketch(f)
	s.tick()
}

// surveyed is a wall of the survey and its corner on the right.
type surveyed struct {
	wall   *room.Wall
	name   string
	corner *room.Corner // nil at the end of an open run
}

// walls lists the walls to be measured, each once though two papers hang on it.
func (s *Set) walls() (all []surveyed) {
	if s.Plan == nil {
		return nil
	}
	seen := map[string]bool{}
	for _, r := range s.Plan.Runs {
		run := r.Layout.Run
		for i := range run.Walls {
			name := run.WallName(i)
			if seen[name] {
				continue
			}
			seen[name] = true
			w := surveyed{wall: &run.Walls[i], name: s.words().Name(name)}
			if i < len(run.Corners) {
				w.corner = &run.Corners[i]
			}
			all = append(all, w)
		}
	}
	return all
}

// surveyPoints lists what is to be measured: always the same first, then what this
// kind of room asks for.
func (s *Set) surveyPoints(walls []surveyed) []string {
	points := []string{s.text("page.how-sight"), s.text("page.how-datum"), s.text("page.how-width"), s.text("page.how-height"), s.text("page.how-corner"), s.text("page.how-opening"), s.text("page.how-fitting")}
	add := func(words string, isWanted func(w surveyed) bool) {
		if s.Plan == nil || slices.ContainsFunc(walls, isWanted) {
			points = append(points, words)
		}
	}
	add(s.text("page.how-diagonal"), func(surveyed) bool { return slices.ContainsFunc(s.Plan.Runs, isClosed) })
	add(s.text("page.how-angle"), func(w surveyed) bool {
		return w.corner != nil && w.corner.Angle%(90*measure.Degree) != 0
	})
	add(s.text("page.how-slope"), func(w surveyed) bool { return len(w.wall.Outline) > 4 && !w.wall.IsStair() })
	add(s.text("page.how-stair"), func(w surveyed) bool { return w.wall.IsStair() })
	add(s.text("page.how-arch"), func(w surveyed) bool {
		return slices.ContainsFunc(w.wall.Openings, func(o room.Opening) bool { return !o.Outline.IsRectangle() })
	})
	return append(points, s.text("page.how-look"), s.text("page.how-label"))
}

// blankTable is rows to fill in.
func blankTable(title string, columns []string, rows int) page.Table {
	t := page.Table{Title: title, Tall: 9 * mm}
	for _, c := range columns {
		t.Columns = append(t.Columns, page.Column{Title: c})
	}
	for range rows {
		t.Rows = append(t.Rows, page.Row{Cells: slices.Repeat([]string{page.Blank}, len(columns))})
	}
	return t
}

// surveyTable is rows with what is known in small letters, and room below it.
func surveyTable(title string, columns []string, rows [][]string, spare int) page.Table {
	t := blankTable(title, columns, spare)
	for i := range t.Columns {
		t.Columns[i].Type = page.Small
	}
	known := make([]page.Row, len(rows))
	for i, r := range rows {
		known[i] = page.Row{Cells: r}
	}
	t.Rows = append(known, t.Rows...)
	if len(rows) > 0 {
		t.Tall = 11 * mm
	}
	return t
}

func (s *Set) wallTable(walls []surveyed) page.Table {
	columns := []string{s.text("page.surv-wall"), s.text("page.surv-width"), s.text("page.surv-ceiling"), s.text("page.surv-left"), s.text("page.surv-right"), s.text("page.surv-floor"), s.text("page.surv-corner"), s.text("page.surv-lean")}
	var rows [][]string
	for _, w := range walls {
		left, right := heightsAt(w.wall, 0), heightsAt(w.wall, w.wall.Width)
		row := []string{w.name, s.size(w.wall.Width), "", s.size(left.Hi), s.size(right.Hi), span(s.bare(left.Lo), s.size(right.Lo)), "", ""}
		if w.corner != nil {
			kind := s.text("page.inside")
			if w.corner.Kind == room.Outside {
				kind = s.text("page.outside")
			}
			row[6] = kind + " " + s.words().Number(w.corner.InteriorAngle().String())
			row[7] = span(s.bare(w.corner.LeanLeft), s.size(w.corner.LeanRight))
		}
		rows = append(rows, row)
	}
	return surveyTable(s.text("page.walls-head"), columns, rows, s.spare(8, len(rows)))
}

// spare is how many empty rows a table has: all where nothing is known.
func (s *Set) spare(all, known int) int {
	if s.Plan == nil {
		return all
	}
	return min(max(1, 2-known), 2)
}

// heightsAt returns the heights of a wall's outline at x.
func heightsAt(w *room.Wall, x measure.Length) geom.Interval {
	y := across(0, -1)
	for _, p := range w.Outline {
		if p.X == x {
			y = y.Union(across(p.Y, p.Y))
		}
	}
	if y.IsEmpty() {
		return across(0, 0)
	}
	return y
}

func (s *Set) openingTable(walls []surveyed) page.Table {
	columns := []string{s.text("page.surv-wall"), s.text("page.surv-what"), s.text("page.surv-d"), s.text("page.surv-e"), s.text("page.surv-f"), s.text("page.surv-g"), s.text("page.surv-h")}
	var rows [][]string
	for _, w := range walls {
		for i := range w.wall.Openings {
			o := &w.wall.Openings[i]
			x, y := o.Outline.Bounds()
			rows = append(rows, []string{w.name, tell.Opening(s.words(), o), s.size(x.Lo), s.size(x.Length()), s.size(y.Lo), s.size(y.Length()), s.size(o.Depth)})
		}
	}
	return surveyTable(s.text("page.openings-head"), columns, rows, s.spare(6, len(rows)))
}

func (s *Set) fittingTable(walls []surveyed) page.Table {
	columns := []string{s.text("page.surv-wall"), s.text("page.surv-what"), s.text("page.surv-i"), s.text("page.surv-k"), s.text("page.surv-size")}
	var rows [][]string
	for _, w := range walls {
		for i := range w.wall.Fittings {
			q := &w.wall.Fittings[i]
			rows = append(rows, []string{w.name, tell.Fitting(s.words(), q), s.size(q.At.X), s.size(q.At.Y), s.size(q.Size.X) + " × " + s.size(q.Size.Y)})
		}
	}
	return surveyTable(s.text("page.fittings-head"), columns, rows, s.spare(5, len(rows)))
}

// surveyLabels leaves blanks for what the label says.
func (s *Set) surveyLabels(f *page.Flow) {
	f.Need(60 * mm)
	f.Heading(s.text("page.label-head"))
	var fields []string
	for _, name := range labelFields {
		fields = append(fields, s.text("field."+name))
	}
	blanks(f, fields)
}

// sketch leaves squared paper for what is left of the page.
func (s *Set) sketch(f *page.Flow) {
	if f.Left() < 50*mm {
		f.Turn()
	}
	f.Heading(s.text("page.notes-head"))
	const step = 5 * mm
	b := f.Take(f.Left().FloorTo(step) - step)
	b.X.Hi = b.X.Lo + b.X.Length().FloorTo(step)
	for x := b.X.Lo; x <= b.X.Hi; x += step {
		f.Add(draw.Segment(pt(x, b.Y.Lo), pt(x, b.Y.Hi), page.Thin))
	}
	for y := b.Y.Lo; y <= b.Y.Hi; y += step {
		f.Level(b.X, y, page.Thin)
	}
}

// surveyWall draws a wall that shows what the letters mean, to no scale.
func (s *Set) surveyWall(f *page.Flow) {
	const tall = 66 * mm
	b := f.Take(tall)
	f.In(draw.Group{Role: draw.Figure, Title: s.text("page.how-head"), Desc: s.text("page.survey-desc")}, func() {
		face := draw.BoxAt(b.X.Lo+24*mm, b.Y.Lo+14*mm, 132*mm, 45*mm)
		window := draw.BoxAt(face.X.Lo+22*mm, face.Y.Lo+17*mm, 36*mm, 20*mm)
		door := draw.BoxAt(face.X.Lo+84*mm, face.Y.Lo, 22*mm, 34*mm)
		socket := draw.BoxAt(face.X.Lo+116*mm, face.Y.Lo+6*mm, 6*mm, 6*mm)
		f.Fill(face, tints[0], outlinePen)
		for _, o := range []draw.Box{window, door} {
			f.Fill(o, white, seamPen)
			f.Add(draw.Hatch{Shape: geom.Polygon{Outline: o.Ring()}, Gap: 4 * mm, Pen: hatchPen})
		}
		f.Fill(socket, white, seamPen)
		f.Add(draw.Segment(pt(socket.X.Lo, socket.Y.Lo), pt(socket.X.Hi, socket.Y.Hi), finePen), draw.Segment(pt(socket.X.Lo, socket.Y.Hi), pt(socket.X.Hi, socket.Y.Lo), finePen))
		datum := face.Y.Lo + 4*mm
		f.Level(across(face.X.Lo-14*mm, face.X.Hi+14*mm), datum, datumPen)
		level := func(x0, x1, y measure.Length, letter string) {
			f.Add(draw.Dimension{From: pt(x0, y), To: pt(x1, y), Text: letter, Size: 42 * mm / 10, Pen: finePen})
		}
		stand := func(x, y0, y1 measure.Length, letter string, right bool) {
			f.Add(draw.Dimension{From: pt(x, y0), To: pt(x, y1), Text: letter, Size: 42 * mm / 10, Pen: finePen, Below: right})
		}
		level(face.X.Lo, face.X.Hi, face.Y.Lo-9*mm, "a")
		stand(face.X.Lo-7*mm, datum, face.Y.Hi, "b", false)
		stand(face.X.Hi+7*mm, datum, face.Y.Hi, "c", true)
		level(face.X.Lo, window.X.Lo, window.Middle().Y, "d")
		level(window.X.Lo, window.X.Hi, window.Y.Hi+mm, "e")
		stand(window.Middle().X, datum, window.Y.Lo, "f", true)
		stand(window.X.Hi+4*mm, window.Y.Lo, window.Y.Hi, "g", true)
		level(door.X.Hi, socket.Middle().X, socket.Y.Hi+7*mm, "i")
		stand(socket.X.Hi+3*mm, datum, socket.Middle().Y, "k", true)
		f.Add(draw.Segment(pt(face.X.Lo+3*mm, face.Y.Lo), pt(face.X.Lo+3*mm, face.Y.Hi), plumbPen))
		f.Add(bob(pt(face.X.Lo+3*mm, face.Y.Lo-mm), 4*mm)...)
	})
	f.Gap(2 * mm)
}

func isClosed(r plan.RunPlan) bool { return r.Layout.Run.Closed }

// labelFields is what a label says.
var labelFields = []string{"name", "width", "roll", "repeat", "match", "motif", "batch", "paste", "pack", "price"}
