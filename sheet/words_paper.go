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
	paper.RollLonger: func(s speaker) string {
		return s.paper() + ": roll " + s.f.Word + " was measured as " + s.size("length") + " long, more than a roll of " + s.size("roll") + " may be: measure it again"
	},
	paper.RollShorter: func(s speaker) string {
		return s.paper() + ": roll " + s.f.Word + " is " + s.size("length") + " long, less than the " + s.size("shortest") + " that a whole roll may have: unless it is a left-over, complain before cutting"
	},
	paper.RollNoRepeat: func(s speaker) string {
		return s.paper() + ": roll " + s.f.Word + " is " + s.size("length") + " long, and no whole repeat of " + s.size("repeat") + " comes out of it"
	},
	paper.ManyRollParts: func(s speaker) string {
		return s.paper() + ": roll " + s.f.Word + " comes in " + count(s.f.Count, "length", "lengths") + ", more than the three that are usually accepted: complain before cutting"
	},
	paper.OtherBatch: func(s speaker) string {
		text := s.paper() + ": " + count(s.f.Count, "roll", "rolls") + " that are there carry another batch than the label"
		if s.f.Count == 1 {
			text = s.paper() + ": 1 roll that is there carries another batch than the label"
		}
		if s.f.Word != "" {
			text += ", " + s.f.Word
		}
		return text + ": the two are not hung on one wall"
	},
}
