package plan

import (
	"firstdrop/cutting"
	"firstdrop/finding"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/order"
	"firstdrop/paper"
)

// Plan is a task with everything decided. It is derived: the same task gives
// the same plan, to the byte.
type Plan struct {
	Task     *Task
	Runs     []RunPlan   // as in Task.Runs
	Papers   []PaperPlan // as in Task.Papers
	Findings []finding.Finding

	session *Session // while it is made
}

// RunPlan is the layout chosen for one run.
type RunPlan struct {
	Layout *hanging.Layout
	Score  int64 // what its findings and paper weigh; less is better
	Tried  int   // how many layouts were compared closely; bounds settle the rest
	// Ways is in how many ways the walls can be set that turn them otherwise, plumb or as
	// fixed among them; 0 where they are too many to list. Searched is how many were
	// searched.
	Ways, Searched int
	// Gain is by how much less, at the most, a layout can weigh with the walls set in
	// a way that was neither searched nor ruled out; 0 where there is none.
	Gain int64
	// Untried tells what was not tried; none where the layout is settled.
	Untried []Untried
}

// Settled reports whether no choice on the grid of starts weighs less.
func (r *RunPlan) Settled() bool { return len(r.Untried) == 0 }

// Untried is something that a search neither tried nor ruled out.
type Untried string

// What may be left untried.
const (
	StartsUntried   Untried = "starts"    // in a long run, those between the starts of a coarser grid, but round the best
	NewDropsUntried Untried = "new_drops" // in a long run, new drops in corners but with the best start and some others
	ChoicesUntried  Untried = "choices"   // what bounds did not rule out when as much had been tried as may be
	WaysUntried     Untried = "ways"      // some of the ways to set the walls
	TogetherUntried Untried = "together"  // other layouts of the runs that share the rolls
)

// PaperPlan is what one paper has to give, over all runs hung with it.
type PaperPlan struct {
	// Batches tells what the rolls of each batch give: batches are never mixed
	// on one wall, so each is cut for itself. One, unless rolls of several are
	// used; none when the paper is not used.
	Batches []BatchPlan
	Drops   int          // drops that need paper
	Orders  []order.Line // what to buy of each of the paper's offers, in their order
	// Net is the area to be papered: the faces less their openings, and the returns.
	Net measure.Area
	// AreaRolls is what dividing Net by a roll's area says, rounded up: the
	// common estimate, shown beside the true count.
	AreaRolls int
	// ShortRolls is the count to buy that would be needed if every roll not yet
	// measured were as short as the label's tolerance allows; 0 when a piece
	// would not fit at all.
	ShortRolls int
	// InOrderRolls is the count to buy if the pieces were cut in hanging order;
	// FullDropRolls if every drop, short or not, were cut as long as the longest,
	// rounded up to whole repeats, all from rolls to be bought. Both show what
	// exact cutting saves; 0 when it cannot be done so.
	InOrderRolls, FullDropRolls int
}

// BatchPlan is what the rolls of one batch give.
type BatchPlan struct {
	Batch string // "" when not stated
	// Kinds tells what each kind of roll in Cutting's stock is.
	Kinds []RollKind
	// Cuts tells what each piece that Cutting cuts gives: piece i gives Cuts[i].
	Cuts    []Strip
	Cutting *cutting.Solution
	// Apart is the plan with every piece cut alone, where narrow ones lying side
	// by side save something; else nil.
	Apart *cutting.Solution
}

// RollKind names what stands behind a kind of roll: a roll that is there, or an
// offer.
type RollKind struct {
	Roll  int // index into the paper's Rolls; −1 for a roll to be bought
	Offer int // index into the paper's Offers, for a roll to be bought
}

// Strip is what one length off a roll gives: a piece, or narrow pieces side by
// side, from left to right.
type Strip []Lie

// Lie is a piece's place on its strip.
type Lie struct {
	PieceRef
	Offset measure.Length // from the strip's leading end to the piece's
}

// PieceRef names a piece of a layout: Runs[Run].Layout.Pieces[Piece].
type PieceRef struct{ Run, Piece int }

// Pieces returns the number of pieces of layouts that the paper gives.
func (p *PaperPlan) Pieces() (n int) {
	for i := range p.Batches {
		for _, s := range p.Batches[i].Cuts {
			n += len(s)
		}
	}
	return n
}

// Rolls returns the number of rolls that are cut, those in hand included.
func (p *PaperPlan) Rolls() (n int) {
	for i := range p.Batches {
		n += len(p.Batches[i].Cutting.Rolls)
	}
	return n
}

// Buy returns the number of rolls to be bought.
func (p *PaperPlan) Buy() (n int) {
	for _, line := range p.Orders {
		n += line.Rolls
	}
	return n
}

// LowerBound returns a number of rolls to be bought that no way of cutting the
// same pieces undercuts, the batches being hung where they are.
func (p *PaperPlan) LowerBound() (n int) {
	for i := range p.Batches {
		n += p.Batches[i].Cutting.LowerBound
	}
	return n
}

// Proven reports whether nothing cheaper is possible for the same pieces.
func (p *PaperPlan) Proven() bool {
	for i := range p.Batches {
		if !p.Batches[i].Cutting.Proven {
			return false
		}
	}
	return true
}

// InHand reports whether the batch's roll, by its index in Cutting.Rolls, is
// there already, and which of the paper's rolls it is.
func (b *BatchPlan) InHand(roll int) (index int, ok bool) {
	k := b.Kinds[b.Cutting.Rolls[roll].Stock]
	return k.Roll, k.Roll >= 0
}

// Missing returns the number of pieces for which the rolls that are there, and
// those that can be bought, do not suffice.
func (p *PaperPlan) Missing() (n int) {
	for i := range p.Batches {
		n += p.Batches[i].missing()
	}
	return n
}

// SavedBySide returns how many rolls to buy are saved by cutting narrow pieces
// side by side.
func (p *PaperPlan) SavedBySide() (n int) {
	for i := range p.Batches {
		if b := &p.Batches[i]; b.Apart != nil {
			n += b.Apart.Bought() - b.Cutting.Bought()
		}
	}
	return n
}

// RollLength returns the length of the batch's roll, by its index in
// Cutting.Rolls: as measured, or as the offer says.
func (b *BatchPlan) RollLength(p *paper.Paper, roll int) measure.Length {
	if at, ok := b.InHand(roll); ok {
		return p.Rolls[at].Total()
	}
	return p.Offers()[b.Kinds[b.Cutting.Rolls[roll].Stock].Offer].RollLength
}
