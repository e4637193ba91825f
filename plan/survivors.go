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
	out := s.leastOf(func(c *choiceAt) family {
		return family{kill: c.kill, wall: s.starts[c.start].Wall}
	}, mostOfFamily, mostSurvivors)
	slices.SortStableFunc(out, func(a, b candidate) int {
		return cmp.Compare(s.leastTotal(&a), s.leastTotal(&b))
	})
	return out
}

// family is choices of which the few with the least bounds are laid out: those of one kill
// place and one wall to start on, or those whose rolls and pieces weigh alike at the least.
type family struct {
	kill  int16
	wall  int
	rolls int64
}

// leastOf lays out in full the choices with the least bounds of each family, up to so many,
// and up to so many of all: the least bound first.
func (s *search) leastOf(of func(*choiceAt) family, each, all int) (out []candidate) {
	s.prepare()
	least := map[family][]choiceAt{}
	s.gather = func(c choiceAt) {
		f := of(&c)
		least[f] = keepLeast(least[f], c, each)
	}
	s.scan(1)
	s.gather = nil
	var cs choices
	for _, kept := range least {
		cs = append(cs, kept...)
	}
	for _, c := range cs.first(all) {
		if n, ok := s.survivor(&c); ok {
			out = append(out, n)
		}
	}
	return out
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
