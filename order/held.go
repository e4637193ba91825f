package order

import (
	"cmp"
	"fmt"
	"slices"

	"firstdrop/cutting"
	"firstdrop/measure"
)

// Rolls in hand.
//
// They are there with their true lengths, in every simulated job alike, and are
// opened before any is bought. A flaw, or a place where another part begins,
// divides a roll into stretches, each of which gives whole pieces only:
//
//	roll in hand  |== stretch ==|flaw|==== stretch ====|:== stretch, part 2 ==|
type heldRoll []heldStretch

// heldStretch is an unbroken part of a roll in hand.
type heldStretch struct {
	known bool
	x     int64 // design position where it begins; what is not used of its beginning, where that is not known
	room  int64 // length from there on
}

// supply is what a job is cut from.
type supply struct {
	label   measure.Length // of the rolls to be bought
	most    int            // of them that can be bought
	held    []heldRoll
	longest int64 // of the longest stretch in hand
	// turns says for goods cut strictly in hanging order which roll comes when:
	// an index into held, or bought. After the last turn, rolls are bought.
	turns []int
}

const bought = -1

// newSupply sorts the plan's rolls into those that are there and those to be
// bought; enough is beyond how many of these a job is given up.
func newSupply(plan *cutting.Solution, enough int) (*supply, error) {
	spec := plan.Problem.Spec()
	s := &supply{label: spec.Roll.Length, most: enough}
	if len(spec.Stock) == 0 {
		return s, nil
	}
	offer, err := offerOf(plan, spec.Stock)
	if err != nil {
		return nil, err
	}
	heldOf := make([]int, len(spec.Stock)) // first of a kind, in held
	for k := range spec.Stock {
		heldOf[k] = len(s.held)
		for range spec.Stock[k].Count {
			if spec.Stock[k].InHand {
				s.hold(&spec.Stock[k], spec.Lead)
			}
		}
	}
	switch {
	case offer < 0:
		s.most = 0
	case spec.Stock[offer].Count > 0:
		s.most = min(s.most, spec.Stock[offer].Count)
	}
	if offer >= 0 {
		s.label = spec.Stock[offer].Length
	}
	s.takeTurns(plan, spec.Stock, heldOf)
	return s, nil
}

// offerOf returns the kind of roll that the plan buys, or else the first that it
// could; −1 if none is to be had.
func offerOf(plan *cutting.Solution, stock []cutting.Stock) (offer int, err error) {
	offer = -1
	for _, r := range plan.Rolls {
		switch {
		case stock[r.Stock].InHand || r.Stock == offer:
		case offer >= 0:
			return 0, &ChanceError{"plan", "buys rolls of several sizes, and only one size can be simulated"}
		default:
			offer = r.Stock
		}
	}
	if offer < 0 {
		offer = slices.IndexFunc(stock, func(s cutting.Stock) bool { return !s.InHand })
	}
	if offer >= 0 && len(stock[offer].Flaws)+len(stock[offer].Parts) > 0 {
		return 0, &ChanceError{"plan", "buys rolls with known flaws or parts, which cannot be simulated"}
	}
	if n := len(plan.Missing); n > 0 {
		return 0, &ChanceError{"plan", fmt.Sprintf("lacks paper for %d of its cuts", n)}
	}
	return offer, nil
}

// hold adds a roll in hand.
func (s *supply) hold(roll *cutting.Stock, lead measure.Length) {
	parts := roll.Parts
	if len(parts) == 0 {
		parts = []cutting.Roll{roll.Roll}
	}
	flaws := slices.SortedFunc(slices.Values(roll.Flaws), func(a, b cutting.Flaw) int { return cmp.Compare(a.From, b.From) })
	var held heldRoll
	base := measure.Length(0)
	for _, p := range parts {
		at, end := base+lead, base+p.Length
		add := func(to measure.Length) {
			if at < to {
				held = append(held, heldStretch{p.Start.Known, int64(p.Start.Phase - base + at), int64(to - at)})
				s.longest = max(s.longest, int64(to-at))
			}
		}
		for _, f := range flaws {
			if f.To > base && f.From < end {
				add(min(f.From, end))
				at = max(at, f.To)
			}
		}
		add(end)
		base = end
	}
	s.held = append(s.held, held)
}

// takeTurns lists the rolls in the order in which the plan cuts from them, and
// then those in hand that it does not need.
func (s *supply) takeTurns(plan *cutting.Solution, stock []cutting.Stock, heldOf []int) {
	rolls := slices.Clone(plan.Rolls)
	first := func(r cutting.RollPlan) int { return r.Orders[0].Cuts[0].Piece }
	slices.SortStableFunc(rolls, func(a, b cutting.RollPlan) int { return cmp.Compare(first(a), first(b)) })
	taken := make([]bool, len(s.held))
	for _, r := range rolls {
		turn := bought
		if stock[r.Stock].InHand {
			turn = heldOf[r.Stock]
			heldOf[r.Stock]++
			taken[turn] = true
		}
		s.turns = append(s.turns, turn)
	}
	for h := range s.held {
		if !taken[h] {
			s.turns = append(s.turns, h)
		}
	}
}

// takeHeld opens the stretches of a roll in hand.
func (t *trial) takeHeld(h int) {
	for _, part := range t.supply.held[h] {
		x := part.x
		if !part.known && t.spec.Repeat > 0 {
			x += int64(t.source.heldStart(h))
		}
		t.addStretch(x, x+part.room+int64(t.spec.Loss))
	}
}
