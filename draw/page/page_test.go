package page_test

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"firstdrop/draw"
	"firstdrop/draw/page"
	"firstdrop/draw/text"
	"firstdrop/geom"
	"firstdrop/measure"
)

const mm = measure.Millimetre

func newBook() *page.Book {
	return &page.Book{Format: draw.A4, Job: "Invented job", Words: page.Words{
		Lang: "en-GB", PageOf: func(n, of int) string { return fmt.Sprintf("%d / %d", n, of) }, Ruler: "100 mm",
	}}
}

// texts returns the texts of a scene in order.
func texts(s *draw.Scene) (all []draw.Text) {
	s.Walk(func(_ string, it draw.Item) {
		if t, ok := it.(draw.Text); ok {
			all = append(all, t)
		}
	})
	return all
}

func has(s *draw.Scene, words string) bool {
	for _, t := range texts(s) {
		if t.Text == words {
			return true
		}
	}
	return false
}

func TestTableRepeatsItsHead(t *testing.T) {
	b := newBook()
	f := b.Begin("Long list", false)
	table := page.Table{Title: "rows", Columns: []page.Column{{Title: "number", Width: 30 * mm}, {Title: "words"}}}
	for i := range 120 {
		table.Rows = append(table.Rows, page.Row{Cells: []string{fmt.Sprint(i), "a row"}})
	}
	f.Table(table)
	scenes := b.Scenes()
	if len(scenes) < 3 {
		t.Fatalf("%d pages", len(scenes))
	}
	seen := map[string]int{}
	for i, s := range scenes {
		if !has(s, "number") || !has(s, fmt.Sprintf("%d / %d", i+1, len(scenes))) || !has(s, "Long list") {
			t.Errorf("page %d lacks its head, its number or its title", i+1)
		}
		for _, x := range texts(s) {
			seen[x.Text]++
		}
	}
	for i := range 120 {
		if seen[fmt.Sprint(i)] < 1 {
			t.Errorf("row %d is lost", i)
		}
	}
}

// No row across stands at the foot of a page, be it the first of two.
func TestRowAcrossStaysWithTheNext(t *testing.T) {
	for first := range 50 {
		b := newBook()
		f := b.Begin("List", false)
		table := page.Table{Columns: []page.Column{{Title: "x"}}}
		for range first {
			table.Rows = append(table.Rows, page.Row{Cells: []string{"row"}})
		}
		table.Rows = append(table.Rows, page.Row{Across: "Section"}, page.Row{Across: "Remark"}, page.Row{Cells: []string{"its first"}})
		f.Table(table)
		for i, s := range b.Scenes() {
			if has(s, "Section") != has(s, "its first") {
				t.Fatalf("%d rows before: page %d parts the section from its first row", first, i+1)
			}
		}
	}
}

// A heading does not stand alone at the foot of a page when its table begins with
// tall titles and a row across.
func TestHeadingStaysWithItsTable(t *testing.T) {
	for first := range 50 {
		b := newBook()
		f := b.Begin("List", false)
		for range first {
			f.Text(page.Body, "words")
		}
		table := page.Table{Title: "Table", Columns: []page.Column{{Title: "one two three", Width: 12 * mm}, {Title: "x"}}}
		table.Rows = append(table.Rows, page.Row{Across: "Section"}, page.Row{Cells: []string{"", "its first"}})
		f.Headed(table)
		for i, s := range b.Scenes() {
			if has(s, "Table") != has(s, "its first") {
				t.Fatalf("%d lines before: page %d parts the heading from its table", first, i+1)
			}
		}
	}
}

// Whatever is written, no words leave their room and nothing leaves the frame.
func TestNothingLeavesItsRoom(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := newBook()
		f := b.Begin(rapid.String().Draw(t, "title"), rapid.Bool().Draw(t, "lying"))
		for range rapid.IntRange(1, 6).Draw(t, "things") {
			words := strings.Repeat(rapid.String().Draw(t, "words")+" ", rapid.IntRange(0, 40).Draw(t, "times"))
			switch rapid.IntRange(0, 4).Draw(t, "kind") {
			case 0:
				f.Heading(words)
			case 1:
				f.Text(page.Body, words)
			case 2:
				f.Item(page.Small, 9*mm, nil, words)
			case 3:
				f.Columns(rapid.IntRange(1, 3).Draw(t, "columns"))
			case 4:
				row := page.Row{Cells: []string{words, words, page.Tick}}
				f.Table(page.Table{Columns: []page.Column{{Title: words, Share: 2}, {Title: "x", Type: page.Large}, {Width: 9 * mm}}, Rows: []page.Row{row, {Across: words}, row}})
			}
		}
		for i, s := range b.Scenes() {
			p := b.Pages[i]
			for _, r := range p.Rooms {
				if w := text.Width(r.Text.Text, r.Text.Size, r.Text.Bold); w > r.Box.X.Length() {
					t.Fatalf("%q is %v wide in a room of %v", r.Text.Text, w, r.Box.X.Length())
				}
				if !p.Frame.Grown(mm).Contains(r.Box) {
					t.Fatalf("room %v of %q is outside the frame %v", r.Box, r.Text.Text, p.Frame)
				}
			}
			for _, x := range texts(s) {
				if !p.Box.Grown(-page.Margin + 2*mm).Contains(draw.Box{X: geom.Interval{Lo: x.At.X, Hi: x.At.X}, Y: geom.Interval{Lo: x.At.Y, Hi: x.At.Y}}) {
					t.Fatalf("%q stands at %v, off the page's frame", x.Text, x.At)
				}
			}
		}
	})
}

func TestWrapShowsThatThereIsMore(t *testing.T) {
	const words = "one two three four five six seven eight nine ten"
	lines := page.Wrap(page.Body, words, 30*mm, 2)
	if len(lines) != 2 || !strings.HasSuffix(lines[1], "…") {
		t.Errorf("lines %q", lines)
	}
	if all := page.Wrap(page.Body, words, 30*mm, 0); strings.Join(all, " ") != words {
		t.Errorf("lines %q", all)
	}
}

// Columns are filled one after the other, and what follows them begins a page.
func TestColumns(t *testing.T) {
	b := newBook()
	f := b.Begin("Columns", false)
	f.Text(page.Body, "over both")
	f.Columns(2)
	top := f.Y()
	for i := range 60 {
		f.Text(page.Body, fmt.Sprintf("line %d", i))
	}
	var xs []measure.Length
	for _, r := range b.Pages[0].Rooms[1:] {
		if len(xs) == 0 || xs[len(xs)-1] != r.Box.X.Lo {
			xs = append(xs, r.Box.X.Lo)
			if r.Box.Y.Hi != top {
				t.Errorf("a column begins at %v, want %v", r.Box.Y.Hi, top)
			}
		}
	}
	if len(xs) != 2 {
		t.Errorf("columns at %v", xs)
	}
}

func TestLargestFits(t *testing.T) {
	p := newBook().Add("x", false)
	box := draw.Box{X: geom.Interval{Lo: 20 * mm, Hi: 40 * mm}, Y: geom.Interval{Lo: 20 * mm, Hi: 50 * mm}}
	p.Largest(box, page.Large.Sized(14*mm), "21a")
	p.Largest(box, page.Large.Sized(14*mm), "a much longer name")
	if len(p.Rooms) != 2 || p.Rooms[0].Text.Size < 8*mm || p.Rooms[1].Text.Size >= p.Rooms[0].Text.Size {
		t.Errorf("rooms %v", p.Rooms)
	}
}
