package sheet

import (
	"firstdrop/finding"
	"firstdrop/room"
)

// roomSentences speak of the survey.
var roomSentences = map[finding.Code]func(speaker) string{
	room.CodeHeightUnlikely: func(s speaker) string {
		return s.wall() + " is stated as " + s.size("height") + " high, " + s.beyond("height") + " the " + s.size("limit") + " that rooms have as a rule: measure it again, or check the unit"
	},
	room.CodeWidthUnlikely: func(s speaker) string {
		return s.wall() + " is stated as " + s.size("width") + " wide, " + s.beyond("width") + " the " + s.size("limit") + " that rooms have as a rule: measure it again, or check the unit"
	},
	room.CodeNarrowWall: func(s speaker) string {
		return s.wall() + " is only " + s.size("width") + " wide: check that it is a wall of its own"
	},
	room.CodeOutlineShort: func(s speaker) string {
		return "The outline of wall " + s.f.Place.Wall + " ends " + s.size("gap") + " before its corner: measure its heights out to the corner"
	},
	room.CodeHeightJump: func(s speaker) string {
		side := "left"
		if s.signed("jump") > 0 {
			side = "right"
		}
		return "In corner " + s.f.Place.Corner + " the " + s.end() + " of the wall on the " + side + " stands " + s.size("jump") + " higher than its neighbour's: measure both from the datum again, unless there is a step"
	},
	room.CodeLeanLarge: func(s speaker) string {
		return "Corner " + s.f.Place.Corner + " leans by " + s.size("lean") + ", more than the " + s.size("limit") + " that good work leaves: the design cannot meet there from head to foot"
	},
	room.CodeLeanUnlikely: func(s speaker) string {
		return "Corner " + s.f.Place.Corner + " is stated to lean by " + s.size("lean") + ", a tenth of its height or more: measure it again, or draw the wall with a slope"
	},
	room.CodeOpeningBeyond: func(s speaker) string {
		return "Opening " + s.f.Place.Opening + " reaches " + s.size("beyond") + " past the " + s.end() + " of wall " + s.f.Place.Wall + ": measure its height and the wall's again"
	},
	room.CodeCornerWedge: func(s speaker) string {
		return "Between " + s.f.Place.Opening + " and its corner the leaning of the corner leaves a wedge of wall " + s.size("width") + " wide on wall " + s.f.Place.Wall + ": look whether it is there"
	},
	room.CodeFittingOutside: func(s speaker) string {
		return "The fitting " + s.f.Word + " is not on the face of wall " + s.f.Place.Wall + s.atX() + s.andY() + ": check where it was measured from"
	},
	room.CodeMisclosure: func(s speaker) string {
		text := "The walls as measured do not close: a gap of " + s.size("misclosure") + " is left"
		if s.f.Word == "" {
			return text
		}
		text += ". Measure again first: " + s.f.Word
		if _, ok := s.f.Size("likely"); ok {
			text += ", which may be " + s.size("likely")
		}
		return text
	},
	room.CodeAngleMisclosure: func(s speaker) string {
		return "The angles of the corners as measured do not add up, by " + s.f.Word + ": measure them again, or leave out those that are square"
	},
	room.CodePlanUnadjustable: func(s speaker) string {
		return "The walls as measured leave a gap of " + s.size("misclosure") + ", too much for a slip of the tape: a " + s.f.Word + " may be missing"
	},
}

// wall names the finding's wall, as the subject of a sentence.
func (s speaker) wall() string { return "Wall " + s.f.Place.Wall }

// end names the head or foot that a finding speaks of.
func (s speaker) end() string {
	if s.f.Word == "" {
		return "end"
	}
	return s.f.Word
}

// beyond says on which side of its limit a size is.
func (s speaker) beyond(name string) string {
	if s.signed(name) < s.signed("limit") {
		return "less than"
	}
	return "more than"
}

func (s speaker) andY() string {
	if s.f.Place.Y == nil {
		return ""
	}
	return "," + s.atY()
}
