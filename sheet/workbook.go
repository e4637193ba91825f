package sheet

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"github.com/xuri/excelize/v2"

	"firstdrop/measure"
	"firstdrop/plan"
	"firstdrop/words"
)

// Workbook writes the lists of a plan as a workbook of Office Open XML (ECMA-376):
// what to order, then for every paper that is used the cutting list in hanging
// order and in cutting order and the map of its rolls. Lengths are numbers, in
// millimetres or inches; counts are numbers; totals are formulas, which carry
// the value that they come to. Head rows stand still and are printed on every
// page.
func Workbook(w io.Writer, p *plan.Plan, lang *words.Catalogue) error {
	b := newWorkbook(lang)
	order := b.tab(lang.Text("table.order"))
	var sums []paperSums
	for i := range p.Papers {
		if len(p.Papers[i].Batches) == 0 {
			continue
		}
		s, err := b.lists(p, i)
		if err != nil {
			return err
		}
		sums = append(sums, s)
	}
	if HasSeamTable(p) {
		b.fill(SeamTable(p, b.words), "")
	}
	b.order(order, p, sums)
	return b.write(w)
}

// workbook is a workbook in progress.
type workbook struct {
	file  *excelize.File
	words *words.Catalogue
	names map[string]bool // of its tabs, in small letters
	tabs  []*tab
	style map[string]int
	err   error // the first that anything gave
}

func newWorkbook(lang *words.Catalogue) *workbook {
	b := &workbook{file: excelize.NewFile(), words: lang, names: map[string]bool{}, style: map[string]int{}}
	number, money := lengthFormat(lang), "#,##0.00"
	b.define("head", excelize.Style{
		Font: &excelize.Font{Bold: true}, Alignment: &excelize.Alignment{WrapText: true, Vertical: "center"},
		Border: []excelize.Border{{Type: "bottom", Style: 2, Color: "2f3036"}},
	})
	b.define("text", excelize.Style{Alignment: &excelize.Alignment{WrapText: true, Vertical: "top"}})
	b.define("count", excelize.Style{Alignment: &excelize.Alignment{Vertical: "top"}})
	b.define("length", excelize.Style{CustomNumFmt: &number, Alignment: &excelize.Alignment{Vertical: "top"}})
	b.define("money", excelize.Style{CustomNumFmt: &money, Alignment: &excelize.Alignment{Vertical: "top"}})
	rule := []excelize.Border{{Type: "top", Style: 1, Color: "2f3036"}}
	b.define("sum", excelize.Style{Font: &excelize.Font{Bold: true}, Border: rule})
	b.define("sum-length", excelize.Style{Font: &excelize.Font{Bold: true}, Border: rule, CustomNumFmt: &number})
	b.define("sum-money", excelize.Style{Font: &excelize.Font{Bold: true}, Border: rule, CustomNumFmt: &money})
	return b
}

// lengthFormat shows millimetres as they are and inches in sixteenths.
func lengthFormat(lang *words.Catalogue) string {
	if lang.Units() == measure.Imperial {
		return "# ??/16"
	}
	return "General"
}

func (b *workbook) define(name string, s excelize.Style) {
	id, err := b.file.NewStyle(&s)
	b.keep(err)
	b.style[name] = id
}

func (b *workbook) keep(err error) { b.err = errors.Join(b.err, err) }

// number returns a length as the workbook counts it, in its unit.
func (b *workbook) number(l measure.Length) float64 {
	if b.words.Units() == measure.Imperial {
		return float64(l) / float64(measure.Inch)
	}
	return float64(l) / float64(measure.Millimetre)
}

// heading returns what heads a column: a length with its unit.
func (b *workbook) heading(c Column) string {
	if c.Kind != LengthColumn {
		return c.Heading
	}
	return c.Heading + " (" + b.words.Text("unit."+b.words.Units().String()) + ")"
}

// mostName is how many letters the name of a tab may have in Excel and others.
const mostName = 31

// tabName returns a name that a tab may have, and that no other has yet.
func (b *workbook) tabName(name string) string {
	name = strings.Trim(strings.Map(func(r rune) rune {
		if strings.ContainsRune(`[]:*?/\`, r) || r < ' ' {
			return ' '
		}
		return r
	}, name), " '")
	for n := 1; ; n++ {
		end := ""
		if n > 1 {
			end = fmt.Sprintf(" %d", n)
		}
		short := cutOff(name, mostName-len(end)) + end
		if key := strings.ToLower(short); !b.names[key] {
			b.names[key] = true
			return short
		}
	}
}

// cutOff returns as many whole letters of a text as fit into that many units of
// UTF-16.
func cutOff(text string, most int) string {
	n := 0
	for i, r := range text {
		if n++; r > 0xffff {
			n++
		}
		if n > most {
			return strings.TrimRight(text[:i], " '")
		}
	}
	return text
}

// write fills the tabs and writes everything.
func (b *workbook) write(w io.Writer) error {
	for _, t := range b.tabs {
		b.keep(t.write())
	}
	b.keep(b.file.SetDocProps(&excelize.DocProperties{Language: b.words.Tag(), Creator: "Firstdrop"}))
	if b.err != nil {
		return fmt.Errorf("sheet: workbook: %w", b.err)
	}
	var archive bytes.Buffer
	if err := b.file.Write(&archive); err != nil {
		return fmt.Errorf("sheet: workbook: %w", err)
	}
	return steadyZip(w, archive.Bytes())
}

// tab is one sheet of the workbook: rows of cells under heads.
type tab struct {
	book  *workbook
	name  string
	title string
	rows  [][]any // of excelize.Cell
	wide  []int   // letters that columns have room for
}

// tab begins a tab behind the others.
func (b *workbook) tab(title string) *tab {
	t := &tab{book: b, title: title, name: b.tabName(title)}
	if len(b.tabs) == 0 {
		b.keep(b.file.SetSheetName("Sheet1", t.name))
	} else {
		_, err := b.file.NewSheet(t.name)
		b.keep(err)
	}
	b.tabs = append(b.tabs, t)
	return t
}

// add adds a row.
func (t *tab) add(cells ...any) {
	for i, c := range cells {
		for len(t.wide) <= i {
			t.wide = append(t.wide, narrowest)
		}
		t.wide[i] = max(t.wide[i], min(lettersOf(c), widest))
	}
	t.rows = append(t.rows, cells)
}

// The widths of columns in letters; what is wider is broken into lines.
const narrowest, widest = 6, 34

// lettersOf is how much room a cell would like.
func lettersOf(c any) int {
	cell, ok := c.(excelize.Cell)
	if !ok {
		return 0
	}
	text, ok := cell.Value.(string)
	if !ok {
		return 9
	}
	longest, all := 0, utf8.RuneCountInString(text)
	for word := range strings.FieldsSeq(text) {
		longest = max(longest, utf8.RuneCountInString(word))
	}
	return max(longest, min(all, 12), all/2)*6/5 + 2 // bold letters are wider
}

// linesOf is how many lines a row takes when its texts are broken into the
// widths of the columns.
func (t *tab) linesOf(row []any) int {
	most := 1
	for i, c := range row {
		cell, ok := c.(excelize.Cell)
		if text, isText := cell.Value.(string); ok && isText {
			most = max(most, linesIn(text, t.wide[i]*5/6))
		}
	}
	return most
}

// linesIn is how many lines a text takes in so many letters.
func linesIn(text string, wide int) int {
	lines, used := 1, 0
	for word := range strings.FieldsSeq(text) {
		n := utf8.RuneCountInString(word)
		if used > 0 && used+1+n > wide {
			lines, used = lines+1, 0
		}
		used += min(used, 1) + n
	}
	return lines
}

// head adds the head row.
func (t *tab) head(headings ...string) {
	var cells []any
	for _, h := range headings {
		cells = append(cells, excelize.Cell{StyleID: t.book.style["head"], Value: h})
	}
	t.add(cells...)
}

// isEmpty reports whether nothing stands in a column below its heading.
func (t *tab) isEmpty(column int) bool {
	for _, row := range t.rows[1:] {
		if column >= len(row) || row[column] == nil {
			continue
		}
		if c, ok := row[column].(excelize.Cell); !ok || c.Formula != "" || c.Value != nil && c.Value != "" {
			return false
		}
	}
	return len(t.rows) > 1
}

// write puts the rows into the file and sets up how they are shown and printed.
func (t *tab) write() error {
	f := t.book.file
	if err := t.setUp(); err != nil {
		return err
	}
	s, err := f.NewStreamWriter(t.name)
	if err != nil {
		return err
	}
	for i, w := range t.wide {
		err := s.SetColWidth(i+1, i+1, float64(w))
		if t.isEmpty(i) { // it would make the others small on paper
			err = errors.Join(err, s.SetColVisible(i+1, i+1, false))
		}
		if err != nil {
			return err
		}
	}
	err = s.SetPanes(&excelize.Panes{Freeze: true, YSplit: 1, TopLeftCell: "A2", ActivePane: "bottomLeft"})
	for i, row := range t.rows {
		tall := excelize.RowOpts{Height: float64(15 * min(t.linesOf(row), 27))} // points; Excel knows 409 at most
		err = errors.Join(err, s.SetRow(fmt.Sprintf("A%d", i+1), row, tall))
	}
	return errors.Join(err, s.Flush())
}

// setUp says how the tab is printed: on its side, as wide as the page, the head
// row on every page, its title above and its number below.
func (t *tab) setUp() error {
	f := t.book.file
	size, lying, wide, tall := 9, "landscape", 1, 0 // 9 is A4, 1 is Letter
	if t.book.words.Page() == "Letter" {
		size = 1
	}
	fit := true
	title := strings.ReplaceAll(t.title, "&", "&&")
	return errors.Join(
		f.SetPageLayout(t.name, &excelize.PageLayoutOptions{Size: &size, Orientation: &lying, FitToWidth: &wide, FitToHeight: &tall}),
		f.SetSheetProps(t.name, &excelize.SheetPropsOptions{FitToPage: &fit}),
		f.SetHeaderFooter(t.name, &excelize.HeaderFooterOptions{OddHeader: "&L&B" + cutOff(title, 200), OddFooter: "&R&P / &N"}),
		f.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Titles", RefersTo: t.ref("$1:$1"), Scope: t.name}),
	)
}

// ref names cells of the tab from anywhere in the workbook.
func (t *tab) ref(cells string) string {
	return "'" + strings.ReplaceAll(t.name, "'", "''") + "'!" + cells
}
