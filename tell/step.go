package tell

import (
	"slices"

	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/plan"
	"firstdrop/words"
)

// Ready lists the steps before the first drop is hung.
func Ready(c *words.Catalogue, p *plan.Plan) []string {
	rolls := 0
	for i := range p.Papers {
		rolls += p.Papers[i].Rolls()
	}
	rules := p.Task.Rules
	steps := []string{c.Text("page.check-rolls", "rolls", Rolled(c, rolls), "check", c.Text("page.check-roll"))}
	steps = append(steps, designs(c, p)...)
	return append(steps, c.Text("page.wall-step"), c.Text("page.datum-step"), c.Text("page.dry-run"), c.Text("page.lay-out"),
		c.Text("page.allowance", "head", c.Plain(rules.Head), "foot", c.Plain(rules.Foot)), c.Text("page.check3"))
}

// mostLaid is how many widths one lays side by side to see how a paper matches; where the
// first would come back later, the label is asked about before (common practice).
const mostLaid = 9

// designs says of every paper that is hung how its first roll shows whether the label
// tells its repeat and match: labels err, and only the roll can tell. "Roll out enough
// width for 3-5 strips; note where the same motif returns; ignore the label if they differ"
// is the practice of paperhangers (wallpaperlady.wordpress.com, tag multiple-drop-pattern-match).
func designs(c *words.Catalogue, p *plan.Plan) (steps []string) {
	for i := range p.Papers {
		label := &p.Task.Papers[i]
		widths := label.Alternatives() + 1
		if len(p.Papers[i].Batches) == 0 || label.Match.Kind == paper.Free || widths > mostLaid {
			continue
		}
		steps = append(steps, c.Text("page.check-design", "paper", label.Name, "widths", widths, "repeat", label.Repeat))
	}
	return steps
}

// Runs lists the runs in the order in which they are hung: linings before what hangs
// over them.
func Runs(p *plan.Plan) (order []int) {
	for _, isLining := range [2]bool{true, false} {
		for r := range p.Runs {
			if len(p.Task.Runs[r].Over) > 0 == isLining {
				order = append(order, r)
			}
		}
	}
	return order
}

// After lists the steps when the last drop hangs.
func After(c *words.Catalogue) []string {
	return []string{c.Text("page.trim"), c.Text("page.dry"), c.Text("page.border-last"), c.Text("page.keep-rest")}
}

// Drops lists the drops that need paper as they are hung.
func Drops(l *hanging.Layout) (order []int) {
	for i := range l.Drops {
		if l.Drops[i].Number > 0 {
			order = append(order, i)
		}
	}
	slices.SortFunc(order, func(a, b int) int { return l.Drops[a].Number - l.Drops[b].Number })
	return order
}

// Drop says in sentences how drop i of a run is set and what stands in its way.
func Drop(c *words.Catalogue, p *plan.Plan, run, i int) []string {
	s := &setting{c, p, run, p.Runs[run].Layout, p.PanelTrim(run)}
	return s.do(i)
}

// setting says how drops of a run are set.
type setting struct {
	c    *words.Catalogue
	plan *plan.Plan
	run  int
	l    *hanging.Layout
	trim measure.Length // off either edge of the paper
}

func (s *setting) do(i int) (texts []string) {
	d := &s.l.Drops[i]
	if s.trim > 0 {
		texts = append(texts, s.c.Text("page.panel", "width", s.l.Paper.Width, "trim", s.trim))
	}
	texts = append(texts, s.line(i)...)
	texts = append(texts, s.lift(i)...)
	if d.Reversed {
		texts = append(texts, s.c.Text("page.upside"))
	}
	for k := range s.l.Pieces {
		p := &s.l.Pieces[k]
		if p.Drop != i {
			continue
		}
		if text := Piece(s.c, s.l, p); text != s.c.Text("what.full") || p.Return != nil {
			texts = append(texts, s.c.Text("page.of", "title", p.Name, "name", text)+".")
		}
		if over := s.plan.Task.Cut.SlitOver; over > 0 && s.isSlit(k) {
			texts = append(texts, s.c.Text("page.slit-over", "size", over))
		}
		if p.Length > s.plan.Task.Taste.LongPiece && s.plan.Task.Taste.LongPiece > 0 {
			texts = append(texts, s.c.Text("page.two"))
		}
	}
	texts = append(texts, s.fittings(d)...)
	texts = append(texts, s.end(i)...)
	return append(texts, s.kill(i)...)
}

// isSlit reports whether a piece lies beside another on one length.
func (s *setting) isSlit(piece int) bool {
	for i := range s.plan.Papers {
		for b := range s.plan.Papers[i].Batches {
			for _, strip := range s.plan.Papers[i].Batches[b].Cuts {
				if len(strip) > 1 && slices.ContainsFunc(strip, func(l plan.Lie) bool { return l.PieceRef == plan.PieceRef{Run: s.run, Piece: piece} }) {
					return true
				}
			}
		}
	}
	return false
}

// lift says by how much a drop is hung by the ceiling.
func (s *setting) lift(i int) []string {
	switch {
	case s.l.Lifts == nil || s.l.Lifts[i] == 0:
		return nil
	case s.l.Lifts[i] < 0:
		return []string{s.c.Text("page.lower", "size", -s.l.Lifts[i])}
	}
	return []string{s.c.Text("page.higher", "size", s.l.Lifts[i])}
}

// line says which drop a drop is butted to, how it goes round corners, which plumb
// lines it is set to, and where its far edge then stands.
func (s *setting) line(i int) (texts []string) {
	d := &s.l.Drops[i]
	near, far := hanging.Left, hanging.Right
	if d.Index < 0 {
		near, far = far, near
	}
	for _, q := range s.l.Seams {
		beyond, own := q.Left, q.Right
		if near == hanging.Right {
			beyond, own = own, beyond
		}
		if own == i && beyond != i && q.Kind != hanging.KillSeam && d.Index != 0 && s.l.Drops[beyond].Number > 0 &&
			(q.InCorner || !s.isBare(q.Wall, q.X)) {
			texts = append(texts, s.c.Text("page.butt-"+near.String(), "drop", s.l.Drops[beyond].Number))
		}
	}
	texts = append(texts, s.corners(d)...)
	for k := range s.l.Plumbs {
		if b := &s.l.Plumbs[k]; b.Drop == i {
			texts = append(texts, s.c.Text("page.plumb-"+SetEdge(b), "wall", Wall(s.c, s.l.Run, b.Wall),
				"from", FromEnd(s.c, s.l.Run, b.Wall, b.X, b.From), "beyond", s.c.Plain(b.Beyond)))
			if text := LineLean(s.c, s.l, b.Wall); text != "" {
				texts = append(texts, text)
			}
		}
	}
	return append(texts, s.farEdge(i, far)...)
}

// farEdge says where the seam stands that the next drop will be butted to, unless a
// plumb line says it, or it stands where nothing is papered: behind a cupboard.
func (s *setting) farEdge(i int, far hanging.Side) (texts []string) {
	for _, q := range s.l.Seams {
		own := q.Left
		if far == hanging.Left {
			own = q.Right
		}
		if own != i || q.Left == q.Right || q.InCorner || q.Kind == hanging.KillSeam {
			continue
		}
		isPlumb := slices.ContainsFunc(s.l.Plumbs, func(b hanging.Plumb) bool { return b.Wall == q.Wall && b.EdgeX() == q.X })
		if !isPlumb && !s.isBare(q.Wall, q.X) {
			texts = append(texts, s.c.Text("page.far-edge", "from", FromEnd(s.c, s.l.Run, q.Wall, q.X, hanging.Left)))
		}
	}
	return texts
}

// isBare reports whether nothing is papered on either side of a place on a wall.
func (s *setting) isBare(wall int, x measure.Length) bool {
	return len(s.l.Hung().Face(wall).Cells(geom.Interval{Lo: x - 1, Hi: x + 1})) == 0
}

// corners says how a drop goes round the corners it meets.
func (s *setting) corners(d *hanging.Drop) (texts []string) {
	for k := 1; k < len(d.Parts); k++ {
		before, p := &d.Parts[k-1], &d.Parts[k]
		if p.Wall == before.Wall {
			continue
		}
		corner := Corner(s.c, s.l.Run, before.Wall, hanging.Right)
		if p.Joined {
			texts = append(texts, s.c.Text("page.turns", "corner", corner))
			continue
		}
		turn := max(before.X.Hi-s.l.Run.Walls[before.Wall].Width, -p.X.Lo, 0)
		texts = append(texts, s.c.Text("page.cut-at", "corner", corner, "turn", s.c.Plain(turn)))
	}
	return texts
}

// fittings says what a drop must be cut to.
func (s *setting) fittings(d *hanging.Drop) (texts []string) {
	for _, p := range d.Parts {
		for i := range s.l.Run.Walls[p.Wall].Fittings {
			f := &s.l.Run.Walls[p.Wall].Fittings[i]
			if !p.X.Overlaps(geom.Interval{Lo: f.At.X - f.Size.X/2, Hi: f.At.X + f.Size.X/2}) {
				continue
			}
			say := "page.fitting-plain"
			if isElectric(*f) {
				say = "page.fitting-power"
			}
			texts = append(texts, s.c.Text(say, "fitting", Fitting(s.c, f), "height", s.c.Plain(f.At.Y)))
		}
	}
	return texts
}

// end says that a drop is cut off where a run with two ends does end.
func (s *setting) end(i int) []string {
	d := &s.l.Drops[i]
	first, last := &d.Parts[0], &d.Parts[len(d.Parts)-1]
	isCut := i == 0 && first.Across.Lo > 0 || i == len(s.l.Drops)-1 && last.Across.Hi < s.l.Paper.Width
	if s.l.Run.Closed || !isCut {
		return nil
	}
	return []string{s.c.Text("page.end-here")}
}

// kill says that the kill seam is at one of the drop's edges, with the drop that is
// hung later.
func (s *setting) kill(i int) []string {
	q := KillOf(s.l)
	if q == nil || q.Left != i && q.Right != i || s.l.Drops[i].Number < max(s.l.Drops[q.Left].Number, s.l.Drops[q.Right].Number) {
		return nil
	}
	return []string{s.c.Text("page.kill-here", "kill", Kill(s.c, s.l))}
}

// Paste says how a paper is pasted, and how long it soaks.
func Paste(c *words.Catalogue, p *paper.Paper) string {
	text := c.Text("page.paste-wall")
	switch p.Paste {
	case paper.PasteThePaper:
		text = c.Text("page.paste-paper")
	case paper.ReadyPasted:
		text = c.Text("page.paste-ready")
	case paper.SelfAdhesive:
		text = c.Text("page.paste-self")
	}
	if p.SoakMin > 0 {
		return c.Text("page.soak", "paste", text, "n", p.SoakMin)
	}
	return text
}
