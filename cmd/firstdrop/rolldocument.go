package main

import (
	"firstdrop/cutting"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/tell"
)

// paperRolls is the rolls of one paper, for programs.
type paperRolls struct {
	Paper   string         `json:"paper"`
	Rolls   []rollDocument `json:"rolls"`
	Missing string         `json:"missing,omitempty"`
}

// rollDocument is one roll.
type rollDocument struct {
	Roll   int                 `json:"roll"`
	Name   string              `json:"name,omitempty"` // what is written on a roll in hand
	Batch  string              `json:"batch,omitempty"`
	InHand bool                `json:"in_hand"`
	Length measure.Length      `json:"length"`
	Left   measure.Length      `json:"left"`
	Flaws  [][2]measure.Length `json:"flaws,omitempty"`
	Parts  []measure.Length    `json:"parts_begin,omitempty"`
	Orders []rollOrder         `json:"orders"`
}

// rollOrder is a cutting order and the starts that it serves.
type rollOrder struct {
	After measure.Length `json:"start_after"`
	UpTo  measure.Length `json:"start_up_to"`
	Cuts  []rollCut      `json:"cuts"`
}

// rollCut is one cut and the pieces that it gives, from left to right.
type rollCut struct {
	From  measure.Length `json:"from"`
	To    measure.Length `json:"to"`
	Phase measure.Length `json:"phase"`
	Mark  string         `json:"mark,omitempty"`
	Gives []rollGift     `json:"gives"`
}

// rollGift is a piece that a cut gives.
type rollGift struct {
	Piece  string         `json:"piece"`
	Wall   string         `json:"wall"`
	Run    string         `json:"run"`
	Offset measure.Length `json:"offset,omitempty"` // from the cut's leading end
}

func (pl *planned) rollDocuments() []paperRolls {
	out := []paperRolls{}
	for i := range pl.plan.Papers {
		if len(pl.plan.Papers[i].Batches) == 0 {
			continue
		}
		label := &pl.plan.Task.Papers[i]
		d := paperRolls{Paper: label.Name, Rolls: []rollDocument{}, Missing: tell.Missing(pl.lang, pl.plan, i)}
		for _, r := range tell.Rolls(pl.plan, i) {
			d.Rolls = append(d.Rolls, pl.rollDocument(label, &r))
		}
		out = append(out, d)
	}
	return out
}

func (pl *planned) rollDocument(label *paper.Paper, r *tell.Roll) rollDocument {
	d := rollDocument{
		Roll: r.Number, Name: r.Name, Batch: r.Batch, InHand: r.InHand,
		Length: r.Length, Left: r.Left, Parts: r.Parts,
	}
	for _, f := range r.Flaws {
		d.Flaws = append(d.Flaws, [2]measure.Length{f.From, f.To})
	}
	for _, o := range r.Orders {
		order := rollOrder{After: o.After, UpTo: o.UpTo}
		for _, c := range o.Cuts {
			order.Cuts = append(order.Cuts, pl.rollCut(label, r, c))
		}
		d.Orders = append(d.Orders, order)
	}
	return d
}

func (pl *planned) rollCut(label *paper.Paper, r *tell.Roll, c cutting.Cut) rollCut {
	cut := rollCut{From: c.From, To: c.To, Phase: r.Phase(c), Mark: tell.Mark(pl.lang, label, r.Phase(c))}
	for _, g := range r.Gifts(pl.plan, c) {
		wall := g.Layout.Run.WallName(g.Layout.PieceWall(g.Piece))
		cut.Gives = append(cut.Gives, rollGift{g.Piece.Name, wall, g.Layout.Run.Name, g.Offset})
	}
	return cut
}
