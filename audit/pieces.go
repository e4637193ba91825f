package audit

import (
	"math"

	"firstdrop/hanging"
)

// leaningSlack is how exactly the need of a sheet that leans is known here: its
// edges cross others between whole nanometres at a steep angle.
const leaningSlack = 1000 // nm

// crumb is the height below which a part of a drop needs no piece: where two edges
// that slope nearly alike cross, a wedge is left that nobody could cut.
const crumb = 10_000 // nm, a hundredth of a millimetre

// judgePieces: every connected part of a drop is one piece, each covers its
// need and is cut and placed as the rules say.
func (h *hung) judgePieces() {
	byDrop := make([][]int, len(h.l.Drops))
	for i := range h.l.Pieces {
		p := &h.l.Pieces[i]
		h.judgeCut(i)
		if p.Return == nil {
			byDrop[p.Drop] = append(byDrop[p.Drop], i)
		}
	}
	var cells []cell
	for from := 0; from < len(h.lays); {
		to, drop := from, h.lays[from].drop
		for to < len(h.lays) && h.lays[to].drop == drop {
			to++
		}
		var needs []need
		needs, cells = h.needs(cells, from, to, false)
		if len(needs) > len(byDrop[drop]) {
			// Where a wall is higher at a corner than its neighbour, what meets
			// there may also be cut as one.
			needs, cells = h.needs(cells, from, to, true)
		}
		h.judgeNeeds(drop, needs, byDrop[drop])
		from = to
	}
}

// judgeNeeds sets the needs of a drop against its pieces, the most alike first.
func (h *hung) judgeNeeds(drop int, needs []need, pieces []int) {
	for len(needs) > 0 && len(pieces) > 0 {
		n, p := h.mostAlike(needs, pieces)
		h.judgeNeed(pieces[p], &needs[n])
		needs = append(needs[:n], needs[n+1:]...)
		pieces = append(pieces[:p], pieces[p+1:]...)
	}
	for _, n := range needs {
		if n.y.head.ceil()-n.y.foot.whole < crumb {
			continue
		}
		h.note(PieceSet, Place{Drop: drop + 1}, "part from "+figure(n.y.foot)+" to "+figure(n.y.head), "covered by a piece", "without one")
	}
	for _, p := range pieces {
		h.note(PieceSet, Place{Drop: drop + 1, Piece: p + 1}, "piece", "one for a part of the drop", "one too many")
	}
}

func (h *hung) mostAlike(needs []need, pieces []int) (n, p int) {
	least := uint64(math.MaxUint64)
	for i := range needs {
		for j, k := range pieces {
			y, a := h.l.Pieces[k].Y, h.l.Pieces[k].Across
			off := size(int64(y.Lo)-needs[i].y.foot.whole) + size(int64(y.Hi)-needs[i].y.head.whole) +
				size(int64(a.Lo)-needs[i].across.lo) + size(int64(a.Hi)-needs[i].across.hi)
			if off < least {
				least, n, p = off, i, j
			}
		}
	}
	return n, p
}

// judgeNeed: a piece covers just what it must. A need may end between whole
// nanometres, and either of these will do. Where something leans, a piece may
// cover what the wall has within the lean.
func (h *hung) judgeNeed(i int, n *need) {
	p := &h.l.Pieces[i]
	at := Place{Drop: p.Drop + 1, Piece: i + 1}
	y := span{int64(p.Y.Lo), int64(p.Y.Hi)}
	a := span{int64(p.Across.Lo), int64(p.Across.Hi)}
	if n.leans > 0 {
		beside := h.nearby(n)
		if y.lo > n.y.foot.ceil()+leaningSlack || y.lo < beside.foot.whole-leaningSlack {
			h.note(PieceNeed, at, "lowest point", n.y.foot, y.lo)
		}
		if y.hi < n.y.head.whole-leaningSlack || y.hi > beside.head.ceil()+leaningSlack {
			h.note(PieceNeed, at, "highest point", n.y.head, y.hi)
		}
		if a.lo > n.across.lo+n.leans || a.hi < n.across.hi-n.leans {
			h.note(PieceNeed, at, "stretch of the width", n.across, a)
		}
		return
	}
	if y.lo != n.y.foot.whole && y.lo != n.y.foot.ceil() {
		h.note(PieceNeed, at, "lowest point", n.y.foot, y.lo)
	}
	if y.hi != n.y.head.whole && y.hi != n.y.head.ceil() {
		h.note(PieceNeed, at, "highest point", n.y.head, y.hi)
	}
	slack := uint64(0)
	if h.slants(n) {
		slack = 1 // edges may cross between whole nanometres, and either of these will do
	}
	if size(a.lo-n.across.lo) > slack || size(a.hi-n.across.hi) > slack {
		h.note(PieceNeed, at, "stretch of the width", n.across, a)
	}
}

// slants reports whether a wall that a need lies on has an edge that is neither
// upright nor level.
func (h *hung) slants(n *need) bool {
	for k := n.lays.lo; k <= n.lays.hi; k++ {
		for _, s := range h.walls[h.lays[k].wall].slopes {
			if s.y1 != s.y2 {
				return true
			}
		}
	}
	return false
}

// judgeCut: length, leading end and phase of a piece follow from what it must
// cover.
func (h *hung) judgeCut(i int) {
	p, r := &h.l.Pieces[i], &h.l.Rules
	at := Place{Drop: p.Drop + 1, Piece: i + 1}
	d := &h.l.Drops[p.Drop]
	length := int64(p.Y.Hi-p.Y.Lo) + int64(r.Head) + int64(r.Foot)
	if step := int64(r.CutStep); step > 0 {
		if over := mod(length, step); over > 0 {
			length += step - over
		}
	}
	h.same(PieceLength, at, "length to cut", lengthOf(length), p.Length)
	reversed := h.l.Paper.Match.Reversing && d.Index%2 != 0
	lead := int64(p.Y.Hi) + int64(r.Head)
	if reversed {
		lead = int64(p.Y.Lo) - int64(r.Foot)
	}
	h.same(PiecePhase, at, "height of the leading end", lengthOf(lead), p.Lead)
	phase := phaseAt(h.l.Paper, int64(h.l.Choice.Design), d.Index, reversed, lead)
	h.same(PiecePhase, at, "phase at the leading end", lengthOf(phase), p.Phase)
}

// judgeReturns: every papered return of an opening is covered once, by pieces
// of the drops that hang beside or above it.
func (h *hung) judgeReturns() {
	given := make(map[[3]int][]int) // pieces by wall, opening, side
	for i := range h.l.Pieces {
		if r := h.l.Pieces[i].Return; r != nil {
			key := [3]int{r.Wall, r.Opening, int(r.Side)}
			given[key] = append(given[key], i)
		}
	}
	for i := range h.walls {
		openings := h.run.Walls[i].Openings
		for o := range openings {
			for _, want := range returnsOf(&openings[o]) {
				want.Wall, want.Opening = i, o
				pieces := given[[3]int{i, o, int(want.Side)}]
				h.judgeReturn(&want, pieces)
			}
		}
	}
	for i := range h.l.Pieces {
		if r := h.l.Pieces[i].Return; r != nil && !h.hasReturn(r) {
			h.note(Returns, Place{Wall: r.Wall + 1, Piece: i + 1}, "return", "one that is papered", "not")
		}
	}
}

// hasReturn reports whether a return is one that is papered.
func (h *hung) hasReturn(r *hanging.Return) bool {
	for _, s := range returnsOf(&h.run.Walls[r.Wall].Openings[r.Opening]) {
		if s.Side == r.Side {
			return true
		}
	}
	return false
}

// judgeReturn judges the pieces given to one return: for each part of a drop
// over it one piece, as high as the return.
func (h *hung) judgeReturn(want *hanging.Return, pieces []int) {
	at := Place{Wall: want.Wall + 1}
	used := make([]bool, len(pieces))
	whole := span{int64(want.X.Lo), int64(want.X.Hi)}.common(span{0, h.walls[want.Wall].width})
	for _, k := range h.onWall[want.Wall] {
		y := &h.lays[k]
		x := y.x.common(whole)
		if x.length() <= 0 {
			continue
		}
		at.Drop = y.drop + 1
		found := false
		for n, i := range pieces {
			p := &h.l.Pieces[i]
			if used[n] || p.Drop != y.drop || (span{int64(p.Return.X.Lo), int64(p.Return.X.Hi)}) != x {
				continue
			}
			used[n], found = true, true
			at.Piece = i + 1
			h.same(Returns, at, "height of the return", want.Y, p.Return.Y)
			h.same(PieceNeed, at, "height", want.Y, p.Y)
			h.same(PieceNeed, at, "stretch of the width", span{x.lo - y.x.lo + y.a.lo, x.hi - y.x.lo + y.a.lo}, span{int64(p.Across.Lo), int64(p.Across.Hi)})
			break
		}
		if !found {
			at.Piece = 0
			h.note(Returns, at, "return of opening "+figure(want.Opening+1)+" over "+figure(x), "covered by a piece", "bare")
		}
	}
	for n, i := range pieces {
		if !used[n] {
			h.note(Returns, Place{Wall: want.Wall + 1, Piece: i + 1}, "piece for a return", "one for a part of a drop", "one too many")
		}
	}
}
