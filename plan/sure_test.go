package plan_test

import (
	"testing"

	"firstdrop/measure"
	"firstdrop/order"
	"firstdrop/paper"
)

// EN 233, clause 5: a roll of 10.05 m may have 9.899 m. Four drops of 2.50 m from
// one roll depend on 10.00 m: rolls shorter by 5.1 cm give three, and walls
// higher by 13 mm do the same.
func TestCliffsOfTwoRolls(t *testing.T) {
	p := made(t, asked(flat(8*530*mm, 2400*mm), paper.Paper{Name: "plain", Width: 530 * mm, RollLength: 10050 * mm, Pack: 1}))
	cliffs, err := p.Cliffs(0, 0)
	if err != nil {
		t.Fatal(err)
	}
	want := map[order.Quantity]measure.Length{
		order.WallHeight: 13 * mm, order.HeadAllowance: 13 * mm, order.FootAllowance: 13 * mm, order.RollLength: -51 * mm,
	}
	for _, c := range cliffs {
		if c.Change == want[c.Quantity] && c.Rolls == 3 && c.Planned == 2 {
			delete(want, c.Quantity)
		}
	}
	if len(want) > 0 {
		t.Errorf("cliffs %+v lack %v", cliffs, want)
	}
	if len(cliffs) == 0 || cliffs[0].Change.Abs() != 13*mm {
		t.Errorf("cliffs %+v do not begin with the nearest", cliffs)
	}
}

// With lengths even over ±1.5 % a roll gives four drops of 2.50 m with a chance
// of (10.200 75 − 10.00)/0.3015 = 66.6 %, both of two rolls with 44.3 %.
func TestCertaintyOfTwoRolls(t *testing.T) {
	p := made(t, asked(flat(8*530*mm, 2400*mm), paper.Paper{
		Name: "plain", Width: 530 * mm, RollLength: 10050 * mm, Pack: 1, Tolerance: paper.StandardTolerance(530*mm, 10050*mm),
	}))
	chances := p.Chances(0)
	chances.Measuring, chances.Spoiled = 0, 0
	const jobs = 4000
	c, err := p.Certainty(0, 0, chances, jobs, 1)
	if err != nil {
		t.Fatal(err)
	}
	// Within three standard deviations of the binomial: 3·√(n·p·q) = 94 jobs.
	if got := c.At(2).Of; got < 1773-94 || got > 1773+94 {
		t.Errorf("two rolls are enough in %d of %d jobs, want 1773 ± 94", got, jobs)
	}
	if s := c.OneLess(); s.Of != 0 {
		t.Errorf("one roll is enough in %d jobs", s.Of)
	}
	if s := c.OneMore(); s.Of != jobs {
		t.Errorf("three rolls are enough in only %d of %d jobs", s.Of, jobs)
	}
}
