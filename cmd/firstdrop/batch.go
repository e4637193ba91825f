package main

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"firstdrop/plan"
	"firstdrop/tell"
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
func (n batchName) title() string {
	if n.Batch == "" {
		return n.Paper
	}
	return n.Paper + ", batch " + n.Batch
}

// planned says how many rolls the plan wants: those to buy, where some are there
// already.
func (n batchName) planned(rolls int) string {
	if n.InHand == 0 {
		return count(rolls, "roll") + " planned"
	}
	return fmt.Sprintf("%s in hand, %d to buy planned", count(n.InHand, "roll"), rolls)
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

// missing tells which pieces there is no paper for; "" when there is enough.
func (pl *planned) missing(i int) string {
	var names []string
	pp := &pl.plan.Papers[i]
	for k := range pp.Batches {
		b := &pp.Batches[k]
		for _, piece := range b.Cutting.Missing {
			for _, lie := range b.Cuts[piece] {
				names = append(names, pl.plan.Runs[lie.Run].Layout.Pieces[lie.Piece].Name)
			}
		}
	}
	if len(names) == 0 {
		return ""
	}
	const most = 12
	shown := strings.Join(names[:min(most, len(names))], ", ")
	if more := len(names) - most; more > 0 {
		shown += fmt.Sprintf(" and %d more", more)
	}
	return fmt.Sprintf("no paper for %s of %s: %s. Do not cut before more of the batch is found.",
		count(len(names), "piece"), pl.plan.Task.Papers[i].Name, shown)
}

// inHand tells which of the rolls in hand are cut, and which batch hangs where.
func (pl *planned) inHand(i int) (lines []string) {
	label := &pl.plan.Task.Papers[i]
	if len(label.Rolls) == 0 {
		return nil
	}
	var used []string
	for _, r := range tell.Rolls(pl.plan, i) {
		if r.InHand {
			used = append(used, r.Name)
		}
	}
	text := fmt.Sprintf("none of the %d rolls is cut", len(label.Rolls))
	if len(used) > 0 {
		text = fmt.Sprintf("%d of %s cut: %s", len(used), count(len(label.Rolls), "roll"), strings.Join(used, ", "))
	}
	return append([]string{text + "."}, pl.batches(i)...)
}

// cutsFrom reports whether anything is cut from a roll in hand.
func (pl *planned) cutsFrom(i int, roll string) bool {
	return slices.ContainsFunc(tell.Rolls(pl.plan, i), func(r tell.Roll) bool { return r.InHand && r.Name == roll })
}

// batches tells which walls are hung from which batch, where there are several.
func (pl *planned) batches(i int) []string {
	pp := &pl.plan.Papers[i]
	if len(pp.Batches) < 2 {
		return nil
	}
	texts := make([]string, len(pp.Batches))
	for k := range pp.Batches {
		name := "batch " + pp.Batches[k].Batch
		if pp.Batches[k].Batch == "" {
			name = "rolls of no stated batch"
		}
		texts[k] = name + " on " + strings.Join(pl.wallsOf(&pp.Batches[k]), ", ")
	}
	return []string{upperFirst(strings.Join(texts, "; ")) + "."}
}

// wallsOf names the walls that a batch is hung on.
func (pl *planned) wallsOf(b *plan.BatchPlan) (names []string) {
	for _, strip := range b.Cuts {
		for _, lie := range strip {
			l := pl.plan.Runs[lie.Run].Layout
			name := l.Run.WallName(l.PieceWall(&l.Pieces[lie.Piece]))
			if !slices.Contains(names, name) {
				names = append(names, name)
			}
		}
	}
	return names
}
