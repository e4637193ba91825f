package plan

import (
	"firstdrop/cutting"
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/room"
)

// Task is one job to plan. It is complete and checked: room and paper have
// said that they are sound.
type Task struct {
	Runs   []RunTask
	Papers []paper.Paper
	Rules  hanging.Rules
	Cut    CutRules
	Taste  Taste
	// Step is the fine grid on which starts are tried: a sixteenth of an inch
	// for people who measure in inches; a millimetre when it is 0.
	Step measure.Length
	// Stop, if not nil, is asked now and then whether nobody wants the plan any more:
	// then planning soon ends with [ErrStopped]. Once true, it stays so.
	Stop func() bool
	// Progress, if not nil, is told now and then how much of a part of the work is done.
	// It changes nothing.
	Progress func(part Part, done, of int)
}

// CutRules says how rolls are cut.
type CutRules struct {
	Lead measure.Length // of each roll's beginning, not used: creased or dirty windings
	Loss measure.Length // at each cut
	// Blade is what must lie free between narrow pieces cut side by side.
	Blade measure.Length
	// SlitOver is by how much such a piece is wider than it hangs at an edge that is slit,
	// to be trimmed in its place on the wall.
	SlitOver measure.Length
	// Alone forbids cutting narrow pieces side by side from one length.
	Alone bool
	// First is wanted most, Then what follows, among the plans as good by those
	// before.
	First cutting.Goal
	Then  []cutting.Goal
}

// RunTask is one run, the paper it is hung with, and what is already decided.
type RunTask struct {
	Run   *room.Run
	Paper int // index into Task.Papers
	Fixed Fixed
	// Panels, if not nil, asks for panels of one width.
	Panels *Panels
	// Lining lists the seams of a lining paper that hangs already under this one.
	Lining []Line
	// Over lists the runs that hang over this one, which is then a lining: it is
	// laid out after them, and its seams keep clear of theirs.
	Over []Above
}

// Above is a run that hangs over a lining.
type Above struct {
	Run   int   // index into Task.Runs; not itself a lining
	Walls []int // of each wall of the lining, its index in that run; −1: not there
}

// Line is an upright line on a wall of a run.
type Line struct {
	Wall int
	X    measure.Length // from the wall's left end
}

// Fixed is what the user has decided; nil means: search it.
type Fixed struct {
	// Start fixes the left edge of drop 0. Centre fixes a line instead. At
	// most one of the two is set.
	Start  *hanging.Start
	Centre *Centre
	// Kill fixes where a closed run's design may fail to meet.
	Kill *Kill
	// Design fixes the design height: the phase of drop 0 at the datum.
	Design *measure.Length
	// NewDrop lists inside corners, each by the wall on its left, at which a new
	// drop must begin, up to [MostNewDrops]; Carry those at which none may.
	NewDrop, Carry []int
	// KeepOff lists stretches of wall on which no seam may stand, the kill seam
	// not excepted; their ends may have one.
	KeepOff []WallStretch
	// Hung lists walls that hang already, with a seam where Start says: what is
	// left is searched, and no kill seam is put on them or between two of them.
	Hung []int
	// Set says how the sheets of walls are set, of none twice. Other walls hang
	// plumb, or as is best where the label states the design's lines.
	Set []WallSetting
}

// Kill is where the kill seam of a run is fixed: on a wall just at X, in a corner
// lapped from the side that Lap says.
type Kill struct {
	hanging.Kill
	// Free fixes no more than the opening that X lies in, or the corner: the seam may
	// stand anywhere over the one, and either side may turn the other.
	Free bool
}

// WallSetting is how the sheets of a wall are set.
type WallSetting struct {
	Wall int
	hanging.Setting
}

// MostNewDrops is in how many corners new drops can be fixed.
const MostNewDrops = 6

// WallStretch is a part of a wall.
type WallStretch struct {
	Wall int
	X    geom.Interval // from the wall's left end
}

// CentreOf says what is put on a centre line.
type CentreOf int

// What can stand on a centre line. Either tries a drop and a seam.
const (
	Either CentreOf = iota
	DropCentre
	SeamCentre
	MotifAxis
)

// Centre is a line that the layout is centred on.
type Centre struct {
	Wall int
	X    measure.Length // from the wall's left end
	Of   CentreOf
}

// Taste is what counts as good, and how much: data, so that it can be changed.
type Taste struct {
	MinSliver     measure.Length // a strip narrower than this at a corner or beside an opening is a sliver
	SeamClearance measure.Length // no seam nearer than this to an outside corner or an opening's edge
	Overrun       measure.Length // a drop over an opening that runs past its edge by less should not
	LongPiece     measure.Length // a longer piece takes two to hang
	EyeLevel      measure.Length // above the floor; what is higher is seen half as much
	Weights       Weights
}

// Weights turn findings into one number: the price of each, in units of a
// thousandth of a roll.
type Weights struct {
	Roll      int64 // a roll
	Sliver    int64 // a sliver, at its narrowest; less as it nears the minimum
	SeamNear  int64 // a seam on the edge of an outside corner or opening; less as it nears the clearance
	FocalSeam int64 // a seam down the middle of a focal wall
	KillMetre int64 // a metre of kill seam in plain sight that misses
	MotifCut  int64 // a leading motif cut at a ceiling line, a drop
	EndInFold int64 // a drop that ends exactly in an inside corner
	Drop      int64 // a drop more to handle
	Piece     int64 // a piece more to handle
	Wedge     int64 // a millimetre of misfit in a leaning corner

	SliverBeside int64 // a sliver between a seam and an opening, at its narrowest
	Overrun      int64 // a drop over an opening that runs past its edge by little
	RenewMetre   int64 // a metre of corner in plain sight where a new drop misses
	OffCentre    int64 // the motif as far off its centre as it can be
	UnequalEnds  int64 // end strips of a focal wall that differ by a width
	MotifCutLow  int64 // a leading motif cut at a rail, a sill or a head
	LapShadow    int64 // a lap that turns its edge away from the light
	LiningSeam   int64 // a seam on a seam of the lining; less as it nears the clearance
	SeamFitting  int64 // a seam across a socket or the like
	Awkward      int64 // a piece that is hard to handle
	Drift        int64 // a millimetre that rows run off a ceiling, over the wall
	OffPlumb     int64 // a millimetre that edges run off plumb, over the wall's height
	OffCasing    int64 // the same off a casing
	CornerStep   int64 // a millimetre that the design steps up or down in a corner
	MixedWays    int64 // a corner in sight between walls set in different ways
	// BatchChange is a corner at which another batch begins.
	BatchChange int64
}
