package plan

import (
	"math/rand/v2"
	"testing"

	"firstdrop/cutting"
	"firstdrop/measure"
	"firstdrop/paper"
)

// Goods that shade are cut in the order in which they hang, and then the same
// pieces in another order may need another number of rolls: a roll of 6 m gives
// 4 and 2 m, but not two pieces of 4 m.
func TestInOrderCountsByTheOrder(t *testing.T) {
	label := paper.Paper{
		Name: "shading (invented)", Width: 1300 * measure.Millimetre, RollLength: 6 * measure.Metre,
		Match: paper.Match{Kind: paper.Free}, InOrder: true,
	}
	s := &search{task: &Task{Papers: []paper.Paper{label}}, run: &RunTask{}, lot: searchLot(&label)}
	long, short := cutting.Piece{Length: 4 * measure.Metre}, cutting.Piece{Length: 2 * measure.Metre}
	inTurn, apart := []cutting.Piece{long, short, long, short}, []cutting.Piece{long, long, short, short}
	for _, tt := range []struct {
		pieces []cutting.Piece
		rolls  int
	}{{inTurn, 2}, {apart, 3}} {
		if n, ok := (&Plan{Task: s.task}).countWith(s.lot.spec(s.task, &label, tt.pieces)); !ok || n != tt.rolls {
			t.Errorf("%v: %d rolls, want %d", tt.pieces, n, tt.rolls)
		}
	}
	if s.key(inTurn) == s.key(apart) {
		t.Error("both orders count as the same pieces")
	}
	s.task.Papers[0].InOrder = false
	if s.key(inTurn) != s.key(apart) {
		t.Error("the order counts where pieces may be cut in any")
	}
}

// The search counts the rolls of the best layout as they are cut in the end, though most
// layouts are cut with less patience: in some long runs that is a roll too many.
func TestBestIsCountedAsItIsCut(t *testing.T) {
	t.Parallel()
	const runs = 12
	differ := 0
	for seed := range runs {
		r := rand.New(rand.NewPCG(uint64(seed), 41))
		task := griddedTask(r, 16+r.IntN(12), 106*mm)
		task.Papers[0].Match, task.Papers[0].Repeat = paper.Match{Kind: paper.Offset, Num: 1, Den: 2}, 640*mm
		s := searched(t, task)
		got, err := s.find()
		if err != nil {
			t.Fatal(seed, err)
		}
		looks := candidate{choice: got.choice, kill: got.kill}
		s.layOut(&looks)
		counted := int((got.score - looks.score) / task.Taste.Weights.Roll)
		problem := s.counted(got.layout).problem
		if rolls := cutting.Solve(problem, cutting.Options{Steps: cutSteps}).Bought(); rolls != counted {
			t.Errorf("run %d: %d rolls are counted, and %d cut", seed, counted, rolls)
		}
		if cutting.Solve(problem, cutting.Options{Steps: countSteps}).Bought() != counted {
			differ++
		}
	}
	t.Logf("%d runs, in %d of them the quick count is another", runs, differ)
	if differ == 0 {
		t.Error("patience is not needed")
	}
}
