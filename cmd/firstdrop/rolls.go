package main

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"github.com/spf13/cobra"

	"firstdrop/cutting"
	"firstdrop/measure"
	"firstdrop/tell"
)

func (p *program) rollsCommand() *cobra.Command {
	var units unitsFlag
	var asJSON bool
	c := p.command(cobra.Command{
		Use: "rolls JOB",
		Example: `  firstdrop rolls room.yaml
  firstdrop rolls room.yaml --json`,
		Args:              oneJob,
		ValidArgsFunction: completeJob,
	}, func(c *cobra.Command, args []string) error {
		pl, err := p.plan(c.Context(), args[0], units)
		if err != nil {
			return err
		}
		if asJSON {
			return written(writeJSON(p.out, pl.rollDocuments()))
		}
		return p.printRolls(pl)
	})
	c.Flags().BoolVar(&asJSON, "json", false, "")
	return units.addTo(c)
}

func (p *program) printRolls(pl *planned) error {
	var lines []string
	for i := range pl.plan.Papers {
		rolls := tell.Rolls(pl.plan, i)
		if len(rolls) == 0 && tell.Missing(pl.lang, pl.plan, i) == "" {
			continue
		}
		for _, l := range wrap(pl.rollsHeading(i, len(rolls)), p.out.width) {
			lines = append(lines, p.out.in(bold, l))
		}
		lines = append(lines, p.out.bars(pl, rolls)...)
		if text := tell.Missing(pl.lang, pl.plan, i); text != "" {
			for _, l := range wrap(pl.text("page.of", "title", pl.text("label.missing"), "name", printable(text)), p.out.width) {
				lines = append(lines, p.out.in(red, l))
			}
		}
	}
	if len(lines) == 0 {
		lines = []string{pl.text("rolls.nothing")}
	} else {
		lines = append(lines, wrap(pl.text("rolls.legend"), p.out.width)...)
	}
	_, err := fmt.Fprintln(p.out, strings.Join(lines, "\n"))
	return written(err)
}

// rollsHeading counts the rolls of a paper, and how often the hanger changes from
// one to another.
func (pl *planned) rollsHeading(i, rolls int) string {
	text := pl.text("rolls.heading", "paper", printable(pl.plan.Task.Papers[i].Name), "rolls", tell.Rolled(pl.lang, rolls))
	changes, least, known := int64(0), int64(0), false
	for k := range pl.plan.Papers[i].Batches {
		for _, g := range pl.plan.Papers[i].Batches[k].Cutting.Goals {
			if g.Goal == cutting.FewestChanges {
				changes, least, known = changes+g.Value, least+g.Bound, true
			}
		}
	}
	switch {
	case !known || rolls < 2:
		return text
	case least == changes:
		return pl.text("rolls.changes", "rolls", text, "n", int(changes))
	}
	return pl.text("rolls.changes-within", "rolls", text, "n", int(changes), "off", int(changes-least))
}

// What fills a bar.
const (
	pieceInk = '█' // pieces, by turns
	otherInk = '▓'
	waitInk  = '·'
	flawInk  = 'X'
	partInk  = '|'
	restInk  = '░'
)

// bars draws rolls to one scale.
func (s *screen) bars(pl *planned, rolls []tell.Roll) (lines []string) {
	longest := measure.Length(1)
	for i := range rolls {
		longest = max(longest, rolls[i].Length)
	}
	for i := range rolls {
		b := newBar(&rolls[i], longest, s.width-4)
		b.draw(pl)
		lines = append(lines, wrap(pl.rollHeading(&rolls[i]), s.width)...)
		for _, l := range b.names {
			if text := strings.TrimRight(string(l), " "); text != "" {
				lines = append(lines, "    "+text)
			}
		}
		lines = append(lines, "    "+string(b.cells))
	}
	return lines
}

// rollHeading says which roll it is, how long, and what is left of it.
func (pl *planned) rollHeading(r *tell.Roll) string {
	text := pl.text("page.roll", "roll", printable(r.Title()))
	if r.Batch != "" {
		text += ", " + pl.text("page.roll-batch", "batch", printable(r.Batch))
	}
	if r.InHand {
		text += ", " + pl.text("page.roll-in-hand")
	}
	text = pl.text("page.of", "title", text, "name", pl.lang.Length(r.Length))
	if left := r.Left.FloorTo(measure.Millimetre); left > 0 {
		text += ", " + pl.text("rolls.left", "size", left)
	}
	if len(r.Orders) > 1 {
		text = tell.Joined(pl.lang, []string{text, pl.text("rolls.orders")})
	}
	return text
}

// bar is a roll as a line of characters, with the names of its pieces in the
// lines above.
type bar struct {
	roll  *tell.Roll
	cells []rune
	names [][]rune
	scale measure.Length // that the width shows
	width int
}

func newBar(r *tell.Roll, longest measure.Length, width int) *bar {
	b := &bar{roll: r, scale: longest, width: width}
	b.cells = []rune(strings.Repeat(string(waitInk), max(1, b.at(r.Length))))
	return b
}

// at returns the column of a place on the roll.
func (b *bar) at(l measure.Length) int {
	return int((int64(l)*int64(b.width) + int64(b.scale)/2) / int64(b.scale))
}

func (b *bar) draw(pl *planned) {
	r := b.roll
	end := measure.Length(0)
	for n, cut := range r.Orders[0].Cuts {
		ink := pieceInk
		if n%2 == 1 {
			ink = otherInk
		}
		b.fill(cut.From, cut.To, ink)
		b.name(b.at(cut.From), tell.Names(r.Gifts(pl.plan, cut)))
		end = cut.To
	}
	if r.Left > 0 {
		b.fill(max(end, r.Length-r.Left), r.Length, restInk)
	}
	for _, f := range r.Flaws {
		b.fill(f.From, f.To, flawInk)
	}
	for _, at := range r.Parts {
		b.fill(at, at, partInk)
	}
}

// fill fills a stretch, one column at least.
func (b *bar) fill(from, to measure.Length, ink rune) {
	first := min(b.at(from), len(b.cells)-1)
	for c := first; c < min(max(b.at(to), first+1), len(b.cells)); c++ {
		b.cells[c] = ink
	}
}

// name writes a name above a column, in the lowest line that has room for it.
func (b *bar) name(column int, text string) {
	size := utf8.RuneCountInString(text)
	column = max(0, min(column, b.width-size))
	for k := len(b.names) - 1; k >= -1; k-- {
		if k < 0 {
			b.names = append([][]rune{[]rune(strings.Repeat(" ", b.width+1))}, b.names...)
			k = 0
		}
		line := b.names[k]
		if strings.TrimSpace(string(line[max(0, column-1):min(column+size+1, len(line))])) == "" {
			copy(line[column:], []rune(text))
			return
		}
	}
}
