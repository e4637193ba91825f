package order_test

import (
	"math"
	"testing"

	"firstdrop/measure"
	"firstdrop/money"
	"firstdrop/order"
	"firstdrop/paper"
)

// TRY 2011/08 (a paperhanger's diary, see the trade notes on ordering): the
// right number in the wrong unit delivers half. A line names packs and rolls
// apart.
func TestFor(t *testing.T) {
	price := money.Amount{Minor: 2790, Currency: "EUR"}
	tests := []struct {
		pack, rolls, kept int
		packs, spare      int
		cost              int64
	}{
		{1, 8, 0, 8, 0, 22320},
		{2, 8, 0, 4, 0, 11160},
		{2, 7, 0, 4, 1, 11160},
		{3, 7, 0, 3, 2, 8370},
		{1, 0, 0, 0, 0, 0},
		{1, 8, 1, 9, 0, 25110},
		{2, 7, 1, 4, 0, 11160}, // the pack has it anyway
		{2, 8, 1, 5, 1, 13950},
		{3, 0, 1, 1, 2, 2790}, // of what is in hand all is cut
	}
	for _, tt := range tests {
		l, err := order.For(paper.Offer{Pack: tt.pack, Price: price}, tt.rolls, tt.kept)
		if err != nil {
			t.Fatal(err)
		}
		want := order.Line{Rolls: tt.rolls, Kept: tt.kept, PerPack: tt.pack, Packs: tt.packs, Spare: tt.spare, Cost: money.Amount{Minor: tt.cost, Currency: "EUR"}}
		if l != want {
			t.Errorf("%d rolls in packs of %d: %+v, want %+v", tt.rolls, tt.pack, l, want)
		}
	}
}

func TestForWithoutPrice(t *testing.T) {
	l, err := order.For(paper.Offer{Pack: 1}, 3, 0)
	if err != nil || l.Cost.IsStated() {
		t.Errorf("cost %v, %v without a price", l.Cost, err)
	}
}

func TestForTooDear(t *testing.T) {
	_, err := order.For(paper.Offer{Pack: 1, Price: money.Amount{Minor: math.MaxInt64, Currency: "EUR"}}, 2, 0)
	if err == nil {
		t.Error("twice the largest amount has a cost")
	}
}

// EN 233 category 1: a roll of 0.53 × 10.05 m covers 5.3265 m².
func TestAreaEstimate(t *testing.T) {
	p := &paper.Paper{Width: 530 * measure.Millimetre, RollLength: 10050 * measure.Millimetre}
	roll := measure.Area(53265) * measure.SquareMetre / 10000
	for _, tt := range []struct {
		net  measure.Area
		want int
	}{{0, 0}, {1, 1}, {roll, 1}, {roll + 1, 2}, {10 * roll, 10}} {
		if got := order.AreaEstimate(p, tt.net); got != tt.want {
			t.Errorf("%v: %d rolls, want %d", tt.net, got, tt.want)
		}
	}
}
