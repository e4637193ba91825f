package hanging

import (
	"cmp"
	"slices"
	"strconv"

	"firstdrop/geom"
	"firstdrop/measure"
	"firstdrop/room"
)

// A drop is cut as few pieces as the openings allow. The wall that each of its
// parts covers is cut into upright cells; cells that touch are one piece,
// across the folds and cuts of corners too, for a drop is slit lengthwise only
// after it has been cut from the roll.
//
//	  ┌───┬───────┐  the cells over the door and beside it touch:
//	  │ a │   b   │  one piece, as long as the wall is high
//	  │   ├───────┘
//	  │   │ door        ┌───────┐  a drop that lies wholly over the
//	  │   │             │ piece │  door is one short piece
//	  └───┘             └───────┘

// patch is a cell of a drop's region and where it lies on the drop.
type patch struct {
	cell   geom.Cell
	y      geom.Interval
	across geom.Interval
	part   int
	parcel int
	// Whether the cell reaches the left and the right end of its part, where
	// the drop may go on round a corner.
	first, last bool
}

// addPieces finds the pieces of every drop, those of a drop from the head down,
// those for returns last.
func (h *Hanger) addPieces(l *Layout) {
	l.Pieces = make([]Piece, 0, len(l.Drops)+8)
	for i := range l.Drops {
		h.patch(l, i)
		h.parcels()
		first := len(l.Pieces)
		h.collect(l, i)
		l.sortPieces(first)
		h.addReturns(l, i)
	}
}

// sortPieces puts the pieces of a drop, from the first on, in order from the
// head down.
func (l *Layout) sortPieces(first int) {
	slices.SortStableFunc(l.Pieces[first:], func(a, b Piece) int {
		return cmp.Or(cmp.Compare(b.Y.Hi, a.Y.Hi), cmp.Compare(a.Across.Lo, b.Across.Lo))
	})
}

// patch fills h.patches with the cells of the drop's region.
func (h *Hanger) patch(l *Layout, drop int) {
	h.patches = h.patches[:0]
	for i, p := range l.Drops[drop].Parts {
		face, x, ends := h.cover(l, drop, i)
		h.cells = face.AppendCells(h.cells[:0], x)
		for _, c := range h.cells {
			h.patches = append(h.patches, patch{
				cell: c, y: c.Y(), part: i, parcel: len(h.patches),
				across: c.X.Shifted(p.Across.Lo - p.X.Lo).Intersection(p.Across),
				first:  c.X.Lo <= ends.Lo, last: c.X.Hi >= ends.Hi,
			})
		}
	}
}

// parcels gives all patches that touch the same parcel: the lowest number of
// any patch in it.
func (h *Hanger) parcels() {
	ps := h.patches
	for i := range ps {
		for j := i + 1; j < len(ps); j++ {
			a, b := ps[i].parcel, ps[j].parcel
			if a == b || !ps[i].touches(&ps[j]) {
				continue
			}
			from, to := max(a, b), min(a, b)
			for k := range ps {
				if ps[k].parcel == from {
					ps[k].parcel = to
				}
			}
		}
	}
}

// touches reports whether two patches of one drop, p to the left of q, are cut
// as one: they share more than a point of an upright, or lie on both sides of
// a corner or a cut and share some height.
func (p *patch) touches(q *patch) bool {
	switch q.part - p.part {
	case 0:
		return p.cell.X.Hi == q.cell.X.Lo && p.cell.Right.Overlaps(q.cell.Left)
	case 1:
		return p.last && q.first && p.y.Overlaps(q.y)
	}
	return false
}

// hair is the width of the cells that stand where edges cross between whole
// nanometres. They join their neighbours, but have no height worth cutting for.
const hair = measure.Nanometre

// collect turns the parcels of drop i into pieces.
func (h *Hanger) collect(l *Layout, i int) {
	for root := range h.patches {
		if h.patches[root].parcel != root {
			continue
		}
		y := geom.Interval{Lo: 0, Hi: -1}
		across := y
		for k := range h.patches {
			p := &h.patches[k]
			if p.parcel != root {
				continue
			}
			across = across.Union(p.across)
			if p.cell.X.Length() > hair {
				y = y.Union(p.y)
			}
		}
		if !y.IsEmpty() {
			l.Pieces = append(l.Pieces, h.piece(l, i, y, across))
		}
	}
}

// piece returns the piece of drop i that covers y.
func (h *Hanger) piece(l *Layout, i int, y, across geom.Interval) Piece {
	d := &l.Drops[i]
	p := Piece{
		Drop: i, Y: y, Across: across,
		Length: (y.Length() + h.rules.Head + h.rules.Foot).CeilTo(h.rules.CutStep),
		Lead:   y.Hi + h.rules.Head,
	}
	if d.Reversed {
		p.Lead = y.Lo - h.rules.Foot
	}
	p.Phase = h.paper.Phase(d.Index, l.Choice.Design, p.Lead)
	return p
}

// addReturns adds the pieces that drop i gives to the returns of openings.
func (h *Hanger) addReturns(l *Layout, i int) {
	d := &l.Drops[i]
	for _, p := range d.Parts {
		wall := &h.run.Walls[p.Wall]
		own := p.X.Intersection(geom.Interval{Lo: 0, Hi: wall.Width})
		for o := range wall.Openings {
			for _, r := range Returns(&wall.Openings[o]) {
				x := r.X.Intersection(own)
				if x.Length() <= 0 {
					continue
				}
				piece := h.piece(l, i, r.Y, x.Shifted(p.Across.Lo-p.X.Lo))
				piece.Return = &Return{Wall: p.Wall, Opening: o, Side: r.Side, X: x, Y: r.Y}
				l.Pieces = append(l.Pieces, piece)
			}
		}
	}
}

// Returns lists the returns of an opening that are papered, laid open into the
// opening. Only a rectangular opening has any: an arch needs a strip of its
// own that meets the wall nowhere.
func Returns(o *room.Opening) []Return {
	if o.Depth <= 0 || !o.Outline.IsRectangle() {
		return nil
	}
	x, y := o.Outline.Bounds()
	var rs []Return
	add := func(papered bool, side ReturnSide, x, y geom.Interval) {
		if papered {
			rs = append(rs, Return{Side: side, X: x, Y: y})
		}
	}
	add(o.Sides.Left, LeftReveal, geom.Interval{Lo: x.Lo, Hi: x.Lo + o.Depth}, y)
	add(o.Sides.Right, RightReveal, geom.Interval{Lo: x.Hi - o.Depth, Hi: x.Hi}, y)
	add(o.Sides.Head, Soffit, x, geom.Interval{Lo: y.Hi - o.Depth, Hi: y.Hi})
	add(o.Sides.Sill, Sill, x, geom.Interval{Lo: y.Lo, Hi: y.Lo + o.Depth})
	return rs
}

// number gives the drops that need paper their places in hanging order, drop 0
// first, then to the right, then to the left, and names the pieces after them.
func (l *Layout) number() {
	has := make([]int, len(l.Drops))
	for _, p := range l.Pieces {
		has[p.Drop]++
	}
	zero := -l.Drops[0].Index
	n := 0
	count := func(i int) {
		if has[i] > 0 {
			n++
			l.Drops[i].Number = n
		}
	}
	for i := zero; i < len(l.Drops); i++ {
		count(i)
	}
	for i := zero - 1; i >= 0; i-- {
		count(i)
	}
	slices.SortStableFunc(l.Pieces, func(a, b Piece) int {
		return cmp.Compare(l.Drops[a.Drop].Number, l.Drops[b.Drop].Number)
	})
	l.name(has)
}

// name names the pieces: the drop's number, and a letter where it has several.
func (l *Layout) name(has []int) {
	letter := 0
	for i := range l.Pieces {
		p := &l.Pieces[i]
		if i == 0 || l.Pieces[i-1].Drop != p.Drop {
			letter = 0
		}
		p.Name = pieceName(l.Drops[p.Drop].Number, letter, has[p.Drop] > 1)
		letter++
	}
}

// pieceName returns "7", or "7a" … "7z", "7aa" … for one of several.
func pieceName(number, letter int, several bool) string {
	name := strconv.Itoa(number)
	if !several {
		return name
	}
	var letters []byte
	for ; letter >= 0; letter = letter/26 - 1 {
		letters = append(letters, byte('a'+letter%26))
	}
	slices.Reverse(letters)
	return name + string(letters)
}
