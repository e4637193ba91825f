package hanging

import (
	"firstdrop/geom"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/room"
)

// Layout is where everything stands for one [Choice].
type Layout struct {
	Run    *room.Run   // as surveyed
	Turns  []room.Turn // how each wall is turned; nil: plumb on all of them
	Paper  *paper.Paper
	Rules  Rules
	Choice Choice
	Drops  []Drop  // from the left end of the run (the kill) to the right end
	Seams  []Seam  // in the same order
	Plumbs []Plumb // in hanging order
	Pieces []Piece // in hanging order; those of a drop from its head down, returns last
	// Lifts is by how much each drop is hung higher on the wall than all else here says,
	// by a ceiling out of level; nil: none of them is.
	Lifts []measure.Length

	hung   *room.Run // as the sheets see it; nil: as surveyed
	parts  []Part    // of all drops, in one array
	inner  [2]bool   // by side: the first, or last, drop is not where hanging ends
	strips *Hanger   // that lays strips out in it; nil for a layout of a run
}

// Hung returns the run as the sheets see it: the run itself where all walls hang
// plumb; else with its walls turned, as [room.Run.Turned] does. Places and heights
// of a layout are those of this run: on a wall out of plumb a place along it is
// meant at the foot of its left corner, a height along the sheet.
func (l *Layout) Hung() *room.Run {
	if l.hung == nil {
		return l.Run
	}
	return l.hung
}

// Drop is one width of paper.
type Drop struct {
	// Index counts drops from drop 0, the first to be hung, to the right;
	// negative to its left. It decides the drop's phase.
	Index int
	// Number is the place in hanging order, from 1; 0 for a drop that needs no
	// paper (it falls wholly into openings).
	Number   int
	Reversed bool
	Parts    []Part // left to right
}

// Part is a stretch of one wall covered by a stretch of a drop's width. On an
// ideal wall the point x of the wall lies under the point
// Across.Lo + (x − X.Lo) of the drop, measured from its left edge.
type Part struct {
	Wall int
	// X is the stretch of the wall, from its left end. It reaches beyond the
	// wall's end where paper turns a corner (a wrap or an overlap).
	X geom.Interval
	// Across is the stretch of the drop's width, from its left edge; as long as X.
	Across geom.Interval
	// Joined says that this part and the one before it (to its left) are one
	// sheet, folded round the corner between them. Otherwise they are cut
	// apart, and each is set to a plumb line.
	Joined bool
	// Skew says how far a joined part's upright edges depart from plumb over
	// the height of the corner it has turned: the head stands Skew to the
	// right of the foot; X is meant at the foot. 0 for parts set to a plumb line.
	Skew measure.Length
}

// SeamKind tells how two neighbouring sheets meet.
type SeamKind int

// The kinds of seam.
const (
	Butt     SeamKind = iota // edge to edge
	Carried                  // the two parts of one drop, cut apart at a corner
	Turned                   // beside a drop that has turned a corner: butted, or lapped by the lean
	Renewed                  // a new drop begins in a corner, what was left of the last is given up
	KillSeam                 // where the two ends of a closed run come together
)

var seamNames = [...]string{"butt", "carried", "turned", "new drop", "kill"}

// String returns the kind's name.
func (k SeamKind) String() string { return seamNames[k] }

// MarshalText writes the kind's name.
func (k SeamKind) MarshalText() ([]byte, error) { return []byte(k.String()), nil }

// Seam is the line where two sheets meet.
type Seam struct {
	Kind SeamKind
	// Wall and X say where it stands; a seam in a corner stands at X 0 of the
	// wall on the corner's right.
	Wall     int
	X        measure.Length
	InCorner bool
	// Left and Right are the drops (indexes into Layout.Drops) on either side.
	Left, Right int
	// Across is how much of the design's width is lost (positive) or shown
	// twice (negative) at the seam; least and most along its height. Along is
	// how far the design on the right stands too high (positive) against that
	// on the left, in (−repeat/2, repeat/2]. Both are 0 where the design meets.
	// At a kill seam and a renewed one whole design widths are no loss and are
	// taken off Across, which then lies within half a width of 0 at the foot.
	Across geom.Interval
	Along  measure.Length
}

// Meets reports whether the design agrees to the nanometre along the whole seam.
func (s Seam) Meets() bool { return s.Across == geom.Interval{} && s.Along == 0 }

// Plumb is a plumb line to draw: the given edge of a drop's part is set to it.
type Plumb struct {
	Wall int
	X    measure.Length // from the wall's left end
	Drop int            // index into Layout.Drops
	Part int            // index into the drop's Parts
	Edge Side           // which edge of the part is set to it
	// Beyond is how far the edge stands beyond the line, as seen from the middle of
	// the part; 0 as a rule, more where no edge of the part stands on the wall's face.
	Beyond measure.Length
	From   Side // the corner of the wall it is measured from
}

// EdgeX returns where the edge that is set by the line stands on its wall.
func (b Plumb) EdgeX() measure.Length {
	if b.Edge == Left {
		return b.X - b.Beyond
	}
	return b.X + b.Beyond
}

// Piece is a part of a drop cut as one length.
type Piece struct {
	Drop int    // index into Layout.Drops
	Name string // "7", or "7a", "7b" … from the head down where a drop has several
	// Y is what it must cover, lowest to highest point.
	Y geom.Interval
	// Across is the stretch of the drop's width that it needs.
	Across geom.Interval
	// Length to cut: Y and both allowances, rounded up to the cut step.
	Length measure.Length
	// Phase is the design phase at the leading end: the end that comes off
	// the roll first, the head, or the foot of a reversed drop.
	Phase measure.Length
	// Lead is the height of the leading end as cut, allowance included. What
	// rounding adds lies at the other end.
	Lead   measure.Length
	Return *Return // nil for a piece on the wall's face
}

// Return says which return of an opening a piece covers. The return is laid
// open into its opening: a left reveal covers the first Depth from the
// opening's left edge, a soffit the first Depth down from its head.
type Return struct {
	Wall    int
	Opening int // index into the wall's Openings
	Side    ReturnSide
	X, Y    geom.Interval // where it lies when laid open, in the wall's coordinates
}

// ReturnSide names a return of an opening.
type ReturnSide int

// The returns of an opening.
const (
	LeftReveal ReturnSide = iota
	RightReveal
	Soffit
	Sill
)

var returnNames = [...]string{"left reveal", "right reveal", "soffit", "sill"}

// String returns the return's name: "left reveal".
func (s ReturnSide) String() string { return returnNames[s] }

// Ways counts the drops that hang to the right and to the left of drop 0.
func (l *Layout) Ways() (right, left int) {
	for i := range l.Drops {
		switch d := &l.Drops[i]; {
		case d.Number == 0 || d.Index == 0:
		case d.Index > 0:
			right++
		default:
			left++
		}
	}
	return right, left
}

// Redesign moves the design of a whole layout to another height, the design phase that
// drop 0 shows at the datum. Nothing but the phases of pieces changes by it.
func (l *Layout) Redesign(design measure.Length) {
	l.Choice.Design = design
	for i := range l.Pieces {
		p := &l.Pieces[i]
		p.Phase = l.Paper.Phase(l.Drops[p.Drop].Index, design, p.Lead)
	}
}

// PieceWall returns the wall on which most of the piece's width lies: the wall
// of its return, or of the widest part of its drop that it covers.
func (l *Layout) PieceWall(p *Piece) int {
	if p.Return != nil {
		return p.Return.Wall
	}
	parts := l.Drops[p.Drop].Parts
	best, widest := parts[0].Wall, measure.Length(-1)
	for _, q := range parts {
		if n := q.Across.Intersection(p.Across).Length(); n > widest {
			best, widest = q.Wall, n
		}
	}
	return best
}
