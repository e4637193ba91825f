// Package measure answers the question: how long?
//
// A [Length] is a whole number of nanometres, so millimetres and sixty-fourths
// of an inch are both exact and go in and come out unchanged. [Area] and
// [Angle] are integers too. No float decides anything that is cut.
//
// [ParseLength] reads what people write in either system and refuses what can
// be read in two ways. Each type prints itself in two manners: String (and
// MarshalText) for files and [Length.Format] for people. A Length and an Angle
// print exactly and read back; an Area is counted, never read. The cases in
// testdata/lengths.json bind every other reader of lengths to the same answers.
package measure
