// Package sheet answers the question: what is printed?
//
// [Wall] draws the elevation of one wall, [CuttingList] and [RollMap] write
// tables, [Words] says a finding in a plain sentence. The package decides
// nothing: every figure comes from the plan.
package sheet
