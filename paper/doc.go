// Package paper answers the question: what is on the label?
//
// A [Paper] holds what the roll label says and what it means for neighbouring
// drops: how the design of drop i stands against that of the first drop.
package paper
