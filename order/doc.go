// Package order answers the question: what to buy?
//
// [For] turns a count of rolls into what a shop sells: whole packs, with what
// they cost and what is left over. [AreaEstimate] is the common estimate, to be
// shown beside the true count; it decides nothing.
//
// [Certainty] says how sure a count is: a seeded simulation of the job as it may
// turn out gives a [Curve] of rolls against the share of jobs for which they are
// enough. [Cliffs] finds the exact changes of a height, an allowance, the repeat
// or the roll length at which the count becomes another.
package order
