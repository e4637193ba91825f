package audit

import (
	"firstdrop/cutting"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/plan"
)

// judgeOrders: what to buy of each size in which the paper is sold is what is
// cut of it, in whole packs.
func judgeOrders(b *book, pp *plan.PaperPlan, label *paper.Paper) {
	sold := offers(label)
	if !b.same(Quantities, Place{}, "sizes to buy", len(sold), len(pp.Orders)) {
		return
	}
	rolls := make([]int, len(sold))
	for k := range pp.Batches {
		q := &pp.Batches[k]
		for i := range q.Cutting.Rolls {
			if kind := q.Kinds[q.Cutting.Rolls[i].Stock]; kind.Roll < 0 {
				rolls[kind.Offer]++
			}
		}
	}
	for i, o := range sold {
		line, pack, of := &pp.Orders[i], max(1, o.Pack), ", size "+figure(i+1)
		bought := rolls[i] + line.Kept
		packs := (bought + pack - 1) / pack
		b.same(Quantities, Place{}, "length of a roll"+of, o.RollLength, line.RollLength)
		b.same(Quantities, Place{}, "rolls to buy for"+of, rolls[i], line.Rolls)
		b.same(Quantities, Place{}, "rolls in a pack"+of, pack, line.PerPack)
		b.same(Quantities, Place{}, "packs"+of, packs, line.Packs)
		b.same(Quantities, Place{}, "rolls to spare"+of, packs*pack-bought, line.Spare)
		cost := o.Price
		if cost.Currency != "" {
			cost.Minor *= int64(packs)
		}
		b.same(Quantities, Place{}, "cost"+of, cost, line.Cost)
	}
	judgeKept(b, pp, label, rolls)
}

// judgeKept: as many rolls are bought to be kept as are asked for and not there already, or
// as can be had besides those that are cut, offer by offer.
func judgeKept(b *book, pp *plan.PaperPlan, label *paper.Paper, rolls []int) {
	wanted, kept, most := wantedToKeep(pp, label), 0, 0
	for i, o := range offers(label) {
		n := pp.Orders[i].Kept
		kept += n
		free := wanted
		if o.Available != nil {
			free = max(0, *o.Available-rolls[i])
		}
		most += free
		if n < 0 || n > free {
			b.note(Quantities, Place{}, "rolls to keep, size "+figure(i+1), "from 0 to "+figure(free), n)
		}
	}
	b.same(Quantities, Place{}, "rolls to keep", min(wanted, most), kept)
}

// wantedToKeep counts the rolls that are to be kept and are not in hand: whole, with nobody
// knowing how they begin, and nothing cut from them.
func wantedToKeep(pp *plan.PaperPlan, label *paper.Paper) int {
	wanted := label.Keep
rolls:
	for i, r := range label.Rolls {
		if r.Begins != nil || len(r.Flaws)+len(r.Parts) > 0 {
			continue
		}
		for k := range pp.Batches {
			q := &pp.Batches[k]
			for _, cut := range q.Cutting.Rolls {
				if cut.Stock >= 0 && cut.Stock < len(q.Kinds) && q.Kinds[cut.Stock].Roll == i {
					continue rolls
				}
			}
		}
		for _, o := range offers(label) {
			if r.Length >= shortest(label, o.RollLength) {
				wanted--
				break
			}
		}
	}
	return max(0, wanted)
}

// judgeCounts: the counts that people are shown beside the plan's.
func judgeCounts(b *book, p *plan.Plan, i int) {
	pp, label := &p.Papers[i], &p.Task.Papers[i]
	const unit = 10_000_000_000 // nm² in a hundredth of a mm²
	if roll := nearest(int64(label.RollLength), int64(label.Width), unit); roll > 0 {
		count := int64(pp.Net) / roll
		if int64(pp.Net)%roll > 0 {
			count++
		}
		b.same(AreaCount, Place{}, "rolls by area", int(count), pp.AreaRolls)
	}
	judgeFullDrops(b, p, i)
	judgeInOrderRolls(b, p, i)
	judgeShort(b, pp, label)
}

// judgeFullDrops: every drop as long as the longest piece, in whole repeats.
func judgeFullDrops(b *book, p *plan.Plan, i int) {
	pp, label := &p.Papers[i], &p.Task.Papers[i]
	longest := int64(0)
	for r := range p.Runs {
		if p.Task.Runs[r].Paper == i {
			for k := range p.Runs[r].Layout.Pieces {
				longest = max(longest, int64(p.Runs[r].Layout.Pieces[k].Length))
			}
		}
	}
	if over := mod(longest, int64(label.Repeat)); over > 0 {
		longest += int64(label.Repeat) - over
	}
	want := 0
	if longest > 0 && longest <= int64(label.RollLength) {
		per := int(int64(label.RollLength) / longest)
		if want = pp.Drops / per; pp.Drops%per > 0 {
			want++
		}
	}
	b.same(FullDropCount, Place{}, "rolls if every drop were cut in full", want, pp.FullDropRolls)
}

// judgeShort: rolls as short as the tolerance allows give the pieces only if
// each fits one of them, and never need fewer rolls than are proven necessary
// for full ones.
func judgeShort(b *book, pp *plan.PaperPlan, label *paper.Paper) {
	least, plain := 0, true
	for k := range pp.Batches {
		s, bound := pp.Batches[k].Cutting, pp.Batches[k].Cutting.LowerBound
		if a := pp.Batches[k].Apart; a != nil {
			s, bound = a, min(bound, a.LowerBound)
		}
		least += bound
		r := asked(s)
		plain = plain && !r.mixed()
		if !r.fitsShort(label) {
			b.same(ShortCount, Place{}, "count of short rolls that do not give every piece", 0, pp.ShortRolls)
			return
		}
	}
	switch n := pp.ShortRolls; {
	case plain && n < 1:
		b.note(ShortCount, Place{}, "short rolls can give every piece", true, false)
	case n != 0 && n < least:
		b.note(ShortCount, Place{}, "count of short rolls", "no fewer than the bound "+figure(least), n)
	}
}

// fitsShort reports whether every piece fits some roll, if those to be bought
// are as short as the label's tolerance allows.
func (r *rolls) fitsShort(label *paper.Paper) bool {
	spec := r.spec
	spec.Stock = append([]cutting.Stock(nil), spec.Stock...)
	spec.Roll.Length = shortest(label, spec.Roll.Length)
	for k := range spec.Stock {
		if !spec.Stock[k].InHand {
			spec.Stock[k].Length = shortest(label, spec.Stock[k].Length)
		}
	}
	all := wares(&spec)
	for i := range r.spec.Pieces {
		k := kind{length: r.size(i) + r.loss, phase: r.phase(i)}
		fits := false
		for w := range all {
			_, ok := r.after(all[w].from(k.phase+1-r.lead), 0, &k) // the start that waits longest
			fits = fits || ok
		}
		if !fits {
			return false
		}
	}
	return true
}

// shortest returns the least that a roll sold as so long may measure, in whole
// millimetres.
func shortest(label *paper.Paper, length measure.Length) measure.Length {
	t := int64(label.Tolerance.Length)
	if t < 0 || t > 1000 {
		return length
	}
	short := quotient(int64(length), 1000-t, 1000).whole
	return lengthOf(short - mod(short, int64(measure.Millimetre)))
}
