package sheet

import (
	"firstdrop/finding"
	"firstdrop/paper"
)

// paperSentences speak of the label.
var paperSentences = map[finding.Code]func(speaker) string{
	paper.WidthUnusual: func(s speaker) string {
		return s.paper() + " is stated as " + s.size("width") + " wide, which is unusual: check the label and the unit"
	},
	paper.RollUnusual: func(s speaker) string {
		return s.paper() + " is stated as " + s.size("roll") + " long, which is unusual: check the label and the unit"
	},
	paper.RepeatUnusual: func(s speaker) string {
		return s.paper() + " is stated to repeat every " + s.size("repeat") + ", which is unusual: check the label and the unit"
	},
	paper.ManyAlternates: func(s speaker) string {
		return s.paper() + ": with the offset stated, the first drop comes back only after " + count(s.f.Count, "drop", "drops") + ": check the label"
	},
	paper.DryWidthUnusual: func(s speaker) string {
		return s.paper() + " is stated as " + s.size("dry_width") + " wide dry and " + s.size("width") + " wide as hung: so large a difference is unusual, measure a wetted strip"
	},
	paper.AcrossUneven: func(s speaker) string {
		return s.paper() + ": the width of " + s.size("width") + " is no whole number of the " + s.size("across") + " after which the design recurs across, so drops differ: check the label"
	},
	paper.SoakUnexpected: func(s speaker) string {
		return s.paper() + " is stated to soak for " + count(s.f.Count, "minute", "minutes") + ", though no paste goes on the paper: check the label"
	},
	paper.OutsideEN233: func(s speaker) string {
		return s.paper() + " (" + s.size("width") + " by " + s.size("roll") + ") is in no size category of EN 233, so that standard promises no tolerance"
	},
}
