package order_test

import (
	"fmt"

	"firstdrop/order"
	"firstdrop/paper"
)

func ExampleFor() {
	double := &paper.Paper{Name: "double rolls", Pack: 2}
	l, _ := order.For(double, 7)
	fmt.Printf("%d packs of %d, %d roll to spare\n", l.Packs, l.PerPack, l.Spare)
	// Output: 4 packs of 2, 1 roll to spare
}
