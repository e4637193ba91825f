package audit

import (
	"firstdrop/cutting"
	"firstdrop/plan"
)

// A strip is one length off a roll. It gives one piece, or narrow ones that lie
// side by side on it, each where its own stretch of the design is:
//
//	           across ──►
//	 leading  ┌──────┬────┬───────┐
//	 end      │      │blade       │      the phase of a piece is that of the
//	    │     │ a    │    │ b     │      strip and what it lies behind the
//	    ▼     │      │    │       │      strip's leading end
//	          ├──────┘    └───────┤
//	          └───────────────────┘
//
// A drop hung upside down comes off the roll turned: what it needs at its left
// edge as it hangs lies at the right edge of the strip.

// judgeStrips: every strip gives what its pieces need.
func (b *batch) judgeStrips() {
	spec := b.Cutting.Problem.Spec()
	shared := false
	last := plan.PieceRef{Run: -1}
	inOrder := true
	for n, strip := range b.Cuts {
		b.judgeStrip(n, strip, spec.Pieces[n])
		shared = shared || len(strip) > 1
		inOrder = inOrder && compareRefs(last, strip[0].PieceRef) < 0
		last = strip[0].PieceRef
	}
	if shared && (b.p.Task.Cut.Alone || b.label.InOrder) {
		b.note(Strips, Place{}, "pieces side by side", "none, as the task asks", "some")
	}
	if !shared && !inOrder {
		b.note(SpecFaithful, Place{}, "pieces to cut", "in the order of runs and hanging", "in another")
	}
	b.same(Strips, Place{}, "a cutting of all pieces alone beside it", shared, b.Apart != nil)
}

// judgeStrip judges strip n, which is cut as the piece of cutting says.
func (b *batch) judgeStrip(n int, strip plan.Strip, cut cutting.Piece) {
	at := Place{Piece: n + 1}
	repeat := int64(b.label.Repeat)
	first, last, edge := int64(cut.Length), int64(0), int64(0)
	for i, l := range strip {
		q := b.piece(l.PieceRef)
		lie := span{int64(l.Offset), int64(l.Offset + q.Length)}
		first, last = min(first, lie.lo), max(last, lie.hi)
		b.same(SpecFaithful, at, "phase of a piece on its strip", mod(int64(q.Phase), repeat), mod(int64(cut.Phase)+lie.lo, repeat))
		if len(strip) == 1 {
			continue
		}
		a := b.across(l.PieceRef)
		if a.lo < 0 || a.hi > int64(b.label.Width) || a.length() <= 0 {
			b.note(Strips, at, "stretch of the width", "within "+figure(span{0, int64(b.label.Width)}), a)
		}
		if i > 0 && a.lo < edge+int64(b.p.Task.Cut.Blade) {
			b.note(Strips, at, "left edge of a piece", figure(edge+int64(b.p.Task.Cut.Blade))+" or more", a.lo)
		}
		edge = max(edge, a.hi)
	}
	if got := (span{first, last}); got != (span{0, int64(cut.Length)}) {
		b.note(SpecFaithful, at, "length to cut", figure(got), cut.Length)
	}
}

// across returns the stretch of the width that a piece takes as it comes off
// the roll, with what is to be trimmed off slit edges. What it needs beyond the paper's
// edges is not cut.
func (b *batch) across(ref plan.PieceRef) span {
	l := b.p.Runs[ref.Run].Layout
	q := &l.Pieces[ref.Piece]
	width := int64(b.label.Width)
	over := int64(b.p.Task.Cut.SlitOver)
	a := span{int64(q.Across.Lo) - over, int64(q.Across.Hi) + over}.common(span{0, width})
	if d := &l.Drops[q.Drop]; l.Paper.Match.Reversing && d.Index%2 != 0 {
		return span{width - a.hi, width - a.lo}
	}
	return a
}

// judgeApart: what cutting side by side is set against is a cutting of the same
// pieces, each alone, and it comes to more.
func (b *batch) judgeApart() {
	if b.Apart == nil {
		return
	}
	spec := b.Apart.Problem.Spec()
	if !b.same(Strips, Place{}, "number of pieces cut alone", len(b.refs), len(spec.Pieces)) {
		return
	}
	for n, ref := range b.refs {
		q, repeat := b.piece(ref), int64(b.label.Repeat)
		b.same(Strips, Place{Piece: n + 1}, "length to cut alone", q.Length, spec.Pieces[n].Length)
		b.same(Strips, Place{Piece: n + 1}, "phase to cut alone", mod(int64(q.Phase), repeat), mod(int64(spec.Pieces[n].Phase), repeat))
	}
	missing, cost := b.comesTo(b.Cutting)
	alone, costAlone := b.comesTo(b.Apart)
	saves := costAlone > cost || missing > 0 && toBuy(b.BatchPlan, b.Apart) > toBuy(b.BatchPlan, b.Cutting)
	if alone < missing || alone == missing && !saves {
		b.note(Strips, Place{}, "pieces missing and cost if cut alone", "more than "+figure(missing)+" and "+figure(int(cost)), figure(alone)+" and "+figure(int(costAlone)))
	}
}

// comesTo returns how many pieces of layouts a cutting leaves missing, and what
// its rolls cost.
func (b *batch) comesTo(s *cutting.Solution) (missing int, cost int64) {
	for _, i := range s.Missing {
		switch {
		case s == b.Apart:
			missing++
		case i >= 0 && i < len(b.Cuts):
			missing += len(b.Cuts[i])
		}
	}
	r := newRolls(&book{}, s)
	if r == nil {
		return missing, 0
	}
	t := r.tariff()
	cost, _ = r.paid(&t)
	return missing, cost
}
