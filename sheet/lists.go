package sheet

import (
	"fmt"

	"github.com/xuri/excelize/v2"

	"firstdrop/measure"
	"firstdrop/money"
	"firstdrop/plan"
)

// paperSums names where the workbook has the lists of one paper, and what their
// totals come to.
type paperSums struct {
	paper   int
	list    *tab // in hanging order
	rollMap *tab
	letter  map[string]string // of the columns of the map
	pieces  int
	cuts    int
	rolls   int
	cut     measure.Length
	waste   measure.Length
}

// lists adds the lists of one paper.
func (b *workbook) lists(p *plan.Plan, paper int) (s paperSums, err error) {
	s.paper = paper
	tables := make([]*Table, 3)
	for i, by := range []ListOrder{AsHung, AsCut} {
		if tables[i], err = CuttingTable(p, paper, by, b.words); err != nil {
			return s, err
		}
	}
	if tables[2], err = RollTable(p, paper, b.words); err != nil {
		return s, err
	}
	name := p.Task.Papers[paper].Name
	s.list = b.list(tables[0], name)
	b.list(tables[1], name)
	s.rollMap = b.fill(tables[2], name)
	s.letter = letters(tables[2])
	s.count(tables[0], tables[2])
	b.mapTotals(&s, tables[2])
	return s, nil
}

// count works out what the totals come to, from the cells that they add up.
func (s *paperSums) count(list, rolls *Table) {
	s.pieces = len(list.Rows)
	at := map[string]int{}
	for i, c := range rolls.Columns {
		at[c.ID] = i
	}
	for _, r := range rolls.Rows {
		if r[at["order"]].Count != 1 || !r[at["cut"]].Filled {
			continue
		}
		s.cuts++
		s.rolls = max(s.rolls, r[at["roll"]].Count)
		s.cut += r[at["length"]].Length
		s.waste += r[at["waste"]].Length
	}
}

// letters names the columns of a table as a workbook does: A, B, …
func letters(t *Table) map[string]string {
	out := map[string]string{}
	for i, c := range t.Columns {
		out[c.ID], _ = excelize.ColumnNumberToName(i + 1)
	}
	return out
}

// fill adds a tab with a table.
func (b *workbook) fill(table *Table, paper string) *tab {
	t := b.tab(table.Title + " " + paper)
	var head []string
	for _, c := range table.Columns {
		head = append(head, b.heading(c))
	}
	t.head(head...)
	for _, r := range table.Rows {
		var cells []any
		for i, c := range r {
			cells = append(cells, b.cell(table.Columns[i].Kind, c))
		}
		t.add(cells...)
	}
	return t
}

// list adds a tab with a cutting list and its totals: how many pieces, and how
// long they are together.
func (b *workbook) list(table *Table, paper string) *tab {
	t := b.fill(table, paper)
	at, last := letters(table), len(table.Rows)+1
	total := measure.Length(0)
	sum := make([]any, len(table.Columns))
	for i, c := range table.Columns {
		sum[i] = excelize.Cell{StyleID: b.style["sum"]}
		switch c.ID {
		case "piece":
			sum[i] = b.formula("sum", fmt.Sprintf("COUNTA(%s2:%s%d)", at[c.ID], at[c.ID], last), len(table.Rows))
		case "length":
			for _, r := range table.Rows {
				total += r[i].Length
			}
			sum[i] = b.formula("sum-length", fmt.Sprintf("SUM(%s2:%s%d)", at[c.ID], at[c.ID], last), b.number(total))
		}
	}
	t.add(sum...)
	return t
}

// mapTotals adds the totals of a roll map, of the first order of every roll:
// cuts, rolls, what is cut and what falls between.
func (b *workbook) mapTotals(s *paperSums, table *Table) {
	sum := make([]any, len(table.Columns))
	for i, c := range table.Columns {
		sum[i] = excelize.Cell{StyleID: b.style["sum"]}
		switch c.ID {
		case "roll":
			sum[i] = b.formula("sum", s.rollsFormula(""), s.rolls)
		case "cut":
			sum[i] = b.formula("sum", s.cutsFormula(""), s.cuts)
		case "length":
			sum[i] = b.formula("sum-length", s.sumFormula("length", ""), b.number(s.cut))
		case "waste":
			sum[i] = b.formula("sum-length", s.sumFormula("waste", ""), b.number(s.waste))
		}
	}
	s.rollMap.add(sum...)
}

// cells names a column of the map without its totals, which stand in the row
// below; of is the tab as named from elsewhere, or "".
func (s *paperSums) cells(column, of string) string {
	last := len(s.rollMap.rows)
	if of != "" { // the totals are there already
		last--
	}
	return fmt.Sprintf("%s%s2:%s%d", of, s.letter[column], s.letter[column], last)
}

func (s *paperSums) rollsFormula(of string) string { return "MAX(" + s.cells("roll", of) + ")" }

func (s *paperSums) cutsFormula(of string) string {
	return fmt.Sprintf(`COUNTIFS(%s,1,%s,">0")`, s.cells("order", of), s.cells("cut", of))
}

func (s *paperSums) sumFormula(column, of string) string {
	return fmt.Sprintf(`SUMIFS(%s,%s,1,%s,">0")`, s.cells(column, of), s.cells("order", of), s.cells("cut", of))
}

// cell writes what stands in a table.
func (b *workbook) cell(kind ColumnKind, c Cell) excelize.Cell {
	switch {
	case kind == LengthColumn && c.Filled:
		return excelize.Cell{StyleID: b.style["length"], Value: b.number(c.Length)}
	case kind == CountColumn && c.Filled:
		return excelize.Cell{StyleID: b.style["count"], Value: c.Count}
	case c.Text == "":
		return excelize.Cell{StyleID: b.style["text"]}
	}
	return excelize.Cell{StyleID: b.style["text"], Value: c.Text}
}

// formula is a cell that is worked out, with the value that it comes to.
func (b *workbook) formula(style, formula string, value any) excelize.Cell {
	return excelize.Cell{StyleID: b.style[style], Formula: formula, Value: value}
}

// order fills the tab that says what to buy, and below it what becomes of it.
func (b *workbook) order(t *tab, p *plan.Plan, sums []paperSums) {
	text := func(id string) string { return b.words.Text("column." + id) }
	t.head(text("paper"), b.heading(Column{Heading: text("width"), Kind: LengthColumn}),
		b.heading(Column{Heading: text("roll-length"), Kind: LengthColumn}), text("rolls-needed"), text("rolls-kept"), text("per-pack"),
		text("packs"), text("rolls-bought"), text("spare"), text("pack-price"), text("cost"), text("currency"))
	for i := range p.Papers {
		if len(p.Papers[i].Batches) > 0 {
			b.orderRows(t, p, i)
		}
	}
	b.costTotal(t, p)
	t.add()
	t.head(text("paper"), text("pieces"), text("cuts"), text("rolls-cut"),
		b.heading(Column{Heading: text("length-cut"), Kind: LengthColumn}), b.heading(Column{Heading: text("waste-between"), Kind: LengthColumn}))
	for _, s := range sums {
		of := s.rollMap.ref("")
		t.add(
			b.cell(TextColumn, Cell{Text: p.Task.Papers[s.paper].Name}),
			b.formula("count", "COUNTA("+s.list.ref(fmt.Sprintf("A2:A%d", s.pieces+1))+")", s.pieces),
			b.formula("count", s.cutsFormula(of), s.cuts),
			b.formula("count", s.rollsFormula(of), s.rolls),
			b.formula("length", s.sumFormula("length", of), b.number(s.cut)),
			b.formula("length", s.sumFormula("waste", of), b.number(s.waste)),
		)
	}
}

// orderRows adds a row for every size of a paper that is to be bought.
func (b *workbook) orderRows(t *tab, p *plan.Plan, paper int) {
	label := &p.Task.Papers[paper]
	for _, line := range p.Papers[paper].Orders {
		if line.Bought() == 0 {
			continue
		}
		n := len(t.rows) + 1
		cells := []any{
			b.cell(TextColumn, Cell{Text: label.Name}),
			b.cell(LengthColumn, Cell{Length: label.Width, Filled: true}),
			b.cell(LengthColumn, Cell{Length: line.RollLength, Filled: true}),
			b.cell(CountColumn, Cell{Count: line.Rolls, Filled: true}),
			b.cell(CountColumn, Cell{Count: line.Kept, Filled: true}),
			b.cell(CountColumn, Cell{Count: line.PerPack, Filled: true}),
			b.formula("count", fmt.Sprintf("ROUNDUP((D%d+E%d)/F%d,0)", n, n, n), line.Packs),
			b.formula("count", fmt.Sprintf("G%d*F%d", n, n), line.Packs*line.PerPack),
			b.formula("count", fmt.Sprintf("H%d-D%d-E%d", n, n, n), line.Spare),
		}
		if line.Cost.IsStated() {
			cells = append(cells,
				excelize.Cell{StyleID: b.style["money"], Value: amount(line.Cost) / float64(line.Packs)},
				b.formula("money", fmt.Sprintf("G%d*J%d", n, n), amount(line.Cost)),
				b.cell(TextColumn, Cell{Text: string(line.Cost.Currency)}))
		}
		t.add(cells...)
	}
}

// costTotal adds what everything costs together, where prices are in one
// currency.
func (b *workbook) costTotal(t *tab, p *plan.Plan) {
	var total money.Amount
	for i := range p.Papers {
		for _, line := range p.Papers[i].Orders {
			sum, err := total.Plus(line.Cost)
			if err != nil {
				return
			}
			total = sum
		}
	}
	if !total.IsStated() {
		return
	}
	last := len(t.rows)
	cells := make([]any, 12)
	for i := range cells {
		cells[i] = excelize.Cell{StyleID: b.style["sum"]}
	}
	cells[0] = excelize.Cell{StyleID: b.style["sum"], Value: b.words.Text("table.total")}
	cells[10] = b.formula("sum-money", fmt.Sprintf("SUM(K2:K%d)", last), amount(total))
	cells[11] = excelize.Cell{StyleID: b.style["sum"], Value: string(total.Currency)}
	t.add(cells...)
}

// amount returns an amount in whole units of its currency.
func amount(a money.Amount) float64 {
	decimals, _ := a.Currency.Decimals()
	value := float64(a.Minor)
	for range decimals {
		value /= 10
	}
	return value
}
