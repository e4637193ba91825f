package cutting

import (
	"fmt"
	"testing"

	"firstdrop/measure"
)

// hotel is the rule for large jobs: so many rooms, of so many kinds, 10 to 12
// pieces each. A kind of room takes the first pieces of a random room, sizes
// cut down to 5 mm; all rooms share one design. All invented.
//
//	plain     free match
//	straight  repeat 530 mm, the phase depends on the length alone
//	half      repeat 640 mm, every second piece half a repeat further
func hotel(rooms, kinds int, match string) Spec {
	r := source(uint64(kinds) * 77)
	var types []Spec
	for range kinds {
		types = append(types, randomRoom(70_000+r.in(0, 100_000)))
	}
	repeat := map[string]measure.Length{"plain": 0, "straight": 530 * mm, "half": 640 * mm}[match]
	s := Spec{Repeat: repeat, Roll: Roll{10_050 * mm, StartAt((77 * mm).Mod(repeat))}}
	for i := range rooms {
		pieces := types[i%kinds].Pieces
		for k, p := range pieces[:min(len(pieces), 10+i%kinds%3)] {
			p.Length = p.Length.FloorTo(5 * mm)
			p.Phase = p.Length / mm % 7 * 40 * mm
			if match == "half" {
				p.Phase += measure.Length(k%2) * repeat / 2
			}
			p.Phase = p.Phase.Mod(repeat)
			s.Pieces = append(s.Pieces, p)
		}
	}
	return s
}

// TestHotels proves every hotel of 50 and 500 rooms to the roll, known start.
func TestHotels(t *testing.T) {
	for _, kinds := range []int{5, 20, 40} {
		for _, match := range []string{"plain", "straight", "half"} {
			for _, rooms := range []int{50, 500} {
				s := solve(t, hotel(rooms, kinds, match))
				if !s.Proven {
					t.Errorf("%d rooms of %d kinds, %s: %d rolls, bound %d", rooms, kinds, match, len(s.Rolls), s.LowerBound)
				}
			}
		}
	}
}

// TestHotelsAnyStart does the same for rolls nobody has opened. The sets that
// serve every start are more than can be listed; the weights of a single start
// prove most of these all the same, so that anyone can check them.
func TestHotelsAnyStart(t *testing.T) {
	for _, kinds := range []int{5, 10, 20, 30, 40} {
		for _, match := range []string{"straight", "half"} {
			for _, rooms := range []int{50, 500} {
				s := solve(t, anyStart(hotel(rooms, kinds, match)))
				if !s.Proven {
					t.Errorf("%d rooms of %d kinds, %s: %d rolls, bound %d", rooms, kinds, match, len(s.Rolls), s.LowerBound)
				}
				t.Logf("%d rooms of %d kinds, %s: %d rolls, %d steps, %s, for all starts only: %v",
					rooms, kinds, match, len(s.Rolls), s.Steps, s.Certificate.Reason(), s.Certificate.AllStarts)
			}
		}
	}
}

func BenchmarkHotels(b *testing.B) {
	for _, kinds := range []int{5, 20, 40} {
		for _, match := range []string{"plain", "straight", "half"} {
			for _, rooms := range []int{50, 500} {
				spec := hotel(rooms, kinds, match)
				b.Run(fmt.Sprintf("%dkinds/%s/%drooms", kinds, match, rooms), func(b *testing.B) {
					b.ReportAllocs()
					var s *Solution
					for b.Loop() {
						s = Solve(newProblem(b, spec), Options{})
					}
					b.ReportMetric(float64(len(spec.Pieces)), "pieces")
					b.ReportMetric(float64(len(s.Rolls)), "rolls")
					b.ReportMetric(float64(len(s.Rolls)-s.LowerBound), "gap")
				})
			}
		}
	}
}

// TestHotelsInHand cuts hotels of unknown start with left-overs in hand, most of
// known start: no proof is asked for, but a small gap.
func TestHotelsInHand(t *testing.T) {
	s := anyStart(hotel(50, 5, "half"))
	s.Stock = []Stock{{Roll: s.Roll}}
	for k := range 5 {
		s.Stock = append(s.Stock, Stock{Roll: Roll{s.Roll.Length * 4 / 5, StartAt(0)}, Count: k + 1, InHand: true})
	}
	s.Stock[3].Start = AnyStart
	sol := solve(t, s)
	t.Logf("%d to buy, bound %d, %d steps", sol.Cost, sol.CostBound, sol.Steps)
	if sol.Cost > sol.CostBound+6 {
		t.Errorf("%d to buy, bound %d", sol.Cost, sol.CostBound)
	}
}
