package paper_test

import (
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
