package sheet

import (
	"fmt"

	"firstdrop/draw"
	"firstdrop/finding"
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/plan"
	"firstdrop/room"
	"firstdrop/tell"
	"firstdrop/words"
)

// Wall draws the elevation of one wall of a run as one faces it: paper and
// seams, what is measured from where, the design's height on every drop, and
// below it in words what must be known. The drawing's origin is the wall's: its
// left foot corner on the datum. run and wall are indexes into the plan's runs
// and that run's walls; both must exist.
func Wall(p *plan.Plan, run, wall int, o Options) *draw.Scene {
	e := newElevation(p, run, wall, o)
	e.drawn()
	e.head()
	e.legend()
	return e.finish()
}

// drawn draws the wall and its sizes, without title and notes.
func (e *elevation) drawn() {
	e.strips()
	e.patterned()
	e.grid()
	e.openings()
	e.fittings()
	e.seams()
	e.designMarks()
	e.numbers()
	e.plumbs()
	e.killSeam()
	e.wetSeams()
	e.design() // last on the wall: its marks give way to words
	e.turns()
	e.heights()
	e.foot()
	e.datum()
	e.findings()
}

// elevation is the drawing of a wall in progress. Everything is kept in page
// coordinates with the wall's origin; only what is named so is in the wall's.
type elevation struct {
	plan   *plan.Plan
	more   []finding.Finding // besides the plan's
	layout *hanging.Layout
	run    *room.Run
	index  int // of the wall
	wall   *room.Wall
	label  *paper.Paper
	face   geom.Polygon // in the wall's coordinates
	hung   geom.Polygon // the same as its sheets see it, turned until they stand upright
	words  *words.Catalogue
	scale  int64
	repeat *draw.Picture // one repeat of the design; nil: marks show where it falls

	page    draw.Box // X is fixed from the start; Y grows
	reach   draw.Box // of the wall
	board   board
	marks   board // where design marks stand; numbers keep off them
	scene   *draw.Scene
	strokes []draw.Line // of the design marks
	notes   []note
	cursor  measure.Length // where the next line below the wall may stand
	crown   measure.Length // where the next line above the wall may stand
}

// layerNames lists the layers from the bottom up.
var layerNames = []string{
	"paper", "pattern", "openings", "design", "seams", "outline", "plates", "fittings", "plumbs", "kill", "turns", "sizes", "numbers", "marks", "words",
}

// layers makes the layers, with titles in the drawing's language.
func (e *elevation) layers() (layers []draw.Layer) {
	for _, name := range layerNames {
		layers = append(layers, draw.Layer{Name: name, Title: e.text("layer." + name)})
	}
	return layers
}

func newElevation(p *plan.Plan, run, wall int, o Options) *elevation {
	l := p.Runs[run].Layout
	e := &elevation{
		plan: p, more: o.Findings, layout: l, run: l.Run, index: wall, wall: &l.Run.Walls[wall],
		label: l.Paper, face: l.Run.Face(wall), hung: l.Hung().Face(wall), words: o.Lang.In(o.System), repeat: o.Repeat,
	}
	x, y := e.face.Bounds()
	var width measure.Length
	e.scale, width = o.page(x.Length(), y.Length(), l.Paper.Width)
	e.reach = draw.Box{X: geom.Interval{Lo: e.on(x.Lo), Hi: e.on(x.Hi)}, Y: geom.Interval{Lo: e.on(y.Lo), Hi: e.on(y.Hi)}}
	left := (width - e.reach.X.Length()) / 2
	e.page.X = geom.Interval{Lo: e.reach.X.Lo - left, Hi: e.reach.X.Lo - left + width}
	e.cursor, e.crown = e.reach.Y.Lo, e.reach.Y.Hi
	e.scene = &draw.Scene{ID: fmt.Sprintf("run%d-wall%d", run+1, wall+1), Scale: e.scale, Layers: e.layers()}
	return e
}

// on returns a length of the wall on the page.
func (e *elevation) on(l measure.Length) measure.Length { return l.Scaled(1, e.scale) }

// at returns a point of the wall on the page.
func (e *elevation) at(x, y measure.Length) geom.Point { return geom.Point{X: e.on(x), Y: e.on(y)} }

// hang returns on the page a point of the wall as its sheets see it. Places of the
// layout are such points.
func (e *elevation) hang(x, y measure.Length) geom.Point {
	p := e.layout.OnWall(e.index, geom.Point{X: x, Y: y})
	return e.at(p.X, p.Y)
}

// lineAt returns where on the page, at a height of the page, the line stands to which
// the edge of a sheet at x is set.
func (e *elevation) lineAt(x, y measure.Length) measure.Length {
	return e.hang(x, y*measure.Length(e.scale)).X
}

// ring returns a ring of the wall on the page.
func (e *elevation) ring(r geom.Ring) geom.Ring {
	on := make(geom.Ring, len(r))
	for i, p := range r {
		on[i] = e.at(p.X, p.Y)
	}
	return on
}

// add appends items to a layer.
func (e *elevation) add(layer string, items ...draw.Item) {
	l := e.scene.Layer(layer)
	l.Items = append(l.Items, items...)
}

// write adds a text and takes the room it needs.
func (e *elevation) write(layer string, t draw.Text) {
	if t.Text == "" {
		return
	}
	e.add(layer, t)
	e.board.take(t.Box())
}

// text returns a message of the catalogue.
func (e *elevation) text(id string, args ...any) string { return e.words.Text(id, args...) }

// size returns a length as people read it, rounded without a mark.
func (e *elevation) size(l measure.Length) string { return e.words.Plain(l) }

// figure returns a length without its unit where the system has one unit.
func (e *elevation) figure(l measure.Length) string { return e.words.Figure(l) }

// stretches returns the stretches of paper along the line of a sheet's edge at x, on
// the page, each from its foot to its head, from the foot up. The line leans as the
// sheets of the wall do.
func (e *elevation) stretches(x measure.Length) (lines [][2]geom.Point) {
	for _, y := range columns(&e.hung, x) {
		lines = append(lines, [2]geom.Point{e.hang(x, y.Lo), e.hang(x, y.Hi)})
	}
	return lines
}

// columns returns the stretches of a face along the upright at x, from the foot up.
func columns(face *geom.Polygon, x measure.Length) (ys []geom.Interval) {
	bounds, _ := face.Bounds()
	x = min(max(x, bounds.Lo), bounds.Hi-1)
	for _, c := range face.Cells(geom.Interval{Lo: x, Hi: x + 1}) {
		if y := c.At(x); y.Length() > 0 {
			ys = append(ys, y)
		}
	}
	return ys
}

// isPapered reports whether a box on the page lies on the wall and off every
// opening.
func (e *elevation) isPapered(b draw.Box) bool {
	n := measure.Length(e.scale)
	x := geom.Interval{Lo: b.X.Lo * n, Hi: b.X.Hi * n}
	y := geom.Interval{Lo: b.Y.Lo * n, Hi: b.Y.Hi * n}
	var covered measure.Length
	for _, c := range e.face.Cells(x) {
		if level := c.Left.Intersection(c.Right); level.Union(y) == level {
			covered += c.X.Length()
		}
	}
	return covered >= x.Length()
}

// corner returns the corner at one end of the wall, its name and the wall
// beyond; ok is false at the end of an open run.
func (e *elevation) corner(side hanging.Side) (c room.Corner, name, beyond string, ok bool) {
	return tell.End(e.run, e.index, side)
}

// name returns the wall's name.
func (e *elevation) name() string { return e.run.WallName(e.index) }

// title returns "Wall A", or "Wall 3" for a wall without a name.
func (e *elevation) title() string {
	if e.wall.Name == "" {
		return e.text("wall.numbered", "number", e.index+1)
	}
	return e.text("wall.named", "wall", e.wall.Name)
}

// openingName returns the name of an opening of the wall, or what it is.
func (e *elevation) openingName(i int) string {
	return tell.Opening(e.words, &e.wall.Openings[i])
}

// from says how far something stands from an end of the wall: "150 mm from
// corner D|A", "150 mm from the left end".
func (e *elevation) from(l measure.Length, side hanging.Side) string {
	return tell.From(e.words, e.run, e.index, l, side)
}

// fromLeft says how far something stands from the left end, without the
// corner's name.
func (e *elevation) fromLeft(l measure.Length) string { return e.text("from.left", "size", e.size(l)) }

// edge returns foot and head of the wall's edge on one side, on the page; ok is
// false where the wall has no height there.
func (e *elevation) edge(side hanging.Side) (foot, head geom.Point, ok bool) {
	x := measure.Length(0)
	if side == hanging.Right {
		x = e.wall.Width
	}
	var low, high *geom.Point
	for i, p := range e.wall.Outline {
		if p.X != x {
			continue
		}
		q := &e.face.Outline[i]
		if low == nil || q.Y < low.Y {
			low = q
		}
		if high == nil || q.Y > high.Y {
			high = q
		}
	}
	if low == nil || low.Y == high.Y {
		return foot, head, false
	}
	return e.at(low.X, low.Y), e.at(high.X, high.Y), true
}

// finish gives the page its height and the scene its words.
func (e *elevation) finish() *draw.Scene {
	e.page.Y = geom.Interval{Lo: e.cursor - margin, Hi: e.crown + margin}
	e.scene.Window = e.page
	e.plates()
	e.scene.Title = e.title()
	e.scene.Desc = e.describe()
	return e.scene
}
