// Package paper answers the question: what is on the label?
//
// A [Paper] holds what the roll label says and what it means for neighbouring
// drops: how the design of drop i stands against that of the first drop.
//
// [Paper.Shift] and [Paper.Phase] are the rules of the match, [ParseMatch] reads
// it as labels print it, [Paper.Check] names everything in which a label
// contradicts itself, and [Paper.Findings] what is possible but worth a second
// look at the label.
package paper
