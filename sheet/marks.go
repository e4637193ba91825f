package sheet

import (
	"slices"
	"strconv"

	"firstdrop/draw"
	"firstdrop/finding"
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/plan"
	"firstdrop/tell"
)

// findings marks what the plan has found on this wall with numbered pennants,
// and says it in the notes. The numbers are those of the plan's list. The kill
// seam has its own mark and note.
func (e *elevation) findings() {
	last := 0
	for _, f := range e.plan.Findings {
		last = max(last, f.Number)
	}
	for _, f := range slices.Concat(e.plan.Findings, e.more) {
		if f.Code == plan.KillMisfit || f.Code == plan.KillMeets || !e.concerns(f.Place) {
			continue
		}
		n := e.numberOf(f)
		if n == 0 {
			last++
			n = last
		}
		number := strconv.Itoa(n)
		e.plant(number, e.spot(f.Place))
		f.Place.Run = "" // the sheet's title says it
		e.notes = append(e.notes, note{mark: pennantMark, number: number, title: e.text("mark.finding", "number", number), text: tell.Finding(e.words, f)})
	}
}

// numberOf returns a finding's number in the plan's list, where one about the
// survey stands without its run; 0 when it is not there.
func (e *elevation) numberOf(f finding.Finding) int {
	if f.Number > 0 {
		return f.Number
	}
	about := f.Place
	about.Run = ""
	for _, other := range e.plan.Findings {
		p := other.Place
		if other.Code == f.Code && p.Run == "" && p.Wall == about.Wall && p.Corner == about.Corner && p.Opening == about.Opening && other.Word == f.Word {
			return other.Number
		}
	}
	return 0
}

// concerns reports whether a place is on this wall or in one of its corners.
func (e *elevation) concerns(p finding.Place) bool {
	if p.Run != e.run.Name {
		return false
	}
	return p.Wall == e.name() || p.Corner != "" && (p.Corner == e.cornerName(hanging.Left) || p.Corner == e.cornerName(hanging.Right))
}

func (e *elevation) cornerName(side hanging.Side) string {
	if _, name, _, ok := e.corner(side); ok {
		return name
	}
	if side == hanging.Left { // as room names the ends of a run
		return "|" + e.name()
	}
	return e.name() + "|"
}

// spot returns where a place is on the page.
func (e *elevation) spot(p finding.Place) geom.Point {
	at := geom.Point{X: e.on(e.wall.Width / 2), Y: e.reach.Y.Lo + e.reach.Y.Length()*11/20}
	switch {
	case p.X != nil:
		at.X = e.lineAt(*p.X, at.Y)
	case p.Corner != "" && p.Corner == e.cornerName(hanging.Left):
		at.X = e.reach.X.Lo
	case p.Corner != "":
		at.X = e.reach.X.Hi
	case p.Opening != "":
		for i := range e.wall.Openings {
			if o := &e.wall.Openings[i]; o.Name == p.Opening {
				x, y := o.Outline.Bounds()
				at = e.at(x.Lo+x.Length()/2, y.Hi)
			}
		}
	case p.Drop > 0:
		for _, q := range e.parts() {
			if q.drop.Number == p.Drop {
				at.X = e.lineAt(q.seen.Lo+q.seen.Length()/2, at.Y)
			}
		}
	}
	if p.Y != nil {
		at.Y = e.on(*p.Y)
	}
	return at
}

const (
	pennantTall = 9 * mm // with its stick
	pennantHigh = 13 * mm / 2
)

func pennantWide(number string) measure.Length {
	return draw.TextWidth(number, body, true) + 3*mm
}

// plant sets a pennant up as near to a point as there is room.
func (e *elevation) plant(number string, at geom.Point) {
	if !e.plantOn(number, at, &e.marks) {
		e.plantOn(number, at, &board{})
	}
}

// plantOn sets a pennant up where it covers no word and nothing of avoid.
func (e *elevation) plantOn(number string, at geom.Point, avoid *board) bool {
	w := pennantWide(number)
	if x := e.reach.X; at.X < x.Lo || at.X > x.Hi {
		at.X = min(max(at.X, x.Lo), x.Hi)
	}
	for d := measure.Length(0); d < e.reach.Y.Length()+20*mm; d += 2 * mm {
		for _, y := range []measure.Length{at.Y - d, at.Y + d} {
			for _, left := range []bool{false, true} {
				box := draw.BoxAt(at.X, y, w, pennantTall)
				if left {
					box = box.Shifted(geom.Point{X: -w})
				}
				inside := e.reach.Grown(mm / 2).Contains(box)
				if inside && e.board.isFree(box) && avoid.isFree(box) {
					e.board.take(box)
					e.add("marks", pennant(e.text("mark.finding", "number", number), number, geom.Point{X: at.X, Y: y}, left, pennantTall))
					return true
				}
			}
		}
	}
	return false
}

// pennant returns a flag with a number on a stick of that height whose foot is
// at a point.
func pennant(title, number string, foot geom.Point, left bool, tall measure.Length) draw.Item {
	w, out := pennantWide(number), measure.Length(1)
	if left {
		out = -1
	}
	at := func(dx, dy measure.Length) geom.Point { return geom.Point{X: foot.X + out*dx, Y: foot.Y + dy} }
	mid := tall - pennantHigh/2
	return draw.Group{Title: title, Items: []draw.Item{
		draw.Segment(foot, at(0, tall), seamPen),
		draw.Area{Fill: graphite, Shape: geom.Polygon{Outline: geom.Ring{
			at(0, tall), at(w-mm, tall), at(w, mid), at(w-mm, tall-pennantHigh), at(0, tall-pennantHigh),
		}}},
		draw.Text{At: at((w-mm/2)/2, mid-body*36/100), Text: number, Size: body, Anchor: draw.Middle, Bold: true, Ink: white},
	}}
}
