package plan

import (
	"cmp"
	"encoding/binary"
	"fmt"
	"slices"

	"firstdrop/cutting"
	"firstdrop/finding"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/message"
	"firstdrop/order"
	"firstdrop/paper"
)

// The findings that a paper's rolls may raise.
const (
	FullLength   finding.Code = "full_length"   // the count holds only if rolls are as long as the label says
	Unproven     finding.Code = "unproven"      // fewer rolls are not ruled out
	AreaMisleads finding.Code = "area_misleads" // dividing areas gives another count
	PaperMissing finding.Code = "paper_missing" // pieces for which the rolls that can be had do not suffice
	SideBySide   finding.Code = "side_by_side"  // rolls saved by cutting narrow pieces side by side
)

// appendPieces appends the pieces of a layout as cutting sees them.
func appendPieces(dst []cutting.Piece, l *hanging.Layout) []cutting.Piece {
	for _, p := range l.Pieces {
		dst = append(dst, cutting.Piece{Length: p.Length, Phase: p.Phase})
	}
	return dst
}

// pieceKey is the same for two sets of pieces that need the same number of
// rolls: the same lengths at the same phases. Where rolls may have any start, all
// phases may be moved alike within the repeat, and one is taken as 0; turn is
// the repeat then, and 0 where phases must stay as they are.
func pieceKey(pieces []cutting.Piece, turn measure.Length) string {
	if len(pieces) == 0 {
		return ""
	}
	sorted := slices.Clone(pieces)
	if turn > 0 {
		zero := slices.MaxFunc(sorted, func(a, b cutting.Piece) int {
			return cmp.Or(cmp.Compare(a.Length, b.Length), cmp.Compare(a.Phase, b.Phase))
		}).Phase
		for i := range sorted {
			sorted[i].Phase = (sorted[i].Phase - zero).Mod(turn)
		}
	}
	slices.SortFunc(sorted, func(a, b cutting.Piece) int {
		return cmp.Or(cmp.Compare(a.Length, b.Length), cmp.Compare(a.Phase, b.Phase))
	})
	return sequenceKey(sorted)
}

// sequenceKey writes down lengths and phases in their order.
func sequenceKey(pieces []cutting.Piece) string {
	key := make([]byte, 0, 16*len(pieces))
	for _, p := range pieces {
		key = binary.BigEndian.AppendUint64(key, uint64(p.Length))
		key = binary.BigEndian.AppendUint64(key, uint64(p.Phase))
	}
	return string(key)
}

// cut fills in what paper i has to give for the layouts chosen, cut from the
// batches that they are allotted to.
func (p *Plan) cut(i int, allotted []allotment) error {
	label, pp := &p.Task.Papers[i], &p.Papers[i]
	refs := p.refs(i)
	if len(refs) == 0 {
		return nil
	}
	p.sum(i)
	for k := range allotted {
		b, err := p.cutBatch(label, &allotted[k])
		if err != nil {
			return message.New("paper_trouble", "paper \"{paper}\": {why}", "paper", label.Name, "why", message.Of(err)).Because(err)
		}
		pp.Batches = append(pp.Batches, *b)
	}
	kept := p.kept(i)
	for k, o := range label.Offers() {
		line, err := order.For(o, pp.ofOffer(k), kept[k])
		if err != nil {
			return message.New("paper_trouble", "paper \"{paper}\": {why}", "paper", label.Name, "why", message.Of(err)).Because(err)
		}
		pp.Orders = append(pp.Orders, line)
	}
	pp.AreaRolls = order.AreaEstimate(label, pp.Net)
	pp.ShortRolls = p.shortRolls(label, allotted, pp.Batches, pp.Buy())
	pp.InOrderRolls = p.inOrderRolls(label, allotted)
	pp.FullDropRolls = order.FullDrops(label, p.longest(refs), pp.Drops)
	p.raisePaper(i)
	return nil
}

// refs lists the pieces of all layouts in paper i, in the order of the runs and
// of hanging.
func (p *Plan) refs(i int) (refs []PieceRef) {
	for r := range p.Runs {
		if p.Task.Runs[r].Paper != i {
			continue
		}
		for k := range p.Runs[r].Layout.Pieces {
			refs = append(refs, PieceRef{r, k})
		}
	}
	return refs
}

// piece returns the piece of a layout as cutting sees it.
func (p *Plan) piece(ref PieceRef) cutting.Piece {
	q := &p.Runs[ref.Run].Layout.Pieces[ref.Piece]
	return cutting.Piece{Length: q.Length, Phase: q.Phase}
}

func (p *Plan) pieces(refs []PieceRef) []cutting.Piece {
	out := make([]cutting.Piece, len(refs))
	for k, ref := range refs {
		out[k] = p.piece(ref)
	}
	return out
}

// sum counts the drops and the area of paper i.
func (p *Plan) sum(i int) {
	pp := &p.Papers[i]
	for r := range p.Runs {
		if p.Task.Runs[r].Paper != i {
			continue
		}
		l := p.Runs[r].Layout
		for _, d := range l.Drops {
			if d.Number > 0 {
				pp.Drops++
			}
		}
		pp.Net += netArea(l)
	}
}

// longest returns the longest piece.
func (p *Plan) longest(refs []PieceRef) (length measure.Length) {
	for _, ref := range refs {
		length = max(length, p.piece(ref).Length)
	}
	return length
}

// ofOffer counts the rolls that are cut of one of the paper's offers.
func (p *PaperPlan) ofOffer(offer int) (n int) {
	for i := range p.Batches {
		b := &p.Batches[i]
		for _, r := range b.Cutting.Rolls {
			if k := b.Kinds[r.Stock]; k.Roll < 0 && k.Offer == offer {
				n++
			}
		}
	}
	return n
}

// shortRolls counts the rolls to buy if each were as short as it may be: 0 when
// a piece would not fit at all.
func (p *Plan) shortRolls(label *paper.Paper, allotted []allotment, batches []BatchPlan, buy int) int {
	total, differs := 0, false
	for k := range allotted {
		a := &allotted[k]
		short, shorter := a.lot.short(label)
		if !shorter {
			short = *a.lot
		}
		differs = differs || shorter
		n, ok := p.countShort(label, a, &short, batches[k].Cutting.Problem.Spec().Pieces)
		if !ok {
			return 0
		}
		total += n
	}
	if !differs {
		return buy
	}
	return total
}

// countShort counts the short rolls that give what is allotted: on the strips
// that are planned, or each piece alone if that takes fewer.
func (p *Plan) countShort(label *paper.Paper, a *allotment, short *lot, strips []cutting.Piece) (rolls int, ok bool) {
	rolls, ok = p.countWith(short.spec(p.Task, label, strips))
	if len(strips) == len(a.refs) {
		return rolls, ok
	}
	if n, alone := p.countWith(short.spec(p.Task, label, p.pieces(a.refs))); alone && (!ok || n < rolls) {
		return n, true
	}
	return rolls, ok
}

// inOrderRolls counts the rolls to buy if the pieces were cut in the order in
// which they hang; 0 when that cannot be done.
func (p *Plan) inOrderRolls(label *paper.Paper, allotted []allotment) (total int) {
	for k := range allotted {
		spec := allotted[k].lot.spec(p.Task, label, p.pieces(allotted[k].refs))
		spec.InOrder = true
		n, ok := p.countWith(spec)
		if !ok {
			return 0
		}
		total += n
	}
	return total
}

// countWith counts the rolls to buy; false when a piece fits none, or is
// missing.
func (p *Plan) countWith(spec cutting.Spec) (rolls int, ok bool) {
	s, err := p.solve(spec, cutting.Options{Steps: cutSteps})
	if err != nil {
		return 0, false
	}
	return s.Bought(), len(s.Missing) == 0
}

// raisePaper notes what people must know about the count of rolls.
func (p *Plan) raisePaper(i int) {
	label, pp := &p.Task.Papers[i], &p.Papers[i]
	buy := pp.Buy()
	note := func(code finding.Code, severity finding.Severity, count int, sizes ...finding.Size) {
		p.Findings = append(p.Findings, finding.Finding{
			Code: code, Severity: severity, Place: finding.Place{Paper: label.Name}, Count: count, Sizes: sizes,
		})
	}
	if n := pp.Missing(); n > 0 {
		note(PaperMissing, finding.Serious, n)
	}
	if pp.ShortRolls != buy {
		note(FullLength, finding.Caution, pp.ShortRolls,
			finding.Size{Name: "label", Value: label.RollLength}, finding.Size{Name: "shortest", Value: label.ShortestRoll()})
	}
	if !pp.Proven() {
		note(Unproven, finding.Caution, buy-pp.LowerBound())
	}
	if len(label.Rolls) == 0 && pp.AreaRolls != buy {
		note(AreaMisleads, finding.Note, pp.AreaRolls)
	}
	if n := pp.SavedBySide(); n > 0 {
		note(SideBySide, finding.Note, n)
	}
	p.raiseChanges(i)
}

// netArea returns the area that a layout papers: faces and returns.
func netArea(l *hanging.Layout) (sum measure.Area) {
	for i := range l.Run.Walls {
		sum += l.Hung().Face(i).Area()
		for o := range l.Run.Walls[i].Openings {
			for _, r := range hanging.Returns(&l.Run.Walls[i].Openings[o]) {
				sum += r.X.Length().Times(r.Y.Length())
			}
		}
	}
	return sum
}

// PieceError says that a piece cannot be cut from any roll of its paper.
type PieceError struct {
	Paper, Wall string
	Piece       string // its name
	Length      measure.Length
	Roll        measure.Length
	Err         error // what cutting says
}

func (e *PieceError) Error() string { return fmt.Sprintf("%v (%v)", e.Said(), e.Err) }

// Said returns the same to be said in any language, without what cutting says.
func (e *PieceError) Said() message.Message {
	return message.New("piece_too_long", "piece {piece} on wall {wall} must be cut {length} long, and no roll of \"{paper}\" ({roll}) can be sure to give it: choose a longer roll, or divide the wall by a rail or border",
		"piece", e.Piece, "wall", e.Wall, "length", e.Length, "paper", e.Paper, "roll", e.Roll)
}

// Unwrap returns what cutting says.
func (e *PieceError) Unwrap() error { return e.Err }
