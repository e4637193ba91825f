package sheet_test

import (
	"io"
	"testing"

	"firstdrop/hanging"
	"firstdrop/internal/roomtext"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/plan"
	"firstdrop/sheet"
	"firstdrop/words"
)

// By hand: 520 mm as hung, 517 mm dry, the line at 520 mm of a wall 2600 mm wide. A
// seam three widths from the line is off by 9 mm, the right end, four widths away, by
// 12 mm, the left end by 3 mm to the other side.
func TestSeamTable(t *testing.T) {
	task := &plan.Task{
		Runs:   []plan.RunTask{{Run: roomtext.Run("A 2600x2400"), Fixed: plan.Fixed{Start: &hanging.Start{}}}},
		Papers: []paper.Paper{{Name: "pulp", Width: 520 * mm, DryWidth: 517 * mm, RollLength: 10050 * mm, Pack: 1}},
		Rules:  hanging.DefaultRules(), Taste: plan.DefaultTaste(),
	}
	p, err := plan.Make(task)
	if err != nil {
		t.Fatal(err)
	}
	list := rows(t, func(w io.Writer, p *plan.Plan, _ int, _ measure.System) error {
		return sheet.SeamList(w, p, words.For(""))
	}, p, measure.Metric)
	want := [][4]string{
		{"left end", "0", "3", "-3"},
		{"plumb line", "520", "520", "0"},
		{"seam", "1040", "1037", "3"},
		{"seam", "1560", "1554", "6"},
		{"seam", "2080", "2071", "9"},
		{"right end", "2600", "2588", "12"},
	}
	if len(list) != len(want) {
		t.Fatalf("%d rows: %v", len(list), list)
	}
	for i, r := range list {
		if got := [4]string{r["what"], r["as_hung_mm"], r["dry_mm"], r["off_mm"]}; got != want[i] {
			t.Errorf("row %d: %v, want %v", i+1, got, want[i])
		}
	}
	task.Papers[0].DryWidth = 0
	if p, err = plan.Make(task); err != nil || sheet.HasSeamTable(p) {
		t.Errorf("a paper that does not grow has a table (%v)", err)
	}
}
