package geom_test

import (
	"fmt"

	"firstdrop/geom"
	"firstdrop/measure"
)

const mm = measure.Millimetre

func rectangle(x, y, width, height measure.Length) geom.Ring {
	return geom.Ring{{X: x, Y: y}, {X: x + width, Y: y}, {X: x + width, Y: y + height}, {X: x, Y: y + height}}
}

// A drop of 530 mm and a door that begins 400 mm into it share 130 mm.
func ExampleInterval() {
	drop := geom.Interval{Lo: 1060 * mm, Hi: 1590 * mm}
	door := geom.Interval{Lo: 1460 * mm, Hi: 2260 * mm}
	fmt.Println(drop.Intersection(door).Length())
	// Output: 130 mm
}

// The ceiling line may cut the design from 60 mm above to 40 mm below the head
// of the motif, which stands at 20 mm in a repeat of 640 mm.
func ExampleCycle() {
	allowed := geom.CycleOf(geom.Interval{Lo: -40 * mm, Hi: 80 * mm}, 640*mm)
	for _, cut := range []measure.Length{630 * mm, 0, 100 * mm, 1350 * mm} {
		fmt.Println(allowed.Contains(cut))
	}
	// Output:
	// true
	// true
	// false
	// true
}

func ExampleRing_Check() {
	bowTie := geom.Ring{{X: 0, Y: 0}, {X: 4 * mm, Y: 3 * mm}, {X: 4 * mm, Y: 0}, {X: 0, Y: 3 * mm}}
	fmt.Println(bowTie.Check())
	// Output: the edge from corner 1 meets the edge from corner 3
}

func ExamplePoint() {
	socket := geom.Point{X: 1200 * mm, Y: 300 * mm}
	wall := geom.Polygon{Outline: rectangle(0, 0, 4000*mm, 2500*mm), Holes: []geom.Ring{rectangle(0, 0, 900*mm, 2000*mm)}}
	fmt.Println(wall.Contains(socket))
	// Output: true
}

// A drop that lies half across a window is one parcel; one right across it is
// two, above and below.
func ExamplePolygon_Cells() {
	wall := geom.Polygon{
		Outline: rectangle(0, 0, 4000*mm, 2500*mm),
		Holes:   []geom.Ring{rectangle(1200*mm, 900*mm, 1500*mm, 1200*mm)},
	}
	for _, from := range []measure.Length{800 * mm, 1400 * mm} {
		cells := wall.Cells(geom.Interval{Lo: from, Hi: from + 530*mm})
		_, n := geom.Parcels(cells)
		fmt.Println(len(cells), "cells,", n, "parcels")
		for _, c := range cells {
			fmt.Println("  from", c.X.Lo, "to", c.X.Hi, "across,", c.Y().Lo, "to", c.Y().Hi, "up")
		}
	}
	// Output:
	// 3 cells, 1 parcels
	//   from 800 mm to 1200 mm across, 0 mm to 2500 mm up
	//   from 1200 mm to 1330 mm across, 0 mm to 900 mm up
	//   from 1200 mm to 1330 mm across, 2100 mm to 2500 mm up
	// 2 cells, 2 parcels
	//   from 1400 mm to 1930 mm across, 0 mm to 900 mm up
	//   from 1400 mm to 1930 mm across, 2100 mm to 2500 mm up
}

// An attic wall rises from 1 m to 2.5 m over its first 3 m.
func ExampleCell() {
	attic := geom.Polygon{Outline: geom.Ring{
		{X: 0, Y: 0}, {X: 4000 * mm, Y: 0}, {X: 4000 * mm, Y: 2500 * mm}, {X: 3000 * mm, Y: 2500 * mm}, {X: 0, Y: 1000 * mm},
	}}
	drop := attic.Cells(geom.Interval{Lo: 530 * mm, Hi: 1060 * mm})[0]
	fmt.Println(drop.Left.Length(), drop.Right.Length(), drop.Y().Length())
	// Output: 1265 mm 1530 mm 1530 mm
}

func ExampleSweep() {
	sweep := geom.Polygon{Outline: rectangle(0, 0, 4000*mm, 2500*mm)}.Sweep()
	var cells []geom.Cell
	for start := measure.Length(0); start < 4000*mm; start += 530 * mm {
		cells = sweep.AppendCells(cells, geom.Interval{Lo: start, Hi: start + 530*mm})
	}
	fmt.Println(len(cells), "drops, the last", cells[len(cells)-1].X.Length(), "wide")
	// Output: 8 drops, the last 290 mm wide
}

func ExamplePolygon_Area() {
	wall := geom.Polygon{
		Outline: rectangle(0, 0, 4000*mm, 2500*mm),
		Holes:   []geom.Ring{rectangle(0, 0, 900*mm, 2000*mm), rectangle(2000*mm, 900*mm, 1000*mm, 1000*mm)},
	}
	fmt.Println(wall.Outline.Area(), "less openings:", wall.Area())
	// Output: 10.00 m² less openings: 7.20 m²
}
