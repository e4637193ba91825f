package sheet

import (
	"fmt"

	"firstdrop/measure"
)

// Words of the order sheet.
const (
	textOrder       = "Order"
	textOrderList   = "To buy"
	textColPaper    = "Paper"
	textColSize     = "Roll"
	textColNeeded   = "Rolls needed"
	textColSold     = "Sold in"
	textColBuy      = "Buy"
	textColSpare    = "Over"
	textColCost     = "Cost"
	textBatch       = "Batch"
	textOneBatch    = "All rolls of a paper from one batch (printing run): compare the numbers on every wrapper before one is opened, and send back what differs. Colours of two batches are never quite alike."
	textNoBuy       = "nothing: what is in hand will do"
	textWhy         = "Why this many"
	textWhyNote     = "Both rows are drawn to one scale along the rolls. An area has no drops: what a roll holds beyond its last whole drop, what the match of the design costs between drops, and what is cut away at openings hang nowhere."
	textWhyDesc     = "Rolls by area beside rolls by drops."
	textSure        = "How sure is it?"
	textOrdered     = "When the rolls come"
	textBlankShop   = "Ordered from, on"
	textBlankBatch  = "Batch on the wrappers"
	textBlankRolls  = "Rolls counted, by"
	textBlankFault  = "Damage, shade, batch"
	textOrderKeep   = "Keep one wrapper with its label, and the receipt, until the last drop has hung and dried."
	textShortPieces = "Rolls may be shorter than the label says, within its tolerance; measure one before the first cut."
)

func textPacks(n, per int) string {
	switch {
	case per <= 1 && n == 1:
		return "1 roll"
	case per <= 1:
		return fmt.Sprintf("%d rolls", n)
	case n == 1:
		return fmt.Sprintf("1 pack of %d", per)
	}
	return fmt.Sprintf("%d packs of %d", n, per)
}

func textSoldIn(per int) string {
	if per <= 1 {
		return "single rolls"
	}
	return fmt.Sprintf("packs of %d", per)
}

func textPaperBatch(paper, batch string) string { return paper + ": ask for batch " + batch + "." }

func textByArea(area measure.Area, sys measure.System, rolls int) string {
	return fmt.Sprintf("By area: %s is %s of paper", area.Format(sys), textRolls(rolls))
}

func textByDrops(drops, rolls int) string {
	return fmt.Sprintf("As it hangs: %d drops come from %s", drops, textRolls(rolls))
}

func textRolls(n int) string {
	if n == 1 {
		return "1 roll"
	}
	return fmt.Sprintf("%d rolls", n)
}

func textProven(rolls int, besideOthers bool) string {
	if besideOthers {
		return fmt.Sprintf("%s to buy will not do beside those in hand, however they are cut: that is proven.", textRolls(rolls-1))
	}
	return fmt.Sprintf("%s will not do, however they are cut: that is proven.", textRolls(rolls-1))
}

func textNotProven(least int) string {
	return fmt.Sprintf("At least %s must be bought.", textRolls(least))
}

func textSureIntro(jobs int) string {
	return fmt.Sprintf("The job was played through %d times: rolls begin anywhere in the design and are a little longer or shorter, heights were measured a little wrong, now and then a piece is spoiled. The bars say in how many of these jobs so many rolls were enough.", jobs)
}

func textEnough(of, all int) string {
	tenths := of * 1000 / max(all, 1)
	return fmt.Sprintf("%d.%d %%", tenths/10, tenths%10)
}

const textPlanned = "planned"
