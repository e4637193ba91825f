package plan

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"pgregory.net/rapid"

	"firstdrop/internal/anyroom"
	"firstdrop/measure"
)

// A walk, which knows nothing of what the search knows, finds nothing better than a search
// that is settled, and in many rooms just as good.
func TestNoWalkFindsBetter(t *testing.T) {
	t.Parallel()
	rooms, tries := 50, 2500
	if testing.Short() {
		rooms = 15
	}
	drawn := rapid.Custom(func(t *rapid.T) *Task { return asking(anyroom.Run(t), *anyroom.Paper(t), measure.Millimetre) })
	same, held := 0, 0
	for seed := range rooms {
		r := rand.New(rand.NewPCG(uint64(seed), 17))
		usual := asking(anyroom.UsualRoom(r), anyroom.UsualPaper(r), measure.Millimetre)
		furnish(&usual.Runs[0], r, false)
		for name, task := range map[string]*Task{"usual room": usual, "room": drawn.Example(seed)} {
			s := searched(t, task)
			got, err := s.find()
			if err != nil {
				continue
			}
			other := searched(t, task)
			other.prepare()
			other.best = candidate{layout: got.layout, score: got.score + 1}
			w := newWalk(other, uint64(seed)+1)
			w.goOn(tries)
			held++
			if w.best.score == got.score {
				same++
			}
			if w.best.score < got.score {
				msg := fmt.Sprintf("%s %d: %+v weighs %d; a walk found %+v, which weighs %d", name, seed, got.choice, got.score, w.best.choice, w.best.score)
				if s.proven {
					t.Error(msg + ", though it is told that nothing does")
				} else {
					t.Log(msg)
				}
			}
		}
	}
	t.Logf("of %d walks %d found as good a layout as the search", held, same)
	if same < held/4 {
		t.Error("walks find little")
	}
}
