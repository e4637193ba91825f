package plan

import "firstdrop/measure"

// DefaultTaste returns what careful hangers agree on, as numbers. The
// clearance of 50 mm (2 in) from outside corners and openings is published
// advice of the trade; the least width of a strip, 100 mm, and all weights are
// common practice put into figures, to be changed by whoever hangs.
func DefaultTaste() Taste {
	return Taste{
		MinSliver:     100 * measure.Millimetre,
		SeamClearance: 50 * measure.Millimetre,
		Weights: Weights{
			Roll:      1000,
			Sliver:    400,
			SeamNear:  300,
			FocalSeam: 60,
			KillMetre: 150,
			MotifCut:  100,
			EndInFold: 150,
			Drop:      12,
			Piece:     4,
			Wedge:     2,

			BatchChange: 500,
		},
	}
}

// graded returns the share of a weight that a figure short of its limit earns:
// all of it at 0, a third just below the limit, nothing from the limit on.
func graded(weight int64, figure, limit measure.Length) int64 {
	if figure >= limit || limit <= 0 {
		return 0
	}
	figure = max(figure, 0)
	return weight - int64(measure.Length(weight).Scaled(2*int64(figure), 3*int64(limit)))
}
