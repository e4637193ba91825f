package sheet_test

import (
	"os"
	"strconv"
	"strings"
	"testing"

	"firstdrop/draw"
	"firstdrop/measure"
	"firstdrop/plan"
	"firstdrop/sheet"
)

// onPages returns, page by page, the words that stand there and the boxes of all
// that is drawn.
func onPages(t *testing.T, p *plan.Plan, kind sheet.Kind) (words [][]string, boxes [][]draw.Box) {
	t.Helper()
	book, err := sheet.Set{Plan: p}.Book(kind)
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range book.Scenes() {
		var texts []string
		var all []draw.Box
		s.Walk(func(_ string, it draw.Item) {
			switch it := it.(type) {
			case draw.Text:
				texts = append(texts, it.Text)
			case draw.Area, draw.Line:
				all = append(all, it.Box())
			}
		})
		words, boxes = append(words, texts), append(boxes, all)
	}
	return words, boxes
}

// scales returns the scales that are stated on a page.
func scales(texts []string) (all []measure.Length) {
	for _, text := range texts {
		if n, err := strconv.Atoi(strings.TrimPrefix(text, "1:")); err == nil && strings.HasPrefix(text, "1:") {
			all = append(all, measure.Length(n))
		}
	}
	return all
}

// has reports whether a box of that width and that height, 0 for any, stands among
// boxes.
func has(boxes []draw.Box, wide, tall measure.Length) bool {
	near := func(a, b measure.Length) bool { return b == 0 || (a-b).Abs() <= mm/50 }
	for _, b := range boxes {
		if near(b.X.Length(), wide) && near(b.Y.Length(), tall) {
			return true
		}
	}
	return false
}

// The floor key, the unrolled room and the map of the rolls keep the scale that is
// written beside them.
func TestSmallDrawingsKeepTheirScale(t *testing.T) {
	data, err := os.ReadFile("../examples/door-and-windows.yaml")
	if err != nil {
		t.Fatal(err)
	}
	_, p := planned(t, "door-and-windows.yaml", data)
	run := p.Runs[0].Layout.Run
	words, boxes := onPages(t, p, sheet.HangingSheet)
	stated := scales(words[0])
	if len(stated) < 2 {
		t.Fatalf("the first page states the scales %v, want those of floor key and band", stated)
	}
	key, band := false, 0
	for _, n := range stated { // wall B stands upright in the floor key alone
		key = key || has(boxes[0], 0, run.Walls[1].Width/n)
	}
	for i := range run.Walls {
		w := &run.Walls[i]
		for _, n := range stated {
			if has(boxes[0], w.Width/n, 2440*mm/n) {
				band++
				break
			}
		}
	}
	if !key || band != len(run.Walls) {
		t.Errorf("at 1 to %v: floor key to scale %v, %d of %d walls of the band to scale", stated, key, band, len(run.Walls))
	}
	words, boxes = onPages(t, p, sheet.RollSheet)
	if stated = scales(words[0]); len(stated) != 1 {
		t.Fatalf("the roll map states the scales %v", stated)
	}
	if !has(boxes[0], p.Task.Papers[0].RollLength/stated[0], 0) || !has(boxes[0], 2540*mm/stated[0], 0) {
		t.Errorf("no roll, or no drop of 2540 mm, is drawn at 1:%d", stated[0])
	}
}
