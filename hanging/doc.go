// Package hanging answers the question: where does each drop stand?
//
// Given a run of walls, a paper and a [Choice] (where the first drop stands,
// where the design may fail to meet, how high the design stands), a [Hanger]
// works out a [Layout]: every drop with the parts of wall it covers, every
// seam with how far the design misses there, the plumb lines to draw, and
// every piece to cut with its length and design phase. It knows no rolls.
package hanging
