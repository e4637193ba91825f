package order

import (
	"slices"
	"testing"

	"firstdrop/cutting"
	"firstdrop/measure"
)

// sized plans equal drops of 2.50 m from rolls of several sizes.
func sized(t *testing.T, drops int, stock ...cutting.Stock) Job {
	return stocked(t, cutting.Spec{Stock: stock, Pieces: times(drops, cutting.Piece{Length: 2500 * mm})})
}

func priced(length measure.Length, price int64, pack int) cutting.Stock {
	return cutting.Stock{Roll: cutting.Roll{Length: length}, Price: price, Pack: pack}
}

// Six drops of 2.50 m from one roll of 10.05 m for 40 and one of 5.03 m for 22.
// By hand, with what EN 233 allows: the long roll gives four drops with a chance
// of (10.20075 − 10.00)/0.3015 = 66.58 %, else three, the short one two with
// (5.10545 − 5.00)/0.1509 = 69.88 %, else one. The plan is enough if both do,
// 46.53 %; with one more short roll if the long one does, or of the two short
// ones at least one does, 96.97 %. The long roll alone never is.
func TestSeveralSizesByHand(t *testing.T) {
	c := curve(t, sized(t, 6, priced(10050*mm, 40, 1), priced(5030*mm, 22, 1)), Chances{Length: 15}, 20_000, 1)
	if c.Rolls != 2 || len(c.Buys) != 2 || c.Buys[0].Length != 10050*mm || c.Buys[1].Rolls != 1 || c.Spare.Length != 5030*mm {
		t.Fatalf("%d rolls, %+v, then %+v", c.Rolls, c.Buys, c.Spare)
	}
	near(t, "the plan", c.Planned(), 0.465286)
	near(t, "one more", c.OneMore(), 0.969682)
	if c.OneLess().Of != 0 || c.At(4).Of != c.Jobs {
		t.Errorf("one less: %d, two more: %d of %d jobs", c.OneLess().Of, c.At(4).Of, c.Jobs)
	}
}

// Rolls that come in whole packs are there, and are counted in whole packs: seven
// drops, two from a roll of 5.50 m, take four rolls; in packs of three there are
// six. With what is in hand, three rolls and one pack.
func TestPacksAreCountedWhole(t *testing.T) {
	plain := stocked(t, cutting.Spec{Roll: cutting.Roll{Length: 5500 * mm}, Pieces: times(7, cutting.Piece{Length: 2500 * mm})})
	plain.Pack = 3
	for name, tt := range map[string]struct {
		job    Job
		rolls  int
		counts []Point
	}{
		"one size":      {plain, 6, []Point{{3, 0}, {6, 50}, {9, 50}}},
		"in the stock":  {sized(t, 7, priced(5500*mm, 30, 3)), 6, []Point{{3, 0}, {6, 50}, {9, 50}}},
		"rolls in hand": {sized(t, 7, hand(5500*mm), priced(5500*mm, 30, 3)), 3, []Point{{0, 0}, {3, 50}, {6, 50}}},
		"a short pack":  {sized(t, 7, cutting.Stock{Roll: cutting.Roll{Length: 5500 * mm}, Price: 30, Pack: 3, Count: 5}), 5, []Point{{3, 0}, {5, 50}}},
	} {
		c := curve(t, tt.job, Chances{}, 50, 1)
		if c.Rolls != tt.rolls || !slices.Equal(c.Enough, tt.counts) {
			t.Errorf("%s: %d rolls, %+v; want %d, %+v", name, c.Rolls, c.Enough, tt.rolls, tt.counts)
		}
		if c.Planned().Of != 50 || c.OneLess().Of != 0 {
			t.Errorf("%s: planned %d, less %d", name, c.Planned().Of, c.OneLess().Of)
		}
	}
}

// More are bought of the size of which a roll, or a pack, costs least, if every
// piece can be cut from it.
func TestSpareSize(t *testing.T) {
	long, short := priced(10050*mm, 40, 1), priced(5030*mm, 22, 1)
	tall := append(times(6, cutting.Piece{Length: 2500 * mm}), times(2, cutting.Piece{Length: 5020 * mm, Phase: 10 * mm})...)
	for name, tt := range map[string]struct {
		spec cutting.Spec
		want measure.Length
	}{
		"both serve":           {cutting.Spec{Stock: []cutting.Stock{long, short}, Pieces: times(6, cutting.Piece{Length: 2500 * mm})}, 5030 * mm},
		"too short for some":   {cutting.Spec{Repeat: 100 * mm, Stock: []cutting.Stock{long, short}, Pieces: tall}, 10050 * mm},
		"a pack costs more":    {cutting.Spec{Stock: []cutting.Stock{priced(10050*mm, 40, 2), short}, Pieces: times(6, cutting.Piece{Length: 2500 * mm})}, 5030 * mm},
		"none of that is left": {cutting.Spec{Stock: []cutting.Stock{long, {Roll: short.Roll, Price: 22, Count: 1}}, Pieces: times(6, cutting.Piece{Length: 2500 * mm})}, 10050 * mm},
	} {
		if c := curve(t, stocked(t, tt.spec), Chances{}, 10, 1); c.Spare.Length != tt.want {
			t.Errorf("%s: %v, want %v; the plan buys %+v", name, c.Spare.Length, tt.want, c.Buys)
		}
	}
}

// Goods in hanging order come off the rolls as the plan cuts them: a piece of 8 m
// from the long roll, then four of 2.50 m, two from each short one. One less is
// without the roll cut last.
func TestSeveralSizesInOrder(t *testing.T) {
	pieces := append([]cutting.Piece{{Length: 8000 * mm}}, times(4, cutting.Piece{Length: 2500 * mm})...)
	c := curve(t, stocked(t, cutting.Spec{Stock: []cutting.Stock{priced(5030*mm, 10, 1), priced(8050*mm, 40, 1)}, Pieces: pieces, InOrder: true}), Chances{}, 20, 1)
	if c.Rolls != 3 || c.Planned().Of != 20 || c.OneLess().Of != 0 || c.Spare.Length != 8050*mm {
		t.Errorf("%+v", c)
	}
}
