// Package text answers the question: how does a line of words look?
//
// [Shape] turns a line into glyphs of the embedded fonts: letters joined and
// stacked as their script wants, parts that run from right to left put in order,
// and each letter in the first font that has it. All measures are thousandths of
// the letters' size, whole numbers, the same on every machine.
//
// # Order
//
// Directions follow the Unicode Bidirectional Algorithm (UAX #9, revision 50)
// without its embeddings and isolates, whose marks draw.Clean takes out of every
// text. A line's own direction is that of its first strong letter.
package text
