package cutting

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"sync"
	"sync/atomic"
	"testing"

	"firstdrop/measure"
)

// The second opinion: general mixed-integer solvers that know nothing of
// cutting (GLPK's glpsol and COIN-OR's cbc, both from Debian), fed with models
// written here from the definition, without the package's network.
//
// For a known start the model is the arc flow of J. M. Valério de Carvalho,
// Annals of Operations Research 86 (1999): rolls flow from the roll's start
// from cut to cut, each kind crossing its arcs as often as asked for. For an
// unknown start it is the set cover over all sets of pieces that fit from
// every start (P. C. Gilmore and R. E. Gomory, Operations Research 9(6), 1961).

// model is an integer program: least sum of the variables in cost, subject to
// rows of the form sum ≥ right-hand side.
type model struct {
	cost []string
	rows [][]string
	rhs  []int
	ints []string
}

// writeTo writes CPLEX LP format, which both solvers read.
func (m *model) writeTo(path string) error {
	var b bytes.Buffer
	b.WriteString("Minimize\n rolls: ")
	b.WriteString(strings.Join(m.cost, "\n + "))
	b.WriteString("\nSubject To\n")
	for i, row := range m.rows {
		fmt.Fprintf(&b, " c%d: %s\n >= %d\n", i, strings.Join(row, "\n "), m.rhs[i])
	}
	b.WriteString("Generals\n")
	b.WriteString(strings.Join(m.ints, "\n"))
	b.WriteString("\nEnd\n")
	return os.WriteFile(path, b.Bytes(), 0o644)
}

// arcFlow is the model for known starts: a graph for each kind of roll, its
// price on the packs, as many as the arcs that leave the beginning need, or on
// these arcs themselves where rolls are sold singly.
func arcFlow(s Spec) *model {
	if s.Stock == nil {
		s.Stock = []Stock{{Roll: s.Roll}}
	}
	kinds, count := testKinds(s)
	m := &model{}
	byKind := make([][]string, len(kinds))
	for b, stock := range s.Stock {
		begin := m.addFlow(s, b, kinds, byKind)
		if begin == nil {
			continue
		}
		if stock.Count > 0 {
			m.rows, m.rhs = append(m.rows, begin), append(m.rhs, -stock.Count)
		}
		m.addPrice(s, b, begin)
	}
	for j := range kinds {
		m.rows, m.rhs = append(m.rows, byKind[j]), append(m.rhs, count[j])
	}
	return m
}

// addPrice puts the price of stock number b on the arcs that leave its
// beginning, which are listed with a minus, or on its packs.
func (m *model) addPrice(s Spec, b int, begin []string) {
	stock := s.Stock[b]
	price := strconv.FormatInt(cost(s, stock), 10) + " "
	if stock.Pack <= 1 {
		for _, arc := range begin {
			m.cost = append(m.cost, price+strings.TrimPrefix(arc, "- "))
		}
		return
	}
	packs := fmt.Sprintf("y%d", b)
	m.ints = append(m.ints, packs)
	m.cost = append(m.cost, price+packs)
	m.rows = append(m.rows, append(slices.Clone(begin), fmt.Sprintf("+ %d %s", stock.Pack, packs)))
	m.rhs = append(m.rhs, 0)
}

// addFlow adds the arcs of rolls of stock number b, from cut to cut, notes in
// byKind which cut each kind, and returns those that leave the beginning, with
// a minus.
func (m *model) addFlow(s Spec, b int, kinds []Piece, byKind [][]string) (begin []string) {
	node := map[measure.Length]int{0: 0}
	in, out := [][]string{nil}, [][]string{nil}
	for queue := []measure.Length{0}; len(queue) > 0; queue = queue[1:] {
		for j, k := range kinds {
			end, ok := firstEnd(s, s.Stock[b], queue[0], k)
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
	return begin
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

// setCover is the model for unknown starts: all sets that fit, for each kind of
// roll; nil if they are too many to be written down.
func setCover(s Spec) *model {
	if s.Stock == nil {
		s.Stock = []Stock{{Roll: s.Roll}}
	}
	kinds, count := testKinds(s)
	m := &model{rows: make([][]string, len(kinds)), rhs: count}
	for b, stock := range s.Stock {
		s.Roll = stock.Roll
		sets := everySet(s, kinds, count, 40_000)
		if sets == nil {
			return nil
		}
		used := m.addSets(sets, fmt.Sprintf("x%d_", b), count)
		for _, name := range used {
			m.cost = append(m.cost, strconv.FormatInt(cost(s, stock), 10)+" "+name)
		}
		if stock.Count > 0 && len(used) > 0 {
			m.rows, m.rhs = append(m.rows, []string{"- " + strings.Join(used, "\n - ")}), append(m.rhs, -stock.Count)
		}
	}
	for _, row := range m.rows {
		slices.Sort(row)
	}
	return m
}

// addSets adds a variable for each set that no other contains and returns their
// names.
func (m *model) addSets(sets *setList, prefix string, count []int) (used []string) {
	for key := range sets.end {
		if !sets.maximal(key, count) {
			continue
		}
		name := prefix + key
		for j, n := range sets.count[key] {
			if n > 0 {
				m.rows[j] = append(m.rows[j], fmt.Sprintf("+ %d %s", n, name))
			}
		}
		used = append(used, name)
	}
	slices.Sort(used)
	m.ints = append(m.ints, used...)
	return used
}

// setList holds every set of pieces that fits from every start, or the known
// one, with its earliest end from each of the starts looked at.
type setList struct {
	end   map[string][]int64
	count map[string][]int
}

// everySet grows the sets piece by piece. A set's earliest end is the least
// over the piece cut last. The starts are one nanometre past each phase.
func everySet(s Spec, kinds []Piece, count []int, most int) *setList {
	var starts []int64
	for _, k := range kinds {
		starts = append(starts, int64(k.Phase)+1)
	}
	slices.Sort(starts)
	starts = slices.Compact(starts)
	if s.Roll.Start.Known || s.Repeat == 0 {
		starts = []int64{int64(s.Roll.Start.Phase)}
	}
	l := &setList{map[string][]int64{}, map[string][]int{}}
	level := [][]int{make([]int, len(kinds))}
	l.end[setKey(level[0])], l.count[setKey(level[0])] = starts, level[0]
	for len(level) > 0 {
		var next [][]int
		for _, set := range level {
			for j := range kinds {
				if set[j] == count[j] {
					continue
				}
				bigger := slices.Clone(set)
				bigger[j]++
				key := setKey(bigger)
				if _, seen := l.count[key]; seen {
					continue
				}
				l.count[key] = bigger
				if end := l.grow(s, kinds, bigger, starts); end != nil {
					l.end[key] = end
					next = append(next, bigger)
				}
				if len(l.end) > most {
					return nil
				}
			}
		}
		level = next
	}
	return l
}

func (l *setList) grow(s Spec, kinds []Piece, set []int, starts []int64) []int64 {
	end := make([]int64, len(starts))
	for i := range end {
		end[i] = 1 << 62
	}
	for j, k := range kinds {
		if set[j] == 0 {
			continue
		}
		set[j]--
		less := l.end[setKey(set)]
		set[j]++
		if less == nil {
			return nil // a part does not fit
		}
		for i, x := range less {
			wait := int64(0)
			if p := int64(s.Repeat); p > 0 {
				wait = ((int64(k.Phase)-x)%p + p) % p
			}
			end[i] = min(end[i], x+wait+int64(k.Length))
		}
	}
	for i, x := range end {
		if x > starts[i]+int64(s.Roll.Length) {
			return nil
		}
	}
	return end
}

func (l *setList) maximal(key string, count []int) bool {
	set := slices.Clone(l.count[key])
	for j := range set {
		if set[j] == count[j] {
			continue
		}
		set[j]++
		if _, ok := l.end[setKey(set)]; ok {
			return false
		}
		set[j]--
	}
	return true
}

func setKey(set []int) string {
	var b []byte
	for _, n := range set {
		b = append(strconv.AppendInt(b, int64(n), 10), '_')
	}
	return string(b)
}

// testKinds groups the pieces without the package's help.
func testKinds(s Spec) (kinds []Piece, count []int) {
	for _, p := range s.Pieces {
		if s.Repeat == 0 {
			p.Phase = 0
		}
		i := slices.Index(kinds, p)
		if i < 0 {
			i = len(kinds)
			kinds, count = append(kinds, p), append(count, 0)
		}
		count[i]++
	}
	return kinds, count
}

// solver is a program that solves a model; ok is false when it did not finish.
type solver struct {
	name string
	run  func(file, out, seconds string) (rolls int, ok bool, err error)
}

// solvers returns those installed. If there is none the test is skipped, or
// fails where FIRSTDROP_ORACLE says that it is required.
func solvers(t testing.TB) []solver {
	t.Helper()
	var all []solver
	if path, err := exec.LookPath("cbc"); err == nil {
		all = append(all, solver{"cbc", func(file, out, seconds string) (int, bool, error) {
			return readCbc(path, file, out, seconds)
		}})
	}
	if path, err := exec.LookPath("glpsol"); err == nil {
		all = append(all, solver{"glpsol", func(file, out, seconds string) (int, bool, error) {
			return readGlpsol(path, file, out, seconds)
		}})
	}
	if len(all) == 0 {
		if os.Getenv("FIRSTDROP_ORACLE") == "required" {
			t.Fatal("neither cbc nor glpsol is installed, and FIRSTDROP_ORACLE requires one")
		}
		t.Skip("neither cbc nor glpsol is installed: no second opinion")
	}
	return all
}

const oracleSeconds = "10"

func readCbc(path, file, out, seconds string) (int, bool, error) {
	if msg, err := exec.Command(path, file, "seconds", seconds, "solve", "solution", out).CombinedOutput(); err != nil {
		return 0, false, fmt.Errorf("%w: %s", err, msg)
	}
	text, err := os.ReadFile(out)
	if err != nil {
		return 0, false, err
	}
	first, _, _ := strings.Cut(string(text), "\n")
	rest, ok := strings.CutPrefix(first, "Optimal - objective value")
	if !ok {
		return 0, false, nil
	}
	x, err := strconv.ParseFloat(strings.TrimSpace(rest), 64)
	return int(x + 0.5), true, err
}

func readGlpsol(path, file, out, seconds string) (int, bool, error) {
	if msg, err := exec.Command(path, "--lp", file, "--tmlim", seconds, "-o", out).CombinedOutput(); err != nil {
		return 0, false, fmt.Errorf("%w: %s", err, msg)
	}
	text, err := os.ReadFile(out)
	if err != nil {
		return 0, false, err
	}
	if !strings.Contains(string(text), "INTEGER OPTIMAL") {
		return 0, false, nil
	}
	_, rest, _ := strings.Cut(string(text), "Objective:")
	_, rest, _ = strings.Cut(rest, "=")
	x, err := strconv.ParseFloat(strings.Fields(rest)[0], 64)
	return int(x + 0.5), true, err
}

// TestSolversAgree compares the counts on random rooms of up to 40 drops: with
// FIRSTDROP_ORACLE=full on 750, to which TestSolversAgreeMixed adds 250 with
// several kinds of roll and flaws.
func TestSolversAgree(t *testing.T) {
	all := solvers(t)
	known, unknown, most := 155, 75, arcsInATest
	switch {
	case os.Getenv("FIRSTDROP_ORACLE") == "full":
		known, unknown, most = 500, 250, math.MaxInt
	case testing.Short():
		known, unknown = 20, 10
	}
	var asked, finished, large atomic.Int32
	var wait sync.WaitGroup
	rooms := make(chan int)
	for range 2 {
		dir := t.TempDir()
		wait.Go(func() {
			for i := range rooms {
				spec, m := roomModel(5000+i, i >= known, most)
				if m == nil {
					large.Add(1)
					continue
				}
				asked.Add(1)
				if agrees(t, all[i%len(all)], spec, m, dir) {
					finished.Add(1)
				}
			}
		})
	}
	for i := range known + unknown {
		rooms <- i
	}
	close(rooms)
	wait.Wait()
	t.Logf("%d of %d rooms finished by the solvers, all compared; %d more have too large a model",
		finished.Load(), asked.Load(), large.Load())
	if asked.Load() > 30 && asked.Load() < 205 || finished.Load()*100 < asked.Load()*95 {
		t.Errorf("only %d of %d rooms were finished by the solvers", finished.Load(), asked.Load())
	}
}

// arcsInATest is the size of a model beyond which a solver takes seconds; with
// FIRSTDROP_ORACLE=full these are asked too.
const arcsInATest = 2_000

// roomModel is a random room with its model, for any start or the known one;
// the model is nil if it is larger than that.
func roomModel(seed int, any bool, most int) (Spec, *model) {
	spec := randomRoom(seed)
	var m *model
	if any && spec.Repeat > 0 {
		spec = anyStart(spec)
		m = setCover(spec)
	} else {
		m = arcFlow(spec)
	}
	if m == nil || len(m.ints) > most {
		return spec, nil
	}
	return spec, m
}

// agrees compares one room with one solver. It returns false if the solver did
// not finish.
func agrees(t *testing.T, with solver, spec Spec, m *model, dir string) bool {
	p, err := NewProblem(spec)
	if err != nil {
		t.Error(err)
		return true
	}
	s := Solve(p, Options{})
	for _, err := range s.Check() {
		t.Error(err)
	}
	file := filepath.Join(dir, "room.lp")
	if err := m.writeTo(file); err != nil {
		t.Error(err)
		return true
	}
	rolls, ok, err := with.run(file, filepath.Join(dir, "room.out"), oracleSeconds)
	switch {
	case err != nil:
		t.Errorf("%s: %v", with.name, err)
	case ok && rolls != len(s.Rolls):
		t.Errorf("start known %v: %d rolls, %s says %d\n%+v", spec.Roll.Start.Known, len(s.Rolls), with.name, rolls, spec)
	}
	return ok
}
