package sheet

import (
	"encoding/csv"
	"io"
	"strings"

	"firstdrop/measure"
)

// table writes rows as CSV by RFC 4180: a header, lines that end in CR LF, and
// quotes where they are needed.
type table struct {
	sys  measure.System
	w    *csv.Writer
	head []string
	row  []string
	body [][]string
}

func newTable(w io.Writer, sys measure.System) *table {
	t := &table{sys: sys, w: csv.NewWriter(w)}
	t.w.UseCRLF = true
	return t
}

// text sets a column of the present row. The first row names the columns.
func (t *table) text(name, value string) {
	if len(t.body) == 0 {
		t.head = append(t.head, name)
	}
	t.row = append(t.row, inert(value))
}

// length sets a column with a length as a plain number of millimetres, and for
// people who measure in inches a second one as they read it.
func (t *table) length(name string, l measure.Length) {
	t.text(name+"_mm", "")
	t.row[len(t.row)-1] = strings.TrimSuffix(l.String(), " mm")
	if t.sys == measure.Imperial {
		t.text(name+"_ft_in", "")
		t.row[len(t.row)-1] = l.Format(t.sys)
	}
}

// blank leaves a column for a length empty.
func (t *table) blank(name string) {
	t.text(name+"_mm", "")
	if t.sys == measure.Imperial {
		t.text(name+"_ft_in", "")
	}
}

// end ends the present row.
func (t *table) end() {
	t.body = append(t.body, t.row)
	t.row = nil
}

// write writes everything.
func (t *table) write() error {
	if err := t.w.Write(t.head); err != nil {
		return err
	}
	return t.w.WriteAll(t.body)
}

// inert returns a text that no spreadsheet takes for a formula: one that begins
// with =, +, -, @, a tab or a line break gets an apostrophe before it.
func inert(text string) string {
	if text != "" && strings.ContainsRune("=+-@\t\r\n", rune(text[0])) {
		return "'" + text
	}
	return text
}
