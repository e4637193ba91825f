package plan

import (
	"testing"

	"firstdrop/measure"
)

// The next event lies to the right, the one before to the left, whole widths aside; at one,
// both are there.
func TestEventsOnEitherSide(t *testing.T) {
	es := events{10, 25, 90}
	for _, tt := range []struct{ x, next, before measure.Length }{
		{0, 10, 10}, {10, 0, 0}, {11, 14, 1}, {26, 64, 1}, {90, 0, 0}, {95, 15, 5}, {-5, 15, 5}, {211, 14, 1},
	} {
		if next := es.next(tt.x, 100); next != tt.next {
			t.Errorf("from %d the next is %d on, want %d", tt.x, next, tt.next)
		}
		if before := es.before(tt.x, 100); before != tt.before {
			t.Errorf("from %d the one before is %d back, want %d", tt.x, before, tt.before)
		}
	}
}

// Up to two crossings are told apart; of three nothing is known.
func TestCrossingsTogether(t *testing.T) {
	one := func(x measure.Length) crossing { return crossing{1, [2]measure.Length{x}} }
	two := one(3).or(one(3)).or(one(8))
	if want := (crossing{2, [2]measure.Length{3, 8}}); two != want {
		t.Errorf("3, 3 and 8: %v, want %v", two, want)
	}
	if got := two.or(one(9)); got.n != 0 {
		t.Errorf("3, 8 and 9: %v, want none known", got)
	}
	if got := two.or(crossing{}); got.n != 0 {
		t.Errorf("with one not known: %v, want none known", got)
	}
	if got, want := two.moved(5, 10), (crossing{2, [2]measure.Length{8, 3}}); got != want {
		t.Errorf("from a place 5 before: %v, want %v", got, want)
	}
}
