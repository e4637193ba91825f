package audit

import (
	"firstdrop/finding"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/plan"
)

// What people are told of a crooked room is held against the survey: take a row
// of the design and follow it along the wall to see how far it runs off the
// ceiling; take the edge of a sheet and follow it up to see how far it runs off
// plumb, or off the side of a door.

// judgeStanding: how far the design of run i runs off ceilings, its edges off
// plumb, and by how much it steps in corners, is told as it is.
func judgeStanding(b *book, p *plan.Plan, i int, h *hung) {
	run := p.Task.Runs[i].Run
	told := func(code finding.Code, place finding.Place, size string) (l measure.Length, n int) {
		for _, f := range p.Findings {
			f.Place.Run, place.Run = "", ""
			if f.Code == code && f.Place == place {
				l, _ = f.Size(size)
				n++
			}
		}
		return l, n
	}
	if !knownByName(p) {
		return // names do not tell which wall is meant
	}
	for w := range run.Walls {
		at, place := Place{Wall: w + 1}, finding.Place{Wall: run.Walls[w].Name}
		var t turning
		if h.turns != nil {
			t = h.turns[w]
		}
		off, n := told(plan.OffPlumb, place, "off")
		b.same(Findings, at, "edges off plumb", lengthOf(t.lean), off)
		b.same(Findings, at, "findings of edges off plumb", boolean(t.lean != 0), n)
		left, right, ok := endsOf(&run.Walls[w])
		drift, n := told(plan.Drift, place, "drift")
		if d := right - left - t.rise; n > 0 && (!ok || d != int64(drift)) {
			b.note(Findings, at, "design off the ceiling", lengthOf(d), drift)
		}
	}
	if h.turns == nil || h.l.Paper.Repeat <= 0 {
		return
	}
	for c := range run.Corners {
		want := centred(h.step(c), int64(h.l.Paper.Repeat))
		got, _ := told(plan.CornerStep, finding.Place{Corner: cornerName(run, c)}, "along")
		b.same(Findings, Place{Wall: c + 1}, "step of the design in the corner on the right", lengthOf(want), got)
	}
}

// knownByName reports whether every wall of every run has a name of its own.
func knownByName(p *plan.Plan) bool {
	seen := map[string]bool{}
	for r := range p.Runs {
		for _, w := range p.Task.Runs[r].Run.Walls {
			if seen[w.Name] || w.Name == "" {
				return false
			}
			seen[w.Name] = true
		}
	}
	return true
}

// judgeLining: of a lining, every seam on a wall that stands within 25 mm of one of
// what hangs over it is told, and no other.
func judgeLining(b *book, p *plan.Plan, i int) {
	rt, l := &p.Task.Runs[i], p.Runs[i].Layout
	if len(rt.Over) == 0 || p.Task.Taste.Weights.LiningSeam == 0 {
		return
	}
	near, told := 0, 0
	for _, s := range l.Seams {
		for _, a := range rt.Over {
			if s.InCorner || s.Kind == hanging.KillSeam || a.Run < 0 || a.Run >= len(p.Runs) || s.Wall >= len(a.Walls) || a.Walls[s.Wall] < 0 {
				continue
			}
			over := p.Runs[a.Run].Layout
			for _, o := range over.Seams {
				inside := o.X > 0 && int64(o.X) < int64(over.Run.Walls[o.Wall].Width)
				if o.Wall == a.Walls[s.Wall] && inside && (o.X-s.X).Abs() < 25*measure.Millimetre {
					near++
				}
			}
		}
	}
	for _, f := range p.Findings {
		if f.Code == plan.LiningSeam && f.Place.Run == l.Run.Name {
			told++
		}
	}
	b.same(Findings, Place{}, "seams of the lining under others", near, told)
}
