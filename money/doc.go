// Package money answers the question: how much?
//
// An [Amount] is a whole number of a currency's smallest unit, so a price goes
// in and comes out unchanged. Amounts of two currencies never mix, nothing
// overflows silently, and wherever a share has to be rounded the [Rounding] is
// named by the caller.
package money
