package main

import (
	"context"
	"slices"

	"firstdrop/tell"
	"firstdrop/words"
)

// batchName says which batch of which paper an answer is about.
type batchName struct {
	Paper  string `json:"paper"`
	Batch  string `json:"batch,omitempty"` // where there are several, or rolls in hand
	InHand int    `json:"rolls_in_hand,omitempty"`
}

// batchName names a batch, and counts its rolls that are there.
func (pl *planned) batchName(i, batch int) batchName {
	label, pp := &pl.plan.Task.Papers[i], &pl.plan.Papers[i]
	n := batchName{Paper: label.Name}
	for r := range label.Rolls {
		if label.Rolls[r].Batch == pp.Batches[batch].Batch {
			n.InHand++
		}
	}
	if n.InHand > 0 || len(pp.Batches) > 1 {
		n.Batch = pp.Batches[batch].Batch
	}
	return n
}

// title names the paper and, where it matters, the batch.
func (n batchName) title(c *words.Catalogue) string {
	if n.Batch == "" {
		return n.Paper
	}
	return c.Text("batch.title", "paper", n.Paper, "batch", n.Batch)
}

// toBuy counts the rolls of a batch that are to be bought.
func (pl *planned) toBuy(i, batch int) (n int) {
	b := &pl.plan.Papers[i].Batches[batch]
	for r := range b.Cutting.Rolls {
		if _, ok := b.InHand(r); !ok {
			n++
		}
	}
	return n
}

// eachBatch asks something of every batch of every paper that the plan uses, in
// their order. It returns soon after ctx is cancelled.
func eachBatch[T any](ctx context.Context, pl *planned, ask func(i, batch int) (T, error)) ([]T, error) {
	told := []T{}
	for i := range pl.plan.Papers {
		for batch := range pl.plan.Papers[i].Batches {
			answer, err := soon(ctx, func() (T, error) { return ask(i, batch) })
			if err != nil {
				return nil, err
			}
			told = append(told, answer)
		}
	}
	return told, nil
}

// cutsFrom reports whether anything is cut from a roll in hand.
func (pl *planned) cutsFrom(i int, roll string) bool {
	return slices.ContainsFunc(tell.Rolls(pl.plan, i), func(r tell.Roll) bool { return r.InHand && r.Name == roll })
}
