package order

import (
	"firstdrop/cutting"
	"firstdrop/hanging"
	"firstdrop/measure"
)

// Cutting says how the pieces of a plan come to be cut, so that it can be told
// how they would be if something changed.
type Cutting struct {
	Spec   cutting.Spec   // as planned; its Pieces are those of Pieces
	Pieces []Piece        // in the order of Spec
	Head   measure.Length // allowance at the head of every piece
	Foot   measure.Length // allowance at the foot of every piece
	Step   measure.Length // lengths to cut are rounded up to this; 0 for no rounding
}

// The ranges within which [Cutting.Changes] looks (common practice: what a tape
// and a hand may be out by, and how far a habit may be changed).
const (
	HeightRange    = 150 * measure.Millimetre
	AllowanceRange = 40 * measure.Millimetre
	RepeatRange    = 20 * measure.Millimetre
	RollRange      = 30 // in a thousand of the roll's length
)

// Changes returns the usual questions: wall height ±150 mm, each allowance ±40
// mm, roll length ±3 %, and the repeat ±20 mm if there is one and layouts are
// given, all to the millimetre.
func (c *Cutting) Changes(layouts ...*hanging.Layout) []Change {
	roll := c.Spec.Roll.Length.Scaled(RollRange, 1000)
	changes := []Change{
		{Quantity: WallHeight, Down: HeightRange, Up: HeightRange, Spec: c.Higher},
		{Quantity: HeadAllowance, Down: min(AllowanceRange, c.Head), Up: AllowanceRange, Spec: c.MoreHead},
		{Quantity: FootAllowance, Down: min(AllowanceRange, c.Foot), Up: AllowanceRange, Spec: c.MoreFoot},
		{Quantity: RollLength, Down: roll, Up: roll, Spec: c.LongerRoll, Monotone: true},
	}
	if c.Spec.Repeat > 0 && len(layouts) > 0 {
		down := min(RepeatRange, c.Spec.Repeat-measure.Millimetre)
		changes = append(changes, Change{Quantity: Repeat, Down: down, Up: RepeatRange, Spec: c.LongerRepeat(layouts...)})
	}
	return changes
}

// LongerRoll returns the question with rolls longer by change.
func (c *Cutting) LongerRoll(change measure.Length) (cutting.Spec, error) {
	s := c.Spec
	s.Roll.Length += change
	return s, nil
}

// Higher returns the question with the ceiling higher by change and the design
// at its height above the datum. Pieces that reach the ceiling are longer; those
// cut head first begin earlier in the design by as much.
func (c *Cutting) Higher(change measure.Length) (cutting.Spec, error) {
	return c.recut(change, 0, 0), nil
}

// MoreHead returns the question with the allowance at every head larger by
// change.
func (c *Cutting) MoreHead(change measure.Length) (cutting.Spec, error) {
	if c.Head+change < 0 {
		return cutting.Spec{}, &ChanceError{"head allowance", "must not be less than 0"}
	}
	return c.recut(0, change, 0), nil
}

// MoreFoot returns the question with the allowance at every foot larger by
// change.
func (c *Cutting) MoreFoot(change measure.Length) (cutting.Spec, error) {
	if c.Foot+change < 0 {
		return cutting.Spec{}, &ChanceError{"foot allowance", "must not be less than 0"}
	}
	return c.recut(0, 0, change), nil
}

// recut returns the question with the ceiling, the head and the foot allowance
// larger by what is given. A piece's phase is that of the end that comes off the
// roll first and goes back by what is added there; lengths are rounded anew. A
// piece that a lower ceiling leaves nothing to cover is left out.
func (c *Cutting) recut(ceiling, head, foot measure.Length) cutting.Spec {
	s := c.Spec
	s.Pieces = make([]cutting.Piece, 0, len(c.Pieces))
	for i := range c.Pieces {
		p := &c.Pieces[i]
		need, lead := p.Need, head
		if p.Ceiling {
			need, lead = need+ceiling, lead+ceiling
		}
		if p.FootFirst {
			lead = foot
		}
		if need <= 0 && ceiling < 0 {
			continue
		}
		s.Pieces = append(s.Pieces, cutting.Piece{
			Length: (need + c.Head + head + c.Foot + foot).CeilTo(c.Step),
			Phase:  (p.Phase - lead).Mod(s.Repeat),
		})
	}
	return s
}

// LongerRepeat returns the question as a function of a change of the repeat,
// with the phases that the label's match then gives to the drops of the layouts
// (those of [PiecesOf], in the same order). An offset that is a part of the
// repeat remains that part, one that is a length remains that length. The
// design phase at the datum stays.
func (c *Cutting) LongerRepeat(layouts ...*hanging.Layout) func(change measure.Length) (cutting.Spec, error) {
	return func(change measure.Length) (cutting.Spec, error) {
		s := c.Spec
		s.Repeat += change
		s.Pieces = make([]cutting.Piece, 0, len(c.Pieces))
		for _, l := range layouts {
			label := *l.Paper
			if label.Repeat += change; label.Repeat <= label.Match.Length {
				return cutting.Spec{}, &ChanceError{"repeat", "must be more than 0 and than the offset"}
			}
			for i := range l.Pieces {
				p := &l.Pieces[i]
				s.Pieces = append(s.Pieces, cutting.Piece{
					Length: p.Length,
					Phase:  label.Phase(l.Drops[p.Drop].Index, l.Choice.Design.Mod(label.Repeat), p.Lead),
				})
			}
		}
		return s, nil
	}
}
