package plan

import (
	"errors"
	"slices"

	"firstdrop/cutting"
	"firstdrop/hanging"
)

// total weighs a candidate with its rolls, or says why it cannot be cut.
func (s *search) total(c *candidate) (int64, error) {
	n := s.counted(c.layout)
	if n.err != nil {
		return 0, n.err
	}
	return c.score + int64(n.exact())*s.task.Taste.Weights.Roll, nil
}

// count is how many rolls a set of pieces needs.
type count struct {
	problem *cutting.Problem
	err     error // why it cannot be cut
	least   int   // fewer are impossible
	rolls   int   // 0 until known
}

// counted returns the count for a layout's pieces, together with those of
// earlier runs in the same paper.
func (s *search) counted(l *hanging.Layout) *count {
	paper := &s.task.Papers[s.run.Paper]
	pieces := appendPieces(slices.Clone(s.base), l)
	key := pieceKey(pieces, paper.Repeat)
	n, ok := s.counts[key]
	if ok {
		return n
	}
	n = &count{}
	s.counts[key] = n
	if n.problem, n.err = cutting.NewProblem(spec(paper, paper.RollLength, pieces)); n.err != nil {
		n.err = s.refused(l, n.err)
		return n
	}
	n.least = cutting.LowerBound(n.problem)
	if cutting.QuickRolls(n.problem) == n.least {
		n.rolls = n.least
	}
	return n
}

// exact returns the number of rolls of the best cutting plan.
func (n *count) exact() int {
	if n.rolls == 0 {
		n.rolls = len(cutting.Solve(n.problem, cutting.Options{}).Rolls)
	}
	return n.rolls
}

// refused says in the hanger's words which piece cannot be cut.
func (s *search) refused(l *hanging.Layout, err error) error {
	var e *cutting.PieceError
	if !errors.As(err, &e) || e.Index < len(s.base) {
		return err
	}
	p := &l.Pieces[e.Index-len(s.base)]
	paper := &s.task.Papers[s.run.Paper]
	return &PieceError{
		Paper: paper.Name, Run: s.run.Run.Name, Wall: s.run.Run.Walls[l.Drops[p.Drop].Parts[0].Wall].Name,
		Piece: p.Name, Length: p.Length, Roll: paper.RollLength, Err: err,
	}
}
