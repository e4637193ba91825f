package plan

import (
	"firstdrop/cutting"
	"firstdrop/finding"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/order"
)

// Plan is a task with everything decided. It is derived: the same task gives
// the same plan, to the byte.
type Plan struct {
	Task     *Task
	Runs     []RunPlan   // as in Task.Runs
	Papers   []PaperPlan // as in Task.Papers
	Findings []finding.Finding
}

// RunPlan is the layout chosen for one run.
type RunPlan struct {
	Layout *hanging.Layout
	Score  int64 // what its findings and paper weigh; less is better
	Tried  int   // how many layouts were compared
}

// PaperPlan is what one paper has to give, over all runs hung with it.
type PaperPlan struct {
	// Pieces tells whose each cutting piece is: Cutting's piece i is
	// Runs[Pieces[i].Run].Layout.Pieces[Pieces[i].Piece].
	Pieces  []PieceRef
	Cutting *cutting.Solution // nil when the paper is not used
	Drops   int               // drops that need paper
	Order   order.Line        // what to buy
	// Net is the area to be papered: the faces less their openings, and the returns.
	Net measure.Area
	// AreaRolls is what dividing Net by a roll's area says, rounded up: the
	// common estimate, shown beside the true count.
	AreaRolls int
	// ShortRolls is the count that would be needed if every roll were as short
	// as the label's tolerance allows; 0 when a piece would not fit at all.
	ShortRolls int
}

// PieceRef names a piece of a layout.
type PieceRef struct{ Run, Piece int }
