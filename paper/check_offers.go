package paper

import (
	"fmt"

	"firstdrop/message"
)

// Limits of an offer, far above anything that is sold.
const (
	mostAvailable = 1_000_000
	mostPrice     = 1_000_000_000_000 // in the smallest unit of the currency
)

// offers checks the sizes in which the paper is sold, the label's own first.
func (c *checker) offers() {
	all := c.paper.Offers()
	for i := range all {
		c.offer(i, &all[i])
	}
	c.part, c.path = message.Message{}, ""
	c.prices(all)
	for _, o := range all {
		if o.Available == nil || *o.Available != 0 {
			return
		}
	}
	if len(c.paper.Rolls) == 0 {
		c.refuse("available", NothingThere, 0, 0)
	}
}

// enter sets the place of an offer; the label's own is at no place of its own.
func (c *checker) enter(offer int) {
	c.part, c.path = message.Message{}, ""
	if offer > 0 {
		c.part, c.path = message.New("part_size", "further size {n}", "n", offer), fmt.Sprintf("also[%d].", offer-1)
	}
}

func (c *checker) offer(i int, o *Offer) {
	c.enter(i)
	if i > 0 { // that of the label is checked with its sizes
		c.length("roll", o.RollLength)
		if c.paper.Repeat > o.RollLength && o.RollLength > 0 {
			c.refuse("roll", ShorterThanRepeat, o.RollLength, c.paper.Repeat)
		}
	}
	if o.Pack < 1 || o.Pack > 3 {
		c.refuse("pack", NoPack, 0, 0)
	}
	switch {
	case o.Price.Minor < 0:
		c.refuse("price", Negative, 0, 0)
	case o.Price.Minor > mostPrice:
		c.refuse("price", TooLarge, 0, 0)
	}
	if o.Available == nil {
		return
	}
	switch {
	case *o.Available < 0:
		c.refuse("available", Negative, 0, 0)
	case *o.Available > mostAvailable:
		c.refuse("available", TooLarge, 0, 0)
	}
}

// prices holds the prices of all sizes against one another: they are added up
// and compared.
func (c *checker) prices(all []Offer) {
	stated, isFree, costs := 0, -1, false
	for i := range all {
		o := &all[i]
		if !o.Price.IsStated() {
			continue
		}
		if all[stated].Price.IsStated() && all[stated].Price.Currency != o.Price.Currency {
			c.enter(i)
			c.refuse("price", OtherMoney, 0, 0)
		}
		stated = i
		costs = costs || o.Price.Minor > 0
		if o.Price.Minor == 0 && o.Available == nil {
			isFree = i
		}
	}
	if isFree >= 0 && costs {
		c.enter(isFree)
		c.refuse("price", FreeRolls, 0, 0)
	}
	for i := range all {
		if !all[i].Price.IsStated() && all[stated].Price.IsStated() {
			c.enter(i)
			c.refuse("price", PriceMissing, 0, 0)
		}
	}
	c.part, c.path = message.Message{}, ""
}
