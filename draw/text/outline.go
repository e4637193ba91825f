package text

import (
	"github.com/go-text/typesetting/font"
	"github.com/go-text/typesetting/font/opentype"
)

// Place is a point of a glyph in thousandths of the letters' size, y upwards
// from the base line.
type Place struct{ X, Y float32 }

// Outline is the edge of a glyph: closed rings of straight lines, filled where
// they wind round a point (the non-zero rule).
type Outline [][]Place

// curveSteps is into how many straight lines a curve is taken apart. With
// letters 10 mm high the lines stay within some hundredths of a millimetre.
const curveSteps = 8

// Outline returns the edge of a glyph; nothing for a blank or unknown one. It must
// not be changed.
func (f *Font) Outline(glyph uint16) Outline {
	f.lock.Lock()
	defer f.lock.Unlock()
	if o, ok := f.outlines[glyph]; ok {
		return o
	}
	var o Outline
	if data, ok := font.NewFace(f.font).GlyphData(font.GID(glyph)).(font.GlyphOutline); ok {
		o = flattened(data.Segments)
	}
	f.outlines[glyph] = o
	return o
}

func flattened(segments []font.Segment) Outline {
	var o Outline
	for _, s := range segments {
		if s.Op == opentype.SegmentOpMoveTo {
			o = append(o, []Place{{s.Args[0].X, s.Args[0].Y}})
			continue
		}
		ring := &o[len(o)-1]
		from := (*ring)[len(*ring)-1]
		switch s.Op {
		case opentype.SegmentOpLineTo:
			*ring = append(*ring, Place(s.Args[0]))
		case opentype.SegmentOpQuadTo:
			// A quadratic curve is a cubic one whose handles lie two thirds on.
			c, to := Place(s.Args[0]), Place(s.Args[1])
			*ring = curve(*ring, from, part(from, c, 2./3), part(to, c, 2./3), to)
		case opentype.SegmentOpCubeTo:
			*ring = curve(*ring, from, Place(s.Args[0]), Place(s.Args[1]), Place(s.Args[2]))
		}
	}
	return o
}

// curve appends the points of a cubic curve, its start left out.
func curve(ring []Place, a, b, c, d Place) []Place {
	for i := 1; i <= curveSteps; i++ {
		t := float32(i) / curveSteps
		ab, bc, cd := part(a, b, t), part(b, c, t), part(c, d, t)
		ring = append(ring, part(part(ab, bc, t), part(bc, cd, t), t))
	}
	return ring
}

// part returns the point that lies t of the way from a to b.
func part(a, b Place, t float32) Place { return Place{a.X + (b.X-a.X)*t, a.Y + (b.Y-a.Y)*t} }
