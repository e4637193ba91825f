package plan

import "firstdrop/measure"

// choiceAt is a choice that is still to be looked at more closely.
type choiceAt struct {
	bound    int64          // what it weighs at the least
	rolls    int64          // the rolls it needs at the least, and the weight of its pieces
	x        measure.Length // of a kill seam on a wall
	local    int64          // what its drops and seams weigh: at the least, before it is weighed
	sign     sign           // signed
	order    int32
	start    int32
	known    int32 // how many signatures were known when it was weighed
	kill     int16
	new      [mostNew]int16 // corners + 1; 0: none
	sketched bool
	signed   bool
}

// In how many corners at once new drops are kept, and tried where none are fixed.
const (
	mostNew  = MostNewDrops
	triedNew = 2
)

// choices are to be looked at, the least bound first: a heap once they are in order.
type choices []choiceAt

// isBefore reports whether choice i is to be looked at before choice k.
func (c choices) isBefore(i, k int) bool {
	if c[i].bound != c[k].bound {
		return c[i].bound < c[k].bound
	}
	return c[i].order < c[k].order
}

// arrange puts choices in any order into the heap's.
func (c choices) arrange() {
	for i := len(c)/2 - 1; i >= 0; i-- {
		c.sink(i)
	}
}

// sink moves choice i down until none below it comes before it.
func (c choices) sink(i int) {
	for {
		least := 2*i + 1
		if least >= len(c) {
			return
		}
		if least+1 < len(c) && c.isBefore(least+1, least) {
			least++
		}
		if !c.isBefore(least, i) {
			return
		}
		c[i], c[least] = c[least], c[i]
		i = least
	}
}

// push adds a choice.
func (c *choices) push(n *choiceAt) {
	*c = append(*c, *n)
	h := *c
	for i := len(h) - 1; i > 0 && h.isBefore(i, (i-1)/2); i = (i - 1) / 2 {
		h[i], h[(i-1)/2] = h[(i-1)/2], h[i]
	}
}

// pop takes the first.
func (c *choices) pop() choiceAt {
	h := *c
	first, last := h[0], len(h)-1
	h[0] = h[last]
	*c = h[:last]
	c.sink(0)
	return first
}
