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
// phase at its leading end: wherever it is cut, that could be.

// prices are what pieces are worth. The zero value knows of none.
type prices struct {
	of     []priced
	roll   int64          // no roll gives pieces that are worth more; 0: no prices
	repeat measure.Length // after which leading ends are alike; 0: all are
}

// priced is a kind of pieces: so long, or longer, and where the leading end stands.
type priced struct {
	length, lead measure.Length
	price        int64
}

// mostPriced is up to how many kinds of pieces are priced.
const mostPriced = 16

// mostSampled is from how many layouts prices are taken.
const mostSampled = 4

// newPrices takes the prices from the proof for some layouts of the run together, which is
// sharper than that for one. Rolls in hand, goods cut in order, drops upside down, ceilings
// by which drops are moved and rolls shared with other runs have none; where drops show the
// design at several heights in turn, only the lengths of pieces count.
func (s *search) newPrices(some []*hanging.Layout) (q prices) {
	p := s.judge.paper
	if s.lot.stock != nil || p.InOrder || p.Match.Reversing || s.judge.level != nil || len(s.base) > 0 {
		return q
	}
	if p.Alternatives() == 1 {
		q.repeat = p.Repeat
	}
	spec := s.lot.spec(s.task, p, nil)
	spec.Repeat = q.repeat
	var kinds []priced
	for _, l := range some[:min(mostSampled, len(some))] {
		for i := range l.Pieces {
			n := priced{length: l.Pieces[i].Length, lead: l.Pieces[i].Lead.Mod(q.repeat)}
			kinds = append(kinds, n)
			spec.Pieces = append(spec.Pieces, cutting.Piece{Length: n.length, Phase: (-n.lead).Mod(q.repeat)})
		}
	}
	problem, err := cutting.NewProblem(spec)
	if err != nil || len(kinds) == 0 {
		return prices{}
	}
	proof := cutting.Solve(problem, cutting.Options{Steps: countSteps}).Certificate
	if proof.AllStarts || proof.Capacity <= 0 {
		return prices{}
	}
	for i, price := range proof.Weights {
		n := kinds[i]
		if n.price = price; price > 0 && q.at(n.length, n.lead) < price {
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
	return q
}

// at returns what a piece is worth.
func (q *prices) at(length, lead measure.Length) (price int64) {
	for i := range q.of {
		if n := &q.of[i]; length >= n.length && lead == n.lead {
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
