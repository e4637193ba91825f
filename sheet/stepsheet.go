package sheet

import (
	"slices"
	"strconv"
	"strings"

	"firstdrop/draw"
	"firstdrop/draw/page"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/plan"
	"firstdrop/room"
)

// steps sets the work in its order: cautions, making ready, every drop, the end.
func (s *Set) steps() error {
	f := s.book.Begin(textSteps, false)
	s.cautions(f)
	n := 0
	f.Heading(textReady)
	for _, words := range s.readySteps() {
		n++
		numbered(f, n, words)
	}
	for r := range s.Plan.Runs {
		l := s.Plan.Runs[r].Layout
		if len(l.Pieces) == 0 {
			continue
		}
		f.Heading(textOfRun(textHang, l.Run.Name, len(s.Plan.Runs) > 1))
		n++
		numbered(f, n, textPaste(l.Paper.Paste, l.Paper.SoakMin))
		table, err := s.dropTable(r)
		if err != nil {
			return err
		}
		f.Table(table)
	}
	f.Heading(textAfter)
	for _, words := range []string{textTrim, textDry, textKeepRest} {
		n++
		numbered(f, n, words)
	}
	s.tick()
	return nil
}

// numbered writes a step with its number and a box to tick.
func numbered(f *page.Flow, n int, words string) {
	f.Item(page.Body, 14*mm, func(p *page.Page, b draw.Box) {
		p.TickBox(draw.BoxAt(b.X.Lo, b.Y.Hi-44*mm/10, 35*mm/10, 35*mm/10))
		b.X.Lo += 5 * mm
		b.X.Hi -= 2 * mm
		p.Set(b, page.Strong.At(draw.End), strconv.Itoa(n))
	}, words)
	f.Gap(mm)
}

// cautions writes those that apply, beside a bar.
func (s *Set) cautions(f *page.Flow) {
	f.Heading(textBefore)
	top := f.Y()
	pageBefore := f.Page
	for _, words := range s.cautionWords() {
		f.Item(page.Body, 5*mm, nil, words)
		f.Gap(mm)
	}
	if f.Page == pageBefore {
		x := f.X().Lo
		f.Fill(draw.Box{X: across(x, x+2*mm), Y: across(f.Y()+mm, top-mm)}, oxide, draw.Pen{})
	}
}

func (s *Set) cautionWords() (words []string) {
	if s.hasCurrent() {
		words = append(words, textPower)
	}
	if s.isHigh() {
		words = append(words, textHeights)
	} else {
		words = append(words, textLadder)
	}
	return append(words, textOldCoats, textMould, textBlades, textAir, textLocalLaw)
}

// hasCurrent reports whether a papered wall carries something electrical.
func (s *Set) hasCurrent() bool {
	for _, r := range s.Plan.Runs {
		for i := range r.Layout.Run.Walls {
			if slices.ContainsFunc(r.Layout.Run.Walls[i].Fittings, isElectric) {
				return true
			}
		}
	}
	return false
}

func isElectric(f room.Fitting) bool {
	return f.Kind == room.Socket || f.Kind == room.Switch || f.Kind == room.Light
}

// highWork is the height from which a platform is asked for (common practice).
const highWork = 3 * measure.Metre

// isHigh reports whether a wall reaches above 3 m from its own foot, or stands on
// stairs.
func (s *Set) isHigh() bool {
	for _, r := range s.Plan.Runs {
		for i := range r.Layout.Run.Walls {
			w := &r.Layout.Run.Walls[i]
			if _, y := w.Outline.Bounds(); y.Length() > highWork || rises(w) {
				return true
			}
		}
	}
	return false
}

// leastRise is how far a floor must rise along a wall to be taken for stairs.
const leastRise = 300 * measure.Millimetre

// rises reports whether the foot of a wall is higher at one end than at the other.
func rises(w *room.Wall) bool {
	_, y := w.Outline.Bounds()
	left, right := y.Hi, y.Hi
	for _, p := range w.Outline {
		switch p.X {
		case 0:
			left = min(left, p.Y)
		case w.Width:
			right = min(right, p.Y)
		}
	}
	return (left - right).Abs() >= leastRise
}

func (s *Set) readySteps() []string {
	rolls := 0
	for i := range s.Plan.Papers {
		rolls += s.Plan.Papers[i].Rolls()
	}
	rules := s.Plan.Task.Rules
	return []string{
		textCheckRolls(rolls), textWallStep, textDatumStep, textDryRun, textLayOut,
		textAllowance(s.size(rules.Head), s.size(rules.Foot)), textCheck3,
	}
}

// dropTable lists the drops of a run in hanging order.
func (s *Set) dropTable(r int) (page.Table, error) {
	l := s.Plan.Runs[r].Layout
	t := page.Table{Title: textHang, Columns: []page.Column{
		{Title: "", Width: 8 * mm},
		{Title: textColDrop, Width: 17 * mm, Type: page.Strong.Sized(5 * mm)},
		{Title: textColFrom, Width: 24 * mm, Type: page.Small},
		{Title: textColLength, Width: 24 * mm, Type: page.Strong.At(draw.End)},
		{Title: textDo(l.Paper.SoakMin), Share: 1},
	}}
	c, err := newCuts(s.Plan, s.Plan.Task.Runs[r].Paper, s.words())
	if err != nil {
		return t, err
	}
	h := &hangSteps{s: s, c: c, run: r, l: l}
	way := 0
	for _, i := range byNumber(l) {
		if d := &l.Drops[i]; d.Index > 0 && way < 1 {
			way = 1
			t.Rows = append(t.Rows, page.Row{Across: textRightward})
		} else if d.Index < 0 && way >= 0 {
			way = -1
			t.Rows = append(t.Rows, page.Row{Across: textLeftward})
		}
		t.Rows = append(t.Rows, page.Row{Cells: h.row(i)})
	}
	return t, nil
}

// byNumber lists the drops that need paper as they are hung.
func byNumber(l *hanging.Layout) (order []int) {
	for i := range l.Drops {
		if l.Drops[i].Number > 0 {
			order = append(order, i)
		}
	}
	slices.SortFunc(order, func(a, b int) int { return l.Drops[a].Number - l.Drops[b].Number })
	return order
}

// hangSteps says what to do with each drop of a run.
type hangSteps struct {
	s   *Set
	c   *cuts
	run int
	l   *hanging.Layout
}

// row tells one drop: its pieces, where they come from, how long, what to do.
func (h *hangSteps) row(i int) []string {
	var names, from, lengths []string
	for k := range h.l.Pieces {
		p := &h.l.Pieces[k]
		if p.Drop != i {
			continue
		}
		names = append(names, p.Name)
		lengths = append(lengths, h.s.size(p.Length))
		if at := h.c.at[plan.PieceRef{Run: h.run, Piece: k}]; at.roll != nil {
			from = append(from, textRollCut(at.roll.Title(), at.number))
		}
	}
	return []string{page.Tick, strings.Join(names, " "), strings.Join(from, ", "), strings.Join(lengths, ", "), strings.Join(h.do(i), " ")}
}

// do says how a drop is set and what stands in its way.
func (h *hangSteps) do(i int) (words []string) {
	d := &h.l.Drops[i]
	words = append(words, h.line(i)...)
	if d.Reversed {
		words = append(words, textUpside)
	}
	for k := range h.l.Pieces {
		p := &h.l.Pieces[k]
		if p.Drop != i {
			continue
		}
		if text := what(h.s.words(), h.l, p); text != h.s.words().Text("what.full") || p.Return != nil {
			words = append(words, textPieceLine(p.Name, text)+textFullStop)
		}
		if p.Length > h.s.Plan.Task.Taste.LongPiece && h.s.Plan.Task.Taste.LongPiece > 0 {
			words = append(words, textTwo)
		}
	}
	words = append(words, h.fittings(d)...)
	return append(words, h.kill(i)...)
}

// line says which drop a drop is butted to, how it goes round corners, which plumb
// lines it is set to, and where its far edge then stands.
func (h *hangSteps) line(i int) (words []string) {
	d := &h.l.Drops[i]
	near, far := hanging.Left, hanging.Right
	if d.Index < 0 {
		near, far = far, near
	}
	for _, q := range h.l.Seams {
		beyond, own := q.Left, q.Right
		if near == hanging.Right {
			beyond, own = own, beyond
		}
		if own == i && beyond != i && q.Kind != hanging.KillSeam && d.Index != 0 && h.l.Drops[beyond].Number > 0 {
			words = append(words, textButt(h.l.Drops[beyond].Number, near))
		}
	}
	words = append(words, h.corners(d)...)
	for _, b := range h.l.Plumbs {
		if b.Drop == i {
			words = append(words, textPlumbStep(h.l.Run.WallName(b.Wall), h.s.fromCorner(h.l, b.Wall, b.X, b.From), b.Edge))
		}
	}
	return append(words, h.farEdge(i, far)...)
}

// farEdge says where the seam stands that the next drop will be butted to, unless a
// plumb line says it.
func (h *hangSteps) farEdge(i int, far hanging.Side) (words []string) {
	for _, q := range h.l.Seams {
		own := q.Left
		if far == hanging.Left {
			own = q.Right
		}
		if own != i || q.Left == q.Right || q.InCorner || q.Kind == hanging.KillSeam {
			continue
		}
		isPlumb := slices.ContainsFunc(h.l.Plumbs, func(b hanging.Plumb) bool { return b.Wall == q.Wall && b.X == q.X })
		if !isPlumb {
			words = append(words, textSeamAt(h.s.fromCorner(h.l, q.Wall, q.X, hanging.Left)))
		}
	}
	return words
}

// corners says how a drop goes round the corners it meets.
func (h *hangSteps) corners(d *hanging.Drop) (words []string) {
	for k := 1; k < len(d.Parts); k++ {
		before, p := &d.Parts[k-1], &d.Parts[k]
		if p.Wall == before.Wall {
			continue
		}
		corner := cornerOf(h.l, before.Wall, hanging.Right)
		if p.Joined {
			words = append(words, textTurns(corner))
			continue
		}
		turn := max(before.X.Hi-h.l.Run.Walls[before.Wall].Width, -p.X.Lo, 0)
		words = append(words, textCutAt(corner, h.s.size(turn)))
	}
	return words
}

// fittings says what a drop must be cut to.
func (h *hangSteps) fittings(d *hanging.Drop) (words []string) {
	for _, p := range d.Parts {
		for i := range h.l.Run.Walls[p.Wall].Fittings {
			f := &h.l.Run.Walls[p.Wall].Fittings[i]
			if !p.X.Overlaps(across(f.At.X-f.Size.X/2, f.At.X+f.Size.X/2)) {
				continue
			}
			say := textFittingPlain
			if isElectric(*f) {
				say = textFitting
			}
			words = append(words, say(fittingName(h.s.words(), f), h.s.size(f.At.Y)))
		}
	}
	return words
}

// kill says that the kill seam is at one of the drop's edges, with the drop that is
// hung later.
func (h *hangSteps) kill(i int) []string {
	q := killOf(h.l)
	if q == nil || q.Left != i && q.Right != i || h.l.Drops[i].Number < max(h.l.Drops[q.Left].Number, h.l.Drops[q.Right].Number) {
		return nil
	}
	return []string{textKillHere + h.s.killWords(h.l)}
}
