// Package words answers the question: how is it said?
//
// A [Catalogue] holds every sentence and every word that people read, in one
// language, and writes numbers, lengths, money and dates as that language does.
// The texts are files, one per language, that a translator reads and edits: see
// catalogue/en-GB.txt, which explains itself. Nothing here knows what a wall or
// a roll is.
package words
