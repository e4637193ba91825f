package main

import (
	"firstdrop/paper"
	"firstdrop/plan"
	"firstdrop/tell"
)

// rollDocuments is the cutting of each paper as the plan document has it, with
// the marks to look for in words.
func (pl *planned) rollDocuments() []plan.PaperDocument {
	all := append([]plan.PaperDocument{}, pl.document().Papers...)
	labels := pl.cut()
	for k, d := range all {
		for _, b := range d.Batches {
			for _, r := range b.Rolls {
				for _, o := range r.Orders {
					for i := range o.Cuts {
						o.Cuts[i].Mark = tell.Mark(pl.lang, labels[k], o.Cuts[i].Phase)
					}
				}
			}
		}
	}
	return all
}

// cut lists the labels of the papers that are cut, in the order of the plan.
func (pl *planned) cut() (labels []*paper.Paper) {
	for i := range pl.plan.Papers {
		if len(pl.plan.Papers[i].Batches) > 0 {
			labels = append(labels, &pl.plan.Task.Papers[i])
		}
	}
	return labels
}
