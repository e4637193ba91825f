package order

import (
	"firstdrop/measure"
	"firstdrop/money"
	"firstdrop/paper"
)

// Line is what to buy of one paper.
type Line struct {
	Rolls   int // what the plan needs
	PerPack int // rolls sold together
	Packs   int // to buy: Rolls in whole packs
	Spare   int // rolls bought and not needed, because packs are whole
	// Cost of all packs at the label's price; not stated when the label has none.
	Cost money.Amount
}

// For returns what to buy so that there are at least that many rolls. It fails
// when the cost is more than an amount can hold.
func For(p *paper.Paper, rolls int) (Line, error) {
	per := max(p.Pack, 1)
	l := Line{Rolls: rolls, PerPack: per, Packs: (rolls + per - 1) / per}
	l.Spare = l.Packs*per - rolls
	if !p.Price.IsStated() {
		return l, nil
	}
	var err error
	l.Cost, err = p.Price.Times(int64(l.Packs))
	return l, err
}

// AreaEstimate returns how many rolls an area comes to when it is divided by
// the area of a roll and rounded up, as if paper could be used to the last
// scrap and matched nowhere. Width and length are the nominal ones.
func AreaEstimate(p *paper.Paper, net measure.Area) int {
	roll := p.RollLength.Times(p.Width)
	if roll <= 0 || net <= 0 {
		return 0
	}
	return int((net + roll - 1) / roll)
}
