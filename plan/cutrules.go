package plan

import (
	"firstdrop/cutting"
	"firstdrop/measure"
)

// DefaultCut returns how rolls are cut where nothing else is said: from their
// very beginning, with nothing lost at a cut, as a blade cuts. A finger's width,
// 10 mm, stays free between narrow pieces cut side by side, so that straight
// edge and blade find room: common practice put into a figure. Fewest rolls
// first; of those plans the longest left-over; and then few changes of roll.
func DefaultCut() CutRules {
	return CutRules{
		Blade: 10 * measure.Millimetre,
		First: cutting.FewestRolls,
		Then:  []cutting.Goal{cutting.LongestLeftover, cutting.FewestChanges},
	}
}
