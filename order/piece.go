package order

import (
	"firstdrop/cutting"
	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
)

// Piece is a piece of the chosen plan, with what it takes to say how it would
// be cut if something were a little different.
type Piece struct {
	// Piece is the length to cut, allowances and rounding included, and the
	// design phase at the end that comes off the roll first.
	cutting.Piece
	// Need is how much of the length must be covered: the highest less the
	// lowest point. Length − Need is allowance.
	Need measure.Length
	// Wall names the measurement that Need came from. Pieces with the same Wall
	// share its error.
	Wall int
	// Ceiling says that the piece's head moves along when the wall is higher.
	Ceiling bool
	// FootFirst says that the foot comes off the roll first (a reversed drop).
	FootFirst bool
	// Lies are the narrow pieces on a strip that serves several side by side;
	// Need, Wall, Ceiling and FootFirst then stand in each of them.
	Lies []Lie

	layout *hanging.Layout // where it comes from; nil for a strip
	of     *hanging.Piece
}

// Lie is a narrow piece's place on its strip.
type Lie struct {
	Piece
	Offset measure.Length // from the strip's leading end to the piece's
}

// PiecesOf returns the pieces of layouts that share their rolls, in the order
// of the layouts. A piece's head moves with the ceiling when it is the highest
// of its drop on the wall's face and its head is the highest point of the face
// above its drop; the walls of all layouts are numbered through.
func PiecesOf(layouts ...*hanging.Layout) []Piece {
	var out []Piece
	first := 0
	for _, l := range layouts {
		for i := range l.Pieces {
			p := &l.Pieces[i]
			out = append(out, Piece{
				Piece:     cutting.Piece{Length: p.Length, Phase: p.Phase},
				Need:      p.Y.Length(),
				Wall:      first + l.PieceWall(p),
				Ceiling:   reachesCeiling(l, p),
				FootFirst: l.Drops[p.Drop].Reversed,
				layout:    l,
				of:        p,
			})
		}
		first += len(l.Run.Walls)
	}
	return out
}

// reachesCeiling reports whether the head of a piece is the highest point of
// the wall above its drop.
func reachesCeiling(l *hanging.Layout, p *hanging.Piece) bool {
	if p.Return != nil {
		return false
	}
	for _, part := range l.Drops[p.Drop].Parts {
		outline := geom.Polygon{Outline: l.Run.Face(part.Wall).Outline}
		for _, c := range outline.Cells(part.X) {
			if max(c.Left.Hi, c.Right.Hi) == p.Y.Hi {
				return true
			}
		}
	}
	return false
}
