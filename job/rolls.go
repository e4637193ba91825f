package job

import "firstdrop/paper"

// stock sets what else the document says of a paper's rolls: other sizes on
// sale, and those that are there.
func (p *Paper) stock(label *paper.Paper) {
	for _, o := range p.Also {
		offer := paper.Offer{RollLength: o.Roll, Pack: 1, Price: o.Price, Available: o.Available}
		if o.Pack != nil {
			offer.Pack = *o.Pack
		}
		label.Also = append(label.Also, offer)
	}
	for i := range p.Rolls {
		label.Rolls = append(label.Rolls, p.Rolls[i].opened(p.Batch))
	}
}

// opened returns the roll as the planner sees it; without a word about its batch
// it is of the label's.
func (r *Roll) opened(batch string) paper.Roll {
	opened := paper.Roll{Name: r.Name, Batch: batch, Length: r.Length, Begins: r.Begins}
	if r.Batch != "" {
		opened.Batch = r.Batch
	}
	for _, f := range r.Flaws {
		opened.Flaws = append(opened.Flaws, paper.Flaw(f))
	}
	for _, part := range r.Parts {
		opened.Parts = append(opened.Parts, paper.RollPart(part))
	}
	return opened
}
