// Package measure answers the question: how long?
//
// A [Length] is a whole number of nanometres, so millimetres and sixty-fourths
// of an inch are both exact and go in and come out unchanged. [Area] and
// [Angle] are integers too. No float decides anything that is cut.
package measure
