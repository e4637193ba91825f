package paper

import "firstdrop/measure"

// MatchKind says how the next drop must stand against this one.
type MatchKind int

// The kinds of match. The words are those of the trade (EN 235 as the trade
// explains it).
const (
	Free     MatchKind = iota // no design to meet
	Straight                  // the same height from drop to drop
	Offset                    // every drop stands a stated part of the repeat further on
)

// Match is the label's match.
type Match struct {
	Kind MatchKind
	// For Offset: the part of the repeat, Num/Den in lowest terms with
	// 0 < Num < Den (1/2 is a half drop); or, when Den is 0, the stated Length
	// (a label that reads 64/32 has repeat 64 cm and offset 32 cm).
	Num, Den int64
	Length   measure.Length
	// Reversing says that alternate drops are hung upside down.
	Reversing bool
}

// Motif says where the leading motif sits in the design.
type Motif struct {
	Axis measure.Length // of the motif, from the left edge of the paper as hung
	Head measure.Length // design phase at the motif's top, in [0, repeat)
	Tall measure.Length // the motif's height, from 0 (a line) to the repeat
}

// Paste says where the paste goes.
type Paste int

// The ways of pasting.
const (
	PasteTheWall Paste = iota
	PasteThePaper
	ReadyPasted
	SelfAdhesive
)

// Paper is one paper as its label describes it.
type Paper struct {
	Name       string
	Width      measure.Length // as hung: trimmed, and after wet expansion; > 0
	DryWidth   measure.Length // as it comes off the roll; 0 when the same as Width
	RollLength measure.Length // nominal, as the label says; > 0
	Repeat     measure.Length // along the roll; 0 when there is none
	Across     measure.Length // horizontal repeat; 0 means the width
	Match      Match
	Motif      *Motif // nil when the label or the buyer says nothing
	Paste      Paste
	SoakMin    int // minutes between pasting and hanging
	Pack       int // rolls sold together: 1, 2 or 3
	Batch      string
	Tolerance  Tolerance
	Price      Price
}

// Tolerance is how much the goods may fall short of the label.
type Tolerance struct {
	// Length and Width are allowed deviations in parts per thousand of the
	// nominal size: 15 each under EN 233 for rolls up to category 2.
	Length, Width int
}

// Price is what one pack costs, in the smallest unit of the currency.
// The zero value means not stated.
type Price struct {
	Amount   int64
	Currency string // ISO 4217
}

// Shift returns how far along the roll, at equal height on the wall, the
// design of drop i stands against that of drop 0: a value in [0, Repeat). i
// counts to the right and may be negative. It is computed from i in one
// rounding, never by adding a rounded step, so thirds do not drift.
func (p *Paper) Shift(i int) measure.Length { panic("not yet") }

// IsReversed reports whether drop i hangs upside down.
func (p *Paper) IsReversed(i int) bool { return p.Match.Reversing && i%2 != 0 }

// Phase returns the design phase that drop i shows at height y above the
// datum, for a layout with the given design height: the phase that drop 0
// shows at the datum. Phases count along the roll. On a drop hung head first
// they grow downwards:
//
//	phase = design − y + Shift(i)   (mod repeat)
//
// On a reversed drop the same marks stand at the same heights, and phases grow
// upwards: phase = y − design − Shift(i) (mod repeat). Without a repeat it is 0.
func (p *Paper) Phase(i int, design, y measure.Length) measure.Length { panic("not yet") }

// Mirrored returns the paper printed in mirror writing: an offset goes the
// other way and the motif's axis is counted from the other edge.
func (p *Paper) Mirrored() *Paper { panic("not yet") }

// ShortestRoll returns the shortest length that a roll may have and still be
// what the label says, by the paper's tolerance, rounded down to the
// millimetre.
func (p *Paper) ShortestRoll() measure.Length { panic("not yet") }
