package cutting

import (
	"errors"
	"fmt"
	"os"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"firstdrop/measure"
)

// bruteOrder knows only the definition: rolls one after the other, each with
// consecutive pieces in their order, at every start.
type bruteOrder struct {
	spec  Spec
	goals []Goal
	dear  int64
	best  []int64 // per goal, less is better; after the pieces left out
	known map[[3]int]measure.Length
}

// used is use, reckoned once; -1 if there is no room.
func (b *bruteOrder) used(kind, i, end int) measure.Length {
	key := [3]int{kind, i, end}
	to, known := b.known[key]
	if !known {
		var ok bool
		if to, ok = b.use(b.spec.Stock[kind], i, end); !ok {
			to = -1
		}
		b.known[key] = to
	}
	return to
}

// use is the length a roll uses for the pieces [i, end) in their order, at the
// worst start; false if it has no room for them.
func (b *bruteOrder) use(stock Stock, i, end int) (measure.Length, bool) {
	q := bruteStock{b.spec, stock}
	most := measure.Length(0)
	starts := []measure.Length{stock.Start.Phase}
	if b.spec.Repeat > 0 && !stock.Start.Known && stock.Parts == nil {
		starts = starts[:0]
		for x := range b.spec.Repeat {
			starts = append(starts, x)
		}
	}
	for _, start := range starts {
		at, to := measure.Length(0), measure.Length(0)
		for _, p := range b.spec.Pieces[i:end] {
			from := at
			for !q.allowed(from, from+p.Length, p.Phase, start) {
				if from++; from > 60 {
					return 0, false
				}
			}
			to = from + p.Length
			at = to + b.spec.Loss
		}
		most = max(most, to)
	}
	return most, true
}

// left is what is left behind position to, in one piece at the end.
func (b *bruteOrder) left(stock Stock, to measure.Length) int64 {
	end, from := stock.Total(), to
	if len(stock.Parts) > 0 {
		from = max(from, end-stock.Parts[len(stock.Parts)-1].Length+b.spec.Lead)
	}
	for _, f := range stock.Flaws {
		if f.From < end {
			from = max(from, min(f.To, end))
		}
		if f.From < end && f.To >= end {
			return -1 // a flaw at the very end: what hangs together there lies before it
		}
	}
	return int64(end - from)
}

// from tries all ways to go on from piece i.
func (b *bruteOrder) from(i, rolls, missing int, used []int, cost, left int64) {
	if i == len(b.spec.Pieces) {
		value := []int64{int64(missing)}
		for _, g := range b.goals {
			value = append(value, [...]int64{cost + int64(missing)*b.dear, -left, int64(rolls - 1)}[g])
		}
		if b.best == nil || slices.Compare(value, b.best) < 0 {
			b.best = value
		}
		return
	}
	b.from(i+1, rolls, missing+1, used, cost, left)
	for k, stock := range b.spec.Stock {
		if stock.Count > 0 && used[k] == stock.Count {
			continue
		}
		more := costAfter(b.spec, stock, used[k])
		used[k]++
		for end := i + 1; end <= len(b.spec.Pieces); end++ {
			to := b.used(k, i, end)
			if to < 0 {
				break
			}
			b.from(end, rolls+1, missing, used, cost+more, max(left, b.left(stock, to)))
		}
		used[k]--
	}
}

// TestBruteForceInOrder compares cutting in order, with all goals, with the
// definition.
func TestBruteForceInOrder(t *testing.T) {
	one, several, left, differ := 0, 0, 0, 0
	manyTimes(t, func(rt *rapid.T) {
		s := tinySpec(5).Draw(rt, "spec")
		s.InOrder, s.Roll = true, Roll{}
		s.Lead = measure.Length(rapid.IntRange(0, 2).Draw(rt, "lead"))
		s.Loss = measure.Length(rapid.IntRange(0, 2).Draw(rt, "loss"))
		s.Stock = rapid.SliceOfN(tinyStock(s.Repeat), 1, 3).Draw(rt, "stock")
		o := Options{Then: rapid.SliceOfN(rapid.SampledFrom([]Goal{FewestRolls, LongestLeftover, FewestChanges}), 0, 3).Draw(rt, "then")}
		if rapid.Bool().Draw(rt, "changes first") {
			o.First = FewestChanges
		}
		p, err := NewProblem(s)
		if err != nil {
			return // a piece that fits no roll
		}
		sol := Solve(p, o)
		for _, err := range sol.Check() {
			rt.Error(err)
		}
		b := bruteOrder{spec: s, goals: o.goals(), known: map[[3]int]measure.Length{}}
		w := newWork(p, 1)
		w.mixed.price(p)
		b.dear = w.mixed.dear
		for _, flawed := range s.Stock {
			if flawed.Flaws != nil && b.left(flawed, 0) < 0 {
				return
			}
		}
		if !p.isMixed() {
			s.Stock[0].Pack = 1 // fewest rolls first
			b.spec.Stock[0].Pack = 1
			one++
		} else {
			several++
		}
		b.from(0, 0, 0, make([]int, len(s.Stock)), 0, 0)
		left += len(sol.Missing)
		if int64(len(sol.Missing)) != b.best[0] {
			rt.Fatalf("%d pieces missing, brute force %d", len(sol.Missing), b.best[0])
		}
		for k, g := range b.goals {
			want := b.best[k+1]
			switch {
			case g == LongestLeftover:
				want = -want
			case g == FewestChanges:
				want = max(want, 0)
			case !p.isMixed():
				want = p.costOfRolls(int(want / cost(s, s.Stock[0])))
			}
			if got := sol.measure(g); got != want {
				rt.Errorf("%v: goal %v reaches %d, brute force %d", b.goals, g, got, want)
			}
		}
		if o.First == FewestRolls && !sol.Proven {
			rt.Errorf("not proven: cost %d, bound %d", sol.Cost, sol.CostBound)
		} else if !sol.Proven {
			differ++
		}
		for _, r := range sol.Goals {
			if !r.Proven {
				rt.Errorf("goal %v not proven", r.Goal)
			}
		}
	})
	t.Logf("%d of one kind of roll, %d of several, %d pieces left out; %d dearer for fewer changes", one, several, left, differ)
	if !testing.Short() && (one == 0 || several == 0 || left == 0 || differ == 0) {
		t.Error("too tame")
	}
}

// leastInOrder is the least cost of cutting pieces from number i on in order,
// given the rolls used: all ways, with the steps of firstEnd.
func leastInOrder(s Spec, i int, used []int, known map[string]int64) int64 {
	if i == len(s.Pieces) {
		return 0
	}
	key := fmt.Sprint(i, used)
	if v, ok := known[key]; ok {
		return v
	}
	least := int64(1 << 40)
	for k, stock := range s.Stock {
		if stock.Count > 0 && used[k] == stock.Count {
			continue
		}
		price := costAfter(s, stock, used[k])
		used[k]++
		at := measure.Length(0)
		for end := i; end < len(s.Pieces); {
			to, ok := firstEnd(s, stock, at, s.Pieces[end])
			if !ok {
				break
			}
			at = to
			end++
			least = min(least, price+leastInOrder(s, end, used, known))
		}
		used[k]--
	}
	known[key] = least
	return least
}

// TestInOrderRooms compares rooms with several kinds of roll, flaws, parts and
// packs with all ways of cutting in order.
func TestInOrderRooms(t *testing.T) {
	rooms := 15
	if os.Getenv("FIRSTDROP_ORACLE") == "full" {
		rooms = 1000
	}
	for seed := range rooms {
		s := mixedRoom(80_000 + seed)
		s.InOrder = true
		p := newProblem(t, s)
		sol := Solve(p, Options{Then: []Goal{LongestLeftover, FewestChanges}})
		for _, err := range sol.Check() {
			t.Errorf("room %d: %v", seed, err)
		}
		want := leastInOrder(s, 0, make([]int, len(s.Stock)), map[string]int64{})
		if sol.Cost != want || !sol.Proven || sol.Certificate.ByOrder != want {
			t.Errorf("room %d: cost %d, bound %d; all ways: %d", seed, sol.Cost, sol.CostBound, want)
		}
		if free := Solve(newProblem(t, mixedRoom(80_000+seed)), Options{}); free.Proven && free.Cost > want {
			t.Errorf("room %d: %d in any order, %d in order", seed, free.Cost, want)
		}
	}
}

// TestInOrderHotel cuts thousands of pieces in order, and its breaks bound it.
func TestInOrderHotel(t *testing.T) {
	s := randomRoom(5)
	for len(s.Pieces) < 5000 {
		s.Pieces = append(s.Pieces, s.Pieces[:min(len(s.Pieces), 5000-len(s.Pieces))]...)
	}
	s.InOrder = true
	for _, spec := range []Spec{s, anyStart(s)} {
		p := newProblem(t, spec)
		sol := Solve(p, Options{Then: []Goal{LongestLeftover}})
		for _, err := range sol.Check() {
			t.Error(err)
		}
		if !sol.Proven || len(sol.Certificate.Breaks) != len(sol.Rolls) || !sol.Goals[0].Proven {
			t.Errorf("%d rolls, bound %d", len(sol.Rolls), sol.LowerBound)
		}
		if q, b := QuickRolls(p), LowerBound(p); q != len(sol.Rolls) || b != q {
			t.Errorf("quick %d, bound %d, rolls %d", q, b, len(sol.Rolls))
		}
		sol.Certificate.Breaks[1]--
		if len(sol.Check()) == 0 {
			t.Error("a wrong break passes")
		}
	}
}

// TestInOrderBeyondCounting: with more nodes than are looked at there is still
// a plan, and no claim too many.
func TestInOrderBeyondCounting(t *testing.T) {
	s := mixedRoom(3)
	s.InOrder = true
	r := source(9)
	for range 24 {
		s.Stock = append(s.Stock, Stock{Roll: Roll{r.mm(3600, 9000), StartAt(0)}, Count: 1, InHand: true})
	}
	sol := Solve(newProblem(t, s), Options{Then: []Goal{LongestLeftover, FewestChanges}})
	for _, err := range sol.Check() {
		t.Error(err)
	}
	t.Logf("cost %d, bound %d, %v", sol.Cost, sol.CostBound, sol.Goals)
}

func TestOptionErrors(t *testing.T) {
	var e *OptionError
	if err := (Options{First: LongestLeftover}).Check(); !errors.As(err, &e) || e.Field != "First" {
		t.Errorf("got %v", err)
	}
	if err := (Options{Then: []Goal{FewestRolls, 7}}).Check(); !errors.As(err, &e) || e.Field != "Then[1]" {
		t.Errorf("got %v", err)
	}
	if err := (Options{First: FewestChanges, Then: []Goal{LongestLeftover}}).Check(); err != nil {
		t.Error(err)
	}
	p := newProblem(t, randomRoom(1))
	for _, o := range []Options{{First: LongestLeftover}, {First: -3, Then: []Goal{9}}} {
		if s := Solve(p, o); len(s.Check()) > 0 || len(s.Goals) > 0 {
			t.Errorf("%+v: %v", o, s.Check())
		}
	}
}
