package cutting

import (
	"testing"

	"pgregory.net/rapid"
)

// both lists for all assignments of pieces to the fewest rolls the changes of
// roll and the longest left-over, and returns the best pair by either order.
func (b *brute) both() (byChanges, byLeft [2]int64) {
	use := make(map[int]int64)
	byChanges, byLeft = [2]int64{1 << 40, -1}, [2]int64{1 << 40, -1}
	b.hangings(func() int64 { return 1 << 40 }, func(sets []int, changes int64) {
		left := int64(0)
		for _, s := range sets {
			if _, known := use[s]; !known {
				use[s] = int64(b.use(s))
			}
			left = max(left, int64(b.spec.Roll.Length)-use[s])
		}
		if changes < byChanges[0] || changes == byChanges[0] && left > byChanges[1] {
			byChanges = [2]int64{changes, left}
		}
		if left > byLeft[1] || left == byLeft[1] && changes < byLeft[0] {
			byLeft = [2]int64{changes, left}
		}
	})
	return byChanges, byLeft
}

// TestBruteForceBothGoals compares both goals, in either order, with the
// definition, and each is proven.
func TestBruteForceBothGoals(t *testing.T) {
	differ := 0
	manyTimes(t, func(rt *rapid.T) {
		spec := tinySpec(7).Draw(rt, "spec")
		p, err := NewProblem(spec)
		if err != nil {
			rt.Fatal(err)
		}
		byChanges, byLeft := newBrute(spec).both()
		if byChanges != byLeft {
			differ++
		}
		for _, c := range []struct {
			then []Goal
			want [2]int64 // in the order of then
		}{
			{[]Goal{FewestChanges, LongestLeftover}, byChanges},
			{[]Goal{LongestLeftover, FewestChanges}, [2]int64{byLeft[1], byLeft[0]}},
			{[]Goal{LongestLeftover, LongestLeftover, FewestChanges}, [2]int64{byLeft[1], byLeft[1]}},
		} {
			s := Solve(p, Options{Then: c.then})
			for _, err := range s.Check() {
				rt.Error(err)
			}
			for i, want := range c.want {
				if got := s.Goals[i]; got.Value != want || !got.Proven {
					rt.Errorf("%v: goal %d reaches %d, bound %d; brute force %d", c.then, i, got.Value, got.Bound, want)
				}
			}
		}
	})
	t.Logf("in %d the order of the goals matters", differ)
	if differ == 0 {
		t.Error("too tame: the order of the goals never matters")
	}
}

// TestBothGoalsInRooms asks for both goals, in either order, in random rooms: both
// are proven, and the first is that of the goal by itself.
func TestBothGoalsInRooms(t *testing.T) {
	rooms := 25
	for _, then := range [][]Goal{{FewestChanges, LongestLeftover}, {LongestLeftover, FewestChanges}} {
		for _, any := range []bool{false, true} {
			first, second := 0, 0
			for seed := range rooms {
				spec := randomRoom(60_000 + seed)
				if any {
					spec = anyStart(spec)
				}
				p := newProblem(t, spec)
				s := Solve(p, Options{Then: then})
				for _, err := range s.Check() {
					t.Errorf("room %d: %v", seed, err)
				}
				alone := Solve(p, Options{Then: then[:1]})
				if s.Goals[0] != alone.Goals[0] {
					t.Errorf("room %d: %+v, alone %+v", seed, s.Goals[0], alone.Goals[0])
				}
				if s.Goals[0].Proven {
					first++
				}
				if s.Goals[1].Proven {
					second++
				}
			}
			t.Logf("%v, any start %v: of %d rooms the first goal is proven in %d, the second in %d", then, any, rooms, first, second)
			if first < rooms || second < rooms {
				t.Errorf("%v, any start %v: only %d and %d of %d proven", then, any, first, second, rooms)
			}
		}
	}
}

// Few changes first and then a left-over, where no roll can be shared.
func TestLeftoverAfterChangesFirst(t *testing.T) {
	p, err := NewProblem(Spec{
		Repeat: 640, Roll: Roll{Length: 10050},
		Pieces: []Piece{{1700, 200}, {2400, 0}, {1000, 100}, {1700, 0}, {1000, 100}, {1700, 200}},
	})
	if err != nil {
		t.Fatal(err)
	}
	s := Solve(p, Options{First: FewestChanges, Then: []Goal{LongestLeftover}})
	for _, err := range s.Check() {
		t.Error(err)
	}
	if len(s.Goals) != 3 || s.Goals[0].Value != int64(len(s.Rolls)-1) {
		t.Errorf("goals %+v on %d rolls", s.Goals, len(s.Rolls))
	}
}
