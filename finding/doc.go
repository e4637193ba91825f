// Package finding answers the question: what must people know?
//
// A [Finding] is a value, not a sentence: a code, a severity, a place and
// sizes. Text is made at the edge (command line, sheet, screen), so that it can
// be tested and translated. A finding is never an error: the plan is legal, but
// whoever hangs it must know.
package finding
