package job

import (
	"firstdrop/cutting"
	"firstdrop/geom"
	"firstdrop/measure"
	"firstdrop/money"
	"firstdrop/paper"
	"firstdrop/room"
)

// Version is the version of the format that this package reads and writes.
const Version = 1

// Job is one job document. The tags name the keys; "required" ones must be
// there and are always printed, all others are left out when they say nothing.
type Job struct {
	Version int          `job:"firstdrop,required"` // of the format: 1
	Name    string       `job:"name"`
	Note    string       `job:"note"`  // for people; not used for planning
	Units   measure.Unit `job:"units"` // of numbers without one; the zero value: every number needs its own
	Room    Room         `job:"room,required"`
	Papers  []Paper      `job:"papers,required"`
	Hang    []Hang       `job:"hang"` // empty: the only paper, on all walls
	Rules   Rules        `job:"rules"`
	Cutting Cutting      `job:"cutting"`
	Weights Weights      `job:"weights"`

	source *source // where each part stood; nil for a job made by a program
}

// Room is the room as measured: its walls in the order in which one meets them
// turning to the right inside the room.
type Room struct {
	Height *Span   `job:"height"`          // default for the walls' heights
	Closed bool    `job:"closed,required"` // the last wall leads back to the first
	Corner *Corner `job:"corner"`          // default for the corners; nil: inside, taken for square
	Walls  []Wall  `job:"walls,required"`
	// Ends say how the two ends of an open room lean; a closed room has none.
	Ends Ends `job:"ends,flow"`
	// Diagonals were measured across the room, to check the floor plan.
	Diagonals []Diagonal `job:"diagonals,rows"`
}

// Wall is one wall. Its shape is either Outline or what Height and Floor give.
type Wall struct {
	Name     string         `job:"name,required"`  // unlike all other walls' names
	Width    measure.Length `job:"width,required"` // along the datum; > 0
	Height   *Span          `job:"height"`         // of the ceiling line over the datum; nil: the room's
	Floor    *Span          `job:"floor"`          // of the floor over the datum; nil: 0
	Outline  geom.Ring      `job:"outline,flow"`   // x from 0 to Width, y from the datum
	Sight    room.Sight     `job:"sight"`
	Openings []Opening      `job:"openings,rows"`
	Fittings []Fitting      `job:"fittings,rows"`
	Corner   *Corner        `job:"corner,flow"` // at the wall's right end; nil: the room's
}

// Opening is a door, a window, or anything else that keeps paper off the wall.
// Its shape is either Outline or a rectangle.
type Opening struct {
	Name    string           `job:"name"`
	Kind    room.OpeningKind `job:"kind,required"`
	Left    *measure.Length  `job:"left"`   // of its left edge, from the wall's left end
	Width   *measure.Length  `job:"width"`  // of the rectangle; > 0
	Sill    *measure.Length  `job:"sill"`   // of its lower edge, over the datum; nil: the floor, except for windows and panels
	Height  *measure.Length  `job:"height"` // from the sill to the head; > 0
	Outline geom.Ring        `job:"outline,flow"`
	Depth   measure.Length   `job:"depth"`   // of the return, from the wall's face
	Returns room.Sides       `job:"returns"` // which returns are papered
	Sight   room.Sight       `job:"sight"`
}

// Fitting is a thing that is papered round or under.
type Fitting struct {
	Name string           `job:"name"`
	Kind room.FittingKind `job:"kind,required"`
	At   geom.Point       `job:"at,required"`   // its middle: from the wall's left end, and over the datum
	Size geom.Point       `job:"size,required"` // its width and height
}

// Diagonal is a length measured straight across the room, from corner to corner.
type Diagonal struct {
	From   string         `job:"from,required"` // "A|B": the corner between these walls
	To     string         `job:"to,required"`
	Length measure.Length `job:"length,required"`
}

// Corner is the fold at a wall's right end. The text "outside 270" and a
// mapping with the keys kind, angle, lean and sight both stand for one.
type Corner struct {
	Kind  room.CornerKind
	Angle measure.Angle // through the room: less than 180° inside, more than 180° outside; 0: not measured, taken for square
	Lean  Ends          // in the plane of the wall on its left, and of the wall on its right
	Sight room.Sight
}

// Ends are the leans at two places: how far the head of each stands to the
// right of its foot; negative to the left.
type Ends struct {
	Left  measure.Length `job:"left"`
	Right measure.Length `job:"right"`
}

// Span is a height at a wall's left and right end. One length alone stands for
// the same at both.
type Span struct{ Left, Right measure.Length }

// Paper is what the label says.
type Paper struct {
	Name      string         `job:"name,required"`  // unlike all other papers' names
	Width     measure.Length `job:"width,required"` // as hung
	DryWidth  measure.Length `job:"dry_width"`      // off the roll; 0: as hung
	Roll      measure.Length `job:"roll,required"`  // length of one roll
	Repeat    measure.Length `job:"repeat"`         // 0: none, or as the mark in Match says
	Across    measure.Length `job:"across"`         // horizontal repeat; 0: the width
	Match     string         `job:"match,required"` // as [paper.ParseMatch] reads it
	Measured  *Measured      `job:"measured,flow"`  // nil: the label is taken at its word
	Reversing bool           `job:"reversing"`      // alternate drops hang upside down
	Motif     *Motif         `job:"motif,flow"`
	Lines     paper.Lines    `job:"lines"`          // which lines of the design show when the room is crooked
	Picture   string         `job:"picture"`        // of one width and one repeat: a file beside the job, or the name of a demo design; not used for planning
	Paste     paper.Paste    `job:"paste"`          // on the wall, when nothing is said
	SoakMin   int            `job:"soak_minutes"`   // between pasting and hanging
	Pack      *int           `job:"pack"`           // rolls sold together; nil: 1
	Price     money.Amount   `job:"price"`          // of one pack
	Batch     string         `job:"batch"`          // the printing run
	Tolerance *Tolerance     `job:"tolerance,flow"` // nil: that of EN 233
	Available *int           `job:"available"`      // rolls that can still be had; nil: as many as wanted
	Keep      int            `job:"keep"`           // rolls to stay unopened, bought beside those that are cut
	Also      []Offer        `job:"also,rows"`      // other sizes of the same paper on sale
	InOrder   bool           `job:"in_order"`       // the goods shade: cut in the order of hanging
	Rolls     []Roll         `job:"rolls,rows"`     // that are there already
}

// Offer is a further size in which the paper is sold.
type Offer struct {
	Roll      measure.Length `job:"roll,required"` // length of one roll
	Pack      *int           `job:"pack"`          // rolls sold together; nil: 1
	Price     money.Amount   `job:"price"`         // of one pack
	Available *int           `job:"available"`     // rolls that can still be had; nil: as many as wanted
}

// Roll is a roll that is there, or a left-over. It has a length or parts.
type Roll struct {
	Name   string          `job:"name,required"` // unlike the names of the paper's other rolls
	Batch  string          `job:"batch"`         // empty: the label's
	Length measure.Length  `job:"length"`        // as measured, from the leading end
	Begins *measure.Length `job:"begins"`        // first place where the design begins, from the leading end; nil: not looked at
	Flaws  []Flaw          `job:"flaws"`         // stretches to be cut out, from the leading end on
	Parts  []RollPart      `job:"parts"`         // separate lengths, in the order in which they come off
}

// Flaw is a stretch of a roll that no piece may touch, measured from the leading
// end; over several parts as if they lay end to end.
type Flaw struct {
	From measure.Length `job:"from,required"`
	To   measure.Length `job:"to,required"`
}

// RollPart is one of the separate lengths of a roll.
type RollPart struct {
	Length measure.Length  `job:"length,required"`
	Begins *measure.Length `job:"begins"` // as in [Roll], from the part's own leading end
}

// Measured is what was measured of the design on strips laid side by side: the plan goes by
// it, whatever the label says.
type Measured struct {
	Repeat measure.Length   `job:"repeat,required"` // from one motif to the next like it, along one strip
	Lower  []measure.Length `job:"lower,required"`  // how much lower than in the first strip it stands in the second, third …; negative: higher
}

// Motif is where the leading motif sits in the design.
type Motif struct {
	Axis measure.Length `job:"axis,required"` // from the paper's left edge
	Head measure.Length `job:"head,required"` // along the repeat, from its beginning
	Tall measure.Length `job:"tall"`          // 0: a line
}

// Tolerance is how far the goods may differ from the label, in parts per thousand.
type Tolerance struct {
	Length int `job:"length,required"`
	Width  int `job:"width,required"`
}

// Hang says which paper goes on which walls, and what is decided already.
type Hang struct {
	Name   string          `job:"name"`
	Paper  string          `job:"paper,required"`
	Walls  []string        `job:"walls,flow"`                    // neighbours, to the right; empty: all
	Closed *bool           `job:"closed"`                        // nil: when it takes all walls of a closed room
	From   *measure.Length `job:"from"`                          // only above this height over the datum
	To     *measure.Length `job:"to"`                            // only below it
	Lining string          `job:"lining" words:"upright,across"` // it is the lining under the other entries, its lengths hung so; empty: it is none
	Start  *Start          `job:"start,flow"`
	Kill   *Kill           `job:"kill,flow"`
	Design *measure.Length `job:"design"` // design phase of the first drop at the datum
	// NewDrop and Carry are inside corners, "A|B", at which a new drop must, or must
	// not, begin; KeepOff are places where no seam may stand; Hung are walls that
	// hang already, with a seam where Start says.
	NewDrop []string  `job:"new_drop,flow"`
	Carry   []string  `job:"carry,flow"`
	KeepOff []KeepOff `job:"keep_off,rows"`
	Hung    []string  `job:"hung,flow"`
	// Panels is "equal" for panels of one width, with Trim cut off each edge at the least.
	Panels string         `job:"panels" words:"equal"`
	Trim   measure.Length `job:"trim"`
	// SetTo says what the drops of walls are set to, where that is not for the
	// program to find.
	SetTo []SetTo `job:"set_to,rows"`
}

// SetTo says what the drops of one wall are set to, and where its design gets its
// height from.
type SetTo struct {
	Wall    string `job:"wall,required"`
	To      string `job:"to,required" words:"plumb,ceiling,casing,left,right"`
	Opening string `job:"opening"`                         // to casing: the opening's name
	Side    string `job:"side" words:"left,right"`         // to casing: which side of it; empty: left
	Design  string `job:"design" words:"datum,left,right"` // empty: the datum, or the wall that To names
}

// KeepOff is a stretch of a wall on which no seam may stand.
type KeepOff struct {
	Wall string         `job:"wall,required"`
	From measure.Length `job:"from,required"` // from the wall's left end
	To   measure.Length `job:"to,required"`
}

// Start fixes where hanging begins: the left edge of a drop, or a centre line.
type Start struct {
	Wall   string          `job:"wall,required"`
	Edge   *measure.Length `job:"edge"`                       // of the first drop's left edge, from the wall's left end
	Centre *measure.Length `job:"centre"`                     // of the centre line, from the wall's left end
	Middle []string        `job:"middle,flow"`                // the centre line by name: the middle of an opening or fitting of the wall, or between two; "wall": of the wall
	Of     string          `job:"of" words:"drop,seam,motif"` // what is centred; empty: a drop or a seam, whichever is better
}

// Kill fixes where the design of a closed run cannot meet: in a corner, on a
// wall, or over an opening.
type Kill struct {
	Corner  string          `job:"corner"`                 // "A|B": between these walls
	Lap     string          `job:"lap" words:"left,right"` // whose drop turns the corner by the overlap; empty: whichever is better
	Wall    string          `job:"wall"`
	At      *measure.Length `job:"at"`      // from the wall's left end
	Opening string          `job:"opening"` // anywhere over it
}

// Rules are the measures of whoever hangs; nil: the default. The first seven are
// explained by [firstdrop/hanging.Rules], the rest by [firstdrop/plan.Taste]. Each is between 0
// and 1 m (the last two 20 m), and the cutting step more than 0.
type Rules struct {
	Allowance      *Allowance      `job:"allowance"`
	Wrap           *measure.Length `job:"wrap"`
	WrapLimit      *measure.Length `job:"wrap_limit"`
	OutsideWrap    *measure.Length `job:"outside_wrap"`
	PlumbTolerance *measure.Length `job:"plumb_tolerance"`
	StartOverlap   *measure.Length `job:"start_overlap"`
	CutStep        *measure.Length `job:"cut_step"`
	MinSliver      *measure.Length `job:"min_sliver"`
	SeamClearance  *measure.Length `job:"seam_clearance"`
	Overrun        *measure.Length `job:"overrun"`
	LongPiece      *measure.Length `job:"long_piece"`
	EyeLevel       *measure.Length `job:"eye_level"`
}

// Allowance is the surplus at head and foot. One length alone stands for both.
type Allowance struct{ Head, Foot measure.Length }

// Cutting says how rolls are cut, and what a cutting plan is to have. Lead, Loss,
// Blade and SlitOver are explained by [firstdrop/plan.CutRules]; nil: the default. Each is
// between 0 and 1 m.
type Cutting struct {
	Lead     *measure.Length `job:"lead"`
	Loss     *measure.Length `job:"loss"`
	Blade    *measure.Length `job:"blade"`
	SlitOver *measure.Length `job:"slit_over"`
	Alone    bool            `job:"alone"`      // never cut narrow pieces side by side
	Goals    []cutting.Goal  `job:"goals,flow"` // what is wanted most first; empty: the default
}

// Weights say how much each finding counts when layouts are compared, in
// thousandths of a roll, as [firstdrop/plan.Weights] explains; nil: the default. Each is
// between 0 and a million.
type Weights struct {
	Roll        *int64 `job:"roll"`
	Sliver      *int64 `job:"sliver"`
	SeamNear    *int64 `job:"seam_near"`
	FocalSeam   *int64 `job:"focal_seam"`
	KillMetre   *int64 `job:"kill_metre"`
	MotifCut    *int64 `job:"motif_cut"`
	EndInFold   *int64 `job:"end_in_fold"`
	Drop        *int64 `job:"drop"`
	Piece       *int64 `job:"piece"`
	Wedge       *int64 `job:"wedge"`
	BatchChange *int64 `job:"batch_change"`

	Drift      *int64 `job:"drift"`
	OffPlumb   *int64 `job:"off_plumb"`
	OffCasing  *int64 `job:"off_casing"`
	CornerStep *int64 `job:"corner_step"`
	MixedWays  *int64 `job:"mixed_ways"`

	SliverBeside *int64 `job:"sliver_beside"`
	Overrun      *int64 `job:"overrun"`
	RenewMetre   *int64 `job:"renew_metre"`
	OffCentre    *int64 `job:"off_centre"`
	UnequalEnds  *int64 `job:"unequal_ends"`
	MotifCutLow  *int64 `job:"motif_cut_low"`
	LapShadow    *int64 `job:"lap_shadow"`
	LiningSeam   *int64 `job:"lining_seam"`
	SeamFitting  *int64 `job:"seam_fitting"`
	Awkward      *int64 `job:"awkward"`
}
