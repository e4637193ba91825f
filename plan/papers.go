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
	"firstdrop/order"
	"firstdrop/paper"
)

// The findings that a paper's rolls may raise.
const (
	FullLength   finding.Code = "full_length"   // the count holds only if rolls are as long as the label says
	Unproven     finding.Code = "unproven"      // fewer rolls are not ruled out
	AreaMisleads finding.Code = "area_misleads" // dividing areas gives another count
)

// spec asks for the pieces to be cut from rolls of the given length whose start
// phase nobody knows yet.
func spec(p *paper.Paper, roll measure.Length, pieces []cutting.Piece) cutting.Spec {
	return cutting.Spec{Repeat: p.Repeat, Roll: cutting.Roll{Length: roll}, Pieces: pieces}
}

// appendPieces appends the pieces of a layout as cutting sees them.
func appendPieces(dst []cutting.Piece, l *hanging.Layout) []cutting.Piece {
	for _, p := range l.Pieces {
		dst = append(dst, cutting.Piece{Length: p.Length, Phase: p.Phase})
	}
	return dst
}

// pieceKey is the same for two sets of pieces that need the same number of
// rolls of any start: the same lengths at the same phases, one phase taken as 0.
func pieceKey(pieces []cutting.Piece, repeat measure.Length) string {
	if len(pieces) == 0 {
		return ""
	}
	sorted := slices.Clone(pieces)
	zero := slices.MaxFunc(sorted, func(a, b cutting.Piece) int {
		return cmp.Or(cmp.Compare(a.Length, b.Length), cmp.Compare(a.Phase, b.Phase))
	}).Phase
	for i := range sorted {
		sorted[i].Phase = (sorted[i].Phase - zero).Mod(repeat)
	}
	slices.SortFunc(sorted, func(a, b cutting.Piece) int {
		return cmp.Or(cmp.Compare(a.Length, b.Length), cmp.Compare(a.Phase, b.Phase))
	})
	key := make([]byte, 0, 16*len(sorted))
	for _, p := range sorted {
		key = binary.BigEndian.AppendUint64(key, uint64(p.Length))
		key = binary.BigEndian.AppendUint64(key, uint64(p.Phase))
	}
	return string(key)
}

// cut fills in what paper i has to give for the layouts chosen.
func (p *Plan) cut(i int) error {
	label := &p.Task.Papers[i]
	pp := &p.Papers[i]
	var pieces []cutting.Piece
	for r := range p.Runs {
		if p.Task.Runs[r].Paper != i {
			continue
		}
		l := p.Runs[r].Layout
		pieces = appendPieces(pieces, l)
		for k := range l.Pieces {
			pp.Pieces = append(pp.Pieces, PieceRef{r, k})
		}
		for _, d := range l.Drops {
			if d.Number > 0 {
				pp.Drops++
			}
		}
		pp.Net += netArea(l)
	}
	if len(pieces) == 0 {
		return nil
	}
	problem, err := cutting.NewProblem(spec(label, label.RollLength, pieces))
	if err != nil {
		return fmt.Errorf("plan: paper %q: %w", label.Name, err)
	}
	pp.Cutting = cutting.Solve(problem, cutting.Options{})
	rolls := len(pp.Cutting.Rolls)
	if pp.Order, err = order.For(label, rolls); err != nil {
		return fmt.Errorf("plan: paper %q: %w", label.Name, err)
	}
	pp.AreaRolls = order.AreaEstimate(label, pp.Net)
	pp.ShortRolls = rolls
	if short := label.ShortestRoll(); short < label.RollLength {
		pp.ShortRolls = countAt(label, short, pieces)
	}
	p.raisePaper(i)
	return nil
}

// countAt returns how many rolls of a length the pieces need; 0 when one does
// not fit at all.
func countAt(p *paper.Paper, roll measure.Length, pieces []cutting.Piece) int {
	problem, err := cutting.NewProblem(spec(p, roll, pieces))
	if err != nil {
		return 0
	}
	return len(cutting.Solve(problem, cutting.Options{}).Rolls)
}

// raisePaper notes what people must know about the count of rolls.
func (p *Plan) raisePaper(i int) {
	label, pp := &p.Task.Papers[i], &p.Papers[i]
	rolls := len(pp.Cutting.Rolls)
	place := finding.Place{Paper: label.Name}
	if pp.ShortRolls != rolls {
		p.Findings = append(p.Findings, finding.Finding{
			Code: FullLength, Severity: finding.Caution, Place: place, Count: pp.ShortRolls,
			Sizes: []finding.Size{{Name: "label", Value: label.RollLength}, {Name: "shortest", Value: label.ShortestRoll()}},
		})
	}
	if !pp.Cutting.Proven {
		p.Findings = append(p.Findings, finding.Finding{
			Code: Unproven, Severity: finding.Caution, Place: place, Count: rolls - pp.Cutting.LowerBound,
		})
	}
	if pp.AreaRolls != rolls {
		p.Findings = append(p.Findings, finding.Finding{
			Code: AreaMisleads, Severity: finding.Note, Place: place, Count: pp.AreaRolls,
		})
	}
}

// netArea returns the area that a layout papers: faces and returns.
func netArea(l *hanging.Layout) (sum measure.Area) {
	for i := range l.Run.Walls {
		sum += l.Run.Face(i).Area()
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
	Paper, Run, Wall string
	Piece            string // its name
	Length           measure.Length
	Roll             measure.Length
	Err              error // what cutting says
}

func (e *PieceError) Error() string {
	return fmt.Sprintf("piece %s of run %q on wall %s must be cut %v long, and no roll of %q (%v) can be sure to give it: choose a longer roll, or divide the wall by a rail or border (%v)",
		e.Piece, e.Run, e.Wall, e.Length, e.Paper, e.Roll, e.Err)
}

// Unwrap returns what cutting says.
func (e *PieceError) Unwrap() error { return e.Err }
