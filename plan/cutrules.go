package plan

import (
	"firstdrop/cutting"
	"firstdrop/measure"
)

// DefaultCut returns how rolls are cut where nothing else is said: from their
// very beginning, with nothing lost at a cut, as a blade cuts. A finger's width,
// 10 mm, stays free between narrow pieces cut side by side, so that straight
// edge and blade find room: common practice put into a figure. Half an inch, 13 mm, is
// added at a slit edge: published advice on the last piece into a corner, which is cut
// 1/2 to 1 in over and trimmed in its place. Fewest rolls first; of those plans the longest
// left-over; and then few changes of roll.
func DefaultCut() CutRules {
	return CutRules{
		Blade:    10 * measure.Millimetre,
		SlitOver: 13 * measure.Millimetre,
		First:    cutting.FewestRolls,
		Then:     []cutting.Goal{cutting.LongestLeftover, cutting.FewestChanges},
	}
}

// CutIn returns the same for those who measure in a system of units, in inches by marks of
// the tape.
func CutIn(system measure.System) CutRules {
	c := DefaultCut()
	if system == measure.Imperial {
		c.Blade, c.SlitOver = 3*measure.Inch/8, measure.Inch/2
	}
	return c
}
