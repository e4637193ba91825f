package cutting

import (
	"bufio"
	"os"
	"strconv"
	"strings"
	"testing"

	"firstdrop/measure"
)

// TestGarfinkelChain cuts the six sheets of H. A. Taha, Operations Research:
// An Introduction, problem 11-13 (after R. S. Garfinkel, Operations Research
// 25(5), 1977), from one long roll. The unit is one repeat. There is no roll
// count here; what must come out is the shortest length used. Exhaustion over
// all 720 orders gives 1.410 repeats of waste, so 38.000 repeats of roll with
// the tail up to a whole repeat, in exactly four orders.
func TestGarfinkelChain(t *testing.T) {
	const repeat = 1000 * mm
	spec := Spec{Repeat: repeat, Roll: Roll{60 * repeat, StartAt(0)}, Pieces: sheets(t)}
	s := solve(t, spec)
	if len(s.Rolls) != 1 {
		t.Fatalf("%d rolls", len(s.Rolls))
	}
	cuts := s.Rolls[0].Orders[0].Cuts
	used := cuts[len(cuts)-1].To.CeilTo(repeat)
	if used != 38*repeat {
		t.Errorf("used %d thousandths of a repeat, want 38000", used/mm)
	}
	total := measure.Length(0)
	order := ""
	for _, c := range cuts {
		total += spec.Pieces[c.Piece].Length
		order += strconv.Itoa(c.Piece + 1)
	}
	if waste := used - total; waste != 1410*mm {
		t.Errorf("waste %d thousandths, want 1410", waste/mm)
	}
	optimal := map[string]bool{"143526": true, "145263": true, "526143": true, "526314": true}
	if !optimal[order] {
		t.Errorf("order %s is not among the optimal ones", order)
	}
	// And nothing beyond the four: the waste of every order, from the definition.
	n := 0
	permute([]int{0, 1, 2, 3, 4, 5}, 0, func(p []int) {
		at, key := measure.Length(0), ""
		for _, i := range p {
			at += (spec.Pieces[i].Phase - at).Mod(repeat) + spec.Pieces[i].Length
			key += strconv.Itoa(i + 1)
		}
		if at.CeilTo(repeat) < used {
			t.Errorf("order %s uses only %d", key, at.CeilTo(repeat)/mm)
		}
		if optimal[key] != (at.CeilTo(repeat) == used) {
			t.Errorf("order %s uses %d", key, at.CeilTo(repeat)/mm)
		}
		n++
	})
	if n != 720 {
		t.Errorf("looked at %d orders", n)
	}
}

// TestChainFromAnyStart does the same for a roll of unknown start: it may lose
// less than one repeat more than a whole round, and one order serves all.
func TestChainFromAnyStart(t *testing.T) {
	const repeat = 1000 * mm
	spec := Spec{Repeat: repeat, Roll: Roll{60 * repeat, AnyStart}, Pieces: sheets(t)}
	if s := solve(t, spec); len(s.Rolls) != 1 || len(s.Rolls[0].Orders) != 1 {
		t.Errorf("got %+v", s.Rolls)
	}
}

func sheets(t *testing.T) []Piece {
	t.Helper()
	f, err := os.Open("testdata/garfinkel_chain.txt")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	thousandths := func(s string) measure.Length {
		x, err := strconv.ParseFloat(s, 64)
		if err != nil {
			t.Fatal(err)
		}
		return measure.Length(x*1000+0.5) * mm
	}
	var pieces []Piece
	for sc := bufio.NewScanner(f); sc.Scan(); {
		field := strings.Fields(sc.Text())
		if len(field) == 3 && field[0] != "#" {
			pieces = append(pieces, Piece{Phase: thousandths(field[1]), Length: thousandths(field[2])})
		}
	}
	if len(pieces) != 6 {
		t.Fatalf("%d sheets", len(pieces))
	}
	return pieces
}

func permute(p []int, k int, visit func([]int)) {
	if k == len(p) {
		visit(p)
		return
	}
	for i := k; i < len(p); i++ {
		p[k], p[i] = p[i], p[k]
		permute(p, k+1, visit)
		p[k], p[i] = p[i], p[k]
	}
}
