// Package tell answers the question: what is said of a plan?
//
// It holds the sentences about a plan in a language: what a finding means
// ([Finding]), where a place is ([From], [Wall]), what a piece is ([Piece]), how
// far the design misses ([Misses]), how a drop is set ([Drop]), which roll a
// piece comes from ([Rolls]) and which cautions apply ([Cautions]). What is
// printed and what is shown on a screen take their sentences from here, so that
// both say the same. It decides nothing: every figure comes from the plan, every
// word from the catalogues of package words.
//
// A catalogue is the first argument throughout: it fixes language and units, and
// nil is metric British English.
package tell
