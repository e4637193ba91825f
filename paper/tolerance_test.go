package paper_test

import (
	"fmt"
	"testing"

	"firstdrop/measure"
	"firstdrop/paper"
)

// EN 233, category 1: 10.05 m less 1.5 % is 9.899 m. Four drops of 2.47 m are
// guaranteed, four of 2.50 m are not (trade facts 1.1, arithmetic).
func TestShortestRollOfEN233(t *testing.T) {
	p := ferns()
	shortest := p.ShortestRoll()
	if shortest != 9899*mm {
		t.Errorf("ShortestRoll = %v, want 9899 mm", shortest)
	}
	if 4*2470*mm > shortest {
		t.Error("four drops of 2.47 m do not fit the shortest legal roll")
	}
	if 4*2500*mm <= shortest {
		t.Error("four drops of 2.50 m fit the shortest legal roll")
	}
}

func TestShortestRollRoundsDown(t *testing.T) {
	for _, c := range []struct {
		roll measure.Length
		tol  int
		want measure.Length
	}{
		{10050 * mm, 0, 10050 * mm},
		{10050*mm + 999_999, 0, 10050 * mm},
		{1000*mm - 1, 0, 999 * mm}, // a nanometre short of the next millimetre
		{5 * measure.Metre, 30, 4850 * mm},
		{33 * measure.Foot, 15, 9907 * mm}, // 10058.4 · 0.985 = 9907.524
		{measure.MaxLength, 500, measure.MaxLength / 2},
	} {
		p := paper.Paper{RollLength: c.roll, Tolerance: paper.Tolerance{Length: c.tol}}
		if got := p.ShortestRoll(); got != c.want {
			t.Errorf("%v less %d ‰ = %v, want %v", c.roll, c.tol, got, c.want)
		}
	}
}

// EN 233 clause 5, trade facts 1.1 and the roll sizes of 2.
func TestCategory(t *testing.T) {
	for _, c := range []struct {
		width, roll measure.Length
		want        int
	}{
		{530 * mm, 10050 * mm, 1},
		{520 * mm, 10 * measure.Metre, 1},                   // 5.20 m², within 3 %
		{500 * mm, 10 * measure.Metre, 3},                   // 5.00 m² is not
		{530 * mm, 15 * measure.Metre, 0},                   // right width, another area
		{205 * measure.Inch / 10, 33 * measure.Foot, 1},     // 20.5 in: 520.7 mm, 5.237 m²
		{27 * measure.Inch, 27 * measure.Foot, 2},           // 685.8 mm
		{1060 * mm, 15600 * mm, 2},                          // Korea
		{21 * measure.Inch, 115 * measure.Yard / 10, 0},     // UK mid-20th century: 533.4 mm
		{600 * mm, measure.Metre, 2},                        // the limits belong
		{599 * mm, 10 * measure.Metre, 0},                   // between the categories
		{32 * mm, 5 * measure.Metre, 3},                     // the narrowest frieze
		{31 * mm, 5 * measure.Metre, 0},                     // narrower still
		{18 * measure.Inch, 8 * measure.Yard, 3},            // 457 mm: only the width of a frieze
		{540 * mm, 5326 * measure.Metre * 10 / 540 / 10, 0}, // the area alone does not do
	} {
		if got := paper.Category(c.width, c.roll); got != c.want {
			t.Errorf("Category(%v, %v) = %d, want %d", c.width, c.roll, got, c.want)
		}
	}
}

func TestStandardTolerance(t *testing.T) {
	for _, c := range []struct {
		width, roll measure.Length
		length      int
	}{
		{530 * mm, 10050 * mm, 15}, {700 * mm, 10050 * mm, 15}, {130 * mm, 5 * measure.Metre, 30}, {130 * mm, 10 * measure.Metre, 15}, {560 * mm, 5 * measure.Metre, 15},
	} {
		want := paper.Tolerance{Length: c.length, Width: 15}
		if got := paper.StandardTolerance(c.width, c.roll); got != want {
			t.Errorf("StandardTolerance(%v, %v) = %v, want %v", c.width, c.roll, got, want)
		}
	}
}

func ExamplePaper_ShortestRoll() {
	p := paper.Paper{Width: 530 * measure.Millimetre, RollLength: 10050 * measure.Millimetre}
	p.Tolerance = paper.StandardTolerance(p.Width, p.RollLength)
	fmt.Println(p.ShortestRoll())
	// Output: 9899 mm
}
