package audit

import (
	"testing"

	"firstdrop/cutting"
	"firstdrop/measure"
)

// hotelInHand is a hotel of 40 rooms of the kinds that hungJob makes up, in a
// half-drop design, with left-overs of three lengths. No roll has been opened but
// those of the first.
func hotelInHand(seed uint64) cutting.Spec {
	const mm = measure.Millimetre
	spec := cutting.Spec{Repeat: 640 * mm, Roll: cutting.Roll{Length: 10_050 * mm}}
	for room := range 40 {
		for i, p := range hungJob(seed + uint64(room%3)*12).Pieces {
			p.Length = p.Length.FloorTo(10 * mm)
			p.Phase = (p.Length/mm%7*40*mm + measure.Length(i%2)*spec.Repeat/2).Mod(spec.Repeat)
			spec.Pieces = append(spec.Pieces, p)
		}
	}
	spec.Stock = []cutting.Stock{{Roll: spec.Roll}}
	for k, length := range []measure.Length{7700, 6105, 4350} {
		left := cutting.Stock{Roll: cutting.Roll{Length: length * mm}, Count: 2 + k, InHand: true}
		if k == 0 {
			left.Start = cutting.StartAt(115 * mm)
		}
		spec.Stock = append(spec.Stock, left)
	}
	return spec
}

// Hotels with left-overs of unknown start are proven to the roll, and all of the
// proof is found again here: also capacities that hold only for what fits from
// every start.
func TestHotelsInHandAreProven(t *testing.T) {
	every := 0
	for seed := range uint64(6) {
		s := solved(t, hotelInHand(seed), cutting.Options{})
		for _, v := range Cutting(s) {
			t.Errorf("hotel %d: %v", seed, v)
		}
		if !s.Proven || len(Trusted(s)) > 0 {
			t.Errorf("hotel %d: %d to buy, bound %d, on trust: %v", seed, s.Cost, s.CostBound, Trusted(s))
		}
		if s.Certificate.AllStarts {
			every++
			falsifyEveryStart(t, s)
		}
		t.Logf("hotel %d: %d pieces, %d to buy, for all starts only: %v", seed, len(s.Problem.Spec().Pieces), s.Cost, s.Certificate.AllStarts)
	}
	if every == 0 {
		t.Error("no capacity was for all starts only")
	}
}

// falsifyEveryStart takes from a certificate that its capacities are for all
// starts only, and then makes them smaller.
func falsifyEveryStart(t *testing.T, s *cutting.Solution) {
	c := &s.Certificate
	c.AllStarts = false
	if len(Cutting(s)) == 0 {
		t.Error("capacities pass though one start alone carries more")
	}
	c.AllStarts = true
	for k := range c.Capacities {
		was := c.Capacities[k]
		c.Capacities[k] -= was / 50
		if len(Cutting(s)) == 0 {
			t.Errorf("a capacity of kind %d passes that is a fiftieth too small", k+1)
		}
		c.Capacities[k] = was
	}
}
