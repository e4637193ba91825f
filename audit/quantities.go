package audit

import (
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/plan"
)

// judgePaper judges what paper i has to give against the layouts hung with it.
func judgePaper(b *book, p *plan.Plan, i int, grounds []*ground) {
	pp, label := &p.Papers[i], &p.Task.Papers[i]
	judgeRefs(b, p, i)
	for k := range pp.Batches {
		judgeSpec(b, p, label, &pp.Batches[k])
	}
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
		judgeCounts(b, pp, label)
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

// judgeSpec: cutting was asked for the pieces of the batch, in length and phase
// as their layouts have them, in the paper's repeat.
func judgeSpec(b *book, p *plan.Plan, label *paper.Paper, batch *plan.BatchPlan) {
	spec := batch.Cutting.Problem.Spec()
	b.same(SpecFaithful, Place{}, "repeat", label.Repeat, spec.Repeat)
	b.same(SpecFaithful, Place{}, "length of a roll", label.RollLength, spec.Roll.Length)
	b.same(SpecFaithful, Place{}, "start of a roll known", false, spec.Roll.Start.Known)
	if !b.same(SpecFaithful, Place{}, "number of pieces to cut", len(batch.Cuts), len(spec.Pieces)) {
		return
	}
	for n, strip := range batch.Cuts {
		if len(strip) != 1 || !known(p, strip[0].PieceRef) {
			continue
		}
		l := strip[0]
		q := &p.Runs[l.Run].Layout.Pieces[l.Piece]
		b.same(SpecFaithful, Place{Piece: n + 1}, "length to cut", q.Length, spec.Pieces[n].Length)
		if spec.Repeat > 0 {
			b.same(SpecFaithful, Place{Piece: n + 1}, "phase", q.Phase, spec.Pieces[n].Phase)
		}
	}
}

// known reports whether a piece is one of a layout.
func known(p *plan.Plan, ref plan.PieceRef) bool {
	return ref.Run >= 0 && ref.Run < len(p.Runs) && ref.Piece >= 0 && ref.Piece < len(p.Runs[ref.Run].Layout.Pieces)
}

// judgeCounts: what to buy, the area estimate and the count for short rolls.
func judgeCounts(b *book, pp *plan.PaperPlan, label *paper.Paper) {
	rolls := 0
	for k := range pp.Batches {
		rolls += len(pp.Batches[k].Cutting.Rolls)
	}
	if len(pp.Orders) == 0 {
		b.note(Quantities, Place{}, "orders", "there", "none")
		return
	}
	line, pack := &pp.Orders[0], max(1, label.Pack)
	packs := (rolls + pack - 1) / pack
	b.same(Quantities, Place{}, "rolls to buy for", rolls, line.Rolls)
	b.same(Quantities, Place{}, "rolls in a pack", pack, line.PerPack)
	b.same(Quantities, Place{}, "packs", packs, line.Packs)
	b.same(Quantities, Place{}, "rolls to spare", packs*pack-rolls, line.Spare)
	cost := label.Price
	if cost.Currency != "" {
		cost.Minor *= int64(packs)
	}
	b.same(Quantities, Place{}, "cost", cost, line.Cost)
	const unit = 10_000_000_000 // nm² in a hundredth of a mm²
	if roll := nearest(int64(label.RollLength), int64(label.Width), unit); roll > 0 {
		count := int64(pp.Net) / roll
		if int64(pp.Net)%roll > 0 {
			count++
		}
		b.same(AreaCount, Place{}, "rolls by area", int(count), pp.AreaRolls)
	}
	judgeShort(b, pp, label)
}

// judgeShort: rolls as short as the tolerance allows give the pieces only if
// the longest fits whatever the start, and never need fewer rolls than are
// proven necessary for full ones.
func judgeShort(b *book, pp *plan.PaperPlan, label *paper.Paper) {
	short := nearest(int64(label.RollLength), 1, 1)
	if t := int64(label.Tolerance.Length); t > 0 && t <= 1000 {
		short = quotient(short, 1000-t, 1000).whole
		short -= mod(short, int64(measure.Millimetre))
	}
	fits, least := true, 0
	for k := range pp.Batches {
		c := pp.Batches[k].Cutting
		least += c.LowerBound
		for _, q := range c.Problem.Spec().Pieces {
			fits = fits && int64(q.Length)+max(0, int64(label.Repeat)-1) <= short
		}
	}
	switch n := pp.ShortRolls; {
	case fits != (n > 0):
		b.note(ShortCount, Place{}, "short rolls can give every piece", fits, n > 0)
	case n > 0 && n < least:
		b.note(ShortCount, Place{}, "count of short rolls", "no fewer than the bound "+figure(least), n)
	}
}
