// Package cutting answers the question: which piece from which roll?
//
// A [Problem] holds the pieces to cut, each with its length and the design
// phase at its leading end, and the roll on offer. [Solve] returns a
// [Solution]: fewest rolls, every cut from–to, a lower bound with a
// [Certificate] in whole numbers, and whether the two meet. The package knows
// neither walls nor drops nor paper; it is exact stock cutting in one
// dimension, with or without a design that repeats.
//
// Where a roll's phase at the beginning is not known, as before an order, the
// plan holds for every phase, exactly, and not by allowing a repeat per roll.
package cutting
