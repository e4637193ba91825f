package cutting

import (
	"cmp"
	"slices"

	"firstdrop/measure"
)

// Pieces side by side.
//
// A strip begins at a phase and has a length; on it each narrow piece lies as
// near to the leading end as its phase allows, in its own stretch of the
// width:
//
//	left edge  |..aaaaaaaa.........|        a waits for its phase
//	           |bbbbbbbbbbbbbb.....|
//	           |...................|        free: nobody needs this stretch
//	right edge |.....cccccccccccccc|        c sets the length
//	           phase of b           end of c
//
// It is no use to begin before the first piece or to end after the last. So
// the phase is that of one piece, the length ends with another, and with n
// different narrow pieces there are at most n² types of strip. What a type can
// hold at most, each piece having a weight, is a choice of stretches that do
// not overlap, from left to right:
//
//	most(i) = max(most(i-1), weight(i) + most(pieces that end before i begins))
//
// Types being few, a roll of strips of unknown contents is priced like any
// other: one pass over the network of types, each worth the most it can hold.
type narrowKind struct {
	piece     Piece
	low, high measure.Length
	pieces    []int // indexes in NarrowSpec.Narrow
	before    int   // so many kinds, in their order, end far enough to its left
}

type stripType struct {
	length, phase measure.Length
	kind          int    // in the problem of all types
	fits          []bool // by narrow kind
}

// groupNarrow sorts narrow pieces into kinds, in the order of their right
// edges.
func groupNarrow(s NarrowSpec) []narrowKind {
	var kinds []narrowKind
	for i, n := range s.Narrow {
		n.Phase = n.Phase.Mod(s.Repeat)
		at := slices.IndexFunc(kinds, func(k narrowKind) bool {
			return k.piece == n.Piece && k.low == n.Across[0] && k.high == n.Across[1]
		})
		if at < 0 {
			at = len(kinds)
			kinds = append(kinds, narrowKind{piece: n.Piece, low: n.Across[0], high: n.Across[1]})
		}
		kinds[at].pieces = append(kinds[at].pieces, i)
	}
	slices.SortFunc(kinds, func(a, b narrowKind) int {
		return cmp.Or(cmp.Compare(a.high, b.high), cmp.Compare(a.low, b.low),
			cmp.Compare(b.piece.Length, a.piece.Length), cmp.Compare(a.piece.Phase, b.piece.Phase))
	})
	for i := range kinds {
		for _, k := range kinds[:i] {
			if k.high+s.Gap <= kinds[i].low {
				kinds[i].before++
			}
		}
	}
	return kinds
}

// beside says whether two kinds, a before b in order, can lie side by side.
func beside(kinds []narrowKind, a, b int) bool { return a < kinds[b].before }

// reach is where a kind ends on a strip that begins at a phase.
func (k *narrowKind) reach(phase, repeat measure.Length) measure.Length {
	if repeat == 0 {
		return k.piece.Length
	}
	return (k.piece.Phase - phase).Mod(repeat) + k.piece.Length
}

// stripTypes lists the types of strip that fit a roll: for every pair of kinds
// that can lie side by side, and for each kind by itself, the strip that
// begins with one and ends with the other. nil if they are too many.
func stripTypes(s NarrowSpec, stock []Stock, kinds []narrowKind) []stripType {
	var types []stripType
	seen := map[Piece]bool{}
	for b := range kinds {
		for e := range kinds {
			if b != e && !beside(kinds, min(b, e), max(b, e)) {
				continue
			}
			p := Piece{Phase: kinds[b].piece.Phase.Mod(s.Repeat)}
			p.Length = kinds[e].reach(p.Phase, s.Repeat)
			if p.Length < kinds[b].piece.Length || seen[p] || refusal(s.Spec, stock, p) != "" {
				continue
			}
			seen[p] = true
			t := stripType{length: p.Length, phase: p.Phase, fits: make([]bool, len(kinds))}
			for i := range kinds {
				t.fits[i] = kinds[i].reach(p.Phase, s.Repeat) <= p.Length
			}
			if types = append(types, t); len(types) > maxStripTypes {
				return nil
			}
		}
	}
	slices.SortFunc(types, func(a, b stripType) int {
		return cmp.Or(cmp.Compare(a.length, b.length), cmp.Compare(a.phase, b.phase))
	})
	return types
}

// typeProblem is the problem whose pieces are the full widths and, as often as
// they can occur, the strips of all types. It notes the types' kinds.
func typeProblem(s NarrowSpec, kinds []narrowKind, types []stripType) (*Problem, error) {
	q := s.cut(nil)
	for i := range types {
		t := &types[i]
		for k := range kinds {
			if t.fits[k] && kinds[k].reach(t.phase, s.Repeat) == t.length {
				for range kinds[k].pieces {
					q.Pieces = append(q.Pieces, Piece{t.length, t.phase})
				}
			}
		}
	}
	p, err := NewProblem(q)
	if err != nil {
		return nil, err
	}
	byPiece := map[Piece]int{}
	for at, k := range p.kinds {
		byPiece[Piece{k.Length, k.Phase}] = at
	}
	for i := range types {
		types[i].kind = byPiece[Piece{types[i].length, types[i].phase.Mod(s.Repeat)}]
	}
	return p, nil
}

// filling finds the heaviest contents of a strip.
type filling struct {
	kinds  []narrowKind
	weight []int64 // per kind; none negative
	left   []int32 // of each kind
	most   []int64
}

// heaviest returns the most that a strip of the type can hold.
func (f *filling) heaviest(t *stripType) int64 {
	f.most = grow(f.most, len(f.kinds)+1)
	f.most[0] = 0
	for i := range f.kinds {
		f.most[i+1] = f.most[i]
		if t.fits[i] && f.left[i] > 0 {
			f.most[i+1] = max(f.most[i], f.weight[i]+f.most[f.kinds[i].before])
		}
	}
	return f.most[len(f.kinds)]
}

// contents appends the kinds that heaviest found, from right to left.
func (f *filling) contents(dst []int16) []int16 {
	for i := len(f.kinds); i > 0; {
		if f.most[i] == f.most[i-1] {
			i--
			continue
		}
		dst = append(dst, int16(i-1))
		i = f.kinds[i-1].before
	}
	return dst
}
