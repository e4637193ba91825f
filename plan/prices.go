package plan

import (
	"cmp"
	"math/bits"
	"slices"

	"firstdrop/cutting"
	"firstdrop/hanging"
	"firstdrop/measure"
)

// Cutting a few layouts from rolls ends with a proof: every piece has a price, and no roll
// gives pieces that are worth more than some sum. The same prices tell of any layout
// how many rolls it needs at the least, since what a roll gives does not depend on how many
// pieces of a kind are asked for:
//
//	┌──────┬──────┬──────┬───┐    three full drops are a roll: 1/3 each; the piece over
//	│ 1/3  │ 1/3  │ 1/3  │   │    the door fits beside two of them only, and there twice: 1/6
//	├──────┼──────┼───┬──┴┬──┤
//	│ 1/3  │ 1/3  │1/6│1/6│  │    seven rolls of full drops, and one piece over the door:
//	└──────┴──────┴───┴───┴──┘    7 1/6, so eight
//
// A piece that none of the few has is worth what a shorter one is that shows the same
// phase at its leading end: wherever it is cut, that could be. Where drops show the design
// at several heights in turn, and it is not known which turn it is, a piece is worth the
// mean of all: a roll that nobody has opened serves every phase, so prices moved by one
// turn hold as well, and so does the mean of these.

// prices are what pieces are worth. The zero value knows of none.
type prices struct {
	of     []priced
	roll   int64            // no roll gives pieces that are worth more; 0: no prices
	repeat measure.Length   // of the design; 0: phases do not matter
	shifts []measure.Length // of the drops in a turn
}

// priced is a kind of pieces: so long, or longer, with a phase at the leading end.
type priced struct {
	length, phase measure.Length
	price         int64
}

// mostPriced is up to how many kinds of pieces are priced.
const mostPriced = 16

// priceSteps is how many steps the proof for a run of a few walls may take.
const priceSteps = 1_000

// mostSampled is from how many layouts prices are taken.
const mostSampled = 4

// newPrices takes the prices from the proof for some layouts of the run together, which is
// sharper than that for one. Rolls in hand, goods cut in order, drops upside down, ceilings
// by which drops are moved and rolls shared with other runs have none. Where the shift of a
// drop is rounded, only the lengths of pieces count.
func (s *search) newPrices(some []*hanging.Layout) (q prices) {
	p := s.judge.paper
	if s.lot.stock != nil || p.InOrder || p.Match.Reversing || s.judge.level != nil || len(s.base) > 0 {
		return q
	}
	q.shifts = []measure.Length{0}
	if !s.rounds {
		q.repeat, q.shifts = p.Repeat, nil
		for i := range p.Alternatives() {
			q.shifts = append(q.shifts, p.Shift(i))
		}
	}
	spec := s.lot.spec(s.task, p, nil)
	spec.Repeat = q.repeat
	var kinds []priced
	for _, l := range some {
		for i := range l.Pieces {
			piece := &l.Pieces[i]
			n := priced{length: piece.Length, phase: p.Phase(l.Drops[piece.Drop].Index, 0, piece.Lead).Mod(q.repeat)}
			kinds = append(kinds, n)
			spec.Pieces = append(spec.Pieces, cutting.Piece{Length: n.length, Phase: n.phase})
		}
	}
	if isVaried(spec.Pieces) {
		return prices{}
	}
	problem, err := cutting.NewProblem(spec)
	if err != nil || len(kinds) == 0 {
		return prices{}
	}
	proof, enough := cutting.Prove(problem)
	switch {
	case enough:
	case len(s.run.Run.Walls) > renewWalls && q.repeat > 0:
		proof = s.sharper(proof, spec)
	default:
		if proof = cutting.Solve(problem, cutting.Options{Steps: priceSteps}).Certificate; proof.AllStarts {
			return prices{} // which holds for no more pieces of a kind than are asked for
		}
	}
	if proof.Capacity <= 0 {
		return prices{}
	}
	for i, n := range kinds {
		price := proof.Weights[i]
		if n.price = price; price > 0 && q.inPhase(n.length, n.phase) < price {
			q.of = append(q.of, n)
		}
	}
	if len(q.of) > mostPriced {
		return prices{}
	}
	q.roll = proof.Capacity
	if q.repeat == 0 {
		q.roll = q.best(p.RollLength-s.task.Cut.Lead+s.task.Cut.Loss, s.task.Cut.Loss)
	}
	q.roll *= int64(len(q.shifts))
	return q
}

// isVaried reports whether pieces are of so many kinds that surely, or nearly so, more than can
// be priced are worth something: as under a ceiling that falls.
func isVaried(pieces []cutting.Piece) bool {
	kinds := map[cutting.Piece]bool{}
	for _, p := range pieces {
		kinds[p] = true
	}
	return len(kinds) > 2*mostPriced
}

// sharper returns a proof for some pieces, and others like them, that may be sharper than
// one at hand: of the rolls that serve whatever phase they begin with. How many pieces of a
// kind are asked for must not count in it; so as many are asked for as a roll can give. What
// rolls give is kept for layouts that are cut later.
func (s *search) sharper(proof cutting.Certificate, spec cutting.Spec) cutting.Certificate {
	n := len(spec.Pieces)
	asked := map[cutting.Piece]int{}
	for _, p := range spec.Pieces {
		asked[p]++
	}
	for _, p := range spec.Pieces[:n] {
		gives := int((spec.Roll.Length - spec.Lead + spec.Loss) / (p.Length + spec.Loss))
		for ; asked[p] < gives; asked[p]++ {
			spec.Pieces = append(spec.Pieces, p)
		}
	}
	problem, err := cutting.NewProblem(spec)
	if err != nil {
		return proof
	}
	s.halves.catalogue = cutting.NewCatalogue(problem)
	other := cutting.Solve(problem, cutting.Options{Steps: cutSteps, Catalogue: s.halves.catalogue}).Certificate
	if other.Capacity > 0 && (proof.Capacity <= 0 || worth(&other, n) > worth(&proof, n)) {
		return other
	}
	return proof
}

// worth returns how many rolls the first so many pieces are worth by a proof.
func worth(c *cutting.Certificate, n int) float64 {
	sum := int64(0)
	for _, w := range c.Weights[:n] {
		sum += w
	}
	return float64(sum) / float64(c.Capacity)
}

// at returns what a piece is worth whose leading end stands at some height, in a drop of
// which it is not known what turn it is: the sum over all.
func (q *prices) at(length, lead measure.Length) (price int64) {
	for _, shift := range q.shifts {
		price += q.inPhase(length, (shift - lead).Mod(q.repeat))
	}
	return price
}

// inPhase returns what a piece with a phase is worth.
func (q *prices) inPhase(length, phase measure.Length) (price int64) {
	for i := range q.of {
		if n := &q.of[i]; length >= n.length && phase == n.phase {
			price = max(price, n.price)
		}
	}
	return price
}

// best returns what a length of roll gives at the most, in as many pieces of each kind
// as fit: the proof of free match counts on no more than were asked for.
func (q *prices) best(room, loss measure.Length) (most int64) {
	slices.SortFunc(q.of, func(a, b priced) int { // by what a length is worth
		return compareProducts(b.price, a.length+loss, a.price, b.length+loss)
	})
	var fill func(room measure.Length, k int, worth int64)
	fill = func(room measure.Length, k int, worth int64) {
		most = max(most, worth)
		if k == len(q.of) || compareProducts(q.of[k].price, room, most-worth, q.of[k].length+loss) <= 0 {
			return
		}
		for n := room / (q.of[k].length + loss); n >= 0; n-- {
			fill(room-n*(q.of[k].length+loss), k+1, worth+int64(n)*q.of[k].price)
		}
	}
	fill(room, 0, 0)
	return most
}

// compareProducts compares price × length with another such product; none is negative.
func compareProducts(price int64, length measure.Length, other int64, long measure.Length) int {
	hi, lo := bits.Mul64(uint64(price), uint64(length))
	high, low := bits.Mul64(uint64(other), uint64(long))
	return cmp.Or(cmp.Compare(hi, high), cmp.Compare(lo, low))
}
