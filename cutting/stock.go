package cutting

import (
	"cmp"
	"fmt"
	"slices"

	"firstdrop/measure"
)

// Stock is a kind of roll of which there are some: new rolls of a length and
// price, a left-over in hand, a roll that has been opened and found flawed.
type Stock struct {
	// Roll is its usable length and the phase at its beginning. For a roll in
	// separate lengths leave it zero and give Parts.
	Roll
	// Count is how many there are; 0 means as many as wanted. Rolls that cost
	// nothing while others have a price, or are in hand, must be counted.
	Count int
	// Price is what one roll, or one pack of rolls, costs, in any unit, not
	// negative. Solve minimises the sum. If no kind of stock has a price, each
	// roll or pack that is not in hand costs 1: fewest to buy.
	Price int64
	// Pack is how many rolls are sold together; 0 means 1. Packs are paid for
	// whole; rolls left in the last one are no loss that is complained about.
	// Count counts rolls, and the last pack may be short. Ignored for rolls in
	// hand.
	Pack int
	// InHand marks rolls and left-overs that are there already: they cost
	// nothing and are used before others are bought. Their Price is ignored.
	InHand bool
	// Flaws are stretches no piece may touch. With a repeat the start must be
	// known: whoever has seen the flaw has seen the design.
	Flaws []Flaw
	// Parts are the separate lengths of a roll that comes in two or three, in
	// the order in which they come off it. They are bought together. With a
	// repeat each part's start must be known.
	Parts []Roll
}

// Flaw is a stretch of a roll, From inclusive, To exclusive, measured from its
// beginning; in a roll of separate lengths, as if they were one.
type Flaw struct {
	From, To measure.Length
}

// stretchOfRoll is an unbroken part of a roll: positions [from, to), where the
// design phase at position x is x + shift.
type stretchOfRoll struct {
	from, to, shift int64
}

// Total is the whole length of one roll.
func (s *Stock) Total() measure.Length {
	if len(s.Parts) == 0 {
		return s.Length
	}
	sum := measure.Length(0)
	for _, p := range s.Parts {
		sum += p.Length
	}
	return sum
}

// broken says whether the roll has flaws or comes in parts.
func (s *Stock) broken() bool { return len(s.Flaws) > 0 || len(s.Parts) > 0 }

// known says whether there is a single start to plan for: it is given, or it
// does not matter because the match is free.
func (s *Stock) known(repeat measure.Length) bool {
	return repeat == 0 || s.Start.Known || len(s.Parts) > 0
}

// startPhase is the known phase at the beginning; 0 for free match.
func (s *Stock) startPhase(repeat measure.Length) measure.Length {
	switch {
	case repeat == 0:
		return 0
	case len(s.Parts) > 0:
		return s.Parts[0].Start.Phase
	}
	return s.Start.Phase
}

// stretches lists the unbroken parts of a broken roll, in order; none, but not
// nil, where flaws leave nothing.
func (s *Stock) stretches(lead int64) []stretchOfRoll {
	parts := s.Parts
	if len(parts) == 0 {
		parts = []Roll{s.Roll}
	}
	flaws := slices.SortedFunc(slices.Values(s.Flaws), func(a, b Flaw) int {
		return cmp.Or(cmp.Compare(a.From, b.From), cmp.Compare(a.To, b.To))
	})
	all := make([]stretchOfRoll, 0, len(parts)+len(flaws))
	base := int64(0)
	for _, p := range parts {
		at, end := base+lead, base+int64(p.Length)
		shift := int64(p.Start.Phase) - base
		for _, f := range flaws {
			if int64(f.From) > at && at < end {
				all = append(all, stretchOfRoll{at, min(int64(f.From), end), shift})
			}
			at = max(at, int64(f.To))
		}
		if at < end {
			all = append(all, stretchOfRoll{at, end, shift})
		}
		base = end
	}
	return all
}

// refusal says why a piece cannot be cut from this kind of roll; "" if it can.
// The worst unknown start lies one nanometre past the wanted phase, so that
// almost a whole repeat runs by before the phase comes again.
func (s *Stock) refusal(spec Spec, piece Piece) Reason {
	wait, why := measure.Length(0), TooLong
	switch {
	case piece.Length > s.Total():
		return TooLong
	case s.broken():
		for _, part := range s.stretches(int64(spec.Lead)) {
			from := measure.Length(part.from + part.shift)
			if int64((piece.Phase-from).Mod(spec.Repeat)+piece.Length) <= part.to-part.from {
				return ""
			}
		}
		return PhaseNotReached
	case spec.Repeat == 0:
	case s.Start.Known:
		wait, why = (piece.Phase - s.Start.Phase - spec.Lead).Mod(spec.Repeat), PhaseNotReached
	default:
		wait, why = spec.Repeat-1, NotGuaranteed
	}
	if spec.Lead+wait+piece.Length > s.Total() {
		return why
	}
	return ""
}

// checkSpec validates everything but the pieces and returns the kinds of roll.
func checkSpec(s Spec) ([]Stock, error) {
	for _, f := range []struct {
		name  string
		value measure.Length
	}{{"Repeat", s.Repeat}, {"Lead", s.Lead}, {"Loss", s.Loss}} {
		if f.value < 0 {
			return nil, &SpecError{f.name, f.value, NotPositive}
		}
		if f.value > measure.MaxLength {
			return nil, &SpecError{f.name, f.value, OutOfRange}
		}
	}
	if len(s.Stock) == 0 {
		return []Stock{{Roll: s.Roll}}, checkRoll("Roll", s.Roll, s.Repeat)
	}
	for i := range s.Stock {
		if err := s.Stock[i].check(fmt.Sprintf("Stock[%d]", i), s.Repeat); err != nil {
			return nil, err
		}
	}
	for i := range s.Stock {
		st := &s.Stock[i]
		if st.Count == 0 && (st.InHand || st.Price == 0 && priced(s.Stock)) {
			return nil, &SpecError{fmt.Sprintf("Stock[%d].Count", i), 0, Uncounted}
		}
	}
	return slices.Clone(s.Stock), nil
}

// priced says whether rolls that have to be bought have prices.
func priced(stock []Stock) bool {
	return slices.ContainsFunc(stock, func(s Stock) bool { return !s.InHand && s.Price > 0 })
}

func checkRoll(name string, r Roll, repeat measure.Length) error {
	switch {
	case r.Length <= 0:
		return &SpecError{name + ".Length", r.Length, NotPositive}
	case r.Length > measure.MaxLength:
		return &SpecError{name + ".Length", r.Length, OutOfRange}
	case r.Start.Known && repeat > 0 && r.Start.Phase.Mod(repeat) != r.Start.Phase:
		return &SpecError{name + ".Start", r.Start.Phase, PhaseOutOfRange}
	}
	return nil
}

func (s *Stock) check(name string, repeat measure.Length) error {
	parts := s.Parts
	if len(parts) == 0 {
		parts = []Roll{s.Roll}
	}
	for _, r := range parts {
		if err := checkRoll(name, r, repeat); err != nil {
			return err
		}
		if repeat > 0 && s.broken() && !r.Start.Known {
			return &SpecError{name + ".Start", r.Start.Phase, StartNotKnown}
		}
	}
	for _, f := range s.Flaws {
		if f.From < 0 || f.To <= f.From {
			return &SpecError{name + ".Flaws", f.From, NotPositive}
		}
	}
	switch {
	case s.Count < 0:
		return &SpecError{name + ".Count", measure.Length(s.Count), NotPositive}
	case s.Price < 0 || s.Price > maxPrice:
		return &SpecError{name + ".Price", measure.Length(s.Price), OutOfRange}
	case s.Pack < 0:
		return &SpecError{name + ".Pack", measure.Length(s.Pack), NotPositive}
	case s.Pack > maxPack:
		return &SpecError{name + ".Pack", measure.Length(s.Pack), OutOfRange}
	}
	return nil
}

// maxPrice keeps sums of prices well within 64 bits, and maxPack shares of
// them.
const (
	maxPrice = 1 << 40
	maxPack  = 1000
)

// pack is how many rolls of the kind are bought together.
func (s *Stock) pack() int {
	if s.InHand {
		return 1
	}
	return max(s.Pack, 1)
}

// whole is the number of packs that make so many rolls.
func (s *Stock) whole(rolls int) int64 {
	return int64((rolls + s.pack() - 1) / s.pack())
}
