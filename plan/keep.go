package plan

import (
	"cmp"
	"slices"

	"firstdrop/finding"
	"firstdrop/paper"
)

// A roll or two that stay unopened, of the same run and with their label, mend a wall years
// later. They are ordered beside what the plan needs, so that the pieces are cut as if there
// were none:
//
//	needed ███ ███ ███ ███      kept ░░░      over ███   in packs of two
//
// A roll in hand that nobody has opened, and from which nothing is cut, is one of them.

// KeptShort is the finding that fewer rolls can be kept than are asked for: Count is how many
// are wanting.
const KeptShort finding.Code = "kept_short"

// kept returns how many rolls of each offer of paper i are bought to be kept: of that of which
// most are cut if they can be had, then of the others. It raises what cannot be had.
func (p *Plan) kept(i int) []int {
	label, pp := &p.Task.Papers[i], &p.Papers[i]
	offers := label.Offers()
	kept, order := make([]int, len(offers)), make([]int, len(offers))
	for k := range order {
		order[k] = k
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(pp.ofOffer(b), pp.ofOffer(a)) })
	left := max(0, label.Keep-pp.unopened(label))
	for _, k := range order {
		if kept[k] = left; offers[k].Available != nil {
			kept[k] = min(left, max(0, *offers[k].Available-pp.ofOffer(k)))
		}
		left -= kept[k]
	}
	if left > 0 {
		p.Findings = append(p.Findings, finding.Finding{
			Code: KeptShort, Severity: finding.Note, Place: finding.Place{Paper: label.Name}, Count: left,
		})
	}
	return kept
}

// unopened counts the rolls in hand that nobody has opened, and from which nothing is cut.
func (p *PaperPlan) unopened(label *paper.Paper) (n int) {
	cut := map[int]bool{}
	for i := range p.Batches {
		for _, r := range p.Batches[i].Cutting.Rolls {
			cut[p.Batches[i].Kinds[r.Stock].Roll] = true
		}
	}
	for r := range label.Rolls {
		if !cut[r] && label.IsUnopened(&label.Rolls[r]) {
			n++
		}
	}
	return n
}
