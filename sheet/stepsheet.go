package sheet

import (
	"slices"
	"strconv"
	"strings"

	"firstdrop/draw"
	"firstdrop/draw/page"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/plan"
	"firstdrop/room"
)

// steps sets the work in its order: cautions, making ready, every drop, the end.
func (s *Set) steps() error {
	f := s.book.Begin(s.text("page.steps"), false)
	s.cautions(f)
	n := 0
	f.Heading(s.text("page.ready"))
	for _, words := range s.readySteps() {
		n++
		numbered(f, n, words)
	}
	for r := range s.Plan.Runs {
		l := s.Plan.Runs[r].Layout
		if len(l.Pieces) == 0 {
			continue
		}
		f.Heading(s.ofRun(s.text("page.hang"), l.Run.Name))
		n++
		numbered(f, n, s.pasteWords(l.Paper))
		table, err := s.dropTable(r)
		if err != nil {
			return err
		}
		f.Table(table)
	}
	f.Heading(s.text("page.after"))
	for _, words := range []string{s.text("page.trim"), s.text("page.dry"), s.text("page.keep-rest")} {
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
	f.Heading(s.text("page.before"))
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
		words = append(words, s.text("page.power"))
	}
	if s.isHigh() {
		words = append(words, s.text("page.heights"))
	} else {
		words = append(words, s.text("page.ladder"))
	}
	return append(words, s.text("page.old-coats"), s.text("page.mould"), s.text("page.blades"), s.text("page.air"), s.text("page.local-law"))
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
		s.text("page.check-rolls", "rolls", s.rollCount(rolls), "check", s.text("page.check-roll")), s.text("page.wall-step"), s.text("page.datum-step"), s.text("page.dry-run"), s.text("page.lay-out"),
		s.text("page.allowance", "head", s.size(rules.Head), "foot", s.size(rules.Foot)), s.text("page.check3"),
	}
}

// dropTable lists the drops of a run in hanging order.
func (s *Set) dropTable(r int) (page.Table, error) {
	l := s.Plan.Runs[r].Layout
	t := page.Table{Title: s.text("page.hang"), Columns: []page.Column{
		{Title: "", Width: 8 * mm},
		{Title: s.text("page.col-drop"), Width: 17 * mm, Type: page.Strong.Sized(5 * mm)},
		{Title: s.text("page.col-from"), Width: 24 * mm, Type: page.Small},
		{Title: s.text("page.col-length"), Width: 24 * mm, Type: page.Strong.At(draw.End)},
		{Title: s.doWords(l.Paper.SoakMin), Share: 1},
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
			t.Rows = append(t.Rows, page.Row{Across: s.text("page.rightward")})
		} else if d.Index < 0 && way >= 0 {
			way = -1
			t.Rows = append(t.Rows, page.Row{Across: s.text("page.leftward")})
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
			from = append(from, rollCut(at))
		}
	}
	return []string{page.Tick, strings.Join(names, " "), strings.Join(from, ", "), strings.Join(lengths, ", "), strings.Join(h.do(i), " ")}
}

// do says how a drop is set and what stands in its way.
func (h *hangSteps) do(i int) (words []string) {
	d := &h.l.Drops[i]
	words = append(words, h.line(i)...)
	if d.Reversed {
		words = append(words, h.s.text("page.upside"))
	}
	for k := range h.l.Pieces {
		p := &h.l.Pieces[k]
		if p.Drop != i {
			continue
		}
		if text := what(h.s.words(), h.l, p); text != h.s.words().Text("what.full") || p.Return != nil {
			words = append(words, h.s.text("page.of", "title", p.Name, "name", text)+".")
		}
		if p.Length > h.s.Plan.Task.Taste.LongPiece && h.s.Plan.Task.Taste.LongPiece > 0 {
			words = append(words, h.s.text("page.two"))
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
			words = append(words, h.s.text("page.butt-"+near.String(), "drop", h.l.Drops[beyond].Number))
		}
	}
	words = append(words, h.corners(d)...)
	for _, b := range h.l.Plumbs {
		if b.Drop == i {
			words = append(words, h.s.text("page.plumb-"+b.Edge.String(), "wall", h.s.theWall(h.l, b.Wall), "from", h.s.fromCorner(h.l, b.Wall, b.X, b.From)))
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
			words = append(words, h.s.text("page.far-edge", "from", h.s.fromCorner(h.l, q.Wall, q.X, hanging.Left)))
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
		corner := h.s.cornerOf(h.l, before.Wall, hanging.Right)
		if p.Joined {
			words = append(words, h.s.text("page.turns", "corner", corner))
			continue
		}
		turn := max(before.X.Hi-h.l.Run.Walls[before.Wall].Width, -p.X.Lo, 0)
		words = append(words, h.s.text("page.cut-at", "corner", corner, "turn", h.s.size(turn)))
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
			say := "page.fitting-plain"
			if isElectric(*f) {
				say = "page.fitting-power"
			}
			words = append(words, h.s.text(say, "fitting", fittingName(h.s.words(), f), "height", h.s.size(f.At.Y)))
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
	return []string{h.s.text("page.kill-here", "kill", h.s.killWords(h.l))}
}

// pasteWords says how a paper is pasted, and how long it soaks.
func (s *Set) pasteWords(p *paper.Paper) string {
	text := s.text("page.paste-wall")
	switch p.Paste {
	case paper.PasteThePaper:
		text = s.text("page.paste-paper")
	case paper.ReadyPasted:
		text = s.text("page.paste-ready")
	case paper.SelfAdhesive:
		text = s.text("page.paste-self")
	}
	if p.SoakMin > 0 {
		return s.text("page.soak", "paste", text, "n", p.SoakMin)
	}
	return text
}

// doWords heads the column of what to do.
func (s *Set) doWords(soak int) string {
	if soak <= 0 {
		return s.text("page.col-do")
	}
	return s.text("page.do-soak", "n", soak)
}
