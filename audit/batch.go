package audit

import (
	"slices"

	"firstdrop/cutting"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/plan"
)

// batch is what one batch of a paper gives, made ready for judging.
type batch struct {
	*book
	p     *plan.Plan
	label *paper.Paper
	*plan.BatchPlan
	refs []plan.PieceRef // all pieces it gives, in the order of runs and hanging
}

// soundBatch reports whether the batch can be judged.
func (s *soundness) batch(at Place, p *plan.Plan, label *paper.Paper, b *plan.BatchPlan) {
	complete := b.Cutting != nil && b.Cutting.Problem != nil && (b.Apart == nil || b.Apart.Problem != nil)
	s.need(complete, at, "the cutting", "complete", "without solution or problem")
	if s.bad {
		return
	}
	spec := b.Cutting.Problem.Spec()
	s.need(len(b.Kinds) == max(1, len(spec.Stock)), at, "kinds of roll named", max(1, len(spec.Stock)), len(b.Kinds))
	for _, k := range b.Kinds {
		s.need(k.Roll >= -1 && k.Roll < len(label.Rolls), at, "roll that a kind stands for", "one of the paper's, or none", k.Roll)
		s.need(k.Roll >= 0 || k.Offer >= 0 && k.Offer <= len(label.Also), at, "offer that a kind stands for", "one of the paper's", k.Offer)
	}
	for i := range b.Cutting.Rolls {
		s.index(at, "kind of roll", b.Cutting.Rolls[i].Stock, len(b.Kinds))
	}
	for _, i := range b.Cutting.Missing {
		s.index(at, "missing piece", i, len(b.Cuts))
	}
	s.need(len(b.Cuts) == len(spec.Pieces), at, "number of pieces to cut", len(b.Cuts), len(spec.Pieces))
	for n, strip := range b.Cuts {
		at.Piece = n + 1
		s.need(len(strip) > 0, at, "pieces on a strip", "1 or more", 0)
		for _, l := range strip {
			s.index(at, "run of a piece", l.Run, len(p.Runs))
			if !s.bad {
				s.index(at, "piece", l.Piece, len(p.Runs[l.Run].Layout.Pieces))
			}
			s.lengths(at, "offset", l.Offset)
		}
	}
}

// judgeBatches judges the batches of paper i one by one and together.
func judgeBatches(b *book, p *plan.Plan, i int) {
	batches := p.Papers[i].Batches
	for k := range batches {
		judged := newBatch(b, p, i, k)
		for j := range k {
			if batches[j].Batch == judged.Batch {
				b.note(Batches, Place{}, "batch "+judged.Batch, "listed once", "listed again")
			}
		}
		judged.judge()
	}
}

// newBatch makes batch k of a paper ready for judging.
func newBatch(b *book, p *plan.Plan, paper, k int) *batch {
	judged := &batch{book: b, p: p, label: &p.Task.Papers[paper], BatchPlan: &p.Papers[paper].Batches[k]}
	for _, strip := range judged.Cuts {
		for _, l := range strip {
			judged.refs = append(judged.refs, l.PieceRef)
		}
	}
	slices.SortFunc(judged.refs, compareRefs)
	return judged
}

func compareRefs(a, b plan.PieceRef) int {
	if a.Run != b.Run {
		return a.Run - b.Run
	}
	return a.Piece - b.Piece
}

func (b *batch) judge() {
	b.judgeKinds()
	b.judgeSpec(b.Cutting)
	b.judgeStrips()
	b.judgeApart()
	b.judgePursued()
	judgeCutting(b.book, b.Cutting)
	if b.Apart != nil {
		b.judgeSpec(b.Apart)
		judgeCutting(b.book, b.Apart)
	}
}

// piece returns a piece of a layout.
func (b *batch) piece(ref plan.PieceRef) cutting.Piece {
	q := &b.p.Runs[ref.Run].Layout.Pieces[ref.Piece]
	return cutting.Piece{Length: q.Length, Phase: q.Phase}
}

// offers lists what can be bought of the paper, the label's own size first.
func offers(p *paper.Paper) []paper.Offer {
	return append([]paper.Offer{{RollLength: p.RollLength, Pack: p.Pack, Price: p.Price, Available: p.Available}}, p.Also...)
}

// judgeKinds: what is cut from is every roll of the batch that is there and, if
// it is the batch that can be bought, every size still to be had; each once, and
// nothing else.
func (b *batch) judgeKinds() {
	want := map[plan.RollKind]bool{}
	for i := range b.label.Rolls {
		if b.label.Rolls[i].Batch == b.Batch {
			want[plan.RollKind{Roll: i}] = true
		}
	}
	if b.Batch == b.label.Batch {
		for i, o := range offers(b.label) {
			if o.Available == nil || *o.Available > 0 {
				want[plan.RollKind{Roll: -1, Offer: i}] = true
			}
		}
	}
	for _, k := range b.Kinds {
		if k.Roll >= 0 {
			k.Offer = 0
		}
		if !want[k] {
			b.note(StockFaithful, Place{}, "a roll of batch "+b.Batch, "one of it, once", kindName(b.label, k))
		}
		delete(want, k)
	}
	for k := range want {
		b.note(StockFaithful, Place{}, kindName(b.label, k), "there to be cut from", "left out")
	}
}

func kindName(p *paper.Paper, k plan.RollKind) string {
	if k.Roll >= 0 {
		return "roll " + p.Rolls[k.Roll].Name
	}
	return "offer " + figure(k.Offer+1)
}

// judgeSpec: a cutting is asked for in the paper's repeat, by the rules of the
// task, from the rolls that the kinds stand for.
func (b *batch) judgeSpec(s *cutting.Solution) {
	spec, rules := s.Problem.Spec(), &b.p.Task.Cut
	b.same(SpecFaithful, Place{}, "repeat", b.label.Repeat, spec.Repeat)
	b.same(SpecFaithful, Place{}, "beginning not used", rules.Lead, spec.Lead)
	b.same(SpecFaithful, Place{}, "loss at a cut", rules.Loss, spec.Loss)
	b.same(SpecFaithful, Place{}, "in hanging order", b.label.InOrder, spec.InOrder)
	if len(spec.Stock) == 0 {
		b.judgePlainStock(&spec)
		return
	}
	if !b.same(StockFaithful, Place{}, "kinds of roll", len(b.Kinds), len(spec.Stock)) {
		return
	}
	for k := range spec.Stock {
		b.judgeStock(k, &spec.Stock[k])
	}
}

// judgePlainStock: one kind of roll in any number is the label's own size, as
// many as wanted, of a start that nobody knows.
func (b *batch) judgePlainStock(spec *cutting.Spec) {
	b.same(StockFaithful, Place{}, "what a roll stands for", plan.RollKind{Roll: -1}, b.Kinds[0])
	b.same(StockFaithful, Place{}, "as many rolls as wanted", true, b.label.Available == nil)
	b.same(StockFaithful, Place{}, "length of a roll", b.label.RollLength, spec.Roll.Length)
	b.same(StockFaithful, Place{}, "start of a roll known", false, spec.Roll.Start.Known)
}

// judgeStock: a kind of roll is as the paper has it.
func (b *batch) judgeStock(k int, s *cutting.Stock) {
	is := func(what string, want, got any) {
		b.same(StockFaithful, Place{}, what+" of kind "+figure(k+1), want, got)
	}
	kind := b.Kinds[k]
	if kind.Roll < 0 {
		o := &offers(b.label)[kind.Offer]
		count := 0
		if o.Available != nil {
			count = *o.Available
		}
		is("length", o.RollLength, s.Length)
		is("start known", false, s.Start.Known)
		is("count", count, s.Count)
		is("price", int(o.Price.Minor), int(s.Price))
		is("pack", max(1, o.Pack), max(1, s.Pack))
		is("in hand", false, s.InHand)
		is("flaws and parts", 0, len(s.Flaws)+len(s.Parts))
		return
	}
	r := &b.label.Rolls[kind.Roll]
	is("in hand", true, s.InHand)
	is("count", 1, s.Count)
	is("roll", b.opened(r.Length, r.Begins, len(r.Parts) > 0), s.Roll)
	if len(r.Flaws) != len(s.Flaws) || len(r.Parts) != len(s.Parts) {
		is("flaws and parts", figure(len(r.Flaws))+" and "+figure(len(r.Parts)), figure(len(s.Flaws))+" and "+figure(len(s.Parts)))
		return
	}
	for i, f := range r.Flaws {
		is("flaw "+figure(i+1), span{int64(f.From), int64(f.To)}, span{int64(s.Flaws[i].From), int64(s.Flaws[i].To)})
	}
	for i, p := range r.Parts {
		is("part "+figure(i+1), b.opened(p.Length, p.Begins, false), s.Parts[i])
	}
}

// opened is a roll as cutting must see it. Where the design first begins behind
// the roll's beginning its phase is 0, so at the beginning as much of the repeat
// is still to come.
func (b *batch) opened(length measure.Length, begins *measure.Length, parted bool) cutting.Roll {
	r := cutting.Roll{Length: length}
	if begins != nil && b.label.Repeat > 0 && !parted {
		phase := mod(-int64(*begins), int64(b.label.Repeat))
		r.Start = cutting.Start{Known: true, Phase: lengthOf(phase)}
	}
	return r
}
