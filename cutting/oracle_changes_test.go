package cutting

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"firstdrop/measure"
)

// The second opinion on fewest changes: a set partition (the model of M. L.
// Balinski and R. E. Quandt, "On an Integer Program for a Delivery Problem",
// Operations Research 12(2), 1964; reference from memory). Every set of drops
// that one roll can hold, listed from the definition, is a column that costs
// its stretches; every piece is on exactly one roll, and the rolls are as many
// as given.

// hangingModel is that model; nil if it has too many columns.
func hangingModel(s Spec, rolls, most int) *model {
	kinds, count := testKinds(s)
	sets := everySet(s, kinds, count, 40_000)
	if sets == nil {
		return nil
	}
	h := &hangingColumns{kinds: kinds, pieces: s.Pieces, free: s.Repeat == 0, sets: sets, most: most, set: make([]int, len(kinds))}
	h.rows = make([][]string, len(s.Pieces)+1)
	if !h.list(0) {
		return nil
	}
	m := &model{cost: h.cost, ints: h.names}
	for i, row := range h.rows {
		n := 1
		if i == len(s.Pieces) {
			n = rolls
		}
		less := make([]string, len(row))
		for c, name := range row {
			less[c] = "-" + name[1:]
		}
		m.rows, m.rhs = append(m.rows, row, less), append(m.rhs, n, -n)
	}
	return m
}

// hangingColumns lists the columns piece by piece.
type hangingColumns struct {
	kinds  []Piece
	pieces []Piece
	free   bool
	sets   *setList
	most   int

	held  []int // pieces on the roll
	set   []int // of each kind
	names []string
	cost  []string
	rows  [][]string // of each piece, and of the rolls
}

// list lists the columns that hold what is held and pieces from number i on. It
// returns false if there are too many.
func (h *hangingColumns) list(i int) bool {
	if i == len(h.pieces) {
		if len(h.held) > 0 {
			h.add()
		}
		return len(h.names) <= h.most
	}
	if !h.list(i + 1) {
		return false
	}
	piece := h.pieces[i]
	if h.free {
		piece.Phase = 0
	}
	j := slices.Index(h.kinds, piece)
	h.set[j]++
	h.held = append(h.held, i)
	ok := h.sets.end[setKey(h.set)] == nil || h.list(i+1)
	h.set[j]--
	h.held = h.held[:len(h.held)-1]
	return ok
}

// add adds the column of what is held.
func (h *hangingColumns) add() {
	name, stretches := fmt.Sprintf("z%d", len(h.names)), 0
	for at, i := range h.held {
		if at == 0 || h.held[at-1] != i-1 {
			stretches++
		}
		h.rows[i] = append(h.rows[i], "+ "+name)
	}
	h.rows[len(h.pieces)] = append(h.rows[len(h.pieces)], "+ "+name)
	h.names = append(h.names, name)
	h.cost = append(h.cost, fmt.Sprintf("%d %s", stretches, name))
}

// TestSolversAgreeOnChanges compares the fewest changes in small rooms, cut from
// short rolls lest there be too many sets, with known and any start. Rooms that
// need no return to a roll are left out: the rolls alone prove those.
func TestSolversAgreeOnChanges(t *testing.T) {
	all := solvers(t)
	rooms, most := 300, 3_000
	switch {
	case os.Getenv("FIRSTDROP_ORACLE") == "full":
		rooms, most = 2_000, 10_000
	case testing.Short():
		rooms = 60
	}
	dir := t.TempDir()
	asked, finished := 0, 0
	for i := range rooms {
		spec, _ := roomBetween(7000+i, 10, 22)
		spec.Roll.Length = measure.Length(5_000+i*37%3_000) * mm
		if i%2 == 1 && spec.Repeat > 0 {
			spec = anyStart(spec)
		}
		p, err := NewProblem(spec)
		if err != nil {
			continue // too short for a drop
		}
		s := Solve(p, Options{Then: []Goal{FewestChanges}})
		if s.Goals[0].Value == int64(len(s.Rolls)-1) {
			continue
		}
		m := hangingModel(spec, len(s.Rolls), most)
		if m == nil {
			continue
		}
		asked++
		file := filepath.Join(dir, "room.lp")
		if err := m.writeTo(file); err != nil {
			t.Fatal(err)
		}
		with := all[asked%len(all)]
		stretches, ok, err := with.run(file, filepath.Join(dir, "room.out"), oracleSeconds)
		if err != nil {
			t.Fatalf("room %d: %s: %v", i, with.name, err)
		}
		if !ok {
			continue
		}
		finished++
		if g := s.Goals[0]; g.Value != int64(stretches-1) || !g.Proven {
			t.Errorf("room %d: %+v, %s says %d changes", i, g, with.name, stretches-1)
		}
	}
	t.Logf("%d rooms asked, %d finished by the solvers", asked, finished)
	if asked < rooms/20 || finished*100 < asked*90 {
		t.Errorf("only %d of %d rooms were finished by the solvers", finished, asked)
	}
}
