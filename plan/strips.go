package plan

import (
	"errors"

	"firstdrop/cutting"
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/paper"
)

// cutBatch cuts the pieces allotted to a batch from its rolls. Narrow pieces
// are cut side by side where that saves a roll, or what a roll costs; else each
// is cut alone, which is less to think of at the table.
func (p *Plan) cutBatch(label *paper.Paper, a *allotment) (*BatchPlan, error) {
	pieces := p.pieces(a.refs)
	rules := &p.Task.Cut
	options := cutting.Options{First: rules.First, Then: rules.Then, Steps: cutSteps}
	solution, err := p.solve(a.lot.spec(p.Task, label, pieces), options)
	if err != nil {
		return nil, p.refused(label, a.refs, err)
	}
	b := &BatchPlan{Batch: a.lot.batch, Kinds: a.lot.kinds, Cutting: solution}
	for _, ref := range a.refs {
		b.Cuts = append(b.Cuts, Strip{{PieceRef: ref}})
	}
	if rules.Alone || label.InOrder {
		return b, nil
	}
	return b, p.sideBySide(label, a, b, options)
}

// sideBySide puts narrow pieces together on strips where it saves something.
func (p *Plan) sideBySide(label *paper.Paper, a *allotment, b *BatchPlan, options cutting.Options) error {
	narrow := p.narrow(label, a.refs)
	if narrow == nil {
		return nil
	}
	spec := cutting.NarrowSpec{Width: label.Width, Gap: p.Task.Cut.Blade}
	var wide, slim []PieceRef
	for k, ref := range a.refs {
		if narrow[k] == (geom.Interval{}) {
			wide = append(wide, ref)
			continue
		}
		slim = append(slim, ref)
		spec.Narrow = append(spec.Narrow, cutting.NarrowPiece{
			Piece: p.piece(ref), Across: [2]measure.Length{narrow[k].Lo, narrow[k].Hi},
		})
	}
	spec.Spec = a.lot.spec(p.Task, label, p.pieces(wide))
	if least, err := p.solve(spec.Least(), cutting.Options{Steps: countSteps}); err != nil || least.CostBound >= b.Cutting.Cost {
		return nil // lying side by side cannot save anything
	}
	s, err := cutting.SideBySide(spec, options)
	if err != nil {
		return err
	}
	beside := &BatchPlan{Batch: b.Batch, Kinds: b.Kinds, Cutting: s.Solution, Apart: b.Cutting}
	for _, ref := range wide {
		beside.Cuts = append(beside.Cuts, Strip{{PieceRef: ref}})
	}
	for _, strip := range s.Strips {
		var lies Strip
		for _, l := range strip.Lies {
			lies = append(lies, Lie{slim[l.Narrow], l.Offset})
		}
		beside.Cuts = append(beside.Cuts, lies)
	}
	if beside.saves(b) {
		*b = *beside
	}
	return nil
}

// saves reports whether strips come to less than the pieces cut alone. Where
// pieces are missing, costs of the two cannot be compared: how dear a missing
// piece is depends on how many there are to cut.
func (b *BatchPlan) saves(alone *BatchPlan) bool {
	with, without := b.missing(), alone.missing()
	switch {
	case with != without:
		return with < without
	case with > 0:
		return b.Cutting.Bought() < alone.Cutting.Bought()
	}
	return b.Cutting.Cost < alone.Cutting.Cost
}

// missing counts the pieces of layouts that are missing.
func (b *BatchPlan) missing() (n int) {
	for _, piece := range b.Cutting.Missing {
		n += len(b.Cuts[piece])
	}
	return n
}

// narrow returns for each piece the stretch of the paper's width it needs, if
// another piece can lie beside it; else an empty one. It returns nil if there
// are no such pieces.
func (p *Plan) narrow(label *paper.Paper, refs []PieceRef) []geom.Interval {
	across := make([]geom.Interval, len(refs))
	for k, ref := range refs {
		across[k] = p.Across(ref)
	}
	out, any := make([]geom.Interval, len(refs)), false
	for i, a := range across {
		for k, b := range across {
			if i != k && (a.Hi+p.Task.Cut.Blade <= b.Lo || b.Hi+p.Task.Cut.Blade <= a.Lo) && a.Lo < a.Hi && b.Lo < b.Hi {
				out[i], any = a, true
				break
			}
		}
	}
	if !any {
		return nil
	}
	return out
}

// Across returns the stretch of the paper's width that a piece needs, within
// the paper, as it comes off the roll, with what is trimmed off slit edges in their
// place: a drop that hangs upside down has been turned.
func (p *Plan) Across(ref PieceRef) geom.Interval {
	l := p.Runs[ref.Run].Layout
	q := &l.Pieces[ref.Piece]
	w := l.Paper.Width
	over := p.Task.Cut.SlitOver
	a := geom.Interval{Lo: q.Across.Lo - over, Hi: q.Across.Hi + over}.Intersection(geom.Interval{Lo: 0, Hi: w})
	if l.Drops[q.Drop].Reversed {
		return geom.Interval{Lo: w - a.Hi, Hi: w - a.Lo}
	}
	return a
}

// refused says in the hanger's words which piece cannot be cut.
func (p *Plan) refused(label *paper.Paper, refs []PieceRef, err error) error {
	var e *cutting.PieceError
	if !errors.As(err, &e) {
		return err
	}
	ref := refs[e.Index]
	l := p.Runs[ref.Run].Layout
	return pieceError(l, &l.Pieces[ref.Piece], label, err)
}

// pieceError names a piece and the wall on which it hangs.
func pieceError(l *hanging.Layout, piece *hanging.Piece, label *paper.Paper, err error) error {
	return &PieceError{
		Paper: label.Name, Wall: l.Run.Walls[l.PieceWall(piece)].Name,
		Piece: piece.Name, Length: piece.Length, Roll: label.RollLength, Err: err,
	}
}
