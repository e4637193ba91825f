package plan

import "firstdrop/measure"

// DefaultTaste returns what careful hangers agree on, as numbers. The
// clearance of 50 mm (2 in) from outside corners and openings is published
// advice of the trade, the overrun of 5 in the larger of two published cases; the
// least width of a strip (100 mm), the longest piece that one person handles
// (3.5 m), the level of the eye (1.6 m) and all weights are common practice put
// into figures, to be changed by whoever hangs.
func DefaultTaste() Taste {
	return Taste{
		MinSliver:     100 * measure.Millimetre,
		SeamClearance: 50 * measure.Millimetre,
		Overrun:       5 * measure.Inch,
		LongPiece:     3500 * measure.Millimetre,
		EyeLevel:      1600 * measure.Millimetre,
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

			SliverBeside: 150,
			Overrun:      40,
			RenewMetre:   150,
			OffCentre:    120,
			UnequalEnds:  100,
			MotifCutLow:  15,
			LapShadow:    10,
			LiningSeam:   120,
			SeamFitting:  20,
			Awkward:      15,

			Drift:      6,
			OffPlumb:   3,
			OffCasing:  8,
			CornerStep: 3,
			MixedWays:  20,

			BatchChange: 500,
		},
	}
}

// TasteIn returns the same for those who measure in a system of units, in inches by whole
// inches.
func TasteIn(system measure.System) Taste {
	t := DefaultTaste()
	if system == measure.Imperial {
		t.MinSliver, t.SeamClearance = 4*measure.Inch, 2*measure.Inch
		t.LongPiece, t.EyeLevel = 138*measure.Inch, 63*measure.Inch // 11 ft 6 in, 5 ft 3 in
	}
	return t
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

// share returns the part of a weight that a figure earns against a full one: none
// at 0, all of it from full on.
func share(weight int64, figure, full measure.Length) int64 {
	if full <= 0 || figure >= full {
		return weight
	}
	return int64(measure.Length(weight).Scaled(int64(max(figure, 0)), int64(full)))
}
