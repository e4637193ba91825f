package plan

import (
	"testing"

	"firstdrop/measure"
)

// What is told of a start with a kill place is no more than the bound of any choice with
// them, whatever new drops it has.
func TestOutlookIsABound(t *testing.T) {
	bounds, most := 0, 0.0
	for seed := range 120 {
		s, all := gathered(t, seed, 61*measure.Millimetre)
		if len(all) == 0 {
			continue
		}
		o := s.closeup.m.newOutlook()
		for i := range all {
			c := &all[i]
			a := &o.pairs[int(c.start)*len(o.ends)+o.endOf[c.kill]]
			told := max(int64(a[looks])+o.rolls, int64(a[withRolls])-o.hand)
			if told > c.bound {
				t.Fatalf("room %d: %+v is told to weigh %d at the least, its bound is %d", seed, s.choice(c), told, c.bound)
			}
			if c.bound > 0 {
				bounds, most = bounds+1, most+float64(told)/float64(c.bound)
			}
		}
	}
	t.Logf("%d choices; what is told comes to %.2f of their bounds", bounds, most/float64(bounds))
	if most < 0.5*float64(bounds) {
		t.Error("little is told")
	}
}
