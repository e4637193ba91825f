package plan

import (
	"math/rand/v2"
	"testing"

	"firstdrop/hanging"
	"firstdrop/internal/anyroom"
	"firstdrop/measure"
)

// A seam of which it is told that nothing is near weighs nothing, and of those that weigh
// nothing most are told of.
func TestQuietSeamsWeighNothing(t *testing.T) {
	t.Parallel()
	rooms := 200
	if testing.Short() {
		rooms = 40
	}
	quiet, missed, heavy := 0, 0, 0
	for seed := range rooms {
		r := rand.New(rand.NewPCG(uint64(seed), 17))
		task := asking(anyroom.UsualRoom(r), anyroom.UsualPaper(r), measure.Millimetre)
		furnish(&task.Runs[0], r, false)
		s := searched(t, task)
		s.prepare()
		for range 40 {
			wall := r.IntN(len(s.run.Run.Walls))
			x := measure.Length(r.Int64N(int64(s.run.Run.Walls[wall].Width/measure.Millimetre))) * measure.Millimetre
			l, err := s.h.Layout(hanging.Choice{Start: hanging.Start{Wall: wall, X: x}, Kill: s.kills[r.IntN(len(s.kills))].kill})
			if err != nil {
				continue
			}
			for i := range l.Seams {
				seam := &l.Seams[i]
				if seam.InCorner || seam.Kind == hanging.KillSeam {
					continue
				}
				left := l.Drops[seam.Left].Parts
				weight := s.judge.onWall(l, seam)
				switch told := s.halves.isQuiet(&left[len(left)-1], &l.Drops[seam.Right].Parts[0]); {
				case told && weight != 0:
					t.Fatalf("room %d: the seam at %v on wall %d weighs %d, and is told to weigh nothing", seed, seam.X, seam.Wall, weight)
				case told:
					quiet++
				case weight == 0:
					missed++
				default:
					heavy++
				}
			}
		}
	}
	t.Logf("%d seams are told to weigh nothing, %d others weigh nothing, %d something", quiet, missed, heavy)
	if quiet < 2*missed || heavy == 0 {
		t.Error("little is told of seams")
	}
}
