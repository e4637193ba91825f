package order

import (
	"slices"

	"firstdrop/cutting"
	"firstdrop/geom"
	"firstdrop/measure"
)

// sideways returns a change's question with the narrow pieces apart.
func (c *Cutting) sideways(change *Change) func(measure.Length) (cutting.NarrowSpec, error) {
	ask, quantity := change.Spec, change.Quantity
	return func(by measure.Length) (cutting.NarrowSpec, error) {
		spec, err := ask(by)
		if err != nil {
			return cutting.NarrowSpec{}, err
		}
		var gone []int
		for i := range c.Pieces {
			if quantity == WallHeight && c.isGone(i, by) {
				gone = append(gone, i)
			}
		}
		return c.apart(spec, gone), nil
	}
}

// apart sorts the pieces of a question, which are c's but for those gone, into
// those of full width and narrow ones.
func (c *Cutting) apart(spec cutting.Spec, gone []int) cutting.NarrowSpec {
	out := cutting.NarrowSpec{Spec: spec, Width: c.Width, Gap: c.Blade}
	out.Pieces = nil
	next := 0
	for i, across := range c.Across {
		if slices.Contains(gone, i) {
			continue
		}
		piece := spec.Pieces[next]
		next++
		if across == (geom.Interval{}) {
			out.Pieces = append(out.Pieces, piece)
			continue
		}
		out.Narrow = append(out.Narrow, cutting.NarrowPiece{Piece: piece, Across: [2]measure.Length{across.Lo, across.Hi}})
	}
	return out
}

// countNarrow returns the number of rolls where narrow pieces may be cut side by
// side. That is tried only where it could save a roll: not if the others, with
// the longest narrow one, need as many as all of them by themselves.
func (s *scan) countNarrow(spec *cutting.NarrowSpec) count {
	k := s.count(spec.Apart())
	if len(spec.Narrow) == 0 || k.err != nil {
		return k
	}
	if least := s.count(spec.Least()); least.proven && least.err == nil && least.rolls == k.rolls && least.missing == k.missing {
		return k
	}
	s.solved++
	strips, err := cutting.SideBySide(*spec, cutting.Options{})
	if err != nil {
		return k
	}
	return count{rolls: strips.Solution.Bought(), missing: len(strips.Solution.Missing), proven: strips.Proven}
}
