package plan

import (
	"math/bits"
	"slices"

	"firstdrop/hanging"
	"firstdrop/measure"
)

// Most layouts of a run ask for the same pieces as many others: so many full
// drops, so many over the door. What cutting them comes to, and the best design
// height, depend on nothing but how many of each there are. So a layout is signed
// by two sums over its drops, one over pieces and one over the lines that may cut
// a motif, and every signature is worked out once.
//
// A sum of 64-bit hashes in each: two different layouts of one room agree in
// both by chance once in 10³⁸.

// sign is the signature of a drop, or of a row of drops.
type sign struct{ pieces, motifs uint64 }

func (a *sign) add(b sign) {
	a.pieces += b.pieces
	a.motifs += b.motifs
}

func (a *sign) sub(b sign) {
	a.pieces -= b.pieces
	a.motifs -= b.motifs
}

// mix hashes a few numbers.
func mix(numbers ...uint64) uint64 {
	h := uint64(0x9e3779b97f4a7c15)
	for _, n := range numbers {
		hi, lo := bits.Mul64(h^n, 0xd6e8feb86659fd93)
		h = hi ^ lo ^ n<<1
		h ^= h >> 29
		h *= 0xbf58476d1ce4e5b9
		h ^= h >> 32
	}
	return h
}

// signer signs the drops of one run.
type signer struct {
	v      *halves
	repeat measure.Length
	cycle  int
	kinds  map[kindSign]sign
	drops  map[dropSign]sign
	rows   map[rowSign]sign
	l      hanging.Layout
}

// kindSign is a kind of drops and where in the row of drops they stand.
type kindSign struct {
	kind    kindKey
	residue int
}

// dropSign is a drop of up to three upright parts.
type dropSign struct {
	parts   [3]hanging.Part
	residue int
}

// rowSign is a row of whole drops, from a node to the corner, or a drop that turns corners,
// and the index of the first.
type rowSign struct {
	n     *node
	e     *pass // nil: a row
	index int
}

func newSigner(v *halves) *signer {
	p := v.j.paper
	return &signer{v: v, repeat: p.Repeat, cycle: p.Alternatives(), kinds: map[kindSign]sign{}, drops: map[dropSign]sign{}, rows: map[rowSign]sign{}}
}

// layout signs the drops of a sketch.
func (g *signer) layout(l *hanging.Layout) (total sign) {
	for i := range l.Drops {
		s := hanging.Strip{Index: l.Drops[i].Index, Parts: l.Drops[i].Parts}
		if s.Index == 0 { // on the side on which it was laid
			s.Index = g.v.middle
			if l.Choice.Start.X < 0 {
				s.Index = -g.v.middle
			}
		}
		total.add(g.drop(s, l.Choice.Kill, [2]bool{i == 0, i == len(l.Drops)-1}))
	}
	return total
}

// drop signs a drop; ends says whether hanging ends at its left and its right side.
func (g *signer) drop(s hanging.Strip, kill hanging.Kill, ends [2]bool) sign {
	residue := int(measure.Length(s.Index).Mod(measure.Length(g.cycle)))
	if kind, ok := g.v.kind(&s); ok {
		key := kindSign{kind, residue}
		n, known := g.kinds[key]
		if !known {
			n = g.alone(s, kill, ends)
			g.kinds[key] = n
		}
		return n
	}
	if len(s.Parts) > len(dropSign{}.parts) || isSkewed(s.Parts) {
		return g.alone(s, kill, ends)
	}
	key := dropSign{residue: residue}
	copy(key.parts[:], s.Parts)
	n, known := g.drops[key]
	if !known {
		n = g.alone(s, kill, ends)
		g.drops[key] = n
	}
	return n
}

// isSkewed reports whether some part of a drop leans.
func isSkewed(parts []hanging.Part) bool {
	return slices.ContainsFunc(parts, func(p hanging.Part) bool { return p.Skew != 0 })
}

// like returns an index on a side that is like another there.
func (g *signer) like(side hanging.Side, index int) int {
	index = int(measure.Length(index).Mod(measure.Length(g.v.middle)))
	if side == hanging.Left {
		return index - g.v.middle
	}
	return index + g.v.middle
}

// outward is by how much the index of the next drop to a side is more.
func outward(side hanging.Side) int { return 2*int(side) - 1 }

// row signs the whole drops from a node to the corner, of which the first has an index.
func (g *signer) row(n *node, index int) (total sign) {
	if n.next == nil {
		return total
	}
	side := n.spot.Side
	key := rowSign{n: n, index: g.like(side, index)}
	total, known := g.rows[key]
	if known {
		return total
	}
	for spot := n.spot; spot.T < n.next.spot.T; spot.T += g.v.width {
		s := g.v.stripAt(spot, false)
		s.Index = g.like(side, index)
		total.add(g.drop(s, hanging.Kill{}, [2]bool{}))
		index += outward(side)
	}
	total.add(g.row(n.next, index))
	g.rows[key] = total
	return total
}

// pass signs a drop of an index that turns corners.
func (g *signer) pass(n *node, e *pass, index int) sign {
	key := rowSign{n, e, g.like(n.spot.Side, index)}
	total, known := g.rows[key]
	if !known {
		total = g.drop(hanging.Strip{Index: key.index, Parts: e.parts}, hanging.Kill{}, [2]bool{})
		g.rows[key] = total
	}
	return total
}

// alone signs a drop by its pieces and lines.
func (g *signer) alone(s hanging.Strip, kill hanging.Kill, ends [2]bool) (n sign) {
	g.v.h.Alone(&g.l, s, kill, ends)
	for k := range g.l.Pieces {
		p := &g.l.Pieces[k]
		phase := g.v.j.paper.Phase(s.Index, 0, p.Lead)
		n.pieces += mix(uint64(p.Length), uint64(phase))
	}
	if g.v.j.paper.Motif != nil && g.repeat > 0 {
		for _, line := range g.v.j.levels(&g.l) {
			up := uint64(0)
			if line.reversed {
				up = 1
			}
			n.motifs += uint64(line.weight) * mix(uint64(line.shift), uint64(line.fall), up)
		}
	}
	return n
}
