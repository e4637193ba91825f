package cutting

import (
	"fmt"
	"slices"

	"firstdrop/measure"
)

// Solution is a plan and what is proven about it.
type Solution struct {
	Problem     *Problem
	Rolls       []RollPlan // in the order of their lowest piece
	LowerBound  int        // fewer rolls than this are impossible
	Proven      bool       // len(Rolls) == LowerBound; with changes wanted first Goals says more
	Certificate Certificate
	Goals       []Result // of Options.Then, in that order; before them of changes and rolls if Options.First wants changes
	Steps       int      // search steps taken

	// Cost is what the rolls to be bought cost by their prices, in whole packs,
	// or the number of packs if there are none; CostBound a cost that cannot be undercut. With several
	// kinds of roll, Proven says that these two agree, and LowerBound counts
	// rolls to buy. Each missing piece adds more than all rolls together.
	Cost, CostBound int64
	// Missing lists the pieces for which the counted rolls do not suffice. None
	// is missing as long as one kind of roll is to be had in any number.
	Missing []int
}

// RollPlan is what one roll gives. With a known start, or free match, there is
// one Order. With an unknown start the orders' start classes together cover
// every phase; whoever opens the roll measures its first motif and takes the
// order of that class. Usually one order serves all starts.
type RollPlan struct {
	Stock  int // kind of roll, index in Spec.Stock; 0 if only one is on offer
	Orders []Order
}

// Order is a cutting order good for every start phase f in the cyclic class
// (After, UpTo] modulo the repeat. After == UpTo means every phase if the
// start is unknown, and that phase alone if it is known.
type Order struct {
	After, UpTo measure.Length
	// At is the start phase for which Cuts are given: the worst of the class,
	// where the last cut ends nearest to the end of the roll.
	At   measure.Length
	Cuts []Cut // ascending
}

// Cut is a piece's place on a roll, From inclusive, To exclusive, measured
// from the roll's beginning: (From + At) mod Repeat is the piece's phase.
type Cut struct {
	Piece    int // index in Spec.Pieces
	From, To measure.Length
}

// CutsFrom returns the cuts of the order on a roll that begins at phase start,
// which must be of the order's class: each piece as early as its phase allows.
func (o Order) CutsFrom(p *Problem, start measure.Length) []Cut {
	if start == o.At {
		return slices.Clone(o.Cuts)
	}
	x := int64(start + p.spec.Lead)
	cuts := make([]Cut, 0, len(o.Cuts))
	for _, c := range o.Cuts {
		x = p.after(x, p.KindOf(c.Piece))
		to := measure.Length(x-int64(start)) - p.spec.Loss
		cuts = append(cuts, Cut{c.Piece, to - p.spec.Pieces[c.Piece].Length, to})
	}
	return cuts
}

// Bought counts the rolls of the plan that are not in hand.
func (s *Solution) Bought() (n int) {
	for i := range s.Rolls {
		if !s.Problem.stock[s.Rolls[i].Stock].InHand {
			n++
		}
	}
	return n
}

// Leftovers returns for each roll the length free behind its last cut, at the
// worst start of its worst order; with flaws or separate lengths only what
// hangs together at the very end.
func (s *Solution) Leftovers() []measure.Length {
	free := make([]measure.Length, len(s.Rolls))
	for i, r := range s.Rolls {
		free[i] = r.leftover(s.Problem)
	}
	return free
}

func (r RollPlan) leftover(p *Problem) measure.Length {
	stock := &p.stock[r.Stock]
	end := stock.Total()
	from := measure.Length(0)
	for _, o := range r.Orders {
		if n := len(o.Cuts); n > 0 {
			from = max(from, o.Cuts[n-1].To)
		}
	}
	if stock.broken() {
		parts := stock.stretches(int64(p.spec.Lead))
		last := parts[len(parts)-1]
		from, end = max(from, measure.Length(last.from)), measure.Length(last.to)
	}
	return max(end-from, 0)
}

// Check recomputes from the problem alone that the plan is what it claims to
// be, one named rule at a time, and returns every breach. It shares no step
// with the search: it walks the cuts.
func (s *Solution) Check() []error {
	var all []error
	for _, rule := range []struct {
		name  string
		check func(*Solution) error
	}{
		{"every piece once", (*Solution).checkPieces},
		{"cuts lie on the roll, apart, in length and phase", (*Solution).checkCuts},
		{"orders serve every start", (*Solution).checkStarts},
		{"pieces in order", (*Solution).checkOrder},
		{"bound and certificate", (*Solution).checkBound},
		{"goals", (*Solution).checkGoals},
	} {
		if err := rule.check(s); err != nil {
			all = append(all, fmt.Errorf("cutting: %s: %w", rule.name, err))
		}
	}
	return all
}

// checkPieces: every order of a roll cuts the same pieces, and all rolls
// together cut each piece once.
func (s *Solution) checkPieces() error {
	roll := make([]int, len(s.Problem.spec.Pieces)) // number of the roll plus one
	for r, plan := range s.Rolls {
		if len(plan.Orders) == 0 || len(plan.Orders[0].Cuts) == 0 {
			return fmt.Errorf("roll %d is empty", r)
		}
		for _, c := range plan.Orders[0].Cuts {
			if c.Piece < 0 || c.Piece >= len(roll) {
				return fmt.Errorf("roll %d cuts piece %d, which does not exist", r, c.Piece)
			}
			if roll[c.Piece] != 0 {
				return fmt.Errorf("piece %d is cut twice", c.Piece)
			}
			roll[c.Piece] = r + 1
		}
		for k, o := range plan.Orders[1:] {
			seen := make(map[int]bool)
			for _, c := range o.Cuts {
				if c.Piece < 0 || c.Piece >= len(roll) || roll[c.Piece] != r+1 || seen[c.Piece] {
					return fmt.Errorf("roll %d, order %d: piece %d does not belong there", r, k+1, c.Piece)
				}
				seen[c.Piece] = true
			}
			if len(seen) != len(plan.Orders[0].Cuts) {
				return fmt.Errorf("roll %d, order %d leaves a piece out", r, k+1)
			}
		}
	}
	for _, i := range s.Missing {
		if i < 0 || i >= len(roll) || roll[i] != 0 {
			return fmt.Errorf("piece %d is said to be missing", i)
		}
		roll[i] = -1
	}
	for i, r := range roll {
		if r == 0 {
			return fmt.Errorf("piece %d is not cut", i)
		}
	}
	return nil
}

// checkCuts: lengths are right, cuts stand apart by the loss and lie on the
// roll, clear of its beginning and of flaws, and each begins at its phase.
func (s *Solution) checkCuts() error {
	for r, plan := range s.Rolls {
		if plan.Stock < 0 || plan.Stock >= len(s.Problem.stock) {
			return fmt.Errorf("roll %d is of no kind on offer", r)
		}
		for k, o := range plan.Orders {
			end := s.Problem.spec.Lead
			for _, c := range o.Cuts {
				if why := s.faulty(&s.Problem.stock[plan.Stock], o, c, end); why != "" {
					return fmt.Errorf("roll %d, order %d: piece %d %s", r, k, c.Piece, why)
				}
				end = c.To + s.Problem.spec.Loss
			}
		}
	}
	return nil
}

// faulty says what is wrong with a cut that may begin at end; "" if nothing.
func (s *Solution) faulty(stock *Stock, o Order, c Cut, end measure.Length) string {
	spec := s.Problem.spec
	want := spec.Pieces[c.Piece]
	phase := c.From + o.At
	if len(stock.Parts) > 0 {
		base, at := measure.Length(0), 0
		for at+1 < len(stock.Parts) && c.From >= base+stock.Parts[at].Length {
			base += stock.Parts[at].Length
			at++
		}
		phase = c.From - base + stock.Parts[at].Start.Phase
		if c.To > base+stock.Parts[at].Length || c.From < base+spec.Lead {
			return "is not on one part of the roll"
		}
	}
	for _, f := range stock.Flaws {
		if c.From < f.To && f.From < c.To {
			return "touches a flaw"
		}
	}
	switch {
	case c.To-c.From != want.Length:
		return "has the wrong length"
	case c.From < end:
		return "overlaps the one before or the roll's beginning"
	case c.To > stock.Total():
		return "runs off the roll"
	case (phase - want.Phase).Mod(spec.Repeat) != 0:
		return "begins off its phase"
	}
	return ""
}

// checkStarts: the classes of a roll cover every start (or the known one), and
// At is the worst start of each class: one past After. From there to UpTo the
// first piece keeps its place in the design, so that cuts shift towards the
// roll's beginning and keep fitting.
func (s *Solution) checkStarts() error {
	spec := s.Problem.spec
	for r, plan := range s.Rolls {
		if stock := &s.Problem.stock[plan.Stock]; stock.known(spec.Repeat) {
			if len(plan.Orders) != 1 || plan.Orders[0].At != stock.startPhase(spec.Repeat) {
				return fmt.Errorf("roll %d is not planned for its start", r)
			}
			continue
		}
		if err := plan.checkClasses(spec); err != nil {
			return fmt.Errorf("roll %d: %w", r, err)
		}
	}
	return nil
}

func (r RollPlan) checkClasses(spec Spec) error {
	total := measure.Length(0)
	for k, o := range r.Orders {
		size := (o.UpTo - o.After).Mod(spec.Repeat)
		if size == 0 {
			size = spec.Repeat
		}
		if (o.At - o.After - 1).Mod(spec.Repeat) != 0 {
			return fmt.Errorf("order %d is not given for its worst start", k)
		}
		if len(o.Cuts) == 0 || o.Cuts[0].From < spec.Lead+size-1 {
			return fmt.Errorf("order %d: the first piece moves within the class", k)
		}
		if next := r.Orders[(k+1)%len(r.Orders)]; next.UpTo != o.After && len(r.Orders) > 1 {
			return fmt.Errorf("no order for starts above %d", next.UpTo)
		}
		total += size
	}
	if total != spec.Repeat {
		return fmt.Errorf("the orders serve %d of %d starts", total, spec.Repeat)
	}
	return nil
}

// checkBound: the certificate holds, and bound and claim agree with it.
func (s *Solution) checkBound() error {
	switch {
	case len(s.Problem.spec.Pieces) == 0:
		return nil
	case s.Problem.isMixed():
		return s.checkCost()
	case s.Proven != (len(s.Rolls) == s.LowerBound):
		return fmt.Errorf("proven is %v with %d rolls and bound %d", s.Proven, len(s.Rolls), s.LowerBound)
	case s.LowerBound > len(s.Rolls):
		return fmt.Errorf("bound %d is above the plan's %d rolls", s.LowerBound, len(s.Rolls))
	case s.Cost != s.Problem.costOfRolls(len(s.Rolls)) || s.CostBound != s.Problem.costOfRolls(s.LowerBound):
		return fmt.Errorf("a cost of %d, bound %d, for %d rolls, bound %d", s.Cost, s.CostBound, len(s.Rolls), s.LowerBound)
	case s.Problem.spec.InOrder && s.LowerBound != len(s.Certificate.Breaks):
		return fmt.Errorf("bound %d does not follow from %d breaks", s.LowerBound, len(s.Certificate.Breaks))
	case s.Problem.spec.InOrder:
		return s.Certificate.checkInOrder(s.Problem)
	case s.LowerBound != s.Certificate.ByWeights+s.Certificate.Exhausted:
		return fmt.Errorf("bound %d does not follow from the certificate: %s", s.LowerBound, s.Certificate.Reason())
	}
	return s.Certificate.check(s.Problem)
}

// checkCost: the cost is that of the rolls, no more of a kind are used than
// there are, and the bound follows from the certificate.
func (s *Solution) checkCost() error {
	var x mixed
	x.price(s.Problem)
	cost := int64(len(s.Missing)) * x.dear
	used := make([]int, len(s.Problem.stock))
	for _, r := range s.Rolls {
		used[r.Stock]++
	}
	for b, n := range used {
		stock := &s.Problem.stock[b]
		cost += stock.whole(n) * x.paid[b]
		if have := stock.Count; have > 0 && n > have {
			return fmt.Errorf("%d rolls of kind %d are used, there are %d", n, b, have)
		}
	}
	switch {
	case cost != s.Cost:
		return fmt.Errorf("the plan costs %d, not %d", cost, s.Cost)
	case s.CostBound > s.Cost || s.Proven != (s.CostBound == s.Cost):
		return fmt.Errorf("proven is %v at a cost of %d, bound %d", s.Proven, s.Cost, s.CostBound)
	case s.Problem.spec.InOrder && s.Certificate.Capacities == nil:
		if s.CostBound != s.Certificate.ByOrder {
			return fmt.Errorf("bound %d does not follow from the certificate: %s", s.CostBound, s.Certificate.Reason())
		}
		return s.Certificate.checkInOrder(s.Problem)
	case s.Certificate.ByCost > s.CostBound || s.Certificate.ByCost < s.CostBound && s.CostBound != s.Cost:
		return fmt.Errorf("bound %d does not follow from the certificate: %s", s.CostBound, s.Certificate.Reason())
	}
	return s.Certificate.checkMixed(s.Problem)
}

// checkGoals: what is said to be reached is in the plan, and within its bound.
// A result is proven if it meets its bound, and the rolls theirs if they are
// wanted more.
func (s *Solution) checkGoals() error {
	changesFirst := len(s.Goals) > 1 && s.Goals[0].Goal == FewestChanges && s.Goals[1].Goal == FewestRolls
	keep := int64(0) // what a roll may use for the left-over wanted more than the goal looked at
	for i, g := range s.Goals {
		value := s.measure(g.Goal)
		beyond := g.Value < g.Bound
		if g.Goal == LongestLeftover {
			beyond = g.Value > g.Bound
		}
		switch {
		case value != g.Value:
			return fmt.Errorf("goal %v: the plan reaches %d, the result says %d", g.Goal, value, g.Value)
		case beyond:
			return fmt.Errorf("goal %v: %d is beyond its bound %d", g.Goal, g.Value, g.Bound)
		case g.Proven && (g.Value != g.Bound || !s.Proven && !changesFirst && !s.Problem.spec.InOrder):
			return fmt.Errorf("goal %v: proven is %v at %d, bound %d", g.Goal, g.Proven, g.Value, g.Bound)
		}
		switch g.Goal {
		case LongestLeftover:
			keep = s.Problem.useFor(g.Value)
		case FewestChanges:
			if err := s.checkChanges(&s.Goals[i], keep); err != nil {
				return err
			}
		}
	}
	return nil
}
