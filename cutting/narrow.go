package cutting

import (
	"fmt"

	"firstdrop/measure"
)

// NarrowPiece is a piece narrower than the paper: the piece beside a cabinet,
// the last one in a corner, a strip between two openings. Its index in
// NarrowSpec.Narrow is its identity.
type NarrowPiece struct {
	Piece
	// Across is the stretch of the paper's width it is cut from, low and high,
	// measured from the left edge of the paper. The design decides it: no
	// other stretch will do, however wide.
	Across [2]measure.Length
}

// NarrowSpec asks for pieces of the full width and for narrow ones, several of
// which one length of the roll may serve side by side.
type NarrowSpec struct {
	Spec                 // its Pieces are cut the full width
	Width measure.Length // of the paper, above zero
	// Gap is what must lie free between neighbours for the blade. Not negative.
	Gap    measure.Length
	Narrow []NarrowPiece
}

// AcrossOutOfRange is the reason of a SpecError about NarrowPiece.Across.
const AcrossOutOfRange Reason = "does not lie within the width of the paper"

// Strip is a length of the roll, cut right across it, that serves narrow
// pieces side by side. Its Piece is what is cut off the roll.
type Strip struct {
	Piece
	Lies []Lie // from left to right
}

// Lie is a narrow piece's place on its strip.
type Lie struct {
	Narrow int            // index in NarrowSpec.Narrow
	Offset measure.Length // from the strip's leading end to the piece's
}

// Strips is a plan with narrow pieces and what is proven about it.
type Strips struct {
	Spec   NarrowSpec
	Strips []Strip
	// Solution cuts the pieces of the full width and the strips from rolls:
	// first come Spec.Pieces, then Strips, so that piece len(Spec.Pieces)+i of
	// its problem is strip i. Its own bound holds for these strips only.
	Solution *Solution
	// Alone is the plan with each narrow piece cut from a length of its own,
	// first Spec.Pieces, then Spec.Narrow.
	Alone *Solution

	// LowerBound is a number of rolls to buy, and CostBound a cost, that no way
	// of putting the narrow pieces together undercuts, if every strip is cut
	// right across the roll before it is cut lengthwise, and is the same
	// whatever the start of the roll turns out to be.
	LowerBound int
	CostBound  int64
	// Proven says that the plan meets CostBound: no grouping and no cutting
	// does better.
	Proven bool
	// LeastPaper says that no grouping into strips that fit a roll, whatever it
	// costs, cuts less paper. It is not sought for more than 16 narrow pieces.
	LeastPaper bool
	// Certificate proves LowerBound as far as weights do. Its Weights are those
	// of Spec.Pieces and then of Spec.Narrow; its capacity is the most that a
	// roll can carry when each strip is filled side by side. Exhausted counts
	// the rolls added because all groupings have been tried. It is empty where
	// there are several kinds of roll or too many narrow pieces.
	Certificate Certificate
	Steps       int
}

// maxStripTypes is the number of different lengths and phases of strips up to
// which weights are sought. Some forty different narrow pieces have as many.
const maxStripTypes = 1_500

// SideBySide finds strips for the narrow pieces, and the cutting of these and
// of the pieces of full width, with the fewest rolls, or least cost. It weighs
// the groupings against a bound for all of them, and where that leaves a gap
// tries them one after another; which for a room is soon done. Options.Steps
// limits the whole; Options.Then applies to the cutting of the strips found.
//
// The error is a *[SpecError], or for a piece that cannot be cut a
// *[PieceError], its Index counting Spec.Pieces first and then Narrow.
func SideBySide(spec NarrowSpec, o Options) (*Strips, error) {
	if err := spec.check(); err != nil {
		return nil, err
	}
	alone, err := NewProblem(spec.Apart())
	if err != nil {
		return nil, err
	}
	if o.Steps <= 0 {
		o.Steps = DefaultSteps
	}
	x := newNesting(spec, o)
	defer x.free()
	s := &Strips{Spec: spec, Strips: spec.singles(), Alone: Solve(alone, Options{Steps: o.Steps, Progress: x.watch()})}
	s.Solution = s.Alone
	x.steps += s.Alone.Steps
	x.best, x.lower = s, s.Alone.CostBound
	if len(spec.Narrow) > 1 {
		x.lower = 0
		x.run()
	}
	x.finish(o)
	return s, nil
}

// check validates what NewProblem does not.
func (s NarrowSpec) check() error {
	if s.Width <= 0 {
		return &SpecError{"Width", s.Width, NotPositive}
	}
	if s.Width > measure.MaxLength {
		return &SpecError{"Width", s.Width, OutOfRange}
	}
	if s.Gap < 0 {
		return &SpecError{"Gap", s.Gap, NotPositive}
	}
	for i, n := range s.Narrow {
		if n.Across[0] < 0 || n.Across[1] <= n.Across[0] || n.Across[1] > s.Width {
			return &SpecError{fmt.Sprintf("Narrow[%d].Across", i), n.Across[1], AcrossOutOfRange}
		}
	}
	return nil
}

// Apart is the question of cutting each narrow piece from a length of its own:
// first come Pieces, then Narrow.
func (s NarrowSpec) Apart() Spec { return s.cut(s.singles()) }

// Least is a question that costs no more than any way of putting the narrow
// pieces together: that of the full widths and, as some strip must hold it, the
// longest narrow one. Where it costs what cutting them apart does, lying side by
// side saves nothing.
func (s NarrowSpec) Least() Spec {
	longest := -1
	for i := range s.Narrow {
		if longest < 0 || s.Narrow[i].Length > s.Narrow[longest].Length {
			longest = i
		}
	}
	if longest < 0 {
		return s.cut(nil)
	}
	return s.cut(s.singles()[longest : longest+1])
}

// singles gives each narrow piece a strip of its own.
func (s NarrowSpec) singles() []Strip {
	all := make([]Strip, len(s.Narrow))
	for i, n := range s.Narrow {
		all[i] = Strip{n.Piece, []Lie{{Narrow: i}}}
	}
	return all
}

// cut is the question of cutting these strips and the full widths from rolls.
func (s NarrowSpec) cut(strips []Strip) Spec {
	q := s.Spec
	q.Pieces = append([]Piece(nil), s.Pieces...)
	for _, strip := range strips {
		q.Pieces = append(q.Pieces, strip.Piece)
	}
	return q
}

// Saved returns what cutting side by side saves against cutting each narrow
// piece alone: in cost (rolls, if they have no prices), and in the length of
// paper cut off.
func (s *Strips) Saved() (cost int64, paper measure.Length) {
	for _, n := range s.Spec.Narrow {
		paper += n.Length
	}
	return s.Alone.Cost - s.Solution.Cost, paper - s.paper()
}

// paper is the length of all strips together.
func (s *Strips) paper() measure.Length {
	sum := measure.Length(0)
	for _, strip := range s.Strips {
		sum += strip.Length
	}
	return sum
}

// Check recomputes that the plan is what it claims to be: every narrow piece
// lies once, in its stretch, at its phase and clear of its neighbours; the
// strips are cut right; and no roll carries more than the certificate says.
func (s *Strips) Check() []error {
	all := append(s.Solution.Check(), s.Alone.Check()...)
	for _, err := range []error{s.checkLies(), s.checkProblem(), s.checkBound()} {
		if err != nil {
			all = append(all, fmt.Errorf("cutting: side by side: %w", err))
		}
	}
	return all
}

func (s *Strips) checkLies() error {
	seen := make([]bool, len(s.Spec.Narrow))
	for at, strip := range s.Strips {
		edge := -s.Spec.Gap
		for _, l := range strip.Lies {
			if l.Narrow < 0 || l.Narrow >= len(seen) || seen[l.Narrow] {
				return fmt.Errorf("strip %d: piece %d lies twice or does not exist", at, l.Narrow)
			}
			seen[l.Narrow] = true
			n := s.Spec.Narrow[l.Narrow]
			switch {
			case l.Offset < 0 || l.Offset+n.Length > strip.Length:
				return fmt.Errorf("strip %d: piece %d runs off it", at, l.Narrow)
			case n.Across[0] < edge+s.Spec.Gap:
				return fmt.Errorf("strip %d: piece %d overlaps the one to its left", at, l.Narrow)
			case s.Spec.Repeat > 0 && (strip.Phase+l.Offset-n.Phase).Mod(s.Spec.Repeat) != 0:
				return fmt.Errorf("strip %d: piece %d lies off its phase", at, l.Narrow)
			}
			edge = n.Across[1]
		}
	}
	for i, ok := range seen {
		if !ok {
			return fmt.Errorf("narrow piece %d lies on no strip", i)
		}
	}
	return nil
}

// checkProblem: the rolls are cut into the full widths and the strips.
func (s *Strips) checkProblem() error {
	want, got := s.Spec.cut(s.Strips).Pieces, s.Solution.Problem.spec.Pieces
	if len(want) != len(got) {
		return fmt.Errorf("%d pieces and strips are cut, not %d", len(got), len(want))
	}
	for i := range want {
		if want[i] != got[i] {
			return fmt.Errorf("piece or strip %d is cut as %v, not %v", i, got[i], want[i])
		}
	}
	if s.Proven != (s.Solution.Cost == s.CostBound) || s.Solution.Cost < s.CostBound || s.Solution.Cost > s.Alone.Cost {
		return fmt.Errorf("cost %d, bound %d, alone %d, proven %v", s.Solution.Cost, s.CostBound, s.Alone.Cost, s.Proven)
	}
	return nil
}
