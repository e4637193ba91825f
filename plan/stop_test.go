package plan

import (
	"math/rand/v2"
	"testing"
)

// A plan that nobody wants any more is given up soon, wherever it is; being asked
// changes nothing in one that is wanted.
func TestStop(t *testing.T) {
	wanted := twoRooms(rand.New(rand.NewPCG(8, 1)))
	asked := 0
	wanted.Stop = func() bool { asked++; return false }
	p, err := Make(wanted)
	if err != nil {
		t.Fatal(err)
	}
	same, err := Make(twoRooms(rand.New(rand.NewPCG(8, 1))))
	if err != nil || p.Runs[0].Score != same.Runs[0].Score || p.Runs[0].Tried != same.Runs[0].Tried {
		t.Fatalf("another plan, because somebody watched: %v", err)
	}
	for _, after := range []int{0, 1, asked / 3, asked - 1} {
		left, task := after, twoRooms(rand.New(rand.NewPCG(8, 1)))
		more := 0
		task.Stop = func() bool {
			if left--; left < 0 {
				more++
			}
			return left < 0
		}
		if p, err := Make(task); p != nil || err != ErrStopped {
			t.Errorf("stopped after %d of %d: %v", after, asked, err)
		}
		if most := 20 + asked/20; more > most {
			t.Errorf("stopped after %d of %d, it asks another %d times", after, asked, more)
		}
	}
}

// What a session has begun and not ended it does not use again.
func TestStopInSession(t *testing.T) {
	s := NewSession()
	task := twoRooms(rand.New(rand.NewPCG(8, 1)))
	task.Stop = func() bool { return true }
	if _, err := s.Plan(task); err != ErrStopped {
		t.Fatal(err)
	}
	again := twoRooms(rand.New(rand.NewPCG(8, 1)))
	again.Runs = task.Runs
	got, err := s.Plan(again)
	want, wrong := Make(again)
	if err != nil || wrong != nil || got.Runs[0].Score != want.Runs[0].Score {
		t.Error(err, wrong)
	}
}
