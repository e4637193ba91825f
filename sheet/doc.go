// Package sheet answers the question: what is printed?
//
// [Wall] draws the elevation of one wall, [Set] sets the sheets, [CuttingList]
// and [RollMap] write tables. The package decides nothing: every figure comes
// from the plan, and what is said of it from package tell.
package sheet
