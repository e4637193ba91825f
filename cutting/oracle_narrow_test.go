package cutting

import (
	"fmt"
	"path/filepath"
	"slices"
	"testing"

	"firstdrop/measure"
)

// narrowFlow is the arc flow of oracle_test.go with an arc for every set of
// narrow pieces that can lie side by side: it leads from where a strip may
// begin to where the last of its pieces ends, each cut as early as its phase
// allows. Nothing is said of the strip's own phase and length.
func narrowFlow(s NarrowSpec) *model {
	m := &model{}
	sets := narrowSets(s)
	start := s.Roll.Start.Phase.Mod(s.Repeat)
	node := map[measure.Length]int{start: 0}
	out, in := [][]string{nil}, [][]string{nil}
	byPiece := make([][]string, len(s.Pieces)+len(s.Narrow))
	for queue := []measure.Length{start}; len(queue) > 0; queue = queue[1:] {
		x := queue[0]
		for j, set := range sets {
			end := x
			for _, i := range set {
				p := pieceOf(s, i)
				end = max(end, x+(p.Phase-x).Mod(s.Repeat)+p.Length)
			}
			if end > start+s.Roll.Length {
				continue
			}
			if _, seen := node[end]; !seen {
				node[end] = len(node)
				queue = append(queue, end)
				out, in = append(out, nil), append(in, nil)
			}
			name := fmt.Sprintf("x%d_%d", node[x], j)
			m.ints = append(m.ints, name)
			out[node[x]] = append(out[node[x]], "- "+name)
			in[node[end]] = append(in[node[end]], "+ "+name)
			for _, i := range set {
				byPiece[i] = append(byPiece[i], "+ "+name)
			}
			if x == start {
				m.cost = append(m.cost, name)
			}
		}
	}
	for _, row := range byPiece {
		m.rows, m.rhs = append(m.rows, row), append(m.rhs, 1)
	}
	for v := 1; v < len(node); v++ {
		if len(out[v]) > 0 {
			m.rows, m.rhs = append(m.rows, slices.Concat(in[v], out[v])), append(m.rhs, 0)
		}
	}
	return m
}

func pieceOf(s NarrowSpec, i int) Piece {
	if i < len(s.Pieces) {
		return s.Pieces[i]
	}
	return s.Narrow[i-len(s.Pieces)].Piece
}

// narrowSets lists each full width by itself and every set of narrow pieces
// that can lie side by side.
func narrowSets(s NarrowSpec) [][]int {
	var sets [][]int
	for i := range s.Pieces {
		sets = append(sets, []int{i})
	}
	for bits := 1; bits < 1<<len(s.Narrow); bits++ {
		var group, set []int
		ok := true
		for i := range s.Narrow {
			if bits>>i&1 == 1 {
				ok = ok && apart(s, group, i)
				group, set = append(group, i), append(set, len(s.Pieces)+i)
			}
		}
		if ok {
			sets = append(sets, set)
		}
	}
	return sets
}

// TestSolversAgreeNarrow compares the counts on rooms with some narrow pieces.
func TestSolversAgreeNarrow(t *testing.T) {
	all := solvers(t)
	dir := t.TempDir()
	compared, saved := 0, 0
	for seed := range 60 {
		spec := narrowRoom(40_000+seed, 6)
		spec.Pieces = spec.Pieces[:min(len(spec.Pieces), 10)]
		m := narrowFlow(spec)
		if len(m.ints) > 2*arcsInATest || compared == 10 {
			continue
		}
		s := sideBySide(t, spec)
		file := filepath.Join(dir, "room.lp")
		if err := m.writeTo(file); err != nil {
			t.Fatal(err)
		}
		with := all[seed%len(all)]
		want, ok, err := with.run(file, filepath.Join(dir, "room.out"), "3")
		if err != nil {
			t.Fatal(err)
		}
		if !ok {
			continue
		}
		compared++
		if cost, _ := s.Saved(); cost > 0 {
			saved++
		}
		if want != len(s.Solution.Rolls) || !s.Proven {
			t.Errorf("room %d: %d rolls, bound %d, %s says %d", seed, len(s.Solution.Rolls), s.LowerBound, with.name, want)
		}
	}
	t.Logf("%d rooms compared, %d of them save rolls", compared, saved)
	if compared < 10 || saved == 0 {
		t.Errorf("only %d rooms compared, %d of them save rolls", compared, saved)
	}
}
