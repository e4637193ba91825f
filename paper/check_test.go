package paper_test

import (
	"errors"
	"fmt"
	"reflect"
	"strings"
	"testing"

	"firstdrop/measure"
	"firstdrop/money"
	"firstdrop/paper"
)

func TestCheckNamesEveryFault(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(p *paper.Paper)
		want   string // fields and faults, in order
	}{
		{"sound", func(p *paper.Paper) {}, ""},
		{"no width", func(p *paper.Paper) { p.Width, p.Motif = 0, nil }, "width must be more than 0"},
		{"narrower than nothing", func(p *paper.Paper) { p.Width, p.Motif = -530*mm, nil }, "width -530 mm must be more than 0"},
		{"no roll", func(p *paper.Paper) { p.RollLength = 0 }, "roll must be more than 0"},
		{"endless roll", func(p *paper.Paper) { p.RollLength = 2 * measure.MaxLength }, "roll 2000000 mm is too large (1000000 mm)"},
		{"negative repeat", func(p *paper.Paper) { p.Repeat, p.Match, p.Motif = -1*mm, paper.Match{}, nil }, "repeat -1 mm must not be less than 0"},
		{"repeat longer than the roll", func(p *paper.Paper) { p.Repeat = 11 * measure.Metre }, "repeat 11000 mm is longer than the roll (10050 mm)"},
		{"straight without repeat", func(p *paper.Paper) {
			p.Repeat, p.Match.Kind, p.Match.Num, p.Match.Den, p.Motif = 0, paper.Straight, 0, 0, nil
		}, "match needs a repeat, and none is stated"},
		{"offset without repeat", func(p *paper.Paper) { p.Repeat, p.Motif = 0, nil }, "match needs a repeat, and none is stated"},
		{"offset beyond the repeat", func(p *paper.Paper) { p.Match = paper.Match{Kind: paper.Offset, Length: 640 * mm} }, "match 640 mm is no offset: it must be more than 0 and less than the repeat (640 mm)"},
		{"offset of nothing", func(p *paper.Paper) { p.Match = paper.Match{Kind: paper.Offset} }, "match 0 mm is no offset: it must be more than 0 and less than the repeat (640 mm)"},
		{"offset of a whole", func(p *paper.Paper) { p.Match.Num = 2 }, "match is no offset: it must be more than 0 and less than the repeat"},
		{"offset twice over", func(p *paper.Paper) { p.Match.Length = 320 * mm }, "match is no offset: it must be more than 0 and less than the repeat"},
		{"not in lowest terms", func(p *paper.Paper) { p.Match.Num, p.Match.Den = 2, 4 }, "match is an offset that is not in lowest terms"},
		{"too fine", func(p *paper.Paper) { p.Match.Num, p.Match.Den = 1, 1001 }, "match is too large"},
		{"straight with an offset", func(p *paper.Paper) { p.Match.Kind = paper.Straight }, "match is none of the known ones"},
		{"motif off the paper", func(p *paper.Paper) { p.Motif.Axis = 531 * mm }, "motif.axis 531 mm lies outside the width (530 mm)"},
		{"motif beyond the repeat", func(p *paper.Paper) { p.Motif.Head, p.Motif.Tall = 640*mm, 641*mm }, "motif.head 640 mm is more than the repeat (640 mm); motif.tall 641 mm is more than the repeat (640 mm)"},
		{"motif less than nothing", func(p *paper.Paper) { p.Motif.Head, p.Motif.Tall = -1*mm, -2*mm }, "motif.head -1 mm must not be less than 0 (640 mm); motif.tall -2 mm must not be less than 0 (640 mm)"},
		{"motif without repeat", func(p *paper.Paper) { p.Repeat, p.Match = 0, paper.Match{} }, "motif needs a repeat, and none is stated"},
		{"pack of none", func(p *paper.Paper) { p.Pack = 0 }, "pack must be 1, 2 or 3"},
		{"pack of four", func(p *paper.Paper) { p.Pack = 4 }, "pack must be 1, 2 or 3"},
		{"unknown paste", func(p *paper.Paper) { p.Paste = 4 }, "paste is none of the known ones"},
		{"soaked before it was pasted", func(p *paper.Paper) { p.SoakMin = -8 }, "soak_minutes must not be less than 0"},
		{"paid for taking it", func(p *paper.Paper) { p.Price = money.Amount{Minor: -1, Currency: "EUR"} }, "price must not be less than 0"},
		{"tolerances", func(p *paper.Paper) { p.Tolerance = paper.Tolerance{Length: -1, Width: 501} }, "tolerance.length must not be less than 0; tolerance.width is too large"},
		{
			"everything at once", func(p *paper.Paper) { *p = paper.Paper{Name: "Ferns", DryWidth: -1 * mm, Across: -1 * mm} },
			"width must be more than 0; dry_width -1 mm must not be less than 0; roll must be more than 0; across -1 mm must not be less than 0; pack must be 1, 2 or 3",
		},
	} {
		p := ferns()
		c.change(p)
		err, got := p.Check(), ""
		if err != nil {
			got = strings.TrimPrefix(err.Error(), `paper "Ferns": `)
		}
		if got != c.want {
			t.Errorf("%s:\n got %s\nwant %s", c.name, got, c.want)
		}
	}
}

func TestCheckIsTyped(t *testing.T) {
	p := ferns()
	p.Repeat, p.Pack = 11*measure.Metre, 7
	err := p.Check()
	var all paper.LabelErrors
	if !errors.As(err, &all) || len(all) != 2 {
		t.Fatalf("Check = %v, want two label errors", err)
	}
	want := paper.LabelError{Paper: "Ferns", Field: "repeat", Fault: paper.OverRoll, Value: 11 * measure.Metre, Limit: 10050 * mm}
	if !reflect.DeepEqual(*all[0], want) || all[1].Field != "pack" {
		t.Errorf("Check = %+v, %+v", *all[0], *all[1])
	}
	var one *paper.LabelError
	if !errors.As(err, &one) || one != all[0] {
		t.Error("the first error is not found behind the list")
	}
}

func ExamplePaper_Check() {
	p := paper.Paper{
		Name: "Ferns", Width: 530 * measure.Millimetre, RollLength: 10050 * measure.Millimetre,
		Match: paper.Match{Kind: paper.Straight}, Pack: 1,
	}
	fmt.Println(p.Check())
	// Output: paper "Ferns": match needs a repeat, and none is stated
}
