package sheet_test

import (
	"bytes"
	"encoding/csv"
	"io"
	"strconv"
	"strings"
	"testing"

	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/plan"
	"firstdrop/room"
	"firstdrop/sheet"
	"firstdrop/words"
)

// cuttingList writes the list in hanging order.
func cuttingList(w io.Writer, p *plan.Plan, at int, sys measure.System) error {
	return sheet.CuttingList(w, p, at, sheet.AsHung, words.For("").In(sys))
}

// cutList writes the list in cutting order.
func cutList(w io.Writer, p *plan.Plan, at int, sys measure.System) error {
	return sheet.CuttingList(w, p, at, sheet.AsCut, words.For("").In(sys))
}

type tableWriter func(io.Writer, *plan.Plan, int, measure.System) error

// rollMap writes the map of the rolls.
func rollMap(w io.Writer, p *plan.Plan, at int, sys measure.System) error {
	return sheet.RollMap(w, p, at, words.For("").In(sys))
}

// rows writes a table and reads it back by RFC 4180: each row as column → value.
func rows(t testing.TB, write tableWriter, p *plan.Plan, sys measure.System) []map[string]string {
	t.Helper()
	var b bytes.Buffer
	if err := write(&b, p, 0, sys); err != nil {
		t.Fatal(err)
	}
	if n := strings.Count(b.String(), "\r\n"); n != strings.Count(b.String(), "\n") || !strings.HasSuffix(b.String(), "\r\n") {
		t.Errorf("lines do not all end in CR LF (RFC 4180, section 2, rule 1)")
	}
	all, err := csv.NewReader(&b).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	seen := map[string]bool{}
	for _, name := range all[0] {
		if seen[name] {
			t.Errorf("column %s twice", name)
		}
		seen[name] = true
	}
	var out []map[string]string
	for _, r := range all[1:] {
		row := map[string]string{}
		for i, v := range r {
			row[all[0][i]] = v
		}
		out = append(out, row)
	}
	return out
}

// length reads a column of plain millimetres.
func length(t testing.TB, row map[string]string, column string) measure.Length {
	t.Helper()
	if _, err := strconv.ParseFloat(row[column], 64); err != nil {
		t.Fatalf("%s is no plain number: %q", column, row[column])
	}
	l, err := measure.ParseLength(row[column]+" mm", 0)
	if err != nil {
		t.Fatalf("%s: %v", column, err)
	}
	return l
}

func TestCuttingListAgreesWithThePlan(t *testing.T) {
	for _, s := range samples {
		t.Run(s.name, func(t *testing.T) {
			p := s.kept(t)
			l := p.Runs[0].Layout
			list := rows(t, cuttingList, p, s.sys)
			if len(list) != len(l.Pieces) {
				t.Fatalf("%d rows for %d pieces", len(list), len(l.Pieces))
			}
			ends := map[string]measure.Length{}
			starts := map[string]measure.Length{}
			for i, r := range list {
				piece := l.Pieces[i] // in hanging order
				if r["piece"] != piece.Name || r["drop"] != strconv.Itoa(l.Drops[piece.Drop].Number) {
					t.Errorf("row %d is piece %s of drop %s, want %s", i, r["piece"], r["drop"], piece.Name)
				}
				from, to, n := length(t, r, "from_mm"), length(t, r, "to_mm"), length(t, r, "length_mm")
				if to-from != n || n != piece.Length {
					t.Errorf("piece %s: %v to %v is not %v", piece.Name, from, to, piece.Length)
				}
				if to+length(t, r, "left_on_roll_mm") != s.label.RollLength {
					t.Errorf("piece %s: what is left does not add up", piece.Name)
				}
				if length(t, r, "phase_mm") != piece.Phase || length(t, r, "y_to_mm") != piece.Y.Hi {
					t.Errorf("piece %s: phase or place is wrong: %v", piece.Name, r)
				}
				if reversed := strings.HasPrefix(r["leading_end"], "foot"); reversed != l.Drops[piece.Drop].Reversed || !strings.Contains(r["leading_end"], "TOP") {
					t.Errorf("piece %s leads with %s", piece.Name, r["leading_end"])
				}
				key := r["roll"] + "/" + r["cut"]
				if _, twice := ends[key]; twice {
					t.Errorf("cut %s twice", key)
				}
				ends[key], starts[key] = to, from
			}
			for key := range starts { // cuts count from 1 along the roll
				roll, n, _ := strings.Cut(key, "/")
				k, _ := strconv.Atoi(n)
				if before, ok := ends[roll+"/"+strconv.Itoa(k-1)]; ok != (k > 1) || before > starts[key] {
					t.Errorf("cut %s begins at %v, the one before ends at %v (%v)", key, starts[key], before, ok)
				}
			}
		})
	}
}

func TestRollMapIsInCuttingOrder(t *testing.T) {
	for _, s := range samples {
		t.Run(s.name, func(t *testing.T) {
			p := s.kept(t)
			rolls := map[string]bool{}
			last, before, cuts := "", measure.Length(0), 0
			for _, r := range rows(t, rollMap, p, s.sys) {
				key := r["roll"] + "/" + r["order"]
				if key != last {
					last, before = key, 0
				}
				if r["order"] == "1" {
					cuts++
				}
				rolls[r["roll"]] = true
				from, to := length(t, r, "from_mm"), length(t, r, "to_mm")
				if before+length(t, r, "waste_mm") != from || to < from || to > s.label.RollLength {
					t.Errorf("roll %s cut %s: %v to %v after %v", r["roll"], r["cut"], from, to, before)
				}
				// The design: where the roll begins at the stated phase, the cut begins at the piece's.
				if d := (from + length(t, r, "shown_for_start_mm") - length(t, r, "phase_mm")).Mod(s.label.Repeat); min(d, s.label.Repeat-d) > 2*measure.Micrometre {
					t.Errorf("piece %s begins %v off its phase", r["piece"], d)
				}
				before = to
			}
			if len(rolls) != p.Papers[0].Rolls() || cuts != p.Papers[0].Pieces() {
				t.Errorf("%d rolls and %d cuts, want %d and %d", len(rolls), cuts, p.Papers[0].Rolls(), p.Papers[0].Pieces())
			}
		})
	}
}

func TestWhatPiecesAre(t *testing.T) {
	s := samples[1] // a door, two windows, one with returns
	got := map[string]string{}
	for _, r := range rows(t, cuttingList, s.kept(t), measure.Metric) {
		got[r["what"]] = r["piece"]
	}
	for _, want := range []string{"full", "over window", "under window", "soffit of window", "left reveal of window", "full, cut out round door"} {
		if got[want] == "" {
			t.Errorf("no piece is %q: %v", want, got)
		}
	}
}

func TestImperialColumns(t *testing.T) {
	s := samples[8]
	for _, r := range rows(t, cuttingList, s.kept(t), measure.Imperial) {
		l := length(t, r, "length_mm")
		if r["length_ft_in"] != l.Format(measure.Imperial) {
			t.Errorf("%v is written %q", l, r["length_ft_in"])
		}
	}
	for _, r := range rows(t, cuttingList, s.kept(t), measure.Metric) {
		if _, ok := r["length_ft_in"]; ok {
			t.Fatal("a metric list has feet")
		}
	}
}

// A roll for which no single order holds says so in the list. On short rolls and a
// long repeat some need several.
func TestSeveralOrdersAreTold(t *testing.T) {
	told := 0
	for roll := measure.Length(5200); roll <= 7600; roll += 100 {
		s := sample{name: "orders", run: "A 1000x2400/2000 | B 1000x2000", label: label("Long vine", 900*mm, paper.Match{Kind: paper.Offset, Num: 1, Den: 3})}
		s.label.RollLength = roll * mm
		p := s.plan(t)
		for _, r := range rows(t, cuttingList, p, measure.Metric) {
			n, err := strconv.Atoi(r["roll"])
			if err != nil {
				t.Fatal(err)
			}
			several := len(p.Papers[0].Batches[0].Cutting.Rolls[n-1].Orders) > 1
			if got := strings.Contains(r["note"], "the order depends on the phase"); got != several {
				t.Errorf("roll %d: told %v, want %v", n, got, several)
			}
			if several {
				told++
			}
		}
	}
	if told == 0 {
		t.Error("no roll needed several orders: the case is not tested")
	}
}

// No spreadsheet may take a name for a formula.
func TestNamesAreNoFormulas(t *testing.T) {
	for _, name := range []string{"=1+1", "+cmd", "-2", "@SUM(A1)", "\tx", `a"b,c`, "two\nlines"} {
		s := sample{name: "formula", run: "A 2000x2400 | B 1000x2400", label: plainLabel, alter: func(r *room.Run) { r.Walls[0].Name, r.Walls[1].Name = name, name }}
		for _, r := range rowsLoose(t, s.plan(t)) {
			if got := r[2]; got != name && got != "'"+name {
				t.Errorf("%q comes back as %q", name, got)
			} else if strings.ContainsRune("=+-@\t", rune(got[0])) {
				t.Errorf("%q may be taken for a formula", got)
			}
		}
	}
}

// rowsLoose reads a cutting list whose names may hold line breaks.
func rowsLoose(t testing.TB, p *plan.Plan) [][]string {
	t.Helper()
	var b bytes.Buffer
	if err := cuttingList(&b, p, 0, measure.Metric); err != nil {
		t.Fatal(err)
	}
	all, err := csv.NewReader(&b).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return all[1:]
}

func TestUnusedPaperIsAnError(t *testing.T) {
	p := *samples[2].kept(t)
	task := *p.Task
	task.Papers = append([]paper.Paper{}, task.Papers...)
	task.Papers = append(task.Papers, label("Spare", 0, paper.Match{}))
	p.Task, p.Papers = &task, append(append([]plan.PaperPlan{}, p.Papers...), plan.PaperPlan{})
	for _, write := range []tableWriter{cuttingList, rollMap} {
		if err := write(io.Discard, &p, 1, measure.Metric); err == nil || !strings.Contains(err.Error(), `"Spare"`) {
			t.Errorf("err = %v", err)
		}
	}
}

func TestColumns(t *testing.T) {
	var b bytes.Buffer
	if err := cuttingList(&b, samples[9].kept(t), 0, measure.Metric); err != nil {
		t.Fatal(err)
	}
	const want = "piece,drop,wall,run,roll,roll_name,batch,cut,from_mm,to_mm,length_mm,phase_mm,mark,offset_mm,slit_from_mm,slit_to_mm,leading_end,y_from_mm,y_to_mm,what,left_on_roll_mm,note"
	if got, _, _ := strings.Cut(b.String(), "\r\n"); got != want {
		t.Errorf("columns\n got %s\nwant %s", got, want)
	}
}
