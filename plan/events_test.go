package plan

import (
	"testing"

	"firstdrop/measure"
)

// Nothing changes up to the next event to the right, nor back to the last that lies to the
// left or there, whole widths aside.
func TestEventsOnEitherSide(t *testing.T) {
	es := events{10, 25, 90}
	for _, tt := range []struct{ x, next, before measure.Length }{
		{0, 10, 11}, {10, 15, 1}, {11, 14, 2}, {26, 64, 2}, {90, 20, 1}, {95, 15, 6}, {-5, 15, 6}, {211, 14, 2},
	} {
		if next := es.next(tt.x, 100); next != tt.next {
			t.Errorf("from %d on nothing changes at %d places, want %d", tt.x, next, tt.next)
		}
		if before := es.before(tt.x, 100); before != tt.before {
			t.Errorf("from %d back nothing changes at %d places, want %d", tt.x, before, tt.before)
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
