package plan

import (
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
