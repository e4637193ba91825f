package cutting

import (
	"slices"
	"testing"
	"time"

	"pgregory.net/rapid"

	"firstdrop/measure"
)

// bruteGoals tries every way to put the pieces on rolls.
type bruteGoals struct {
	spec  Spec
	goals []Goal
	left  []map[int]int64 // by kind of roll and set; -1 if the set does not fit
	best  []int64
}

// leftOf is what a set leaves on a roll in its best order at the worst start.
func (b *bruteGoals) leftOf(kind, set int) int64 {
	if v, known := b.left[kind][set]; known {
		return v
	}
	stock := b.spec.Stock[kind]
	order := bruteOrder{spec: b.spec}
	starts := []measure.Length{stock.Start.Phase}
	if b.spec.Repeat > 0 && !stock.Start.Known && stock.Parts == nil {
		starts = starts[:0]
		for x := range b.spec.Repeat {
			starts = append(starts, x)
		}
	}
	worst := measure.Length(0)
	for _, start := range starts {
		worst = max(worst, b.end(bruteStock{b.spec, stock}, set, 0, start))
	}
	v := int64(-1)
	if worst <= 60 {
		v = order.left(stock, worst)
	}
	b.left[kind][set] = v
	return v
}

// end is the earliest end of the set's last cut; beyond 60 if it does not fit.
func (b *bruteGoals) end(q bruteStock, set int, at, start measure.Length) measure.Length {
	least := measure.Length(61)
	for i, p := range b.spec.Pieces {
		if set&(1<<i) == 0 {
			continue
		}
		for from := at; from+p.Length <= 60; from++ {
			if !q.allowed(from, from+p.Length, p.Phase, start) {
				continue
			}
			if rest := set &^ (1 << i); rest == 0 {
				least = min(least, from+p.Length)
			} else {
				least = min(least, b.end(q, rest, from+p.Length+b.spec.Loss, start))
			}
			break
		}
	}
	return least
}

type bruteRoll struct{ kind, set int }

func (b *bruteGoals) from(i, prev int, changes, cost int64, rolls []bruteRoll, used []int) {
	if i == len(b.spec.Pieces) {
		left := int64(0)
		for _, r := range rolls {
			v := b.leftOf(r.kind, r.set)
			if v < 0 {
				return
			}
			left = max(left, v)
		}
		var value []int64
		for _, g := range b.goals {
			value = append(value, [...]int64{cost, -left, changes}[g])
		}
		if b.best == nil || slices.Compare(value, b.best) < 0 {
			b.best = value
		}
		return
	}
	more := func(r int) int64 {
		if prev < 0 || r == prev {
			return changes
		}
		return changes + 1
	}
	for r := range rolls {
		rolls[r].set |= 1 << i
		b.from(i+1, r, more(r), cost, rolls, used)
		rolls[r].set &^= 1 << i
	}
	for k, stock := range b.spec.Stock {
		if stock.Count > 0 && used[k] == stock.Count || b.leftOf(k, 1<<i) < 0 {
			continue
		}
		price := costAfter(b.spec, stock, used[k])
		used[k]++
		b.from(i+1, len(rolls), more(len(rolls)), cost+price, append(rolls, bruteRoll{k, 1 << i}), used)
		used[k]--
	}
}

var goalOrders = []Options{
	{Then: []Goal{LongestLeftover, FewestChanges}},
	{Then: []Goal{FewestChanges, LongestLeftover}},
	{First: FewestChanges, Then: []Goal{LongestLeftover}},
}

// TestBruteForceMixedGoals compares all orders of the goals, with one kind of
// roll and several, with the definition; and each is proven.
func TestBruteForceMixedGoals(t *testing.T) {
	several, differ := 0, 0
	manyTimes(t, func(rt *rapid.T) {
		s := tinySpec(5).Draw(rt, "spec")
		s.Lead = measure.Length(rapid.IntRange(0, 2).Draw(rt, "lead"))
		s.Loss = measure.Length(rapid.IntRange(0, 2).Draw(rt, "loss"))
		s.Stock = rapid.SliceOfN(tinyStock(s.Repeat), 1, 3).Draw(rt, "stock")
		for k := range s.Stock {
			if s.Stock[k].Flaws != nil && (&bruteOrder{spec: s}).left(s.Stock[k], 0) < 0 {
				s.Stock[k].Flaws = nil
			}
		}
		p, err := NewProblem(s)
		if err != nil {
			return // a piece that fits no roll
		}
		if !p.isMixed() {
			s.Stock[0].Pack = 0
			p, _ = NewProblem(s)
		}
		var costs []int64
		for _, o := range goalOrders {
			sol := Solve(p, o)
			for _, err := range sol.Check() {
				rt.Error(err)
			}
			if len(sol.Missing) > 0 {
				return
			}
			b := bruteGoals{spec: s, goals: o.goals()}
			for range s.Stock {
				b.left = append(b.left, map[int]int64{})
			}
			b.from(0, -1, 0, 0, nil, make([]int, len(s.Stock)))
			for k, g := range b.goals {
				want := b.best[k]
				if g == LongestLeftover {
					want = -want
				}
				if got := sol.measure(g); got != want {
					rt.Errorf("%v: goal %v reaches %d, brute force %d", b.goals, g, got, want)
				}
			}
			for _, r := range sol.Goals {
				if !r.Proven {
					rt.Errorf("%v: goal %v is not proven: %d, bound %d", b.goals, r.Goal, r.Value, r.Bound)
				}
			}
			costs = append(costs, sol.Cost)
		}
		if p.isMixed() {
			several++
		}
		if costs[0] != costs[2] {
			differ++
		}
	})
	t.Logf("%d with several kinds of roll; in %d fewer changes cost more", several, differ)
	if !testing.Short() && (several == 0 || differ == 0) {
		t.Error("too tame")
	}
}

// TestMixedGoalsInRooms counts in how many random rooms with rolls in hand each
// goal is proven.
func TestMixedGoalsInRooms(t *testing.T) {
	const rooms = 20
	for _, o := range goalOrders {
		proven := make([]int, 3)
		var times []time.Duration
		for seed := range rooms {
			p := newProblem(t, mixedRoom(70_000+seed))
			begin := time.Now()
			s := Solve(p, o)
			times = append(times, time.Since(begin))
			for _, err := range s.Check() {
				t.Errorf("room %d: %v", seed, err)
			}
			for k, r := range s.Goals {
				if r.Proven {
					proven[k]++
				}
			}
		}
		slices.Sort(times)
		t.Logf("%v, then %v: of %d rooms proven %v; median %v, most %v", o.First, o.Then, rooms, proven, times[rooms/2], times[rooms-1])
		if proven[0] < rooms/2 {
			t.Errorf("%v: the first goal is proven in only %d of %d", o.Then, proven[0], rooms)
		}
	}
}
