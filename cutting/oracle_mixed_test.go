package cutting

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"testing"
	"time"

	"firstdrop/measure"
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

// mixedFlow is the arc flow of oracle_test.go with a graph of its own for each
// kind of roll and its price on the packs, as many as the arcs that leave the
// beginning need.
func mixedFlow(s Spec) *model {
	kinds, count := testKinds(s)
	m := &model{}
	byKind := make([][]string, len(kinds))
	for b, stock := range s.Stock {
		var begin []string
		node := map[measure.Length]int{0: 0}
		in, out := [][]string{nil}, [][]string{nil}
		for queue := []measure.Length{0}; len(queue) > 0; queue = queue[1:] {
			for j, k := range kinds {
				end, ok := firstEnd(s, stock, queue[0], k)
				if !ok {
					continue
				}
				if _, seen := node[end]; !seen {
					node[end] = len(node)
					in, out = append(in, nil), append(out, nil)
					queue = append(queue, end)
				}
				from, to := node[queue[0]], node[end]
				name := fmt.Sprintf("x%d_%d_%d", b, from, j)
				m.ints = append(m.ints, name)
				in[to], out[from] = append(in[to], "+ "+name), append(out[from], "- "+name)
				byKind[j] = append(byKind[j], "+ "+name)
				if from == 0 {
					begin = append(begin, "- "+name)
				}
			}
		}
		for v := 1; v < len(node); v++ {
			if len(out[v]) > 0 {
				m.rows, m.rhs = append(m.rows, slices.Concat(in[v], out[v])), append(m.rhs, 0)
			}
		}
		if begin == nil {
			continue
		}
		if stock.Count > 0 {
			m.rows, m.rhs = append(m.rows, begin), append(m.rhs, -stock.Count)
		}
		packs := fmt.Sprintf("y%d", b)
		m.ints = append(m.ints, packs)
		m.cost = append(m.cost, strconv.FormatInt(cost(s, stock), 10)+" "+packs)
		m.rows = append(m.rows, append(slices.Clone(begin), fmt.Sprintf("+ %d %s", max(stock.Pack, 1), packs)))
		m.rhs = append(m.rhs, 0)
	}
	for j := range kinds {
		m.rows, m.rhs = append(m.rows, byKind[j]), append(m.rhs, count[j])
	}
	return m
}

// firstEnd is where a piece ends, with the loss at its cut, that is cut as
// early as possible at or after a position: from part to part and from flaw to
// flaw, repeat by repeat.
func firstEnd(s Spec, stock Stock, at measure.Length, k Piece) (measure.Length, bool) {
	parts := stock.Parts
	if parts == nil {
		parts = []Roll{stock.Roll}
	}
	base := measure.Length(0)
	for _, part := range parts {
		from := max(at, base+s.Lead)
	next:
		for {
			from += (k.Phase - part.Start.Phase - (from - base)).Mod(s.Repeat)
			if from+k.Length > base+part.Length {
				break
			}
			for _, f := range stock.Flaws {
				if from < f.To && f.From < from+k.Length {
					from = f.To
					continue next
				}
			}
			return from + k.Length + s.Loss, true
		}
		base += part.Length
	}
	return 0, false
}

// TestSolversAgreeMixed compares the cost on rooms with several kinds of roll.
func TestSolversAgreeMixed(t *testing.T) {
	all := solvers(t)
	rooms, seconds := 4, "2"
	if os.Getenv("FIRSTDROP_ORACLE") == "full" {
		rooms, seconds = 100, "20"
	}
	dir := t.TempDir()
	finished, proven := 0, 0
	var times []time.Duration
	for i := range rooms {
		spec := mixedRoom(9000 + i)
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
		if err := mixedFlow(spec).writeTo(file); err != nil {
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
