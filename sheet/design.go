package sheet

import (
	"slices"
	"strconv"
	"strings"

	"firstdrop/draw"
	"firstdrop/geom"
	"firstdrop/measure"
)

// design marks on every drop at what heights its design recurs: where the
// leading motif's head stands on the motif's axis, or, when nobody has said
// where the motif sits, the design mark at the drop's two edges. Seen side by
// side the marks show the match.
//
//	 straight        half drop         with a motif
//	─┤─ │ ─├─       ─┤   │   ├─          │     │
//	 │  │  │         │ ──┼── │        ┬  │     │  ┬
//	─┤─ │ ─├─       ─┤   │   ├─       ╵  │  ┬  │  ╵
func (e *elevation) design() {
	for _, l := range e.strokes {
		if e.repeat == nil && e.board.isFree(sliver(l)) {
			e.add("design", l)
		}
	}
	if e.label.Repeat > 0 && e.repeat == nil {
		e.designNote()
	}
}

// designMarks works the marks out, so that numbers can keep off them.
func (e *elevation) designMarks() {
	if e.label.Repeat <= 0 {
		return
	}
	for _, p := range e.parts() {
		if p.drop.Number == 0 {
			continue
		}
		for _, y := range e.recurs(p.of) {
			if e.label.Motif != nil {
				e.motif(p, y)
			} else {
				e.ticks(p, y)
			}
		}
	}
}

// recurs lists the heights on the wall at which the marked place of the design
// stands on a drop, from the foot up.
func (e *elevation) recurs(drop int) (ys []measure.Length) {
	index := e.layout.Drops[drop].Index
	_, reach := e.hung.Bounds()
	head := measure.Length(0)
	if e.label.Motif != nil {
		head = e.label.Motif.Head
	}
	// Phases fall with height on a drop hung head first: the mark stands above
	// height 0 by the phase there less the mark's own; on a reversed drop below.
	first := e.label.Phase(index, e.layout.Choice.Design, 0) - head
	if e.label.IsReversed(index) {
		first = -first
	}
	if e.layout.Lifts != nil {
		first += e.layout.Lifts[drop]
	}
	step := e.label.Repeat
	if e.on(step) < mm { // too dense to be drawn: every so many
		step *= mm/max(e.on(step), 1) + 1
	}
	for y := reach.Lo + (first - reach.Lo).Mod(e.label.Repeat); y <= reach.Hi; y += step {
		ys = append(ys, y)
	}
	return ys
}

// ticks draws the design mark at both edges of a part.
func (e *elevation) ticks(p part, y measure.Length) {
	long := min(e.on(p.seen.Length())/5, 4*mm)
	left, right := e.hang(p.seen.Lo, y), e.hang(p.seen.Hi, y)
	e.tick(left, geom.Point{X: left.X + long, Y: left.Y})
	e.tick(geom.Point{X: right.X - long, Y: right.Y}, right)
}

// motif draws the motif's head on each of its axes: a level tick and the
// beginning of the axis below it (above it on a reversed drop).
func (e *elevation) motif(p part, y measure.Length) {
	across := e.label.Across
	if across <= 0 {
		across = e.label.Width
	}
	down := 3 * mm
	if p.drop.Reversed {
		down = -down
	}
	on := p.Across.Intersection(p.seen.Shifted(p.Across.Lo - p.X.Lo))
	first := e.label.Motif.Axis
	if p.drop.Reversed {
		first = e.label.Width - first
	}
	for a := on.Lo + (first - on.Lo).Mod(across); a <= on.Hi; a += across {
		at := e.hang(a-p.Across.Lo+p.X.Lo, y)
		half := min(2*mm, e.on(across)/5)
		e.tick(geom.Point{X: at.X - half, Y: at.Y}, geom.Point{X: at.X + half, Y: at.Y})
		e.tick(geom.Point{X: at.X, Y: at.Y - down}, at)
	}
}

// tick makes a stroke of a mark where it lies on paper.
func (e *elevation) tick(a, b geom.Point) {
	l := draw.Segment(a, b, designPen)
	if box := sliver(l); e.isPapered(box) {
		e.strokes = append(e.strokes, l)
		e.marks.take(box)
	}
}

// sliver returns the box of a level or upright stroke, at least 1 nm thick so
// that it can overlap something.
func sliver(l draw.Line) draw.Box {
	b := l.Box()
	b.X.Hi, b.Y.Hi = max(b.X.Hi, b.X.Lo+1), max(b.Y.Hi, b.Y.Lo+1)
	return b
}

// designNote says what the marks mean.
func (e *elevation) designNote() {
	id, mark := "design.mark", tickMark
	if e.label.Motif != nil {
		id, mark = "design.motif", motifMark
	}
	text := e.text(id, "size", e.size(e.label.Repeat))
	if e.on(e.label.Repeat) < mm {
		text = e.text("design.dense", "mark", text)
	}
	if h := e.highest(); h != "" {
		text = e.text("design.highest", "mark", text, "heights", h)
	}
	e.notes = append(e.notes, note{mark: mark, text: text + "."})
}

// highest says how high the highest mark stands on the drops of the wall: as
// many heights as the match has alternatives, or none if those are too many.
func (e *elevation) highest() string {
	var heights []measure.Length
	var drops [][]string
	for _, p := range e.parts() {
		ys := e.recurs(p.of)
		if p.drop.Number == 0 || len(ys) == 0 {
			continue
		}
		at := geom.Point{X: p.seen.Lo + p.seen.Length()/2, Y: ys[len(ys)-1]}
		y := e.layout.OnWall(e.index, at).Y // where it stands in the middle of the drop
		k := slices.Index(heights, y)
		if k < 0 {
			k = len(heights)
			heights, drops = append(heights, y), append(drops, nil)
		}
		if name := strconv.Itoa(p.drop.Number); !slices.Contains(drops[k], name) {
			drops[k] = append(drops[k], name)
		}
	}
	if len(heights) > 4 {
		return ""
	}
	texts := make([]string, len(heights))
	for k, y := range heights {
		texts[k] = e.size(y)
		if len(heights) > 1 {
			texts[k] = e.text("design.on-drops", "size", texts[k], "drops", strings.Join(drops[k], ", "))
		}
	}
	return strings.Join(texts, "; ")
}
