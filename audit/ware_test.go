package audit

import (
	"math/big"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"firstdrop/cutting"
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/plan"
)

// Flaws, joints and leads leave what a ruler shows: a roll of 40 and 60 with 5
// to spare at each beginning, flawed from 30 to 50 and from 70 to 72.
func TestTractsOfABrokenRoll(t *testing.T) {
	spec := &cutting.Spec{Repeat: 10, Lead: 5}
	w := newWare(spec, &cutting.Stock{
		Parts: []cutting.Roll{{Length: 40, Start: cutting.StartAt(3)}, {Length: 60, Start: cutting.StartAt(7)}},
		Flaws: []cutting.Flaw{{From: 70, To: 72}, {From: 30, To: 50}},
	})
	want := []tract{{5, 30, 3}, {50, 70, 7 - 40}, {72, 100, 7 - 40}}
	if !slices.Equal(w.tracts, want) || w.length != 100 || w.whole() {
		t.Errorf("%+v, want tracts %v", w, want)
	}
	if w.on(0, span{55, 60}) == nil || w.on(0, span{69, 71}) != nil || w.on(0, span{4, 9}) != nil {
		t.Error("a cut lies where it cannot, or not where it can")
	}
}

// Tracts agree with a roll looked at unit by unit.
func TestTractsUnitByUnit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		spec := &cutting.Spec{Lead: measure.Length(rapid.IntRange(0, 4).Draw(t, "lead"))}
		s := &cutting.Stock{Roll: cutting.Roll{Length: measure.Length(rapid.IntRange(1, 30).Draw(t, "roll"))}}
		sound := make([]bool, s.Length)
		for x := range sound {
			sound[x] = x >= int(spec.Lead)
		}
		for range rapid.IntRange(0, 3).Draw(t, "flaws") {
			from := rapid.IntRange(0, 30).Draw(t, "from")
			to := from + rapid.IntRange(1, 8).Draw(t, "long")
			s.Flaws = append(s.Flaws, cutting.Flaw{From: measure.Length(from), To: measure.Length(to)})
			for x := from; x < min(to, len(sound)); x++ {
				sound[x] = false
			}
		}
		w := newWare(spec, s)
		got := make([]bool, len(sound))
		for _, tr := range w.tracts {
			for x := tr.lo; x < tr.hi; x++ {
				got[x] = true
			}
		}
		if !slices.Equal(got, sound) {
			t.Errorf("tracts %v of %+v", w.tracts, s)
		}
	})
}

// inOrderOf tries every way to cut the pieces from number i on in their order:
// every length of stretch from every kind of roll, or leaving the piece out.
func inOrderOf(r *rolls, t *tariff, i int, used []int) int64 {
	if i == len(r.spec.Pieces) {
		return 0
	}
	best := t.missing + inOrderOf(r, t, i+1, used)
	for k := range r.wares {
		w := &r.wares[k]
		if w.count > 0 && used[k] == w.count {
			continue
		}
		price := int64(0)
		if used[k]%t.size[k] == 0 {
			price = t.pack[k]
		}
		used[k]++
		for end := i + 1; end <= r.reach(w, i); end++ {
			best = min(best, price+inOrderOf(r, t, end, used))
		}
		used[k]--
	}
	return best
}

func TestLeastInOrderAgainstTrying(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		spec := cutting.Spec{Repeat: measure.Length(rapid.IntRange(0, 7).Draw(t, "repeat"))}
		for range rapid.IntRange(1, 5).Draw(t, "pieces") {
			p := cutting.Piece{Length: measure.Length(rapid.IntRange(3, 12).Draw(t, "length"))}
			if spec.Repeat > 0 {
				p.Phase = measure.Length(rapid.IntRange(0, int(spec.Repeat)-1).Draw(t, "phase"))
			}
			spec.Pieces = append(spec.Pieces, p)
		}
		for range rapid.IntRange(1, 3).Draw(t, "kinds") {
			spec.Stock = append(spec.Stock, cutting.Stock{
				Roll:  cutting.Roll{Length: measure.Length(rapid.IntRange(8, 40).Draw(t, "roll"))},
				Count: rapid.IntRange(0, 2).Draw(t, "count"), Price: int64(rapid.IntRange(1, 9).Draw(t, "price")), Pack: rapid.IntRange(1, 3).Draw(t, "pack"),
			})
		}
		r := &rolls{spec: spec, wares: wares(&spec), repeat: int64(spec.Repeat)}
		tr := r.tariff()
		want := inOrderOf(r, &tr, 0, make([]int, len(r.wares)))
		if got, whole := r.leastInOrder(&tr); got != want || !whole {
			t.Errorf("least cost %d, want %d", got, want)
		}
	})
}

func TestRoundUp(t *testing.T) {
	for _, tt := range []struct{ a, b, unit, want int64 }{{0, 1, 5, 0}, {10, 1, 5, 10}, {10, 3, 1, 4}, {21, 2, 5, 15}, {1, 9, 7, 7}} {
		if got := roundUp(big.NewRat(tt.a, tt.b), tt.unit); got.Int64() != tt.want {
			t.Errorf("%d/%d up to a multiple of %d: %v, want %d", tt.a, tt.b, tt.unit, got, tt.want)
		}
	}
}

// Two in hand that carry 4 each for nothing, and packs of two at 10 that carry 6
// a roll: 20 to carry leave 12, two rolls, a pack. Of 21, 13 are left: two and a
// sixth rolls at 5, and no sum of packs lies between 10 and 20.
func TestLeastCostByHand(t *testing.T) {
	for weight, want := range map[int64]int64{8: 0, 20: 10, 21: 20} {
		s := &cutting.Solution{Certificate: cutting.Certificate{Weights: []int64{weight}, Capacities: []int64{4, 6}}}
		r := &rolls{s: s, wares: []ware{{count: 2, inHand: true, pack: 1}, {pack: 2, price: 10}}, spec: cutting.Spec{Pieces: make([]cutting.Piece, 9)}}
		tr := r.tariff()
		tr.missing = 1_000_000
		if got := r.leastCost(&tr); got.Int64() != want {
			t.Errorf("weight %d: %v, want %d", weight, got, want)
		}
	}
}

// What a drop hung upside down needs at its left edge lies at the right edge of
// the strip; what it needs beyond the paper is not cut, and a slit edge is cut 13 over.
func TestAcrossTurned(t *testing.T) {
	label := paper.Paper{Width: 530, Match: paper.Match{Reversing: true}}
	l := &hanging.Layout{
		Paper: &label, Drops: []hanging.Drop{{Index: 0}, {Index: 1}},
		Pieces: []hanging.Piece{{Drop: 0, Across: geom.Interval{Lo: -4, Hi: 100}}, {Drop: 1, Across: geom.Interval{Lo: 0, Hi: 100}}},
	}
	b := &batch{p: &plan.Plan{Task: &plan.Task{Cut: plan.CutRules{SlitOver: 13}}, Runs: []plan.RunPlan{{Layout: l}}}, label: &label}
	for i, want := range []span{{0, 113}, {417, 530}} {
		if got := b.across(plan.PieceRef{Piece: i}); got != want {
			t.Errorf("drop %d: %v, want %v", i, got, want)
		}
	}
}
