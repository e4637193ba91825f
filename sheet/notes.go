package sheet

import (
	"cmp"
	"slices"

	"firstdrop/draw"
	"firstdrop/geom"
	"firstdrop/measure"
	"firstdrop/words"
)

// noteMark is what stands before a note: what the drawing shows for it.
type noteMark int

// The marks, in the order in which notes stand. A note without a mark says
// something that had no room in the drawing.
const (
	plumbMark noteMark = iota + 1
	killMark
	pennantMark
	plainMark
	dashedMark
	motifMark
	tickMark
	cautionMark
)

// note is a sentence below the drawing.
type note struct {
	mark   noteMark
	number string // of a pennant
	title  string // the same for those who cannot see it
	text   string
}

// legend writes the notes below the wall.
func (e *elevation) legend() {
	e.sortNotes()
	x := e.page.X.Lo + margin
	indent := x + 13*mm
	y := e.cursor - 3*mm
	size := body
	if e.crown+margin-y+e.notesTall(body, indent) > tallPage {
		size = small
	}
	line := size * 13 / 10
	for _, n := range e.notes {
		lines := draw.Wrapped(words.Unbroken(n.text), size, n.mark == cautionMark, e.page.X.Hi-margin-indent)
		y -= line
		e.add("words", draw.Group{Items: n.sample(geom.Point{X: x, Y: y})})
		for i, l := range lines {
			if i > 0 {
				y -= line
			}
			e.write("words", draw.Text{At: geom.Point{X: indent, Y: y}, Text: l, Size: size, Bold: n.mark == cautionMark, Ink: graphite})
		}
		y -= noteGap(len(lines), size)
	}
	e.cursor = y
}

// noteGap returns the air below a note of so many lines: enough for the mark of
// the next.
func noteGap(lines int, size measure.Length) measure.Length {
	return max(3*mm/2, pennantHigh+mm-measure.Length(lines)*size*13/10)
}

// notesTall returns how high the notes come out in letters of that size.
func (e *elevation) notesTall(size, indent measure.Length) (tall measure.Length) {
	for _, n := range e.notes {
		lines := draw.Wrapped(words.Unbroken(n.text), size, n.mark == cautionMark, e.page.X.Hi-margin-indent)
		tall += measure.Length(len(lines))*size*13/10 + noteGap(len(lines), size)
	}
	return tall
}

func (n note) rank() noteMark {
	if n.mark == 0 {
		return plainMark
	}
	return n.mark
}

// sample draws a note's mark, 10 mm wide, on the base line of its first line.
func (n note) sample(at geom.Point) []draw.Item {
	mid := at.Y + body*36/100
	p := func(dx, dy measure.Length) geom.Point { return geom.Point{X: at.X + dx, Y: mid + dy} }
	switch n.mark {
	case plumbMark:
		return append([]draw.Item{draw.Segment(p(5*mm, 3*mm), p(5*mm, -2*mm), plumbPen)}, bob(p(5*mm, -7*mm/2), 4*mm)...)
	case killMark:
		points := []geom.Point{p(0, 0)}
		for k := range measure.Length(5) {
			points = append(points, p((2*k+1)*mm, mm*(1-2*(k%2))))
		}
		return []draw.Item{draw.Line{Points: append(points, p(10*mm, 0)), Pen: killPen}}
	case pennantMark:
		return []draw.Item{pennant(n.title, n.number, p(2*mm, -pennantHigh/2-mm/2), false, pennantHigh+mm/2)}
	case dashedMark:
		return []draw.Item{draw.Area{Shape: geom.Polygon{Outline: draw.BoxAt(at.X+2*mm, mid-2*mm, 6*mm, 4*mm).Ring()}, Fill: tints[1], Pen: returnPen}}
	case motifMark:
		return []draw.Item{draw.Segment(p(3*mm, 3*mm/2), p(7*mm, 3*mm/2), designPen), draw.Segment(p(5*mm, 3*mm/2), p(5*mm, -3*mm/2), designPen)}
	case tickMark:
		return []draw.Item{draw.Segment(p(5*mm, 2*mm), p(5*mm, -2*mm), seamPen), draw.Segment(p(mm, 0), p(5*mm, 0), designPen), draw.Segment(p(5*mm, 0), p(9*mm, 0), designPen)}
	case cautionMark:
		return []draw.Item{draw.Text{At: p(5*mm, -body*36/100), Text: "!", Size: large * 4 / 5, Anchor: draw.Middle, Bold: true, Ink: oxide}}
	}
	return []draw.Item{draw.Segment(p(3*mm, 0), p(7*mm, 0), finePen)}
}

// sortNotes puts the notes in order.
func (e *elevation) sortNotes() {
	slices.SortStableFunc(e.notes, func(a, b note) int { return cmp.Compare(a.rank(), b.rank()) })
}
