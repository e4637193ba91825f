package sheet

import (
	"firstdrop/finding"
	"firstdrop/plan"
)

// ruleSentences speak of what a layout is judged by, beside those in
// planSentences.
var ruleSentences = map[finding.Code]func(speaker) string{
	plan.SliverBeside: func(s speaker) string {
		return s.subject("The paper") + " leaves a strip only " + s.size("width") + " wide beside " + s.opening() + ": it is hard to keep straight there, and tears easily"
	},
	plan.HeaderOverrun: func(s speaker) string {
		return s.subject("A drop") + " runs only " + s.size("past") + " past " + s.opening() + ", and for that is cut as a full drop of " + s.size("full") +
			" where " + s.size("header") + " would do"
	},
	plan.LiningSeam: func(s speaker) string {
		return "A seam " + s.where() + " stands " + s.size("distance") + " from a seam of the lining below: the two together show"
	},
	plan.SeamOnFitting: func(s speaker) string {
		return "A seam " + s.where() + " crosses the " + s.named("fitting") + s.atY() + ", where both edges are cut to fit and lift easily"
	},
	plan.RenewedMiss: func(s speaker) string {
		return "A new drop begins in corner " + s.f.Place.Corner + ", and the design misses there by " + s.size("across") + " across and " +
			s.size("along") + " along, " + s.size("height") + " high"
	},
	plan.LapShadow: func(s speaker) string {
		return "The lap in corner " + s.f.Place.Corner + " turns its edge away from " + s.opening() + " on wall " + s.f.Place.Wall + ", and may throw a shadow in daylight"
	},
	plan.OffCentre: func(s speaker) string {
		side := "right"
		if s.signed("off") > 0 {
			side = "left" // the line stands to the right of the motif
		}
		return "The leading motif on wall " + s.f.Place.Wall + " stands " + s.size("off") + " to the " + side + " of the centre line"
	},
	plan.UnequalEnds: func(s speaker) string {
		return "Wall " + s.f.Place.Wall + ", which is looked at first, ends in strips of unequal width: " + s.size("left") + " on the left and " + s.size("right") + " on the right"
	},
	plan.Drift: func(s speaker) string {
		way := "rises"
		if s.signed("drift") < 0 {
			way = "falls"
		}
		return "The ceiling over wall " + s.f.Place.Wall + " " + way + " by " + s.size("drift") + " to the right: a level design runs off along it by as much"
	},
	plan.WetGrowth: func(s speaker) string {
		return "The paper grows from " + s.size("dry") + " dry to " + s.size("hung") + " as hung: over wall " + s.f.Place.Wall + " that adds up to " +
			s.size("far") + " at its far end, so set seams out with a strip that has soaked"
	},
	plan.MotifCutLow: func(s speaker) string {
		return s.subject("The paper") + ": the line of the " + s.named("rail or head") + s.atY() + " cuts through the leading motif"
	},
	plan.Awkward: func(s speaker) string {
		if _, long := s.f.Size("length"); long {
			return s.subject("A drop") + " is cut " + s.size("length") + " long: hang it with two people, from a platform that is made for it"
		}
		return s.subject("A drop") + " is cut out on both its sides, with " + s.size("between") + " of paper left between two openings: handle it with care, it tears there"
	},
}

// opening names the finding's opening.
func (s speaker) opening() string {
	if s.f.Place.Opening == "" {
		return "an opening"
	}
	return s.f.Place.Opening
}

// named returns the name or kind that the finding tells; other without any.
func (s speaker) named(other string) string {
	if s.f.Word == "" {
		return other
	}
	return s.f.Word
}
