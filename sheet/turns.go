package sheet

import (
	"firstdrop/draw"
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
)

// turns draws the paper that goes on round the corners of the wall as narrow
// strips turned away.
func (e *elevation) turns() {
	for _, side := range []hanging.Side{hanging.Left, hanging.Right} {
		foot, head, ok := e.edge(side)
		text := e.turned(side)
		if !ok || text == "" {
			continue
		}
		out := measure.Length(-1)
		if side == hanging.Right {
			out = 1
		}
		const near, wide, drop = 7 * mm / 10, 7 * mm / 2, 3 * mm / 2
		shift := func(p geom.Point, x, y measure.Length) geom.Point {
			return geom.Point{X: p.X + out*x, Y: p.Y + y}
		}
		ring := geom.Ring{shift(foot, near, 0), shift(head, near, 0), shift(head, near+wide, -drop), shift(foot, near+wide, drop)}
		label := draw.Text{
			At:   geom.Point{X: foot.X + out*(near+wide+mm), Y: (foot.Y + head.Y) / 2},
			Text: text, Size: small, Anchor: draw.Middle, Turn: draw.Upwards, Ink: quiet,
		}
		if side == hanging.Right {
			label.At.X += small * 760 / 1000
		} else {
			label.At.X -= small * 240 / 1000
		}
		e.add("turns", draw.Group{Title: text, Items: []draw.Item{
			draw.Area{Shape: geom.Polygon{Outline: ring}, Fill: backside, Pen: finePen},
		}})
		if draw.TextWidth(text, small, false) > head.Y-foot.Y-4*mm { // never a size cut off
			e.notes = append(e.notes, note{text: e.text("turn.note-"+side.String(), "turn", text)})
			continue
		}
		e.write("turns", label)
	}
}

// turned says what paper goes on round the corner on one side; "" for none.
func (e *elevation) turned(side hanging.Side) string {
	for i := range e.layout.Drops {
		d := &e.layout.Drops[i]
		for k := range d.Parts {
			p := &d.Parts[k]
			if p.Wall != e.index || d.Number == 0 {
				continue
			}
			if q := e.folded(d, k, side); q != nil {
				return e.text("turn.on", "drop", d.Number, "size", e.size(q.X.Length()), "wall", e.words.Name(e.run.WallName(q.Wall)))
			}
			if over := e.over(p, side); over > 0 {
				return e.text("turn.over", "drop", d.Number, "size", e.size(over))
			}
		}
	}
	return ""
}

// folded returns the part on the next wall that is one sheet with part k of a
// drop, round the corner on one side; nil when there is none.
func (e *elevation) folded(d *hanging.Drop, k int, side hanging.Side) *hanging.Part {
	switch {
	case side == hanging.Left && k > 0 && d.Parts[k].Joined && d.Parts[k-1].Wall != e.index:
		return &d.Parts[k-1]
	case side == hanging.Right && k+1 < len(d.Parts) && d.Parts[k+1].Joined && d.Parts[k+1].Wall != e.index:
		return &d.Parts[k+1]
	}
	return nil
}

// over returns how far a part reaches beyond the wall's edge: more than the
// edge's own lean explains.
func (e *elevation) over(p *hanging.Part, side hanging.Side) measure.Length {
	hung := e.layout.Hung()
	left, right := hung.LeanAt(e.index)
	if side == hanging.Left {
		return min(0, left) - p.X.Lo
	}
	return p.X.Hi - hung.Walls[e.index].Width - max(0, right)
}
