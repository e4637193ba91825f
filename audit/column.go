package audit

import (
	"math/big"
	"slices"

	"firstdrop/measure"
)

// A wall is judged column by column. Columns are bounded by every x at which
// anything changes: vertices, crossings of edges, edges of sheets. So what
// holds on the upright midway through a column holds in all of it:
//
//	  ____________________
//	 |  :    :  ____ :    |     each column has its bands of paper
//	 |  :    : |win.|:    |     between an edge below and an edge above
//	 |  :    : |____|:    |
//	 |__:____:_______:____|
//	   drop  drop    drop
//
// Where two edges cross between whole nanometres, a column of 1 nm stands over
// the crossing.

// column is the stretch between two neighbouring uprights, with what is to be
// papered there from the lowest band to the highest.
type column struct {
	x     span
	bands []band
}

// band is a stretch of paper in a column, between two edges.
type band struct{ foot, head *slope }

func (c *column) middle() int64 { return c.x.lo + c.x.hi } // in half nanometres

func (b band) at(half int64) rise { return rise{b.foot.at(half), b.head.at(half)} }

// columns cuts the wall at the given positions, which must be ascending and
// hold all of its own breaks.
func (w *wall) columns(breaks []int64) []column {
	if len(breaks) < 2 {
		return nil
	}
	all := make([]column, 0, len(breaks)-1)
	room := make([]band, 0, 2*len(breaks))
	in := make([]bool, w.openings+1)
	var standing []standingSlope
	for i := 1; i < len(breaks); i++ {
		c := column{x: span{breaks[i-1], breaks[i]}}
		standing = standing[:0]
		for k := range w.slopes {
			if s := &w.slopes[k]; s.x1 <= c.x.lo && c.x.hi <= s.x2 {
				standing = append(standing, standingSlope{s, s.at(c.middle())})
			}
		}
		slices.SortStableFunc(standing, func(a, b standingSlope) int { return a.y.compare(b.y) })
		from := len(room)
		room = appendBands(room, standing, in)
		c.bands = room[from:len(room):len(room)]
		all = append(all, c)
	}
	return all
}

// standingSlope is an edge over a column, with its height midway.
type standingSlope struct {
	s *slope
	y height
}

// appendBands goes up the edges of a column. Each edge of a ring takes one in
// or out of it; paper is inside the outline and in no opening. in is scratch.
func appendBands(dst []band, standing []standingSlope, in []bool) []band {
	clear(in)
	inside, holes := false, 0
	var foot *slope
	for i := 0; i < len(standing); {
		y := standing[i].y
		first := standing[i].s
		for ; i < len(standing) && standing[i].y.compare(y) == 0; i++ {
			ring := standing[i].s.ring
			in[ring] = !in[ring]
			switch {
			case ring == 0:
				inside = in[0]
			case in[ring]:
				holes++
			default:
				holes--
			}
		}
		switch paper := inside && holes == 0; {
		case paper && foot == nil:
			foot = first
		case !paper && foot != nil:
			dst = append(dst, band{foot, first})
			foot = nil
		}
	}
	return dst
}

// appendMeeting appends the whole nanometres next to where two edges of a wall
// cross between their ends.
func appendMeeting(dst []int64, a, b *slope) []int64 {
	lo, hi := max(a.x1, b.x1), min(a.x2, b.x2)
	if lo >= hi || max(a.y1, a.y2) < min(b.y1, b.y2) || max(b.y1, b.y2) < min(a.y1, a.y2) {
		return dst
	}
	if c := a.at(2 * lo).compare(b.at(2 * lo)); c == 0 || c == a.at(2*hi).compare(b.at(2*hi)) {
		return dst // the same way up at both ends, or meeting at a vertex
	}
	return appendCrossing(dst, a, b, span{lo, hi})
}

// appendCrossing appends the whole nanometres next to where two endless lines
// cross, if that is within a stretch.
func appendCrossing(dst []int64, a, b *slope, within span) []int64 {
	// They meet where a.y1 + ma·(x−a.x1) = b.y1 + mb·(x−b.x1).
	ma := big.NewRat(a.y2-a.y1, a.x2-a.x1)
	mb := big.NewRat(b.y2-b.y1, b.x2-b.x1)
	steeper := new(big.Rat).Sub(ma, mb)
	if steeper.Sign() == 0 {
		return dst
	}
	gap := new(big.Rat).SetInt64(b.y1 - a.y1)
	gap.Add(gap, ma.Mul(ma, new(big.Rat).SetInt64(a.x1)))
	gap.Sub(gap, mb.Mul(mb, new(big.Rat).SetInt64(b.x1)))
	x := gap.Quo(gap, steeper)
	below, rest := new(big.Int), new(big.Int)
	below.DivMod(x.Num(), x.Denom(), rest)
	if !below.IsInt64() || below.Int64() < within.lo || below.Int64() >= within.hi {
		return dst
	}
	dst = append(dst, below.Int64())
	if rest.Sign() != 0 {
		dst = append(dst, below.Int64()+1)
	}
	return dst
}

func lengthOf(nm int64) measure.Length { return measure.Length(nm) }
