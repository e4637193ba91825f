package plan

import (
	"errors"
	"slices"

	"firstdrop/cutting"
	"firstdrop/hanging"
	"firstdrop/measure"
)

// total weighs a candidate with its rolls, or says why it cannot be cut. Where it is not
// proven that it needs so many, and fewer would make it the best, it is cut again with
// more patience.
func (s *search) total(c *candidate) (int64, error) {
	n := s.counted(c.layout)
	if n.err != nil {
		return 0, n.err
	}
	roll := s.task.Taste.Weights.Roll
	rolls := n.exact()
	if !n.proven && !s.isBeaten(c.score+int64(n.least)*roll) {
		left := morePatience - s.patience
		if left <= 0 {
			s.proven = false
			return c.score + int64(rolls)*roll, nil
		}
		s.patience += n.cut(min(cutSteps, left))
		rolls, n.again = n.rolls, true
	}
	return c.score + int64(rolls)*roll, nil
}

// leastTotal returns what a candidate weighs with its rolls at the least.
func (s *search) leastTotal(c *candidate) int64 {
	return c.score + int64(s.counted(c.layout).least)*s.task.Taste.Weights.Roll
}

// How many steps a cutting may take: one that only serves to compare layouts,
// and the one that is carried out. A room takes fewer than a hundred; what would
// take more, as many sizes of roll with a tiny repeat may, is left with a bound.
const (
	countSteps = 4_000
	cutSteps   = 100_000
	// morePatience is how many steps layouts of a run may take, all together, that are cut
	// again.
	morePatience = 80_000
)

// count is how many rolls a set of pieces needs.
type count struct {
	problem *cutting.Problem
	listed  *cutting.Catalogue // what rolls give; nil: not listed
	err     error              // why it cannot be cut
	least   int                // fewer are impossible
	rolls   int                // to buy, once known
	known   bool
	proven  bool // no fewer are enough; or it has been tried as hard as may be
	again   bool // it has been cut with more patience
}

// counted returns the count for a layout's pieces, together with those of
// earlier runs in the same paper.
func (s *search) counted(l *hanging.Layout) *count {
	n := s.countOf(appendPieces(slices.Clone(s.base), l), s.counts)
	var named *PieceError
	if n.err != nil && !errors.As(n.err, &named) {
		n.err = s.refused(l, n.err)
	}
	return n
}

// countOf returns the count for pieces, one of those known if there is one.
func (s *search) countOf(pieces []cutting.Piece, known map[string]*count) *count {
	paper := &s.task.Papers[s.run.Paper]
	key := s.key(pieces)
	n, ok := known[key]
	if ok {
		return n
	}
	n = &count{}
	if s.halves != nil {
		n.listed = s.halves.catalogue
	}
	known[key] = n
	if n.problem, n.err = cutting.NewProblem(s.lot.spec(s.task, paper, pieces)); n.err != nil {
		return n
	}
	if s.lot.stock != nil {
		n.least = s.lot.leastBought(pieces)
		return n
	}
	n.least = cutting.LowerBound(n.problem)
	if cutting.QuickRolls(n.problem) == n.least {
		n.rolls, n.known, n.proven = n.least, true, true
	}
	return n
}

// exact returns the number of rolls of the best cutting plan.
func (n *count) exact() int {
	if !n.known {
		n.cut(countSteps)
	}
	return n.rolls
}

// cut counts the rolls of the best plan found in so many steps, and returns how many it took.
func (n *count) cut(most int) (steps int) {
	sol := cutting.Solve(n.problem, cutting.Options{Steps: most, Catalogue: n.listed})
	n.rolls, n.known = sol.Bought()+missingCost*len(sol.Missing), true
	n.proven = sol.Proven || most == cutSteps
	return sol.Steps
}

// refused says in the hanger's words which piece cannot be cut.
func (s *search) refused(l *hanging.Layout, err error) error {
	var e *cutting.PieceError
	if !errors.As(err, &e) || e.Index < len(s.base) {
		return err
	}
	return pieceError(l, &l.Pieces[e.Index-len(s.base)], &s.task.Papers[s.run.Paper], err)
}

// key is the same for pieces that need the same number of rolls. Of goods that
// are cut in order, the order is part of it.
func (s *search) key(pieces []cutting.Piece) string {
	if s.task.Papers[s.run.Paper].InOrder {
		return sequenceKey(pieces)
	}
	return pieceKey(pieces, s.turn())
}

// turn is by how much all phases may be moved alike without changing the count:
// to any, unless the start of some roll is known.
func (s *search) turn() measure.Length {
	known := func(r cutting.Stock) bool { return r.Start.Known || len(r.Parts) > 0 }
	if slices.ContainsFunc(s.lot.stock, known) {
		return 0
	}
	return s.task.Papers[s.run.Paper].Repeat
}
