package geom_test

import (
	"testing"

	"pgregory.net/rapid"

	"firstdrop/geom"
	"firstdrop/measure"
)

func TestCycle(t *testing.T) {
	for _, c := range []struct {
		name    string
		c       geom.Cycle
		length  measure.Length
		full    bool
		empty   bool
		holds   []measure.Length
		lacks   []measure.Length
		repeats measure.Length
	}{
		{"plain", geom.CycleOf(iv(100, 200), 640), 100, false, false, []measure.Length{100, 150, 200, 740, -540}, []measure.Length{99, 201, 0, 639}, 640},
		{"wraps", geom.CycleOf(iv(630, 660), 640), 30, false, false, []measure.Length{630, 639, 0, 20, 640, -10}, []measure.Length{21, 629, 300}, 640},
		{"begins far to the left", geom.CycleOf(iv(-1290, -1260), 640), 30, false, false, []measure.Length{630, 0, 20}, []measure.Length{21, 629}, 640},
		{"a single position", geom.CycleOf(iv(640, 640), 640), 0, false, false, []measure.Length{0, 640, -640}, []measure.Length{1, 639}, 640},
		{"one short of full", geom.CycleOf(iv(0, 639), 640), 639, false, false, []measure.Length{0, 639}, nil, 640},
		{"as long as the repeat", geom.CycleOf(iv(7, 647), 640), 640, true, false, []measure.Length{0, 6, 7, 8}, nil, 640},
		{"longer than the repeat", geom.CycleOf(iv(7, 7000), 640), 640, true, false, []measure.Length{0, 6}, nil, 640},
		{"of an empty interval", geom.CycleOf(iv(7, 6), 640), -1, false, true, nil, []measure.Length{0, 6, 7}, 640},
		{"without a design", geom.CycleOf(iv(7, 9), 0), 0, true, false, []measure.Length{0, 5, -3}, nil, 0},
		{"without a design, a position", geom.CycleOf(iv(7, 7), -3), 0, true, false, []measure.Length{0, 5}, nil, 0},
		{"without a design, empty", geom.CycleOf(iv(7, 6), 0), -1, false, true, nil, []measure.Length{0, 7}, 0},
		{"zero value", geom.Cycle{}, 0, true, false, []measure.Length{0, 5, -3}, nil, 0},
		{"full", geom.FullCycle(640), 640, true, false, []measure.Length{0, 5, -3}, nil, 640},
		{"empty", geom.EmptyCycle(640), -1, false, true, nil, []measure.Length{0, 5, -3}, 640},
	} {
		t.Run(c.name, func(t *testing.T) {
			if c.c.Length() != c.length || c.c.IsFull() != c.full || c.c.IsEmpty() != c.empty || c.c.Repeat() != c.repeats {
				t.Errorf("length %d, full %v, empty %v, repeat %d", c.c.Length(), c.c.IsFull(), c.c.IsEmpty(), c.c.Repeat())
			}
			for _, x := range c.holds {
				if !c.c.Contains(x) {
					t.Errorf("lacks %d", x)
				}
			}
			for _, x := range c.lacks {
				if c.c.Contains(x) {
					t.Errorf("holds %d", x)
				}
			}
		})
	}
}

func TestEqualCyclesAreEqual(t *testing.T) {
	for _, c := range []struct{ a, b geom.Cycle }{
		{geom.CycleOf(iv(630, 660), 640), geom.CycleOf(iv(-10, 20), 640)},
		{geom.CycleOf(iv(3, 700), 640), geom.FullCycle(640)},
		{geom.CycleOf(iv(9, 2), 640), geom.EmptyCycle(640)},
		{geom.CycleOf(iv(3, 700), 0), geom.Cycle{}},
		{geom.FullCycle(-5), geom.Cycle{}},
	} {
		if c.a != c.b {
			t.Errorf("%+v != %+v", c.a, c.b)
		}
	}
}

// aCycle draws cycles on a circle of 12 positions, full and empty ones too.
var aCycle = rapid.Custom(func(t *rapid.T) geom.Cycle {
	lo := measure.Length(rapid.IntRange(-30, 30).Draw(t, "lo"))
	return geom.CycleOf(iv(lo, lo+measure.Length(rapid.IntRange(-1, 13).Draw(t, "length"))), 12)
})

// On whole positions a cycle is a set; its operations are those of the set.
// Cycles of whole nanometres that share any position share a whole one.
func TestCycleAgreesWithItsPositions(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := aCycle.Draw(t, "a"), aCycle.Draw(t, "b")
		d := measure.Length(rapid.IntRange(-30, 30).Draw(t, "d"))
		shared := false
		for x := range measure.Length(12) {
			shared = shared || a.Contains(x) && b.Contains(x)
			if a.Shifted(d).Contains(x+d) != a.Contains(x) {
				t.Fatalf("shifted by %d differs at %d", d, x)
			}
			near := a.Contains(x-1) || a.Contains(x) || a.Contains(x+1)
			if a.Expanded(1).Contains(x) != near {
				t.Fatalf("expanded differs at %d", x)
			}
		}
		if got := a.Intersects(b); got != shared {
			t.Fatalf("Intersects = %v, want %v", got, shared)
		}
		if b.Intersects(a) != shared {
			t.Fatal("Intersects depends on the order")
		}
		if got := a.Shifted(d).Shifted(-d); got != a {
			t.Fatalf("shifted there and back: %+v", got)
		}
	})
}

func TestCycleExpanded(t *testing.T) {
	c := geom.CycleOf(iv(630, 660), 640)
	if got, want := c.Expanded(-15), geom.CycleOf(iv(5, 5), 640); got != want {
		t.Errorf("shrunk to a position: %+v, want %+v", got, want)
	}
	if got := c.Expanded(-16); !got.IsEmpty() {
		t.Errorf("shrunk to nothing: %+v", got)
	}
	if got := c.Expanded(305); !got.IsFull() {
		t.Errorf("grown all round: %+v", got)
	}
	if got := geom.EmptyCycle(640).Expanded(9); !got.IsEmpty() {
		t.Errorf("empty grown: %+v", got)
	}
	if got := geom.FullCycle(640).Expanded(-9); !got.IsFull() {
		t.Errorf("full shrunk: %+v", got)
	}
}
