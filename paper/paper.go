package paper

import (
	"slices"
	"strconv"
	"strings"

	"firstdrop/measure"
	"firstdrop/message"
	"firstdrop/money"
)

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

var pasteNames = []string{"wall", "paper", "ready", "self"}

// String returns "wall", "paper", "ready" or "self".
func (p Paste) String() string {
	if p < 0 || int(p) >= len(pasteNames) {
		return "unknown paste"
	}
	return pasteNames[p]
}

// MarshalText writes what [Paste.String] returns.
func (p Paste) MarshalText() ([]byte, error) { return []byte(p.String()), nil }

// UnmarshalText reads what [Paste.String] returns; p is unchanged by an error.
func (p *Paste) UnmarshalText(text []byte) error {
	i := slices.Index(pasteNames, string(text))
	if i < 0 {
		return message.New("paste_unknown", "{text} is no place for paste; it is one of {words}", "text", strconv.Quote(string(text)), "words", strings.Join(pasteNames, ", "))
	}
	*p = Paste(i)
	return nil
}

// Paper is one paper as its label describes it.
type Paper struct {
	Name       string
	Width      measure.Length // as hung: trimmed, and after wet expansion; > 0
	DryWidth   measure.Length // as it comes off the roll; 0 when the same as Width
	RollLength measure.Length // nominal, as the label says; > 0
	Repeat     measure.Length // along the roll; 0 when there is none
	Across     measure.Length // horizontal repeat; 0 means the width
	Match      Match
	Printed    *Design // by the label, where Repeat and Match were measured ([Measured]); nil: they are the label's
	Motif      *Motif  // nil when the label or the buyer says nothing
	Lines      Lines
	Paste      Paste
	SoakMin    int // minutes between pasting and hanging
	Pack       int // rolls sold together: 1, 2 or 3
	Batch      string
	Tolerance  Tolerance
	Price      money.Amount // of one pack; the zero value when not stated
	// Available is how many rolls can still be had; nil for as many as wanted.
	Available *int
	Keep      int // rolls to stay unopened, for repairs, beside those that are cut
	// Also lists other sizes in which the same paper is sold.
	Also []Offer
	// InOrder says that the goods shade: pieces must come off the rolls in the
	// order in which they hang.
	InOrder bool
	// Rolls are those that are there; nil before any has come.
	Rolls []Roll
}

// Mirrored returns the paper printed in mirror writing: an offset goes the
// other way and the motif's axis is counted from the other edge. What lies along
// the roll stays: its rolls are as long, begin where they did, and have their
// flaws where they were. Drop i of the one stands as drop −i of the other;
// mirroring twice gives the same paper again. Nothing is shared with p.
func (p *Paper) Mirrored() *Paper {
	m := *p
	m.Match = p.Match.mirrored(p.Repeat)
	if d := p.Printed; d != nil {
		m.Printed = &Design{d.Repeat, d.Match.mirrored(d.Repeat)}
	}
	if p.Motif != nil {
		m.Motif = &Motif{Axis: p.Width - p.Motif.Axis, Head: p.Motif.Head, Tall: p.Motif.Tall}
	}
	m.Available = copied(p.Available)
	m.Also = slices.Clone(p.Also)
	for i := range m.Also {
		m.Also[i].Available = copied(p.Also[i].Available)
	}
	m.Rolls = slices.Clone(p.Rolls)
	for i := range m.Rolls {
		m.Rolls[i] = p.Rolls[i].copied()
	}
	return &m
}
