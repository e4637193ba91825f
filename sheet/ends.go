package sheet

import (
	"slices"
	"strings"

	"firstdrop/draw"
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/plan"
	"firstdrop/room"
)

// heights draws the height of either end of the wall beside it.
func (e *elevation) heights() {
	for _, side := range []hanging.Side{hanging.Left, hanging.Right} {
		foot, head, ok := e.edge(side)
		if !ok {
			continue
		}
		x := e.reach.X.Lo - 12*mm
		if side == hanging.Right {
			x = e.reach.X.Hi + 12*mm
		}
		tall := (head.Y - foot.Y) * measure.Length(e.scale)
		if exact := e.tall(side); (exact - tall).Abs() <= measure.Length(e.scale) {
			tall = exact
		}
		d := draw.Dimension{
			From: geom.Point{X: x, Y: foot.Y}, To: geom.Point{X: x, Y: head.Y},
			Text: e.size(tall), Size: body, Pen: finePen, Below: side == hanging.Right,
		}
		if draw.TextWidth(d.Text, body, false) > head.Y-foot.Y {
			d.Text = ""
			e.notes = append(e.notes, note{text: e.text("end.height-"+side.String(), "size", e.size(tall))})
		}
		e.add("sizes", d)
		e.board.take(d.Box())
	}
}

// tall returns the height of the wall's end as measured.
func (e *elevation) tall(side hanging.Side) measure.Length {
	x := measure.Length(0)
	if side == hanging.Right {
		x = e.wall.Width
	}
	y := geom.Interval{Lo: 0, Hi: -1}
	for _, p := range e.wall.Outline {
		if p.X == x {
			y = y.Union(geom.Interval{Lo: p.Y, Hi: p.Y})
		}
	}
	return y.Length()
}

// datum draws the level line that heights are measured from.
func (e *elevation) datum() {
	if e.reach.Y.Lo > 0 || e.reach.Y.Hi < 0 {
		return
	}
	lo, hi := e.reach.X.Lo-6*mm, e.reach.X.Hi+6*mm
	e.add("design", draw.Segment(geom.Point{X: lo}, geom.Point{X: hi}, datumPen))
	text := e.text("datum")
	for _, t := range []draw.Text{
		{At: geom.Point{X: hi - 4*mm, Y: -51 * mm / 10}},
		{At: geom.Point{X: lo + 4*mm, Y: -51 * mm / 10}, Anchor: draw.End},
		{At: geom.Point{X: hi - 4*mm, Y: mm}},
		{At: geom.Point{X: lo + 4*mm, Y: mm}, Anchor: draw.End},
	} {
		t.Text, t.Size, t.Ink = text, small, quiet
		if b := t.Box(); e.board.isFree(b) && e.page.X.Contains(b.X.Lo) && e.page.X.Contains(b.X.Hi) {
			e.write("sizes", t)
			return
		}
	}
}

// leastBody is how small a name is set before it is cut off.
const leastBody = 26 * mm / 10

// beyond writes above the wall what lies beyond its two ends.
func (e *elevation) beyond() {
	lo, hi := e.page.X.Lo+margin, e.page.X.Hi-margin
	half := e.page.X.Length()/2 - margin - 2*mm
	leftLines, rightLines := e.neighbour(hanging.Left, half-8*mm), e.neighbour(hanging.Right, half-8*mm)
	n := max(len(leftLines), len(rightLines))
	y := e.crown + 4*mm + measure.Length(n-1)*line
	top := y
	for i := range n {
		bold := i == 0
		if i < len(leftLines) {
			t := draw.Text{At: geom.Point{X: lo + 8*mm, Y: y}, Text: leftLines[i], Size: body, Bold: bold, Ink: endInk(bold)}
			e.write("words", t.Within(half-8*mm, leastBody))
		}
		if i < len(rightLines) {
			t := draw.Text{At: geom.Point{X: hi - 8*mm, Y: y}, Text: rightLines[i], Size: body, Bold: bold, Anchor: draw.End, Ink: endInk(bold)}
			e.write("words", t.Within(half-8*mm, leastBody))
		}
		y -= line
	}
	e.pointer(geom.Point{X: lo, Y: top + body/3}, -1, hanging.Left)
	e.pointer(geom.Point{X: hi, Y: top + body/3}, 1, hanging.Right)
	e.crown = top + line
}

// head writes above the wall what lies beyond its two ends, and the title.
func (e *elevation) head() {
	e.beyond()
	lo, hi := e.page.X.Lo+margin, e.page.X.Hi-margin
	y := e.crown + 4*mm
	sub := e.text("wall.under-title", "width", e.size(e.wall.Width), "run", e.words.Name(e.run.Name), "paper", e.label.Name, "scale", int(e.scale))
	for _, l := range slices.Backward(twoLines(sub, hi-lo)) {
		e.write("words", draw.Text{At: geom.Point{X: lo, Y: y}, Text: l, Size: body, Ink: quiet})
		y += line
	}
	y += mm
	e.write("words", draw.Text{At: geom.Point{X: lo, Y: y}, Text: draw.Fitted(e.title(), heading, true, hi-lo), Size: heading, Bold: true, Ink: graphite})
	e.crown = y + heading*4/5
}

// twoLines breaks a text into two lines at most; only the second is cut off.
func twoLines(text string, wide measure.Length) []string {
	lines := draw.Wrapped(text, body, false, wide)
	if len(lines) > 2 {
		lines = []string{lines[0], draw.Fitted(strings.Join(lines[1:], " "), body, false, wide)}
	}
	return lines
}

func endInk(bold bool) draw.Ink {
	if bold {
		return graphite
	}
	return quiet
}

// neighbour says in two to four lines what lies beyond an end, as wide as
// there is room if names allow it.
func (e *elevation) neighbour(side hanging.Side, wide measure.Length) []string {
	c, name, wall, ok := e.corner(side)
	lines := []string{e.text("end.of-run"), e.text("end.stops")}
	lean, right := e.run.LeanAt(e.index)
	if side == hanging.Right {
		lean = right
	}
	if ok {
		lines = []string{e.text("end.to-wall", "wall", e.words.Name(wall)), e.cornerLine(&c, name, wide)}
	} else if c, name, wall, ok := e.beyondRun(side); ok {
		lines = []string{e.text("end.to-wall", "wall", e.words.Name(wall)), e.cornerLine(&c, name, wide), e.text("end.trimmed")}
	}
	if lean != 0 {
		way := "end.leans-right"
		if lean < 0 {
			way = "end.leans-left"
		}
		lines = append(lines, e.text(way, "size", e.size(lean.Abs())))
	}
	return lines
}

// beyondRun returns the corner at an end of the run behind which another run of the plan
// goes on, and the wall there; false where papering stops.
func (e *elevation) beyondRun(side hanging.Side) (c room.Corner, name, wall string, ok bool) {
	if c, name, wall = e.run.Ends.Left, e.run.Beyond.Left+"|"+e.name(), e.run.Beyond.Left; side == hanging.Right {
		c, name, wall = e.run.Ends.Right, e.name()+"|"+e.run.Beyond.Right, e.run.Beyond.Right
	}
	papered := func(r plan.RunPlan) bool {
		return slices.ContainsFunc(r.Layout.Run.Walls, func(w room.Wall) bool { return w.Name == wall })
	}
	return c, name, wall, wall != "" && slices.ContainsFunc(e.plan.Runs, papered)
}

// cornerLine says what kind of corner one is, with its name if that has room.
func (e *elevation) cornerLine(c *room.Corner, name string, wide measure.Length) string {
	kind := "end.inside"
	if c.Kind == room.Outside {
		kind = "end.outside"
	}
	text := e.text(kind, "corner", e.words.Name(name))
	if draw.TextWidth(text, body, false) > wide {
		return e.text(kind + "-bare")
	}
	return text
}

// pointer draws a level arrow with its tip at a point, or a stop where the run
// ends.
func (e *elevation) pointer(tip geom.Point, out measure.Length, side hanging.Side) {
	back := geom.Point{X: tip.X - out*6*mm, Y: tip.Y}
	barb := tip.X - out*2*mm
	e.add("words", draw.Segment(back, tip, tagPen))
	_, _, _, here := e.corner(side)
	_, _, _, there := e.beyondRun(side)
	if !here && !there {
		e.add("words", draw.Segment(geom.Point{X: tip.X, Y: tip.Y - 2*mm}, geom.Point{X: tip.X, Y: tip.Y + 2*mm}, tagPen))
		return
	}
	e.add("words", draw.Line{Points: []geom.Point{{X: barb, Y: tip.Y + 3*mm/2}, tip, {X: barb, Y: tip.Y - 3*mm/2}}, Pen: tagPen})
}
