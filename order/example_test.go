package order_test

import (
	"fmt"

	"firstdrop/cutting"
	"firstdrop/measure"
	"firstdrop/order"
	"firstdrop/paper"
)

func ExampleFor() {
	double := &paper.Paper{Name: "double rolls", Pack: 2}
	l, _ := order.For(double.Offers()[0], 7, 0)
	fmt.Printf("%d packs of %d, %d roll to spare\n", l.Packs, l.PerPack, l.Spare)
	// Output: 4 packs of 2, 1 roll to spare
}

// fourDrops asks for four drops of 2.50 m, 2.40 m and 50 mm at each end, from
// rolls of 10.05 m.
func fourDrops() *order.Cutting {
	c := &order.Cutting{
		Spec: cutting.Spec{Roll: cutting.Roll{Length: 10050 * measure.Millimetre}},
		Head: 50 * measure.Millimetre, Foot: 50 * measure.Millimetre, Step: measure.Millimetre,
	}
	for range 4 {
		drop := cutting.Piece{Length: 2500 * measure.Millimetre}
		c.Spec.Pieces = append(c.Spec.Pieces, drop)
		c.Pieces = append(c.Pieces, order.Piece{Piece: drop, Need: 2400 * measure.Millimetre, Ceiling: true})
	}
	return c
}

// One roll is enough if it is not shorter than 10.00 m and nothing is spoiled.
func ExampleCertainty() {
	c := fourDrops()
	problem, err := cutting.NewProblem(c.Spec)
	if err != nil {
		fmt.Println(err)
		return
	}
	job := order.Job{Plan: cutting.Solve(problem, cutting.Options{}), Pieces: c.Pieces}
	chances := order.Chances{Length: 15, Spoiled: 10} // EN 233; one drop in a hundred
	curve, err := order.Certainty(job, chances, 10_000, 1)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, p := range curve.Enough {
		fmt.Printf("%d: %d of %d\n", p.Rolls, p.Jobs, curve.Jobs)
	}
	rolls, _ := curve.Fewest(990)
	fmt.Println("99 %:", rolls)
	// Output:
	// 0: 0 of 10000
	// 1: 6360 of 10000
	// 2: 10000 of 10000
	// 99 %: 2
}

func ExampleCliffs() {
	c := fourDrops()
	cliffs, err := order.Cliffs(c.Spec, c.Changes())
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, cliff := range cliffs {
		fmt.Printf("%v %v: %d instead of %d\n", cliff.Quantity, cliff.Change, cliff.Rolls, cliff.Planned)
	}
	// Output:
	// wall height 13 mm: 2 instead of 1
	// head allowance 13 mm: 2 instead of 1
	// foot allowance 13 mm: 2 instead of 1
	// roll length -51 mm: 2 instead of 1
}
