package geom

import (
	"math"
	"math/big"
	"testing"

	"pgregory.net/rapid"

	"firstdrop/measure"
)

// aLength draws lengths of every size, the whole range of the type included.
var aLength = rapid.OneOf(
	rapid.Map(rapid.Int64Range(-9, 9), func(n int64) measure.Length { return measure.Length(n) }),
	rapid.Map(rapid.Int64Range(-5e9, 5e9), func(n int64) measure.Length { return measure.Length(n) }),
	rapid.Map(rapid.Int64(), func(n int64) measure.Length { return measure.Length(n) }),
)

var aPoint = rapid.Custom(func(t *rapid.T) Point {
	return Point{aLength.Draw(t, "x"), aLength.Draw(t, "y")}
})

// anEdge draws edges that reach across x.
func anEdge(t *rapid.T, x measure.Length, name string) edge {
	lo := measure.Length(rapid.Int64Range(math.MinInt64, int64(x)).Draw(t, name+" from"))
	hi := measure.Length(rapid.Int64Range(int64(x), math.MaxInt64).Draw(t, name+" to"))
	if lo == hi {
		if hi == math.MaxInt64 {
			lo--
		} else {
			hi++
		}
	}
	return edge{left: Point{lo, aLength.Draw(t, name+" from height")}, right: Point{hi, aLength.Draw(t, name+" to height")}}
}

func rat(l measure.Length) *big.Rat { return new(big.Rat).SetInt64(int64(l)) }

// exact is the second road to an edge's height: rational numbers of any size.
func (e *edge) exact(x measure.Length) *big.Rat {
	rise := new(big.Rat).Sub(rat(e.right.Y), rat(e.left.Y))
	run := new(big.Rat).Sub(rat(x), rat(e.left.X))
	width := new(big.Rat).Sub(rat(e.right.X), rat(e.left.X))
	y := rise.Mul(rise, run)
	return y.Quo(y, width).Add(y, rat(e.left.Y))
}

func TestEdgeAgainstRationalNumbers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := aLength.Draw(t, "x")
		e, other := anEdge(t, x, "e"), anEdge(t, x, "other")
		want := e.exact(x)
		off := new(big.Rat).Sub(rat(e.height(x)), want)
		if half := big.NewRat(1, 2); off.Cmp(half) > 0 || off.Neg(off).Cmp(half) >= 0 {
			t.Fatalf("height %d is not %s rounded, halves up", e.height(x), want.FloatString(3))
		}
		if got := e.compareAt(x, &other); got != want.Cmp(other.exact(x)) {
			t.Fatalf("compareAt = %d", got)
		}
		p := Point{x, aLength.Draw(t, "y")}
		if got := e.side(p); got != rat(p.Y).Cmp(want) {
			t.Fatalf("side of %v = %d", p, got)
		}
	})
}

func TestEdgeHeightIsTheSameFromEitherEnd(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, q := aPoint.Draw(t, "p"), aPoint.Draw(t, "q")
		there, ok := edgeBetween(p, q, 3)
		back, _ := edgeBetween(q, p, 3)
		if !ok {
			if p.X != q.X {
				t.Fatal("refused an edge that is not upright")
			}
			return
		}
		if there != back {
			t.Fatalf("%v and %v", there, back)
		}
		if there.height(p.X) != p.Y || there.height(q.X) != q.Y {
			t.Fatal("a corner does not keep its height")
		}
	})
}

func TestCrossing(t *testing.T) {
	e := func(x1, y1, x2, y2 measure.Length) edge {
		return edge{left: Point{x1, y1}, right: Point{x2, y2}}
	}
	none := Interval{0, -1}
	for _, c := range []struct {
		name string
		a, b edge
		want Interval
	}{
		{"at a whole place", e(0, 0, 10, 10), e(0, 10, 10, 0), Interval{5, 5}},
		{"at a half", e(0, 0, 9, 9), e(0, 9, 9, 0), Interval{4, 5}},
		{"at 10/3", e(0, 0, 10, 10), e(0, 10, 10, -10), Interval{3, 4}},
		{"in the first nanometre", e(0, 0, 10, 100), e(0, 1, 10, 1), Interval{0, 1}},
		{"at an end of one", e(0, 0, 10, 10), e(5, 5, 10, 0), none},
		{"at both ends", e(0, 0, 10, 10), e(0, 0, 10, 10), none},
		{"parallel", e(0, 0, 10, 10), e(0, 1, 10, 11), none},
		{"one beside the other", e(0, 0, 5, 5), e(5, 0, 10, 10), none},
		{"one above the other", e(0, 0, 10, 1), e(0, 2, 10, 3), none},
	} {
		if got := c.a.crossing(&c.b); got != c.want {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
		if got := c.b.crossing(&c.a); got != c.want {
			t.Errorf("%s, other way: %v, want %v", c.name, got, c.want)
		}
	}
}

func TestWideAgainstBig(t *testing.T) {
	toBig := func(w wide) *big.Int {
		n := new(big.Int).Lsh(big.NewInt(w.hi), 64)
		return n.Add(n, new(big.Int).SetUint64(w.lo))
	}
	times := func(a, b measure.Length) *big.Int {
		return new(big.Int).Mul(big.NewInt(int64(a)), big.NewInt(int64(b)))
	}
	rapid.Check(t, func(t *rapid.T) {
		a, b := aLength.Draw(t, "a"), aLength.Draw(t, "b")
		c, d := aLength.Draw(t, "c"), aLength.Draw(t, "d")
		ab, cd := product(a, b), product(c, d)
		if toBig(ab).Cmp(times(a, b)) != 0 {
			t.Fatalf("product = %v", ab)
		}
		if got := ab.compare(cd); got != times(a, b).Cmp(times(c, d)) {
			t.Fatalf("compare = %d", got)
		}
		if ab.hi>>61 == 0 && cd.hi>>61 == 0 {
			sum := new(big.Int).Add(times(a, b), times(c, d))
			if toBig(ab.plus(cd)).Cmp(sum) != 0 || ab.plus(cd).minus(cd) != ab {
				t.Fatal("plus or minus is off")
			}
		}
		if ab.hi != math.MinInt64 && toBig(ab.abs()).Cmp(new(big.Int).Abs(times(a, b))) != 0 {
			t.Fatalf("abs = %v", ab.abs())
		}
	})
}

func TestWideDividedBy(t *testing.T) {
	for _, c := range []struct {
		w    wide
		d    uint64
		want int64
	}{
		{wide{0, 0}, 2, 0},
		{wide{0, 1}, 2, 1},
		{wide{0, 4}, 10, 0},
		{wide{0, 5}, 10, 1},
		{wide{1, 0}, 4, 1 << 62},
		{wide{1, 0}, 1, math.MaxInt64},
		{wide{0, math.MaxUint64}, 1, math.MaxInt64},
		{product(measure.MaxLength, measure.MaxLength), 2e12, 5e11},
	} {
		if got := c.w.dividedBy(c.d); got != c.want {
			t.Errorf("%v / %d = %d, want %d", c.w, c.d, got, c.want)
		}
	}
}
