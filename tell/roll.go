package tell

import (
	"fmt"
	"strings"

	"firstdrop/cutting"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/plan"
	"firstdrop/words"
)

// Roll is a roll that is cut, as one finds it on the table.
type Roll struct {
	Number int    // from 1, over all batches of the paper
	Name   string // what is written on a roll in hand; "" for one to be bought
	Batch  string // "" when not stated
	InHand bool
	Length measure.Length   // with flaws, and all parts together
	Flaws  []paper.Flaw     // not to be used
	Parts  []measure.Length // where its separate lengths begin, but for the first
	// Left is free behind the last cut, at the worst start of the worst order;
	// with flaws or separate lengths, only what hangs together at the very end.
	Left   measure.Length
	Orders []cutting.Order

	batch *plan.BatchPlan
	stock int // kind of roll in the batch's question
}

// Gift is a piece that a cut gives.
type Gift struct {
	plan.PieceRef
	Layout *hanging.Layout
	Piece  *hanging.Piece
	Offset measure.Length // from the cut's leading end to the piece's
}

// Rolls lists the rolls that one paper is cut from, batch by batch. It is empty
// when the plan does not use the paper.
func Rolls(p *plan.Plan, at int) (rolls []Roll) {
	label, pp := &p.Task.Papers[at], &p.Papers[at]
	for k := range pp.Batches {
		b := &pp.Batches[k]
		left := b.Cutting.Leftovers()
		for i := range b.Cutting.Rolls {
			r := Roll{
				Number: len(rolls) + 1, Batch: b.Batch, Length: b.RollLength(label, i),
				Left: left[i], Orders: b.Cutting.Rolls[i].Orders,
				batch: b, stock: b.Cutting.Rolls[i].Stock,
			}
			if index, ok := b.InHand(i); ok {
				r.found(&label.Rolls[index])
			}
			rolls = append(rolls, r)
		}
	}
	return rolls
}

// found fills in what is known of a roll in hand.
func (r *Roll) found(hand *paper.Roll) {
	r.Name, r.InHand, r.Flaws, r.Parts = hand.Name, true, hand.Flaws, hand.Joints()
}

// Title names the roll: "4", and for one in hand also what is written on it,
// "4 (A1)".
func (r *Roll) Title() string {
	if r.Name == "" {
		return fmt.Sprint(r.Number)
	}
	return fmt.Sprintf("%d (%s)", r.Number, r.Name)
}

// Gifts lists what a cut of the roll gives, from left to right.
func (r *Roll) Gifts(p *plan.Plan, cut cutting.Cut) []Gift { return gifts(p, r.batch.Cuts[cut.Piece]) }

func gifts(p *plan.Plan, strip plan.Strip) (out []Gift) {
	for _, lie := range strip {
		l := p.Runs[lie.Run].Layout
		out = append(out, Gift{lie.PieceRef, l, &l.Pieces[lie.Piece], lie.Offset})
	}
	return out
}

// Phase returns the design phase at the leading end of a cut.
func (r *Roll) Phase(cut cutting.Cut) measure.Length {
	return r.batch.Cutting.Problem.Spec().Pieces[cut.Piece].Phase
}

// Names lists the pieces that a cut gives: "12", "7a | 9c" for two side by side.
func Names(gifts []Gift) string {
	names := make([]string, len(gifts))
	for i, g := range gifts {
		names[i] = g.Piece.Name
	}
	return strings.Join(names, " | ")
}

// Mark says what to look for in the design where a piece with that phase at its
// leading end is to be cut off: "410 mm above the motif", "90 mm into the
// repeat"; "" where there is no design.
func Mark(c *words.Catalogue, label *paper.Paper, phase measure.Length) string {
	switch m := label.Motif; {
	case label.Repeat == 0:
		return ""
	case m != nil:
		return c.Text("design.above-motif", "size", (m.Head - phase).Mod(label.Repeat))
	}
	return c.Text("design.into-repeat", "size", phase)
}
