package cutting

import (
	"fmt"
	"os"
	"testing"
	"time"

	"firstdrop/measure"
)

// family is a published way of making hard questions of free match: plain bin
// packing. Sizes are whole numbers; here a unit is a nanometre.
type family struct {
	name, source string
	make         func(r *source) Spec
	want         int // known number of rolls; 0 if not
}

// seed is where the family's draws begin.
func (f family) seed() source { return source(uint64(len(f.name)) * 0x9e3779b97f4a7c15) }

func uniform(n, lo, hi, roll int) func(*source) Spec {
	return func(r *source) Spec {
		s := Spec{Roll: Roll{Length: measure.Length(roll)}}
		for range n {
			s.Pieces = append(s.Pieces, Piece{Length: measure.Length(r.in(lo, hi))})
		}
		return s
	}
}

// triplets: each roll of 1000 is cut into three pieces without waste, the
// first of 380 to 490, the second of 250 to half of the rest.
func triplets(n int) func(*source) Spec {
	return func(r *source) Spec {
		s := Spec{Roll: Roll{Length: 1000}}
		for range n / 3 {
			a := r.in(380, 490)
			b := r.in(250, (1000-a)/2)
			for _, l := range []int{a, b, 1000 - a - b} {
				s.Pieces = append(s.Pieces, Piece{Length: measure.Length(l)})
			}
		}
		return s
	}
}

func families() []family {
	const (
		falkenauer = "E. Falkenauer, A hybrid grouping genetic algorithm for bin packing, Journal of Heuristics 2 (1996)"
		schwerin   = "P. Schwerin and G. Wäscher, The bin-packing problem: a problem generator and some numerical experiments with FFD packing and MTP, ITOR 4 (1997)"
		scholl     = "A. Scholl, R. Klein and C. Jürgens, Bison: a fast hybrid procedure for exactly solving the one-dimensional bin packing problem, Computers & OR 24 (1997), set 1"
	)
	var all []family
	for _, n := range []int{120, 250, 500, 1000} {
		all = append(all, family{fmt.Sprintf("uniform %d", n), falkenauer, uniform(n, 20, 100, 150), 0})
	}
	for _, n := range []int{60, 120, 249, 501} {
		all = append(all, family{fmt.Sprintf("triplets %d", n), falkenauer, triplets(n), n / 3})
	}
	for _, n := range []int{100, 120} {
		all = append(all, family{fmt.Sprintf("150 to 200, %d", n), schwerin, uniform(n, 150, 200, 1000), 0})
	}
	for _, n := range []int{50, 100, 200, 500} {
		for _, c := range []int{100, 120, 150} {
			for _, lo := range []int{1, 20, 30} {
				all = append(all, family{fmt.Sprintf("%d of %d to 100 in %d", n, lo, c), scholl, uniform(n, lo, 100, c), 0})
			}
		}
	}
	return all
}

// TestFamilies solves and proves two of each size of each family, or twenty with
// FIRSTDROP_FAMILIES=full, which takes a minute.
func TestFamilies(t *testing.T) {
	each, full := 2, os.Getenv("FIRSTDROP_FAMILIES") == "full"
	if full {
		each = 20
	}
	for _, f := range families() {
		if testing.Short() && f.want > 80 {
			continue // a second each
		}
		r := f.seed()
		proven, slowest := 0, time.Duration(0)
		n := each
		if f.want > 80 && !full {
			n = 1 // a second
		}
		for range n {
			p := newProblem(t, f.make(&r))
			begin := time.Now()
			s := Solve(p, Options{})
			slowest = max(slowest, time.Since(begin))
			for _, err := range s.Check() {
				t.Errorf("%s: %v", f.name, err)
			}
			if s.Proven {
				proven++
			} else {
				t.Errorf("%s: %d rolls, bound %d, known %d, %d kinds", f.name, len(s.Rolls), s.LowerBound, f.want, len(p.Kinds()))
			}
			if f.want > 0 && s.Proven && len(s.Rolls) != f.want {
				t.Errorf("%s: %d rolls, by construction %d", f.name, len(s.Rolls), f.want)
			}
		}
		t.Logf("%s: %d of %d proven, slowest %v (%s)", f.name, proven, n, slowest.Round(time.Microsecond), f.source[:20])
	}
}
