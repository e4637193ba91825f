package plan

import (
	"math/rand/v2"
	"os"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/internal/anyroom"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/room"
)

// The reference does nothing clever: it lays out in full, and cuts from rolls,
// every start on every wall with every kill place, a kill seam on a wall at every
// step, with no new drop and with one in every corner, and in small rooms two.
// The search must find nothing worse. FIRSTDROP_ORACLE=full asks more rooms, on a
// finer grid.

// reference is the slow search of one run.
type reference struct {
	s     *search
	new   int
	limit int64 // what cannot be better than that need not be cut
	best  int64
	at    hanging.Choice
	n     int
}

// run tries everything.
func (r *reference) run() {
	run := r.s.run.Run
	kills := killPlaces(run, r.s.run.Fixed.Kill)
	w := r.s.task.Papers[r.s.run.Paper].Width
	for _, line := range r.s.lines() {
		for x := line.from; x < line.to; x += line.step {
			// All starts with the same seams: they differ where the kill seam is on
			// this wall, and the search knows which of them do.
			for at := x.Mod(w) - w; at < run.Walls[line.wall].Width; at += w {
				for k := range kills {
					r.kill(hanging.Start{Wall: line.wall, X: at}, kills[k])
				}
			}
		}
	}
}

// kill tries one start with one kill place.
func (r *reference) kill(start hanging.Start, k killPlace) {
	r.with(hanging.Choice{Start: start, Kill: k.kill}, k, 0)
	for x := k.span.Lo + r.s.step; x < k.span.Hi; x += r.s.step {
		k.kill.X = x
		r.with(hanging.Choice{Start: start, Kill: k.kill}, k, 0)
	}
}

// with tries a choice, and the same with new drops in corners from one on.
func (r *reference) with(c hanging.Choice, k killPlace, from int) {
	n := candidate{choice: c, kill: k}
	r.n++
	if r.s.layOut(&n); n.layout == nil {
		return
	}
	least := r.s.leastTotal(&n)
	if r.limit == 0 || least < r.limit {
		if total, err := r.s.total(&n); err == nil && (r.best == 0 || total < r.best) {
			r.best, r.at = total, n.choice
		}
	}
	if len(c.NewDrop) == r.new {
		return
	}
	for corner := from; corner < len(r.s.run.Run.Corners); corner++ {
		if mayRenew(r.s.run.Run, &c, corner) {
			next := c
			next.NewDrop = append(slices.Clone(c.NewDrop), corner)
			r.with(next, k, corner+1)
		}
	}
}

// searched returns a search for the first run of a task.
func searched(t *testing.T, task *Task) *search {
	t.Helper()
	p := &Plan{Task: task, Runs: make([]RunPlan, len(task.Runs)), Papers: make([]PaperPlan, len(task.Papers))}
	s, err := p.search(0, nil, false)
	if err != nil {
		t.Skip(err)
	}
	return s
}

// asking is a task for one run.
func asking(run *room.Run, p paper.Paper, step measure.Length) *Task {
	return &Task{
		Runs: []RunTask{{Run: run}}, Papers: []paper.Paper{p},
		Rules: hanging.DefaultRules(), Taste: DefaultTaste(), Step: step,
	}
}

func TestNoChoiceIsBetter(t *testing.T) {
	t.Parallel()
	type ask struct {
		run   *room.Run
		paper *paper.Paper
	}
	drawn := rapid.Custom(func(t *rapid.T) ask { return ask{anyroom.SmallRun(t), anyroom.Paper(t)} })
	rooms, step := 200, 410*measure.Millimetre
	if os.Getenv("FIRSTDROP_ORACLE") == "full" {
		rooms, step = 2000, 37*measure.Millimetre
	}
	if testing.Short() {
		rooms = 20
	}
	proven, tried := 0, 0
	for seed := range rooms {
		q := drawn.Example(seed)
		task := asking(q.run, *q.paper, step)
		s := searched(t, task)
		got, err := s.find()
		r := reference{s: searched(t, task), new: 1, limit: got.score}
		if len(q.run.Walls) < 3 {
			r.new = 2
		}
		r.run()
		tried += r.n
		if err != nil {
			if r.best != 0 {
				t.Errorf("room %d: %v, but %+v weighs %d", seed, err, r.at, r.best)
			}
			continue
		}
		if s.proven {
			proven++
		}
		if r.best != 0 && got.score > r.best {
			t.Errorf("room %d: the search finds %d (%+v, proven %v), the reference %d (%+v)", seed, got.score, got.choice, s.proven, r.best, r.at)
		}
	}
	t.Logf("%d rooms, %d proven, %d layouts tried by the reference", rooms, proven, tried)
	if proven < rooms*9/10 {
		t.Errorf("only %d of %d rooms are settled", proven, rooms)
	}
}

// The same where drops are hung by their ceilings and motifs are cut or not as they hang.
func TestNoChoiceIsBetterUnderTheCeiling(t *testing.T) {
	t.Parallel()
	rooms := 60
	if testing.Short() {
		rooms = 10
	}
	r := rand.New(rand.NewPCG(21, 34))
	proven, lifted := 0, 0
	for n := range rooms {
		p := rows(640 * measure.Millimetre)
		p.Lines = paper.LinesIsolated
		p.Match = []paper.Match{{Kind: paper.Straight}, {Kind: paper.Offset, Num: 1, Den: 2}}[r.IntN(2)]
		p.Motif = &paper.Motif{Axis: 265 * measure.Millimetre, Head: 50 * measure.Millimetre, Tall: measure.Length(300+r.IntN(330)) * measure.Millimetre}
		task := asking(anyCrooked(r), p, 37*measure.Millimetre)
		s := searched(t, task)
		got, err := s.find()
		if err != nil {
			t.Fatal(n, err)
		}
		if s.judge.level != nil {
			lifted++
		}
		if s.proven {
			proven++
		}
		ref := reference{s: searched(t, task), new: 1, limit: got.score}
		ref.run()
		if ref.best != 0 && got.score > ref.best {
			t.Errorf("room %d: the search finds %d (%+v, proven %v), the reference %d (%+v)", n, got.score, got.choice, s.proven, ref.best, ref.at)
		}
	}
	if proven < rooms*9/10 || lifted < rooms/2 {
		t.Errorf("%d of %d rooms proven, drops moved in %d", proven, rooms, lifted)
	}
}

// The same where no seam may stand over the middle of an opening, but may beside it.
func TestNoChoiceIsBetterBesideWhatIsKeptOff(t *testing.T) {
	t.Parallel()
	found := 0
	for n := range 12 {
		r := rand.New(rand.NewPCG(uint64(n), 47))
		task := griddedTask(r, 3, 106*measure.Millimetre)
		rt := &task.Runs[0]
		for i := range rt.Run.Walls {
			for k := range rt.Run.Walls[i].Openings {
				x, _ := rt.Run.Walls[i].Openings[k].Outline.Bounds()
				rt.Fixed.KeepOff = append(rt.Fixed.KeepOff, WallStretch{Wall: i, X: geom.Interval{Lo: x.Lo + x.Length()/4, Hi: x.Hi - x.Length()/4}})
			}
		}
		got, err := searched(t, task).find()
		ref := reference{s: searched(t, task), new: 1, limit: got.score}
		ref.run()
		if ref.best != 0 && got.score > ref.best {
			t.Errorf("room %d: the search finds %d (%+v, %v), the reference %d (%+v)", n, got.score, got.choice, err, ref.best, ref.at)
		}
		if err == nil {
			found++
		}
	}
	if found < 4 {
		t.Errorf("only %d of 12 rooms have a layout that keeps to what is fixed", found)
	}
}
