package cutting

import (
	"fmt"

	"firstdrop/measure"
)

// Solution is a plan and what is proven about it.
type Solution struct {
	Problem     *Problem
	Rolls       []RollPlan // in the order of their lowest piece
	LowerBound  int        // fewer rolls than this are impossible
	Proven      bool       // len(Rolls) == LowerBound
	Certificate Certificate
	Goals       []Result // of Options.Then, in that order
	Steps       int      // search steps taken
}

// RollPlan is what one roll gives. With a known start, or free match, there is
// one Order. With an unknown start the orders' start classes together cover
// every phase; whoever opens the roll measures its first motif and takes the
// order of that class. Usually one order serves all starts.
type RollPlan struct {
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
	x := int64(start)
	cuts := make([]Cut, 0, len(o.Cuts))
	for _, c := range o.Cuts {
		x = p.after(x, p.KindOf(c.Piece))
		to := measure.Length(x - int64(start))
		cuts = append(cuts, Cut{c.Piece, to - p.spec.Pieces[c.Piece].Length, to})
	}
	return cuts
}

// Leftovers returns for each roll the length free behind its last cut, at the
// worst start of its worst order.
func (s *Solution) Leftovers() []measure.Length {
	free := make([]measure.Length, len(s.Rolls))
	for i, r := range s.Rolls {
		free[i] = r.leftover(s.Problem.spec.Roll.Length)
	}
	return free
}

func (r RollPlan) leftover(length measure.Length) measure.Length {
	least := length
	for _, o := range r.Orders {
		if n := len(o.Cuts); n > 0 {
			least = min(least, length-o.Cuts[n-1].To)
		}
	}
	return least
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
	for i, r := range roll {
		if r == 0 {
			return fmt.Errorf("piece %d is not cut", i)
		}
	}
	return nil
}

// checkCuts: lengths are right, cuts do not overlap nor run off the roll, and
// each begins at its phase.
func (s *Solution) checkCuts() error {
	spec := s.Problem.spec
	for r, plan := range s.Rolls {
		for k, o := range plan.Orders {
			end := measure.Length(0)
			for _, c := range o.Cuts {
				want := spec.Pieces[c.Piece]
				switch {
				case c.To-c.From != want.Length:
					return fmt.Errorf("roll %d, order %d: piece %d is cut %d nm long", r, k, c.Piece, c.To-c.From)
				case c.From < end:
					return fmt.Errorf("roll %d, order %d: piece %d overlaps the one before", r, k, c.Piece)
				case c.To > spec.Roll.Length:
					return fmt.Errorf("roll %d, order %d: piece %d runs off the roll", r, k, c.Piece)
				case (c.From + o.At - want.Phase).Mod(spec.Repeat) != 0:
					return fmt.Errorf("roll %d, order %d: piece %d begins off its phase", r, k, c.Piece)
				}
				end = c.To
			}
		}
	}
	return nil
}

// checkStarts: the classes of a roll cover every start (or the known one), and
// At is the worst start of each class: one past After. From there to UpTo the
// first piece keeps its place in the design, so that cuts shift towards the
// roll's beginning and keep fitting.
func (s *Solution) checkStarts() error {
	spec := s.Problem.spec
	for r, plan := range s.Rolls {
		if s.Problem.known() {
			o := plan.Orders[0]
			if len(plan.Orders) != 1 || spec.Repeat > 0 && o.At != spec.Roll.Start.Phase {
				return fmt.Errorf("roll %d is not planned for its start", r)
			}
			continue
		}
		total := measure.Length(0)
		for k, o := range plan.Orders {
			size := (o.UpTo - o.After).Mod(spec.Repeat)
			if size == 0 {
				size = spec.Repeat
			}
			if (o.At - o.After - 1).Mod(spec.Repeat) != 0 {
				return fmt.Errorf("roll %d, order %d is not given for its worst start", r, k)
			}
			if len(o.Cuts) == 0 || o.Cuts[0].From < size-1 {
				return fmt.Errorf("roll %d, order %d: the first piece moves within the class", r, k)
			}
			if next := plan.Orders[(k+1)%len(plan.Orders)]; next.UpTo != o.After && len(plan.Orders) > 1 {
				return fmt.Errorf("roll %d: no order for starts above %d", r, next.UpTo)
			}
			total += size
		}
		if total != spec.Repeat {
			return fmt.Errorf("roll %d: the orders serve %d of %d starts", r, total, spec.Repeat)
		}
	}
	return nil
}

// checkBound: the certificate holds, and bound and claim agree with it.
func (s *Solution) checkBound() error {
	switch {
	case s.Proven != (len(s.Rolls) == s.LowerBound):
		return fmt.Errorf("proven is %v with %d rolls and bound %d", s.Proven, len(s.Rolls), s.LowerBound)
	case s.LowerBound > len(s.Rolls):
		return fmt.Errorf("bound %d is above the plan's %d rolls", s.LowerBound, len(s.Rolls))
	case s.LowerBound != s.Certificate.ByWeights+s.Certificate.Exhausted:
		return fmt.Errorf("bound %d does not follow from the certificate: %s", s.LowerBound, s.Certificate.Reason())
	case len(s.Problem.spec.Pieces) == 0:
		return nil
	}
	return s.Certificate.check(s.Problem)
}

// checkGoals: what is said to be reached is in the plan, and within its bound.
func (s *Solution) checkGoals() error {
	for _, g := range s.Goals {
		longest := measure.Length(0)
		for _, free := range s.Leftovers() {
			longest = max(longest, free)
		}
		switch {
		case len(s.Rolls) > 0 && g.Goal == LongestLeftover && longest != g.Value:
			return fmt.Errorf("the plan leaves %d nm, the result says %d", longest, g.Value)
		case g.Value > g.Bound:
			return fmt.Errorf("%d is above its bound %d", g.Value, g.Bound)
		case g.Proven != (g.Value == g.Bound && s.Proven):
			return fmt.Errorf("proven is %v at %d, bound %d", g.Proven, g.Value, g.Bound)
		}
	}
	return nil
}
