package screen

import (
	"strings"

	"firstdrop/finding"
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/job"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/plan"
	"firstdrop/room"
	"firstdrop/tell"
	"firstdrop/words"
)

// drawnPlan draws a plan of the job that is asked about.
func (q *question) drawnPlan(p *plan.Plan) Plan { return drawPlan(q.c, q.draft, p) }

// drawPlan draws a plan of a job.
func drawPlan(c *words.Catalogue, d *job.Draft, p *plan.Plan) Plan {
	s := &sketcher{c}
	out := Plan{Runs: []RunPlan{}, Papers: s.papers(d, p), Findings: s.findings(p.Findings, d, p), Lines: []string{}}
	for i := range p.Runs {
		out.Runs = append(out.Runs, s.run(p, i))
		for _, line := range s.first(p, i) {
			if len(p.Runs) > 1 {
				line = c.Text("page.of", "title", c.Name(p.Runs[i].Layout.Run.Name), "name", line)
			}
			out.Lines = append(out.Lines, line)
		}
	}
	return out
}

// first says what one wants to know first of a run: where it begins, and how it
// closes.
func (s *sketcher) first(p *plan.Plan, run int) []string {
	lines := tell.Start(s.c, p.Runs[run].Layout)
	if k := p.Runs[run].Layout; tell.KillOf(k) != nil {
		lines = append(lines, tell.Kill(s.c, k))
	}
	return lines
}

// run draws the layout of one run along its band.
func (s *sketcher) run(p *plan.Plan, i int) RunPlan {
	d := newDrawing(s.c, p.Runs[i].Layout)
	d.drops()
	for k := range d.l.Seams {
		seam := d.seam(&d.l.Seams[k])
		if d.l.Seams[k].Kind == hanging.KillSeam {
			kill := seam
			d.out.Kill = &kill
		}
		d.out.Seams = append(d.out.Seams, seam)
	}
	for k := range d.l.Plumbs {
		d.out.Plumbs = append(d.out.Plumbs, d.plumb(&d.l.Plumbs[k]))
	}
	fixed := &p.Task.Runs[i].Fixed
	start := d.l.Choice.Start
	d.out.Start = Start{
		Wall: d.l.Run.WallName(start.Wall), Edge: mm(start.X), X: rounded(d.x[start.Wall] + mm(start.X)),
		Text: tell.Beginning(s.c, p, i), Fixed: fixed.Start != nil || fixed.Centre != nil,
	}
	d.out.Design = mm(d.l.Choice.Design)
	d.out.Settled, d.out.Untried = p.Runs[i].Settled(), tell.Untried(s.c, &p.Runs[i])
	return d.out
}

// drawing is the layout of a run being drawn.
type drawing struct {
	c     *words.Catalogue
	l     *hanging.Layout
	x     []float64      // where each wall's left end stands along the band
	faces []geom.Polygon // of the walls
	hung  []geom.Polygon // the same as the sheets see them, without openings
	out   RunPlan
}

func newDrawing(c *words.Catalogue, l *hanging.Layout) *drawing {
	d := &drawing{c: c, l: l, out: RunPlan{Drops: []Drop{}, Seams: []Seam{}, Plumbs: []Line{}}}
	at := measure.Length(0)
	for w := range l.Run.Walls {
		d.x = append(d.x, mm(at))
		d.faces = append(d.faces, l.Run.Face(w))
		d.hung = append(d.hung, geom.Polygon{Outline: l.Hung().Face(w).Outline})
		at += l.Run.Walls[w].Width
	}
	return d
}

// drops draws all drops with what their parts cover.
func (d *drawing) drops() {
	rings := map[[2]int][][]Point{}
	for w, on := range lays(d.l) {
		for i := range on {
			rings[[2]int{on[i].drop, on[i].part}] = on[i].rings(d.faces[w], d.x[w])
		}
	}
	for i := range d.l.Drops {
		drop := &d.l.Drops[i]
		out := Drop{Number: drop.Number, Reversed: drop.Reversed, Parts: []Part{}, Label: d.label(i)}
		for k := range drop.Parts {
			w := drop.Parts[k].Wall
			part := Part{Wall: w, Rings: rings[[2]int{i, k}], Tile: tile(d.l.Fall(i, k), d.l.Paper.Width, d.x[w])}
			if part.Rings == nil {
				part.Rings = [][]Point{}
			}
			out.Parts = append(out.Parts, part)
		}
		d.out.Drops = append(d.out.Drops, out)
	}
}

// label says what a drop is: its number, where it hangs, what is cut for it.
func (d *drawing) label(i int) string {
	drop := &d.l.Drops[i]
	var where, cut []string
	for _, p := range drop.Parts {
		on := p.X.Intersection(geom.Interval{Lo: 0, Hi: d.l.Run.Walls[p.Wall].Width})
		if on.Length() > 0 {
			where = append(where, d.c.Text("screen.part", "wall", tell.Wall(d.c, d.l.Run, p.Wall), "from", d.c.Figure(on.Lo), "to", d.c.Plain(on.Hi)))
		}
	}
	if drop.Number == 0 {
		return d.c.Text("screen.bare", "where", strings.Join(where, ", "))
	}
	for k := range d.l.Pieces {
		if q := &d.l.Pieces[k]; q.Drop == i {
			cut = append(cut, d.c.Text("screen.piece", "piece", q.Name, "length", d.c.Plain(q.Length)))
		}
	}
	return d.c.Text("screen.drop", "drop", drop.Number, "where", strings.Join(where, ", "), "pieces", strings.Join(cut, ", "))
}

// kinds are the words of the protocol for seams.
var kinds = map[hanging.SeamKind]string{
	hanging.Butt: "butt", hanging.Carried: "carried", hanging.Turned: "turned", hanging.Renewed: "renewed", hanging.KillSeam: "kill",
}

func (d *drawing) seam(s *hanging.Seam) Seam {
	foot, head := d.reach(s.Wall, s.X)
	out := Seam{
		Kind: kinds[s.Kind], Wall: d.l.Run.WallName(s.Wall), X: rounded(d.x[s.Wall] + mm(foot.X)),
		Low: mm(foot.Y), High: mm(head.Y), Lean: mm(head.X - foot.X),
	}
	if s.InCorner {
		out.X, out.Lean = rounded(d.x[s.Wall]+mm(s.X)), 0
	}
	switch {
	case s.Kind == hanging.KillSeam:
		out.Text = tell.Kill(d.c, d.l)
	case s.InCorner:
		out.Text = d.c.Text("screen.seam-in", "corner", tell.Corner(d.c, d.l.Run, s.Wall, hanging.Left))
	default:
		out.Text = d.c.Text("screen.seam-on", "wall", tell.Wall(d.c, d.l.Run, s.Wall), "from", tell.FromEnd(d.c, d.l.Run, s.Wall, s.X, hanging.Left))
	}
	if !s.Meets() && hasDesign(d.l.Paper) {
		out.Misfit = d.c.Text("screen.misfit", "misses", tell.Misses(d.c, s.Across, s.Along))
	}
	return out
}

// hasDesign reports whether there is something that could fail to meet.
func hasDesign(p *paper.Paper) bool { return p.Match.Kind != paper.Free || p.Repeat > 0 }

// reach returns the lowest and the highest point that a wall has along the sheets'
// line at x.
func (d *drawing) reach(wall int, x measure.Length) (foot, head geom.Point) {
	across, up := d.hung[wall].Bounds()
	x = min(max(x, across.Lo), across.Hi-1)
	y := geom.Interval{Lo: 0, Hi: -1}
	for _, c := range d.hung[wall].Cells(geom.Interval{Lo: x, Hi: x + 1}) {
		y = y.Union(c.Y())
	}
	if y.IsEmpty() {
		y = up
	}
	return d.l.OnWall(wall, geom.Point{X: x, Y: y.Lo}), d.l.OnWall(wall, geom.Point{X: x, Y: y.Hi})
}

func (d *drawing) plumb(b *hanging.Plumb) Line {
	at := along(d.l, b.Wall, b.X)
	return Line{
		Wall: d.l.Run.WallName(b.Wall), X: rounded(d.x[b.Wall] + mm(at.x)),
		Low: mm(at.over.Lo), High: mm(at.over.Hi), Lean: mm(at.skew), Drop: d.l.Drops[b.Drop].Number,
		Text: d.c.Text("plumb.set-"+tell.SetEdge(b), "from", tell.FromEnd(d.c, d.l.Run, b.Wall, b.X, b.From),
			"drop", d.l.Drops[b.Drop].Number, "beyond", d.c.Plain(b.Beyond)),
	}
}

// papers says what each paper that is used comes to.
func (s *sketcher) papers(d *job.Draft, p *plan.Plan) []PaperSummary {
	out := []PaperSummary{}
	for i := range p.Papers {
		pp, label := &p.Papers[i], &p.Task.Papers[i]
		if len(pp.Batches) == 0 {
			continue
		}
		out = append(out, PaperSummary{
			Name: label.Name, Width: mm(label.Width), Repeat: mm(label.Repeat), Picture: d.Job.Papers[i].Picture,
			Drops: pp.Drops, Buy: pp.Buy(), Bound: pp.LowerBound(), Proven: pp.Proven(),
			Text: tell.Sentences(tell.Buy(s.c, p, i, true)...), Cost: s.cost(pp),
		})
	}
	return out
}

// cost says what one paper costs; "" where no price is stated.
func (s *sketcher) cost(pp *plan.PaperPlan) string {
	texts := []string{}
	for _, line := range pp.Orders {
		if line.Bought() > 0 && line.Cost.IsStated() {
			texts = append(texts, s.c.Money(line.Cost))
		}
	}
	return strings.Join(texts, " + ")
}

// findings says findings in words and finds their places in the drawing. Without
// a plan, places by a drop's number are none.
func (s *sketcher) findings(fs []finding.Finding, d *job.Draft, p *plan.Plan) []Finding {
	out, bands := []Finding{}, d.Bands
	for _, f := range fs {
		said := f
		if len(bands) == 1 {
			said.Place.Run = "" // it is no news
		}
		told := Finding{
			Number: f.Number, Code: string(f.Code), Severity: f.Severity.String(), Text: tell.Finding(s.c, said),
			Place: tell.Place(s.c, f.Place), Run: -1,
		}
		s.rule(&told)
		if f.Code == paper.LabelDiffers {
			told.Path = paperPath(d.Job, f.Place.Paper) + ".measured"
		}
		for i := range bands {
			if f.Place.Run == "" || f.Place.Run == bands[i].Run.Name {
				if at, path, ok := spot(&f.Place, &bands[i], p, i); ok {
					told.Run, told.At, told.Path = i, &at, path
					break
				}
			}
		}
		out = append(out, told)
	}
	return out
}

// rule adds what the rule behind a finding asks, and where it is from.
func (s *sketcher) rule(f *Finding) {
	if id := "rule." + f.Code; s.c.Has(id) {
		f.Rule, f.Source = s.c.Text(id), s.c.Text("source."+sourceOf(f.Code))
	}
}

// sources say where rules are from; what is not here is common practice.
var sources = map[finding.Code]string{
	plan.Sliver: "association", plan.SliverBeside: "association", plan.SeamNearEdge: "association", plan.SeamNearFold: "association",
	plan.KillMisfit: "association", plan.MotifCut: "association", plan.MotifCutLow: "association",
	plan.HeaderOverrun: "hangers", plan.RenewedMiss: "hangers", plan.Wedge: "hangers", plan.CornerLoss: "hangers",
	plan.OffCentre: "hangers", plan.UnequalEnds: "hangers", plan.OffCasing: "hangers", plan.CornerStep: "hangers", plan.MixedWays: "hangers",
	plan.OffPlumb:  "association",
	plan.LapShadow: "handbooks", plan.LiningSeam: "lining", plan.Drift: "standard",
}

func sourceOf(code string) string {
	if s := sources[finding.Code(code)]; s != "" {
		return s
	}
	return "common"
}

// spot returns where a place is along a band, and where what stands there is
// measured in the document; false where it is not in it.
func spot(place *finding.Place, b *job.Band, p *plan.Plan, run int) (at Point, path string, ok bool) {
	x := measure.Length(0)
	for n := range b.Run.Walls {
		w := &b.Run.Walls[n]
		name := b.Run.WallName(n)
		if place.Wall == name || place.Wall == "" && place.Corner != "" && cornerAt(b.Run, n) == place.Corner {
			own, path := spotOn(place, b, n, p, run)
			return Point{mm(x + own.X), mm(own.Y)}, path, true
		}
		x += w.Width
	}
	return Point{}, "", false
}

// cornerAt names the corner at the right end of a wall; "" at the end of a run.
func cornerAt(run *room.Run, n int) string {
	if n < len(run.Corners) {
		return run.CornerName(n)
	}
	return ""
}
