package plan

import (
	"slices"

	"firstdrop/cutting"
	"firstdrop/measure"
	"firstdrop/paper"
)

// A lot is the rolls of one batch: those that are there, in the paper's order,
// and, for the batch that the label names, those that can be bought.
type lot struct {
	batch string
	kinds []RollKind
	// stock is what cutting is asked to cut from; nil where there are only rolls
	// of the label's size to be bought, as many as wanted.
	stock []cutting.Stock
}

// lots returns the paper's rolls batch by batch: first the batch that can be
// bought, then the others in the order in which the rolls name them.
func lots(p *paper.Paper) []lot {
	all := []lot{{batch: p.Batch}}
	for i := range p.Rolls {
		r := &p.Rolls[i]
		at := slices.IndexFunc(all, func(l lot) bool { return l.batch == r.Batch })
		if at < 0 {
			at = len(all)
			all = append(all, lot{batch: r.Batch})
		}
		all[at].kinds = append(all[at].kinds, RollKind{Roll: i})
		all[at].stock = append(all[at].stock, inHand(p, r))
	}
	all[0].addOffers(p)
	return slices.DeleteFunc(all, func(l lot) bool { return len(l.kinds) == 0 })
}

// searchLot is what the search for a layout counts rolls of: all there are, if
// they are of one batch; else rolls of the sizes on sale, as if there were as
// many as wanted, and batches are seen to later.
func searchLot(p *paper.Paper) *lot {
	if all := lots(p); len(all) == 1 {
		return &all[0]
	}
	sale := *p
	sale.Available, sale.Also = nil, slices.Clone(p.Also)
	for i := range sale.Also {
		sale.Also[i].Available = nil
	}
	l := &lot{batch: p.Batch}
	l.addOffers(&sale)
	return l
}

// inHand is a roll that is there as cutting sees it.
func inHand(p *paper.Paper, r *paper.Roll) cutting.Stock {
	s := cutting.Stock{Roll: rollOf(p, r.Length, r.Begins), Count: 1, InHand: true}
	for _, f := range r.Flaws {
		s.Flaws = append(s.Flaws, cutting.Flaw(f))
	}
	for _, part := range r.Parts {
		s.Parts = append(s.Parts, rollOf(p, part.Length, part.Begins))
	}
	return s
}

// rollOf turns the place where the design begins into the phase at the
// beginning: a design that begins after 200 mm has 200 mm left to run.
func rollOf(p *paper.Paper, length measure.Length, begins *measure.Length) cutting.Roll {
	if p.Repeat == 0 || begins == nil {
		return cutting.Roll{Length: length}
	}
	return cutting.Roll{Length: length, Start: cutting.StartAt((-*begins).Mod(p.Repeat))}
}

// addOffers adds the rolls that can be bought.
func (l *lot) addOffers(p *paper.Paper) {
	offers := p.Offers()
	plain := len(l.stock) == 0 && len(offers) == 1 && p.Available == nil
	for i, o := range offers {
		s := cutting.Stock{Roll: cutting.Roll{Length: o.RollLength}, Price: o.Price.Minor, Pack: o.Pack}
		if o.Available != nil {
			if s.Count = *o.Available; s.Count == 0 {
				continue
			}
		}
		l.kinds = append(l.kinds, RollKind{Roll: -1, Offer: i})
		if !plain {
			l.stock = append(l.stock, s)
		}
	}
}

// spec asks for pieces to be cut from the rolls of the lot.
func (l *lot) spec(t *Task, p *paper.Paper, pieces []cutting.Piece) cutting.Spec {
	return cutting.Spec{
		Repeat: p.Repeat, Roll: cutting.Roll{Length: p.RollLength}, Stock: l.stock, Pieces: pieces,
		Lead: t.Cut.Lead, Loss: t.Cut.Loss, InOrder: p.InOrder,
	}
}

// leastBought returns a number of rolls to buy that the lengths of the pieces
// alone call for: quick, and never too many.
func (l *lot) leastBought(pieces []cutting.Piece) int {
	var wanted, longest measure.Length
	for _, p := range pieces {
		wanted += p.Length
	}
	for k := range l.stock {
		s := &l.stock[k]
		if s.InHand {
			wanted -= s.Total()
		} else {
			longest = max(longest, s.Total())
		}
	}
	if wanted <= 0 || longest == 0 {
		return 0
	}
	return int((wanted + longest - 1) / longest)
}

// short is the lot with every roll to be bought as short as its tolerance
// allows.
func (l *lot) short(p *paper.Paper) (spec lot, shorter bool) {
	s := lot{batch: l.batch, kinds: l.kinds, stock: slices.Clone(l.stock)}
	if s.stock == nil {
		s.stock = []cutting.Stock{{Roll: cutting.Roll{Length: p.RollLength}}}
	}
	for k := range s.stock {
		if s.kinds[k].Roll < 0 {
			length := p.Shortest(s.stock[k].Length)
			shorter = shorter || length < s.stock[k].Length
			s.stock[k].Length = length
		}
	}
	return s, shorter
}
