package sheet

import (
	"fmt"

	"firstdrop/hanging"
)

// Words of the hanging plan.
const (
	textHanging    = "Hanging plan"
	textFloorKey   = "Floor key"
	textFloorDesc  = "The room from above, walls named, with the numbers of the drops along them."
	textBand       = "The room unrolled"
	textBandDesc   = "All walls side by side, from left to right as one faces them, with the numbers of the drops."
	textStartMark  = "START"
	textKillMark   = "KILL SEAM"
	textFactStart  = "Begin"
	textFactOrder  = "Order"
	textFactKill   = "Kill seam"
	textFactDesign = "Design"
	textFactPaper  = "Paper"
	textFactPlumbs = "Plumb lines"
	textFactCare   = "Care"
	textNothing    = "There is nothing to hang here: openings take all of it."
	textNoKill     = "None: the run has two ends."
	textPlainPaper = "No design to keep level."
	textNotes      = "Notes"
	textRealDesign = "The design is drawn as it will hang, lighter than it is."
	textPlanCare   = "Power off at the board, locked and checked, before a plate comes off. Stairs and high walls: a platform made for it. Local codes and licensed trades come first."
)

func textSub(width, run, paper string) string {
	return fmt.Sprintf("%s wide · %s · %s", width, run, paper)
}

func textStart(wall, from string, drop int, edge hanging.Side) string {
	return fmt.Sprintf("Plumb line on %s, %s. Drop %d: %v edge on the line.", textTheWall(wall), from, drop, edge)
}

func textDirections(right, left int) string {
	switch {
	case left == 0 && right == 0:
		return "Drop 1 is the only one."
	case left == 0:
		return "All others follow to the right."
	case right == 0:
		return "All others follow to the left."
	}
	return fmt.Sprintf("Then %d to the right, then back to drop 1 and %d to the left.", right, left)
}

func textKill(place, misfit string) string { return place + ": the design " + misfit + "." }

func textKillFree(place string) string { return place + ": no design that could miss." }

func textKillIn(corner string) string { return "In " + corner }

func textKillOver(opening, wall string) string {
	return "At the " + opening + " on " + textTheWall(wall)
}

func textKillOn(wall, from string) string { return "On " + textTheWall(wall) + ", " + from }

func textDesignAt(into, repeat string) string {
	return fmt.Sprintf("At the datum drop 1 shows the place %s into the repeat of %s.", into, repeat)
}

func textPaper(name, size, match string) string { return name + ", " + size + ", " + match }

func textPlumbs(n int) string {
	if n == 1 {
		return "1, numbered as a drop needs it."
	}
	return fmt.Sprintf("%d: one wherever a drop has no edge to hang against.", n)
}

// Error says what to do about it.
func (e *TooLargeError) Error() string {
	if e.Scale > 0 {
		return fmt.Sprintf("wall %s, %v wide, has no room on %s at 1:%d: take larger paper or a smaller scale", e.Wall, e.Width, e.Format, e.Scale)
	}
	return fmt.Sprintf("wall %s, %v wide, has no room on %s: take larger paper", e.Wall, e.Width, e.Format)
}
