package cutting

import (
	"testing"
)

// siteRoom is a job on site, invented: 30 drops, three rolls opened whose
// starts have been measured, one of them with a flaw, and as many new ones as
// wanted that nobody has opened.
func siteRoom(seed int) Spec {
	r := source(uint64(seed)*0x9e3779b9 + 5)
	s := Spec{Repeat: r.mm(300, 640)}
	heights := []Piece{{Length: r.mm(2450, 2700)}, {Length: r.mm(900, 1200)}, {Length: r.mm(350, 500)}}
	half := r.in(0, 1)
	for i := range 30 {
		k := heights[0]
		if i%7 > 4 {
			k = heights[1+i%2]
		}
		k.Phase = (k.Length + s.Repeat*3/4).Mod(s.Repeat)
		if half == 1 && i%2 == 1 {
			k.Phase = (k.Phase + s.Repeat/2).Mod(s.Repeat)
		}
		s.Pieces = append(s.Pieces, k)
	}
	for k := range 3 {
		roll := Stock{Roll: Roll{r.mm(4000, 10050), StartAt(r.mm(0, 299))}, Count: 1, InHand: true}
		if k == 0 {
			at := r.mm(500, 3000)
			roll.Flaws = []Flaw{{at, at + r.mm(5, 60)}}
		}
		s.Stock = append(s.Stock, roll)
	}
	s.Stock = append(s.Stock, Stock{Roll: Roll{Length: 10_050 * mm}})
	return s
}

// TestOnSite checks re-planning with rolls in hand, and that it is proven.
func TestOnSite(t *testing.T) {
	const rooms = 100
	proven := 0
	for seed := range rooms {
		p := newProblem(t, siteRoom(seed))
		s := Solve(p, Options{})
		for _, err := range s.Check() {
			t.Errorf("room %d: %v", seed, err)
		}
		if s.Proven {
			proven++
		}
		if lb, q := LowerBound(p), QuickRolls(p); int64(lb) > s.Cost || int64(q) < s.Cost && s.Proven {
			t.Errorf("room %d: %d to buy, quick bounds %d and %d", seed, s.Cost, lb, q)
		}
	}
	t.Logf("%d of %d proven", proven, rooms)
	if proven < 90 {
		t.Errorf("only %d of %d proven", proven, rooms)
	}
}

func BenchmarkOnSite(b *testing.B) {
	specs := make([]Spec, 100)
	for seed := range specs {
		specs[seed] = siteRoom(seed)
	}
	for _, o := range []struct {
		name string
		do   Options
	}{{"rolls", Options{}}, {"leftover", Options{Then: []Goal{LongestLeftover}}}, {"changes", Options{Then: []Goal{FewestChanges}}}} {
		b.Run(o.name, func(b *testing.B) {
			seed, proven := 0, 0
			for b.Loop() {
				s := Solve(newProblem(b, specs[seed%len(specs)]), o.do)
				seed++
				if s.Proven && (len(s.Goals) == 0 || s.Goals[0].Proven) {
					proven++
				}
			}
			b.ReportMetric(100*float64(proven)/float64(seed), "%proven")
		})
	}
}
