package job_test

import (
	"fmt"

	"pgregory.net/rapid"

	"firstdrop/cutting"
	"firstdrop/geom"
	"firstdrop/job"
	"firstdrop/measure"
	"firstdrop/money"
	"firstdrop/paper"
	"firstdrop/room"
)

const mm = measure.Millimetre

// words are names that a careless reader or printer of YAML takes for something
// else.
var words = []string{
	"A", "yes", "no", "null", "~", "012", "1_000", "true", "1e3", ".inf", "- a", "a: b", "#x", "a #b", "'", `"`, `"a"`, "{", "[x]", "*a", "&b",
	"!t", "%", "@", "`", "é", "☃", "<<", "=", "?", "-", "---", "...", "8' 2 1/2\"", "0x1F", "2026-01-01", "12:30", ",", "a, b", "\\n", "{a: b}", "😀", "x\u00a0y",
}

// drawn draws the parts of a sound job.
type drawn struct{ t *rapid.T }

func (d drawn) length(label string, from, to measure.Length) measure.Length {
	step := rapid.SampledFrom([]measure.Length{1, mm, measure.SixtyFourth, measure.Inch}).Draw(d.t, label+" step")
	least, most := (from + step - 1).FloorTo(step), to.FloorTo(step)
	if least > most {
		return from
	}
	return least + step*measure.Length(rapid.Int64Range(0, int64((most-least)/step)).Draw(d.t, label))
}

func (d drawn) maybe(label string) bool { return rapid.Bool().Draw(d.t, label) }

func (d drawn) optional(label string, from, to measure.Length) *measure.Length {
	if !d.maybe(label + " stated") {
		return nil
	}
	l := d.length(label, from, to)
	return &l
}

// name draws a name that ends in a number of its own.
func (d drawn) name(i int) string {
	return fmt.Sprintf("%s %d", rapid.SampledFrom(words).Draw(d.t, "name"), i)
}

func (d drawn) note() string {
	lines := rapid.SliceOfN(rapid.SampledFrom(append([]string{"", " ", "\t", "  two", "end \n", "\n", "# x", "|", ">", "a:"}, words...)), 0, 4)
	text := ""
	for i, l := range lines.Draw(d.t, "note") {
		if i > 0 {
			text += "\n"
		}
		text += l
	}
	return text
}

// anyJob draws a job that is sound by construction.
func anyJob(t *rapid.T) *job.Job {
	d := drawn{t}
	j := &job.Job{
		Version: job.Version, Name: rapid.SampledFrom(words).Draw(t, "job"), Note: d.note(),
		Units: rapid.SampledFrom([]measure.Unit{0, measure.Millimetres, measure.Centimetres, measure.Metres, measure.Inches, measure.Feet, measure.Yards}).Draw(t, "units"),
	}
	j.Room.Closed = d.maybe("closed")
	if j.Room.Closed == false {
		j.Room.Ends = job.Ends{Left: d.length("left end", -20*mm, 20*mm), Right: d.length("right end", -20*mm, 20*mm)}
	}
	if d.maybe("usual corner") {
		j.Room.Corner = d.corner()
	}
	n := rapid.IntRange(3, 6).Draw(t, "walls")
	for i := range n {
		j.Room.Walls = append(j.Room.Walls, d.wall(i, i < n-1 || j.Room.Closed))
	}
	if j.Room.Closed && d.maybe("diagonal") {
		w := j.Room.Walls
		j.Room.Diagonals = []job.Diagonal{{From: w[0].Name + "|" + w[1].Name, To: w[1].Name + "|" + w[2].Name, Length: d.length("diagonal", mm, 9*measure.Metre)}}
	}
	for i := range rapid.IntRange(1, 2).Draw(t, "papers") {
		j.Papers = append(j.Papers, d.paper(i))
	}
	if len(j.Papers) > 1 || d.maybe("hang stated") {
		d.hang(j)
	}
	d.rules(j)
	return j
}

func (d drawn) corner() *job.Corner {
	c := &job.Corner{Kind: rapid.SampledFrom([]room.CornerKind{room.Inside, room.Outside}).Draw(d.t, "corner")}
	if d.maybe("angle stated") {
		c.Angle = measure.Angle(rapid.Int64Range(1, 179_999_999).Draw(d.t, "angle"))
		if c.Kind == room.Outside {
			c.Angle += 180 * measure.Degree
		}
	}
	if d.maybe("lean stated") {
		c.Lean = job.Ends{Left: d.length("lean", -30*mm, 30*mm), Right: d.length("lean", -30*mm, 30*mm)}
	}
	c.Sight = d.sight()
	return c
}

func (d drawn) sight() room.Sight {
	return rapid.SampledFrom([]room.Sight{room.Plain, room.Focal, room.Hidden}).Draw(d.t, "sight")
}

func (d drawn) span(label string, from, to measure.Length) *job.Span {
	s := &job.Span{Left: d.length(label, from, to)}
	s.Right = s.Left
	if d.maybe(label + " slopes") {
		s.Right = d.length(label, from, to)
	}
	return s
}

func (d drawn) wall(i int, hasCorner bool) job.Wall {
	w := job.Wall{Name: d.name(i), Width: d.length("width", 2000*mm, 6000*mm), Sight: d.sight()}
	if d.maybe("outline") {
		w.Outline = geom.Ring{{}, {X: w.Width}, {X: w.Width, Y: d.length("y", 2200*mm, 4000*mm)}, {X: w.Width / 2, Y: 4100 * mm}, {Y: d.length("y", 2200*mm, 4000*mm)}}
	} else {
		w.Height = d.span("height", 2200*mm, 5000*mm)
		if d.maybe("floor stated") {
			w.Floor = d.span("floor", -500*mm, 100*mm)
		}
	}
	if d.maybe("opening") {
		w.Openings = append(w.Openings, d.opening(i))
	}
	if d.maybe("fitting") {
		w.Fittings = append(w.Fittings, job.Fitting{
			Name: d.name(i), Kind: rapid.SampledFrom([]room.FittingKind{room.Socket, room.Vent}).Draw(d.t, "fitting kind"),
			At: geom.Point{X: d.length("at", 0, 2000*mm), Y: d.length("at", 0, 2000*mm)}, Size: geom.Point{X: 80 * mm, Y: 80 * mm},
		})
	}
	if hasCorner && d.maybe("corner stated") {
		w.Corner = d.corner()
	}
	return w
}

func (d drawn) opening(i int) job.Opening {
	o := job.Opening{Kind: rapid.SampledFrom([]room.OpeningKind{room.Door, room.Window, room.Panel}).Draw(d.t, "opening kind"), Sight: d.sight()}
	if d.maybe("opening named") {
		o.Name = d.name(i)
	}
	if d.maybe("opening outline") {
		o.Outline = geom.Ring{{X: 100 * mm, Y: 0}, {X: 900 * mm, Y: 0}, {X: 500 * mm, Y: d.length("head", 500*mm, 2000*mm)}}
	} else {
		left, width, height := d.length("left", 0, 500*mm), d.length("opening width", mm, 1500*mm), d.length("opening height", 500*mm, 1000*mm)
		o.Left, o.Width, o.Height = &left, &width, &height
		if o.Kind != room.Door || d.maybe("sill stated") {
			sill := d.length("sill", 0, 1100*mm)
			o.Sill = &sill
		}
	}
	if o.Depth = d.length("depth", 0, 300*mm); o.Depth > 0 {
		o.Returns = room.Sides{Left: d.maybe("left"), Right: d.maybe("right"), Head: d.maybe("head"), Sill: d.maybe("sill")}
	}
	return o
}

func (d drawn) paper(i int) job.Paper {
	p := job.Paper{
		Name: d.name(i), Width: d.length("paper width", 400*mm, 1400*mm), Roll: d.length("roll", 5000*mm, 50*measure.Metre),
		Match: "free", Batch: d.name(i), Picture: d.name(i), SoakMin: rapid.IntRange(0, 15).Draw(d.t, "soak"),
		Paste:     rapid.SampledFrom([]paper.Paste{paper.PasteTheWall, paper.PasteThePaper, paper.ReadyPasted, paper.SelfAdhesive}).Draw(d.t, "paste"),
		Reversing: d.maybe("reversing"), DryWidth: d.length("dry width", 0, 1400*mm), Across: d.length("across", 0, 700*mm),
	}
	if d.maybe("repeat stated") {
		p.Repeat = d.length("repeat", 300*mm, 1200*mm)
		p.Match = rapid.SampledFrom([]string{"straight", "half drop", "offset 1/3", "offset 250 mm", "3/7"}).Draw(d.t, "match")
		if d.maybe("measured") {
			p.Measured = &job.Measured{Repeat: d.length("measured repeat", 300*mm, 1200*mm), Lower: []measure.Length{d.length("lower", -500*mm, 500*mm)}}
		}
		p.Motif = &job.Motif{Axis: d.length("axis", 0, 400*mm), Head: d.length("motif head", 0, 200*mm), Tall: d.length("tall", 0, 100*mm)}
	}
	p.Lines = rapid.SampledFrom([]paper.Lines{paper.LinesUnstated, paper.LinesLoose, paper.LinesLevel, paper.LinesUpright, paper.LinesBoth}).Draw(d.t, "lines")
	if d.maybe("pack stated") {
		pack := rapid.IntRange(1, 3).Draw(d.t, "pack")
		p.Pack = &pack
	}
	if d.maybe("price stated") {
		p.Price = money.Amount{Minor: rapid.Int64Range(0, 1e6).Draw(d.t, "price"), Currency: "EUR"}
	}
	p.Keep = rapid.IntRange(0, 3).Draw(d.t, "keep")
	d.stock(&p)
	if d.maybe("tolerance stated") {
		p.Tolerance = &job.Tolerance{Length: rapid.IntRange(0, 50).Draw(d.t, "‰"), Width: rapid.IntRange(0, 50).Draw(d.t, "‰")}
	}
	return p
}

// stock draws sizes on sale and rolls that are there.
func (d drawn) stock(p *job.Paper) {
	p.InOrder = d.maybe("in order")
	if d.maybe("available stated") {
		p.Available = new(int)
		*p.Available = rapid.IntRange(1, 50).Draw(d.t, "available")
	}
	if d.maybe("another size") {
		o := job.Offer{Roll: d.length("roll", 2000*mm, 50*measure.Metre), Pack: p.Pack, Available: p.Available}
		if p.Price.Currency != "" {
			o.Price = money.Amount{Minor: 1 + p.Price.Minor/2, Currency: "EUR"}
			p.Price.Minor++
		}
		p.Also = append(p.Also, o)
	}
	for i := range rapid.IntRange(0, 3).Draw(d.t, "rolls") {
		p.Rolls = append(p.Rolls, d.roll(i, p.Repeat > 0))
	}
}

func (d drawn) roll(i int, hasDesign bool) job.Roll {
	begins := func() *measure.Length {
		if !hasDesign {
			return nil
		}
		l := d.length("begins", 0, 299*mm)
		return &l
	}
	r := job.Roll{Name: d.name(i)}
	if d.maybe("batch stated") {
		r.Batch = d.name(i)
	}
	if d.maybe("in parts") {
		for range rapid.IntRange(2, 3).Draw(d.t, "parts") {
			r.Parts = append(r.Parts, job.RollPart{Length: d.length("part", 1500*mm, 5000*mm), Begins: begins()})
		}
	} else {
		r.Length = d.length("length", 3000*mm, 50*measure.Metre)
		if d.maybe("looked at") {
			r.Begins = begins()
		}
	}
	if r.Begins != nil || !hasDesign || r.Length == 0 {
		for k := range rapid.IntRange(0, 2).Draw(d.t, "flaws") {
			from := measure.Length(k) * 1000 * mm
			r.Flaws = append(r.Flaws, job.Flaw{From: from + d.length("from", 0, 400*mm), To: from + d.length("to", 500*mm, 900*mm)})
		}
	}
	return r
}

// hang gives each paper a stretch of walls of its own.
func (d drawn) hang(j *job.Job) {
	w := j.Room.Walls
	first := job.Hang{Paper: j.Papers[0].Name, Walls: []string{w[0].Name, w[1].Name}, From: d.optional("from", -100*mm, 500*mm), To: d.optional("to", 1500*mm, 3000*mm)}
	if d.maybe("start stated") {
		edge := d.length("edge", 0, 1000*mm)
		first.Start = &job.Start{Wall: w[1].Name, Edge: &edge}
	}
	second := job.Hang{Name: "rest", Paper: j.Papers[len(j.Papers)-1].Name, Walls: []string{w[2].Name}, Closed: new(bool)}
	if d.maybe("centre stated") {
		second.Start = &job.Start{Wall: w[2].Name, Centre: d.optional("centre", 0, 2000*mm)}
		if second.Start.Centre == nil {
			second.Start = nil
		} else {
			second.Start.Of = rapid.SampledFrom([]string{"", "drop", "seam"}).Draw(d.t, "of")
		}
	}
	if j.Papers[0].Repeat > 0 {
		first.Design = d.optional("design", 0, 299*mm)
	}
	j.Hang = []job.Hang{first, second}
}

func (d drawn) rules(j *job.Job) {
	if d.maybe("allowance stated") {
		j.Rules.Allowance = &job.Allowance{Head: d.length("allowance", 0, 99*mm), Foot: d.length("allowance", 0, 99*mm)}
	}
	j.Rules.Wrap = d.optional("wrap", 0, 20*mm)
	j.Rules.CutStep = d.optional("cut step", 1, 20*mm)
	j.Rules.MinSliver = d.optional("sliver", 0, 200*mm)
	j.Cutting = job.Cutting{
		Lead: d.optional("lead", 0, 200*mm), Loss: d.optional("loss", 0, 5*mm), Blade: d.optional("blade", 0, 30*mm), SlitOver: d.optional("slit over", 0, 30*mm), Alone: d.maybe("alone"),
		Goals: rapid.SampledFrom([][]cutting.Goal{
			nil, {cutting.FewestRolls}, {cutting.FewestChanges, cutting.FewestRolls}, {cutting.FewestRolls, cutting.FewestChanges, cutting.LongestLeftover},
		}).Draw(d.t, "goals"),
	}
	if d.maybe("weight stated") {
		weight := rapid.Int64Range(0, 1_000_000).Draw(d.t, "weight")
		j.Weights.KillMetre = &weight
	}
}
