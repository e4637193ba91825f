package money_test

import (
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"firstdrop/money"
)

func TestShare(t *testing.T) {
	away, even, zero := money.HalfAwayFromZero, money.HalfToEven, money.TowardsZero
	for _, c := range []struct {
		minor int64
		share money.Percentage
		rule  money.Rounding
		want  int64
	}{
		{10000, 19 * money.Percent, away, 1900},
		{250, 1 * money.Percent, away, 3}, // 2.5
		{250, 1 * money.Percent, even, 2},
		{250, 1 * money.Percent, zero, 2},
		{350, 1 * money.Percent, even, 4}, // 3.5
		{-250, 1 * money.Percent, away, -3},
		{-250, 1 * money.Percent, even, -2},
		{-250, 1 * money.Percent, zero, -2},
		{-260, 1 * money.Percent, zero, -2},
		{251, 1 * money.Percent, even, 3}, // 2.51
		{249, 1 * money.Percent, away, 2}, // 2.49
		{3400, 770, away, 262},            // 7.7 % of 34.00: 2.618
		{100, 0, away, 0},
		{100, 250 * money.Percent, away, 250},
	} {
		got, err := euro(c.minor).Share(c.share, c.rule)
		if err != nil || got != euro(c.want) {
			t.Errorf("%d/10000 of %d = %v, %v; want %d", c.share, c.minor, got, err, c.want)
		}
	}
}

func TestShareIsNearest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		minor := rapid.Int64Range(-1e12, 1e12).Draw(t, "minor")
		share := rapid.Int64Range(-100000, 100000).Draw(t, "share")
		for _, rule := range []money.Rounding{money.HalfAwayFromZero, money.HalfToEven} {
			got, _ := euro(minor).Share(money.Percentage(share), rule)
			if off := got.Minor*10000 - minor*share; off < -5000 || off > 5000 {
				t.Fatalf("%d of %d = %d, off by %d/10000", share, minor, got.Minor, off)
			}
		}
	})
}

func ExampleAmount_Share() {
	net, _ := money.ParseAmount("238.00 EUR")
	tax, _ := net.Share(19*money.Percent, money.HalfAwayFromZero)
	fmt.Println(tax)
	// Output: 45.22 EUR
}
