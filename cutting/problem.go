package cutting

import (
	"cmp"
	"fmt"
	"slices"

	"firstdrop/measure"
)

// Piece is one length to be cut. Its index in Spec.Pieces is its identity.
type Piece struct {
	// Length is what is cut off the roll, above zero and already rounded up to
	// what people cut by.
	Length measure.Length
	// Phase is the design phase wanted at the piece's leading end (the end
	// nearer the roll's start), in [0, Repeat). Ignored when Repeat is 0.
	Phase measure.Length
}

// Start is what is known of the design at a roll's beginning. The zero value,
// [AnyStart], says that nothing is: a plan must then hold whatever the phase.
type Start struct {
	Known bool
	Phase measure.Length // design phase at the roll's beginning, in [0, Repeat); meaningless unless Known
}

// AnyStart is a roll nobody has opened yet: the plan must hold whatever
// design phase it turns out to begin with.
var AnyStart = Start{}

// StartAt is a roll whose design phase at the beginning is known.
func StartAt(phase measure.Length) Start { return Start{Known: true, Phase: phase} }

// Roll is a kind of roll on offer, as many of it as wanted.
type Roll struct {
	Length measure.Length // usable length, above zero
	Start  Start          // design phase at its beginning: known or not
}

// Spec is what is asked. NewProblem validates it.
type Spec struct {
	// Repeat is the design's repeat along the roll. 0 means free match: any
	// start position is right, and every phase is ignored.
	Repeat measure.Length
	Roll   Roll // the only kind of roll, as many as wanted; ignored if Stock is given
	Pieces []Piece

	// Stock lists several kinds of roll: lengths, numbers, prices, flaws, rolls
	// in hand. See [Stock].
	Stock []Stock
	// Lead is how much of each roll's beginning is not used (creased or dirty
	// outer windings). Not negative.
	Lead measure.Length
	// Loss is lost at each cut, between one piece and the next. Not negative.
	Loss measure.Length
	// InOrder asks for the pieces to come off the rolls in their own order, as
	// goods that shade must be cut: each roll gives consecutive pieces, in their
	// order, and is finished before the next is begun.
	InOrder bool
}

// Kind is a group of equal pieces: same length and, if there is a repeat, the
// same phase.
type Kind struct {
	Length measure.Length
	Phase  measure.Length // 0 when there is no repeat
	Pieces []int          // indexes in Spec.Pieces, ascending
}

// Problem is a validated question. It is immutable and may be solved by
// several goroutines at once.
type Problem struct {
	spec   Spec
	kinds  []Kind
	kindOf []int32 // kind of each piece

	// The same in the solver's plain numbers, in nanometres.
	repeat        int64
	loss          int64
	length, phase []int64 // per kind; the length with the loss at its cut
	demand        []int32 // pieces of each kind
	phases        []int64 // the distinct phases, ascending
	phaseOf       []int32 // index in phases, per kind
	stock         []Stock
	nets          []network // of each kind of roll
}

// Reason says why a piece or a roll was refused.
type Reason string

// The reasons of a [PieceError] or a [SpecError].
const (
	NotPositive     Reason = "length is not above zero"
	TooLong         Reason = "longer than the roll"
	PhaseOutOfRange Reason = "phase is not within the repeat"
	PhaseNotReached Reason = "does not fit after the place where its phase first comes on the roll"
	NotGuaranteed   Reason = "cannot be guaranteed on a roll that may begin at any phase"
	OutOfRange      Reason = "beyond what is measured"
	Uncounted       Reason = "rolls that cost nothing must be counted"
	NotFirst        Reason = "cannot be wanted most: more rolls would always leave more over"
	NoSuchGoal      Reason = "is no goal"
	StartNotKnown   Reason = "a roll with flaws or in parts needs a known start"
)

// PieceError names the piece that cannot be cut, and why.
type PieceError struct {
	Index int   // in Spec.Pieces
	Piece Piece // as given
	Why   Reason
}

func (e *PieceError) Error() string {
	return fmt.Sprintf("cutting: piece %d (%d nm at phase %d nm): %s", e.Index, int64(e.Piece.Length), int64(e.Piece.Phase), e.Why)
}

// SpecError names a part of the question other than a piece that is not right.
type SpecError struct {
	Field string // as "Repeat", "Roll.Length" or "Stock[1].Flaws"
	Value measure.Length
	Why   Reason
}

func (e *SpecError) Error() string {
	return fmt.Sprintf("cutting: %s %d: %s", e.Field, int64(e.Value), e.Why)
}

// NewProblem validates s, groups equal pieces and lays out every position at
// which a cut can end. It keeps a copy of the pieces. The error, if any, is a
// *[SpecError] or, for the piece with the lowest index that cannot be cut, a
// *[PieceError]. No pieces at all is a legal question with an empty answer.
func NewProblem(s Spec) (*Problem, error) {
	stock, err := checkSpec(s)
	if err != nil {
		return nil, err
	}
	for i, piece := range s.Pieces {
		if why := refusal(s, stock, piece); why != "" {
			return nil, &PieceError{Index: i, Piece: piece, Why: why}
		}
	}
	s.Pieces, s.Stock = slices.Clone(s.Pieces), slices.Clone(s.Stock)
	p := &Problem{spec: s, repeat: int64(s.Repeat), loss: int64(s.Loss), stock: stock}
	p.group()
	if len(p.kinds) == 0 {
		return p, nil
	}
	for i := range stock {
		p.nets = append(p.nets, newNetwork(p, &stock[i]))
	}
	return p, nil
}

// refusal says why the piece cannot be cut from any roll at all; "" if it can.
// Of several kinds of roll the first one's reason counts.
func refusal(s Spec, stock []Stock, piece Piece) Reason {
	switch {
	case piece.Length <= 0:
		return NotPositive
	case piece.Length > measure.MaxLength:
		return OutOfRange
	case s.Repeat > 0 && piece.Phase.Mod(s.Repeat) != piece.Phase:
		return PhaseOutOfRange
	}
	first := Reason("")
	for i := range stock {
		why := stock[i].refusal(s, piece)
		if why == "" {
			return ""
		}
		if first == "" {
			first = why
		}
	}
	return first
}

// group sorts the pieces into kinds: longest first, then by phase.
func (p *Problem) group() {
	pieces := p.spec.Pieces
	number := make(map[Piece]int32)
	var kinds []Kind
	var count []int32
	p.kindOf = make([]int32, len(pieces))
	for i, piece := range pieces {
		piece.Phase = piece.Phase.Mod(p.spec.Repeat)
		j, known := number[piece]
		if !known {
			j = int32(len(kinds))
			number[piece] = j
			kinds, count = append(kinds, Kind{Length: piece.Length, Phase: piece.Phase}), append(count, 0)
		}
		p.kindOf[i] = j
		count[j]++
	}
	slab := make([]int, 0, len(pieces))
	for j, n := range count {
		lo := len(slab)
		slab = slab[:lo+int(n)]
		kinds[j].Pieces = slab[lo:lo:len(slab)]
	}
	for i, j := range p.kindOf {
		kinds[j].Pieces = append(kinds[j].Pieces, i)
	}
	slices.SortFunc(kinds, func(a, b Kind) int {
		return cmp.Or(cmp.Compare(b.Length, a.Length), cmp.Compare(a.Phase, b.Phase))
	})
	for j, k := range kinds {
		for _, i := range k.Pieces {
			p.kindOf[i] = int32(j)
		}
		p.addKind(k)
	}
	p.phases = slices.Compact(slices.Sorted(slices.Values(p.phase)))
	p.phaseOf = make([]int32, len(p.phase))
	for j, ph := range p.phase {
		at, _ := slices.BinarySearch(p.phases, ph)
		p.phaseOf[j] = int32(at)
	}
}

func (p *Problem) addKind(k Kind) {
	p.kinds = append(p.kinds, k)
	p.length = append(p.length, int64(k.Length)+p.loss)
	p.phase = append(p.phase, int64(k.Phase))
	p.demand = append(p.demand, int32(len(k.Pieces)))
}

// Spec returns what was asked. The pieces are the problem's own: read only.
func (p *Problem) Spec() Spec { return p.spec }

// Kinds returns the groups of equal pieces, longest first, then by phase. The
// slice is the problem's own: read only.
func (p *Problem) Kinds() []Kind { return p.kinds }

// KindOf returns the index in Kinds of the piece with the given index.
func (p *Problem) KindOf(piece int) int { return int(p.kindOf[piece]) }

// after returns the design position where a piece of kind j ends that is cut
// as early as possible at or after design position x.
func (p *Problem) after(x int64, j int) int64 {
	if p.repeat == 0 {
		return x + p.length[j]
	}
	return x + mod(p.phase[j]-x, p.repeat) + p.length[j]
}

// mod is x modulo n in [0, n), for n above zero.
func mod(x, n int64) int64 {
	r := x % n
	if r < 0 {
		r += n
	}
	return r
}
