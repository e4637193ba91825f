package sheet

import (
	"fmt"

	"firstdrop/hanging"
	"firstdrop/paper"
)

// Words of the step sheet.
const (
	textSteps     = "Step by step"
	textBefore    = "Before anything else"
	textReady     = "Get ready"
	textHang      = "Hang"
	textAfter     = "When the last drop hangs"
	textColDrop   = "Drop"
	textColDo     = "What to do"
	textColFrom   = "From"
	textTwo       = "Two people."
	textLocalLaw  = "Local codes and rules come first, and work that they keep for licensed trades is for those trades."
	textPower     = "Electricity: switch the circuit off at the board, lock it, and check with a tester that it is dead before a plate is loosened or paper is cut round it. Metallic papers end at the plate's edge. Anything damaged: call an electrician."
	textHeights   = "Heights: work from a platform with a level floor, made for stairs where there are stairs, never from a ladder set on treads. Two people for long drops."
	textLadder    = "Steps: a stepladder that stands firm, fully opened; never the top tread. Two people for long drops."
	textOldCoats  = "Old houses: paint may hold lead, textured coatings and old adhesives asbestos. Have them tested before you sand, scrape, steam or drill, and leave asbestos to those who are licensed for it."
	textMould     = "Mould or damp: find and stop the cause first. Large areas are work for a specialist; wear a mask and gloves."
	textBlades    = "Blades: change them often, cut away from the hand, put used ones into a box with a lid."
	textAir       = "Air: open windows while primers and adhesives dry, unless the label says otherwise; keep draughts off drops that have just been hung."
	textCheckRoll = "Count the rolls, compare the batch on every wrapper, unroll the first: is the width, the repeat and the match what the plan says? Measure a strip that has soaked or been pasted: it must be as wide as planned."
	textDatumStep = "Mark the datum, the level line that all heights count from, round the whole room."
	textWallStep  = "Walls are sound, dry, smooth and sized or lined as the paper's label asks."
	textDryRun    = "Tick the place of every seam along the datum from the hanging plan, and look: is any where you would not want it? Now is the time to change it."
	textLayOut    = "Cut by the cutting list, number and TOP on every back, and lay the pieces in hanging order."
	textCheck3    = "After three drops stop, switch on the light and look from the door: colour, match, seams. Faults in the goods are told to the shop before more is cut."
	textTrim      = "Trim head and foot with a new blade against a broad knife; wipe paste off at once with a damp sponge, as the label allows."
	textDry       = "Let it dry slowly, heating low, windows shut unless the label says otherwise."
	textKeepRest  = "Fill in the hand-over record; keep left-overs rolled, with their batch, dark and dry."
	textRightward = "To the right"
	textLeftward  = "Back at drop 1: now to the left"
	textUpside    = "Hangs upside down: the end that came off the roll first is its foot."
	textKillHere  = "Kill seam: the last edges meet here, double cut or trimmed. "
	textFullStop  = "."
)

func textCheckRolls(rolls int) string {
	return "Rolls on the table: " + textRolls(rolls) + ". " + textCheckRoll
}

func textAllowance(head, foot string) string {
	return "Every length holds " + head + " at the head and " + foot + " at the foot to trim."
}

func textPaste(p paper.Paste, soak int) string {
	wait := ""
	if soak > 0 {
		wait = fmt.Sprintf(" Let each piece soak %d minutes, every one the same time by the clock; paste the next while one soaks.", soak)
	}
	switch p {
	case paper.PasteThePaper:
		return "Paste the paper, fold paste to paste, do not crease." + wait
	case paper.ReadyPasted:
		return "The paper is ready pasted: wet it as the label says." + wait
	case paper.SelfAdhesive:
		return "Self-adhesive: peel the backing a hand's width at a time from the head; no paste." + wait
	}
	return "Paste the wall, a little wider than the drop and into the corners; hang at once." + wait
}

func textPlumbStep(wall, from string, edge hanging.Side) string {
	return fmt.Sprintf("Plumb line on %s, %s: %v edge on it.", textTheWall(wall), from, edge)
}

func textButt(to int, side hanging.Side) string {
	return fmt.Sprintf("Butt its %v edge to drop %d.", side, to)
}

func textSeamAt(x string) string { return "Far edge: " + x + "." }

func textTurns(corner string) string { return "Turns " + corner + " in one." }

func textCutAt(corner, turn string) string {
	return "Cut at " + corner + ": " + turn + " goes round, the rest is set to its own line."
}

func textPieceLine(name, what string) string { return name + ": " + what }

func textFitting(name, at string) string {
	return name + " at " + at + " over the datum: power off, cut out round it."
}

func textFittingPlain(name, at string) string {
	return name + " at " + at + " over the datum: cut to it."
}

func textDo(soak int) string {
	if soak <= 0 {
		return textColDo
	}
	return fmt.Sprintf("%s (each piece soaks %d minutes first)", textColDo, soak)
}
