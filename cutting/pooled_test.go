package cutting

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// TestPoolOnTinyQuestions lets the pool alone look for plans, for every number
// of rolls from the linear program's up to what brute force needs. No plan may
// need fewer, each must cut every piece from rolls that fit, and as a rule the
// least number is found.
func TestPoolOnTinyQuestions(t *testing.T) {
	asked, best := 0, 0
	manyTimes(t, func(rt *rapid.T) {
		spec := tinySpec(8).Draw(rt, "spec")
		p, err := NewProblem(spec)
		if err != nil {
			rt.Fatal(err)
		}
		want := newBrute(spec).rolls()
		w := newWork(p, DefaultSteps)
		defer w.free()
		w.oneEach()
		w.demandLeft()
		w.begin(p.demand, everyStart)
		w.improve(p.demand, everyStart, math.MaxInt32, false)
		for k := min(w.master.rolls(p.demand), want); k <= want; k++ {
			w.cutPool(k)
		}
		if got := w.best.rolls(); got < want {
			rt.Errorf("%d rolls, brute force needs %d", got, want)
		} else if got == want {
			best++
		}
		asked++
		left := append([]int32(nil), p.demand...)
		for r := range w.best.rolls() {
			for _, j := range w.best.roll(r) {
				left[j]--
			}
			if !w.fits(w.best.roll(r)) {
				rt.Errorf("roll %d does not fit: %v", r, w.best.roll(r))
			}
		}
		for j, n := range left {
			if n != 0 {
				rt.Errorf("%d of kind %d are not cut", n, j)
			}
		}
	})
	t.Logf("asked %d times, the least number %d times", asked, best)
	if best*10 < asked*9 {
		t.Errorf("the least number only %d times of %d", best, asked)
	}
}

// oneEach makes a roll for every piece the best plan.
func (w *work) oneEach() {
	w.best.reset()
	for _, j := range w.p.kindOf {
		w.best.add([]int16{int16(j)})
	}
}

// TestPoolEndsWithItsSteps gives the pool too few steps to get anywhere: the
// plan so far stays, and the limit is as it was.
func TestPoolEndsWithItsSteps(t *testing.T) {
	w := newWork(newProblem(t, anyStart(hotel(50, 10, "half"))), DefaultSteps)
	defer w.free()
	w.greedy()
	before := w.best.rolls()
	w.demandLeft()
	w.begin(w.p.demand, everyStart)
	w.improve(w.p.demand, everyStart, w.best.rolls(), true)
	limit := w.steps + 1
	w.limit = limit
	w.cutPool(w.master.rolls(w.p.demand))
	if w.best.rolls() != before || w.limit != limit {
		t.Errorf("%d rolls, %d before; a limit of %d, %d before", w.best.rolls(), before, w.limit, limit)
	}
}
