package sheet_test

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"firstdrop/internal/oracle"
	"firstdrop/measure"
	"firstdrop/money"
	"firstdrop/paper"
	"firstdrop/plan"
	"firstdrop/sheet"
	"firstdrop/words"
)

func workbook(t testing.TB, p *plan.Plan, lang *words.Catalogue) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := sheet.Workbook(&b, p, lang); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// cells is a tab as openpyxl reads it: what is written, and what formulas have
// come to.
type cells struct {
	Name            string
	Written, Values [][]any
	Frozen, Titles  string
	Paper           any
	Orientation     string
	Wide            map[string]float64
	Formats         []string // of the second row
}

// openTabs reads a workbook once with its formulas and once with their values.
const openTabs = `
import sys, json, openpyxl
name = sys.argv[1]
a, b = openpyxl.load_workbook(name), openpyxl.load_workbook(name, data_only=True)
out = []
for s in a.worksheets:
    v = b[s.title]
    out.append({
        "Name": s.title, "Written": [list(r) for r in s.iter_rows(values_only=True)],
        "Values": [list(r) for r in v.iter_rows(values_only=True)],
        "Frozen": s.freeze_panes, "Titles": s.print_title_rows, "Paper": s.page_setup.paperSize,
        "Orientation": s.page_setup.orientation,
        "Wide": {k: d.width for k, d in s.column_dimensions.items()},
        "Formats": [c.number_format for c in s[2]],
    })
print(json.dumps(out))
`

func opened(t testing.TB, data []byte) map[string]cells {
	t.Helper()
	name := filepath.Join(t.TempDir(), "lists.xlsx")
	if err := os.WriteFile(name, data, 0o600); err != nil {
		t.Fatal(err)
	}
	var tabs []cells
	if err := json.Unmarshal([]byte(oracle.Python(t, "openpyxl", openTabs, name)), &tabs); err != nil {
		t.Fatal(err)
	}
	all := map[string]cells{}
	for _, c := range tabs {
		all[c.Name] = c
	}
	return all
}

// column returns a column of a tab below its head.
func (c cells) column(t testing.TB, head string) (values []any) {
	t.Helper()
	for i, h := range c.Values[0] {
		if h == head {
			for _, r := range c.Values[1:] {
				values = append(values, r[i])
			}
			return values
		}
	}
	t.Fatalf("%s: no column %s among %v", c.Name, head, c.Values[0])
	return nil
}

// Another reader finds the plan's own figures: every piece with its length as a
// number, and totals whose values are the plan's.
func TestAnotherReaderOfWorkbooks(t *testing.T) {
	for _, s := range []sample{samples[1], samples[8]} { // metric and imperial, with returns
		p := s.kept(t)
		unit, name, format := measure.Millimetre, "mm", "General"
		if s.sys == measure.Imperial {
			unit, name, format = measure.Inch, "in", "# ??/16"
		}
		tabs := opened(t, workbook(t, p, words.For("").In(s.sys)))
		list := tabs["Cutting list "+s.label.Name]
		lengths := list.column(t, "length ("+name+")")
		var total measure.Length
		for i, piece := range p.Runs[0].Layout.Pieces {
			total += piece.Length
			if got := lengths[i].(float64); math.Abs(got-float64(piece.Length)/float64(unit)) > 1e-9 {
				t.Errorf("%s: piece %s is %v %s long, want %v", s.name, piece.Name, got, name, piece.Length)
			}
		}
		n := len(p.Runs[0].Layout.Pieces)
		if got := lengths[n]; math.Abs(got.(float64)-float64(total)/float64(unit)) > 1e-6 {
			t.Errorf("%s: all pieces are %v long, want %v", s.name, got, total)
		}
		if got := list.column(t, "piece")[n]; got != float64(n) {
			t.Errorf("%s: %v pieces, want %d", s.name, got, n)
		}
		order := tabs["Order"]
		if got, want := order.column(t, "rolls bought")[0], float64(p.Papers[0].Orders[0].Packs*p.Papers[0].Orders[0].PerPack); got != want {
			t.Errorf("%s: %v rolls bought, want %v", s.name, got, want)
		}
		last := order.Values[len(order.Values)-1]
		if last[1] != float64(n) || last[3] != float64(p.Papers[0].Rolls()) {
			t.Errorf("%s: %v, want %d pieces and %d rolls", s.name, last, n, p.Papers[0].Rolls())
		}
		if f := list.Formats[8]; f != format { // from, a place on the roll
			t.Errorf("%s: lengths are shown as %q, want %q", s.name, f, format)
		}
		for _, c := range tabs {
			if c.Frozen != "A2" || !strings.Contains(c.Titles, "1") || c.Orientation != "landscape" || len(c.Wide) < 5 {
				t.Errorf("%s %s: frozen at %q, titles %q, %s, %d widths", s.name, c.Name, c.Frozen, c.Titles, c.Orientation, len(c.Wide))
			}
		}
	}
}

// Every formula comes to the value that is written beside it, by another way of
// working it out (excelize's own, which reads the cells); in every language.
func TestFormulasComeToTheirValues(t *testing.T) {
	s := samples[1]
	s.label.Price = money.Amount{Minor: 3450, Currency: "EUR"}
	s.label.Pack = 2
	p := s.plan(t)
	for _, tag := range words.Languages() {
		f, err := excelize.OpenReader(bytes.NewReader(workbook(t, p, words.For(tag))))
		if err != nil {
			t.Fatal(err)
		}
		formulas := 0
		for _, tab := range f.GetSheetList() {
			rows, err := f.GetRows(tab, excelize.Options{RawCellValue: true})
			if err != nil {
				t.Fatal(err)
			}
			for r := range rows {
				for c := range rows[r] {
					at, _ := excelize.CoordinatesToCellName(c+1, r+1)
					formula, err := f.GetCellFormula(tab, at)
					if err != nil || formula == "" {
						continue
					}
					formulas++
					got, err := f.CalcCellValue(tab, at, excelize.Options{RawCellValue: true})
					if err != nil {
						t.Errorf("%s %s %s: %s: %v", tag, tab, at, formula, err)
					}
					a, errA := strconv.ParseFloat(got, 64)
					b, errB := strconv.ParseFloat(rows[r][c], 64)
					if errA != nil || errB != nil || math.Abs(a-b) > 1e-6 {
						t.Errorf("%s %s %s: %s comes to %s, %s is written", tag, tab, at, formula, got, rows[r][c])
					}
				}
			}
		}
		if formulas < 17 {
			t.Errorf("%s: only %d formulas", tag, formulas)
		}
	}
}

func TestSamePlanSameWorkbook(t *testing.T) {
	p := samples[1].kept(t)
	first := workbook(t, p, nil)
	for range 8 {
		if !bytes.Equal(first, workbook(t, p, nil)) {
			t.Fatal("the same plan gives other bytes")
		}
	}
}

// Names of papers that no tab may have, or that are too long, give names that one
// may; what looks like a formula is text.
func TestOddNamesInWorkbooks(t *testing.T) {
	for _, name := range []string{"=1+1", "a/b\\c[d]:*?", strings.Repeat("long ", 60), "'quoted'", "🧻🧻🧻🧻🧻🧻🧻🧻🧻🧻🧻🧻🧻🧻🧻🧻🧻🧻🧻🧻", "a\x00b\x07c", "A & B"} {
		s := sample{name: "odd", run: "A 1000x2400", label: label(name, 0, paper.Match{})}
		p := s.plan(t)
		f, err := excelize.OpenReader(bytes.NewReader(workbook(t, p, words.For("fr"))))
		if err != nil {
			t.Fatalf("%q: %v", name, err)
		}
		if n := len(f.GetSheetList()); n != 4 {
			t.Errorf("%q: %d tabs: %v", name, n, f.GetSheetList())
		}
		if formula, _ := f.GetCellFormula(f.GetSheetList()[0], "A2"); formula != "" {
			t.Errorf("%q is taken for a formula", name)
		}
	}
}

// readCSV reads a list as RFC 4180 has it.
const readCSV = `
import sys, json, csv
print(json.dumps(list(csv.reader(open(sys.argv[1], newline="", encoding="utf-8"), strict=True))))
`

// Python reads the same rows from CSV as Go does, all of one length.
func TestAnotherReaderOfCSV(t *testing.T) {
	for _, tag := range words.Languages() {
		var b bytes.Buffer
		if err := sheet.CuttingList(&b, samples[1].kept(t), 0, sheet.AsHung, words.For(tag).In(measure.Imperial)); err != nil {
			t.Fatal(err)
		}
		name := filepath.Join(t.TempDir(), "list.csv")
		if err := os.WriteFile(name, b.Bytes(), 0o600); err != nil {
			t.Fatal(err)
		}
		want, err := csv.NewReader(&b).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		var got [][]string
		if err := json.Unmarshal([]byte(oracle.Python(t, "csv", readCSV, name)), &got); err != nil {
			t.Fatal(err)
		}
		if fmt.Sprint(got) != fmt.Sprint(want) || len(got) < 20 {
			t.Errorf("%s: Python reads\n%v\nGo reads\n%v", tag, got, want)
		}
	}
}

// A column with nothing in it is hidden, so that the others print larger; no other is.
func TestEmptyColumnsAreHidden(t *testing.T) {
	p := samples[0].plan(t)
	var b bytes.Buffer
	if err := sheet.Workbook(&b, p, words.For("")); err != nil {
		t.Fatal(err)
	}
	f, err := excelize.OpenReader(&b)
	if err != nil {
		t.Fatal(err)
	}
	hidden := 0
	for _, name := range f.GetSheetList() {
		columns, err := f.GetCols(name)
		if err != nil {
			t.Fatal(err)
		}
		for i, cells := range columns {
			letter, _ := excelize.ColumnNumberToName(i + 1)
			isSeen, err := f.GetColVisible(name, letter)
			if err != nil {
				t.Fatal(err)
			}
			if !isSeen {
				hidden++
			}
			if empty := strings.Join(cells[1:], "") == ""; empty == isSeen {
				t.Errorf("%s, column %s (%s): seen %v, empty %v", name, letter, cells[0], isSeen, empty)
			}
		}
	}
	if hidden == 0 {
		t.Error("no column is hidden")
	}
}
