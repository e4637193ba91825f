package sheet

import "fmt"

// Words of the cutting list, the roll map and the labels.
const (
	textCutting     = "Cutting list"
	textCutOrder    = "As you cut: roll by roll"
	textHangOrder   = "As you hang: drop by drop"
	textCutIntro    = "Cut at the mark, write the piece's number and TOP on its back at the end that hangs up (pencil, never a pen that shows through), and lay pieces in hanging order. Lengths hold what is trimmed at head and foot."
	textColTick     = "Cut"
	textColPiece    = "Piece"
	textColLength   = "Length"
	textColOnRoll   = "On the roll, from – to"
	textColMark     = "Where in the design"
	textColTop      = "End that comes off first"
	textColWhere    = "Wall · what it is"
	textColLeft     = "Left on roll"
	textColRoll     = "Roll · cut"
	textColCovers   = "Hangs from – to over the datum"
	textHeadFirst   = "TOP"
	textFootFirst   = "foot"
	textMissingRow  = "No paper for these: find another roll of the batch before cutting"
	textRollMap     = "Roll map"
	textRollIntro   = "Every cut to scale; each roll comes off from the left. Slanting lines: falls away. Triangles: here the repeat begins when a roll begins as drawn. Whatever a roll begins with, measure its first repeat and cut each piece at its mark."
	textLabels      = "Labels"
	textLabelsIntro = "Cut along the dashed lines; one for every piece, in hanging order."
	textCutBlade    = "Sharp blades: cut away from the hand, change them often, put used ones into a box."
	textLabelTop    = "TOP"
	textLabelFoot   = "foot"
)

func textPaperTitle(title, paper string) string { return title + ": " + paper }

func textRollHead(title, batch, length, left string, inHand bool) string {
	text := "Roll " + title
	if batch != "" {
		text += ", batch " + batch
	}
	text += ", " + length
	if inHand {
		text += ", in hand"
	}
	return text + "; left at least " + left
}

func textOrderDepends(n int) string {
	return fmt.Sprintf("Roll begins elsewhere in the design? It has %d orders: see the roll map.", n)
}

func textRollOrder(after, upTo string) string {
	return "when the first repeat begins after " + after + " and up to " + upTo + " of the design"
}

func textRollCut(roll string, cut int) string { return fmt.Sprintf("%s · %d", roll, cut) }

func textSpan(from, to string) string { return from + " – " + to }

func textWhere(wall, what string) string { return wall + " · " + what }

func textSideBySide(names, slit string) string {
	return " · side by side " + names + ", slit at " + slit
}

func textLeft(size string) string { return size + " left" }

func textLabelFrom(roll string, cut int) string { return fmt.Sprintf("roll %s · cut %d", roll, cut) }

func textFlawAt(from, to string) string { return "flaw " + from + " – " + to }

func textPartAt(n int, at string) string { return fmt.Sprintf("part %d from %s", n, at) }
