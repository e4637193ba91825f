package paper

import "firstdrop/measure"

// Tolerance is how much the goods may fall short of the label.
type Tolerance struct {
	// Length and Width are allowed deviations in parts per thousand of the
	// nominal size: 15 each under EN 233 for rolls up to category 2.
	Length, Width int
}

// Limits of EN 233 (BS EN 233, clause 5, as the text at
// en.freestandardsdocuments.com/bs-en-233-pdf-free-download.html shows them).
const (
	categoryOneFrom   = 500 * measure.Millimetre
	categoryOneTo     = 530 * measure.Millimetre
	categoryTwoFrom   = 600 * measure.Millimetre
	friezeFrom        = 32 * measure.Millimetre
	friezeTo          = 500 * measure.Millimetre
	shortFrieze       = 10 * measure.Metre // shorter ones may deviate twice as much
	categoryOneArea   = 5_326_000 * measure.SquareMillimetre
	categoryOneSpread = categoryOneArea * 3 / 100
)

// Category returns the category of EN 233 that a roll of these nominal sizes
// belongs to: 1 (500 to 530 mm wide and 5.326 m² within 3 %), 2 (from 600 mm), 3
// (friezes, 32 to 500 mm), or 0 when the standard has no place for it. Limits
// belong to their category; 500 mm is a frieze only when its area is not that
// of category 1.
func Category(width, roll measure.Length) int {
	switch {
	case width >= categoryTwoFrom:
		return 2
	case width >= categoryOneFrom && width <= categoryOneTo && isCategoryOneArea(width.Times(roll)):
		return 1
	case width >= friezeFrom && width <= friezeTo:
		return 3
	}
	return 0
}

func isCategoryOneArea(a measure.Area) bool {
	return a >= categoryOneArea-categoryOneSpread && a <= categoryOneArea+categoryOneSpread
}

// StandardTolerance returns what EN 233 allows a roll of these nominal sizes:
// 15 ‰ in length and width, but 30 ‰ in length for a frieze shorter than 10 m.
// The standard gives friezes no tolerance in width, and goods outside its
// categories none at all: for them 15 ‰ is taken over by analogy.
func StandardTolerance(width, roll measure.Length) Tolerance {
	if Category(width, roll) == 3 && roll < shortFrieze {
		return Tolerance{Length: 30, Width: 15}
	}
	return Tolerance{Length: 15, Width: 15}
}

// ShortestRoll returns the shortest length that a roll may have and still be
// what the label says, by the paper's tolerance, rounded down to the
// millimetre: 9.899 m for 10.05 m less 15 ‰.
func (p *Paper) ShortestRoll() measure.Length { return p.Shortest(p.RollLength) }

// Shortest returns the same for a roll of another nominal length.
func (p *Paper) Shortest(roll measure.Length) measure.Length {
	kept := int64(1000 - p.Tolerance.Length)
	thousands, rest := int64(roll/1000), int64(roll%1000)
	return measure.Length(thousands*kept + rest*kept/1000).FloorTo(measure.Millimetre)
}
