package paper

import (
	"fmt"
	"strconv"

	"firstdrop/measure"
	"firstdrop/message"
)

// Limits of what is there, far above what a job opens.
const (
	mostRolls = 200 // of one paper
	mostFlaws = 50  // of one roll
	mostParts = 20  // of one roll
)

// rolls checks the rolls that are there.
func (c *checker) rolls() {
	if len(c.paper.Rolls) > mostRolls {
		c.refuse("rolls", TooMany, 0, 0)
		return
	}
	seen := map[string]bool{}
	for i := range c.paper.Rolls {
		r := &c.paper.Rolls[i]
		c.part, c.path = message.New("part_roll", "roll {name}", "name", strconv.Quote(r.Name)), fmt.Sprintf("rolls[%d].", i)
		if r.Name == "" {
			c.part = message.New("part_roll_listed", "roll {n} of the list", "n", i+1)
			c.refuse("name", NoName, 0, 0)
		} else if seen[r.Name] {
			c.refuse("name", SameName, 0, 0)
		}
		seen[r.Name] = true
		c.roll(r)
	}
	c.part, c.path = message.Message{}, ""
}

func (c *checker) roll(r *Roll) {
	before := len(c.errs)
	switch {
	case len(r.Parts) > 0 && r.Length != 0:
		c.refuse("length", AlsoParts, r.Length, 0)
	case len(r.Parts) > 0:
		c.parts(r)
	case r.Length == 0:
		c.refuse("length", NoLength, 0, 0)
	default:
		c.length("length", r.Length)
		c.begins("begins", r.Begins, len(r.Flaws) > 0)
	}
	if len(c.errs) == before {
		c.flaws(r)
	}
}

// length checks a length that must be there.
func (c *checker) length(field string, l measure.Length) {
	switch {
	case l <= 0:
		c.refuse(field, NotPositive, l, 0)
	case l > measure.MaxLength:
		c.refuse(field, TooLarge, l, measure.MaxLength)
	}
}

// begins checks the first place at which the design begins.
func (c *checker) begins(field string, at *measure.Length, isNeeded bool) {
	switch repeat := c.paper.Repeat; {
	case at == nil && isNeeded && repeat > 0:
		c.refuse(field, MustBegin, 0, 0)
	case at == nil:
	case repeat == 0:
		c.refuse(field, NoDesign, *at, 0)
	case *at < 0:
		c.refuse(field, Negative, *at, 0)
	case *at >= repeat:
		c.refuse(field, BeginsLate, *at, repeat)
	}
}

func (c *checker) parts(r *Roll) {
	switch {
	case len(r.Parts) == 1:
		c.refuse("parts", OnePart, 0, 0)
	case len(r.Parts) > mostParts:
		c.refuse("parts", TooMany, 0, 0)
		return
	}
	if r.Begins != nil {
		c.refuse("begins", OnThePart, *r.Begins, 0)
	}
	part, path := c.part, c.path
	for i := range r.Parts {
		c.part, c.path = message.New("part_part", "{roll}, part {n}", "roll", part, "n", i+1), fmt.Sprintf("%sparts[%d].", path, i)
		c.length("length", r.Parts[i].Length)
		c.begins("begins", r.Parts[i].Begins, true)
	}
	c.part, c.path = part, path
}

// flaws checks the flaws of a roll whose lengths are sound.
func (c *checker) flaws(r *Roll) {
	if len(r.Flaws) > mostFlaws {
		c.refuse("flaws", TooMany, 0, 0)
		return
	}
	part, path, end := c.part, c.path, r.Total()
	bad, last := measure.Length(0), measure.Length(0)
	for i, f := range r.Flaws {
		c.part, c.path = message.New("part_flaw", "{roll}, flaw {n}", "roll", part, "n", i+1), fmt.Sprintf("%sflaws[%d].", path, i)
		switch {
		case f.From < 0:
			c.refuse("from", Negative, f.From, 0)
		case f.To <= f.From:
			c.refuse("to", EmptyFlaw, f.To, f.From)
		case i > 0 && f.From <= last:
			c.refuse("from", OverFlaws, f.From, last)
		case f.To > end:
			c.refuse("to", BeyondEnd, f.To, end)
		}
		bad, last = bad+f.To-f.From, f.To
	}
	c.part, c.path = part, path
	if len(r.Flaws) == 1 && bad >= end {
		c.refuse("flaws", AllFlawed, 0, 0)
	}
}
