package audit

import (
	"firstdrop/measure"
	"firstdrop/plan"
)

// judgePaper judges what paper i has to give against the layouts hung with it.
func judgePaper(b *book, p *plan.Plan, i int, grounds []*ground) {
	pp, label := &p.Papers[i], &p.Task.Papers[i]
	judgeRefs(b, p, i)
	drops, net, slack := 0, measure.Area(0), measure.Area(0)
	for r := range p.Runs {
		if p.Task.Runs[r].Paper != i || p.Runs[r].Layout == nil {
			continue
		}
		for _, d := range p.Runs[r].Layout.Drops {
			if d.Number > 0 {
				drops++
			}
		}
		if g := grounds[r]; g != nil {
			area, off := g.area()
			net, slack = net+area, slack+off
		}
	}
	b.same(Quantities, Place{}, "drops", drops, pp.Drops)
	if off := pp.Net - net; off > slack || off < -slack {
		b.note(NetArea, Place{}, "net area in mm²", float(net), float(pp.Net))
	}
	if len(pp.Batches) > 0 {
		judgeOrders(b, pp, label)
		judgeCounts(b, p, i)
	}
}

// float writes an area in square millimetres.
func float(a measure.Area) string {
	m := size(int64(a))
	text := figure(int(m/100)) + "." + figure(int(m/10%10)) + figure(int(m%10))
	if a < 0 {
		return "-" + text
	}
	return text
}

// area returns the area of the run to be papered, and how exactly it is known.
// Heights between whole nanometres are rounded by whoever adds them up, which
// over 10 m of width makes a hundredth of a square millimetre at most.
func (g *ground) area() (net, slack measure.Area) {
	for i := range g.walls {
		w := &g.walls[i]
		net += measure.Area(w.area())
		slack += measure.Area(2 * (1 + w.width/int64(10*measure.Metre)))
		for o := range g.run.Walls[i].Openings {
			for _, r := range returnsOf(&g.run.Walls[i].Openings[o]) {
				const unit = 10_000_000_000 // nm² in a hundredth of a mm²
				net += measure.Area(nearest(int64(r.X.Hi-r.X.Lo), int64(r.Y.Hi-r.Y.Lo), unit))
				slack++
			}
		}
	}
	return net, slack
}

// judgeRefs: every piece of every layout hung with the paper is given once, by
// one of its batches.
func judgeRefs(b *book, p *plan.Plan, i int) {
	missing := make(map[plan.PieceRef]bool)
	for r := range p.Runs {
		if p.Task.Runs[r].Paper == i && p.Runs[r].Layout != nil {
			for k := range p.Runs[r].Layout.Pieces {
				missing[plan.PieceRef{Run: r, Piece: k}] = true
			}
		}
	}
	for k := range p.Papers[i].Batches {
		for n, strip := range p.Papers[i].Batches[k].Cuts {
			for _, l := range strip {
				if !missing[l.PieceRef] {
					b.note(SpecFaithful, Place{Piece: n + 1}, "piece", "one of a layout in this paper, once", "none or one listed before")
				}
				delete(missing, l.PieceRef)
			}
		}
	}
	b.same(SpecFaithful, Place{}, "number of pieces not cut", 0, len(missing))
}
