package paper_test

import (
	"fmt"
	"testing"

	"firstdrop/finding"
	"firstdrop/measure"
	"firstdrop/paper"
)

func TestFindings(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(p *paper.Paper)
		want   string
	}{
		{"nothing to ask", func(p *paper.Paper) {}, ""},
		{"53 typed for 530", func(p *paper.Paper) { p.Width = 53 * mm }, "width_unusual "},
		{"narrower than 50 mm", func(p *paper.Paper) { p.Width = 49 * mm }, "width_unusual "},
		{"5.30 m typed for 0.53", func(p *paper.Paper) { p.Width = 5300 * mm }, "width_unusual "},
		{"10.05 read as mm", func(p *paper.Paper) { p.RollLength, p.Repeat = 10*mm, 10*mm }, "roll_unusual outside_en233 "},
		{"6.4 m repeat", func(p *paper.Paper) { p.Repeat = 6400 * mm }, "repeat_unusual "},
		{"64/21: comes back after 64", func(p *paper.Paper) { p.Match = paper.Match{Kind: paper.Offset, Length: 21 * cm} }, "many_alternates "},
		{"64/24 is still usual", func(p *paper.Paper) { p.Match = paper.Match{Kind: paper.Offset, Length: 24 * cm} }, ""},
		{"dry 500, hung 530", func(p *paper.Paper) { p.DryWidth = 500 * mm }, "dry_width_unusual "},
		{"dry 523, hung 530", func(p *paper.Paper) { p.DryWidth = 523 * mm }, ""},
		{"two designs across", func(p *paper.Paper) { p.Across = 265 * mm }, ""},
		{"a straight match that is a half drop", func(p *paper.Paper) {
			p.Printed = &paper.Design{Repeat: p.Repeat, Match: paper.Match{Kind: paper.Straight}}
		}, "label_differs "},
		{"a repeat that is another", func(p *paper.Paper) {
			p.Printed = &paper.Design{Repeat: p.Repeat + 6*mm, Match: p.Match}
		}, "label_differs "},
		{"a design that the label does not know of", func(p *paper.Paper) { p.Printed = &paper.Design{} }, "label_differs "},
		{"a label that is right", func(p *paper.Paper) {
			p.Printed = &paper.Design{Repeat: p.Repeat + 2*mm, Match: p.Match}
		}, ""},
		{"design wider than the drop", func(p *paper.Paper) { p.Across = 1060 * mm }, "across_uneven "},
		{"soaking though the wall is pasted", func(p *paper.Paper) { p.SoakMin = 8 }, "soak_unexpected "},
		{"soaking where the paper is pasted", func(p *paper.Paper) { p.SoakMin, p.Paste = 8, paper.PasteThePaper }, ""},
		{"no category", func(p *paper.Paper) { p.Width = 560 * mm }, "outside_en233 "},
	} {
		p := ferns()
		c.change(p)
		got := ""
		for _, f := range p.Findings() {
			got += string(f.Code) + " "
			if f.Place.Paper != "Ferns" {
				t.Errorf("%s: %s has no place", c.name, f.Code)
			}
		}
		if got != c.want {
			t.Errorf("%s: findings %q, want %q", c.name, got, c.want)
		}
	}
}

func TestFindingsCarryTheirFigures(t *testing.T) {
	p := ferns()
	p.Width = 53 * mm
	f := p.Findings()[0]
	if w, ok := f.Size("width"); !ok || w != 53*measure.Millimetre || f.Severity != finding.Caution {
		t.Errorf("finding %+v", f)
	}
}

func TestFindingsOfRolls(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(p *paper.Paper)
		want   string // code, word and count
	}{
		{"nothing to ask", func(p *paper.Paper) {}, ""},
		// EN 233, clause 5: a roll of 10.05 m may be 15 ‰ longer or shorter, from
		// 9.899 m (whole millimetres) to 10.201 m.
		{"as long as may be", func(p *paper.Paper) { p.Rolls[0].Length = 10201 * mm }, ""},
		{"longer", func(p *paper.Paper) { p.Rolls[0].Length = 10202 * mm }, "roll_longer 1 0 "},
		{"as short as may be", func(p *paper.Paper) { p.Rolls[0].Length = 9899 * mm }, ""},
		{"shorter", func(p *paper.Paper) { p.Rolls[0].Length = 9898 * mm }, "roll_shorter 1 0 "},
		{"of a shorter size", func(p *paper.Paper) {
			p.Also = []paper.Offer{{RollLength: 5 * measure.Metre, Pack: 1}}
			p.Rolls[0].Length = 4950 * mm
		}, ""},
		{"a scrap", func(p *paper.Paper) { p.Rolls[0].Length = 600 * mm }, "roll_shorter 1 0 roll_no_repeat 1 0 "},
		{"two of another batch", func(p *paper.Paper) { p.Rolls[0].Batch, p.Rolls[2].Batch = "4688", "4688" }, "other_batch 4688 2 "},
		{"four lengths", func(p *paper.Paper) {
			q := paper.RollPart{Length: 2500 * mm, Begins: at(0)}
			p.Rolls[2].Parts = []paper.RollPart{q, q, q, q}
		}, "many_roll_parts 3 4 "},
	} {
		p := opened()
		c.change(p)
		if err := p.Check(); err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		got := ""
		for _, f := range p.Findings() {
			got += fmt.Sprintf("%s %s %d ", f.Code, f.Word, f.Count)
		}
		if got != c.want {
			t.Errorf("%s: findings %q, want %q", c.name, got, c.want)
		}
	}
}
