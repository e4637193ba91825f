package order

import (
	"math/bits"

	"firstdrop/measure"
	"firstdrop/paper"
)

// Chances say how a job may turn out otherwise than planned.
//
// Widths are left out: how far a roll may be narrower before one drop more is
// needed is the layout's affair, not that of a count of rolls.
type Chances struct {
	// Length is how far a roll's length may be from the label, up or down, in
	// parts per thousand of the label. 15 under EN 233.
	//
	// Within these limits every length is as likely as any other. Where nothing
	// but limits is known, that is the distribution to assume (JCGM 100:2008,
	// the GUM, 4.3.7, from memory); makers publish no other.
	Length int
	// Peaked makes lengths near the label more likely than those near the
	// limits: a triangle over the same limits, as the mean of two even draws
	// (GUM 4.3.9, from memory).
	Peaked bool
	// OneLength makes all rolls of a job equally long: one printing, one
	// machine. Otherwise each roll's length is drawn by itself.
	OneLength bool
	// Measuring is the standard deviation of a measured height. Its error is the
	// same for all pieces of a wall and never more than six times as much.
	Measuring measure.Length
	// Trim is the least surplus, both ends together, with which a piece can
	// still be hung and trimmed. See [Certainty] for how it meets Measuring.
	Trim measure.Length
	// Step is what lengths to cut are rounded up to; 0 for no rounding.
	Step measure.Length
	// Spoiled is how many in a thousand cut pieces turn out spoiled (torn,
	// miscut, misprinted) and are cut once more. 0 to 500.
	Spoiled int
}

// DefaultChances returns the paper's own tolerance of length, EN 233's as a rule;
// heights measured to 3 mm (from memory: a steel tape held by one person); at
// least 40 mm to trim and cutting to the millimetre (common practice: 40 mm is
// the least of the allowances in use, 100 mm the rule); and one piece in a
// hundred spoiled (from memory; nobody publishes a figure).
func DefaultChances(p *paper.Paper) Chances {
	return Chances{
		Length:    p.Tolerance.Length,
		Measuring: 3 * measure.Millimetre,
		Trim:      40 * measure.Millimetre,
		Step:      measure.Millimetre,
		Spoiled:   10,
	}
}

func (c *Chances) check() error {
	switch {
	case c.Length < 0 || c.Length > 500:
		return &ChanceError{"Length", "must be 0 to 500 in a thousand"}
	case c.Spoiled < 0 || c.Spoiled > 500:
		return &ChanceError{"Spoiled", "must be 0 to 500 in a thousand"}
	case c.Measuring < 0 || c.Measuring > measure.Metre:
		return &ChanceError{"Measuring", "must be 0 to 1 m"}
	case c.Trim < 0 || c.Trim > measure.Metre:
		return &ChanceError{"Trim", "must be 0 to 1 m"}
	case c.Step < 0 || c.Step > measure.Metre:
		return &ChanceError{"Step", "must be 0 to 1 m"}
	}
	return nil
}

// ChanceError names a field of Chances, or a part of the question, that is not
// right.
type ChanceError struct {
	Field, Message string
}

func (e *ChanceError) Error() string { return "order: " + e.Field + " " + e.Message }

// What is drawn. Each draw is a function of the seed, the job, one of these and
// a number, so that what is drawn for one thing does not depend on what else is
// drawn: with more pieces spoiled, the rolls stay the same.
const (
	drawLength uint64 = iota + 1
	drawStart
	drawHeight
	drawSpoiled
	drawHeldStart
)

// source draws for one simulated job.
type source struct {
	chances *Chances
	repeat  measure.Length
	key     uint64
}

// golden is 2⁶⁴ over the golden ratio, made odd.
const golden = 0x9e3779b97f4a7c15

// mix is the output function of SplitMix64: G. L. Steele, D. Lea, C. H. Flood,
// "Fast Splittable Pseudorandom Number Generators", OOPSLA 2014, with the
// constants of the version in common use. Integers only: every machine draws
// the same.
func mix(z uint64) uint64 {
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}

func (s *source) begin(seed uint64, job int) {
	s.key = mix(mix(seed+golden) + golden*uint64(job+1))
}

func (s *source) draw(what, i uint64) uint64 {
	return mix(mix(s.key+golden*what) + golden*(i+1))
}

// below returns a number in [0, n), evenly but for a bias under n/2⁶⁴.
func below(u, n uint64) uint64 {
	hi, _ := bits.Mul64(u, n)
	return hi
}

// length returns how long roll r is, whose label says so much.
func (s *source) length(r int, label measure.Length) measure.Length {
	if s.chances.OneLength {
		r = 0
	}
	off := label.Scaled(int64(s.chances.Length), 1000)
	size := 2*uint64(off) + 1
	x := measure.Length(below(s.draw(drawLength, uint64(2*r)), size))
	if s.chances.Peaked {
		x = (x + measure.Length(below(s.draw(drawLength, uint64(2*r+1)), size))) / 2
	}
	return label - off + x
}

// start returns the phase that roll r begins with: any, evenly.
func (s *source) start(r int) measure.Length {
	return measure.Length(below(s.draw(drawStart, uint64(r)), uint64(s.repeat)))
}

// heldStart returns the phase that a roll in hand begins with which nobody has
// opened yet.
func (s *source) heldStart(h int) measure.Length {
	return measure.Length(below(s.draw(drawHeldStart, uint64(h)), uint64(s.repeat)))
}

// height returns by how much a wall is higher than measured: the sum of twelve
// even draws of 16 bits, less its mean. Its variance is 1 but for 2⁻³², its
// shape near the normal one, its limits ±6.
func (s *source) height(wall int) measure.Length {
	sum := int64(-6 * 0xffff)
	for i := range uint64(3) {
		for u := s.draw(drawHeight, 3*uint64(wall)+i); u > 0; u >>= 16 {
			sum += int64(u & 0xffff)
		}
	}
	return s.chances.Measuring.Scaled(sum, 0x10000)
}

// spoiled reports whether a piece turns out spoiled when cut for the given time.
func (s *source) spoiled(piece, time int) bool {
	u := s.draw(drawSpoiled, uint64(piece)<<16+uint64(time&0xffff))
	return below(u, 1000) < uint64(s.chances.Spoiled)
}
