package plan

import (
	"encoding/json"
	"math/rand/v2"
	"testing"

	"firstdrop/hanging"
	"firstdrop/internal/anyroom"
	"firstdrop/measure"
	"firstdrop/paper"
)

// linedTask is some walls of a usual room that are lined under their paper.
func linedTask(r *rand.Rand) *Task {
	task := asking(anyroom.UsualRoom(r), anyroom.UsualPaper(r), 5*measure.Millimetre)
	run := task.Runs[0].Run
	run.Closed, run.Walls = false, run.Walls[:1+r.IntN(len(run.Walls))]
	run.Corners = run.Corners[:len(run.Walls)-1]
	walls := make([]int, len(task.Runs[0].Run.Walls))
	for i := range walls {
		walls[i] = i
	}
	task.Papers = append(task.Papers, paper.Paper{Name: "lining", Width: 560 * mm, RollLength: 20 * measure.Metre, Pack: 1})
	task.Runs = append(task.Runs, RunTask{Run: run, Paper: 1, Over: []Above{{Run: 0, Walls: walls}}})
	return task
}

// A lining that is chosen from those best by themselves weighs what the best weighs that is
// searched with the seams of the paper in mind, and has no seam under one of them.
func TestLiningsWeighWhatSearchedOnesDo(t *testing.T) {
	t.Parallel()
	rooms := 40
	if testing.Short() {
		rooms = 8
	}
	chosen, equals := 0, 0
	for seed := range rooms {
		task := linedTask(rand.New(rand.NewPCG(uint64(seed), 53)))
		p := &Plan{Task: task, Runs: make([]RunPlan, 2), Papers: make([]PaperPlan, 2)}
		if _, err := p.layOut(0); err != nil {
			t.Fatal(seed, err)
		}
		got, ok := p.lined(1, nil)
		if !ok {
			continue
		}
		chosen++
		equals += len(p.linedAlone(1, nil).equals)
		want, err := p.laidAs(1, nil)
		if err != nil {
			t.Fatal(seed, err)
		}
		if got.total() != want.total() {
			t.Errorf("room %d: the lining weighs %d, the one searched %d", seed, got.total(), want.total())
		}
		if total, err := got.s.total(&candidate{layout: got.best.layout, score: got.s.judge.score(got.best.layout, &got.best.kill) + got.s.judge.pieces(got.best.layout)}); err != nil || total != got.best.score {
			t.Errorf("room %d: with the paper's seams the lining weighs %d, and is said to weigh %d (%v)", seed, total, got.best.score, err)
		}
		if !isClearOf(got.best.layout, p.seamsOver(&task.Runs[1])) {
			t.Errorf("room %d: a seam of the lining stands under one of the paper", seed)
		}
	}
	t.Logf("%d of %d linings are chosen so, of %d layouts", chosen, rooms, equals)
	if 5*chosen < rooms || equals < 5*chosen {
		t.Error("few linings are chosen so")
	}
}

// While the start of the paper is dragged, and that of the lining, a session lines the room as
// from scratch.
func TestSessionLinesAsFromScratch(t *testing.T) {
	t.Parallel()
	for seed := range 3 {
		task, s := linedTask(rand.New(rand.NewPCG(uint64(seed), 59))), NewSession()
		for _, step := range []struct {
			run int
			x   measure.Length
		}{{0, 300}, {0, 301}, {0, 340}, {1, 200}, {1, 250}, {0, 341}} {
			moved := *task
			moved.Runs = append([]RunTask(nil), task.Runs...)
			moved.Runs[step.run].Fixed.Start = &hanging.Start{X: step.x * mm}
			got, err := s.Plan(&moved)
			if err != nil {
				t.Fatal(err)
			}
			want, err := Make(&moved)
			if err != nil {
				t.Fatal(err)
			}
			a, _ := json.Marshal(got.Document("job"))
			b, _ := json.Marshal(want.Document("job"))
			if string(a) != string(b) {
				t.Errorf("room %d: run %d from %d mm: the session plans otherwise than from scratch", seed, step.run, step.x)
			}
		}
	}
}
