package order

import (
	"cmp"
	"encoding/binary"
	"errors"
	"slices"

	"firstdrop/cutting"
	"firstdrop/measure"
)

// Quantity is what a count of rolls may hang on.
type Quantity int

// The quantities.
const (
	WallHeight Quantity = iota
	HeadAllowance
	FootAllowance
	Repeat
	RollLength
)

// String returns the quantity's name.
func (q Quantity) String() string {
	switch q {
	case WallHeight:
		return "wall height"
	case HeadAllowance:
		return "head allowance"
	case FootAllowance:
		return "foot allowance"
	case Repeat:
		return "repeat"
	case RollLength:
		return "roll length"
	}
	return "unknown"
}

// Change asks by how much one quantity may change.
type Change struct {
	Quantity Quantity
	// Down and Up are how far to look in either direction, neither negative; 0
	// leaves the direction out.
	Down, Up measure.Length
	// Step is how finely; 0 for one millimetre. Changes are whole steps.
	Step measure.Length
	// Spec returns what would have to be cut if the quantity were larger by
	// change (smaller if negative), and from what: a pure function. An error ends
	// the search in this direction, as where an allowance would fall below 0.
	Spec func(change measure.Length) (cutting.Spec, error)
	// Monotone promises that more of the quantity never takes more rolls. The
	// search then halves instead of going step by step. True of the roll length.
	Monotone bool

	// narrow, if set, returns the same question with narrow pieces apart from
	// those of full width, so that they can be cut side by side.
	narrow func(change measure.Length) (cutting.NarrowSpec, error)
}

// Cliff is the smallest change of a quantity in one direction at which the
// number of rolls becomes another.
type Cliff struct {
	Quantity Quantity
	// Change is below 0 for less of the quantity. One step nearer to the plan,
	// the planned number still holds.
	Change measure.Length
	// Step is how finely was looked: at Change − Step (for a change upwards; +
	// Step downwards) the planned number of rolls still holds.
	Step measure.Length
	// Rolls is the number to buy there. Where one of the pieces then fits no roll
	// at all it is 0, and NoFit is set.
	Rolls   int
	Planned int
	NoFit   bool
	// Missing is the number of cuts for which there is then no paper, because the
	// rolls are counted.
	Missing int
	// Proven says that this number and all nearer ones are proven. Otherwise the
	// number is as good as could be found, or a nearer change may matter too.
	Proven bool
}

// Holds returns the largest change in this direction with the planned number.
func (c Cliff) Holds() measure.Length {
	if c.Change < 0 {
		return c.Change + c.Step
	}
	return c.Change - c.Step
}

// Cliffs returns for each change and direction the nearest cliff within its
// range, if there is one, nearest first; equal distances in the order of
// changes, downwards before upwards. spec is the question as planned. Its error
// is that of cutting when spec itself cannot be cut.
//
// Counts need not rise or fall steadily with a height or a repeat, because
// phases move along; so every step is looked at, unless Change.Monotone.
// Questions that differ by a shift of all phases are solved once where rolls
// may begin at any phase.
func Cliffs(spec cutting.Spec, changes []Change) ([]Cliff, error) {
	s := scan{counts: map[string]count{}}
	return s.cliffs(s.count(spec), changes)
}

func (s *scan) cliffs(planned count, changes []Change) ([]Cliff, error) {
	if planned.err != nil {
		return nil, planned.err
	}
	var cliffs []Cliff
	for i := range changes {
		s.steps += changes[i].steps(-1) + changes[i].steps(1)
	}
	for i := range changes {
		for _, sign := range []measure.Length{-1, 1} {
			if c, ok := s.first(&changes[i], sign, planned); ok {
				cliffs = append(cliffs, c)
			}
			s.done += changes[i].steps(sign)
		}
	}
	slices.SortStableFunc(cliffs, func(a, b Cliff) int { return cmp.Compare(a.Change.Abs(), b.Change.Abs()) })
	return cliffs, nil
}

// count is what is known of the number of rolls to buy.
type count struct {
	rolls   int
	missing int // cuts for which there is no paper
	proven  bool
	err     error // why a piece fits no roll
}

// differs reports whether the number is another than planned, or paper is
// missing otherwise; sure, whether that answer is proven.
func (c count) differs(planned count) (is, sure bool) {
	is = c.rolls != planned.rolls || c.missing != planned.missing || c.err != nil
	return is, c.proven && planned.proven
}

// scan remembers what has been counted.
type scan struct {
	counts map[string]count
	solved int // questions put to Solve

	progress    func(done, of int) // may be nil
	done, steps measure.Length     // those of changes that are settled, and of all
}

// toldSteps is after how many steps of a change is told how far the scan is.
const toldSteps = 8

// tell tells that it is at so many steps of a change.
func (s *scan) tell(n measure.Length) {
	if s.progress != nil && n%toldSteps == 1 {
		s.progress(int(s.done+n-1), int(s.steps))
	}
}

// step is how finely is looked.
func (c *Change) step() measure.Length {
	if c.Step <= 0 {
		return measure.Millimetre
	}
	return c.Step
}

// steps is how many steps there are in a direction.
func (c *Change) steps(sign measure.Length) measure.Length {
	if sign < 0 {
		return c.Down / c.step()
	}
	return c.Up / c.step()
}

// with returns the cliff with what is counted beyond it.
func (c Cliff) with(k count) Cliff {
	c.Rolls, c.Missing, c.NoFit = k.rolls, k.missing, k.err != nil
	return c
}

// ask counts the rolls after a change; false where the change has no meaning.
func (s *scan) ask(c *Change, change measure.Length) (count, bool) {
	if c.narrow != nil {
		spec, err := c.narrow(change)
		return s.countNarrow(&spec), err == nil
	}
	spec, err := c.Spec(change)
	if err != nil {
		return count{}, false
	}
	return s.count(spec), true
}

// first finds the nearest change with the given sign at which the number is
// another.
func (s *scan) first(c *Change, sign measure.Length, planned count) (Cliff, bool) {
	step, most := c.step(), c.steps(sign)
	at := func(n measure.Length) (count, bool) {
		k, there := s.ask(c, sign*n*step)
		if !there {
			return count{}, false
		}
		var bad *cutting.SpecError
		return k, !errors.As(k.err, &bad)
	}
	cliff := Cliff{Quantity: c.Quantity, Step: step, Planned: planned.rolls}
	n, ok := measure.Length(0), false
	if c.Monotone {
		var k count
		if n, k, ok = halve(most, at, planned); ok {
			cliff.Change, cliff.Proven = sign*n*step, true
			return cliff.with(k), true
		}
		if n < 0 {
			return Cliff{}, false
		}
	}
	sure := true
	for n = 1; n <= most; n++ {
		s.tell(n)
		k, there := at(n)
		if !there {
			break
		}
		is, proven := k.differs(planned)
		sure = sure && proven
		if is {
			cliff.Change, cliff.Proven = sign*n*step, sure
			return cliff.with(k), true
		}
	}
	return Cliff{}, false
}

// halve finds the least n up to most at which the number is another, if it stays
// another beyond. It is not found, with n −1, where the number is as planned
// throughout; and with n 0 where an unproven number bars the way: then only the
// plain scan tells.
func halve(most measure.Length, at func(measure.Length) (count, bool), planned count) (n measure.Length, there count, ok bool) {
	asked := true // every answer so far is there and sure
	other := func(n measure.Length) (count, bool) {
		k, there := at(n)
		is, sure := k.differs(planned)
		asked = asked && there && sure
		return k, is
	}
	if most <= 0 {
		return -1, count{}, false
	}
	there, is := other(most)
	if !asked {
		return 0, count{}, false
	}
	if !is {
		return -1, count{}, false
	}
	lo, hi := measure.Length(0), most // as planned at lo, another at hi
	for hi-lo > 1 {
		mid := lo + (hi-lo)/2
		k, is := other(mid)
		if !asked {
			return 0, count{}, false
		}
		if is {
			hi, there = mid, k
		} else {
			lo = mid
		}
	}
	return hi, there, true
}

// count returns the number of rolls for a question. No roll for a piece is the
// number 0, which is proven.
func (s *scan) count(spec cutting.Spec) count {
	key := specKey(&spec)
	if k, ok := s.counts[key]; ok && key != "" {
		return k
	}
	k := s.solve(spec)
	if key != "" {
		s.counts[key] = k
	}
	return k
}

func (s *scan) solve(spec cutting.Spec) count {
	p, err := cutting.NewProblem(spec)
	if err != nil {
		return count{proven: true, err: err}
	}
	if len(spec.Stock) == 0 && !spec.InOrder {
		if rolls := cutting.QuickRolls(p); rolls == cutting.LowerBound(p) {
			return count{rolls: rolls, proven: true}
		}
	}
	s.solved++
	sol := cutting.Solve(p, cutting.Options{})
	return count{rolls: sol.Bought(), missing: len(sol.Missing), proven: sol.Proven}
}

// specKey is the same for two questions that need the same number of rolls: the
// same rolls, and the same lengths at the same phases. With an unknown start the
// phases may differ by a shift, so one is taken as 0. "" for questions that are
// not remembered: with several kinds of roll, or in the pieces' own order.
func specKey(spec *cutting.Spec) string {
	if len(spec.Stock) > 0 || spec.InOrder {
		return ""
	}
	sorted := slices.Clone(spec.Pieces)
	compare := func(a, b cutting.Piece) int {
		return cmp.Or(cmp.Compare(a.Length, b.Length), cmp.Compare(a.Phase, b.Phase))
	}
	if len(sorted) > 0 && spec.Repeat > 0 && !spec.Roll.Start.Known && inRange(sorted, spec.Repeat) {
		zero := slices.MaxFunc(sorted, compare).Phase
		for i := range sorted {
			sorted[i].Phase = (sorted[i].Phase - zero).Mod(spec.Repeat)
		}
	}
	slices.SortFunc(sorted, compare)
	key := make([]byte, 0, 16*len(sorted)+48)
	known := measure.Length(0)
	if spec.Roll.Start.Known {
		known = 1
	}
	for _, l := range []measure.Length{spec.Repeat, spec.Roll.Length, known, spec.Roll.Start.Phase, spec.Lead, spec.Loss} {
		key = binary.BigEndian.AppendUint64(key, uint64(l))
	}
	for _, p := range sorted {
		key = binary.BigEndian.AppendUint64(key, uint64(p.Length))
		key = binary.BigEndian.AppendUint64(key, uint64(p.Phase))
	}
	return string(key)
}

// inRange reports whether all phases are within the repeat, as cutting asks.
func inRange(pieces []cutting.Piece, repeat measure.Length) bool {
	for _, p := range pieces {
		if p.Phase < 0 || p.Phase >= repeat {
			return false
		}
	}
	return true
}
