// Package png answers the question: what does a scene look like in squares?
//
// It fills areas by the even-odd rule, lines and letters by the non-zero rule, with
// edges smoothed by how much of a square they cover. Everything is reckoned in
// whole numbers of 1/256 square, so that every machine makes the same picture,
// except for the corners of slanting pens and letters, which begin as floats and
// are rounded.
package png
