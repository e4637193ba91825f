package paper_test

import (
	"strings"
	"testing"

	"firstdrop/measure"
	"firstdrop/paper"
)

// at returns where a design begins.
func at(l measure.Length) *measure.Length { return &l }

// opened is a sound invented paper of which three rolls have been opened: one
// whole, one with flaws, one in two lengths.
func opened() *paper.Paper {
	p := ferns()
	p.Batch = "4711"
	p.Rolls = []paper.Roll{
		{Name: "1", Batch: "4711", Length: 10020 * mm, Begins: at(0)},
		{Name: "2", Batch: "4711", Length: 10060 * mm, Begins: at(639 * mm), Flaws: []paper.Flaw{{0, 20 * mm}, {4 * measure.Metre, 4100 * mm}}},
		{Name: "3", Batch: "4711", Parts: []paper.RollPart{{6 * measure.Metre, at(100 * mm)}, {4 * measure.Metre, at(200 * mm)}}},
	}
	return p
}

// faults returns the text of what is wrong, without the paper's name.
func faults(p *paper.Paper) string {
	err := p.Check()
	if err == nil {
		return ""
	}
	return strings.TrimPrefix(err.Error(), `paper "Ferns": `)
}

func TestCheckOfRolls(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(p *paper.Paper)
		want   string
	}{
		{"sound", func(p *paper.Paper) {}, ""},
		{"not looked at yet", func(p *paper.Paper) { p.Rolls[0].Begins = nil }, ""},
		{"no name", func(p *paper.Paper) { p.Rolls[0].Name = "" }, "roll 1 of the list: name is missing; write on each roll what tells it from the others"},
		{"same name", func(p *paper.Paper) { p.Rolls[2].Name = "1" }, `roll "1": name is the name of another roll already; give each its own`},
		{"no length", func(p *paper.Paper) { p.Rolls[0].Length = 0 }, `roll "1": length is missing; measure the roll, or list its parts`},
		{"negative", func(p *paper.Paper) { p.Rolls[0].Length = -1 * mm }, `roll "1": length -1 mm must be more than 0`},
		{"endless", func(p *paper.Paper) { p.Rolls[0].Length = 2 * measure.MaxLength }, `roll "1": length 2000000 mm is too large (1000000 mm)`},
		{"length and parts", func(p *paper.Paper) { p.Rolls[2].Length = measure.Metre }, `roll "3": length 1000 mm is stated, and parts too; a roll in parts has the lengths of its parts`},
		{"one part", func(p *paper.Paper) { p.Rolls[2].Parts = p.Rolls[2].Parts[:1] }, `roll "3": parts must be two or more; write one length as the roll's length`},
		{"part of nothing", func(p *paper.Paper) { p.Rolls[2].Parts[1].Length = 0 }, `roll "3", part 2: length must be more than 0`},
		{"begins after a repeat", func(p *paper.Paper) { p.Rolls[0].Begins = at(640 * mm) }, `roll "1": begins 640 mm must be less than the repeat: the first place counts (640 mm)`},
		{"begins before the roll", func(p *paper.Paper) { p.Rolls[0].Begins = at(-1 * mm) }, `roll "1": begins -1 mm must not be less than 0`},
		{"flawed and not looked at", func(p *paper.Paper) { p.Rolls[1].Begins = nil }, `roll "2": begins is missing; with a flaw or in parts, the roll has been opened: measure where the design first begins`},
		{"part not looked at", func(p *paper.Paper) { p.Rolls[2].Parts[0].Begins = nil }, `roll "3", part 1: begins is missing; with a flaw or in parts, the roll has been opened: measure where the design first begins`},
		{"begins of all parts", func(p *paper.Paper) { p.Rolls[2].Begins = at(5 * mm) }, `roll "3": begins 5 mm belongs to each of the parts; write it there`},
		{"no repeat", func(p *paper.Paper) {
			p.Repeat, p.Match, p.Motif = 0, paper.Match{}, nil
			p.Rolls[0].Begins = nil
		}, `roll "2": begins 639 mm is where a design begins, and the paper has no repeat; leave it out; ` +
			`roll "3", part 1: begins 100 mm is where a design begins, and the paper has no repeat; leave it out; ` +
			`roll "3", part 2: begins 200 mm is where a design begins, and the paper has no repeat; leave it out`},
		{"flawed without a repeat", func(p *paper.Paper) {
			p.Repeat, p.Match, p.Motif, p.Rolls = 0, paper.Match{}, nil, p.Rolls[1:2]
			p.Rolls[0].Begins = nil
		}, ""},
		{"flaw before the roll", func(p *paper.Paper) { p.Rolls[1].Flaws[0].From = -1 * mm }, `roll "2", flaw 1: from -1 mm must not be less than 0`},
		{"flaw backwards", func(p *paper.Paper) { p.Rolls[1].Flaws[1].To = 4 * measure.Metre }, `roll "2", flaw 2: to 4000 mm must lie after its from (4000 mm)`},
		{"flaws overlap", func(p *paper.Paper) { p.Rolls[1].Flaws[1].From = 19 * mm }, `roll "2", flaw 2: from 19 mm lies before the end of the flaw before; list flaws from the leading end on, and join those that touch (20 mm)`},
		{"flaw beyond the end", func(p *paper.Paper) { p.Rolls[1].Flaws[1].To = 10061 * mm }, `roll "2", flaw 2: to 10061 mm lies beyond the end of the roll (10060 mm)`},
		{"flaw in the second part", func(p *paper.Paper) { p.Rolls[2].Flaws = []paper.Flaw{{9 * measure.Metre, 10 * measure.Metre}} }, ""},
		{"flaw beyond the last part", func(p *paper.Paper) { p.Rolls[2].Flaws = []paper.Flaw{{9 * measure.Metre, 11 * measure.Metre}} }, `roll "3", flaw 1: to 11000 mm lies beyond the end of the roll (10000 mm)`},
		{"nothing but flaw", func(p *paper.Paper) { p.Rolls[1].Flaws = []paper.Flaw{{0, 10060 * mm}} }, `roll "2": flaws leave nothing of the roll; leave the roll out`},
		{"a barn of rolls", func(p *paper.Paper) { p.Rolls = make([]paper.Roll, 201) }, "rolls are too many"},
	} {
		p := opened()
		c.change(p)
		if got := faults(p); got != c.want {
			t.Errorf("%s:\n got %s\nwant %s", c.name, got, c.want)
		}
	}
}

// Fields are named as in a job document, so that a mistake is found there.
func TestCheckOfRollsNamesFields(t *testing.T) {
	p := opened()
	p.Rolls[1].Flaws[1].To, p.Rolls[2].Parts[1].Length = 0, -1
	want := []string{"rolls[1].flaws[1].to", "rolls[2].parts[1].length"}
	all, _ := p.Check().(paper.LabelErrors)
	for i, e := range all {
		if i >= len(want) || e.Field != want[i] {
			t.Errorf("fault %d is of %s", i, e.Field)
		}
	}
	if len(all) != len(want) {
		t.Errorf("%d faults, want %d", len(all), len(want))
	}
}

func TestMirroredRolls(t *testing.T) {
	p := opened()
	p.Available, p.Also = new(int), []paper.Offer{{RollLength: 5 * measure.Metre, Pack: 1, Available: new(int)}}
	m := p.Mirrored()
	if err := m.Check(); err != nil {
		t.Fatal(err)
	}
	for i := range p.Rolls {
		if m.Rolls[i].Total() != p.Rolls[i].Total() {
			t.Errorf("roll %d has become %v", i, m.Rolls[i].Total())
		}
	}
	*m.Available, *m.Also[0].Available, *m.Rolls[1].Begins = 3, 4, 5
	m.Rolls[1].Flaws[0].To, *m.Rolls[2].Parts[0].Begins = 6, 7
	m.Rolls[0].Name = "other"
	if *p.Available != 0 || *p.Also[0].Available != 0 || *p.Rolls[1].Begins != 639*mm || p.Rolls[1].Flaws[0].To != 20*mm || *p.Rolls[2].Parts[0].Begins != 100*mm || p.Rolls[0].Name != "1" {
		t.Errorf("a change of the mirrored paper changed the paper: %+v", p)
	}
}
