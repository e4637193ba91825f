package anyroom

import (
	"fmt"

	"pgregory.net/rapid"

	"firstdrop/measure"
	"firstdrop/money"
	"firstdrop/paper"
)

// Opened draws a paper that has come, or part of it: rolls opened and not, of
// one batch or two, left-overs, rolls with flaws or in parts, further sizes to
// be had, at a price or none, in any number or few.
func Opened(t *rapid.T) *paper.Paper {
	p := Paper(t)
	p.Batch = "one"
	p.Pack = rapid.IntRange(1, 3).Draw(t, "pack")
	for i := range rapid.IntRange(0, 5).Draw(t, "rolls there") {
		p.Rolls = append(p.Rolls, opened(t, p, fmt.Sprintf("roll %d", i+1)))
	}
	if rapid.Bool().Draw(t, "priced") {
		p.Price = money.Amount{Minor: int64(rapid.IntRange(500, 9000).Draw(t, "price")), Currency: "EUR"}
	}
	if rapid.IntRange(0, 2).Draw(t, "another size") == 0 {
		p.Also = append(p.Also, also(t, p))
	}
	if least := min(len(p.Rolls), 1); rapid.IntRange(0, 2).Draw(t, "few") == 0 {
		n := rapid.IntRange(1-least, 8).Draw(t, "available")
		p.Available = &n
	}
	return p
}

// opened draws one roll as it is found.
func opened(t *rapid.T, p *paper.Paper, name string) paper.Roll {
	r := paper.Roll{Name: name, Batch: "one"}
	if rapid.IntRange(0, 2).Draw(t, "other batch") == 0 {
		r.Batch = "two"
	}
	shape := rapid.IntRange(0, 3).Draw(t, "shape")
	if shape == 3 {
		for range rapid.IntRange(2, 3).Draw(t, "parts") {
			r.Parts = append(r.Parts, paper.RollPart{Length: length(t, 800, 9000, "part"), Begins: begins(t, p)})
		}
		return r
	}
	r.Length = length(t, 1000, 15000, "roll length")
	if shape > 0 {
		r.Begins = begins(t, p)
	}
	if end := int(r.Length / mm); shape == 2 {
		from := rapid.IntRange(0, end-1).Draw(t, "flaw from")
		to := rapid.IntRange(from+1, end).Draw(t, "flaw to")
		if to-from < end {
			r.Flaws = append(r.Flaws, paper.Flaw{From: measure.Length(from) * mm, To: measure.Length(to) * mm})
		}
	}
	return r
}

// begins draws where the design first begins; nil for free match.
func begins(t *rapid.T, p *paper.Paper) *measure.Length {
	if p.Repeat == 0 {
		return nil
	}
	at := length(t, 0, int(p.Repeat/mm)-1, "begins")
	return &at
}

// also draws a further size in which the paper is sold.
func also(t *rapid.T, p *paper.Paper) paper.Offer {
	o := paper.Offer{RollLength: length(t, 5000, 30000, "other size"), Pack: rapid.IntRange(1, 3).Draw(t, "other pack")}
	if p.Price.IsStated() {
		o.Price = money.Amount{Minor: int64(rapid.IntRange(500, 9000).Draw(t, "other price")), Currency: p.Price.Currency}
	}
	return o
}
