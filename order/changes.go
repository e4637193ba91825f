package order

import (
	"slices"

	"firstdrop/cutting"
	"firstdrop/geom"
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

	// Across is for each piece the stretch of the paper's width it needs, where
	// narrow ones may be cut side by side; empty for one of full width. It is nil
	// where none may. Width is the paper's, Blade what lies free between them.
	Across       []geom.Interval
	Width, Blade measure.Length

	// Progress, if not nil, is told now and then how many of the changes, a step each,
	// [Cutting.Cliffs] has asked about; it need not ask about all.
	Progress func(done, of int)
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
// mm, the length of rolls to be bought ±3 %, and the repeat ±20 mm if there is
// one and all pieces come from layouts, all to the millimetre.
func (c *Cutting) Changes() []Change {
	roll := c.rollLength().Scaled(RollRange, 1000)
	changes := []Change{
		{Quantity: WallHeight, Down: HeightRange, Up: HeightRange, Spec: c.Higher},
		{Quantity: HeadAllowance, Down: min(AllowanceRange, c.Head), Up: AllowanceRange, Spec: c.MoreHead},
		{Quantity: FootAllowance, Down: min(AllowanceRange, c.Foot), Up: AllowanceRange, Spec: c.MoreFoot},
		{Quantity: RollLength, Down: roll, Up: roll, Spec: c.LongerRoll, Monotone: true},
	}
	if c.Spec.Repeat > 0 && c.isLaidOut() {
		down := min(RepeatRange, c.Spec.Repeat-measure.Millimetre)
		changes = append(changes, Change{Quantity: Repeat, Down: down, Up: RepeatRange, Spec: c.LongerRepeat})
	}
	if len(c.Across) > 0 {
		for i := range changes {
			changes[i].narrow = c.sideways(&changes[i])
		}
	}
	return changes
}

// Cliffs returns what [Cliffs] does for the usual changes, narrow pieces being
// cut side by side where that saves something.
func (c *Cutting) Cliffs() ([]Cliff, error) {
	s := scan{counts: map[string]count{}, progress: c.Progress}
	if len(c.Across) == 0 {
		return s.cliffs(s.count(c.Spec), c.Changes())
	}
	spec := c.apart(c.Spec, nil)
	return s.cliffs(s.countNarrow(&spec), c.Changes())
}

// rollLength is that of rolls to be bought; 0 if none are to be had.
func (c *Cutting) rollLength() measure.Length {
	for _, s := range c.Spec.Stock {
		if !s.InHand {
			return s.Length
		}
	}
	if len(c.Spec.Stock) > 0 {
		return 0
	}
	return c.Spec.Roll.Length
}

// isLaidOut reports whether all pieces come from layouts that share a label.
func (c *Cutting) isLaidOut() bool {
	for i := range c.Pieces {
		if c.Pieces[i].layout == nil {
			return false
		}
	}
	return len(c.Pieces) > 0
}

// LongerRoll returns the question with rolls to be bought longer by change.
func (c *Cutting) LongerRoll(change measure.Length) (cutting.Spec, error) {
	s := c.Spec
	s.Roll.Length += change
	s.Stock = slices.Clone(s.Stock)
	for k := range s.Stock {
		if !s.Stock[k].InHand {
			s.Stock[k].Length += change
		}
	}
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
		if c.isGone(i, ceiling) {
			continue
		}
		s.Pieces = append(s.Pieces, cutting.Piece{
			Length: (need + c.Head + head + c.Foot + foot).CeilTo(c.Step),
			Phase:  (p.Phase - lead).Mod(s.Repeat),
		})
	}
	return s
}

// isGone reports whether a change of the ceiling leaves a piece nothing to cover.
func (c *Cutting) isGone(i int, ceiling measure.Length) bool {
	p := &c.Pieces[i]
	return p.Ceiling && ceiling < 0 && p.Need+ceiling <= 0
}

// LongerRepeat returns the question with the repeat longer by change, with the
// phases that the label's match then gives to the drops of the layouts. An
// offset that is a part of the repeat remains that part, one that is a length
// remains that length. The design phase at the datum stays, and so does the place
// where the design begins on a roll that has been opened.
func (c *Cutting) LongerRepeat(change measure.Length) (cutting.Spec, error) {
	s := c.Spec
	s.Repeat += change
	s.Pieces = make([]cutting.Piece, 0, len(c.Pieces))
	for i := range c.Pieces {
		p := &c.Pieces[i]
		label := *p.layout.Paper
		if label.Repeat += change; label.Repeat <= label.Match.Length {
			return cutting.Spec{}, &ChanceError{"repeat", "must be more than 0 and than the offset"}
		}
		s.Pieces = append(s.Pieces, cutting.Piece{
			Length: p.Length,
			Phase:  label.Phase(p.layout.Drops[p.of.Drop].Index, p.layout.Choice.Design.Mod(label.Repeat), p.of.Lead),
		})
	}
	s.Stock = c.restarted(s.Repeat)
	return s, nil
}

// restarted returns the stock for another repeat: a roll that begins so much
// before the design's beginning still does.
func (c *Cutting) restarted(repeat measure.Length) []cutting.Stock {
	stock := slices.Clone(c.Spec.Stock)
	again := func(s cutting.Start) cutting.Start {
		if s.Known {
			s.Phase = (s.Phase - c.Spec.Repeat).Mod(repeat)
		}
		return s
	}
	for k := range stock {
		stock[k].Start = again(stock[k].Start)
		stock[k].Parts = slices.Clone(stock[k].Parts)
		for i := range stock[k].Parts {
			stock[k].Parts[i].Start = again(stock[k].Parts[i].Start)
		}
	}
	return stock
}
