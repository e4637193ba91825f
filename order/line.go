package order

import (
	"firstdrop/measure"
	"firstdrop/money"
	"firstdrop/paper"
)

// Line is what to buy of one of a paper's offers.
type Line struct {
	RollLength measure.Length // of each roll
	Rolls      int            // what the plan needs
	PerPack    int            // rolls sold together
	Kept       int            // rolls bought beside, to be kept unopened
	Packs      int            // to buy: Rolls and Kept in whole packs
	Spare      int            // rolls bought beyond that, because packs are whole
	// Cost of all packs at the offer's price; not stated when it has none.
	Cost money.Amount
}

// Bought returns how many rolls are to be bought, those that stay over when packs are whole
// aside.
func (l *Line) Bought() int { return l.Rolls + l.Kept }

// For returns what to buy so that there are at least that many rolls to be cut, and so many
// to be kept. It fails when the cost is more than an amount can hold.
func For(o paper.Offer, rolls, kept int) (Line, error) {
	per := max(o.Pack, 1)
	l := Line{RollLength: o.RollLength, Rolls: rolls, Kept: kept, PerPack: per, Packs: (rolls + kept + per - 1) / per}
	l.Spare = l.Packs*per - rolls - kept
	if !o.Price.IsStated() {
		return l, nil
	}
	var err error
	l.Cost, err = o.Price.Times(int64(l.Packs))
	return l, err
}

// FullDrops returns how many rolls it takes when each of so many drops is cut as
// long as the longest, rounded up to whole repeats, and only whole drops come
// out of a roll: the usual sum of the trade. It is 0 when a roll does not give
// one.
func FullDrops(p *paper.Paper, longest measure.Length, drops int) int {
	if p.Repeat > 0 {
		longest = longest.CeilTo(p.Repeat)
	}
	if longest <= 0 || longest > p.RollLength {
		return 0
	}
	per := int(p.RollLength / longest)
	return (drops + per - 1) / per
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
