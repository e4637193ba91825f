// Package order answers the question: what to buy?
//
// [For] turns a count of rolls into what a shop sells: whole packs, with what
// they cost and what is left over. [AreaEstimate] is the common estimate, to be
// shown beside the true count; it decides nothing.
package order
