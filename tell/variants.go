package tell

import (
	"firstdrop/finding"
	"firstdrop/paper"
	"firstdrop/plan"
	"firstdrop/room"
)

// variants choose among the sentences of a code by what a finding holds; "" is
// the usual one. The catalogue has them under the code's name and a dot.
var variants = map[finding.Code]func(speaker) string{
	plan.SeamNearEdge:         when(func(s speaker) bool { return s.has("distance") && s.signed("distance") == 0 }, "on"),
	plan.SeamNearFold:         when(func(s speaker) bool { return s.f.Place.Corner != "" }, "corner"),
	plan.CornerLoss:           cornerLoss,
	plan.KillMisfit:           when(func(s speaker) bool { return s.has("height") && s.signed("height") == 0 }, "bare"),
	plan.MotifCut:             when(hasY, "y"),
	plan.MotifCutLow:          when(hasY, "y"),
	plan.SeamOnFitting:        when(hasY, "y"),
	plan.FullLength:           when(func(s speaker) bool { return s.f.Count == 0 }, "none"),
	plan.BatchChange:          when(hasWord, "named"),
	plan.OffCentre:            when(func(s speaker) bool { return s.signed("off") > 0 }, "left"), // the line stands to the right of the motif
	plan.Drift:                when(func(s speaker) bool { return s.signed("drift") < 0 }, "falls"),
	plan.OffPlumb:             when(func(s speaker) bool { return s.signed("off") < 0 }, "left"),
	plan.OffCasing:            when(func(s speaker) bool { return s.signed("off") < 0 }, "left"),
	plan.LiningSeam:           when(hasWord, "under"),
	plan.CornerStep:           when(func(s speaker) bool { return s.signed("along") < 0 }, "low"),
	plan.Awkward:              when(func(s speaker) bool { return s.has("length") }, "long"),
	paper.OtherBatch:          when(hasWord, "named"),
	paper.LabelDiffers:        when(func(s speaker) bool { return s.signed("label_repeat") == 0 }, "free"),
	room.CodeHeightUnlikely:   when(func(s speaker) bool { return s.signed("height") < s.signed("limit") }, "less"),
	room.CodeWidthUnlikely:    when(func(s speaker) bool { return s.signed("width") < s.signed("limit") }, "less"),
	room.CodeHeightJump:       when(func(s speaker) bool { return s.signed("jump") > 0 }, "right"),
	room.CodePlanUnadjustable: when(func(s speaker) bool { return s.f.Word == "corner" }, "corner"),
	room.CodeMisclosure:       misclosure,
}

// when chooses a variant where a finding is of a kind.
func when(is func(speaker) bool, variant string) func(speaker) string {
	return func(s speaker) string {
		if is(s) {
			return variant
		}
		return ""
	}
}

func hasY(s speaker) bool    { return s.f.Place.Y != nil }
func hasWord(s speaker) bool { return s.f.Word != "" }

func (s speaker) has(size string) bool {
	_, ok := s.f.Size(size)
	return ok
}

// cornerLoss tells what is lost from what is shown twice, and whether heights
// miss too, or alone.
func cornerLoss(s speaker) string {
	switch twice, along := s.signed("across") < 0, !isNothing(s.c, s.signed("along")); {
	case along && isNothing(s.c, s.signed("across")):
		return "height"
	case twice && along:
		return "twice-along"
	case twice:
		return "twice"
	case along:
		return "along"
	}
	return ""
}

// misclosure tells whether something is suspected, and what it may be.
func misclosure(s speaker) string {
	switch {
	case s.f.Word == "":
		return ""
	case s.has("likely"):
		return "likely"
	}
	return "suspect"
}

// subjects say what a code is about where a finding names no drop.
var subjects = map[finding.Code]string{
	plan.Sliver:        "subject.strip",
	plan.SliverBeside:  "subject.paper",
	plan.HeaderOverrun: "subject.any-drop",
	plan.MotifCut:      "subject.paper",
	plan.MotifCutLow:   "subject.paper",
	plan.Awkward:       "subject.any-drop",
}

// nameless say what stands for the word of a finding without one.
var nameless = map[finding.Code]string{
	plan.SeamOnFitting: "a-fitting",
	plan.MotifCutLow:   "a-rail",
}

func isKill(c finding.Code) bool { return c == plan.KillMisfit || c == plan.KillMeets }
