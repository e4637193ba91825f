package sheet

import (
	"encoding/csv"
	"io"
	"strings"

	"firstdrop/measure"
	"firstdrop/words"
)

// Table is a list with a heading over each column, to be written as CSV or as a
// sheet of a workbook.
type Table struct {
	Title   string
	Columns []Column
	Rows    [][]Cell
	words   *words.Catalogue
	row     []Cell
}

// Column is what stands in a column.
type Column struct {
	ID      string // "length", in every language
	Heading string
	Kind    ColumnKind
}

// ColumnKind is the kind of what stands in a column.
type ColumnKind int

// The kinds of columns.
const (
	TextColumn ColumnKind = iota
	CountColumn
	LengthColumn
)

// Cell is what stands in one place of a table.
type Cell struct {
	Text   string
	Count  int
	Length measure.Length
	Filled bool // a number or a length is there
}

func newTable(title string, c *words.Catalogue) *Table {
	return &Table{Title: c.Text("table." + title), words: c}
}

// put sets a column of the present row. The first row names the columns.
func (t *Table) put(id string, kind ColumnKind, cell Cell) {
	if len(t.Rows) == 0 {
		t.Columns = append(t.Columns, Column{id, t.words.Text("column." + id), kind})
	}
	t.row = append(t.row, cell)
}

func (t *Table) text(id, value string) { t.put(id, TextColumn, Cell{Text: value}) }

func (t *Table) count(id string, n int) { t.put(id, CountColumn, Cell{Count: n, Filled: true}) }

func (t *Table) length(id string, l measure.Length) {
	t.put(id, LengthColumn, Cell{Length: l, Filled: true})
}

// blank leaves a column empty: a text stands there at most.
func (t *Table) blank(id string, kind ColumnKind, text string) { t.put(id, kind, Cell{Text: text}) }

// end ends the present row.
func (t *Table) end() {
	t.Rows = append(t.Rows, t.row)
	t.row = nil
}

// WriteCSV writes the table by RFC 4180: a header, lines that end in CR LF, and
// quotes where they are needed. A length is a plain number of millimetres with a
// decimal point, and for people who measure in inches there is a second column
// as they read it. A heading is one word.
func (t *Table) WriteCSV(w io.Writer) error {
	out := csv.NewWriter(w)
	out.UseCRLF = true
	var head []string
	for _, c := range t.Columns {
		name := strings.ReplaceAll(c.Heading, " ", "_")
		if c.Kind != LengthColumn {
			head = append(head, name)
			continue
		}
		head = append(head, name+"_mm")
		if t.isImperial() {
			head = append(head, name+"_ft_in")
		}
	}
	lines := [][]string{head}
	for _, r := range t.Rows {
		lines = append(lines, t.fields(r))
	}
	return out.WriteAll(lines)
}

func (t *Table) isImperial() bool { return t.words.Units() == measure.Imperial }

// fields writes the cells of a row.
func (t *Table) fields(row []Cell) (fields []string) {
	for i, c := range row {
		switch kind := t.Columns[i].Kind; {
		case kind == LengthColumn && c.Filled:
			fields = append(fields, strings.TrimSuffix(c.Length.String(), " mm"))
			if t.isImperial() {
				fields = append(fields, c.Length.Format(measure.Imperial))
			}
		case kind == LengthColumn && t.isImperial():
			fields = append(fields, "", "")
		case kind == CountColumn && c.Filled:
			fields = append(fields, t.words.Text("bare.count", "n", c.Count))
		default:
			fields = append(fields, inert(c.Text))
		}
	}
	return fields
}

// inert returns a text that no spreadsheet takes for a formula: one that begins
// with =, +, -, @, a tab or a line break gets an apostrophe before it.
func inert(text string) string {
	if text != "" && strings.ContainsRune("=+-@\t\r\n", rune(text[0])) {
		return "'" + text
	}
	return text
}
