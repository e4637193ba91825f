package plan

import (
	"math/bits"

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

func newSigner(v *halves) *signer {
	p := v.j.paper
	return &signer{v: v, repeat: p.Repeat, cycle: p.Alternatives(), kinds: map[kindSign]sign{}, drops: map[dropSign]sign{}}
}

// layout signs the drops of a sketch.
func (g *signer) layout(l *hanging.Layout) (total sign) {
	for i := range l.Drops {
		total.add(g.drop(l, i))
	}
	return total
}

// drop signs drop i of a sketch.
func (g *signer) drop(l *hanging.Layout, i int) sign {
	d := &l.Drops[i]
	residue := int(measure.Length(d.Index).Mod(measure.Length(g.cycle)))
	s := hanging.Strip{Index: d.Index, Parts: d.Parts}
	if kind, ok := g.v.kind(&s); ok {
		key := kindSign{kind, residue}
		n, known := g.kinds[key]
		if !known {
			n = g.alone(l, i)
			g.kinds[key] = n
		}
		return n
	}
	upright := len(d.Parts) <= 3
	for k := range d.Parts {
		upright = upright && d.Parts[k].Skew == 0
	}
	if !upright {
		return g.alone(l, i)
	}
	key := dropSign{residue: residue}
	copy(key.parts[:], d.Parts)
	n, known := g.drops[key]
	if !known {
		n = g.alone(l, i)
		g.drops[key] = n
	}
	return n
}

// alone signs a drop by its pieces and lines.
func (g *signer) alone(l *hanging.Layout, i int) (n sign) {
	d := &l.Drops[i]
	s := hanging.Strip{Index: d.Index, Parts: d.Parts}
	if s.Index == 0 { // on the side on which it was laid
		s.Index = g.v.middle
		if l.Choice.Start.X < 0 {
			s.Index = -g.v.middle
		}
	}
	g.v.h.Alone(&g.l, s, l.Choice.Kill, [2]bool{i == 0, i == len(l.Drops)-1})
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
