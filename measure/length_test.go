package measure

import (
	"math"
	"math/big"
	"testing"

	"pgregory.net/rapid"
)

// anyLength draws lengths far outside a room, but with space to add two of them.
var anyLength = rapid.Int64Range(-1<<60, 1<<60)

// bigDiv returns n/d rounded halves away from zero, in numbers without limit.
func bigDiv(n, d *big.Int) *big.Int {
	twice := new(big.Int).Lsh(new(big.Int).Abs(n), 1)
	q := twice.Add(twice, new(big.Int).Abs(d))
	q.Quo(q, new(big.Int).Lsh(new(big.Int).Abs(d), 1))
	if n.Sign()*d.Sign() < 0 {
		q.Neg(q)
	}
	return q
}

func TestModAgainstBig(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l, p := anyLength.Draw(t, "l"), rapid.Int64Range(1, 1<<60).Draw(t, "p")
		// big.Int.Mod is Euclidean: never negative for a positive modulus.
		want := new(big.Int).Mod(big.NewInt(l), big.NewInt(p)).Int64()
		if got := Length(l).Mod(Length(p)); int64(got) != want {
			t.Fatalf("%d mod %d = %d, want %d", l, p, got, want)
		}
	})
}

func TestStepsAgainstBig(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l, step := anyLength.Draw(t, "l"), rapid.Int64Range(1, 1<<60).Draw(t, "step")
		bl, bs := big.NewInt(l), big.NewInt(step)
		floor := new(big.Int).Mul(new(big.Int).Div(bl, bs), bs).Int64()
		ceil := floor
		if floor != l {
			ceil += step
		}
		round := new(big.Int).Mul(bigDiv(bl, bs), bs).Int64()
		x, s := Length(l), Length(step)
		if got := [3]Length{x.FloorTo(s), x.CeilTo(s), x.RoundTo(s)}; got != [3]Length{Length(floor), Length(ceil), Length(round)} {
			t.Fatalf("%d in steps of %d: floor, ceil, round %d, want %d %d %d", l, step, got, floor, ceil, round)
		}
	})
}

func TestScaledAgainstBig(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l, num := rapid.Int64().Draw(t, "l"), rapid.Int64().Draw(t, "num")
		den := rapid.Int64().Filter(func(n int64) bool { return n != 0 }).Draw(t, "den")
		want := bigDiv(new(big.Int).Mul(big.NewInt(l), big.NewInt(num)), big.NewInt(den))
		if !want.IsInt64() {
			return // the result must fit: the caller's duty
		}
		if got := Length(l).Scaled(num, den); int64(got) != want.Int64() {
			t.Fatalf("%d·%d/%d = %d, want %d", l, num, den, got, want)
		}
	})
}

func TestScaledHalves(t *testing.T) {
	for _, c := range []struct {
		l        Length
		num, den int64
		want     Length
	}{
		{1, 1, 2, 1},
		{-1, 1, 2, -1},
		{1, 1, -2, -1},
		{1, 1, 3, 0},
		{2, 1, 3, 1},
		{math.MinInt64, 1, 1, math.MinInt64},
		{math.MaxInt64, math.MaxInt64, math.MaxInt64, math.MaxInt64},
		{640 * Millimetre, 1, 3, 213_333_333},
		{640 * Millimetre, 2, 3, 426_666_667},
		{640 * Millimetre, 3, 3, 640 * Millimetre},
	} {
		if got := c.l.Scaled(c.num, c.den); got != c.want {
			t.Errorf("%d.Scaled(%d, %d) = %d, want %d", c.l, c.num, c.den, got, c.want)
		}
	}
}

// A step or repeat of nothing leaves the length alone, and a free match has no phase.
func TestStepOfNothing(t *testing.T) {
	for _, step := range []Length{0, -Millimetre} {
		if l := -7 * Millimetre; l.FloorTo(step) != l || l.CeilTo(step) != l || l.RoundTo(step) != l || l.Mod(step) != 0 {
			t.Errorf("step %v changes %v", step, l)
		}
	}
}

func TestAbs(t *testing.T) {
	if (-Inch).Abs() != Inch || Inch.Abs() != Inch || Length(0).Abs() != 0 {
		t.Error("Abs keeps a sign")
	}
}
