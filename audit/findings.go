package audit

import (
	"firstdrop/cutting"
	"firstdrop/finding"
	"firstdrop/plan"
)

// judgeFindings: what people must know of a paper's rolls is told if it is so,
// and only then.
func judgeFindings(b *book, p *plan.Plan, i int) {
	pp, label := &p.Papers[i], &p.Task.Papers[i]
	missing, proven, saved := 0, true, 0
	for k := range pp.Batches {
		q := &pp.Batches[k]
		for _, n := range q.Cutting.Missing {
			missing += len(q.Cuts[n])
		}
		proven = proven && q.Cutting.Proven
		if q.Apart != nil {
			saved += toBuy(q, q.Apart) - toBuy(q, q.Cutting)
		}
	}
	buy, kept := 0, 0
	for _, l := range pp.Orders {
		buy, kept = buy+l.Rolls, kept+l.Kept
	}
	cut := len(pp.Batches) > 0
	short := 0
	if cut {
		short = wantedToKeep(pp, label) - kept
	}
	b.told(p, label.Name, plan.KeptShort, short > 0, short)
	b.told(p, label.Name, plan.PaperMissing, missing > 0, missing)
	b.told(p, label.Name, plan.SideBySide, saved > 0, saved)
	b.told(p, label.Name, plan.FullLength, cut && pp.ShortRolls != buy, pp.ShortRolls)
	b.told(p, label.Name, plan.AreaMisleads, cut && len(label.Rolls) == 0 && pp.AreaRolls != buy, pp.AreaRolls)
	b.told(p, label.Name, plan.Unproven, !proven, -1)
}

// told judges that a finding about a paper is there when it should be, once,
// with its count; a count of −1 is not judged.
func (b *book) told(p *plan.Plan, label string, code finding.Code, want bool, count int) {
	found := 0
	for _, f := range p.Findings {
		if f.Code != code || f.Place.Paper != label {
			continue
		}
		found++
		if want && count >= 0 {
			b.same(Findings, Place{}, "count of "+string(code), count, f.Count)
		}
	}
	expected := 0
	if want {
		expected = 1
	}
	b.same(Findings, Place{}, "findings of "+string(code), expected, found)
}

// toBuy counts the rolls of a cutting that stand for an offer.
func toBuy(b *plan.BatchPlan, s *cutting.Solution) (n int) {
	for i := range s.Rolls {
		if k := s.Rolls[i].Stock; k >= 0 && k < len(b.Kinds) && b.Kinds[k].Roll < 0 {
			n++
		}
	}
	return n
}
