package sheet

import (
	"cmp"
	"slices"

	"firstdrop/measure"
)

// ascending returns the indexes of xs in ascending order of x.
func ascending(xs []measure.Length) []int {
	order := make([]int, len(xs))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(xs[a], xs[b]) })
	return order
}

// pick returns the elements of xs in the given order.
func pick[T any](xs []T, order []int) []T {
	out := make([]T, len(order))
	for i, k := range order {
		out[i] = xs[k]
	}
	return out
}
