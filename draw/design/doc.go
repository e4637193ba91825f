// Package design answers the question: what could the paper look like?
//
// It draws three designs of our own, one for each way in which the next drop
// stands against this one: straight, half drop, third drop. They are for trying the
// program out and for pictures in its documentation; nobody sells them.
//
// A design is drawn once and repeated by moving it, up the roll by one repeat and
// across by one width and the drop of its match. What is cut at the right edge of a
// picture therefore goes on at the left edge, that much lower on the roll.
package design
