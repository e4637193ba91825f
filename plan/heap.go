package plan

// heap holds things of which the first in their order is wanted next:
//
//	      1          none comes before the one above it
//	  3       2
//	4   7   5
type heap[T any, P inOrder[T]] []T

// inOrder is what things in a heap must know.
type inOrder[T any] interface {
	*T
	isBefore(*T) bool
}

// arrange puts things that were appended in any order into the heap's.
func (h heap[T, P]) arrange() {
	for i := len(h)/2 - 1; i >= 0; i-- {
		h.sink(i)
	}
}

// sink moves a thing down until none below it comes before it.
func (h heap[T, P]) sink(i int) {
	for {
		first := 2*i + 1
		if first >= len(h) {
			return
		}
		if first+1 < len(h) && P(&h[first+1]).isBefore(&h[first]) {
			first++
		}
		if !P(&h[first]).isBefore(&h[i]) {
			return
		}
		h[i], h[first] = h[first], h[i]
		i = first
	}
}

// push adds a thing.
func (h *heap[T, P]) push(n *T) {
	*h = append(*h, *n)
	t := *h
	for i := len(t) - 1; i > 0 && P(&t[i]).isBefore(&t[(i-1)/2]); i = (i - 1) / 2 {
		t[i], t[(i-1)/2] = t[(i-1)/2], t[i]
	}
}

// pop takes the first.
func (h *heap[T, P]) pop() T {
	t := *h
	first, last := t[0], len(t)-1
	t[0] = t[last]
	*h = t[:last]
	h.sink(0)
	return first
}

// first takes so many, or all, that were appended in any order: in the heap's.
func (h *heap[T, P]) first(most int) (first []T) {
	h.arrange()
	for range min(most, len(*h)) {
		first = append(first, h.pop())
	}
	return first
}
