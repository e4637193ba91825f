package order

import (
	"cmp"
	"slices"

	"firstdrop/cutting"
	"firstdrop/measure"
	"firstdrop/message"
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
	held    []heldRoll
	longest int64 // of the longest stretch in hand
	// turns says for goods cut strictly in hanging order which roll comes when:
	// an index into held, or bought. After the last turn, rolls are bought.
	turns []int
	wares
}

const bought = -1

// newSupply sorts the plan's rolls into those that are there and those to be
// bought; enough is beyond how many of these a job is given up.
func newSupply(job *Job, enough int) (*supply, error) {
	plan := job.Plan
	spec := plan.Problem.Spec()
	if len(spec.Stock) == 0 {
		spec.Stock = []cutting.Stock{{Roll: spec.Roll, Pack: job.Pack}}
	}
	if n := len(plan.Missing); n > 0 {
		return nil, message.New("sure_lacking", "the plan lacks paper for {n} of its cuts", "n", n).Because(&ChanceError{"plan", "lacks paper"})
	}
	s := &supply{}
	heldOf := make([]int, len(spec.Stock)) // first of a kind, in held
	for k := range spec.Stock {
		heldOf[k] = len(s.held)
		for range spec.Stock[k].Count {
			if spec.Stock[k].InHand {
				s.hold(&spec.Stock[k], spec.Lead)
			}
		}
	}
	rolls := inCuttingOrder(plan)
	s.takeTurns(rolls, spec.Stock, heldOf)
	err := s.offer(&spec, rolls, enough)
	return s, err
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

// inCuttingOrder returns the plan's rolls in the order in which it cuts from them.
func inCuttingOrder(plan *cutting.Solution) []cutting.RollPlan {
	rolls := slices.Clone(plan.Rolls)
	first := func(r cutting.RollPlan) int { return r.Orders[0].Cuts[0].Piece }
	slices.SortStableFunc(rolls, func(a, b cutting.RollPlan) int { return cmp.Compare(first(a), first(b)) })
	return rolls
}

// takeTurns lists the rolls in the order in which the plan cuts from them, and
// then those in hand that it does not need.
func (s *supply) takeTurns(rolls []cutting.RollPlan, stock []cutting.Stock, heldOf []int) {
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
