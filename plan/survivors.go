package plan

import (
	"cmp"
	"slices"

	"firstdrop/hanging"
)

// survivors returns layouts to choose alternatives from, the best first: for each
// kill place and each wall to start on, the starts with the least bounds, laid out
// in full.
func (s *search) survivors() []candidate {
	s.prepare()
	least := map[family][]choiceAt{}
	s.gather = func(c choiceAt) {
		f := family{c.kill, s.starts[c.start].Wall}
		least[f] = keepLeast(least[f], c, mostOfFamily)
	}
	s.scan(1)
	s.gather = nil
	var cs choices
	for _, kept := range least {
		cs = append(cs, kept...)
	}
	var out []candidate
	for _, c := range cs.first(mostSurvivors) {
		if c, ok := s.survivor(&c); ok {
			out = append(out, c)
		}
	}
	slices.SortStableFunc(out, func(a, b candidate) int {
		return cmp.Compare(s.leastTotal(&a), s.leastTotal(&b))
	})
	return out
}

// family is the choices of one kill place and one wall to start on.
type family struct {
	kill int16
	wall int
}

// How many choices of a family, and of all families, survive.
const (
	mostOfFamily  = 4
	mostSurvivors = 200
)

// keepLeast adds a choice to those kept, up to so many, or puts it in place of the
// worst.
func keepLeast(kept []choiceAt, c choiceAt, most int) []choiceAt {
	at, _ := slices.BinarySearchFunc(kept, c, func(a, b choiceAt) int {
		return cmp.Or(cmp.Compare(a.bound, b.bound), cmp.Compare(a.order, b.order))
	})
	if at == most {
		return kept
	}
	kept = slices.Insert(kept, at, c)
	return kept[:min(len(kept), most)]
}

// survivor lays a choice out in full, a kill seam over an opening where it is
// best.
func (s *search) survivor(c *choiceAt) (n candidate, ok bool) {
	s.open = s.open[:0]
	s.look(*c)
	if len(s.open) == 0 {
		return n, false
	}
	best := slices.MinFunc(s.open, func(a, b choiceAt) int {
		return cmp.Or(cmp.Compare(a.local, b.local), cmp.Compare(a.order, b.order))
	})
	n = candidate{choice: s.choice(&best), kill: s.kills[best.kill]}
	if n.choice.Kill.Kind != hanging.NoKill {
		n.kill.kill = n.choice.Kill
	}
	s.layOut(&n)
	return n, n.layout != nil
}
