package plan

import (
	"cmp"
	"slices"

	"firstdrop/cutting"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/paper"
)

// How many rolls a layout needs at the least is told from sums over its
// pieces, without cutting any:
//
//	rolls ≥ pieces of full length ÷ how many of these one roll can give
//	rolls ≥ pieces longer than a half, a third … of a roll ÷ 1, 2 …
//	rolls ≥ length of all pieces ÷ length of a roll
//	rolls ≥ worth of all pieces ÷ worth of a roll (prices.go)
//
// Full length is that of most drops. What a roll can give of it follows from the
// nearest at which two such pieces can lie on it, their designs being what they
// are, and from where the first can lie if the roll begins at the worst phase.

// rollBound is a bound for the rolls of any layout of one run. The zero value
// says that none is needed.
type rollBound struct {
	least   measure.Length // a piece at least as long
	lead    measure.Length // whose leading end stands at this height is full
	off     measure.Length // or so much higher or lower
	anyLead bool           // or at any
	per     int64          // so many of them come out of a roll at the most; 0: not known
	roll    measure.Length // what a roll has to give, the loss at its last cut added; 0: not known
	loss    measure.Length // at each cut
	base    measure.Length // the length of all pieces of other runs, less that of rolls in hand
	hand    int64          // so many of the full pieces rolls in hand give at the most
	bare    bool           // only lengths are counted: some rolls are there, or of several sizes
	prices
}

// isFull reports whether a piece is one of those that are counted.
func (b *rollBound) isFull(p *hanging.Piece) bool {
	return p.Length >= b.least && (b.anyLead || (p.Lead-b.lead).Abs() <= b.off)
}

// longest is up to how many long pieces of a roll are counted for themselves.
const longest = 3

// count adds a piece to a sum.
func (b *rollBound) count(t *sum, p *hanging.Piece) {
	t.length += p.Length
	if b.prices.roll > 0 {
		t.worth += b.at(p.Length, p.Lead)
	}
	if b.isFull(p) {
		t.full++
	}
	for k := range t.long {
		if measure.Length(k+2)*(p.Length+b.loss) > b.roll {
			t.long[k]++
		}
	}
}

// rolls returns a number of rolls that cannot be undercut.
func (b *rollBound) rolls(t *sum) (n int64) {
	if b.roll > 0 {
		n = int64(max(0, t.length+b.base+b.roll-1) / b.roll)
	}
	if b.per > 0 {
		n = max(n, (int64(t.full)-b.hand+b.per-1)/b.per)
	}
	if b.roll > 0 && !b.bare {
		for k, long := range t.long {
			n = max(n, (int64(long)+int64(k))/int64(k+1))
		}
	}
	if b.prices.roll > 0 {
		n = max(n, (t.worth+b.prices.roll-1)/b.prices.roll)
	}
	return n
}

// exceeds reports whether more than n rolls are needed: the same without dividing.
func (b *rollBound) exceeds(t *sum, n int64) bool {
	if b.per > 0 && int64(t.full)-b.hand > b.per*n {
		return true
	}
	if b.roll <= 0 {
		return false
	}
	if b.prices.roll > 0 && t.worth > b.prices.roll*n {
		return true
	}
	for k, long := range t.long {
		if !b.bare && int64(long) > int64(k+1)*n {
			return true
		}
	}
	return t.length+b.base > b.roll*measure.Length(n)
}

// newRollBound prepares the bound from any layout of the run. With rolls in hand,
// or of several sizes, it counts all lengths and full pieces: what the rolls in hand
// do not give comes from the longest on sale.
func (s *search) newRollBound(l *hanging.Layout) (b rollBound) {
	p := &s.task.Papers[s.run.Paper]
	if len(l.Pieces) == 0 {
		return b
	}
	cut := &s.task.Cut
	for _, q := range s.base {
		b.base += q.Length
	}
	b.loss = cut.Loss
	most := mostOften(l.Pieces)
	b.least, b.lead = most.Length, most.Lead
	b.anyLead = p.Repeat == 0 || p.Match.Reversing
	b.widen(l.Pieces)
	pitch, first := b.least+cut.Loss, measure.Length(0)
	if !b.anyLead {
		pitch, first = pitches(p, b.least+cut.Loss, 2*b.off)
	}
	gives := func(length measure.Length) int64 { // of full pieces, at the most
		if room := length - b.least; room >= 0 && pitch > 0 {
			return 1 + int64(room/pitch)
		}
		return 0
	}
	if s.lot.stock == nil {
		b.roll = p.RollLength - cut.Lead + cut.Loss
		b.per = gives(p.RollLength - cut.Lead - first)
		return b
	}
	b.bare = true
	for k := range s.lot.stock {
		r := &s.lot.stock[k]
		if !r.InHand {
			b.roll = max(b.roll, r.Total())
			b.per = max(b.per, gives(r.Total()-cut.Lead-first))
			continue
		}
		b.base -= r.Total()
		for _, part := range stretches(r) {
			b.hand += gives(part)
		}
	}
	return b
}

// stretches returns how long the parts of a roll are, flaws aside.
func stretches(r *cutting.Stock) (lengths []measure.Length) {
	if len(r.Parts) == 0 {
		return []measure.Length{r.Length}
	}
	for _, p := range r.Parts {
		lengths = append(lengths, p.Length)
	}
	return lengths
}

// nearLevel is how much the heads of drops under one ceiling out of level may
// differ to count as the same.
const nearLevel = 40 * measure.Millimetre

// widen takes in the pieces under a ceiling that is not level.
func (b *rollBound) widen(pieces []hanging.Piece) {
	least := b.least
	for i := range pieces {
		p := &pieces[i]
		if d := (p.Lead - b.lead).Abs(); d <= nearLevel && p.Length >= b.least-nearLevel {
			least, b.off = min(least, p.Length), max(b.off, d)
		}
	}
	if least < b.least || b.off > 0 {
		b.least, b.off = least-5*measure.Millimetre, b.off+5*measure.Millimetre
	}
}

// mostOften returns a piece like most.
func mostOften(pieces []hanging.Piece) hanging.Piece {
	type like struct{ length, lead measure.Length }
	n := map[like]int{}
	for i := range pieces {
		n[like{pieces[i].Length, pieces[i].Lead}]++
	}
	return slices.MaxFunc(pieces, func(a, b hanging.Piece) int {
		return cmp.Or(
			cmp.Compare(n[like{a.Length, a.Lead}], n[like{b.Length, b.Lead}]),
			cmp.Compare(a.Length, b.Length), cmp.Compare(a.Lead, b.Lead))
	})
}

// pitches returns the least distance at which the beginnings of two pieces can
// follow each other on a roll, whose phases are those of drops at one height, give
// or take off between the two; and how far from the roll's beginning, at the worst
// phase, the first of them lies at the least.
func pitches(p *paper.Paper, length, off measure.Length) (pitch, first measure.Length) {
	n := p.Alternatives()
	var phases []measure.Length
	for i := range n {
		phases = append(phases, p.Shift(i))
	}
	pitch = length + p.Repeat
	for _, a := range phases {
		for _, b := range phases {
			rest := (b - a - length).Mod(p.Repeat)
			if rest >= p.Repeat-off {
				rest = 0
			}
			pitch = min(pitch, length+max(0, rest-off))
		}
	}
	slices.Sort(phases)
	for i, a := range phases {
		gap := p.Repeat - a + phases[0]
		if i+1 < len(phases) {
			gap = phases[i+1] - a
		}
		first = max(first, gap-1-off)
	}
	return pitch, first
}
