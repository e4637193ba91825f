package hanging_test

import (
	"fmt"

	"firstdrop/geom"
	"firstdrop/hanging"
	"firstdrop/measure"
	"firstdrop/paper"
	"firstdrop/room"
)

// One wall, 2 m wide, in a half drop, started in its left corner: the first
// plumb line stands one width less the overlap from it.
func Example() {
	wall := room.Wall{Name: "A", Width: 2 * measure.Metre, Outline: room.Rectangle(2*measure.Metre, 2400*mm)}
	label := &paper.Paper{
		Name: "half drop", Width: 530 * mm, RollLength: 10050 * mm, Repeat: 640 * mm,
		Match: paper.Match{Kind: paper.Offset, Num: 1, Den: 2},
	}
	h, err := hanging.New(&room.Run{Walls: []room.Wall{wall}}, label, hanging.DefaultRules())
	if err != nil {
		fmt.Println(err)
		return
	}
	l, err := h.Layout(hanging.Choice{Start: hanging.Start{Wall: 0, X: -25 * mm}})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("plumb line at", l.Plumbs[0].X)
	for _, p := range l.Pieces {
		fmt.Println("drop", p.Name, "cut", p.Length, "from phase", p.Phase)
	}
	// Output:
	// plumb line at 505 mm
	// drop 1 cut 2500 mm from phase 110 mm
	// drop 2 cut 2500 mm from phase 430 mm
	// drop 3 cut 2500 mm from phase 110 mm
	// drop 4 cut 2500 mm from phase 430 mm
}

// A reveal that is papered is a piece of the drop beside it.
func ExampleReturns() {
	window := &room.Opening{
		Outline: room.Rect(500*mm, 900*mm, 1000*mm, 1200*mm), Depth: 120 * mm,
		Sides: room.Sides{Left: true, Head: true},
	}
	for _, r := range hanging.Returns(window) {
		fmt.Println(r.Side, r.X.Length(), "by", r.Y.Length())
	}
	// Output:
	// left reveal 120 mm by 1200 mm
	// soffit 1000 mm by 120 mm
}

// A seam meets when nothing is lost across it and nothing is out along it.
func ExampleSeam_Meets() {
	fmt.Println(hanging.Seam{}.Meets())
	fmt.Println(hanging.Seam{Across: geom.Interval{Lo: 12 * mm, Hi: 12 * mm}}.Meets())
	// Output:
	// true
	// false
}
