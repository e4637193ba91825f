package plan

import (
	"math/rand/v2"
	"testing"
)

// Choices come out by their bounds, those of equal bounds in their order, however they
// went in.
func TestHeapsAreInOrder(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 7))
	for range 200 {
		var c choices
		n := int32(1 + r.IntN(60))
		for i := range n / 2 {
			c = append(c, choiceAt{bound: r.Int64N(9), order: i})
		}
		c.arrange()
		for i := n / 2; i < n; i++ {
			c.push(&choiceAt{bound: r.Int64N(9), order: i})
		}
		before := c.pop()
		for range n - 1 {
			next := c.pop()
			if next.bound < before.bound || next.bound == before.bound && next.order < before.order {
				t.Fatalf("%d, %d comes after %d, %d", next.bound, next.order, before.bound, before.order)
			}
			before = next
		}
		if len(c) != 0 {
			t.Fatalf("%d are left", len(c))
		}
	}
}
