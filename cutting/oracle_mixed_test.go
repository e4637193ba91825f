package cutting

import (
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"
)

// mixedRoom adds stock to a random room: long and short new rolls at prices
// that make neither always better, and up to four left-overs in hand, some
// with flaws or in two parts. All invented. Starts are known.
func mixedRoom(seed int) Spec {
	s := randomRoom(seed)
	r := source(uint64(seed)*0x9e3779b9 + 77)
	start := func() Start { return StartAt(r.mm(0, 914).Mod(s.Repeat)) }
	s.Stock = []Stock{
		{Roll: Roll{10_050 * mm, start()}, Price: int64(r.in(40, 60))},
		{Roll: Roll{5_030 * mm, start()}, Price: int64(r.in(20, 32)), Count: r.in(0, 5)},
	}
	for range r.in(0, 4) {
		left := Stock{Roll: Roll{r.mm(3600, 9000), start()}, InHand: true, Count: 1}
		switch r.in(1, 3) {
		case 1:
			at := r.mm(500, 3000)
			left.Flaws = []Flaw{{at, at + r.mm(5, 90)}}
		case 2:
			left.Parts = []Roll{{r.mm(500, 4000), start()}, {left.Length, left.Start}}
			left.Roll = Roll{}
		}
		s.Stock = append(s.Stock, left)
	}
	s.Lead, s.Loss = r.mm(0, 20), r.mm(0, 3)
	s.Stock[0].Pack, s.Stock[1].Pack = r.in(0, 3), r.in(0, 2)
	return s
}

// unopenedRoom adds stock that nobody has opened to a random room: long new
// rolls, in most rooms short ones too, and up to three kinds of left-overs, of
// which some have been opened. All invented.
func unopenedRoom(seed int) Spec {
	s := anyStart(randomRoom(seed))
	r := source(uint64(seed)*0x9e3779b9 + 78)
	s.Stock = []Stock{{Roll: Roll{10_050 * mm, AnyStart}, Price: int64(r.in(40, 60))}}
	if short := r.in(0, 3); short > 0 {
		s.Stock = append(s.Stock, Stock{Roll: Roll{r.mm(5_000, 8_000), AnyStart}, Price: int64(r.in(20, 45)), Count: r.in(0, 4)})
	}
	for range r.in(1, 3) {
		left := Stock{Roll: Roll{r.mm(3600, 9000), AnyStart}, InHand: true, Count: r.in(1, 2)}
		if r.in(0, 3) == 0 {
			left.Start = StartAt(r.mm(0, 914).Mod(s.Repeat))
		}
		s.Stock = append(s.Stock, left)
	}
	return s
}

// TestSolversAgreeMixed compares the cost on rooms with several kinds of roll.
func TestSolversAgreeMixed(t *testing.T) {
	rooms := 4
	if os.Getenv("FIRSTDROP_ORACLE") == "full" {
		rooms = 250
	}
	agreeMixed(t, rooms, func(i int) (Spec, *model) {
		s := mixedRoom(9000 + i)
		return s, arcFlow(s)
	})
}

// TestSolversAgreeUnopened does so where the starts are not known.
func TestSolversAgreeUnopened(t *testing.T) {
	rooms := 30
	if os.Getenv("FIRSTDROP_ORACLE") == "full" {
		rooms = 250
	}
	agreeMixed(t, rooms, func(i int) (Spec, *model) {
		s := unopenedRoom(11_000 + i)
		m := setCover(s)
		if m == nil || len(m.ints) > arcsInATest {
			return s, nil
		}
		return s, m
	})
}

func agreeMixed(t *testing.T, rooms int, room func(i int) (Spec, *model)) {
	all, seconds := solvers(t), "2"
	if os.Getenv("FIRSTDROP_ORACLE") == "full" {
		seconds = "20"
	}
	dir := t.TempDir()
	finished, proven := 0, 0
	var times []time.Duration
	for i := range rooms {
		spec, m := room(i)
		p := newProblem(t, spec)
		begin := time.Now()
		s := Solve(p, Options{})
		times = append(times, time.Since(begin))
		for _, err := range s.Check() {
			t.Errorf("room %d: %v", i, err)
		}
		if s.Proven {
			proven++
		}
		file := filepath.Join(dir, "room.lp")
		if m == nil {
			continue // too large
		}
		if err := m.writeTo(file); err != nil {
			t.Fatal(err)
		}
		with := all[i%len(all)]
		want, ok, err := with.run(file, filepath.Join(dir, "room.out"), seconds)
		if err != nil {
			t.Fatalf("room %d: %s: %v", i, with.name, err)
		}
		if !ok {
			continue
		}
		finished++
		if s.Proven && int64(want) != s.Cost || int64(want) > s.Cost || int64(want) < s.CostBound {
			t.Errorf("room %d: cost %d, bound %d, %s says %d", i, s.Cost, s.CostBound, with.name, want)
		}
	}
	slices.Sort(times)
	t.Logf("%d of %d rooms finished by the solvers, %d proven here; median %v, most %v", finished, rooms, proven, times[rooms/2], times[rooms-1])
	if proven*100 < rooms*75 {
		t.Errorf("only %d of %d rooms proven", proven, rooms)
	}
}
