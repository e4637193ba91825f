package audit

import (
	"testing"

	"pgregory.net/rapid"

	"firstdrop/cutting"
	"firstdrop/measure"
)

// heaviestOf tries every order of every choice of pieces.
func heaviestOf(r *rolls, kinds []kind, x, roll int64) int64 {
	best := int64(0)
	for _, k := range kinds {
		end := x + mod(k.phase-x, r.repeat) + k.length
		if end <= roll {
			best = max(best, k.weight+heaviestOf(r, kinds, end, roll))
		}
	}
	return best
}

func TestHeaviestAgainstTrying(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := &rolls{repeat: rapid.Int64Range(0, 20).Draw(t, "repeat")}
		length := rapid.Int64Range(5, 40).Draw(t, "roll")
		var kinds []kind
		for range rapid.IntRange(1, 3).Draw(t, "kinds") {
			k := kind{length: rapid.Int64Range(5, 15).Draw(t, "length"), weight: rapid.Int64Range(0, 9).Draw(t, "weight")}
			if r.repeat > 0 {
				k.phase = rapid.Int64Range(0, r.repeat-1).Draw(t, "phase")
			}
			kinds = append(kinds, k)
		}
		start := int64(0)
		if r.repeat > 0 {
			start = rapid.Int64Range(0, r.repeat-1).Draw(t, "start")
		}
		tracts := []tract{{0, length, start}}
		want := heaviestOf(r, kinds, start, start+length)
		if got := r.heaviest(kinds, tracts, most); got != want {
			t.Errorf("heaviest %d, want %d", got, want)
		}
		if limit := want - 1; limit > 0 && r.heaviest(kinds, tracts, limit) <= limit {
			t.Errorf("nothing heavier than %d found", limit)
		}
	})
}

// With free match no piece is used more often than asked for: of one piece of
// 30 that weighs 9 and four of 20 that weigh 2, a roll of 90 carries 9 + 3 × 2.
func TestKnapsackKeepsToWhatIsThere(t *testing.T) {
	r := &rolls{}
	w := ware{length: 90, known: true, tracts: []tract{{0, 90, 0}}}
	kinds := []kind{{length: 30, weight: 9, count: 1}, {length: 20, weight: 2, count: 4}}
	if got := r.knapsack(kinds, &w, most); got != 15 {
		t.Errorf("knapsack %d, want 15", got)
	}
	if got := r.heaviest(kinds, w.tracts, most); got != 27 {
		t.Errorf("heaviest %d, want 27 with three of the first", got)
	}
}

// Weights of different pieces that are cut alike count at their heaviest.
func TestKindsTakeTheHeaviest(t *testing.T) {
	r := &rolls{
		s:    &cutting.Solution{Certificate: cutting.Certificate{Weights: []int64{1, 3, 2}}},
		spec: cutting.Spec{Pieces: []cutting.Piece{{Length: 5 * measure.Metre}, {Length: 5 * measure.Metre}, {Length: 6 * measure.Metre}}},
	}
	kinds := r.kinds()
	if len(kinds) != 2 || kinds[0].weight != 2 || kinds[1].weight != 3 || kinds[1].count != 2 {
		t.Errorf("kinds %+v", kinds)
	}
}
