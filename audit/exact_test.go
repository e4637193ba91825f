package audit

import (
	"math/big"
	"testing"

	"pgregory.net/rapid"
)

func (h height) rat() *big.Rat {
	r := new(big.Rat).SetFrac(new(big.Int).SetUint64(h.num), new(big.Int).SetUint64(h.den))
	return r.Add(r, new(big.Rat).SetInt64(h.whole))
}

func within(t *rapid.T, label string) int64 {
	return rapid.Int64Range(-farthest, farthest).Draw(t, label)
}

// Quotients, comparisons and lines agree with math/big.
func TestExactAgreesWithBig(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b, c := within(t, "a"), rapid.Int64Range(-2_000_000, 2_000_000).Draw(t, "b"), rapid.Int64Range(-1<<40, 1<<40).Filter(func(n int64) bool { return n != 0 }).Draw(t, "c")
		want := new(big.Rat).SetFrac(new(big.Int).Mul(big.NewInt(a), big.NewInt(b)), big.NewInt(c))
		got := quotient(a, b, c)
		if want.Cmp(new(big.Rat).SetInt64(1<<60)) > 0 || want.Cmp(new(big.Rat).SetInt64(-1<<60)) < 0 {
			return // cut off
		}
		if got.rat().Cmp(want) != 0 || got.num >= got.den {
			t.Errorf("quotient(%d, %d, %d) = %v, want %v", a, b, c, got, want)
		}
		d, e := within(t, "d"), rapid.Int64Range(1, 1<<40).Draw(t, "e")
		other := quotient(d, 1, e)
		if got.compare(other) != want.Cmp(other.rat()) {
			t.Errorf("%v compares wrongly with %v", got, other)
		}
		half := new(big.Rat).Sub(new(big.Rat).SetInt64(nearest(a, b, c)), want)
		if half.Abs(half).Cmp(big.NewRat(1, 2)) > 0 {
			t.Errorf("nearest(%d, %d, %d) = %d", a, b, c, nearest(a, b, c))
		}
	})
}

func TestNearest(t *testing.T) {
	for _, tt := range []struct{ a, b, c, want int64 }{
		{1, 1, 2, 1}, {-1, 1, 2, -1}, {1, 1, 3, 0}, {2, 1, 3, 1}, {-2, 1, 3, -1}, {5, 1, 2, 3}, {-5, 1, 2, -3}, {6, 1, 3, 2}, {0, 5, 7, 0},
	} {
		if got := nearest(tt.a, tt.b, tt.c); got != tt.want {
			t.Errorf("nearest(%d, %d, %d) = %d, want %d", tt.a, tt.b, tt.c, got, tt.want)
		}
	}
}

func TestSlopeAt(t *testing.T) {
	s, ok := through(10, 0, 0, 5, 0)
	if !ok {
		t.Fatal("not a slope")
	}
	for _, tt := range []struct {
		half int64
		want height
	}{{0, level(5)}, {20, level(0)}, {1, height{4, 15, 20}}, {2, height{4, 10, 20}}, {-20, level(10)}} {
		if got := s.at(tt.half); got.compare(tt.want) != 0 {
			t.Errorf("at %d/2: %v, want %v", tt.half, got, tt.want)
		}
	}
	if _, ok := through(3, 0, 3, 9, 0); ok {
		t.Error("an upright line is no slope")
	}
}

func TestWithout(t *testing.T) {
	stretch := func(lo, hi int64) rise { return rise{level(lo), level(hi)} }
	tests := []struct {
		from  rise
		taken []rise
		want  []rise
	}{
		{stretch(0, 10), nil, []rise{stretch(0, 10)}},
		{stretch(0, 10), []rise{{lowest, highest}}, nil},
		{stretch(0, 10), []rise{stretch(2, 4)}, []rise{stretch(0, 2), stretch(4, 10)}},
		{stretch(0, 10), []rise{stretch(2, 4), stretch(6, 8)}, []rise{stretch(0, 2), stretch(4, 6), stretch(8, 10)}},
		{stretch(0, 10), []rise{stretch(0, 5), stretch(5, 10)}, nil},
		{stretch(0, 10), []rise{stretch(10, 20)}, []rise{stretch(0, 10)}},
	}
	for _, tt := range tests {
		got := []rise{tt.from}
		for _, r := range tt.taken {
			got = without(got, r)
		}
		same := len(got) == len(tt.want)
		for _, w := range tt.want {
			found := false
			for _, g := range got {
				found = found || g.foot.compare(w.foot) == 0 && g.head.compare(w.head) == 0
			}
			same = same && found
		}
		if !same {
			t.Errorf("%v without %v = %v, want %v", tt.from, tt.taken, got, tt.want)
		}
	}
}
