package audit

import (
	"firstdrop/cutting"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/plan"
)

// judgePaper judges what paper i has to give against the layouts hung with it.
func judgePaper(b *book, p *plan.Plan, i int, grounds []*ground) {
	pp, label := &p.Papers[i], &p.Task.Papers[i]
	if want := judgeRefs(b, p, i); want != nil {
		judgeSpec(b, pp, label, want)
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
	if pp.Cutting != nil {
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

// judgeRefs: every piece of every layout hung with the paper is one of its
// pieces, once. It returns them in the paper's order, as cutting must see them;
// nil when they are not all there.
func judgeRefs(b *book, p *plan.Plan, i int) []cutting.Piece {
	pp := &p.Papers[i]
	missing := make(map[plan.PieceRef]bool)
	for r := range p.Runs {
		if p.Task.Runs[r].Paper == i && p.Runs[r].Layout != nil {
			for k := range p.Runs[r].Layout.Pieces {
				missing[plan.PieceRef{Run: r, Piece: k}] = true
			}
		}
	}
	total := len(missing)
	pieces := make([]cutting.Piece, 0, len(pp.Pieces))
	for n, ref := range pp.Pieces {
		if !missing[ref] {
			b.note(SpecFaithful, Place{Piece: n + 1}, "piece", "one of a layout in this paper, once", "none or one listed before")
			return nil
		}
		delete(missing, ref)
		q := &p.Runs[ref.Run].Layout.Pieces[ref.Piece]
		pieces = append(pieces, cutting.Piece{Length: q.Length, Phase: q.Phase})
	}
	if !b.same(SpecFaithful, Place{}, "number of pieces", total, len(pieces)) {
		return nil
	}
	return pieces
}

// judgeSpec: cutting was asked for these pieces, from rolls as the label has
// them, of a start that nobody knows.
func judgeSpec(b *book, pp *plan.PaperPlan, label *paper.Paper, want []cutting.Piece) {
	if pp.Cutting == nil || pp.Cutting.Problem == nil {
		b.same(SpecFaithful, Place{}, "number of pieces not cut", 0, len(want))
		return
	}
	spec := pp.Cutting.Problem.Spec()
	b.same(SpecFaithful, Place{}, "repeat", label.Repeat, spec.Repeat)
	b.same(SpecFaithful, Place{}, "length of a roll", label.RollLength, spec.Roll.Length)
	b.same(SpecFaithful, Place{}, "start of a roll known", false, spec.Roll.Start.Known)
	if !b.same(SpecFaithful, Place{}, "number of pieces to cut", len(want), len(spec.Pieces)) {
		return
	}
	for n := range want {
		b.same(SpecFaithful, Place{Piece: n + 1}, "length to cut", want[n].Length, spec.Pieces[n].Length)
		if spec.Repeat > 0 {
			b.same(SpecFaithful, Place{Piece: n + 1}, "phase", want[n].Phase, spec.Pieces[n].Phase)
		}
	}
}

// judgeCounts: what to buy, the area estimate and the count for short rolls.
func judgeCounts(b *book, pp *plan.PaperPlan, label *paper.Paper) {
	rolls, pack := len(pp.Cutting.Rolls), max(1, label.Pack)
	packs := (rolls + pack - 1) / pack
	b.same(Quantities, Place{}, "rolls to buy for", rolls, pp.Order.Rolls)
	b.same(Quantities, Place{}, "rolls in a pack", pack, pp.Order.PerPack)
	b.same(Quantities, Place{}, "packs", packs, pp.Order.Packs)
	b.same(Quantities, Place{}, "rolls to spare", packs*pack-rolls, pp.Order.Spare)
	cost := label.Price
	if cost.Currency != "" {
		cost.Minor *= int64(packs)
	}
	b.same(Quantities, Place{}, "cost", cost, pp.Order.Cost)
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
	fits := true
	if pp.Cutting.Problem != nil {
		for _, q := range pp.Cutting.Problem.Spec().Pieces {
			fits = fits && int64(q.Length)+max(0, int64(label.Repeat)-1) <= short
		}
	}
	switch n := pp.ShortRolls; {
	case fits != (n > 0):
		b.note(ShortCount, Place{}, "short rolls can give every piece", fits, n > 0)
	case n > 0 && n < pp.Cutting.LowerBound:
		b.note(ShortCount, Place{}, "count of short rolls", "no fewer than the bound "+figure(pp.Cutting.LowerBound), n)
	}
}
