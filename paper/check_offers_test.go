package paper_test

import (
	"testing"

	"firstdrop/measure"
	"firstdrop/money"
	"firstdrop/paper"
)

func euros(minor int64) money.Amount { return money.Amount{Minor: minor, Currency: "EUR"} }

func TestCheckOfOffers(t *testing.T) {
	n := func(i int) *int { return &i }
	for _, c := range []struct {
		name   string
		change func(p *paper.Paper)
		want   string
	}{
		{"sound", func(p *paper.Paper) {}, ""},
		{"one left", func(p *paper.Paper) { p.Available, p.Also[0].Available = n(1), n(0) }, ""},
		{"fewer than none", func(p *paper.Paper) { p.Available, p.Also[0].Available = n(-1), n(-2) }, "available must not be less than 0; further size 1: available must not be less than 0"},
		{"a million and one", func(p *paper.Paper) { p.Available = n(1_000_001) }, "available is too large"},
		{"nothing to be had", func(p *paper.Paper) { p.Available, p.Also[0].Available = n(0), n(0) }, "available is 0, no other size is to be had, and no roll is there"},
		{"only what is there", func(p *paper.Paper) {
			p.Available, p.Also, p.Rolls = n(0), nil, []paper.Roll{{Name: "1", Length: measure.Metre}}
		}, ""},
		{"no length", func(p *paper.Paper) { p.Also[0].RollLength = 0 }, "further size 1: roll must be more than 0"},
		{"shorter than the repeat", func(p *paper.Paper) { p.Also[0].RollLength = 600 * mm }, "further size 1: roll 600 mm is shorter than the repeat (640 mm)"},
		{"endless", func(p *paper.Paper) { p.Also[0].RollLength = 2 * measure.MaxLength }, "further size 1: roll 2000000 mm is too large (1000000 mm)"},
		{"pack", func(p *paper.Paper) { p.Also[0].Pack = 0 }, "further size 1: pack must be 1, 2 or 3"},
		{"one priced", func(p *paper.Paper) { p.Also[0].Price = money.Amount{} }, "further size 1: price is missing, and another size has one; price all sizes or none"},
		{"the other priced", func(p *paper.Paper) { p.Price = money.Amount{} }, "price is missing, and another size has one; price all sizes or none"},
		{"none priced", func(p *paper.Paper) { p.Price, p.Also[0].Price = money.Amount{}, money.Amount{} }, ""},
		{"two currencies", func(p *paper.Paper) { p.Also[0].Price.Currency = "GBP" }, "further size 1: price is in another currency than the price before; use one"},
		{"negative price", func(p *paper.Paper) { p.Also[0].Price.Minor = -1 }, "further size 1: price must not be less than 0"},
		{"beyond price", func(p *paper.Paper) { p.Also[0].Price.Minor = 1_000_000_000_001 }, "further size 1: price is too large"},
		{"free for all", func(p *paper.Paper) { p.Price, p.Also[0].Price = euros(0), euros(0) }, ""},
		{"endless gifts", func(p *paper.Paper) { p.Also[0].Price = euros(0) }, "further size 1: price is 0 and other sizes cost something; say how many there are as available"},
		{"two gifts", func(p *paper.Paper) { p.Also[0].Price, p.Also[0].Available = euros(0), n(2) }, ""},
	} {
		p := ferns()
		p.Price = euros(3400)
		p.Also = []paper.Offer{{RollLength: 5 * measure.Metre, Pack: 1, Price: euros(1900)}}
		c.change(p)
		if got := faults(p); got != c.want {
			t.Errorf("%s:\n got %s\nwant %s", c.name, got, c.want)
		}
	}
}
