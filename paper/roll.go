package paper

import (
	"slices"

	"firstdrop/measure"
	"firstdrop/money"
)

// Roll is a roll that is there, or what is left of one, as it is found when it
// has been opened and measured.
type Roll struct {
	Name  string // what is written on it; unlike the names of the paper's other rolls
	Batch string // the printing run; "" when not stated
	// Length is what of it can be used; 0 for a roll in separate lengths.
	Length measure.Length
	// Begins is how far the first place at which the design begins lies from
	// the roll's leading end, in [0, repeat). It is nil while nobody has looked.
	Begins *measure.Length
	// Flaws are stretches that no piece may touch; in a roll of separate lengths
	// they are measured as if these lay end to end.
	Flaws []Flaw
	// Parts are the lengths of a roll that comes in two or three, in the order
	// in which they come off it.
	Parts []RollPart
}

// Flaw is a stretch of a roll, measured from its leading end.
type Flaw struct{ From, To measure.Length }

// RollPart is one length of a roll that comes in several.
type RollPart struct {
	Length measure.Length
	Begins *measure.Length // as in Roll
}

// IsUnopened reports whether a roll that is there is as it was sold, as far as is known:
// nobody has looked where its design begins, and it is as long as it must be.
func (p *Paper) IsUnopened(r *Roll) bool {
	return r.Begins == nil && len(r.Parts) == 0 && len(r.Flaws) == 0 && slices.ContainsFunc(p.Offers(), func(o Offer) bool {
		return r.Length >= p.Shortest(o.RollLength)
	})
}

// Total is the whole length of the roll.
func (r *Roll) Total() measure.Length {
	sum := r.Length
	for _, p := range r.Parts {
		sum += p.Length
	}
	return sum
}

// Joints lists where the parts of the roll begin, but for the first.
func (r *Roll) Joints() (at []measure.Length) {
	end := measure.Length(0)
	for i := range r.Parts {
		if i > 0 {
			at = append(at, end)
		}
		end += r.Parts[i].Length
	}
	return at
}

// copied returns the roll with nothing shared.
func (r *Roll) copied() Roll {
	c := *r
	c.Begins, c.Flaws, c.Parts = copied(r.Begins), slices.Clone(r.Flaws), slices.Clone(r.Parts)
	for i := range c.Parts {
		c.Parts[i].Begins = copied(r.Parts[i].Begins)
	}
	return c
}

func copied[T any](p *T) *T {
	if p == nil {
		return nil
	}
	c := *p
	return &c
}

// Offer is a size in which a paper is sold.
type Offer struct {
	RollLength measure.Length // > 0
	Pack       int            // rolls sold together: 1, 2 or 3
	Price      money.Amount   // of one pack; the zero value when not stated
	// Available is how many rolls can still be had; nil for as many as wanted.
	Available *int
}

// Offers lists the sizes in which the paper is sold, the label's own first.
func (p *Paper) Offers() []Offer {
	own := Offer{RollLength: p.RollLength, Pack: p.Pack, Price: p.Price, Available: p.Available}
	return append([]Offer{own}, p.Also...)
}
